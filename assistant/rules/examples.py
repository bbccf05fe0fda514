"""Makes up what somebody would see in front of a row, for a message about it."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.record import Box
from assistant.signals.fits import fit_lamp
from assistant.signals.kinds import (
    CountPerWindow,
    DisplayCode,
    EvenBlink,
    GroupThenPause,
    Lamp,
    LampState,
    Off,
    SeveralLamps,
    Signal,
)
from assistant.signals.observation import Observation
from assistant.signals.trains import lamp_of


def example_of(row: Signal, beside: Signal) -> Observation | None:
    """Return a full sight of `row`'s lamp, with what only `beside` says of it.

    None where the two speak of different lamps, or `row` is a grid.
    """
    pattern = _pattern(row)
    if pattern is None:
        return None
    lamp = _joined(lamp_of(row) or Lamp(), lamp_of(beside) or Lamp())
    return None if lamp is None else pattern.model_copy(update=_slots(lamp))


def _pattern(row: Signal) -> Observation | None:
    match row:
        case SeveralLamps():
            return None
        case DisplayCode():
            return Observation(state="display", code=row.code)
        case Off():
            return Observation(state="off")
        case EvenBlink():
            return Observation(state="blink", pause="none")
        case CountPerWindow():
            seconds = row.window.value
            return Observation(
                state="count", count=(row.count,), pause="seen", window_s=seconds
            )
        case GroupThenPause():
            return Observation(state="count", count=(row.count,), pause="seen")
        case _:
            return Observation(state="on")


def _joined(one: Lamp, other: Lamp) -> Lamp | None:
    """Return one lamp with what either says, or None where they disagree."""
    seen = Observation(state="on").model_copy(update=_slots(one))
    if fit_lamp(seen, other) is None:
        return None
    said = {
        name: getattr(one, name) or getattr(other, name) for name in Lamp.model_fields
    }
    return Lamp.model_validate(said)


def _slots(lamp: Lamp) -> dict[str, tuple[str, ...]]:
    return {
        name: (value,)
        for name in ("box", "board", "label", "colour")
        if (value := getattr(lamp, name)) is not None
    }


def grid_example(
    one: SeveralLamps, other: SeveralLamps
) -> tuple[Observation, ...] | None:
    """Return lamps that agree with both grid rows, or None where one disagrees."""
    seen = []
    left = list(other.lamps)
    for entry in one.lamps:
        twin = next((e for e in left if _joined(entry.lamp, e.lamp) is not None), None)
        if twin is None:
            seen.append(_lamp_seen(entry, entry))
            continue
        left.remove(twin)
        state = _both_states(entry, twin)
        if state is None:
            return None
        seen.append(_lamp_seen(entry, state))
    seen.extend(_lamp_seen(entry, entry) for entry in left)
    return tuple(one for one in seen if one is not None)


def _both_states(one: LampState, other: LampState) -> LampState | None:
    """Return the narrower of two states that can be seen at once, or None."""
    if one.state == "any":
        return other
    if other.state == "any" or (one.state, one.count) == (other.state, other.count):
        return one
    if {one.state, other.state} == {"flash", "count"}:
        return one if one.state == "count" else other
    return None


def _lamp_seen(entry: LampState, state: LampState) -> Observation | None:
    if state.state == "any":
        return None
    seen = Observation(state="blink")
    if state.state == "on":
        seen = Observation(state="on")
    elif state.state == "off":
        seen = Observation(state="off")
    elif state.count is not None:
        seen = Observation(state="count", count=(state.count,))
    return seen.model_copy(update=_slots(entry.lamp))


def in_words(seen: Sequence[Observation], lamp: Lamp | None = None) -> str:
    """Return a sight in words, such as ``amber LD2 (outdoor main): 4 flashes``."""
    told = []
    for one in seen:
        slots = _slots(lamp) if lamp is not None else _seen_slots(one)
        name = " ".join(slots.get("colour", ()) + slots.get("label", ()))
        place = " ".join(slots.get("board", ()) or slots.get("box", ()))
        place = f" ({place})" if place and name else place
        told.append(f"{name}{place}: {_does(one)}" if name or place else _does(one))
    return ", ".join(told)


def _seen_slots(one: Observation) -> dict[str, tuple[str, ...]]:
    box: tuple[Box, ...] = one.box
    return {"box": box, "board": one.board, "label": one.label, "colour": one.colour}


def _does(one: Observation) -> str:
    if one.code is not None:
        return f'"{one.code}"'
    if one.count:
        flashes = "flash" if one.count == (1,) else "flashes"
        return f"{one.count[0]} {flashes}"
    words = {"on": "lit", "off": "dark", "blink": "blinking"}
    even = " evenly" if one.pause == "none" else ""
    return words.get(one.state, one.state) + even
