"""Whatever is said, and however little: nothing breaks, and no result stands without its claim."""

from hypothesis import given, settings
from hypothesis import strategies as st

from notesmith.evidence.results import weigh
from notesmith.records import Notes
from tests.evidence.conftest import Told

CUPS = ("1", "2", "3", "4")
PRODUCTS = st.sampled_from(["P", "Q", "R", None])
CUP = st.sampled_from(CUPS)
WORD = st.tuples(st.sampled_from(["equal", "more", "prefers", "perceives", "tastes", "reveals"]), CUP, CUP, CUP,
                 st.sampled_from(["Ada", "Ben"]))  # fmt: skip


@st.composite
def recordings(draw: st.DrawFn) -> Notes:
    """The notes of an invented recording in which two tasters say anything of up to four cups."""
    count = draw(st.integers(1, 4))
    told = Told({cup: draw(PRODUCTS) for cup in CUPS[:count]}, tasters=("Ada", "Ben"), blind=draw(st.booleans()))
    if draw(st.booleans()):
        told.serves("Ada", *draw(st.permutations(CUPS)))
    for what, one, two, three, taster in draw(st.lists(WORD, max_size=25)):
        match what:
            case "equal":
                told.equal(*dict.fromkeys((one, two)), taster=taster)
            case "more":
                told.more(one, two, "smoky", taster)
            case "prefers":
                told.prefers(one, *dict.fromkeys((two, three)), taster=taster)
            case "perceives":
                told.perceives(one, f"term {two}", taster)
            case "tastes":
                told.tastes(one)
            case _:
                told.reveals(one, "P" if two < "3" else "Q")
    return told.notes()


@settings(max_examples=150, deadline=None)
@given(st.lists(recordings(), max_size=4))
def test_every_result_has_its_claim(notes: list[Notes]) -> None:
    """Each with n, the weakest link, and a sentence on what would settle it."""
    results, left_out = weigh(notes)
    assert len(left_out) <= len(notes)
    for result in results:
        assert "(n = " in result.claim
        assert "Weakest link: " in result.claim
        assert result.claim.endswith(".")
