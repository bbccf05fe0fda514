"""Number words, and when "one" is a number."""

from __future__ import annotations

from assistant.language.lexicon.words import words

_SMALL = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen "
    "fourteen fifteen sixteen seventeen eighteen nineteen"
)
_LARGE = "twenty thirty forty fifty sixty seventy eighty ninety"

SMALL = {word: value for value, word in enumerate(_SMALL.split())} | {
    "fourty": 40,
    "dozen": 12,
}
TENS = {word: 10 * value for value, word in enumerate(_LARGE.split(), start=2)}
SHORT_ORDINALS = {"1st": "first", "2nd": "second", "3rd": "third"} | {
    f"{n}th": word
    for n, word in enumerate(
        words("fourth fifth sixth seventh eighth ninth tenth"), start=4
    )
}
ORDINALS = {
    word: value
    for value, word in enumerate(
        words("first second third fourth fifth sixth seventh eighth ninth tenth"),
        start=1,
    )
}

ONE_COUNTS = frozenset(
    words("""
    flash flashes flashed short long quick red green amber yellow orange blue white
    min hour sec time beep beeps day week megohm and or then at every
    """)
)
"""What stands after "one" when it is a number and not a pronoun."""
ONE_COUNTED_BY = frozenset(
    words("code just only exactly goes does doing or and flashes past till at")
)
"""What stands before "one" when it is a number at the end of a thought."""
ONE_POINTS = frozenset(
    words("""
    the this that other another which same little big first last red green amber
    yellow orange blue white timer run power operation status top bottom left right
    middle no any every each
    """)
)
"""What makes "one" a pronoun."""
LONGEST_NUMBER = 15
"""Digits; a longer run is kept as a word and never computed with."""
