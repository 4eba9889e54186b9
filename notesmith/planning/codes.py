"""Three-digit codes that samples are called by while they are blind."""

from collections.abc import Collection
from itertools import pairwise
from random import Random

from notesmith.errors import SheetError

MOST_CODES = 60
"""How many codes one tasting may need: so many are always found, whatever is drawn."""

DIGITS = "zero one two three four five six seven eight nine".split()
TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split()


def draw_codes(count: int, random: Random, used: Collection[str] = ()) -> list[str]:
    """So many codes, none trivial, none used before, and each two of them different in two digits or more.

    The third digit is given by the first two through a Latin square that is drawn anew, so that no two of the 90
    candidates can differ in one digit alone; a code misheard or miswritten in one digit is then nobody else's.

    Raises:
        SheetError: more codes are asked for than there are.

    >>> draw_codes(3, Random("a seed"))
    ['481', '517', '468']
    """
    rows, columns, signs = (random.sample(range(10), 10) for _ in range(3))
    square = [f"{a}{b}{signs[(rows[a] + columns[b]) % 10]}" for a in range(1, 10) for b in range(10)]
    free = [code for code in square if not is_trivial(code) and code not in used]
    if count > min(MOST_CODES, len(free)):
        what = f"{count} cups need codes, and only {min(MOST_CODES, len(free))} differ enough"
        raise SheetError(what, mend="plan fewer samples, duplicates or repeats")
    return random.sample(free, count)


def is_trivial(code: str) -> bool:
    """Whether a code sticks in the mind or looks like an order: one digit thrice, a run, whole hundreds, 911.

    Common practice, no source; the olive-oil method and ISO 13299 ask for random digits only.

    >>> [code for code in ("777", "456", "321", "500", "911", "485") if is_trivial(code)]
    ['777', '456', '321', '500', '911']
    """
    steps = {int(after) - int(before) for before, after in pairwise(code)}
    return steps in ({0}, {1}, {-1}) or code.endswith("00") or code == "911"


def spoken(code: str) -> tuple[str, ...]:
    """How a code is said other than digit by digit.

    >>> spoken("417"), spoken("480"), spoken("405")
    (('four seventeen',), ('four eighty',), ('four oh five', 'four zero five'))
    """
    first, second, third = (int(digit) for digit in code)
    if second == 0:
        return f"{DIGITS[first]} oh {DIGITS[third]}", f"{DIGITS[first]} zero {DIGITS[third]}"
    if second == 1:
        return (f"{DIGITS[first]} {TEENS[third]}",)
    return (f"{DIGITS[first]} {TENS[second]}{f' {DIGITS[third]}' if third else ''}",)
