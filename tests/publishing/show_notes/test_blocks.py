"""What each block of the show notes says, and what it leaves unsaid."""

from collections.abc import Callable

from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes.blindness import blindness
from notesmith.publishing.show_notes.board import board
from notesmith.publishing.show_notes.claims import claims
from notesmith.publishing.show_notes.contents import compose
from notesmith.publishing.show_notes.corrections import corrections
from notesmith.publishing.show_notes.disagreements import disagreements
from notesmith.publishing.show_notes.lines import Block, parts_of
from notesmith.publishing.show_notes.plain_text import written
from notesmith.publishing.show_notes.portraits import portraits
from notesmith.publishing.show_notes.stated import stated
from notesmith.publishing.show_notes.story import Story
from notesmith.publishing.show_notes.tasted import tasted
from notesmith.publishing.show_notes.verdict import verdict
from notesmith.records import Sheet, SheetPreparation, SheetSample
from tests.publishing.show_notes.telling import record, seen, told

A, B = SheetSample(id="A"), SheetSample(id="B")
ONE, TWO = Sheet(samples=(A,), tasters=("Ines",)), Sheet(samples=(A, B), tasters=("Ines",))
PANEL = Sheet(samples=(A,), tasters=("Ines", "Tom"))
WAYS = Sheet(samples=(A,), preparations=(SheetPreparation(id="hot"), SheetPreparation(id="cold")))


def lines(tell: Callable[[Story], Block | None], episode: Episode) -> list[tuple[str, list[str]]]:
    """The lines of a block: their labels and their parts as plain text."""
    found = tell(Story.of(episode))
    groups = found.groups if found else ()
    return [(line.label, [written(part) for part in line.parts]) for group in groups for line in group.lines]


def test_nothing_said_makes_no_block() -> None:
    """Of an episode without records nothing is told but what stands on the sheet."""
    assert [block.name for block in compose(told(["hello"], sheet=ONE)).blocks] == ["tasted", "blindness"]


def test_a_preparation_has_its_strength() -> None:
    """Dose, water, temperature and time of the sheet are told with the grams to 100 ml."""
    way = SheetPreparation(id="bowl", dose=5, water=100, temperature=96, time=25)
    told_of = lines(tasted, told(["hello"], sheet=Sheet(preparations=(way,))))
    parts = ["5 g (sheet)", "100 mL (sheet)", "96°C (sheet)", "25 sec (sheet)", "5 g/100 mL (sheet, computed)"]
    assert told_of == [("bowl", parts)]


def test_an_amount_that_was_said_has_its_time() -> None:
    """What the sheet says and the talk, too, carries the time; what the talk says otherwise stands beside it."""
    way = SheetPreparation(id="bowl", dose=5, time=25)
    facts = (
        record("facts", 0, "five grams", kind="dose", value=5, unit="gram", preparation="bowl"),
        record("facts", 1, "half a minute", kind="time", value=0.5, unit="minute", preparation="bowl"),
    )
    episode = told(["five grams", "half a minute"], *facts, sheet=Sheet(preparations=(way,)))
    assert lines(tasted, episode) == [("bowl", ["5 g (0:00)", "25 sec (sheet)", "time 0.5 min (0:10)"])]


def test_no_strength_of_an_amount_that_may_mean_two() -> None:
    """Ounces of water, and two doses, make no strength."""
    way = SheetPreparation(id="jar")
    facts = (
        record("facts", 0, "six grams", kind="dose", value=6, unit="gram", preparation="jar"),
        record("facts", 0, "ten ounces", kind="water", value=10, unit="ounce", preparation="jar"),
    )
    episode = told(["six grams in ten ounces"], *facts, sheet=Sheet(preparations=(way,)))
    assert lines(tasted, episode) == [("jar", ["dose 6 g (0:00)", "water 10 ounces (0:00)"])]


def test_blindness_tells_what_was_known_before() -> None:
    """A price told before the reveal, and what was perceived after it, are told as such."""
    sheet = TWO.model_copy(update={"blind": True})
    episode = told(
        ["A was nine euros", "A is the Heron", "plummy"],
        record("facts", 0, "nine euros", kind="price", value=9, unit="euro", sample="A"),
        record("reveals", 1, "A is the Heron", sample="A", product="the Heron"),
        seen(2, "plummy", after_reveal=True),
        sheet=sheet,
    )
    assert lines(blindness, episode) == [
        ("tasted", ["blind, under A and B; Ines did not know which was which (sheet)"]),
        ("made known", ["the Heron (A, 0:10)"]),
        ("known of it before", ["price €9 (A, 0:00)"]),
        ("perceived after", ["plummy (A, 0:20)"]),
    ]


def test_the_board_shows_a_word_once_with_all_its_times() -> None:
    """A term said again of one sample is one entry; denied it is another."""
    told_of = board(Story.of(told(["plum", "plum", "no plum"], seen(0, "plum"), seen(1, "plum"),
                                  seen(2, "plum", quote="no plum", presence="absent"), sheet=ONE)))  # fmt: skip
    assert [written(part) for part in parts_of([told_of] if told_of else [])] == ["plum (0:00, 0:10)", "no plum (0:20)"]


def test_a_portrait_quotes_the_clause() -> None:
    """A portrait quotes the words in their clause, not what comes before and after."""
    episode = told(["I sat down. It's a bit plummy at the edge, and the dog barked."], seen(0, "plummy"), sheet=ONE)
    assert lines(portraits, episode) == [("flavour", ["“It's a bit plummy at the edge” (0:00)"])]


def test_a_portrait_quotes_in_one_what_was_said_in_one_breath() -> None:
    """Perceptions of one cup near one another are one quote."""
    episode = told(["There's plum, and smoke"], seen(0, "plum"), seen(0, "smoke"), sheet=ONE)
    assert lines(portraits, episode) == [("flavour", ["“There's plum, and smoke” (0:00)"])]


def test_a_portrait_never_quotes_what_is_said_of_another_cup() -> None:
    """What lies between two perceptions and is about another sample parts them."""
    cues = ["plum in it, B smoke, and fig"]
    episode = told(cues, seen(0, "plum"), seen(0, "smoke", sample="B"), seen(0, "fig"), sheet=TWO)
    assert lines(portraits, episode) == [
        ("flavour", ["“plum in it” (0:00)", "“and fig” (0:00)"]), ("flavour", ["“B smoke” (0:00)"]),
    ]  # fmt: skip


def test_a_portrait_never_quotes_another_speaker() -> None:
    """A quote ends where somebody else begins to speak."""
    cues = ["<v Tom>no smoke for me", "<v Ines>a bit plummy", "<v Tom>and fig"]
    assert lines(portraits, told(cues, seen(1, "plummy"), sheet=PANEL)) == [
        ("flavour", ["“a bit plummy” (Ines, 0:10)"])
    ]  # fmt: skip


def test_a_portrait_says_what_words_that_point_back_mean() -> None:
    """Where the quote does not name the term, the term stands beside it."""
    cues = ["smoke in the other.", "none of that here"]
    absent = seen(1, "smoke", quote="none of that", presence="absent", term_span=(0, 5))
    assert lines(portraits, told(cues, absent, sheet=ONE)) == [
        ("flavour", ["“none of that here” (of smoke, 0:10)"])
    ]  # fmt: skip


def test_a_doubt_is_told_where_the_quote_does_not_say_it() -> None:
    """What is unsure is marked, unless its words say so."""
    cues = ["orchid.", "perhaps a rose."]
    unsure = seen(0, "orchid", presence="uncertain", facet="aroma"), seen(1, "rose", presence="uncertain")
    parts = [part for _, parts in lines(portraits, told(cues, *unsure, sheet=ONE)) for part in parts]
    assert parts == ["“orchid” (unsure, 0:00)", "“perhaps a rose” (0:10)"]


def test_tasters_disagree() -> None:
    """One finds what another denies: both stand side by side, each with the name."""
    cues = ["bitter", "not bitter at all"]
    yes, no = seen(0, "bitter", concept="bitter"), seen(1, "bitter", quote="not bitter", concept="bitter",
                                                        presence="absent", taster="Tom")  # fmt: skip
    told_of = lines(disagreements, told(cues, yes, no, sheet=PANEL))
    assert told_of == [("A, between tasters", ["bitter (Ines, 0:00)", "not bitter (Tom, 0:10)"])]


def test_one_taster_alone_disagrees_with_nobody() -> None:
    """Somebody who changes their mind about one cup is in no disagreement."""
    cues = ["bitter", "not bitter at all"]
    both = seen(0, "bitter", concept="bitter"), seen(1, "bitter", concept="bitter", presence="absent")
    assert lines(disagreements, told(cues, *both, sheet=ONE)) == []


def test_preparations_differ() -> None:
    """One taster finds in one preparation what is not in the other."""
    cues = ["bitter", "no bitterness"]
    both = (
        seen(0, "bitter", concept="bitter", preparation="hot"),
        seen(1, "bitterness", quote="no bitterness", concept="bitter", presence="absent", preparation="cold"),
    )
    told_of = lines(disagreements, told(cues, *both, sheet=WAYS))
    assert told_of == [("A, between preparations", ["bitter (hot, 0:00)", "no bitterness (cold, 0:10)"])]


def test_denying_a_kind_is_no_disagreement_about_another() -> None:
    """Plum found and smoke denied contradict nothing."""
    cues = ["plum", "no smoke"]
    both = seen(0, "plum", concept="plum"), seen(1, "smoke", concept="smoky", presence="absent", taster="Tom")
    assert lines(disagreements, told(cues, *both, sheet=PANEL)) == []


def test_favourites_differ() -> None:
    """Two tasters with two favourites disagree."""
    cues = ["I like A", "I like B"]
    likes = (
        record("preferences", 0, "I like A", preferred="A", over=("B",)),
        record("preferences", 1, "I like B", preferred="B", over=("A",), taster="Tom"),
    )
    sheet = TWO.model_copy(update={"tasters": ("Ines", "Tom")})
    told_of = lines(disagreements, told(cues, *likes, sheet=sheet))
    assert told_of == [("liked best, by taster", ["A (Ines, 0:00)", "B (Tom, 0:10)"])]


def test_the_verdict_is_the_last_word() -> None:
    """Of several preferences the last overall one is the verdict, in its own words; the others came before."""
    cues = ["I like B just now", "So A wins. That's that."]
    likes = (
        record("preferences", 0, "I like B", preferred="B", over=("A",)),
        record("preferences", 1, "A wins", preferred="A", over=("B",)),
    )
    told_of = dict(lines(verdict, told(cues, *likes, sheet=TWO)))
    assert told_of["verdict"] == ["A over B (0:10)", "“I like B just now So A wins.” (0:10)"]
    assert told_of["preferred on the way"] == ["B over A (0:00)"]


def test_a_comparison_is_told_as_it_was_made() -> None:
    """More, less and equal are told with the samples the right way round."""
    cues = ["B is sweeter", "they are as heavy"]
    compared = (
        record("comparisons", 0, "B is sweeter", attribute="sweet", more="B", less="A", degree="low"),
        record("comparisons", 1, "as heavy", attribute="heavy", relation="equal", samples=("A", "B")),
    )
    told_of = dict(lines(verdict, told(cues, *compared, sheet=TWO)))
    assert told_of["compared"] == [
        "sweet: more in B than in A (by a little, 0:00)", "heavy: the same in A and B (0:10)",
    ]  # fmt: skip


def test_a_serving_has_its_price() -> None:
    """Price, weight and dose that are sure make a price of 100 g and of a serving, with the times of all."""
    cues = ["nine euros", "sixty grams", "five grams a cup"]
    facts = (
        record("facts", 0, "nine euros", kind="price", value=9, unit="euro", sample="A"),
        record("facts", 1, "sixty grams", kind="net_weight", value=60, unit="gram", sample="A"),
        record("facts", 2, "five grams", kind="dose", value=5, unit="gram"),
    )
    assert dict(lines(stated, told(cues, *facts, sheet=ONE)))["A"] == [
        "price €9 (0:00)", "net weight 60 g (0:10)",
        "€15 for 100 g (computed, 0:00, 0:10)", "€0.75 a serving (computed, 0:00, 0:10, 0:20)",
    ]  # fmt: skip


def test_the_sheet_gives_price_and_weight() -> None:
    """A price on the sheet is told as the sheet's, and so is what is computed from it."""
    sheet = Sheet(samples=(SheetSample(id="A", price=14, currency="GBP", net_weight=50),))
    assert lines(stated, told(["hello"], sheet=sheet)) == [
        ("A", ["£14 (sheet, a pack)", "£28 for 100 g (sheet, computed)"])
    ]  # fmt: skip


def test_two_prices_make_no_price_of_a_serving() -> None:
    """Where two prices were told of a sample nothing is computed."""
    cues = ["nine euros", "eleven euros", "sixty grams"]
    facts = (
        record("facts", 0, "nine euros", kind="price", value=9, unit="euro", sample="A"),
        record("facts", 1, "eleven euros", kind="price", value=11, unit="euro", sample="A"),
        record("facts", 2, "sixty grams", kind="net_weight", value=60, unit="gram", sample="A"),
    )
    parts = dict(lines(stated, told(cues, *facts, sheet=ONE)))["A"]
    assert not any("computed" in part for part in parts)


def test_a_price_by_weight_is_no_price_of_a_pack() -> None:
    """`pence a gram` is told as spoken, and nothing is computed from it."""
    cues = ["thirty pence a gram", "sixty grams"]
    facts = (
        record("facts", 0, "thirty pence a gram", kind="price", value=30, unit="pence a gram", sample="A"),
        record("facts", 1, "sixty grams", kind="net_weight", value=60, unit="gram", sample="A"),
    )
    parts = dict(lines(stated, told(cues, *facts, sheet=ONE)))["A"]
    assert parts == ["price 30 pence a gram (0:00)", "net weight 60 g (0:10)"]


def test_amounts_are_written_by_the_locale() -> None:
    """Decimals, currencies and units follow the locale."""
    cues = ["two and a half euros"]
    fact = record("facts", 0, "two and a half euros", kind="price", value=2.5, unit="euro", sample="A")
    told_of = lines(stated, told(cues, fact, sheet=ONE, locale="de_DE"))
    assert told_of == [("A", ["price 2,50 € (0:00)"])]


def test_claims_are_found_denied_or_not_mentioned() -> None:
    """What the maker says is set against what the tasters found, kinds of it among them."""
    sheet = Sheet(samples=(SheetSample(id="A", description="Plum, smoke and honey."),))
    cues = ["there's plum", "no smoke"]
    found = seen(0, "plum", concept="plum"), seen(1, "smoke", concept="smoky", presence="absent")
    assert lines(claims, told(cues, *found, sheet=sheet)) == [
        ("", ["Plum (sheet)", "found: plum (0:00)"]),
        ("", ["smoke (sheet)", "denied: smoke (0:10)"]),
        ("", ["honey (sheet, not mentioned by the tasters)"]),
    ]


def test_words_read_out_are_claims() -> None:
    """What somebody else says of a sample is a claim with the time at which it was read out."""
    cues = ["the packet says peach", "I get peach"]
    said = seen(0, "peach", concept="peach", voice="quoted", taster=None), seen(1, "peach", concept="peach")
    assert lines(claims, told(cues, *said, sheet=ONE)) == [("", ["peach (quoted, 0:00)", "found: peach (0:10)"])]


def test_words_read_out_are_in_no_portrait() -> None:
    """What a taster only read out is not the taster's own."""
    said = seen(0, "peach", voice="quoted", taster=None)
    assert lines(portraits, told(["the packet says peach"], said, sheet=ONE)) == []


def test_corrections_are_told_and_shown_where_they_are_quoted() -> None:
    """A mended word is listed with what the captions print, and stands in brackets in a quote."""
    cues = ["there's that way gan again"]
    mended = seen(0, "way gan", facet="finish"), record("repairs", 0, "way gan", heard="way gan", meant="hui gan")
    episode = told(cues, *mended, sheet=ONE)
    assert lines(corrections, episode) == [("hui gan", ["“way gan” (in the captions, 0:00)"])]
    assert lines(portraits, episode) == [("finish", ["“there's that [hui gan] again” (0:00)"])]


def test_the_glossary_explains_words_of_the_trade_only() -> None:
    """A word of the trade is explained with the time it was said; everyday words are not."""
    cues = ["astringent", "chocolate"]
    said = seen(0, "astringent", concept="astringent"), seen(1, "chocolate", concept="chocolate")
    words = next(block for block in compose(told(cues, *said, sheet=ONE)).blocks if block.name == "glossary")
    assert [(line.label, [written(part) for part in line.parts]) for line in words.groups[0].lines] == [
        ("astringent", ["(said, 0:00)"])
    ]  # fmt: skip


def test_a_sample_goes_by_its_code_until_it_is_revealed() -> None:
    """In the verdict a sample has its code alone before the reveal; at the head, where all is known, both."""
    cues = ["A wins", "A is the Heron"]
    sheet = TWO.model_copy(update={"blind": True})
    episode = told(
        cues, record("preferences", 0, "A wins", preferred="A", over=("B",)),
        record("reveals", 1, "A is the Heron", sample="A", product="the Heron"), sheet=sheet,
    )  # fmt: skip
    assert dict(lines(verdict, episode))["verdict"][0] == "A over B (0:00)"
    assert [written(part) for part in compose(episode).verdict] == ["A (the Heron) over B (0:00, 0:10)"]
