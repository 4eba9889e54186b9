"""All annotated recordings as the rules hear them, as printed and bare."""

import logging
from pathlib import Path

from notesmith.lexicon import Lexicon
from notesmith.listening.pieces import Pieces
from training.examples import LAYOUT, annotations, read_example
from training.layout import Layout
from training.rows import Rows, rows_of
from training.split import kinds


def listened(folder: Path, vocabulary: Path) -> tuple[list[Rows], Layout]:
    """A recording's rows twice: as its captions print it, and as a recogniser without case and punctuation would."""
    lexicon, pieces, of = Lexicon.load(), Pieces.read(vocabulary), kinds(folder)
    found = []
    for gold in annotations(folder):
        for bare in (False, True):
            example, _ = read_example(gold, lexicon, bare=bare)
            found.append(rows_of(example, pieces, of[example.name], bare=bare))
            if example.unfound and not bare:
                logging.info("%s: %d records are not found in the captions", example.name, example.unfound)
    return found, LAYOUT
