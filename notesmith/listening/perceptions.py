"""What was perceived: every description judged, and either kept as a perception or left out with its reason."""

from notesmith.listening.facets import read_facet
from notesmith.listening.hearing import Grounds, Hearing, LeftOut, Perception
from notesmith.listening.intensity import read_intensity
from notesmith.listening.presence import read_presence
from notesmith.listening.voices import quoted_clauses
from notesmith.listening.weighing import likelihood, weigh

LEAST = 0.4  # below this a description is left out; chosen where precision and recall balance


def judge_descriptions(hearing: Hearing) -> None:
    """Decide presence, intensity, facet, voice and sample of every description."""
    quoted = quoted_clauses(hearing)
    hearing.perceptions, hearing.left_out = [], []
    for d, signs in zip(hearing.descriptions, weigh(hearing), strict=True):
        k = hearing.clause_of[d.start]
        clause, topic = hearing.clauses[k], hearing.topics[hearing.run_of[d.start]]
        reading = read_presence(hearing, d, clause)
        if reading.refused:
            hearing.left_out.append(LeftOut(d, reading.refused, Grounds(reading.rule, d.start, d.end)))
            continue
        intensity, at = read_intensity(hearing, d, clause)
        if reading.weakened:
            intensity = "low"
        confidence = likelihood(signs)
        if confidence < LEAST:
            hearing.left_out.append(LeftOut(d, "too little says that it is perceived", Grounds("weighed", d.start, d.end)))
            continue
        grounds = [Grounds(d.rule, d.start, d.end)]
        start, end = d.start, max(d.end, d.head + 1)
        for rule, i in ((reading.rule, reading.at), (f"intensity {intensity}", at)):
            if i >= 0:
                grounds.append(Grounds(rule, i, i + 1))
                start, end = min(start, i), max(end, i + 1)
        grounds.append(Grounds(f"sample {topic.rule}", d.start, d.end))
        hearing.perceptions.append(
            Perception(
                description=d, clause=k, start=start, end=end,
                presence=reading.presence, intensity=intensity if reading.presence != "absent" else None,
                facet=read_facet(hearing, d, clause, topic.stage),
                voice="quoted" if quoted[k] else "taster",
                sample=topic.sample, preparation=topic.preparation,
                taster=_taster(hearing, clause.speaker, quoted[k]),
                confidence=confidence, grounds=grounds, signs=signs,
            )  # fmt: skip
        )


def _taster(hearing: Hearing, speaker: str | None, quoted: bool) -> str | None:
    """Who perceived it: the speaker where he is a taster, the only taster where there is one."""
    if quoted:
        return None
    tasters = hearing.sheet.tasters
    known = next((t for t in tasters if speaker and t.lower() == speaker.lower()), None)
    return known or (tasters[0] if len(tasters) == 1 else None)
