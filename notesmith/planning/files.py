"""The files of a plan: what it is drawn from, what is written of it, and what is revealed at the end."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from notesmith.errors import SheetError
from notesmith.notes_file import read_notes
from notesmith.planning.cards import Paper, pouring_page, tasting_page
from notesmith.planning.drawing import Plan, draw
from notesmith.planning.key import read_key, reveal
from notesmith.planning.methods import every_method
from notesmith.planning.rounds import read_contest, told, with_notes
from notesmith.planning.wishes import read_wishes
from notesmith.publishing.files import make_folder, refuse_existing, write_file
from notesmith.publishing.json_text import render
from notesmith.sheet import check_sheet, read_sheet, sheet_to_toml


@dataclass(frozen=True)
class Drawn:
    """The files that were written, and what is to be said about them."""

    written: tuple[Path, ...]
    said: tuple[str, ...]


def plan_template() -> str:
    """An empty plan in TOML, with a word about every field."""
    return Path(__file__).with_name("plan.template.toml").read_text("utf-8")


def told_methods() -> str:
    """Every published method on a line, with its source."""
    width = max(map(len, every_method()))
    lines = (f"{method.id:{width}}  {method.name} ({method.source})" for method in every_method().values())
    return "\n".join(lines) + "\n"


def draw_files(
    wishes: Path, folder: Path, paper: Paper, *, seed: str | None, after: Sequence[Path], force: bool
) -> Drawn:
    """Draw a plan and write its files into the folder, named like the wishes.

    Raises:
        SheetError: the wishes or an earlier sheet will not do.
        OutputError: a file is there already and may not be replaced, or cannot be written.
    """
    used = {sample.id for sheet in after for sample in read_sheet(sheet).samples}
    plan = draw(read_wishes(wishes), seed, used)
    for sheet in (plan.sheet, reveal(plan.sheet, plan.key)):
        check_sheet(sheet, wishes)
    name = wishes.name.removesuffix(wishes.suffix).removesuffix(".plan")
    texts = {folder / f"{name}.{suffix}": text for suffix, text in _texts(plan, paper)}
    for path in texts:
        refuse_existing(path, force)
    make_folder(folder)
    for path, text in texts.items():
        write_file(path, text, force=force)
    return Drawn(tuple(texts), tuple(_said(plan)))


def _texts(plan: Plan, paper: Paper) -> Iterator[tuple[str, str]]:
    yield "sheet.toml", sheet_to_toml(plan.sheet)
    yield "key.json", plan.key.model_dump_json(indent=1, exclude_defaults=True) + "\n"
    yield "pouring.html", pouring_page(plan, paper)
    yield "tasting.html", tasting_page(plan, paper)


def _said(plan: Plan) -> Iterator[str]:
    over = "the order" if len(plan.rounds) == 1 else "the order over all rounds"
    if plan.fairness.balance == "full":
        yield f"{over} is balanced for place and for what comes before"
    else:
        yield (
            f"{over} is balanced in part only: the most and the least often differ by {plan.fairness.place_spread} "
            f"at a place and by {plan.fairness.neighbour_spread} after another sample"
        )
    yield f"show this before you taste, to prove the key afterwards: {plan.sheet.commitment}"


def revealed(sealed: Path, key: Path) -> str:
    """A sealed sheet, or notes taken with one, with the products filled in, in the form they were read in.

    Raises:
        SheetError: the key is not the one that was sealed, or one of them cannot be read.
        NotesFileError: the notes cannot be read.
    """
    opened = read_key(key)
    try:
        if sealed.suffix == ".json" and not sealed.name.endswith(".sheet.json"):
            notes = read_notes(sealed)
            return render(notes.model_copy(update={"sheet": reveal(notes.sheet, opened)}))
        return sheet_to_toml(reveal(read_sheet(sealed), opened))
    except SheetError as error:
        raise SheetError(error.what, where=error.where or str(sealed), mend=error.mend) from None


def told_rounds(contest: Path, notes: Sequence[Path]) -> str:
    """A contest over many episodes as text, with what further notes add to it.

    Raises:
        SheetError: the contest cannot be read, or the notes do not fit it.
        NotesFileError: notes cannot be read.
    """
    return told(with_notes(read_contest(contest), [read_notes(path) for path in notes]))
