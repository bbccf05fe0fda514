"""Lamps and displays as reported: states and codes with the lamp each belongs to."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any

from assistant.facts import LampFact
from assistant.language.blinks import Blink, blinks, count_of, modifier_spans, modifiers
from assistant.language.claims import Claim, negated, rx
from assistant.language.codes import codes, shown_plainly
from assistant.language.emitters import (
    Emitter,
    colours_like,
    emitters,
    run_of,
    several_told,
)
from assistant.language.lexicon.lamps import STORED
from assistant.language.tokens import Tokens, tokens
from assistant.language.vocabulary import Vocabulary
from assistant.signals.observation import Observation

_BEFORE_RESET = rx(
    r"(?:before|prior to) (?:the |i |we |my |a |they |he |she )*(?:last )?(?:reset|"
    r"power cycled?|cycled|resetting|cycling|killed|pulled|flipped)"
)
_AFTER_RESET = rx(
    r"(?:after|since) (?:the |i |we |my |a )?(?:last )?(?:reset|power cycle|~+)|came "
    r"(?:right )?back (?:to|with)"
)
_NOW = rx(r"(?:and |but )?now")
_BREAK = rx(r",|\.|and|but|while|then")
_THAT_WAS = rx(
    r"(?:that|those|it) (?:was|were) (?:before|prior to) (?:the |i |we |my )?(?:reset|"
    r"power cycle)(?: it)?"
)
_BARE_COUNT = rx(
    r"(?P<n>[0-9]{1,2}|twice|couple)(?: (?:or|to|-|maybe) (?P<m>[0-9]{1,2}))?(?= (?:, |"
    r"\. )?(?:hard to say|it is quick|quick|can not tell|it is fast|not sure|could be))"
)
_CORRECTED = rx(
    r"(?:it was|it is|that was|was|make that|i meant|should be|actually|meant|is "
    r"actually|sorry)(?: actually| really)? (?P<n>[0-9]{1,2})(?= (?:, )?not [0-9]|$| ,|"
    r" \.| instead)"
    r"|(?P<a>[0-9]{1,2}) (?:, )?not (?P<b>[0-9]{1,2})"
    r"|not (?P<c>[0-9]{1,2}) (?:, |but |it is |it was )*(?P<d>[0-9]{1,2})"
)
_ON_BOARD = rx(
    r"(?:i am|am|we are|it is|this is|that is|that was|looking) (?:on|at|looking at) "
    r"(?:the )?(?P<box>indoor|outdoor|inside|outside|main|fan|condenser|attic)(?: "
    r"(?:board|unit|one|head))"
)
_CORRECTING = rx(
    r"i meant|i mean|meant|actually|no wait|scratch that|sorry|oops|make that|"
    r"correction|not the|my mistake|my bad"
)
_STORED = rx(STORED)
_FLASHING = frozenset({"count", "blink", "short_long", "heartbeat", "flicker"})
_AND_AGAIN = re.compile(
    r"(?: (?:,|and|then|after that|a|another|the|it|is|there|followed by|short|long|"
    r"dark|pauses?|rests?|gap|break|waits?|stops?|again|next|sometimes|or|goes|does|"
    r"gives|times))* "
)
"""What stands between two counts of one lamp."""
_CHANGED = re.compile(r"(?: (?:,|and|but|then|today|it|is))* now(?: (?:it|is|at|,))* ")
_BESIDE = re.compile(
    r".{0,4}|(?: (?:is|on|the|my|its|remote|display|screen|handset|controller|wall|"
    r"keeps|just|,))* "
)
"""What stands between a code and its own flashing."""
_NAMES = ("colour", "label", "board", "box", "lamps", "emitter", "stored")
"""Slots that say which lamp an event tells of."""
_SMALL = 30
"""The largest count that a bare corrected number is taken for."""


@dataclass(frozen=True, slots=True)
class _Reach:
    """Bounds around an event: of its lamp's words, of its own words, of its clause."""

    low: int
    told: int
    clause: int
    high: int


@dataclass(frozen=True, slots=True)
class _Event:
    start: int
    end: int
    slots: dict[str, Any]


def lamps(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim each lamp or display with what it does."""
    told_before = _THAT_WAS.search(view.folded)
    claims: list[Claim] = []
    if told_before:
        fact = LampFact(observation=Observation(state="blink"), before_reset=True)
        claims.append(Claim(*told_before.span(), fact))
        view = view.without([told_before.span()])
    around = emitters(view.folded, vocabulary)
    numbered = [(e.start, e.end) for e in around if _is_numbered(view, e)]
    events = _events(view.without(numbered), vocabulary)
    shown = _observations(view, events, around, vocabulary)
    if told_before:
        shown = [_after(claim, told_before.end()) for claim in shown]
    claims += shown or _loose(view, around)
    if claims:
        claims += _marks(view, around)
    return claims


def _is_numbered(view: Tokens, emitter: Emitter) -> bool:
    """Tell whether a label holds a number that must not be counted: "led 2"."""
    return emitter.kind == "label" and any(
        c.isdigit() for c in view.folded[emitter.start : emitter.end]
    )


def _after(claim: Claim, told: int) -> Claim:
    """Mark what stands after "that was before the reset" as seen since."""
    if claim.start < told or not isinstance(claim.item, LampFact):
        return claim
    return replace(claim, item=claim.item.model_copy(update={"before_reset": False}))


def _events(view: Tokens, vocabulary: Vocabulary) -> list[_Event]:
    shown = []
    for code in codes(view, vocabulary.codes):
        state = "no_code" if code.absent else "display"
        told = {"code": code.code, "code_starts": code.starts, "sub": code.sub}
        slots: dict[str, Any] = {k: v for k, v in told.items() if v is not None}
        slots["state"] = state
        if code.in_turn:
            slots["shown_in_turn"] = True
        shown.append(_Event(code.start, code.end, slots))
    for start, end, text in shown_plainly(view) if not shown else ():
        shown.append(_Event(start, end, {"state": "display", "code": text}))
    rest = view.without([(event.start, event.end) for event in shown])
    states = [
        _Event(b.start, b.end, dict(b.slots))
        for b in blinks(rest)
        if not (_only_blinks(b) and _beside(view, b, shown))
    ]
    if not shown and not states:
        states = [*_bare_counts(view)]
    return sorted([*shown, *states], key=lambda event: event.start)


def _only_blinks(blink: Blink) -> bool:
    return blink.slots["state"] == "blink" and set(blink.slots) <= {"state", "phase"}


def _beside(view: Tokens, blink: Blink, shown: list[_Event]) -> bool:
    """Tell whether what blinks is a code: "P3 flashing", "E4 on screen, flashing"."""
    between = [
        view.folded[min(code.end, blink.end) : max(code.start, blink.start)]
        for code in shown
    ]
    return any(_BESIDE.fullmatch(text) for text in between)


def _bare_counts(view: Tokens) -> list[_Event]:
    """Return "six or seven, hard to say" and "it was five not six"."""
    for match in _BARE_COUNT.finditer(view.folded):
        count = count_of(match["n"], match["m"])
        if count:
            return [_Event(*match.span(), {"state": "count", "count": count})]
    for match in _CORRECTED.finditer(view.folded):
        number = match["n"] or match["a"] or match["d"]
        if 0 < int(number) <= _SMALL:
            return [_Event(*match.span(), {"state": "count", "count": (int(number),)})]
    return []


def _observations(
    view: Tokens, events: list[_Event], around: list[Emitter], vocabulary: Vocabulary
) -> list[Claim]:
    kept: list[tuple[_Event, dict[str, Any]]] = []
    for at, event in enumerate(events):
        reach = _reach(view, events, at)
        slots = dict(event.slots)
        if "colour" in slots:
            slots["colour"] = colours_like(slots["colour"], vocabulary)
        place = slots.pop("position", None)
        slots = _placed(slots, event, around, reach)
        if place:
            slots["label"] = (place,)
        slots |= several_told(view, reach.told, event.start, around)
        if slots["state"] in _FLASHING:
            slots = modifiers(view, reach.told, reach.high) | slots
        if _STORED.search(view.folded, *view.sentence(event.start)):
            slots["stored"] = True
        if kept and (more := _more_of(kept[-1], event, slots, view)) is not None:
            kept[-1] = (_Event(kept[-1][0].start, event.end, {}), more)
            continue
        kept.append((event, slots))
    return _claimed(view, kept, around)


def _claimed(
    view: Tokens, kept: list[tuple[_Event, dict[str, Any]]], around: list[Emitter]
) -> list[Claim]:
    claims: list[Claim] = []
    for event, slots, before in _before_and_after(view, kept):
        for each in (slots, *_alike(view, event, slots, around)):
            observation = Observation(**_settled(each))
            fact = LampFact(observation=observation, before_reset=before)
            claims.append(Claim(event.start, event.end, fact))
    return claims


def _before_and_after(
    view: Tokens, kept: list[tuple[_Event, dict[str, Any]]]
) -> list[tuple[_Event, dict[str, Any], bool | None]]:
    """Add whether each was seen before the last reset; None where nothing says so.

    What is told right before "after the reset 2 times" is of the same lamp, earlier.
    """
    found: list[tuple[_Event, dict[str, Any], bool | None]] = []
    since = False
    for event, slots in kept:
        before = _before_reset(view, event, since=since)
        since = since or before is True
        unnamed = not any(slots.get(name) for name in _NAMES)
        if before is False and unnamed and found and found[-1][2] is None:
            earlier, told, _ = found[-1]
            found[-1] = (earlier, told, True)
            named = {name: told[name] for name in _NAMES if name in told}
            found.append((event, named | slots, before))
            continue
        found.append((event, slots, before))
    return found


def _alike(
    view: Tokens, event: _Event, slots: dict[str, Any], around: list[Emitter]
) -> list[dict[str, Any]]:
    """Return the slots of the other lamps that do the same: "H2 and H3 both flash"."""
    found: list[dict[str, Any]] = []
    named = [
        e for e in around if e.end <= event.start and e.kind in ("label", "colour")
    ]
    for kind in ("label", "colour"):
        row = [e for e in named if e.kind == kind]
        if row and slots.get(kind) != row[-1].values:
            continue
        while len(row) > 1:
            between = view.folded[row[-2].end : row[-1].start]
            run = _UP_TO.fullmatch(between) if kind == "label" else None
            if not (run or _JOINED.fullmatch(between)):
                break
            last = row.pop()
            inner = run_of(row[-1].values[0], last.values[0]) if run else []
            found += [slots | {kind: (one,)} for one in (*inner, *row[-1].values)]
        if found:
            break
    return found


_JOINED = re.compile(r" (?:lamp |light |led )?(?:(?:and|,|, and|\+|&)(?: the)? )?")
"""What stands between two lamps that are named together."""
_UP_TO = re.compile(r" (?:up )?(?:to|through|thru|till|-) ")


def _settled(slots: dict[str, Any]) -> dict[str, Any]:
    """Drop the slots that the state cannot have."""
    if slots["state"] in {"on", "off", "no_code", "display"}:
        return {k: v for k, v in slots.items() if k not in {"pause", "rate", "count"}}
    if slots["state"] in {"short_long", "heartbeat", "flicker"}:
        return {k: v for k, v in slots.items() if k != "rate"}
    return slots


def _reach(view: Tokens, events: list[_Event], at: int) -> _Reach:
    """Return how far the words around an event speak of it."""
    event = events[at]
    start, end = view.sentence(event.start)
    low = max([start, *(other.end for other in events[:at])])
    ahead = [other.start for other in events[at + 1 :] if other.start > event.end]
    following = view.sentence(min(end + 2, len(view.folded)))
    if not any(start < following[1] for start in ahead):
        end = max(end, following[1])
    high = max(event.end, min([end, *ahead]))
    breaks = list(_BREAK.finditer(view.folded, low, event.start))
    told = breaks[-1].end() if breaks and at and low > start else low
    clause = view.clause(event.end)[1]
    return _Reach(low, told, max(event.end, min(high, clause)), high)


def _placed(
    slots: dict[str, Any], event: _Event, around: list[Emitter], reach: _Reach
) -> dict[str, Any]:
    """Add the lamp's own words: inside the event, else the last before, else after."""
    found = dict(slots)
    for kind in ("colour", "label", "board", "box"):
        if kind in found:
            continue
        near = [e for e in around if e.kind == kind and reach.low <= e.start]
        inside = [e for e in near if event.start <= e.start and e.end <= event.end]
        before = [e for e in near if e.end <= event.start]
        after = [e for e in near if event.end <= e.start and e.end <= reach.clause]
        chosen = inside[:1] or before[-1:] or after[:1]
        if chosen:
            found[kind] = chosen[0].values
    return found


def _more_of(
    last: tuple[_Event, dict[str, Any]],
    event: _Event,
    slots: dict[str, Any],
    view: Tokens,
) -> dict[str, Any] | None:
    """Return the slots of one lamp that two events tell of, or None where it is two.

    "3 times, then a pause, then 4 times" is one lamp that gave both numbers; in "4
    times, now 6 times" it has changed.
    """
    old = last[1]
    if _same(last, event, slots, view):
        return old | slots
    alike = all(slots.get(name) in (None, old.get(name)) for name in _NAMES)
    between = view.folded[last[0].end : event.start]
    if not (alike and old["state"] == slots["state"] == "count"):
        return None
    if _CHANGED.fullmatch(between):
        return {name: old[name] for name in _NAMES if name in old} | slots
    if not _AND_AGAIN.fullmatch(between):
        return None
    return old | slots | {"count": tuple(sorted({*old["count"], *slots["count"]}))}


def _same(
    last: tuple[_Event, dict[str, Any]],
    event: _Event,
    slots: dict[str, Any],
    view: Tokens,
) -> bool:
    """Tell whether an event says more of the lamp before it: "lit and staying lit"."""
    old = last[1]
    between = view.folded[last[0].end : event.start]
    if re.search(r"(?<!\S)\.(?!\S)|other|then|next to|second", between):
        return False
    told = {k for k in ("colour", "label", "board", "box") if k in slots}
    fresh = any(slots[k] != old.get(k) for k in told)
    alike = old["state"] == slots["state"] and old["state"] != "display"
    weaker = {old["state"], slots["state"]} == {"count", "blink"}
    clash = old.get("count") and slots.get("count") and old["count"] != slots["count"]
    return not fresh and not clash and (alike or weaker) and "code" not in slots


def _before_reset(view: Tokens, event: _Event, *, since: bool) -> bool | None:
    """Tell whether a lamp was seen before the reset; None when nothing says so."""
    start, end = view.clause(event.start)
    if _BEFORE_RESET.search(_with_words(view, event.end, end)):
        return True
    opening = view.folded[view.sentence(event.start)[0] : event.start]
    if since and _NOW.search(opening):
        return False
    if _AFTER_RESET.search(view.folded, start, end):
        return False
    return None


def _with_words(view: Tokens, start: int, end: int) -> str:
    """Return folded text in which a reset that was taken as a fact can be read."""
    whole = tokens(view.source).folded
    return whole[start:end]


def _loose(view: Tokens, around: list[Emitter]) -> list[Claim]:
    """Claim a lamp's own words alone: "I'm on the indoor board", "I meant the red"."""
    match = _ON_BOARD.search(view.folded)
    if match:
        told = [e for e in around if match.start() <= e.start and e.end <= match.end()]
    elif _CORRECTING.search(tokens(view.source).folded):
        told = [e for e in around if not negated(view, e.start)]
    else:
        told = []
    slots: dict[str, Any] = {}
    for emitter in told:
        slots.setdefault(emitter.kind, emitter.values)
    if not slots:
        return []
    fact = LampFact(observation=Observation(state="blink", **slots))
    return [Claim(min(e.start for e in told), max(e.end for e in told), fact)]


def _marks(view: Tokens, around: list[Emitter]) -> list[Claim]:
    """Claim the words that told of the lamps without a fact of their own."""
    spans = [*modifier_spans(view), *((e.start, e.end) for e in around)]
    return [Claim(*span, None) for span in spans]
