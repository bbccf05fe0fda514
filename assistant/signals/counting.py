"""Compares counted flashes with a printed number: never rounded, rarely one off."""

from __future__ import annotations

from collections import Counter

from assistant.signals.fits import NEAR_COUNT, Fit, assumed, matched
from assistant.signals.observation import Observation
from assistant.units.quantity import Quantity

HARD_TO_COUNT = 7
"""From this many flashes on, one more or less is easily counted."""
WINDOW_TOLERANCE = 0.25
"""A window counted by hand agrees within this share of the written one."""
DISSENT = 0.25
"""Weight of a count for each time that it was counted less often than the best."""
SETTLED = 3
"""A number counted so often outweighs one that came up once."""


_TOO_FAST = Fit(assumed=frozenset({"count"}), weight=0.5, near=frozenset({"flicker"}))
"""A lamp called flickering may be one that counts, where no row flickers."""


def fit_count(seen: Observation, count: int) -> Fit | None:
    """Compare a number of flashes; a blink without a number leaves it open."""
    if seen.state == "flicker":
        return _TOO_FAST
    if seen.state not in ("blink", "count"):
        return None
    if not seen.count:
        return matched("state").and_also(assumed("count"))
    fit = fit_number(seen, seen.count, count, "count")
    return None if fit is None else matched("state").and_also(fit)


def fit_number(
    seen: Observation, told: tuple[int, ...], count: int, slot: str
) -> Fit | None:
    """Compare one of the numbers told; one off stays possible where that is easy."""
    if count in told:
        return Fit(frozenset({slot}), weight=_tally(seen, count))
    if any(abs(count - one) == 1 and may_be_off(seen, one) for one in told):
        return Fit(
            assumed=frozenset({slot}), weight=NEAR_COUNT, near=frozenset({"count"})
        )
    return None


def _tally(seen: Observation, count: int) -> float:
    """Return what a count weighs among all that were counted."""
    times = Counter(seen.counted)
    most = max(times.values(), default=0)
    return float(DISSENT ** (most - times[count])) if times else 1.0


def settled(seen: Observation) -> bool:
    """Return whether one count came up so often that a single other is a slip."""
    ranked = [times for _, times in Counter(seen.counted).most_common(2)]
    return bool(ranked) and ranked[0] >= SETTLED and ranked[1:] in ([], [1])


def may_be_off(seen: Observation, told: int) -> bool:
    """Return whether a count may be one off: many flashes, or one group watched.

    Two groups that gave the same number settle it.
    """
    watched = seen.groups_watched
    if seen.counted:
        watched = max(Counter(seen.counted).values())
    if watched is not None and watched > 1:
        return False
    return watched == 1 or told >= HARD_TO_COUNT


def same_window(seen: Observation, written: Quantity) -> bool:
    """Return whether the time counted over is the one that the row counts over."""
    low = seen.window_s
    if low is None:
        return False
    high = seen.window_to_s if seen.window_to_s is not None else low
    slack = WINDOW_TOLERANCE * written.value
    return low - slack <= written.value <= high + slack
