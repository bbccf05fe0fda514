"""A short answer in the light of what was asked: "six", "yep", "outdoor", "amber"."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, get_args

from assistant.facts import (
    ContextFact,
    ContextName,
    Fact,
    HappeningFact,
    LampFact,
    LookFact,
    ProtectionStopFact,
    ReadingFact,
    ResetFact,
    RoleFact,
    UnitFact,
)
from assistant.language.asks import asks
from assistant.language.blinks import count_of
from assistant.language.choices import chosen
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.codes import codes, normal
from assistant.language.emitters import BOXES, colours_like, emitters
from assistant.language.people import BARE_ROLES
from assistant.language.quantities import SPELLED, UNIT, quantity
from assistant.language.resets import resets
from assistant.language.times import Clock, answered_time
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Pending, Vocabulary
from assistant.rules.applicability import Plate
from assistant.signals.observation import Observation
from assistant.timing.kinds import Trigger
from assistant.units.parse import parse_quantity
from assistant.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Asked:
    """A text with what it answers."""

    view: Tokens
    pending: Pending
    vocabulary: Vocabulary
    clock: Clock

    @property
    def subject(self) -> str:
        """Return what follows the colon of the slot."""
        return self.pending.about[1]


_LONGEST_ANSWER = 14
"""Folded words; a longer text is read by itself first."""
_COUNT = rx(
    r"(?P<n>[0-9]{1,2}|once|twice|thrice|couple)(?: times| x)?"
    r"(?: (?:or|to|-|maybe|,|or maybe) (?P<m>[0-9]{1,2})(?: times)?)?"
)
_PAUSE_NONE = rx(
    r"(?:no|not|none|never|nope|nah|does not|continuous(?:ly)?|non ?stop|without)(?: "
    r"[a-z]+){0,4}|keeps (?:going|flashing|on)(?: [a-z]+){0,2}|constant(?:ly)?|"
    r"straight through|evenly?|all the time|just keeps(?: [a-z]+){0,3}"
)
_PAUSE_SEEN = rx(
    r"(?:yes|yep|yeah|yup|it|there|then|a|short|long|dark|has|does|pauses?|rests?|goes|"
    r"big|little|about|is|stops?|waits?|sure|definite|definitely|gap|after|for|[0-9]+|"
    r"sec)(?: [a-z0-9]+){0,6}"
)
_RESTS = rx(
    r"pauses?|rests?|gap|stops?|waits?|break|breather|dark|yes|yep|yeah|yup|seen|sure|"
    r"off"
)
_STATES: tuple[tuple[re.Pattern[str], str], ...] = (
    (rx(r"(?:flash|flashes|flashing|flashed|flicker|flickering|beeping)"), "blink"),
    (rx(r"(?:off|dark|dead|out|unlit|nothing|black|not lit|not on)"), "off"),
    (rx(r"(?:on|steady|solid|lit|constant|glowing|stays on)"), "on"),
)
_WHICH: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        rx(
            r"(?:power|breaker|disconnect|mains|isolator|killed|cycled|supply|main "
            r"switch)"
        ),
        "power",
    ),
    (rx(r"(?:button|reset button|pressed|switch on the board|pins)"), "button"),
    (rx(r"(?:remote|thermostat|handset|controller|clicker)"), "remote"),
    (rx(r"(?:history|memory|codes?|cleared|log|stored)"), "history"),
)
_BEFORE = rx(r"(?:before|prior|yes|yep|yeah|first|earlier)(?: [a-z]+){0,4}")
_AFTER = rx(r"(?:after|since|no|nope|nah|now|still)(?: [a-z]+){0,4}")
_TRUE_WORDS = rx(
    r"(?:on|running|there|calling|off|unplugged|isolated|have|got|got it|pulled)"
)
_NUMBER = rx(rf"(?P<n>{NUMBER})(?: (?P<unit>{UNIT})(?! [a-z]))?")
_OPEN = rx(r"ol|o l|open(?: line)?|infinite|infinity|nothing|over limit")
_UNITS = rx(UNIT)


def answer(asked: Asked) -> list[Claim]:
    """Return the fact that the asked slot calls for, or nothing."""
    reader = _READERS.get(asked.pending.about[0])
    if reader is None or len(asked.view.pieces) > _LONGEST_ANSWER:
        return []
    if {claim.item for claim in asks(asked.view, asked.vocabulary)
            if isinstance(claim.item, str)} & _SETS_ASIDE:  # fmt: skip
        return []
    found = reader(asked)
    return [found] if found else []


_SETS_ASIDE = frozenset(
    {"dont_know", "skip", "ask_next", "ask_why", "ask_page", "ask_wait", "ask_meaning",
        "undo",
     "off_topic", "ask_record"}
)  # fmt: skip
"""Acts that leave the question open."""


def _lamp(
    match: re.Match[str],
    before_reset: bool | None = None,
    **slots: Any,  # noqa: ANN401 - the slots of an Observation, each of its own type
) -> Claim:
    observation = Observation(**slots)
    fact = LampFact(observation=observation, before_reset=before_reset)
    return Claim(*match.span(), fact)


def _count(asked: Asked) -> Claim | None:
    match = _COUNT.search(asked.view.folded)
    count = count_of(match["n"], match["m"]) if match else ()
    return _lamp(match, state="count", count=count) if match and count else None


def _pause(asked: Asked) -> Claim | None:
    folded = asked.view.folded
    match = _PAUSE_NONE.match(folded)
    if match:
        return _lamp(match, state="count", pause="none")
    match = _PAUSE_SEEN.match(folded)
    if match and _RESTS.search(folded):
        return _lamp(match, state="count", pause="seen")
    return None


def _emitter(asked: Asked, kind: str) -> Claim | None:
    for emitter in emitters(asked.view.folded, asked.vocabulary):
        if emitter.kind == kind:
            slots: dict[str, Any] = {kind: emitter.values}
            fact = LampFact(observation=Observation(state="blink", **slots))
            return Claim(emitter.start, emitter.end, fact)
    option = chosen(asked.view, asked.pending.options)
    if option is None:
        return None
    value: Any = (
        colours_like(option, asked.vocabulary) if kind == "colour" else (option,)
    )
    fact = LampFact(observation=Observation(state="blink", **{kind: value}))
    return Claim(0, len(asked.view.folded), fact)


def _box(asked: Asked) -> Claim | None:
    for pattern, box in BOXES:
        match = pattern.search(asked.view.folded)
        if match:
            return _lamp(match, state="blink", box=(box,))
    options = [o for o in asked.pending.options if o in get_args(_BOX)]
    option = chosen(asked.view, tuple(options))
    if option is None:
        return None
    fact = LampFact(observation=Observation(state="blink", box=(option,)))  # type: ignore[arg-type]
    return Claim(0, len(asked.view.folded), fact)


def _code(asked: Asked) -> Claim | None:
    for code in codes(asked.view):
        if code.absent:
            fact = LampFact(observation=Observation(state="no_code"))
        else:
            fact = LampFact(observation=Observation(state="display", code=code.code))
        return Claim(code.start, code.end, fact)
    match = rx(
        r"(?:[a-z]{1,2} ?-?[0-9]{1,3}|[0-9]{1,3}|[a-z]{1,2} (?:oh|o)|[a-z]{2})"
    ).search(asked.view.folded)
    if match and not re.fullmatch(r"(?:no|ok|it|is|at|on|yo|hi|an|we|he)", match[0]):
        return _lamp(match, state="display", code=normal(match[0]))
    return None


def _state(asked: Asked) -> Claim | None:
    label = (asked.subject,) if asked.subject else ()
    for pattern, state in _STATES:
        match = pattern.search(asked.view.folded)
        if match:
            return _lamp(match, state=state, label=label)
    option = chosen(asked.view, asked.pending.options)
    if option in {"on", "off", "blink", "count"}:
        fact = LampFact(observation=Observation(state=option, label=label))  # type: ignore[arg-type]
        return Claim(0, len(asked.view.folded), fact)
    return None


def _unit(asked: Asked) -> Claim | None:
    option = chosen(asked.view, asked.pending.options)
    if option is None:
        return None
    return Claim(0, len(asked.view.folded), UnitFact(plate=Plate(outdoor_model=option)))


def _role(asked: Asked) -> Claim | None:
    for pattern, role in BARE_ROLES:
        match = pattern.search(asked.view.folded)
        if match:
            return Claim(*match.span(), RoleFact(role=role))
    return None


def _time(asked: Asked) -> Claim | None:
    span = answered_time(asked.view, asked.clock)
    if span is None:
        return None
    fact: Fact
    if asked.subject in {"reset", "second_reset"}:
        fact = ResetFact(at=span.moment)
    elif asked.subject == "protection_stop":
        fact = ProtectionStopFact(at=span.moment)
    elif asked.subject in get_args(Trigger):
        fact = HappeningFact(trigger=asked.subject, at=span.moment)  # type: ignore[arg-type]
    else:
        return None
    return Claim(span.start, span.end, fact)


def _yes_or_no(asked: Asked) -> bool | None:
    acts = {claim.item for claim in asks(asked.view, asked.vocabulary)
            if isinstance(claim.item, str)}  # fmt: skip
    if "yes" in acts:
        return True
    return False if "no" in acts else None


def _context(asked: Asked) -> Claim | None:
    said = _yes_or_no(asked)
    option = chosen(asked.view, asked.pending.options) if said is None else None
    if option in {"yes", "no"}:
        said = option == "yes"
    if said is None or asked.subject not in get_args(ContextName):
        return None
    fact = ContextFact(name=asked.subject, value=said)  # type: ignore[arg-type]
    return Claim(0, len(asked.view.folded), fact, shares=True)


def _look(asked: Asked) -> Claim | None:
    option = chosen(asked.view, asked.pending.options)
    if option is None:
        return None
    fact = LookFact(check=asked.subject, answer=option)
    return Claim(0, len(asked.view.folded), fact)


def _unit_of(asked: Asked) -> Claim | None:
    match = _UNITS.search(asked.view.folded)
    if match is None:
        option = chosen(asked.view, asked.pending.options)
        value = _parsed(option) if option else None
        span = (0, len(asked.view.folded))
    else:
        value = _in_unit(asked, SPELLED[match[0]])
        span = match.span()
    return Claim(*span, ReadingFact(of=asked.subject, value=value)) if value else None


def _in_unit(asked: Asked, unit: str) -> Quantity | None:
    """Return which of the quantities in question has the unit."""
    texts = [*asked.pending.options, asked.pending.last_reading]
    for text in texts:
        number = re.match(NUMBER, text.replace(",", ""))
        if number and quantity(number[0], unit):
            return quantity(number[0], unit)
    return None


def _parsed(text: str) -> Quantity | None:
    try:
        return parse_quantity(text)
    except ValueError:
        return None


def _reading(asked: Asked) -> Claim | None:
    """Read "46k" or "OL" for the check that was asked; no unit leaves it open."""
    folded = asked.view.folded
    match = _OPEN.search(folded)
    if match:
        return Claim(*match.span(), ReadingFact(of=asked.subject, open_line=True))
    match = _NUMBER.search(folded)
    if match is None:
        return None
    if match["unit"]:
        value = quantity(match["n"], SPELLED[match["unit"]])
        fact = ReadingFact(of=asked.subject, value=value) if value else None
    else:
        could = tuple(
            value
            for unit in asked.pending.options
            if (value := quantity(match["n"], unit)) is not None
        )
        fact = _open_reading(asked.subject, could)
    return Claim(*match.span(), fact) if fact else None


def _open_reading(of: str, could: tuple[Quantity, ...]) -> ReadingFact | None:
    if len(could) == 1:
        return ReadingFact(of=of, value=could[0])
    return ReadingFact(of=of, readings_possible=could) if could else None


def _reset_which(asked: Asked) -> Claim | None:
    for claim in resets(asked.view, asked.vocabulary):
        return claim
    for pattern, which in _WHICH:
        match = pattern.search(asked.view.folded)
        if match:
            return Claim(*match.span(), ResetFact(which=which))  # type: ignore[arg-type]
    return None


def _before_reset(asked: Asked) -> Claim | None:
    after, before = _AFTER.search(asked.view.folded), _BEFORE.search(asked.view.folded)
    if after and (not before or after.start() < before.start()):
        return _lamp(after, False, state="blink")
    return _lamp(before, True, state="blink") if before else None


_BOX = Observation.model_fields["box"].annotation
_READERS: dict[str, Callable[[Asked], Claim | None]] = {
    "count": _count,
    "pause": _pause,
    "colour": lambda asked: _emitter(asked, "colour"),
    "board": lambda asked: _emitter(asked, "board"),
    "label": lambda asked: _emitter(asked, "label"),
    "box": _box,
    "code": _code,
    "state": _state,
    "lamp": _state,
    "unit": _unit,
    "role": _role,
    "time": _time,
    "context": _context,
    "look": _look,
    "unit_of": _unit_of,
    "reading": _reading,
    "reset_which": _reset_which,
    "before_reset": _before_reset,
}
"""Slot -> how its answer is read."""
