"""Which product's name was meant where a product is told, though the captions print everyday words?

The place promises a name, so less likeness is asked for than where any word of the talk may be misheard.
"""

from collections import defaultdict
from functools import lru_cache

from notesmith.lexicon import Lexicon
from notesmith.lexicon.model import Sort
from notesmith.listening.hearing import Hearing
from notesmith.listening.names import CARRIERS, DIGITS
from notesmith.listening.sounding import Sound, joined, likeness
from notesmith.listening.suspects import LOOSE, is_english
from notesmith.listening.vocabulary import GRADERS, LIKING, NOUNS

NAME_SORTS: tuple[Sort, ...] = ("product", "origin", "cultivar")
BAR = 0.8
RARE = 6  # letters of a name that is told elsewhere
FEWEST_BONES = 3  # consonants below which names are alike by chance
PLAIN = LOOSE | CARRIERS | GRADERS | LIKING | frozenset(DIGITS.values())


def meant_name(lexicon: Lexicon, heard: tuple[str, ...]) -> str | None:
    """The trade's name for a product that some words sound like, as it is usually written.

    Words that fill or grade are never half of a name; a single word has to be one already.
    """
    sound = joined(heard)
    if len(heard) < 2 or len(sound.bones) < FEWEST_BONES or heard[0] in PLAIN or heard[-1] in LOOSE | {"one"}:
        return None
    scored = ((likeness(sound, target), concept) for concept, target in _targets(lexicon).get(sound.phones[0], ()))
    score, concept = max(scored, default=(0.0, ""))
    return _as_written(lexicon, concept) if score >= BAR else None


def meant_product(hearing: Hearing, product: str) -> str:
    """A product's name as it was meant, where all its words are everyday ones and so may be misheard."""
    heard = tuple(product.lower().split())
    if not all(is_english(word) for word in heard) or hearing.lexicon.look_up(product):
        return product
    return meant_name(hearing.lexicon, heard) or _told_elsewhere(hearing, heard) or product


def _told_elsewhere(hearing: Hearing, heard: tuple[str, ...]) -> str | None:
    """A rare name somewhere in the talk that the words sound like, with or without the first of them."""
    sounds = [joined(heard), *([joined(heard[1:])] if len(heard) > 2 else [])]
    rare = hearing.places_where(lambda norm: len(norm) >= RARE and not is_english(norm))
    names = {hearing.meant[i]: i for i in rare if hearing.words[i].tag in NOUNS}
    scored = ((likeness(sound, joined([norm])), norm) for norm in names for sound in sounds)
    score, norm = max(scored, default=(0.0, ""))
    return hearing.said(names[norm], names[norm] + 1) if score >= BAR else None


def _as_written(lexicon: Lexicon, concept: str) -> str:
    """The concept's first name; where it is written as one word too, so (`Alishan`, not `a li shan`)."""
    texts = [label.text for label in lexicon.labels(concept)]
    same = [text for text in texts if text.replace(" ", "") == texts[0].replace(" ", "")]
    return min(same, key=lambda text: text.count(" "))


@lru_cache(maxsize=2)
def _targets(lexicon: Lexicon) -> dict[str, list[tuple[str, Sound]]]:
    """The names under the sound that they begin with."""
    found: dict[str, list[tuple[str, Sound]]] = defaultdict(list)
    for sort in NAME_SORTS:
        for label in lexicon.terms(sort):
            sound = joined(label.text.split())
            if len(sound.bones) >= FEWEST_BONES:
                found[sound.phones[0]].append((label.concept, sound))
    return found
