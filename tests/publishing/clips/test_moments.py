"""Which moments are worth cutting, and where the cuts fall."""

from typing import Any

from notesmith.publishing.clips.concat import render as concat
from notesmith.publishing.clips.listing import render as listing
from notesmith.publishing.clips.moments import clips_of
from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Observation, Preference, Reveal, Section


def at(start: float | None, name: str) -> dict[str, Any]:
    """What every record needs."""
    place = int(start or 0)
    where = {"start": start, "end": None if start is None else start + 3, "span": (place, place + 1)}
    return {"id": name, "quote": f"words of {name}", "confidence": 1.0, "why": (), **where}


def seen(start: float | None, term: str, sample: str = "A", **more: Any) -> Observation:
    """A term perceived."""
    said = {
        "term": term, "term_span": (0, 1), "concept": term, "facet": "flavour", "presence": "present",
        "intensity": None, "sample": sample, "taster": "Ana", "preparation": None, "voice": "taster",
        "after_reveal": False,
    }  # fmt: skip
    return Observation(**at(start, f"{term}-{start}") | said | more)


def liked(start: float | None, best: str, taster: str = "Ana") -> Preference:
    """A verdict."""
    return Preference(**at(start, f"best-{best}"), preferred=best, over=("B",), scope="overall", degree=None,
                      taster=taster)  # fmt: skip


def episode(empty: Notes, **records: Any) -> Episode:
    """An episode that holds these records, as long as three minutes."""
    closing = Section(**at(177.0, "end"), kind="closing", sample=None)
    verdict = Section(**at(90.0, "judging") | {"span": (90, 170)}, kind="verdict", sample=None)
    notes = empty.model_copy(update={"samples": ("A", "B"), "sections": (verdict, closing)})
    return Episode(notes.model_copy(update=records))


def reasons(made: Episode) -> list[str]:
    """Why each clip is cut, in order."""
    return [what for clip in clips_of(made) for what in clip.what]


def test_without_records_there_are_no_clips(empty: Notes) -> None:
    """Nor a file."""
    assert clips_of(Episode(empty)) == ()
    assert listing(Episode(empty)) is None
    assert concat(Episode(empty)) is None


def test_without_times_nothing_can_be_cut(empty: Notes) -> None:
    """Whatever is said."""
    assert clips_of(episode(empty, preferences=(liked(None, "A"),), observations=(seen(None, "plum"),))) == ()


def test_what_decided_is_cut_where_it_was_first_said(empty: Notes) -> None:
    """Of the winner, by the taster; not what was said of another cup, or by the label."""
    observations = (
        seen(10.0, "plum"), seen(20.0, "smoke", "B"), seen(30.0, "honey", voice="quoted"), seen(40.0, "plum"),
        seen(100.0, "plum"), seen(105.0, "smoke", "B"), seen(110.0, "honey", voice="quoted"),
        seen(160.0, "vanilla"),
    )  # fmt: skip
    made = episode(empty, observations=observations, preferences=(liked(100.0, "A"),))
    assert reasons(made) == ["first said of A: plum", "verdict: A over B"]
    assert clips_of(made)[0].records == ("plum-10.0",)


def test_a_denied_reason_is_said_to_be_denied(empty: Notes) -> None:
    """And where it was first denied, not where it was first tasted."""
    observations = (
        seen(10.0, "smoke"), seen(30.0, "smoke", presence="absent"), seen(100.0, "smoke", presence="absent"),
    )  # fmt: skip
    made = episode(empty, observations=observations, preferences=(liked(100.0, "A"),))
    assert clips_of(made)[0].what == ("first said of A: smoke (denied)",)
    assert clips_of(made)[0].records == ("smoke-30.0",)


def test_a_doubt_decides_nothing(empty: Notes) -> None:
    """Nor is it cut as if it had been found."""
    observations = (seen(10.0, "smoke", presence="uncertain"), seen(100.0, "smoke", presence="uncertain"))
    assert reasons(episode(empty, observations=observations, preferences=(liked(100.0, "A"),))) == ["verdict: A over B"]


def test_reveals_are_cut(empty: Notes) -> None:
    """With what the sample turned out to be."""
    reveal = Reveal(**at(50.0, "bag"), sample="A", product="Mill Lane")
    assert reasons(episode(empty, reveals=(reveal,))) == ["reveal: A is Mill Lane"]


def test_tasters_who_disagree_are_both_cut(empty: Notes) -> None:
    """Each with who it was."""
    sheet = empty.sheet.model_copy(update={"tasters": ("Ana", "Bram")})
    observations = (seen(10.0, "smoke"), seen(30.0, "smoke", presence="absent", taster="Bram"))
    made = episode(empty, sheet=sheet, observations=observations)
    assert reasons(made) == ["disagreement of A: smoke (Ana)", "disagreement of A: smoke (denied, Bram)"]


def test_cuts_leave_room_around_the_words_and_stay_within_the_recording(empty: Notes) -> None:
    """A second before, half a second after, at least four in all."""
    first, last = (
        clips_of(episode(empty, reveals=(Reveal(**at(start, "bag"), sample="A", product="x"),)))[0]
        for start in (0.2, 177.5)
    )
    assert (first.start_ms, first.end_ms) == (0, 4000)
    assert (last.start_ms, last.end_ms) == (176_500, 180_500)


def test_cuts_that_overlap_are_one(empty: Notes) -> None:
    """With the reasons of both."""
    reveals = (
        Reveal(**at(50.0, "bag"), sample="A", product="x"), Reveal(**at(53.0, "tin"), sample="B", product="y"),
    )  # fmt: skip
    (clip,) = clips_of(episode(empty, reveals=reveals))
    assert clip.what == ("reveal: A is x", "reveal: B is y")
    assert clip.words == ("words of bag", "words of tin")
    assert (clip.start_ms, clip.end_ms) == (49_000, 56_500)


def test_the_list_tells_times_reasons_words_and_records(empty: Notes) -> None:
    """A paragraph a clip."""
    made = listing(episode(empty, reveals=(Reveal(**at(50.0, "bag"), sample="A", product="x"),)))
    assert made == "0:00:49.000 – 0:00:53.500\n  reveal: A is x\n  “words of bag”\n  [bag]\n"
