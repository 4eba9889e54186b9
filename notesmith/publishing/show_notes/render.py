"""The forms of the show notes: Markdown, one HTML page, plain text within a length; and the list for the author.

Each form is a folder of Jinja2 templates. A block is written by the template that has its name, where there is one, and
by `block.j2` otherwise; a folder of the author's own is looked through before ours, template by template.
"""

import re
from collections.abc import Callable
from typing import Any

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, PackageLoader, StrictUndefined, TemplateError
from markupsafe import Markup

from notesmith.errors import OutputError
from notesmith.publishing.episode import Episode
from notesmith.publishing.plain import one_line
from notesmith.publishing.show_notes.author import concerns
from notesmith.publishing.show_notes.contents import compose
from notesmith.publishing.show_notes.plain_text import fitted
from notesmith.publishing.show_notes.story import time_of
from notesmith.records import Evidenced


def page(episode: Episode) -> str:
    """The show notes as one HTML page that needs nothing else."""
    return _written(episode, "html", "page.j2", _shown, notes=episode.once(compose))


def markdown(episode: Episode) -> str:
    """The show notes as Markdown."""
    return _tidy(_written(episode, "markdown", "page.j2", _for_markdown, notes=episode.once(compose)))


def plain(episode: Episode) -> str:
    """The show notes as plain text of at most the episode's length in characters, cut at whole entries."""
    return fitted(episode.once(compose), episode.length)


def for_the_author(episode: Episode) -> str | None:
    """What the author should look at before publishing, as Markdown; None where there is nothing."""
    found = concerns(episode)
    return _tidy(_written(episode, "author", "page.j2", _for_markdown, concerns=found)) if found else None


def _written(episode: Episode, form: str, name: str, finalize: Callable[[Any], Any], **context: Any) -> str:
    try:
        return _environment(episode, form, finalize).get_template(name).render(**context, form=form)
    except TemplateError as error:
        where = getattr(error, "name", None) or form
        mend = "mend it, or leave it out to have the built-in one"
        raise OutputError(f"a template cannot be used: {error}", where=str(where), mend=mend) from error


def _environment(episode: Episode, form: str, finalize: Callable[[Any], Any]) -> Environment:
    """Escaping is on whatever a template is called; a name that no template knows is an error, not a gap."""
    own = [FileSystemLoader(episode.templates / form)] if episode.templates else []
    loader = ChoiceLoader([*own, PackageLoader("notesmith.publishing.show_notes", f"templates/{form}")])
    environment = Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, finalize=finalize, trim_blocks=True,
        lstrip_blocks=True, keep_trailing_newline=True,
    )  # fmt: skip
    environment.filters["drawn"] = Markup  # charts are drawn by us, and escape what they show
    environment.filters["times"] = lambda records: tuple(dict.fromkeys(filter(None, map(time_of, records))))
    environment.filters["once"] = _once
    return environment


def _once(records: tuple[Evidenced, ...], numbers: dict[str, int]) -> list[tuple[str, int]]:
    """The times of records with the numbers of their passages, each once."""
    return list(dict.fromkeys((time_of(record), numbers[record.id]) for record in records))


def _shown(value: Any) -> Any:
    """A text without what steers its reader; a space at either end stays, for it parts words."""
    if isinstance(value, Markup) or not isinstance(value, str):
        return value
    before, after = (" " if edge.isspace() else "" for edge in (value[:1], value[-1:]))
    return f"{before}{one_line(value)}{after}"


def _for_markdown(value: Any) -> Any:
    r"""A text with every sign that Markdown or HTML reads as its own made a plain one.

    >>> print(_for_markdown("1. a|b <c>"))
    1\. a\|b \<c\>
    """
    if isinstance(value, Markup) or not isinstance(value, str):
        return value
    text = re.sub(r"([\\`*_{}\[\]<>#|~&!])", r"\\\1", one_line(value))
    return Markup(re.sub(r"^(\d*)([.)](?= |$)|[-+=])", r"\1\\\2", text) if text else text)  # noqa: S704 - escaped


def _tidy(text: str) -> str:
    """At most one empty line between blocks, and one line end at the end."""
    return re.sub(r"\n{3,}", "\n\n", text).strip() + "\n"
