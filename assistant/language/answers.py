"""A short answer in the light of what was asked: "six", "yep", "outdoor", "amber"."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, get_args

from assistant.facts import (
    ContextFact,
    ContextName,
    Fact,
    HappeningFact,
    LampFact,
    LookFact,
    ModeFact,
    ProtectionStopFact,
    ResetFact,
    RoleFact,
    UnitFact,
)
from assistant.language.asked import Asked
from assistant.language.asks import acts_of
from assistant.language.attempts import bare_attempt
from assistant.language.blinks import count_of, modifiers
from assistant.language.choices import chosen
from assistant.language.claims import Claim, either, rx
from assistant.language.codes import codes, normal
from assistant.language.context import contexts
from assistant.language.emitters import BOXES, colours_like, emitters
from assistant.language.happenings import happenings
from assistant.language.lamp_answers import LAMP_READERS, codes_in_turn, dims
from assistant.language.lamps import lamps
from assistant.language.lexicon.lamps import COLOURS
from assistant.language.people import BARE_MODES, BARE_ROLES, modes
from assistant.language.plate import plate
from assistant.language.resets import resets
from assistant.language.stop_answers import STOP_READERS, tells_a_stop
from assistant.language.stops import stops
from assistant.language.times import answered_time
from assistant.record import Box
from assistant.rules.applicability import Plate
from assistant.rules.fittings import settings_in
from assistant.signals.observation import Observation
from assistant.timing.triggers import Trigger

IN_TURN = "codes"
"""The slot whose answer may be several lamps: all codes of a display's round."""
_LONGEST_ANSWER = 14
"""Folded words; a longer text is read by itself first."""
_COUNT = rx(
    r"(?P<n>[0-9]{1,2}|once|twice|thrice|couple)(?: times| x)?(?: (?:or|to|-|maybe|,|"
    r"or maybe) (?P<m>[0-9]{1,2})(?: times)?)?"
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
    (rx(r"(?:flash|flashes|flashing|flashed|beeping)"), "blink"),
    (rx(r"(?:flickers?|flickering|fluttering)"), "flicker"),
    (rx(r"(?:off|dark|dead|out|unlit|nothing|black|not lit|not on)"), "off"),
    (rx(r"(?:(?:steady|solid|constant|stays|lit|always)(?: on)?|on|glowing)"), "on"),
)
_BEFORE = rx(r"(?:before|prior|yes|yep|yeah|first|earlier)(?: [a-z]+){0,4}")
_AFTER = rx(r"(?:after|since|no|nope|nah|now|still)(?: [a-z]+){0,4}")


def answer(asked: Asked) -> list[Claim]:
    """Return the facts that the asked slot calls for, or nothing.

    Nothing also where the text says it in full, so that its own words are read.
    """
    slot = asked.pending.about[0]
    reader = _READERS.get(slot)
    if (reader is None and slot != IN_TURN) or len(asked.view.pieces) > _LONGEST_ANSWER:
        return []
    acts = acts_of(asked.view, asked.vocabulary).keys()
    if acts & _SETS_ASIDE:
        return []
    if "correct" in acts and slot in _YES_NO_SLOTS:
        return []
    if slot in _LAMP_SLOTS and _told_in_full(asked):
        return []
    if reader is None:
        return codes_in_turn(asked)
    found = reader(asked)
    return [found] if found else []


def _told_in_full(asked: Asked) -> bool:
    slot = asked.pending.about[0]
    return any(
        isinstance(claim.item, LampFact)
        and getattr(claim.item.observation, slot) not in {(), None}
        for claim in lamps(asked.view, asked.vocabulary)
    )


_LAMP_SLOTS = frozenset(
    {"count", "pause", "colour", "box", "board", "label", "code", "state"}
)
_YES_NO_SLOTS = frozenset({"look", "context"})
"""Slots whose "no" may be the "not" of a correction of something else."""
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
    if match is None or not count:
        return None
    more = modifiers(asked.view, match.end(), len(asked.view.folded))
    return _lamp(match, state="count", count=count, **more)


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
    held = {"board": asked.vocabulary.boards, "label": asked.vocabulary.labels}
    options = asked.pending.options or held.get(kind, ())
    option = chosen(asked.view, options)
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
    options = [o for o in asked.pending.options if o in get_args(Box)]
    option = chosen(asked.view, tuple(options))
    if option is None:
        return None
    fact = LampFact(observation=Observation(state="blink", box=(option,)))  # type: ignore[arg-type]
    return Claim(0, len(asked.view.folded), fact)


def _code(asked: Asked) -> Claim | None:
    for code in codes(asked.view, asked.vocabulary.codes):
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
    dimmed = dims(asked)
    if dimmed is not None or _tells_of_power(asked) or tells_a_stop(asked):
        return dimmed
    label = (asked.subject,) if asked.subject else ()
    for pattern, state in _STATES:
        match = pattern.search(asked.view.folded)
        if match:
            return _lamp(match, state=state, label=label)
    number = _COUNT.search(asked.view.folded) if asked.subject else None
    if number and (count := count_of(number["n"], number["m"])):
        return _lamp(number, state="count", count=count, label=label)
    option = chosen(asked.view, asked.pending.options)
    if option in {"slow", "fast"}:
        told = Observation(state="blink", rate=option, label=label)  # type: ignore[arg-type]
        return Claim(0, len(asked.view.folded), LampFact(observation=told))
    if option in {"on", "off", "blink", "count", "flicker"}:
        fact = LampFact(observation=Observation(state=option, label=label))  # type: ignore[arg-type]
        return Claim(0, len(asked.view.folded), fact)
    return None


def _unit(asked: Asked) -> Claim | None:
    """Read a model or, for ``unit:<item>``, the plate item that decides."""
    item = asked.subject
    if item in Plate.model_fields and not item.endswith("_model"):
        return _plate_item(asked, item)
    if plate(asked.view, asked.vocabulary):
        return None
    option = chosen(asked.view, asked.pending.options)
    if option is None:
        return None
    start = re.split(r"[*#?(]", option)[0]
    known = start == option
    model = Plate(outdoor_model=option if known else f"{start}*")
    return Claim(0, len(asked.view.folded), UnitFact(plate=model, sure=known))


def _plate_item(asked: Asked, item: str) -> Claim | None:
    items = ("serial", "built") if item in ("serial", "built") else _BOTH.get(item, ())
    if any(
        isinstance(claim.item, UnitFact)
        and any(getattr(claim.item.plate, each) for each in (item, *items))
        for claim in plate(asked.view, asked.vocabulary)
    ):
        return None
    if item in _EQUIPMENT:
        told = _equipment(asked, item)
        span = (0, len(asked.view.folded))
        return None if told is None else Claim(*span, UnitFact(plate=told))
    option = chosen(asked.view, asked.pending.options)
    words = _PLATE_ITEMS.get(item, _ANY_WORD)
    match = words.search(asked.view.folded)
    value = option or (match[0].replace(" ", "") if match else None)
    if value is None:
        return None
    span = match.span() if match and not option else (0, len(asked.view.folded))
    upper = item in ("serial", "board_pn")
    return Claim(
        *span, UnitFact(plate=Plate(**{item: value.upper() if upper else value}))
    )


_BOTH = {"fitted": ("not_fitted",)}
_EQUIPMENT = frozenset({"switch_settings", "fitted"})
_STATE = rx(r"on|off|open|closed|cut")


def _equipment(asked: Asked, item: str) -> Plate | None:
    """Read how a switch stands, or whether an option is there, from a bare answer."""
    options = asked.pending.options
    if item == "fitted":
        option = chosen(asked.view, options)
        if option is None:
            return None
        part = option.removeprefix("no ")
        return Plate(not_fitted=part) if part != option else Plate(fitted=part)
    state = _STATE.search(asked.view.folded)
    named = settings_in(options[0]) if options else {}
    if state is None or len(named) != 1:
        return None
    return Plate(switch_settings=f"{next(iter(named)).upper()} {state[0]}")


_PLATE_ITEMS = {
    "board_mark": rx(either(COLOURS) + r"|[a-z]*[0-9][a-z0-9-]*"),
    "board_pn": rx(r"[a-z0-9-]*[0-9][a-z0-9-]*(?: \. [0-9]+)*"),
    "firmware": rx(r"v?[0-9]+(?: ?\. ?[0-9]+)*[a-z]?"),
    "serial": rx(r"[a-z]*[0-9][a-z0-9]{2,}(?: (?:- )?[0-9]+)*"),
    "voltage": rx(r"[1-5][0-9]{2}(?: / [1-5][0-9]{2})?"),
    "phase": rx(r"single|three|[13]"),
    "capacity_class": rx(r"[0-9]{2,5}"),
}
_ANY_WORD = rx(r"[a-z]*[0-9][a-z0-9]*")


def _role(asked: Asked) -> Claim | None:
    for pattern, role in BARE_ROLES:
        match = pattern.search(asked.view.folded)
        if match:
            return Claim(*match.span(), RoleFact(role=role))
    return None


def _tells_an_event(asked: Asked) -> bool:
    """Tell whether the text names what happened itself: it is read by itself then."""
    families = (happenings, resets, stops)
    return any(family(asked.view, asked.vocabulary) for family in families)


def _tells_of_power(asked: Asked) -> bool:
    """Tell whether the text is of the supply: "turned the breaker back on"."""
    told = (claim.item for claim in happenings(asked.view, asked.vocabulary))
    return any(
        isinstance(fact, HappeningFact) and fact.trigger.startswith("power")
        for fact in told
    )


def _time(asked: Asked) -> Claim | None:
    span = answered_time(asked.view, asked.clock)
    if span is None or _tells_an_event(asked):
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


def _context(asked: Asked) -> Claim | None:
    """Read a yes or no, where the state was not told in words of its own."""
    name = asked.subject
    told = [c.item for c in contexts(asked.view, asked.vocabulary)]
    own = any(isinstance(fact, ContextFact) and fact.name == name for fact in told)
    if own or name not in get_args(ContextName):
        return None
    acts = acts_of(asked.view, asked.vocabulary)
    span = acts.get("yes") or acts.get("no")
    option = None if span else chosen(asked.view, asked.pending.options)
    if not span and option not in {"yes", "no"}:
        return None
    value = "yes" in acts if span else option == "yes"
    fact = ContextFact(name=name, value=value)  # type: ignore[arg-type]
    return Claim(*(span or (0, len(asked.view.folded))), fact, shares=True)


def _mode(asked: Asked) -> Claim | None:
    if modes(asked.view, asked.vocabulary):
        return None
    for pattern, mode in BARE_MODES:
        match = pattern.search(asked.view.folded)
        if match:
            return Claim(*match.span(), ModeFact(mode=mode))
    return None


def _look(asked: Asked) -> Claim | None:
    option = chosen(asked.view, asked.pending.options)
    if option is None:
        return None
    fact = LookFact(check=asked.subject, answer=option)
    return Claim(0, len(asked.view.folded), fact)


def _before_reset(asked: Asked) -> Claim | None:
    after, before = _AFTER.search(asked.view.folded), _BEFORE.search(asked.view.folded)
    if after and (not before or after.start() < before.start()):
        return _lamp(after, False, state="blink")
    return _lamp(before, True, state="blink") if before else None


_READERS: dict[str, Callable[[Asked], Claim | None]] = {
    "count": _count,
    "pause": _pause,
    "colour": lambda asked: _emitter(asked, "colour"),
    "board": lambda asked: _emitter(asked, "board"),
    "label": lambda asked: _emitter(asked, "label"),
    "box": _box,
    "code": _code,
    **LAMP_READERS,
    "state": _state,
    "lamp": _state,
    "unit": _unit,
    "role": _role,
    "time": _time,
    "attempt": lambda asked: bare_attempt(asked.view),
    "context": _context,
    "look": _look,
    "mode": _mode,
    **STOP_READERS,
    "before_reset": _before_reset,
}
"""Slot -> how its answer is read."""
