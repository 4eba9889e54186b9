"""The questions put to the talk, in order.

Each is a component of the language pipeline that fills in the hearing kept with the document.
"""

from collections.abc import Callable
from functools import lru_cache

from spacy.language import Language
from spacy.tokens import Doc

from notesmith.lexicon import Lexicon
from notesmith.listening.clauses import cut_clauses
from notesmith.listening.comparing import find_comparisons
from notesmith.listening.descriptions import find_descriptions
from notesmith.listening.english import load_english
from notesmith.listening.facts import find_facts
from notesmith.listening.hearing import Hearing
from notesmith.listening.learned import heed_encoder
from notesmith.listening.mentions import find_mentions
from notesmith.listening.perceptions import judge_descriptions
from notesmith.listening.preferring import find_preferences
from notesmith.listening.preparing import find_preparations
from notesmith.listening.repairs import find_repairs
from notesmith.listening.retractions import apply_retractions
from notesmith.listening.reveals import find_reveals
from notesmith.listening.sections import find_sections
from notesmith.listening.topics import decide_topics
from notesmith.listening.words import note_words
from notesmith.records import Sheet
from notesmith.transcript import Talk

ENCODER = "notesmith_encoder"
QUESTIONS: tuple[tuple[str, Callable[[Hearing], None]], ...] = (
    ("notesmith_repairs", find_repairs),  # what was meant?
    ("notesmith_clauses", cut_clauses),  # where does one thought end?
    ("notesmith_mentions", find_mentions),  # which sample is named or pointed at?
    ("notesmith_descriptions", find_descriptions),  # which words describe?
    ("notesmith_topics", decide_topics),  # what is the talk about just now?
    ("notesmith_perceptions", judge_descriptions),  # is it there, how strongly, on which facet, in whose voice?
    ("notesmith_retractions", apply_retractions),  # what was taken back or said of the wrong cup?
    ("notesmith_comparisons", find_comparisons),  # what is set beside what?
    ("notesmith_preferences", find_preferences),  # which is liked better?
    ("notesmith_reveals", find_reveals),  # what does each turn out to be?
    ("notesmith_facts", find_facts),  # what is stated?
    ("notesmith_sections", find_sections),  # where would a viewer want a chapter?
    (ENCODER, heed_encoder),  # what does one who has listened to many tastings make of all that?
    ("notesmith_preparations", find_preparations),  # in which preparation was it perceived?
)


def _component(question: Callable[[Hearing], None]) -> Callable[[Doc], Doc]:
    def answer(doc: Doc) -> Doc:
        question(doc.user_data["notesmith"])
        return doc

    return answer


def _words(doc: Doc) -> Doc:
    note_words(doc.user_data["notesmith"], doc)
    return doc


def _cut_into_tokens(nlp: Language, text: str) -> Doc:
    """The text cut by the pipeline's tokenizer, which is given each different word alone first.

    It keeps how it has cut a word, but of a text only up to the first contraction; what it keeps takes a tenth of the
    time to cut again.
    """
    for word in set(text.split()):
        nlp.tokenizer(word)
    return nlp.make_doc(text)


@lru_cache(maxsize=1)
def listener() -> Language:
    """The English pipeline with the questions added, loaded once."""
    nlp = load_english()
    Language.component("notesmith_words", func=_words)
    nlp.add_pipe("notesmith_words")
    for name, question in QUESTIONS:
        Language.component(name, func=_component(question))
        nlp.add_pipe(name)
    return nlp


def listen(talk: Talk, sheet: Sheet, lexicon: Lexicon, *, by_rules: bool = False) -> Hearing:
    """Put every question to the talk and return everything that was understood; `by_rules` without the encoder."""
    nlp = listener()
    hearing = Hearing(talk, sheet, lexicon)
    doc = _cut_into_tokens(nlp, talk.text)
    doc.user_data["notesmith"] = hearing
    with nlp.select_pipes(disable=[ENCODER] if by_rules else []):
        nlp(doc)
    return hearing
