"""Number words to digits: "fifty four" is 54, "twice" is 2 times. Pure."""

from __future__ import annotations

from collections.abc import Sequence

_SMALL = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen "
    "fourteen fifteen sixteen seventeen eighteen nineteen"
)
_LARGE = "twenty thirty forty fifty sixty seventy eighty ninety"
UNITS = {word: value for value, word in enumerate(_SMALL.split())}
TENS = {word: 10 * value for value, word in enumerate(_LARGE.split(), start=2)}
TEN = UNITS["ten"]
TIMES = {"once": "1", "twice": "2", "thrice": "3"}
_COUNTED = """
    flash flashes blink blinks wink winks time times beep beeps long longs short
    shorts second seconds minute minutes hour hours lamp pulse pulses round
    """
COUNTED = frozenset(_COUNTED.split())
"""What may follow "one" when it is a number and not a pronoun."""


def digits(words: Sequence[str]) -> list[str]:
    """Return the words with number words written as digits.

    "One" is left alone unless something countable follows: "this one" is not 1.

    Examples
    --------
    >>> digits(["fifty", "four", "flashes"])
    ['54', 'flashes']
    >>> digits(["twice", "one", "flash", "this", "one"])
    ['2', 'times', '1', 'flash', 'this', 'one']
    """
    out: list[str] = []
    at = 0
    while at < len(words):
        taken, made = _number(words, at)
        out.extend(made)
        at += taken
    return out


def _number(words: Sequence[str], at: int) -> tuple[int, list[str]]:
    word = words[at]
    following = words[at + 1] if at + 1 < len(words) else ""
    if word in TIMES:
        return 1, [TIMES[word], "times"]
    if word in TENS:
        unit = UNITS.get(following, 0)
        if unit and unit < TEN:
            return 2, [str(TENS[word] + unit)]
        return 1, [str(TENS[word])]
    if word == "one" and following not in COUNTED:
        return 1, [word]
    if word in UNITS:
        return 1, [str(UNITS[word])]
    return 1, [word]
