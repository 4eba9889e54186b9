"""`python -m training`: rows from recordings, the weights from rows, and answers for what was held out."""

import argparse
import csv
import sys
from pathlib import Path

FOLDS = 4


def main(arguments: list[str]) -> None:
    """Run one step; each reads the files of the one before."""
    parser = argparse.ArgumentParser(prog="python -m training", description=__doc__)
    steps = parser.add_subparsers(dest="step", required=True)
    rows = steps.add_parser("rows", help="listen to every annotated recording and write what the fitting needs")
    rows.add_argument("rows", type=Path)
    rows.add_argument("--recordings", type=Path, nargs="+", default=[Path("samples/recordings")])
    held = steps.add_parser("held-out", help="fit without each fold of product kinds, and answer for it")
    held.add_argument("rows", type=Path)
    held.add_argument("answers", type=Path)
    held.add_argument("--fold", type=int, required=True)
    whole = steps.add_parser("fit", help="fit to everything and write the encoder")
    whole.add_argument("rows", type=Path)
    whole.add_argument("encoder", type=Path)
    file = steps.add_parser("export", help="write the encoder as the file that the program reads")
    file.add_argument("rows", type=Path)
    file.add_argument("encoder", type=Path)
    file.add_argument("folder", type=Path, nargs="?", default=Path("notesmith/listening/model"))
    for step in (held, whole):
        step.add_argument("--base", type=Path, required=True, help="the sentence encoder's weights (safetensors)")
        step.add_argument("--epochs", type=int, default=30)
        step.add_argument("--rate", type=float, default=1.5e-4)
        step.add_argument("--seed", type=int, default=7)
        step.add_argument("--alone", action="store_true", help="hide what the rules have judged")
        step.add_argument("--only", default="", help="fit only to names that begin so")
    a = parser.parse_args(arguments)
    {"rows": _rows, "held-out": _held_out, "fit": _fit, "export": _export}[a.step](a)


def kinds(folder: Path = Path("samples/recordings")) -> dict[str, tuple[str, str]]:
    """The product kind and the manner of every recording."""
    with (folder / "kinds.tsv").open(encoding="utf-8") as f:
        return {row["name"]: (row["kind"], row["manner"]) for row in csv.DictReader(f, delimiter="\t")}


def folds(sizes: dict[str, int], count: int = FOLDS) -> dict[str, int]:
    """Whole product kinds dealt to folds of about one size, the largest first."""
    filled = [0] * count
    dealt = {}
    for kind, size in sorted(sizes.items(), key=lambda item: (-item[1], item[0])):
        dealt[kind] = filled.index(min(filled))
        filled[dealt[kind]] += size
    return dealt


def _rows(a: argparse.Namespace) -> None:
    from notesmith.lexicon import Lexicon  # noqa: PLC0415
    from notesmith.listening.encoder import FOLDER  # noqa: PLC0415
    from notesmith.listening.pieces import Pieces  # noqa: PLC0415
    from training.examples import LAYOUT, annotations, read_example  # noqa: PLC0415
    from training.rows import rows_of, save  # noqa: PLC0415

    lexicon, pieces, of = Lexicon.load(), Pieces.read(FOLDER / "pieces.txt"), kinds()
    found = []
    for gold in (g for folder in a.recordings for g in annotations(folder)):
        for bare in (False, True):
            example, _ = read_example(gold, lexicon, bare=bare)
            found.append(rows_of(example, pieces, of[example.name][0], bare=bare))
            if example.unfound and not bare:
                print(f"{example.name}: {example.unfound} records not found in the captions", file=sys.stderr)
    save(found, LAYOUT, a.rows)


def _recipe(a: argparse.Namespace) -> "Recipe":
    from training.fit import Recipe  # noqa: PLC0415

    return Recipe(epochs=a.epochs, rate=a.rate, seed=a.seed, blind=a.alone)


def _held_out(a: argparse.Namespace) -> None:
    import numpy as np  # noqa: PLC0415
    import torch  # noqa: PLC0415

    from training.fit import answer, fit  # noqa: PLC0415
    from training.model import pretrained  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    device = "cuda" if torch.cuda.is_available() else "cpu"
    every, layout = load(a.rows)
    sizes: dict[str, int] = {}
    for r in every:
        sizes[r.kind] = sizes.get(r.kind, 0) + len(r.pieces)
    fold = folds(sizes)
    known = [r for r in every if fold[r.kind] != a.fold and r.name.startswith(a.only)]
    encoder = fit(pretrained(a.base, layout), known, _recipe(a), device)
    said = {}
    for r in every:
        if fold[r.kind] == a.fold:
            for name, values in answer(encoder, r, _recipe(a), device).items():
                said[f"{r.name}|{int(r.bare)}|{name}"] = values.astype(np.float16)
    said = {k: _packed(k, v, said) for k, v in said.items()}
    np.savez_compressed(a.answers, **said)


def _packed(key: str, values: "NDArray[np.float16]", said: "dict[str, NDArray[np.float16]]") -> "NDArray[Any]":
    """Probabilities in 255 steps; pointers only where something is marked, since they fill the file."""
    import numpy as np  # noqa: PLC0415

    recording, bare, name = key.split("|")
    if values.min() >= 0 and values.max() <= 1:
        return (values * 255).round().astype(np.uint8)
    marks = [said[f"{recording}|{bare}|{head}"][:, 0] for head in ("description", "fact", "comparison", "preference")]
    return np.where((np.min(marks, axis=0) < 0.9)[:, None], values, np.float16(0))


def _export(a: argparse.Namespace) -> None:
    from training.export import export  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    export(a.encoder, load(a.rows)[1], a.folder)


def _fit(a: argparse.Namespace) -> None:
    import torch  # noqa: PLC0415

    from training.fit import fit  # noqa: PLC0415
    from training.model import pretrained  # noqa: PLC0415
    from training.rows import load  # noqa: PLC0415

    device = "cuda" if torch.cuda.is_available() else "cpu"
    rows, layout = load(a.rows)
    encoder = fit(pretrained(a.base, layout), rows, _recipe(a), device)
    torch.save({k: v.half().cpu() for k, v in encoder.state_dict().items()}, a.encoder)


if __name__ == "__main__":
    main(sys.argv[1:])
