"""Looking the lexicon over: everything that does not fit together, in one list."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Literal

from notesmith.errors import LexiconError
from notesmith.lexicon.folders import Domain, Row, concept_of, own_domains, own_folder, read_folder, wrong_in
from notesmith.lexicon.model import Concept
from notesmith.lexicon.words import pieces

Severity = Literal["error", "warning"]
# Every descriptor is a kind of one of these.
TOPS = frozenset((
    "taste", "mouthfeel", "finish-quality", "overall-quality", "appearance-quality", "colour", "fruity", "floral",
    "herbal", "spicy", "nutty", "vegetal", "sweet-things", "baked", "dairy", "cereal", "roasted", "woody", "earthy",
    "smoky-burnt", "animal", "marine", "savoury-things", "fermented", "chemical", "mineral", "household", "fabric",
    "place",
))  # fmt: skip
# Words for where a perception lies, or for liking it: neither says what is perceived.
CONTAINERS = frozenset((
    "note", "hint", "taste", "aroma", "smell", "odour", "odor", "scent", "flavour", "flavor", "nose", "palate",
    "finish", "aftertaste", "mouthfeel", "texture", "appearance", "profile", "quality", "undertone", "touch", "trace",
))  # fmt: skip
LIKING = frozenset((
    "amazing", "awesome", "awful", "bad", "beautiful", "delicious", "delightful", "disgusting", "enjoyable",
    "excellent", "fabulous", "fantastic", "good", "gorgeous", "great", "horrible", "incredible", "lovely", "nice", "ok",
    "okay", "perfect", "pleasant", "stunning", "superb", "tasty", "terrible", "unpleasant", "wonderful", "yummy",
))  # fmt: skip
COMMON_WORDS = "common-words.txt"


@dataclass(frozen=True, slots=True, order=True)
class Finding:
    """One thing that does not fit: how bad, where, and what."""

    severity: Severity
    where: str
    what: str

    def __str__(self) -> str:
        return f"{self.where}: {self.severity}: {self.what}"


@dataclass(frozen=True, slots=True)
class Placed:
    """A label row and the domain it stands in."""

    domain: Domain
    row: Row

    @property
    def where(self) -> str:
        """File and line."""
        return self.domain.place(self.row.line)


def check(folders: Sequence[Path] = ()) -> list[Finding]:
    """What does not fit in our lexicon or, where folders are named, in those folders laid over ours.

    Raises LexiconError only for files that cannot be parsed at all.
    """
    ours = own_domains()
    users = [domain for folder in folders for domain in read_folder(folder)]
    return check_domains(users, ours) if users else check_domains(ours)


def check_domains(domains: Sequence[Domain], beneath: Sequence[Domain] = ()) -> list[Finding]:
    """What does not fit in the domains, given those that lie beneath them; errors first."""
    every = [*beneath, *domains]
    ours, users = (beneath, domains) if beneath else (domains, ())
    concepts = _sound_concepts(ours, users)
    rows = [Placed(domain, row) for domain in domains for row in domain.rows]
    sound = [placed for placed in rows if not wrong_in(placed.row) and placed.row.concept in concepts]
    findings = [
        *_wrong_concepts(domains, beneath),
        *_wrong_places(domains, concepts),
        *_unknown_sources(domains, every),
        *_wrong_rows(rows, concepts),
        *_preferred(domains, sound, beneath),
        *_clashes(sound),
        *_misheard(sound, beneath),
        *_empty_words(sound),
        *_unguarded(sound, concepts),
    ]
    return sorted(set(findings))


@cache
def common_words() -> frozenset[str]:
    """Everyday words that have other senses than a perception."""
    lines = (own_folder() / COMMON_WORDS).read_text("utf-8").split("\n")
    return frozenset(line.strip() for line in lines if line and not line.startswith("#"))


def _sound_concepts(ours: Iterable[Domain], users: Iterable[Domain]) -> dict[str, Concept]:
    """The concepts that pass on their own: the first of ours, and the user's laid over it."""
    concepts: dict[str, Concept] = {}
    for domain in ours:
        for concept_id, fields in domain.concepts.items():
            if concept_id not in concepts:
                _lay(concepts, concept_id, fields, domain)
    for domain in users:
        for concept_id, fields in domain.concepts.items():
            before = concepts[concept_id].model_dump() if concept_id in concepts else {}
            _lay(concepts, concept_id, {**before, **fields}, domain)
    return concepts


def _lay(concepts: dict[str, Concept], concept_id: str, fields: Mapping[str, Any], domain: Domain) -> None:
    with suppress(LexiconError):  # told by _wrong_concepts
        concepts[concept_id] = concept_of(concept_id, fields, domain)


def _wrong_concepts(domains: Sequence[Domain], beneath: Sequence[Domain]) -> Iterator[Finding]:
    below = {concept_id: fields for domain in beneath for concept_id, fields in domain.concepts.items()}
    seen: dict[str, Domain] = {}
    for domain in domains:
        for concept_id, fields in domain.concepts.items():
            where = domain.place_of(concept_id)
            if concept_id in seen:
                yield Finding("error", where, f"concept {concept_id} is defined in {seen[concept_id].name} too")
            seen.setdefault(concept_id, domain)
            if not _is_kebab(concept_id):
                yield Finding("error", where, f"id {concept_id!r} is not lower-case words joined by hyphens")
            try:
                concept_of(concept_id, {**below.get(concept_id, {}), **fields}, domain)
            except LexiconError as error:
                yield Finding("error", error.where, error.what)


def _is_kebab(concept_id: str) -> bool:
    return concept_id == concept_id.lower() and concept_id.isascii() and concept_id.replace("-", "").isalnum()


def _wrong_places(domains: Sequence[Domain], concepts: dict[str, Concept]) -> Iterator[Finding]:
    for domain in domains:
        for concept_id in domain.concepts:
            concept = concepts.get(concept_id)
            wrong = concept and _wrong_place(concept, concepts)
            if wrong:
                yield Finding("error", domain.place_of(concept_id), f"concept {concept_id}: {wrong}")


def _wrong_place(concept: Concept, concepts: dict[str, Concept]) -> str | None:
    if concept.broader and concept.broader not in concepts:
        return f"broader {concept.broader!r} is defined nowhere"
    line = _line_up(concept, concepts)
    if line[-1] in line[:-1]:
        return f"it is broader than itself: {' < '.join(line)}"
    if concept.sort == "descriptor" and not concept.facets:
        return "a descriptor needs facets"
    if concept.sort != "descriptor" and concept.facets:
        return f"a {concept.sort} has no facets"
    if concept.sort == "descriptor" and line[-1] not in TOPS:
        return f"its line ends at {line[-1]!r}, which is no top concept"
    return None


def _line_up(concept: Concept, concepts: dict[str, Concept]) -> list[str]:
    """The concept and all that is broader, up to a top, a gap, or the first repetition."""
    line = [concept.id]
    above = concepts.get(concept.broader or "")
    while above:
        line.append(above.id)
        above = None if above.id in line[:-1] else concepts.get(above.broader or "")
    return line


def _unknown_sources(domains: Sequence[Domain], every: Sequence[Domain]) -> Iterator[Finding]:
    known = {source for domain in every for source in domain.sources}
    for domain in domains:
        for concept_id, fields in domain.concepts.items():
            if fields.get("source", "everyday") not in known | {"everyday"}:
                what = f"concept {concept_id}: source {fields['source']!r} is in no sources.toml"
                yield Finding("warning", domain.place_of(concept_id), what)


def _wrong_rows(rows: Iterable[Placed], concepts: dict[str, Concept]) -> Iterator[Finding]:
    for placed in rows:
        wrong = wrong_in(placed.row)
        if not wrong and placed.row.concept not in concepts:
            wrong = f"label {placed.row.label!r} is of concept {placed.row.concept!r}, which is defined nowhere"
        if wrong:
            yield Finding("error", placed.where, wrong)


def _preferred(domains: Sequence[Domain], sound: Sequence[Placed], beneath: Sequence[Domain]) -> Iterator[Finding]:
    counts = Counter(placed.row.concept for placed in sound if placed.row.kind == "preferred")
    below = {row.concept for domain in beneath for row in domain.rows if row.kind == "preferred"}
    for domain in domains:
        for concept_id in domain.concepts:
            count = counts[concept_id]
            if count > 1 or (count == 0 and concept_id not in below):
                what = f"concept {concept_id} has {count or 'no'} preferred label{'s' * (count > 1)}"
                yield Finding("error", domain.place_of(concept_id), what)


def _clashes(sound: Sequence[Placed]) -> Iterator[Finding]:
    """A label written twice; across domains the earlier keeps it."""
    first: dict[tuple[bool, tuple[str, ...]], Placed] = {}
    for placed in sound:
        row, key = placed.row, (placed.row.kind == "misheard", pieces(placed.row.label))
        known = first.setdefault(key, placed)
        if known is placed:
            continue
        if known.row.concept == row.concept:
            yield Finding("warning", placed.where, f"label {row.label!r} is listed twice for {row.concept}")
        else:
            severity: Severity = "error" if known.domain is placed.domain else "warning"
            what = f"label {row.label!r} of {row.concept} belongs to {known.row.concept} ({known.where})"
            yield Finding(severity, placed.where, what)


def _misheard(sound: Sequence[Placed], beneath: Sequence[Domain]) -> Iterator[Finding]:
    ordinary: dict[tuple[str, ...], str] = defaultdict(str)
    below = [row for domain in beneath for row in domain.rows]
    for row in (*below, *(placed.row for placed in sound)):
        if row.kind in ("preferred", "synonym"):
            ordinary[pieces(row.label)] = row.concept
    common = common_words()
    for placed in sound:
        row = placed.row
        if row.kind == "misheard" and pieces(row.label) in ordinary:
            what = f"misheard {row.label!r} is a right label of {ordinary[pieces(row.label)]}"
            yield Finding("error", placed.where, what)
        elif row.kind == "misheard" and row.label in common:
            yield Finding("warning", placed.where, f"misheard {row.label!r} is an everyday word in its own right")


def _empty_words(sound: Sequence[Placed]) -> Iterator[Finding]:
    for placed in sound:
        word = " ".join(pieces(placed.row.label))
        if word in CONTAINERS and placed.row.kind != "removed":
            yield Finding("error", placed.where, f"label {word!r} only says where a perception lies")
        elif word in LIKING and placed.row.kind != "removed":
            yield Finding("error", placed.where, f"label {word!r} only says that it is liked or not")


def _unguarded(sound: Sequence[Placed], concepts: dict[str, Concept]) -> Iterator[Finding]:
    common = common_words()
    for placed in sound:
        row = placed.row
        ordinary = row.kind in ("preferred", "synonym") and concepts[row.concept].sort == "descriptor"
        if ordinary and row.use != "guarded" and row.label in common:
            yield Finding("warning", placed.where, f"label {row.label!r} has everyday senses and is not guarded")
