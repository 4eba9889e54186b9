"""What was perceived: every description judged, and either kept as a perception or left out with its reason."""

from notesmith.listening.facets import read_facet
from notesmith.listening.hearing import Description, Grounds, Hearing, LeftOut, Perception
from notesmith.listening.intensity import read_intensity
from notesmith.listening.presence import Reading, read_presence
from notesmith.listening.voices import quoted_clauses
from notesmith.listening.weighing import likelihood, weigh

UNLIKELY = "too little says that it is perceived"
LEAST = 0.4  # below this a description is left out; chosen where precision and recall balance


def judge_descriptions(hearing: Hearing) -> None:
    """Decide presence, intensity, facet, voice and sample of every description."""
    quoted = quoted_clauses(hearing)
    hearing.perceptions, hearing.left_out = [], []
    for description, signs in zip(hearing.descriptions, weigh(hearing), strict=True):
        clause = hearing.clause_of[description.start]
        reading = read_presence(hearing, description, hearing.clauses[clause])
        confidence = likelihood(signs)
        left_out = _left_out(description, reading, confidence)
        if left_out:
            hearing.left_out.append(left_out)
        else:
            hearing.perceptions.append(_perceived(hearing, description, reading, confidence, quoted=quoted[clause]))


def _left_out(d: Description, reading: Reading, confidence: float) -> LeftOut | None:
    """The reason why a description is no perception, if there is one."""
    if reading.refused:
        return LeftOut(d, reading.refused, Grounds(reading.rule, d.start, d.end))
    if confidence < LEAST:
        return LeftOut(d, UNLIKELY, Grounds("weighed", d.start, d.end))
    return None


def _perceived(hearing: Hearing, d: Description, reading: Reading, confidence: float, *, quoted: bool) -> Perception:
    """The perception that a description reports, with the words that decided."""
    k, topic = hearing.clause_of[d.start], hearing.topics[hearing.run_of[d.start]]
    clause = hearing.clauses[k]
    graded, at = read_intensity(hearing, d, clause)
    intensity = "low" if reading.weakened else graded
    decisions = ((reading.rule, reading.at), (f"intensity {intensity}", at))
    deciding = [Grounds(rule, i, i + 1) for rule, i in decisions if i >= 0]
    return Perception(
        description=d, clause=k,
        start=min([d.start, *(g.start for g in deciding)]), end=max([d.end, d.head + 1, *(g.end for g in deciding)]),
        presence=reading.presence, intensity=intensity if reading.presence != "absent" else None,
        facet=read_facet(hearing, d, clause, topic.stage),
        voice="quoted" if quoted else "taster",
        sample=topic.sample, preparation=topic.preparation,
        taster=taster_of(hearing, clause.speaker, quoted=quoted), confidence=confidence,
        grounds=[Grounds(d.rule, d.start, d.end), *deciding, Grounds(f"sample {topic.rule}", d.start, d.end)],
    )


def taster_of(hearing: Hearing, speaker: str | None, *, quoted: bool) -> str | None:
    """Who perceived it: the speaker where he is a taster, the only taster where there is one."""
    if quoted:
        return None
    tasters = hearing.sheet.tasters
    known = next((t for t in tasters if speaker and t.lower() == speaker.lower()), None)
    return known or (tasters[0] if len(tasters) == 1 else None)
