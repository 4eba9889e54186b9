"""What was said of each term, sample by sample, in words: the wide table turned round, for people to read."""

from notesmith.publishing.charts.presence import tabulate_presence_matrix
from notesmith.publishing.episode import Episode
from notesmith.publishing.tables.model import Column, Table


def terms(episode: Episode) -> Table:
    """One row a term of a facet, one column a sample: how strong it was said to be, and when."""
    cells = tabulate_presence_matrix(episode)
    columns = tuple(Column(name, "text", "What was said, and when.") for name in cells.columns)
    return Table(columns, tuple(tuple(cell or None for cell in row) for row in cells.rows))
