"""Compares what one lamp or display does with one row of a table."""

from __future__ import annotations

from assistant.record import Mode
from assistant.signals.fits import (
    NEAR_COUNT,
    NEAR_GLYPH,
    TOOK_BLINK,
    Fit,
    assumed,
    fit_lamp,
    matched,
)
from assistant.signals.kinds import (
    CountPerWindow,
    DisplayCode,
    EvenBlink,
    GroupThenPause,
    Lamp,
    Off,
    Signal,
    Steady,
)
from assistant.signals.observation import Observation
from assistant.signals.seven_segment import look_alike, plain_code

HARD_TO_COUNT = 7
"""From this many flashes on, one more or less is easily counted."""
WINDOW_TOLERANCE = 0.25
"""A window counted by hand agrees within this share of the written one."""


def fit_row(seen: Observation, signal: Signal, mode: Mode | None) -> Fit | None:
    """Return how a row of one lamp or display fits, or None where it disagrees.

    Rows of several lamps are compared in `assistant.signals.grids`.
    """
    pattern = fit_pattern(seen, signal)
    if pattern is None:
        return None
    circumstances = fit_circumstances(seen, signal, mode)
    if circumstances is None:
        return None
    lamp = lamp_of(signal)
    place = fit_lamp(seen, lamp) if lamp is not None else Fit()
    return None if place is None else pattern.and_also(place).and_also(circumstances)


def lamp_of(signal: Signal) -> Lamp | None:
    """Return the lamp or display of a row, if it has exactly one."""
    if isinstance(signal, DisplayCode):
        return signal.display
    return getattr(signal, "lamp", None)


def fit_circumstances(
    seen: Observation, signal: Signal, mode: Mode | None
) -> Fit | None:
    """Compare mode, unit state and history, which no lamp shows."""
    open_slots: set[str] = set()
    agreed: set[str] = set()
    if signal.mode is not None:
        if mode is not None and mode != signal.mode:
            return None
        (open_slots if mode is None else agreed).add("mode")
    if signal.unit_state is not None:
        open_slots.add("unit_state")
    if signal.stored:
        if seen.stored is False:
            return None
        (open_slots if seen.stored is None else agreed).add("stored")
    return Fit(matched=frozenset(agreed), assumed=frozenset(open_slots))


def fit_pattern(seen: Observation, signal: Signal) -> Fit | None:
    """Compare what the lamp does, not whose lamp it is."""
    match signal:
        case Steady():
            return matched("state") if seen.state == "on" else None
        case Off():
            return matched("state") if seen.state == "off" else None
        case EvenBlink():
            return _even(seen)
        case CountPerWindow():
            return _window(seen, signal)
        case GroupThenPause():
            return _group(seen, signal)
        case DisplayCode():
            return _code(seen, signal.code)
        case _:
            return None


def _even(seen: Observation) -> Fit | None:
    if seen.state not in ("blink", "count") or seen.pause == "seen":
        return None
    if seen.pause == "none":
        return matched("state", "pause")
    if seen.count:
        return Fit(frozenset({"state"}), frozenset({"pause"}), TOOK_BLINK)
    return matched("state").and_also(assumed("pause"))


def _group(seen: Observation, signal: GroupThenPause) -> Fit | None:
    if seen.pause == "none":
        return None
    count = fit_count(seen, signal.count)
    if count is None:
        return None
    return count.and_also(matched("pause") if seen.pause else assumed("pause"))


def _window(seen: Observation, signal: CountPerWindow) -> Fit | None:
    timed = seen.window_s is not None
    if seen.pause == "none" and not timed:
        return None
    count = fit_count(seen, signal.count)
    if count is None:
        return None
    agrees = timed and same_window(seen, signal)
    timing = matched("window") if agrees else assumed("window")
    if seen.pause == "seen":
        return count.and_also(timing).and_also(matched("pause"))
    pause = Fit() if agrees else assumed("pause")
    return count.and_also(timing).and_also(pause)


def same_window(seen: Observation, signal: CountPerWindow) -> bool:
    """Return whether the time counted over is the one that the row counts over."""
    written = signal.window.value
    told = seen.window_s
    return told is not None and abs(told - written) <= WINDOW_TOLERANCE * written


def fit_count(seen: Observation, count: int) -> Fit | None:
    """Compare a number of flashes; a blink without a number leaves it open."""
    if seen.state not in ("blink", "count"):
        return None
    if not seen.count:
        return matched("state").and_also(assumed("count"))
    if count in seen.count:
        return matched("state", "count")
    if any(abs(count - told) == 1 and may_be_off(seen, told) for told in seen.count):
        return Fit(
            frozenset({"state"}),
            frozenset({"count"}),
            NEAR_COUNT,
            near=frozenset({"count"}),
        )
    return None


def may_be_off(seen: Observation, told: int) -> bool:
    """Return whether a count may be one off: many flashes, or one group watched.

    Two groups that gave the same number settle it.
    """
    watched = seen.groups_watched
    if watched is not None and watched > 1:
        return False
    return watched == 1 or told >= HARD_TO_COUNT


def _code(seen: Observation, code: str) -> Fit | None:
    if seen.state != "display" or seen.code is None:
        return None
    if plain_code(seen.code) == plain_code(code):
        return matched("state", "code")
    if look_alike(seen.code, code):
        return Fit(
            frozenset({"state", "code"}),
            frozenset({"glyph"}),
            NEAR_GLYPH,
            near=frozenset({"glyph"}),
        )
    return None
