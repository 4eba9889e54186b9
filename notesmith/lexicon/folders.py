"""Reading the lexicon's folders: concepts in TOML, labels in tab-separated rows."""

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.resources import files
from pathlib import Path
from typing import Any, NamedTuple, get_args

from pydantic import ValidationError

from notesmith.errors import LexiconError
from notesmith.lexicon.model import Concept, Form, Kind, Label
from notesmith.lexicon.words import pieces

CONCEPTS, LABELS, SOURCES = "concepts.toml", "labels.tsv", "sources.toml"
COLUMNS = ("concept", "label", "kind", "form", "use")
# A label that two of our domains claim belongs to the earlier one.
DOMAINS = ("sensory", "things", "food", "tea", "coffee", "wine", "beer", "spirits",
           "chocolate", "cheese", "oil", "honey", "plates")  # fmt: skip
KINDS, FORMS = frozenset(get_args(Kind)), frozenset(get_args(Form))


class Row(NamedTuple):
    """One row of a label file, as written, with the line it stands on."""

    concept: str
    label: str
    kind: str
    form: str
    use: str
    line: int
    extra: int = 0


@dataclass(frozen=True)
class Domain:
    """One folder of the lexicon as read, nothing checked but that the files can be parsed."""

    path: Path
    concepts: Mapping[str, dict[str, Any]] = field(default_factory=dict)
    rows: tuple[Row, ...] = ()
    sources: Mapping[str, Any] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """The domain's name: that of its folder."""
        return self.path.name

    def place(self, line: int) -> str:
        """The label file and one of its lines."""
        return f"{self.path / LABELS}:{line}"

    def place_of(self, concept_id: str) -> str:
        """The file and line where a concept is defined."""
        path = self.path / CONCEPTS
        opening = re.compile(rf"^\s*\[\s*[\"']?{re.escape(concept_id)}[\"']?\s*\]")
        lines = path.read_text("utf-8").splitlines()
        return f"{path}:{next((number for number, line in enumerate(lines, 1) if opening.match(line)), 1)}"


def own_folder() -> Path:
    """Where our own data lie: inside an installed package, or beside it in a checkout."""
    package = Path(str(files("notesmith.lexicon")))
    installed = package / "data"
    return installed if installed.is_dir() else package.parents[1] / "lexicon"


def own_domains() -> list[Domain]:
    """Our own domains, those of the highest rank first."""
    return read_folder(own_folder())


def read_folder(folder: Path) -> list[Domain]:
    """The domains of a folder: the folder itself where it holds the files, else its subfolders by rank.

    Raises LexiconError where the folder holds no lexicon or a file cannot be parsed.
    """
    found = [place for place in (folder, *_subfolders(folder)) if _is_domain(place)]
    if not found:
        raise LexiconError(f"no {CONCEPTS} or {LABELS} found", where=str(folder), mend="name a folder that holds them")
    return [read_domain(place) for place in found]


def read_domain(folder: Path) -> Domain:
    """One folder's files; a file that is missing counts as empty."""
    labels = folder / LABELS
    rows = tuple(_rows(labels)) if labels.exists() else ()
    return Domain(folder, _toml(folder / CONCEPTS), rows, _toml(folder / SOURCES))


def concept_of(concept_id: str, fields: Mapping[str, Any], domain: Domain) -> Concept:
    """The checked concept. Raises LexiconError naming the field that is wrong."""
    try:
        return Concept.model_validate({"domain": domain.name, **fields, "id": concept_id}, strict=False)
    except ValidationError as error:
        first = error.errors()[0]
        what = f"concept {concept_id}: {'.'.join(map(str, first['loc']))}: {first['msg'].lower()}"
        raise LexiconError(what, where=domain.place_of(concept_id)) from None


def wrong_in(row: Row) -> str | None:
    """What is wrong with a row taken by itself, or None."""
    if row.extra:
        return f"{len(COLUMNS)} columns expected, {len(COLUMNS) + row.extra} found"
    if not row.concept or not pieces(row.label):
        return "a row needs a concept and a label"
    if row.kind not in KINDS:
        return f"kind is {row.kind!r}, not one of {', '.join(sorted(KINDS))}"
    if row.form not in FORMS or (row.kind in ("preferred", "synonym") and not row.form):
        return f"form is {row.form!r}, not noun, adjective, verb or phrase"
    if row.use not in ("", "guarded"):
        return f"use is {row.use!r}, not empty or guarded"
    return None


def label_of(row: Row) -> Label:
    """The label a sound row stands for."""
    return Label(row.label, row.concept, row.kind, row.form, row.use == "guarded", False)  # type: ignore[arg-type]


def _subfolders(folder: Path) -> Sequence[Path]:
    rank = {name: place for place, name in enumerate(DOMAINS)}
    inside = [place for place in folder.iterdir() if place.is_dir()] if folder.is_dir() else []
    return sorted(inside, key=lambda place: (rank.get(place.name, len(rank)), place.name))


def _is_domain(folder: Path) -> bool:
    return (folder / CONCEPTS).is_file() or (folder / LABELS).is_file()


def _toml(path: Path) -> dict[str, Any]:
    if not path.exists():
        return {}
    try:
        tables = tomllib.loads(_text(path))
    except tomllib.TOMLDecodeError as error:
        line = re.search(r"line (\d+)", str(error))
        raise LexiconError(str(error), where=f"{path}:{line[1] if line else 1}") from None
    stray = next((name for name, table in tables.items() if not isinstance(table, dict)), None)
    if stray:
        raise LexiconError(f"{stray!r} stands outside a table", where=str(path), mend="write it under a [concept]")
    return tables


def _rows(path: Path) -> Iterator[Row]:
    lines = _text(path).splitlines()
    if not lines or tuple(lines[0].split("\t")) != COLUMNS:
        raise LexiconError("the header line is wrong", where=f"{path}:1", mend=f"write {'<tab>'.join(COLUMNS)}")
    for number, line in enumerate(lines[1:], 2):
        cells = line.split("\t")
        if any(cells) and tuple(cells) != COLUMNS:  # a header pasted along with rows does no harm
            concept, label, kind, form, use = map(str.strip, (*cells, "", "", "", "")[:5])
            yield Row(concept, label, kind, form, use, number, max(0, len(cells) - 5))


def _text(path: Path) -> str:
    try:
        return path.read_text("utf-8-sig")
    except UnicodeDecodeError:
        raise LexiconError("the file is not UTF-8 text", where=str(path), mend="save it as UTF-8") from None
    except OSError as error:
        raise LexiconError(error.strerror or "cannot be read", where=str(path)) from None
