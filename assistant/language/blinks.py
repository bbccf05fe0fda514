"""What a lamp does: counted flashes, blinking, steady, dark; each with its span."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from assistant.language.claims import NUMBER, negated, rx
from assistant.language.how_often import how_often
from assistant.language.lexicon.lamps import (
    DARK,
    FAST,
    FLASH,
    NO_PAUSE,
    PAUSE,
    SLOW,
    STEADY,
)
from assistant.language.rhythms import (
    bounded,
    digits_told,
    dims_told,
    flickers_told,
    rhythm_modifiers,
    rhythm_spans,
    rounds_told,
    sounds,
    turns_told,
)
from assistant.language.tokens import Tokens, tokens

LARGEST = 99
_N = r"(?:[0-9]{1,2}|once|twice|thrice|(?:a )?couple(?: of)?)"
_UNIT = (
    r"(?! ?(?:min|sec|hour|v|k|ohm|kohm|megohm|amp|psi|f|c|hz|day|week|lights|light|of "
    r"(?:the|them)"
    r"|other|others|am|pm|deg|a|years?|months?|units?|boards?|codes?|ac|dc|wires?|to "
    r"go|more min)(?!\S))"
)
_SECOND = r"(?:every|each|a|per|once a|once every) (?:second|1 sec|sec)"
_COUNT = (
    rf"(?P<n>{_N})(?: ?(?:or|to|-|/|maybe|or maybe|,|and sometimes|sometimes) "
    rf"(?P<m>{_N}))?"
)
_WORDS = (
    r"(?:quick |short |fast |slow |long |red |green |amber |yellow |orange |blue |"
    r"white |light |led )*"
)
_COLOURED = r"(?P<colour>reds?|greens?|ambers?|yellows?|oranges?|blues?|whites?)"
_ABOUT = (
    r"(?:about |like |maybe |around |only |exactly |it is |a |each |code |up to |at |"
    r"out |me |is |just |the )*"
)
_SECONDS = rf"(?P<every>{NUMBER}|few|couple(?: of)?) (?:sec|s)(?:onds)?"
_GAP = rx(
    r"(?:then|and|before|with|and then|after that|followed by|, then|,)(?: it| there "
    r"is| a| the| long| short| dark| big| little| it just| she| of| about| [0-9]+ "
    rf"sec)* {PAUSE}"
    r"|(?:long|dark|short|clear|definite|[0-9]+ sec|a) (?:pause|gap|rest|break)|"
    r"pauses? (?:in )?between"
    r"|then (?:repeats?|does it again|again|starts over|over again|goes again|all over "
    r"again)|with a (?:pause|gap|rest)|and repeats?|pause (?:and |, )?repeat|"
    r"flash(?:es)? (?:then )?pause"
)
_NO_GAP = rx(NO_PAUSE)
_WINDOW = rx(
    r"(?:every|each|once every|per|over|in|within|during)(?: like| about| maybe| "
    rf"around)* (?P<s>{NUMBER}) (?:sec|s)|(?P<one>{_SECOND})|(?P<two>every other "
    r"second)"
)
_GROUPS = rx(
    r"(?:watched|counted|saw|checked|timed|looked at|did|same)(?: it| them| that| the "
    r"pattern| for)* (?P<g>twice|[0-9]{1,2} (?:times|rounds|groups|cycles|whole "
    r"groups))"
    r"|(?P<h>[0-9]{1,2}) (?:rounds|groups|whole groups|cycles|times in a row)"
)
_SLOW, _FAST = rx(SLOW), rx(FAST)
_ON_OFF = rx(r"on (?:, )?off (?:, )?on(?: (?:, )?off)*")
_COUNTS: tuple[re.Pattern[str], ...] = (
    rx(rf"between (?P<n>{_N}) (?:and|to|or) (?P<m>{_N}) {FLASH}"),
    rx(rf"{_COLOURED} {_COUNT}(?= ,|$| \.| and| \?| then| [0-9] times)"),
    rx(rf"{_COUNT} {_WORDS}{FLASH}(?: code| pattern| times| at a time)?"),
    rx(rf"{FLASH} {_ABOUT}{_COUNT}(?: times| x)?(?: at a time)?{_UNIT}"),
    rx(rf"{FLASH} {_ABOUT}(?P<n>once)(?P<m>(?!))?(?= {_SECOND}| every other second)"),
    rx(rf"(?:always|each time|every time|consistently|still) {_COUNT}(?= ,|$| \.)"),
    rx(rf"{_COUNT} (?:each|every) time"),
    rx(rf"(?:(?:just|only) the one|a? ?single|lone|one single) (?P<n>){FLASH}"),
    rx(rf"^{_COUNT} of them(?! (?:is|are|on|off|stay|light|flash))"),
    rx(rf"{FLASH} {_COLOURED} {_ABOUT}{_COUNT}(?: times| x)?{_UNIT}"),
    rx(
        rf"{_COUNT} {_COLOURED}(?! (?:lights?|one|is|are|lit|wires?|label|sticker|dot|"
        r"on(?! (?:the|a|my|this)))(?!\S))"
    ),
    rx(
        r"(?:goes|going|does|doing|gives|giving|get|getting|got|counted|counting|"
        r"counts?|count is|count of|see|seeing|saw|now at|blinkety|it is at|was|said|"
        r"did) "
        rf"{_ABOUT}{_COUNT}(?: times| x)?(?: at a time)?(?= then| ,|$| \.| every| "
        r"and (?:the )?[a-z0-9]+ (?:one |light )?(?:goes|does|flashes|flashing|flash|"
        r"gives)| and then| \?| !| in [0-9]| over [0-9]"
        r"| now| on the| twice| [23] times| with a (?:pause|gap)| not [0-9])"
    ),
    rx(
        rf"{_COUNT}(?: times| x)?(?= (?:, |and |and then |then )+(?:it |there is |a |"
        r"the |long |longish |just "
        r"|dark )*(?:dark|rests?|pauses?|gap|stops?|goes dark|repeats?|breather|break|"
        r"breaks|waits?))"
    ),
    rx(rf"{_COUNT}(?: times| x)?(?= every [0-9.]+ sec)"),
    rx(
        r"(?:pattern|group|groups|burst|bursts|set|sets|count)(?: of| is|s of)* "
        rf"{_COUNT}"
    ),
    rx(rf"{_COUNT} (?:times|x)(?= |$){_UNIT}"),
)
_NEED_LAMP = _COUNTS[-1]
_LAMPISH = rx(rf"{FLASH}|lights?|red|green|amber|yellow|orange|blue|white")
_NAMED = rx(
    rf"{FLASH}|lights?|red|green|amber|yellow|orange|blue|white|h[0-9]p?|"
    r"l?e?d[0-9]{1,2}|timer|operation|standby|status|run|steady|solid"
)
"""What a sentence must name for its "on" or "off" to be a lamp's."""
_BLINK = rx(
    r"(?:keeps (?:on )?|just |always |constantly )*(?P<f>flash|(?<!the )(?<!those "
    r")(?<!count )flashes|flashing|flashed)"
)
_STEADY = rx(STEADY)
_ON = rx(
    r"(?:~+|is|are|are both|both|was|it is|lights?|just|one|:|stays|still|now|run|"
    r"timer|power|others?|red|green|amber|yellow|orange|blue|white|h[0-9]p|"
    r"l?e?d[0-9]{1,2}|light [0-9]) (?P<on>on)(?! (?:the|a|my|this|that|at|and off|off|"
    r"it|its|top|heat|cool|site|gas|for|hold|off on|to)(?!\S))"
)
_OF_A_PART = re.compile(
    r"(?<!\S)(?:fans?|compressors?|units?|breakers?|isolators?|disconnects?|supply|mains|"
    r"motors?|pumps?|contactors?|switch(?:es)?|sw-?[0-9]{1,2}|dip|valves?|heaters?|"
    r"system|machine|"
    r"everybody|everyone|people|guests?|family|kids|we)"
    r"(?: (?:is|are|was|were|still|now|both|all|just|stays?|completely))* $"
)
"""A part, or people, right before "on", "off" or "out", which then is no lamp's."""
_SITS = rx(
    r"(?:lights?|one|red|green|amber|yellow|orange|blue|white|h[0-9]p?|"
    r"l?e?d[0-9]{1,2}) (?P<on>just sits there)"
)
"""Of a lamp alone: a unit that just sits there does not run."""
_DARK = rx(DARK)
_NO_LIGHTS = rx(
    r"(?:no|not any|zero|not one|not a single|without any) (?:lights?|lights? (?:on|"
    r"lit))(?: (?:at all|anywhere|on|lit))*|(?:none of|neither(?: of)?) (?:the )?"
    r"(?:lights?|them) (?:is |are )?(?:on|lit)(?: up)?|nothing (?:is )?lit(?: up)?|"
    r"(?:all|everything) (?:is )?(?:dark|dead|unlit)|(?:board|unit) (?:is )?"
    r"(?:completely |totally |all )?(?:dark|dead)|lights? (?:are )?all "
    r"(?:off|dead|dark|out)"
)
_SEQUENCE = rx(
    r"(?:from (?:the )?|starting (?:on|from|at) (?:the )?)?(?P<side>left|right|top|"
    r"bottom)(?: to (?:right|left|bottom|top))?(?: (?:it is|they are|is|,))* "
    r"(?P<states>(?:on|off|flash|flashing|flashes|dark|lit)(?:(?: ,)? (?:on|off|flash|"
    r"flashing|flashes|dark|lit)){1,7})"
)
_RESTS = rx(r"(?:pauses?|rests?|gap|dark|break) (?:in )?between")


@dataclass(frozen=True, slots=True)
class Blink:
    """A state told in a span, with the slots of an observation that it fills."""

    start: int
    end: int
    slots: dict[str, Any] = field(default_factory=dict)


def count_of(first: str, second: str | None = None) -> tuple[int, ...]:
    """Return the counts meant: "six or seven" is both, "a couple" is 2 or 3.

    Examples
    --------
    >>> count_of("6", "7"), count_of("twice"), count_of("couple")
    ((6, 7), (2,), (2, 3))
    """
    found: set[int] = set()
    for text in (first, second):
        if text:
            found.update(how_often(text.removeprefix("a ")))
    return tuple(sorted(n for n in found if 0 < n <= LARGEST))


def blinks(view: Tokens) -> list[Blink]:
    """Return every state told, in order, none overlapping; "not flashing" is none."""
    found: list[Blink] = [*_sequence(view)]
    found += [
        Blink(*m.span(), {"state": "off", "lamps": "every"})
        for m in _NO_LIGHTS.finditer(view.folded)
    ]
    found += [Blink(*told) for told in digits_told(view, count_of)]
    found += [Blink(*told) for told in rounds_told(view)]
    found += _counts(_masked(view, _GROUPS))
    found += [Blink(*told) for told in turns_told(view)]
    found += [Blink(*told) for told in (*dims_told(view), *flickers_told(view))]
    for match in _ON_OFF.finditer(view.folded):
        found.append(Blink(*match.span(), {"state": "blink", "pause": "none"}))
    for match in _STEADY.finditer(view.folded):
        if not negated(view, match.start()):
            found.append(Blink(*match.span(), {"state": "on"}))
    for match in _BLINK.finditer(view.folded):
        if not negated(view, match.start()):
            found.append(Blink(*match.span("f"), {"state": "blink"}))
    found += _dark(_masked(view, _GAP))
    found += [
        Blink(*match.span("on"), {"state": "on"})
        for match in _ON.finditer(view.folded)
        if _speaks_of_lamps(view, match)
    ]
    found += [
        Blink(*match.span("on"), {"state": "on"})
        for match in _SITS.finditer(view.folded)
    ]
    found += _pause_alone(view) if not found else []
    return _apart(found)


def _masked(view: Tokens, taken: re.Pattern[str]) -> Tokens:
    """Return the view without what says how often, or the pause between groups.

    "Counted twice" is no count, and the dark of a pause is no lamp that is off.
    """
    return view.without(match.span() for match in taken.finditer(view.folded))


def _pause_alone(view: Tokens) -> list[Blink]:
    """Return a pause told by itself: "it rests in between"."""
    return [
        Blink(*match.span(), {"state": "blink", "pause": "seen"})
        for match in _RESTS.finditer(view.folded)
        if not negated(view, match.start())
    ]


def _apart(found: list[Blink]) -> list[Blink]:
    kept: list[Blink] = []
    for blink in found:
        whole = blink.slots.get("position")
        if all(
            blink.end <= other.start
            or other.end <= blink.start
            or (whole and other.slots.get("position"))
            for other in kept
        ):
            kept.append(blink)
    return sorted(
        kept, key=lambda blink: (blink.start, blink.slots.get("position", ""))
    )


def _counts(view: Tokens) -> list[Blink]:
    found: list[Blink] = []
    for pattern in _COUNTS:
        for match in pattern.finditer(view.folded):
            count = count_of(match["n"] or "1", match.groupdict().get("m"))
            if (
                not count
                or negated(view, match.start())
                or _is_idle(view, pattern, match)
            ):
                continue
            count = bounded(view.folded[: match.start()], count)
            slots: dict[str, Any] = {"state": "count", "count": count}
            if sounds(match[0]):
                slots["emitter"] = "buzzer"
            colour = match.groupdict().get("colour")
            if colour:
                slots["colour"] = colour.removesuffix("s")
            found.append(Blink(*match.span(), slots))
    return found


def _is_idle(view: Tokens, pattern: re.Pattern[str], match: re.Match[str]) -> bool:
    """Tell whether "3 times" stands in a sentence without a lamp."""
    start, end = view.sentence(match.start())
    return pattern is _NEED_LAMP and not _LAMPISH.search(view.folded, start, end)


def _dark(view: Tokens) -> list[Blink]:
    return [
        Blink(*match.span(), {"state": "off"})
        for match in _DARK.finditer(view.folded)
        if _speaks_of_lamps(view, match)
    ]


def _speaks_of_lamps(view: Tokens, match: re.Match[str]) -> bool:
    """Tell whether "on" or "off" stands in a sentence that names a lamp.

    The fan that is off beside a lamp is no lamp.
    """
    start, end = view.sentence(match.start())
    if _OF_A_PART.search(view.folded[start : match.start(match.lastgroup or 0)]):
        return False
    return bool(_NAMED.search(tokens(view.source).folded, start, end))


def _sequence(view: Tokens) -> list[Blink]:
    """Return the lamps of "from the left: on off on flash", one by one."""
    found: list[Blink] = []
    for match in _SEQUENCE.finditer(view.folded):
        states = [word for word in match["states"].split() if word != ","]
        for at, word in enumerate(states, start=1):
            state = {"on": "on", "lit": "on", "off": "off", "dark": "off"}.get(
                word, "blink"
            )
            slots = {"state": state, "position": f"{at} from the {match['side']}"}
            found.append(Blink(*match.span(), slots))
    return found


def modifiers(view: Tokens, start: int, end: int) -> dict[str, Any]:
    """Return pause, window, rate and rounds told between two places."""
    text = view.folded[start:end]
    slots: dict[str, Any] = {}
    if _NO_GAP.search(text):
        slots["pause"] = "none"
    elif _GAP.search(text):
        slots["pause"] = "seen"
    window = _WINDOW.search(text)
    if window:
        slots |= _window(window)
    slots |= rhythm_modifiers(text)
    groups = _GROUPS.search(text)
    if groups:
        counted = count_of((groups["g"] or groups["h"]).split()[0])
        slots |= {"groups_watched": counted[0]} if counted else {}
    slow, fast = _SLOW.search(text), _FAST.search(text)
    if bool(slow) != bool(fast):
        slots["rate"] = "slow" if slow else "fast"
    return slots


def _window(match: re.Match[str]) -> dict[str, float]:
    if match["s"]:
        told = float(match["s"])
        return {"window_s": told} if told > 0 else {}
    return {"window_s": 1.0 if match["one"] else 2.0}


def modifier_spans(view: Tokens) -> list[tuple[int, int]]:
    """Return the places that `modifiers` reads, so that they count as understood."""
    patterns = (_NO_GAP, _GAP, _WINDOW, _GROUPS, _SLOW, _FAST)
    found = [m.span() for pattern in patterns for m in pattern.finditer(view.folded)]
    return [*found, *rhythm_spans(view)]
