"""What does not lead to words that say it, found in show notes before and after a form is chosen."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.publishing.episode import Episode, records_of
from notesmith.publishing.show_notes.contents import ShowNotes
from notesmith.publishing.show_notes.lines import Part, parts_of
from notesmith.publishing.show_notes.said import shown_span
from notesmith.records import Evidenced, Observation, Section
from notesmith.transcript import Talk

OURS = frozenset({"h2", "h3", "h4", "dt", "th", "caption", "figure"})
OURS_BY_CLASS = frozenset({"note", "column", "about", "sheet"})
"""Where words of ours stand, or the sheet's."""
NEAR = 400
"""Characters around a record's words within which a quote must stand, verbatim."""
OF_THE_SHEET = frozenset({"sheet", "drafted from the talk"})


def unproven(notes: ShowNotes, episode: Episode) -> Iterator[str]:
    """The parts that no record proves, and those whose records' words are not where they say."""
    talk = Talk.from_captions(episode.captions) if episode.captions else None
    assert talk
    for part in (*notes.verdict, *parts_of(notes.blocks)):
        if not part.proofs and OF_THE_SHEET.isdisjoint(part.marks):
            yield f"nothing proves {part.text!r}"
        yield from (f"{part.text!r} rests on {record.id}, which {fault}" for record in part.proofs
                    if (fault := _fault(record, talk)))  # fmt: skip
        if not _is_the_term(part, talk):
            yield f"{part.text!r} is not in {part.proofs[0].quote!r}"
        if part.style == "quote" and not _is_verbatim(part, talk):
            yield f"nobody says {part.text!r}"


def _fault(record: Evidenced, talk: Talk) -> str | None:
    if talk.text[slice(*record.span)] != record.quote:
        return "the captions do not say"
    if talk.timed and record.start != talk.ms_at(record.span[0]) / 1000:
        return "is said at another time"
    return None


def _is_the_term(part: Part, talk: Talk) -> bool:
    """Whether a term stands in the words of its record, or where they point back to; but for what was mended."""
    if part.style == "quote" or not all(isinstance(record, Observation) for record in part.proofs):
        return True
    if part.text.startswith(("found: ", "denied: ", "unsure: ")):
        return True
    pieces = [piece.strip().casefold() for piece in re.split(r"\[[^\]]*\]", part.text)]
    said = [f"{record.quote} {talk.text[slice(*record.term_span)]}".casefold() for record in part.proofs
            if isinstance(record, Observation)]  # fmt: skip
    return all(piece in said[0] for piece in pieces) if said else True


def _is_verbatim(part: Part, talk: Talk) -> bool:
    """Whether the quote stands around its records, letting what was mended be any words."""
    first, last = part.proofs[0].span[0], part.proofs[-1].span[1]
    around = talk.text[max(0, first - NEAR) : last + NEAR]
    pattern = ".*?".join(re.escape(piece) for piece in re.split(r"\[[^\]]*\]", part.text))
    return re.search(pattern, around) is not None


class Page(HTMLParser):
    """A page as read by a browser's rules of nesting: what is said in it, and where its times lead."""

    VOID = frozenset({"meta", "br", "link", "polygon", "rect", "polyline"})

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[tuple[str, dict[str, str | None]]] = []
        self.loose: list[str] = []
        """Text that stands neither in a part, nor in words of ours."""
        self.parts: list[dict[str, list[str]]] = []
        """For each part its records, its times and where they lead."""
        self.passages: dict[str, str] = {}
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Enter an element."""
        fields = dict(attrs)
        if "data-records" in fields:
            self.parts.append({"records": (fields["data-records"] or "").split(), "times": [], "leads": []})
        if tag == "a" and fields.get("class") == "time" and self._inside("data-records"):
            self.parts[-1]["leads"].append(fields["href"] or "")
        if tag not in self.VOID:
            self.open.append((tag, fields))

    def handle_endtag(self, tag: str) -> None:
        """Leave an element."""
        while self.open and self.open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        """Sort text by where it stands."""
        tags = [tag for tag, _ in self.open]
        number = next((fields["id"] for tag, fields in self.open if tag == "li" and "id" in fields), None)
        if number:
            self.passages[number] = self.passages.get(number, "") + data
        elif tags[-1:] == ["a"] and self._inside("data-records"):
            self.parts[-1]["times"].append(data)
        elif data.strip() and "main" in tags and not self._ours(tags):
            self.loose.append(data.strip())

    def _ours(self, tags: list[str]) -> bool:
        """Headings, labels and charts: words of ours, or names from the sheet."""
        classes = {name for _, fields in self.open for name in (fields.get("class") or "").split()}
        ours = OURS & set(tags) or OURS_BY_CLASS & classes
        return bool(ours) or self._inside("data-records")

    def _inside(self, name: str, value: str | None = None) -> bool:
        return any(name in fields and value in (None, fields[name]) for _, fields in self.open)


def astray(page: Page, episode: Episode) -> Iterator[str]:
    """What a page says without a time that leads to the words of each of its records."""
    records = {record.id: record for record in records_of(episode.notes)}
    yield from (f"no time beside {text!r}" for text in page.loose)
    for part in page.parts:
        words = " ".join(page.passages.get(lead.removeprefix("#"), "") for lead in part["leads"])
        for record in (records[name] for name in part["records"]):
            first, last = (at - record.span[0] for at in shown_span(record))
            opening = " ".join(record.quote[first:last].split()[:6])
            if not isinstance(record, Section) and _time(record) not in part["times"]:
                yield f"no time of {record.id} among {part['times']}"
            if opening not in " ".join(words.split()):
                yield f"{part['leads']} do not lead to {record.quote!r}"


def _time(record: Evidenced) -> str:
    return "words" if record.start is None else format_clock(seconds_to_ms(record.start))
