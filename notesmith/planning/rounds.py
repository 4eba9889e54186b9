"""A contest over many episodes: read from a file and from notes, and told with what is still to play."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Literal

from pydantic import Field

from notesmith.errors import SheetError
from notesmith.filled_in import Form, read_filled_in
from notesmith.planning.games import Game, Result, knock_out, round_robin
from notesmith.planning.standings import standings
from notesmith.records import Notes, Preference, Record


class Contest(Record):
    """Who meets whom, and what came of it."""

    title: str = Field("", description="What the contest is called.")
    kind: Literal["round-robin", "knock-out"] = Field(description="Everybody meets everybody, or the loser leaves.")
    entrants: tuple[str, ...] = Field((), description="The products, in a knock-out the strongest first.")
    after: str | None = Field(None, description="A round robin beside this file whose standings seed this knock-out.")
    best: int | None = Field(None, ge=2, description="How many of those standings go on; all if left out.")
    played: tuple[Result, ...] = Field((), description="What was played so far.")


CONTEST = Form(Contest, {"played": Result}, called="the contest", begun_with="notesmith plan rounds --help")


def read_contest(path: Path) -> Contest:
    """Read a contest; one that follows a round robin has the best of its standings for entrants.

    Raises:
        SheetError: it or what it follows cannot be read or has fewer than two entrants, or a result names a stranger.
    """
    contest = read_filled_in(path, CONTEST)
    if contest.after:
        contest = _seeded(contest, path)
    try:
        _check(contest)
    except SheetError as error:
        raise SheetError(error.what, where=str(path), mend=error.mend) from None
    return contest


def _seeded(contest: Contest, path: Path) -> Contest:
    if contest.entrants:
        raise SheetError("`entrants` and `after` are both given", where=str(path), mend="leave one out")
    league = read_filled_in(path.with_name(contest.after or ""), CONTEST)
    if league.after or league.kind != "round-robin":
        raise SheetError(f"`{contest.after}` is no round robin", where=str(path), mend="name one in `after`")
    _check(league)
    return contest.model_copy(update={"entrants": _best(league, contest.best or len(league.entrants), path)})


def _best(league: Contest, best: int, path: Path) -> tuple[str, ...]:
    """The best of a round robin, once that is certain."""
    if any(game.result is None and not game.bye for games in rounds_of(league) for game in games):
        raise SheetError(
            "the round robin is not played to its end", where=str(path), mend="play it, or list `entrants`"
        )
    table = standings(league.entrants, league.played)
    if best < len(table) and table[best - 1].rank == table[best].rank:
        what = f"{table[best - 1].entrant} and {table[best].entrant} stand equal, and only one of them goes on"
        raise SheetError(what, where=str(path), mend="decide between them, and list `entrants`")
    return tuple(row.entrant for row in table[:best])


def _check(contest: Contest) -> None:
    if len(contest.entrants) < 2:
        raise SheetError("there are not two entrants", mend='list them, such as entrants = ["one", "other"]')
    for name, times in Counter(contest.entrants).items():
        if times > 1 or not name.strip():
            raise SheetError(f"the entrant `{name}` stands {times} times" if name.strip() else "an entrant has no name")
    for result in contest.played:
        for name in (result.one, result.other):
            if name not in contest.entrants:
                raise SheetError(f"`{name}` is no entrant", mend="write it as `entrants` does")
    rounds_of(contest)


def rounds_of(contest: Contest) -> list[list[Game]]:
    """The games of every round.

    Raises:
        SheetError: the results do not fit the games.
    """
    make = round_robin if contest.kind == "round-robin" else knock_out
    return make(contest.entrants, contest.played)


def with_notes(contest: Contest, notes: Sequence[Notes]) -> Contest:
    """The contest with what the notes of further episodes say of two of its entrants.

    Raises:
        SheetError: notes do not tell which two entrants met, or the results do not fit the games.
    """
    further = tuple(result_of(one, contest.entrants) for one in notes)
    contest = contest.model_copy(update={"played": contest.played + further})
    _check(contest)
    return contest


def result_of(notes: Notes, entrants: Sequence[str]) -> Result:
    """Which of two entrants was liked better in an episode: by most tasters, each at their last word before the reveal.

    Raises:
        SheetError: the products are sealed, not exactly two entrants were tasted, or nobody says which is better.
    """
    products = {sample.id: sample.product for sample in notes.sheet.samples}
    met = [name for name in entrants if name in products.values()]
    if len(met) != 2:
        mend = "reveal the notes first" if None in products.values() else "name two of them as products in the sheet"
        raise SheetError(f"{len(met)} entrants were tasted", where=notes.transcript, mend=mend)
    votes = Counter(products.get(said.preferred or "") for said in _last_words(notes))
    one, other = met
    if not votes[one] + votes[other]:
        raise SheetError("nobody says which is better", where=notes.transcript, mend="write it into [[played]]")
    winner = one if votes[one] > votes[other] else other if votes[other] > votes[one] else None
    return Result(one=one, other=other, winner=winner, episode=notes.transcript)


def _last_words(notes: Notes) -> Iterable[Preference]:
    """What each taster said last of the whole, while nobody knew which was which."""
    blind = [said for said in notes.preferences if all(said.span < reveal.span for reveal in notes.reveals)]
    return {said.taster: said for said in blind if said.scope == "overall"}.values()


def told(contest: Contest) -> str:
    """Standings of a round robin, every round with its results and byes, and what is still to play."""
    rounds = rounds_of(contest)
    lines = [contest.title] if contest.title else []
    if contest.kind == "round-robin":
        lines += ["Standings", *_table(contest)]
    for number, games in enumerate(rounds, start=1):
        lines += [f"Round {number}", *(f"  {_said(game)}" for game in games)]
    return "\n".join([*lines, *_to_come(rounds)]) + "\n"


def _table(contest: Contest) -> Iterator[str]:
    width = max(map(len, contest.entrants))
    for row in standings(contest.entrants, contest.played):
        games = f"{row.won} won, {row.drawn} drawn, {row.lost} lost"
        yield f"  {row.rank:2}. {row.entrant:{width}}  {row.points:4g} pt  {games}"


def _said(game: Game) -> str:
    one, other = game.one or "(to be found)", game.other or "(to be found)"
    if game.bye:
        return f"{one} has a bye"
    if game.result is None:
        return f"{one} – {other}"
    episode = f" ({game.result.episode})" if game.result.episode else ""
    return f"{one} – {other}: {game.result.winner or 'equal'}{episode}"


def _to_come(rounds: Iterable[Iterable[Game]]) -> Iterator[str]:
    left = [game for games in rounds for game in games if not game.bye and game.result is None]
    if not left:
        yield "Everything is played"
        return
    now = [game for game in left if game.ready]
    yield f"Still to play: {len(left)}, of which now {len(now)}"
    yield from (f"  {_said(game)}" for game in now)
