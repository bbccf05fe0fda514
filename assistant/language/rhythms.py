"""How a lamp flashes beyond a count: quick and long, dimming, flicker, in turn."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from assistant.language.claims import NUMBER, negated, rx
from assistant.language.lexicon.lamps import FLASH
from assistant.language.tokens import Tokens

Told = tuple[int, int, dict[str, Any]]
"""Start, end and the slots of an observation that the words fill."""
CountOf = Callable[[str], tuple[int, ...]]

_N = r"(?:[0-9]{1,2}|once|twice|thrice|(?:a )?couple(?: of)?)"
_QUICK = rf"(?:shorts?|quick|fast|quickies|short)(?: (?:ones?|{FLASH}))?"
_LONG = rf"(?:longs?|slow|long)(?: (?:ones?|{FLASH}))?"
_AND = r"(?: (?:and|then|,|followed by|and then|plus))*"
_DIGITS = rx(
    rf"(?P<n>{_N}) {_QUICK}{_AND} (?P<m>{_N}) {_LONG}"
    rf"|(?P<p>{_N}) {_LONG}{_AND} (?P<o>{_N}) {_QUICK}"
)
_DIMS = rx(
    r"bright (?:then|and) dim|dim (?:then|and) bright|(?:kind of )?(?:breathing|"
    r"fading in and out|glowing up and down)(?: (?:, )?bright then dim)?|(?:gets |"
    r"goes |just )*(?:brighter and dimmer|dimmer and brighter)"
)
_FLICKER = rx(r"(?:keeps )?(?:flickers|flickering|flickered|fluttering|strobing)")
_NOT_A_LAMP = rx(r"(?:house|room|home|kitchen|all) lights(?: [a-z]+)?|when|power")
_TOGETHER = rx(
    r"together|at the same (?:time|moment|instant)|in (?:sync|step|unison)|"
    r"simultaneously|in time with each other"
)
_APART = rx(
    r"(?:not|never) (?:at the same (?:time|moment)|together|in (?:sync|step))|out of "
    r"(?:sync|step)|opposite (?:each other|times)"
)
_TURNS = rx(
    r"tak(?:es?|ing) turns|alternat(?:e|es|ing|ely)|back and forth|one then the other|"
    r"when one is on the other is off"
)
_IN_TURN = rx(r"in turns?|by turns|turn about|one after (?:the other|another)")
"""Of lamps only where they are said to flash; much else is done in turn."""
_PRESSED = rx(
    r"(?:after|when|once|while|with)(?: i| you| we| the)*(?: am| are)? (?:press(?:ed|"
    r"ing)?|push(?:ed|ing)?|hold(?:ing)?|held)(?: the| a| down| in)*(?: [a-z]+)? "
    r"(?:button|switch|key)|(?:in|on) (?:the )?detail(?:ed)? (?:display|mode|level)|"
    r"detail display"
)
_NOT_PRESSED = rx(
    r"(?:without|not|never|did not|have not|no)(?: [a-z]+)? (?:press(?:ed|ing)?|"
    r"push(?:ed|ing)?|touch(?:ed|ing)?)(?: [a-z]+)*|first display|before (?:i )?"
    r"press(?:ed|ing)?(?: [a-z]+)*"
)
_RANGE = rx(
    rf"(?:every|each|once every|between)(?: like| about| maybe)* (?P<s>{NUMBER})(?: "
    rf"sec)? (?:or|to|-|and) (?P<t>{NUMBER}) sec"
)
_BEEP = re.compile(r"(?<!\S)(?:beep|chirp|pip)(?:s|ing|ed)?(?!\S)")
_ROUNDS = rx(
    r"(?:counted|counts?|got|get|gives?|rounds?|groups?|times|saw)(?: (?:were|are|was|"
    r"me|it|them|of|is|,|[0-9] times|twice))* (?P<row>[0-9]{1,2}(?:(?: ,| and| then| "
    r", and| , then)* [0-9]{1,2}){2,9})(?! (?:v|k|ohm|kohm|amp|psi|f|c|hz|min|sec|deg|"
    r"on|across|at)(?!\S))(?! [0-9])"
)
_LARGEST = 30
_BOUND = re.compile(
    r"(?<!\S)(?:(?P<over>more than|over|at least|no less than)|"
    r"(?P<under>less than|fewer than|under|at most|no more than|up to)) $"
)
_MOST = 40
"""Flashes that "more than twelve" ends at."""


def digits_told(view: Tokens, count_of: CountOf) -> list[Told]:
    """Return "two short three long": two digits, never their sum."""
    found: list[Told] = []
    for match in _DIGITS.finditer(view.folded):
        short = count_of(match["n"] or match["o"])
        long = count_of(match["m"] or match["p"])
        slots = {
            "state": "short_long",
            "count": short,
            "long_count": long,
            "first": "short" if match["n"] else "long",
        }
        found.append((*match.span(), slots))
    return found


def dims_told(view: Tokens) -> list[Told]:
    """Return "breathing", "bright then dim"."""
    return [(*m.span(), {"state": "heartbeat"}) for m in _DIMS.finditer(view.folded)]


def flickers_told(view: Tokens) -> list[Told]:
    """Return "it flickers", where it is a lamp and not the lights of a house."""
    return [
        (*match.span(), {"state": "flicker"})
        for match in _FLICKER.finditer(view.folded)
        if not negated(view, match.start())
        and not _NOT_A_LAMP.search(view.folded, *view.sentence(match.start()))
    ]


def rounds_told(view: Tokens) -> list[Told]:
    """Return "counted three times: 6, 6 and 5": each number once, all of them kept."""
    found: list[Told] = []
    for match in _ROUNDS.finditer(view.folded):
        row = tuple(int(number) for number in re.findall(r"[0-9]+", match["row"]))
        if all(0 < number <= _LARGEST for number in row):
            slots = {"state": "count", "count": tuple(sorted(set(row)))}
            found.append((*match.span(), slots | {"counted": row}))
    return found


def turns_told(view: Tokens) -> list[Told]:
    """Return "they take turns", which says how two lamps stand to each other."""
    return [
        (*m.span(), {"state": "blink", "phase": "alternating"})
        for m in _TURNS.finditer(view.folded)
    ]


def rhythm_modifiers(text: str) -> dict[str, Any]:
    """Return phase, level of the display and a range of seconds told in a stretch."""
    slots: dict[str, Any] = {}
    if any(said.search(text) for said in (_APART, _TURNS, _IN_TURN)):
        slots["phase"] = "alternating"
    elif _TOGETHER.search(text):
        slots["phase"] = "together"
    if _NOT_PRESSED.search(text):
        slots["display_level"] = "first"
    elif _PRESSED.search(text):
        slots["display_level"] = "detail"
    span = _RANGE.search(text)
    if span and 0 < float(span["s"]) < float(span["t"]):
        slots |= {"window_s": float(span["s"]), "window_to_s": float(span["t"])}
    return slots


def rhythm_spans(view: Tokens) -> list[tuple[int, int]]:
    """Return the places that `rhythm_modifiers` reads."""
    patterns = (_APART, _TOGETHER, _NOT_PRESSED, _PRESSED, _RANGE)
    return [m.span() for pattern in patterns for m in pattern.finditer(view.folded)]


def sounds(words: str) -> bool:
    """Tell whether what is counted is heard and not seen."""
    return bool(_BEEP.search(words))


def bounded(before: str, count: tuple[int, ...]) -> tuple[int, ...]:
    """Return the numbers that "more than" or "at most" before a count leaves.

    Examples
    --------
    >>> bounded("it is at most ", (3,)), bounded("", (3,))
    ((1, 2, 3), (3,))
    """
    found = _BOUND.search(before)
    if not found or not count:
        return count
    number = max(count)
    if found["over"]:
        least = number + (found["over"] in ("more than", "over"))
        return tuple(range(least, max(least, _MOST) + 1))
    most = number - (found["under"] in ("less than", "fewer than", "under"))
    return tuple(range(1, most + 1))
