"""The tasting sheet: read and checked from TOML or JSON, written as TOML."""

import json
import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from notesmith.errors import SheetError
from notesmith.filled_in import Form, read_filled_in
from notesmith.records import Sheet, SheetPreparation, SheetSample, SheetServing

SUFFIXES = (".sheet.toml", ".sheet.json")

# Words said in every other sentence: alone, as a name, they would turn all talk into talk of one sample.
COMMON_WORDS = frozenset(
    """
    i you he she we they me him her us them my your his our their its all each every either neither none some any
    many much more most less few something anything nothing everything someone and or but so if as of in on at to
    for with from by up out is are was were be been am do does did have has had will would could should may
    might must no not yes yeah okay ok oh um uh well just very really quite too also only here there now then again
    what which who when where why how like thing things stuff sample taste smell flavour flavor aroma note notes
    """.split()
)
# Words that point at anything: a name made of nothing else names nothing.
POINTING_WORDS = frozenset(
    """
    a an the this that these those it one ones other others another both same
    good nice bad great fine better best worse worst lovely amazing
    """.split()
)
NUMBER_WORDS = "zero one two three four five six seven eight nine ten eleven twelve".split()
Named = tuple[str, SheetSample | SheetPreparation]
SHEET = Form(
    Sheet,
    {"samples": SheetSample, "preparations": SheetPreparation, "servings": SheetServing},
    called="the sheet",
    begun_with="notesmith sheet new",
)


def read_sheet(path: Path) -> Sheet:
    """Read a tasting sheet from TOML or JSON.

    Raises:
        SheetError: it cannot be read, holds what no sheet has, or names two things alike.
    """
    sheet = read_filled_in(path, SHEET)
    check_sheet(sheet, path)
    return sheet


def find_sheet(captions: Path) -> Path | None:
    """Find the sheet that lies beside the captions: talk.sheet.toml or talk.sheet.json beside talk.vtt.

    Raises:
        SheetError: both are there.
    """
    found = [path for suffix in SUFFIXES if (path := captions.with_name(captions.stem + suffix)).is_file()]
    if len(found) > 1:
        raise SheetError(
            f"two sheets lie beside it, {found[0].name} and {found[1].name}",
            where=str(captions),
            mend="remove one, or name the one to use with --sheet",
        )
    return found[0] if found else None


def write_template() -> str:
    """An empty sheet in TOML, with a word about every field."""
    return Path(__file__).with_name("sheet.template.toml").read_text("utf-8")


def sheet_to_toml(sheet: Sheet) -> str:
    """Write a sheet as TOML, leaving out what it does not say.

    >>> print(sheet_to_toml(Sheet(title="Two oolongs", samples=(SheetSample(id="A", price=9.5),))), end="")
    title = "Two oolongs"
    <BLANKLINE>
    [[samples]]
    id = "A"
    price = 9.5
    """
    blocks = [_toml_fields(sheet)]
    for table in SHEET.tables:
        blocks += [f"[[{table}]]\n{_toml_fields(item)}" for item in getattr(sheet, table)]
    return "\n".join(block for block in blocks if block)


def _toml_fields(record: BaseModel) -> str:
    fields = record.model_dump(exclude_defaults=True, exclude=set(SHEET.tables))
    return "".join(f"{name} = {_toml_value(value)}\n" for name, value in fields.items())


def _toml_value(value: Any) -> str:
    # JSON's strings, numbers, booleans and arrays are TOML's, but for the one control character it leaves as it is.
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")


def check_sheet(sheet: Sheet, path: Path) -> None:
    """Refuse a sheet that could be understood in two ways.

    Raises:
        SheetError: it lists no samples, names two things alike, or serves what it does not list.
    """
    if not sheet.samples:
        raise SheetError("lists no samples", where=str(path), mend="add at least one [[samples]] with an id")
    _refuse_empty(sheet, path)
    _refuse_common(sheet, path)
    _refuse_shared(sheet, path)
    _refuse_unlisted(sheet, path)
    for sample in sheet.samples:
        if sample.currency is not None and not re.fullmatch("[A-Z]{3}", sample.currency):
            what = f"sample {sample.id}: `{sample.currency}` is no currency code"
            raise SheetError(what, where=str(path), mend='write three capital letters, such as "EUR"')


def _named(sheet: Sheet) -> Iterator[Named]:
    yield from (("sample", sample) for sample in sheet.samples)
    yield from (("preparation", preparation) for preparation in sheet.preparations)


def _refuse_empty(sheet: Sheet, path: Path) -> None:
    for kind, thing in _named(sheet):
        if not thing.id.strip():
            raise SheetError(f"a {kind} has an empty id", where=str(path), mend='give it one, such as "1"')
        if not all(alias.strip() for alias in thing.aliases):
            raise SheetError(f"{kind} {thing.id}: an alias is empty", where=str(path), mend="remove it")
    if not all(taster.strip() for taster in sheet.tasters):
        raise SheetError("a taster's name is empty", where=str(path), mend="remove it")


def _refuse_common(sheet: Sheet, path: Path) -> None:
    for kind, thing in _named(sheet):
        for alias in thing.aliases:
            if _is_common(alias) and not _spells(alias, thing.id) and _plain(alias) != _plain(thing.id):
                what = f"{kind} {thing.id}: the alias `{alias}` is said of anything"
                mend = f"write words that only this {kind} is called by, such as `the red one`"
                raise SheetError(what, where=str(path), mend=mend)
        if len(thing.id) > 1 and thing.id.casefold() not in NUMBER_WORDS and _is_common(thing.id):
            what = f"the id `{thing.id}` is said of anything"
            raise SheetError(what, where=str(path), mend="take a number, a letter or a colour")


def _refuse_shared(sheet: Sheet, path: Path) -> None:
    """Refuse a name that two things answer to; two samples may be the same product, poured twice."""
    things = list(_named(sheet))
    owners: dict[str, int] = {}
    for number, (_, thing) in enumerate(things):
        for name in (thing.id, *thing.aliases):
            if owners.setdefault(_plain(name), number) != number:
                raise _clash(name, things[owners[_plain(name)]], things[number], path)
    for number, sample in enumerate(sheet.samples):
        owner = owners.get(_plain(sample.product or ""), number)
        if owner != number:
            raise _clash(sample.product or "", things[owner], things[number], path)
    _refuse_same("taster", sheet.tasters, path)


def _refuse_unlisted(sheet: Sheet, path: Path) -> None:
    """Refuse servings of what the sheet does not list."""
    samples, ways = ({thing.id for thing in things} for things in (sheet.samples, sheet.preparations))
    for number, serving in enumerate(sheet.servings, start=1):
        unlisted = [(f"taster `{serving.taster}`", serving.taster in sheet.tasters)]
        unlisted += [(f"preparation `{serving.preparation}`", serving.preparation in {None, *ways})]
        unlisted += [(f"sample `{sample}`", sample in samples) for sample in serving.order]
        for what, listed in unlisted:
            if not listed:
                raise SheetError(f"servings {number}: there is no {what}", where=str(path), mend="list it, or mend it")


def _clash(name: str, one: Named, other: Named, path: Path) -> SheetError:
    places = [f"{kind} {thing.id}" for kind, thing in (one, other)]
    alike = places[0] == places[1]
    what = f"`{name}` stands twice as an id" if alike else f"`{name}` names both {' and '.join(places)}"
    return SheetError(what, where=str(path), mend="call each by a name of its own")


def _refuse_same(kind: str, names: Iterable[str], path: Path) -> None:
    seen: set[str] = set()
    for name in names:
        if _plain(name) in seen:
            raise SheetError(f"the {kind} `{name}` stands twice", where=str(path), mend="remove one")
        seen.add(_plain(name))


def _plain(name: str) -> str:
    """The name as the ear compares it.

    >>> _plain("The Blue-Dot")
    'blue dot'
    """
    words = re.sub(r"[\s\-]+", " ", name).strip().casefold()
    return re.sub(r"^(the|an?) (?=.)", "", words)


def _is_common(name: str) -> bool:
    words = name.casefold().split()
    return set(words) <= POINTING_WORDS or (len(words) == 1 and words[0] in COMMON_WORDS)


def _spells(alias: str, number: str) -> bool:
    return number.isdecimal() and int(number) < len(NUMBER_WORDS) and _plain(alias) == NUMBER_WORDS[int(number)]
