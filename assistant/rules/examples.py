"""Makes up what somebody would see in front of a row, for a message about it."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.record import Box
from assistant.signals.cells import Together, cells_of, lamp_of
from assistant.signals.fits import fit_lamp
from assistant.signals.kinds import DigitPosition, DisplayValue, Lamp, LampState, Signal
from assistant.signals.observation import Observation
from assistant.signals.sights import (
    cell_sight,
    identity,
    pattern_of,
    shared_slots,
    written,
)


def example_of(row: Signal, beside: Signal) -> Observation | None:
    """Return a full sight of `row`'s lamp, with what only `beside` says of it.

    None where the two speak of different lamps, or `row` is one of several lamps.
    """
    if isinstance(row, Together):
        return None
    pattern = pattern_of(row)
    if isinstance(row, DisplayValue) and isinstance(beside, DisplayValue):
        shared = max(row.low, beside.low)
        pattern = Observation(state="display", code=written(shared, row))
    if isinstance(row, DigitPosition) and not _same_place(row, beside):
        return None
    lamp = _joined(lamp_of(row) or Lamp(), lamp_of(beside) or Lamp())
    return None if lamp is None else pattern.model_copy(update=identity(lamp))


def _same_place(row: DigitPosition, beside: Signal) -> bool:
    """Return whether two rows speak of one place of a display."""
    return isinstance(beside, DigitPosition) and (row.position, row.of) == (
        beside.position,
        beside.of,
    )


def _joined(one: Lamp, other: Lamp) -> Lamp | None:
    """Return one lamp with what either says, or None where they disagree."""
    seen = Observation(state="on").model_copy(update=identity(one))
    if fit_lamp(seen, other) is None:
        return None
    said = {
        name: getattr(one, name) or getattr(other, name) for name in Lamp.model_fields
    }
    return Lamp.model_validate(said)


def grid_example(one: Together, other: Together) -> tuple[Observation, ...] | None:
    """Return lamps that agree with both rows, or None where one disagrees.

    None also where no lamp is in both: two boards may show two things at once.
    """
    shared = shared_slots(one)
    for slot, value in shared_slots(other).items():
        if shared.setdefault(slot, value) != value:
            return None
    seen = []
    left = list(cells_of(other))
    for entry in cells_of(one):
        twin = next((e for e in left if _joined(entry.lamp, e.lamp) is not None), None)
        if twin is None:
            seen.append(cell_sight(entry, entry))
            continue
        left.remove(twin)
        state = _both_states(entry, twin)
        if state is None:
            return None
        seen.append(cell_sight(entry, state))
    if len(left) == len(cells_of(other)):
        return None
    seen.extend(cell_sight(entry, entry) for entry in left)
    return tuple(one.model_copy(update=shared) for one in seen if one is not None)


_FLASHING = {"count", "slow", "fast", "flicker"}
"""What a lamp that only "flashes" may do, told more closely."""


def _both_states(one: LampState, other: LampState) -> LampState | None:
    """Return the narrower of two states that can be seen at once, or None."""
    if one.state == "any":
        return other
    if other.state == "any" or (one.state, one.count) == (other.state, other.count):
        return one
    for narrow, wide in ((one, other), (other, one)):
        if wide.state == "flash" and narrow.state in _FLASHING:
            return narrow
    return None


def in_words(seen: Sequence[Observation], lamp: Lamp | None = None) -> str:
    """Return a sight in words, such as ``amber LD2 (outdoor main): 4 flashes``."""
    told = []
    for one in seen:
        slots = identity(lamp) if lamp is not None else _seen_slots(one)
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
        return f'"{one.code}"' + (f' with "{one.sub}"' if one.sub else "")
    if one.state == "short_long":
        return f"{one.count[0]} quick and {one.long_count[0]} long flashes"
    if one.count:
        if one.emitter == "buzzer":
            return f"{one.count[0]} beeps"
        flashes = "flash" if one.count == (1,) else "flashes"
        return f"{one.count[0]} {flashes}"
    words = {
        "on": "lit",
        "off": "dark",
        "blink": "blinking",
        "heartbeat": "bright and dim",
        "flicker": "flickering",
    }
    more = [one.rate or "", "evenly" if one.pause == "none" else "", one.phase or ""]
    told = (words.get(one.state, one.state), *more)
    return " ".join(word for word in told if word)
