"""What speaks for one kind of section rather than another, in every breath of the talk: a few words said in one go."""

from bisect import bisect_left
from collections.abc import Iterator
from itertools import pairwise

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.voices import quoted_clauses

OPENERS = frozenset("okay ok right so now alright anyway well next first second third final finally last back let's lets".split())
MID_OPENERS = frozenset("okay alright anyway".split())  # these begin a new breath even where nothing else cuts the talk
LONGEST = 28
NEAR_MS = 15_000
PAUSES = ((800, "pause"), (2500, "long pause"))


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


SPEAKING: dict[str, str] = {
    "greeting": "hello hi hey welcome morning evening afternoon everyone everybody folks channel introduce",
    "plan": "today tonight plan session lined lineup going_to_do we_'re_doing we_'re_going gonna rules deal we_'ve_got",
    "vessel": "cup cups glass glasses mug mugs bowl bowls pot kettle scale scales tray filter basket spoon spoons bottle bottles "
              "jar jars lid lids saucer decanter pitcher jug timer paper cone tape taped covered table",
    "making": "grams gram gramme millilitres ml mils mil degrees celsius fahrenheit minutes minute seconds ounces litre brew brewed "
              "brewing steep steeped steeping infuse infused infusion water boil boiled boiling pour poured pouring rinse rinsed "
              "grind ground grinder ratio recipe temperature dose weighed weigh tap filtered method setup rested rest",
    "alike": "same each all both every",
    "looking": "look looks looking colour color coloured dark pale clear cloudy leaf leaves liquor foam head crema rim legs light "
               "surface crumb rind brown amber green yellow tilt hold window deep bright",
    "smelling": "nose smell smells smelling sniff sniffing aroma nosing scent whiff perfume swirl",
    "tasting": "taste tastes tasting sip sipping mouth palate tongue swallow swallowed bite chew slurp cheers throat drink mm mmm "
               "ooh oh oof finish aftertaste gums cheeks",
    "story": "told remember remembered years year ago once used_to last_year grew reminds story married born died lived moved",
    "people": "he she they him her his them dad mum mother father grandmother grandad nan wife husband brother sister uncle aunt "
              "friend neighbour neighbor boss man woman kids daughter son people",
    "trade": "farm garden estate village region grown harvest harvested picked picking farmers cultivar variety bush trees "
             "hectares metres altitude factory roaster brewery distillery winery vineyard dairy press fermented aged history century "
             "tradition called means comes_from made_from",
    "paying": "price pound pounds euro euros dollar dollars quid rand cost costs paid per cheap expensive pence cents",
    "promoting": "sponsor sponsored sponsors sponsoring sponsorship code checkout discount link percent_off brought_to patreon "
                 "subscribers membership members merch newsletter ad advert offer offers supporting fund tip_jar delivery free_shipping",
    "thanking": "thanks thank",
    "ranking": "winner wins win won rank ranking favourite favorite place prefer order verdict overall top bottom points scores pick "
               "choose vote third_place second_place first_place in_order final out_of_ten is_first is_last then",
    "choosing": "i_'d buy again keep recommend worth would_buy",
    "setting beside": "than side_by_side beside compare compared comparing versus against difference similar same more less whereas "
                      "both_of between_them next_to go_back going_back back_to cooled now_it",
    "revealing": "reveal envelope slip sealed unwrap unwrapping flip peel peeled identity guess guessed guesses lift turn_over turns_out "
                 "answers opened open i_knew no_way moment_of",
    "reading": "says description label leaflet card website packet blurb quote read_you reads notes_of expect it_says read_it "
               "promises described",
    "leaving": "bye goodbye watching listening next_week see_you subscribe comments later soon take_care cheerio sign done next_time "
               "until cheers button",
}
SIGNS_OF: dict[str, list[str]] = {}
for _sign, _phrases in SPEAKING.items():
    for _phrase in _phrases.split():
        SIGNS_OF.setdefault(_phrase.replace("_", " "), []).append(_sign)
NEARBY = ("promoting", "thanking", "reading", "quoted", "setting beside", "comparative", "making", "number", "revealing", "trade", "past tense",
          "people", "ranking", "leaving", "greeting", "plan", "vessel", "looking", "smelling", "tasting", "story", "paying", "name",
          "sample named", "another sample", "comparison", "reveal", "price", "fact", "fact of making", "preference", "ranking of all")
FACTS = {**dict.fromkeys(("dose", "water", "temperature", "time"), "fact of making"), "price": "price", "net_weight": "price"}


def cut_breaths(hearing: Hearing) -> list[int]:
    """Where each breath begins, ending with the number of words; a section can only begin where a breath does."""
    words = hearing.words
    cuts = {start for start, _ in hearing.runs}
    cuts.update(i for i, w in enumerate(words) if w.norm in MID_OPENERS or (i and w.cue != words[i - 1].cue))
    ordered = [*sorted(cuts), len(words)]
    return [at for start, end in pairwise(ordered) for at in range(start, end, LONGEST)] + [len(words)]


def gather_signs(hearing: Hearing, cuts: list[int]) -> list[list[str]]:
    """For every breath, the signs of its kind."""
    signs = [["always", *_said(hearing.words[start:end])] for start, end in pairwise(cuts)]
    _add_records(hearing, cuts, signs)
    _add_places(hearing, cuts, signs)
    _add_perceptions(hearing, cuts, signs)
    return signs


def _add_nearby(hearing: Hearing, cuts: list[int], signs: list[list[str]]) -> None:
    times = [hearing.words[at].ms for at in cuts[:-1]]
    import numpy as np
    index = {s: i for i, s in enumerate(NEARBY)}
    counts = np.zeros((len(signs) + 1, len(NEARBY)))
    for k, found in enumerate(signs):
        for s in found:
            if s in index:
                counts[k + 1, index[s]] += 1
    total = counts.cumsum(0)
    for k, found in enumerate(signs):
        a, b = bisect_left(times, times[k] - 10_000), bisect_left(times, times[k] + 10_001)
        for s, i in index.items():
            n = total[b, i] - total[a, i]
            found += [f"near: {s} {least}" for least in (1, 2, 4) if n >= least]


def _said(words: list[Word]) -> Iterator[str]:
    """What the words themselves speak for; twice where two of them do."""
    norms = [w.norm for w in words]
    pairs = [f"{a} {b}" for a, b in pairwise(norms)]
    for phrase in (*norms, *pairs, *(f"{a} {b}" for a, b in zip(pairs, norms[2:]))):
        yield from SIGNS_OF.get(phrase, ())
    tags = [w.tag for w in words]
    yield from ["past tense"] * min(2, tags.count("VBD"))
    yield from ["comparative"] * min(2, tags.count("JJR") + tags.count("RBR"))
    yield from ["superlative"] * ("JJS" in tags)
    yield from ["number"] * min(2, tags.count("CD"))
    yield from ["name"] * min(2, tags.count("NNP"))
    yield from ["i"] * ("i" in norms)
    yield from ["you"] * ("you" in norms)
    yield from ["it is"] * ("it" in norms and not {"'s", "is"}.isdisjoint(norms))


def _add_places(hearing: Hearing, cuts: list[int], signs: list[list[str]]) -> None:
    """Where in the recording each breath is: near the beginning, near the end, in the first or the last part."""
    first, last = hearing.words[0].ms, hearing.words[-1].ms
    for at, found in zip(cuts, signs, strict=False):
        now = hearing.words[at].ms
        found += [f"first {s} s" for s in (20, 40, 60, 90, 150) if now - first < s * 1000]
        found += [f"last {s} s" for s in (20, 40, 60, 90, 200) if last - now < s * 1000]
        share = (now - first) / max(1, last - first)
        found += [f"after {part}" for part in (0.25, 0.5, 0.75) if share > part]


def _add_records(hearing: Hearing, cuts: list[int], signs: list[list[str]]) -> None:
    """What the questions before have found in each breath."""
    def add(at: int, sign: str) -> None:
        signs[max(0, bisect_left(cuts, at + 1) - 1)].append(sign)

    for fact in hearing.facts:
        add(fact.start, FACTS.get(fact.kind, "fact"))
    for compared in hearing.comparisons:
        add(compared.start, "comparison")
    for preferred in hearing.preferences:
        add(preferred.start, "ranking of all" if preferred.scope == "overall" else "preference")
    for revealed in hearing.reveals:
        add(revealed.start, "reveal")
    for mention in hearing.mentions:
        add(mention.start, "sample named" if len(mention.samples) == 1 else "samples pointed at")
    quoted = quoted_clauses(hearing)
    before = None
    for start, found in zip(cuts, signs, strict=False):
        topic = hearing.topics[hearing.run_of[start]]
        found += ["quoted"] * quoted[hearing.clause_of[start]]
        found += ["another sample"] * (topic.sample != before)
        found.append(f"stage {topic.stage}")
        before = topic.sample


def _add_perceptions(hearing: Hearing, cuts: list[int], signs: list[list[str]]) -> None:
    """What is perceived in each breath, and how much is perceived round about."""
    times = [hearing.words[p.start].ms for p in hearing.perceptions]
    k = 0
    for (start, end), found in zip(pairwise(cuts), signs, strict=True):
        while k < len(times) and hearing.perceptions[k].description.start < end:
            found.append(f"perceived: {hearing.perceptions[k].facet}")
            k += 1
        now = hearing.words[start].ms
        before, here, after = (bisect_left(times, now + d) for d in (-NEAR_MS, 0, NEAR_MS))
        found += [f"{n} or more before" for n in (1, 3, 5) if here - before >= n]
        found += [f"{n} or more after" for n in (1, 3, 5) if after - here >= n]
        facets = [p.facet for p in hearing.perceptions[before:after]]
        found += [f"{f} about" for f in ("appearance", "aroma", "mouthfeel", "finish") if f in facets]


def gather_openings(hearing: Hearing, cuts: list[int]) -> list[list[str]]:
    """For every breath, the signs that a section begins with it."""
    return [["always", *_opening(hearing, start, end)] for start, end in pairwise(cuts)]


def _opening(hearing: Hearing, start: int, end: int) -> Iterator[str]:
    words = hearing.words
    first, before = words[start], words[max(0, start - 1)]
    norms = [w.norm for w in words[start:end] if w.norm not in (".", ",", "?", "!")]
    for w in norms[:1]:
        if w in OPENERS:
            yield f"opens with {w}"
    if len(norms) > 1 and norms[0] in OPENERS | {"and"} and norms[1] in OPENERS:
        yield "two opening words"
    if norms and norms[0] in ("and", "but", "because", "it", "or", "which", "that", "then", "'s"):
        yield f"goes on with {norms[0]}"
    yield from (name for least, name in PAUSES if first.pause >= least)
    if first.speaker != before.speaker:
        yield "another speaker"
    if first.cue != before.cue:
        yield "another cue"
    if before.norm in (".", "?", "!", "...", "…"):
        yield "after a stop"
    if len(norms) <= 3:
        yield "short"
    now, then = hearing.topics[hearing.run_of[start]], hearing.topics[hearing.run_of[max(0, start - 1)]]
    if now.sample != then.sample:
        yield "another sample"
    if now.stage != then.stage:
        yield f"another stage"
    for m in hearing.mentions:
        if start <= m.start < min(end, start + 5):
            yield f"names a sample at once" if m.kind in ("name", "ordinal") else f"points at a sample at once {m.kind}"
    for sign in ("looking", "smelling", "tasting", "ranking", "reading", "promoting", "leaving", "revealing", "thanking"):
        if any(sign in SIGNS_OF.get(n, ()) for n in norms[:4]):
            yield f"{sign} at once"
