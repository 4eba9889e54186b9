"""Where the words of a hearing stand."""

from notesmith.listening.hearing import Hearing
from notesmith.records import Sheet
from tests.listening.conftest import Hear

TALK = "Honey, then smoke. But the smoke is gone."


def at(hearing: Hearing, places: list[int]) -> list[str]:
    """The words at some places."""
    return [hearing.words[i].norm for i in places]


def test_an_unsaid_word_stands_nowhere(hear: Hear) -> None:
    """No word, or one that nobody says, has no places."""
    hearing = hear(TALK, Sheet())
    assert hearing.places([]) == hearing.places(["leather"]) == []


def test_words_are_found_wherever_they_stand(hear: Hear) -> None:
    """All places of several words come in the order of the talk."""
    hearing = hear(TALK, Sheet())
    places = hearing.places(["smoke", "honey"])
    assert at(hearing, places) == ["honey", "smoke", "smoke"]
    assert places == sorted(places)


def test_words_are_found_by_a_test(hear: Hear) -> None:
    """Every place of a word that passes the test, and of no other."""
    hearing = hear(TALK, Sheet())
    assert at(hearing, hearing.places_where(lambda norm: norm.endswith("e"))) == ["smoke", "the", "smoke", "gone"]


def test_clauses_are_found_by_their_words(hear: Hear) -> None:
    """A clause is found once, however often the words stand in it."""
    hearing = hear(TALK, Sheet())
    found = [hearing.clauses[k] for k in hearing.clauses_with(["is", "gone"])]
    assert [hearing.said(clause.start, clause.end) for clause in found] == ["But the smoke is gone."]
