"""Recordings read as trials: only what was said before the reveal, each taster at their last word."""

import pytest

from notesmith.evidence.results import weigh
from notesmith.evidence.sessions import Session, circumstances
from notesmith.evidence.trials import pairs, protocol_of, sortings
from tests.evidence.conftest import TRIANGLE, Told


def test_nothing_recorded() -> None:
    """No notes prove nothing."""
    assert weigh([]) == ([], [])


@pytest.mark.parametrize(
    ("pours", "name"),
    [(TRIANGLE, "triangle"), ({"1": "P", "2": "P", "3": "Q", "4": "Q"}, "tetrad"),
     ({"1": "P", "2": "P", "3": "Q", "4": "Q", "5": "Q"}, "two-out-of-five"),
     ({"reference": "P", "2": "P", "3": "Q"}, "duo-trio"),
     ({"1": "P", "2": "Q"}, None), ({"1": "P", "2": "P"}, None), ({"1": "P", "2": "P", "3": "Q", "4": "R"}, None),
     ({"1": "P", "2": None, "3": "Q"}, None)],
)  # fmt: skip
def test_protocol_by_what_is_poured(pours: dict[str, str | None], name: str | None) -> None:
    """How often each of two products is poured tells the test; where one is unknown, it is none."""
    session = Session(Told(pours).notes())
    found = protocol_of(session, session.trays[0])
    assert (found and found.name) == name


def test_reveal_makes_a_triangle() -> None:
    """A sealed sheet becomes a test once its samples are made known."""
    told = Told({"1": None, "2": None, "3": None}).equal("1", "2")
    told.reveals("1", "P").reveals("2", "P").reveals("3", "Q")
    assert sortings([Session(told.notes())])[0].by_taster == {"Ada": (1, 1)}


@pytest.mark.parametrize(("together", "right"), [(("417", "853"), 1), (("417", "296"), 0)])
def test_equal_cups_are_the_answer(together: tuple[str, str], right: int) -> None:
    """Who calls the two alike equal has named the odd one."""
    assert sortings([Session(Told(TRIANGLE).equal(*together).notes())])[0].by_taster == {"Ada": (right, 1)}


def test_two_of_three_are_not_enough() -> None:
    """In a two-out-of-five a pair of the three alike is no right answer, all three are."""
    pours = {"1": "P", "2": "P", "3": "Q", "4": "Q", "5": "Q"}
    told = Told(pours, tasters=("Ada", "Ben")).equal("3", "4").equal("3", "4", "5", taster="Ben")
    assert sortings([Session(told.notes())])[0].by_taster == {"Ada": (0, 1), "Ben": (1, 1)}


def test_all_cups_alike_is_no_answer() -> None:
    """Who calls all three equal has sorted nothing."""
    assert sortings([Session(Told(TRIANGLE).equal("417", "853", "296").notes())]) == []


def test_last_word_counts() -> None:
    """Who changes their mind is taken at their last word."""
    told = Told(TRIANGLE).equal("417", "296").equal("417", "853")
    assert sortings([Session(told.notes())])[0].by_taster == {"Ada": (1, 1)}


def test_after_the_reveal_nothing_counts() -> None:
    """An answer given after the reveal is none."""
    told = Told(TRIANGLE).reveals("296", "River Oolong").equal("417", "853")
    assert sortings([Session(told.notes())]) == []


def test_reference_must_be_in_it() -> None:
    """In a duo-trio only what is called equal to the reference is an answer."""
    told = Told({"reference": "P", "2": "P", "3": "Q"}).equal("2", "3").equal("reference", "2")
    assert sortings([Session(told.notes())])[0].by_taster == {"Ada": (1, 1)}


def test_preferences_are_gathered_by_product() -> None:
    """Codes change from session to session; what is counted is the product."""
    one = Told({"A": "P", "B": "Q"}).prefers("A", "B").notes("one.vtt")
    other = Told({"A": "Q", "B": "P"}, tasters=("Ben",)).prefers("B", "A", taster="Ben").notes("other.vtt")
    found = pairs([Session(one), Session(other)])[0]
    assert (found.names, found.counts, found.tasters) == (("P", "Q"), (2, 0, 0), ("Ada", "Ben"))


def test_no_preference_is_counted() -> None:
    """Who calls both equal as a whole prefers neither."""
    told = Told({"A": "P", "B": "Q"}, tasters=("Ada", "Ben")).prefers("A", "B").equal("A", "B", taster="Ben")
    assert pairs([Session(told.notes())])[0].counts == (1, 1, 0)


def test_properties_are_pairs_of_their_own() -> None:
    """Which is smokier says nothing of which is preferred."""
    found = pairs([Session(Told({"A": "P", "B": "Q"}).more("B", "A", "smoky").notes())])
    assert [(at.about, at.counts) for at in found] == [("smoky", (0, 0, 1))]


def test_first_cup_is_watched() -> None:
    """How often the cup tasted first was named is counted where the order is known."""
    told = Told({"A": "P", "B": "Q"}).perceives("B", "sweet").perceives("A", "sweet").prefers("B", "A")
    assert pairs([Session(told.notes())])[0].first_tasted == (1, 1)


def test_each_tray_is_a_trial() -> None:
    """A taster who is handed two trays of three, as planned, has two trials; codes differ from tray to tray."""
    pours: dict[str, str | None] = {"1": "P", "2": "P", "3": "Q", "4": "P", "5": "Q", "6": "P"}
    told = Told(pours).equal("1", "2").equal("4", "5")
    told.serves("Ada", "1", "2", "3").serves("Ada", "4", "5", "6")
    assert sortings([Session(told.notes())])[0].by_taster == {"Ada": (1, 2)}


def test_a_tray_is_its_tasters() -> None:
    """What another taster says of cups handed to Ada is no trial."""
    told = Told(TRIANGLE, tasters=("Ada", "Ben")).equal("417", "853", taster="Ben")
    told.serves("Ada", "417", "853", "296")
    assert sortings([Session(told.notes())]) == []


def test_repeated_pairs_are_votes_of_their_own() -> None:
    """Two trays of the same two products are two preferences, and the planned order tells which came first."""
    told = Told({"1": "P", "2": "Q", "3": "P", "4": "Q"}).prefers("1", "2").prefers("4", "3")
    told.serves("Ada", "1", "2").serves("Ada", "3", "4")
    found = pairs([Session(told.notes())])[0]
    assert (found.counts, found.first_tasted) == ((1, 0, 1), (1, 2))
    assert "all trials are of one taster" in weigh([told.notes()])[0][0].figures[1]


def test_order_is_balanced_over_sessions() -> None:
    """Each product first once: balanced; always in the same order: not; untold: unknown."""
    there = Told({"A": "P", "B": "Q"}).perceives("A", "sweet").perceives("B", "sweet").notes()
    back = Told({"A": "Q", "B": "P"}).perceives("A", "sweet").perceives("B", "sweet").notes()
    silent = Told({"A": "Q", "B": "P"}).notes()
    held = [
        circumstances([Session(one), Session(other)]) for one, other in ((there, back), (there, there), (there, silent))
    ]
    assert [at.balanced for at in held] == [True, False, None]


def test_sighted_sessions_are_told() -> None:
    """One session held openly makes the whole sighted."""
    sessions = [Session(Told(TRIANGLE, blind=blind).notes()) for blind in (True, False)]
    assert circumstances(sessions).blind is False


def test_triangles_of_a_season() -> None:
    """Ten of twelve triangles by twelve tasters are a difference, told with n, the weakest link and what is next."""
    names = [f"Taster {number}" for number in range(12)]
    told = [Told(TRIANGLE, tasters=(name,)).equal("417", "853", taster=name) for name in names[:10]]
    told += [Told(TRIANGLE, tasters=(name,)).equal("417", "296", taster=name) for name in names[10:]]
    notes = [at.notes(f"{name}.vtt") for at, name in zip(told, names, strict=True)]
    results, left_out = weigh(notes)
    assert left_out == []
    assert results[0].claim == (
        "A difference was found: 10 of 12 answers in a triangle test were right (n = 12, p < 0.001), d′ 3.4 "
        "(95% interval 1.5 to 5.7). Weakest link: nobody says in which order the cups came. "
        "Another session, blind and in a balanced order, should find it again."
    )


def test_one_taster_is_warned_of() -> None:
    """Eight triangles by one taster speak of that taster alone."""
    result = weigh([Told(TRIANGLE).equal("417", "853").notes(f"{number}.vtt") for number in range(8)])[0][0]
    assert "all trials are of one taster" in result.figures[1]
    assert "one taster, whose palate is all it speaks of" in result.claim


def test_repeated_trials_are_not_counted_as_new() -> None:
    """Three tasters with four triangles each are weighed by the beta-binomial."""
    notes = [Told(TRIANGLE, tasters=(name,)).equal("417", other, taster=name).notes(f"{name}{number}.vtt")
             for name, answers in (("Ada", "8888"), ("Ben", "8822"), ("Cleo", "2222"))
             for number, other in enumerate({"8": "853", "2": "296"}[at] for at in answers)]  # fmt: skip
    figures = weigh(notes)[0][0].figures
    assert figures[0] == "6 of 12 right, where guessing gives 33%"
    assert figures[1].startswith("tasters answered more than once: heterogeneity")


def test_unknown_samples_are_left_out_of_many() -> None:
    """From several recordings one whose samples were never made known is left out, and told."""
    known, sealed = Told({"A": "P", "B": "Q"}).notes("known.vtt"), Told({"A": None, "B": None}).notes("sealed.vtt")
    assert weigh([known, sealed])[1] == ["sealed.vtt: not all of its samples were made known"]
