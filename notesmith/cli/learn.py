"""`notesmith learn`: what corrections teach, shown and then written."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notesmith.cli.speaking import Force

if TYPE_CHECKING:
    from notesmith.review.learning import Lesson, Reviewed


def learn(
    folder: Annotated[Path, typer.Argument(metavar="DIR", help="A folder of captions and their corrections.")],
    to: Annotated[
        Path | None, typer.Option("--to", metavar="DIR", help="Write what was learnt into this folder.")
    ] = None,
    force: Force = False,
) -> None:
    """Turn corrections into words for a lexicon of your own and into recordings to measure a listener with.

    \b
    Examples:
      notesmith learn shelf/                  show what there is to learn, and write nothing
      notesmith learn shelf/ --to learnt/     learnt/lexicon/labels.tsv and learnt/recordings/NAME.gold.json

    A recording is written only once everything in it that deserves a look has had one. Look the words through
    before you use them: notesmith lexicon check learnt/lexicon
    """
    from notesmith.lexicon import Lexicon
    from notesmith.review.learning import lessons, reviewed_in

    reviewed = reviewed_in(folder)
    learned = lessons(reviewed, Lexicon.load())
    _show(reviewed, learned)
    if to:
        _write(reviewed, learned, to, force=force)
    else:
        typer.echo("Nothing was written; --to names a folder for it.")


def _show(reviewed: "list[Reviewed]", learned: "list[Lesson]") -> None:
    from notesmith.publishing.plain import one_line

    for one in reviewed:
        ready = "ready to measure with" if one.is_whole else "not yet looked through"
        typer.echo(f"{one_line(str(one.captions))}: {one.looked_at} of {one.due} looked at, {ready}")
    for lesson in learned:
        row = lesson.row
        as_what = "is misheard for" if row.kind == "misheard" else "stands for"
        now = f", now for {lesson.now}" if lesson.now else ""
        typer.echo(f'{lesson.times} x "{one_line(row.label)}" {as_what} {row.concept}{now}')


def _write(reviewed: "list[Reviewed]", learned: "list[Lesson]", to: Path, *, force: bool) -> None:
    from notesmith.review.learning import write_annotation, write_lessons

    labels = write_lessons(learned, to / "lexicon") if learned else None
    whole = [one for one in reviewed if one.is_whole]
    written = [path for one in whole for path in write_annotation(one, to / "recordings", force=force)]
    for path in [*([labels] if labels else []), *written]:
        typer.echo(path)
