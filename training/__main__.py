"""`python -m training`: rows from recordings, an encoder from rows, the program's files from encoder and answers.

`rows` needs the program; the other steps need PyTorch, and a GPU where there is one.
"""

import argparse
import logging
import sys
from pathlib import Path

from training.split import FOLDS, RECORDINGS

LISTENING = Path("notesmith/listening")
MODEL = LISTENING / "model"


def main(arguments: list[str]) -> None:
    """Run one step; each reads the files of the one before."""
    logging.basicConfig(level=logging.INFO, format="%(message)s")
    parser = argparse.ArgumentParser(prog="python -m training", description=__doc__)
    steps = parser.add_subparsers(dest="step", required=True)
    rows = steps.add_parser("rows", help="listen to every recording by the rules, and write what is learned from")
    held = steps.add_parser("held-out", help="fit without one fold of product kinds, and answer for it")
    whole = steps.add_parser("fit", help="fit to all recordings")
    export = steps.add_parser("export", help="write the encoder as the file that the program reads")
    measure = steps.add_parser("measure", help="score the notes that held-out answers make, beside the rules' own")
    turns = steps.add_parser("turns", help="fit what speaks for turning to another sample, by held-out answers")
    preparations = steps.add_parser("preparations", help="fit what speaks for a preparation")
    for step in (measure, turns):
        step.add_argument("answers", type=Path, nargs="+")
    for step in (measure, turns, preparations):
        step.add_argument("--recordings", type=Path, default=RECORDINGS)
    measure.add_argument("--bare", action="store_true", help="without case and punctuation")
    for step in (rows, held, whole, export):
        step.add_argument("rows", type=Path)
    rows.add_argument("--recordings", type=Path, default=RECORDINGS)
    held.add_argument("answers", type=Path)
    held.add_argument("--fold", type=int, required=True, choices=range(FOLDS))
    whole.add_argument("encoder", type=Path)
    export.add_argument("encoder", type=Path)
    for step in (held, whole):
        step.add_argument("--base", type=Path, help="other weights to begin with than the package's (safetensors)")
        step.add_argument("--epochs", type=int, default=45)
        step.add_argument("--alone", action="store_true", help="hide what the rules have judged")
    a = parser.parse_args(arguments)
    {
        "rows": _rows, "held-out": _held_out, "fit": _fit, "export": _export, "measure": _measure, "turns": _turns,
        "preparations": _preparations,
    }[a.step](a)  # fmt: skip


def _rows(a: argparse.Namespace) -> None:
    from training.listened import listened  # noqa: PLC0415 - each step imports only what it needs
    from training.rows import save  # noqa: PLC0415

    rows, layout = listened(a.recordings, MODEL / "pieces.txt")
    save(rows, layout, a.rows)


def _held_out(a: argparse.Namespace) -> None:
    import numpy as np  # noqa: PLC0415

    from training.fit import Recipe  # noqa: PLC0415
    from training.held_out import answer_held_out  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    rows, layout = load(a.rows)
    recipe = Recipe(epochs=a.epochs, alone=a.alone)
    np.savez_compressed(a.answers, **answer_held_out(rows, layout, a.fold, recipe, a.base, _device()))


def _fit(a: argparse.Namespace) -> None:
    import torch  # noqa: PLC0415

    from training.fit import Recipe, fit  # noqa: PLC0415
    from training.model import pretrained  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    rows, layout = load(a.rows)
    encoder = fit(pretrained(a.base, layout), rows, Recipe(epochs=a.epochs, alone=a.alone), _device())
    torch.save({name: value.half().cpu() for name, value in encoder.state_dict().items()}, a.encoder)


def _device() -> str:
    import torch  # noqa: PLC0415

    return "cuda" if torch.cuda.is_available() else "cpu"


def _export(a: argparse.Namespace) -> None:
    from training.export import export  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    export(a.encoder, load(a.rows)[1], MODEL)


def _turns(a: argparse.Namespace) -> None:
    from training.examples import LAYOUT  # noqa: PLC0415
    from training.measured import choices_of, heard_again  # noqa: PLC0415
    from training.turns import fit, written  # noqa: PLC0415

    everything = heard_again(a.recordings, MODEL / "pieces.txt", a.answers, LAYOUT, bare=False)
    worths = fit([c for h in everything for c in choices_of(h)])
    what = "the encoder's answer and every sign of a turn are worth"
    (LISTENING / "turning_weights.py").write_text(written(worths, what, "turns"), encoding="utf-8")


def _preparations(a: argparse.Namespace) -> None:
    from training.preparations import all_choices  # noqa: PLC0415
    from training.turns import fit, written  # noqa: PLC0415

    worths = fit(list(all_choices(a.recordings)))
    what = "every sign of a preparation is worth"
    (LISTENING / "preparing_weights.py").write_text(written(worths, what, "preparations"), encoding="utf-8")


def _measure(a: argparse.Namespace) -> None:
    from training.examples import LAYOUT  # noqa: PLC0415
    from training.measured import measure  # noqa: PLC0415

    for line in measure(a.recordings, MODEL / "pieces.txt", a.answers, LAYOUT, bare=a.bare):
        sys.stdout.write(f"{line}\n")


if __name__ == "__main__":
    main(sys.argv[1:])
