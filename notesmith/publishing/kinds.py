"""The list of everything that is published: what it is called, and what makes it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from notesmith.publishing import show_notes
from notesmith.publishing.captions import patching
from notesmith.publishing.captions import webvtt as captions_webvtt
from notesmith.publishing.chapters import ffmetadata, matroska, otio, podcast, stamps, vorbis, webvtt
from notesmith.publishing.charts import CHARTS, PHONE
from notesmith.publishing.charts.files import in_words, png_of, svg_of
from notesmith.publishing.clips import concat, listing
from notesmith.publishing.clips import otio as clips_otio
from notesmith.publishing.episode import Episode
from notesmith.publishing.tables import faithful_csv, parquet, rows_json, spreadsheet_csv
from notesmith.publishing.tables.forms import of, workbook
from notesmith.publishing.tables.records import records
from notesmith.publishing.tables.samples import samples


@dataclass(frozen=True)
class Kind:
    """One thing published."""

    name: str
    """What `--only` calls it; the part before a hyphen names it together with its like (`chapters`)."""
    suffix: str
    """What follows the episode's name and a full stop; `*` stands for the ending of the captions."""
    says: str
    """What it is, on one line."""
    make: Callable[[Episode], str | bytes | None]
    """Makes it; None where the notes have nothing to say, and then there is no file."""
    extra: str | None = None
    """The extra of the package that must be installed for it, such as `otio` for `notesmith[otio]`."""
    needs: Literal["captions", "media"] | None = None
    """What must be at hand besides the notes."""


KINDS: tuple[Kind, ...] = (
    Kind("show-notes-page", "show-notes.html", "show notes as one page that needs nothing else", show_notes.page),
    Kind("show-notes-markdown", "show-notes.md", "show notes as Markdown", show_notes.markdown),
    Kind("show-notes-text", "show-notes.txt", "show notes as plain text, cut to a length", show_notes.plain),
    Kind("for-the-author", "for-the-author.md", "what to look at before publishing, not for the audience",
         show_notes.for_the_author),
    Kind("chapters-webvtt", "chapters.vtt", "chapters for a page's player", webvtt.render),
    Kind("chapters-podcast", "chapters.json", "chapters for a podcast's feed", podcast.render),
    Kind("chapters-times", "chapters.txt", "chapters as a list of times, for a description", stamps.render),
    Kind("chapters-ffmetadata", "chapters.ffmeta", "chapters as ffmpeg reads them", ffmetadata.render),
    Kind("chapters-matroska", "chapters.xml", "chapters as mkvmerge reads them", matroska.render),
    Kind("chapters-vorbis", "chapters.comments", "chapters as Vorbis comments, for FLAC, Ogg and Opus", vorbis.render),
    Kind("chapters-otio", "chapters.otio", "chapters as markers, for editors", otio.render, extra="otio"),
    Kind("captions", "corrected.*", "the captions, mended in place", patching.render, needs="captions"),
    Kind("captions-webvtt", "captions.vtt", "mended captions for a page's player", captions_webvtt.render,
         needs="captions"),
    Kind("clips", "clips.txt", "the moments worth cutting, with their words", listing.render),
    Kind("clips-otio", "clips.otio", "the same as markers, for editors", clips_otio.render, extra="otio"),
    Kind("clips-concat", "clips.ffconcat", "the same as a list that ffmpeg plays, to be put beside the recording",
         concat.render, needs="media"),
    Kind("tables-records-csv", "records.csv", "every record as CSV, nothing changed", of(records, faithful_csv.render)),
    Kind("tables-records-spreadsheet", "records.safe.csv", "every record as CSV without a formula in it",
         of(records, spreadsheet_csv.render)),
    Kind("tables-records-json", "records.json", "every record as a row of JSON", of(records, rows_json.render)),
    Kind("tables-records-parquet", "records.parquet", "every record as Parquet", of(records, parquet.render),
         extra="parquet"),
    Kind("tables-samples-csv", "samples.csv", "samples by terms as CSV, nothing changed",
         of(samples, faithful_csv.render)),
    Kind("tables-samples-spreadsheet", "samples.safe.csv", "samples by terms as CSV without a formula in it",
         of(samples, spreadsheet_csv.render)),
    Kind("tables-samples-json", "samples.json", "samples by terms as rows of JSON", of(samples, rows_json.render)),
    Kind("tables-samples-parquet", "samples.parquet", "samples by terms as Parquet", of(samples, parquet.render),
         extra="parquet"),
    Kind("tables-workbook", "tables.xlsx", "terms, samples and records as one workbook", workbook),
    *(Kind(f"charts-{at.name}-svg", f"{at.name}.svg", f"{at.says}, as SVG", svg_of(at)) for at in CHARTS),
    *(Kind(f"charts-{at.name}-png", f"{at.name}.png", f"{at.says}, as PNG", png_of(at)) for at in CHARTS),
    *(Kind(f"charts-{at.name}-narrow", f"{at.name}.narrow.png", f"{at.says}, as PNG for a telephone",
           png_of(at, PHONE)) for at in CHARTS),
    Kind("charts-words", "charts.md", "the charts in words and tables, to stand beside them", in_words),
)
"""In the order in which they are listed and made."""
