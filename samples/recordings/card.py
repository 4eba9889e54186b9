"""The card of the recordings: what there is, counted. `python samples/recordings/card.py` prints it for README.md."""

import csv
import json
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Any

from notesmith.records import Sheet
from notesmith.sheet import read_sheet
from notesmith.transcript import Captions, Cue, read_captions

FOLDER = Path(__file__).parent
SILENCE_S = 300.0
COUNTED = ("observations", "comparisons", "preferences", "facts", "reveals", "sections", "repairs")


@dataclass(frozen=True)
class Recording:
    """Captions, their sheet and their annotation."""

    name: str
    kind: str  # of product
    manner: str  # earnest, review or amateur
    fold: int  # the recordings of one fold are held out together
    captions: Captions
    sheet: Sheet
    gold: dict[str, Any]

    @cached_property
    def words(self) -> list[tuple[float, str]]:
        """Every word once, with its second: a rolling line that is shown again after a pause was not said again."""
        found: list[tuple[float, str]] = []
        for cue in self.captions.cues:
            new = cue.words[_shown_again(found, cue) :]
            found += [((cue.start_ms if w.start_ms is None else w.start_ms) / 1000, w.text) for w in new]
        return found

    @property
    def speakers(self) -> set[str]:
        """The speakers that the captions name."""
        return {cue.speaker for cue in self.captions.cues if cue.speaker}

    @property
    def seconds(self) -> float:
        """How long it is."""
        last = self.captions.cues[-1]
        return (last.start_ms if last.end_ms is None else last.end_ms) / 1000

    @property
    def punctuated(self) -> bool:
        """Whether the captions show where a sentence ends."""
        return any(cue.text.endswith((".", "?", "!")) for cue in self.captions.cues)

    @property
    def longest_without(self) -> float:
        """Seconds of the longest stretch in which nobody perceives anything."""
        starts: list[float] = [record["start"] for record in self.gold["observations"]]
        return max(b - a for a, b in pairwise([0.0, *starts, self.seconds]))


def read(folder: Path = FOLDER) -> list[Recording]:
    """All recordings of kinds.tsv."""
    with (folder / "kinds.tsv").open(encoding="utf-8") as f:
        return [_read(folder, **row) for row in csv.DictReader(f, delimiter="\t")]


def _read(folder: Path, name: str, kind: str, manner: str, fold: str) -> Recording:
    gold = json.loads((folder / f"{name}.gold.json").read_text(encoding="utf-8"))
    captions, sheet = read_captions(folder / gold["transcript"]), read_sheet(folder / f"{name}.sheet.json")
    return Recording(name, kind, manner, int(fold), captions, sheet, gold)


def _shown_again(said: list[tuple[float, str]], cue: Cue) -> int:
    """How many words at a cue's start, timed to it without times of their own, are the last ones said."""
    texts = [w.text for w in cue.words if w.start_ms == cue.start_ms]
    for k in range(len(texts) - 1, 0, -1):
        if [text for _, text in said[-k:]] == texts[:k]:
            return k
    return 0


def card(recordings: list[Recording]) -> str:
    """The tables as Markdown."""
    kinds = {r.fold: ", ".join(sorted({o.kind for o in recordings if o.fold == r.fold})) for r in recordings}
    tables = [
        _by(recordings, lambda r: r.manner, "manner"),
        _by(recordings, lambda r: r.kind, "product kind"),
        _by(recordings, lambda r: f"{r.fold}: {kinds[r.fold]}", "fold"),
        *_forms(recordings),
    ]
    return "\n\n".join(tables) + "\n"


def _by(recordings: list[Recording], key: Callable[[Recording], str], head: str) -> str:
    """A line for each group and one for all."""
    lines = [[head, "recordings", "words", "hours", *COUNTED], ["---"] + ["--:"] * (3 + len(COUNTED))]
    for group in sorted({key(r) for r in recordings}):
        lines.append([group, *_sums([r for r in recordings if key(r) == group])])
    return _table([*lines, ["all", *_sums(recordings)]])


def _sums(group: list[Recording]) -> Iterable[str]:
    yield str(len(group))
    yield f"{sum(len(r.words) for r in group):,}"
    yield f"{sum(r.seconds for r in group) / 3600:.1f}"
    for name in COUNTED:
        yield f"{sum(len(r.gold[name]) for r in group):,}"


def _forms(recordings: list[Recording]) -> list[str]:
    """What the captions are like, and who speaks."""
    formats = Counter(r.captions.format for r in recordings)
    unnamed = [r for r in recordings if not r.speakers]
    several = [r for r in unnamed if len(r.sheet.tasters) != 1]
    captions = [
        *(["format: " + name, str(count)] for name, count in sorted(formats.items())),
        ["words timed one by one", _count(r.captions.word_timed for r in recordings)],
        ["without punctuation", _count(not r.punctuated for r in recordings)],
        ["speakers named in the captions", _count(bool(r.speakers) for r in recordings)],
        ["speakers not named, one taster on the sheet", str(len(unnamed) - len(several))],
        ["speakers not named, none on the sheet", str(len(several))],
        ["blind", _count(r.sheet.blind for r in recordings)],
        ["several preparations", _count(len(r.sheet.preparations) > 1 for r in recordings)],
        ["five minutes on end without an observation", _count(r.longest_without >= SILENCE_S for r in recordings)],
    ]
    people = [
        ["samples", str(sum(len(r.sheet.samples) for r in recordings))],
        ["tasters on the sheets", str(sum(len(r.sheet.tasters) for r in recordings))],
        ["speakers named in the captions", str(sum(len(r.speakers) for r in recordings))],
    ]
    head = ["---", "--:"]
    return [_table([["captions", "recordings"], head, *captions]), _table([["in all", "number"], head, *people])]


def _count(holds: Iterable[bool]) -> str:
    return str(sum(holds))


def _table(rows: Iterable[Iterable[str]]) -> str:
    return "\n".join("| " + " | ".join(row) + " |" for row in rows)


if __name__ == "__main__":
    print(card(read()), end="")
