"""Compares quick and long flashes with a row of two digits."""

from __future__ import annotations

from assistant.signals.counting import fit_number
from assistant.signals.fits import Fit, assumed, matched
from assistant.signals.kinds import ShortLong
from assistant.signals.observation import Observation

ADDED_UP = 0.7
"""Weight of a row whose two digits together are the number told."""
OTHER_ORDER = 0.5
"""Weight of a row whose other digit was named first: it depends where one starts."""


def fit_short_long(seen: Observation, row: ShortLong) -> Fit | None:
    """Compare the two digits; a total alone leaves every pair that makes it open."""
    if seen.pause == "none" and seen.state != "short_long":
        return None
    whole = row.short + row.long
    if seen.total and whole not in seen.total:
        return None
    if seen.state == "short_long":
        return _both(seen, row)
    if seen.state == "count" and seen.count:
        if whole not in seen.count:
            return None
        open_digits = assumed("short", "long")
        return matched("state").and_also(open_digits).and_also(Fit(weight=ADDED_UP))
    if seen.state in ("blink", "count"):
        return matched("state").and_also(assumed("count", "short", "long"))
    return None


def _both(seen: Observation, row: ShortLong) -> Fit | None:
    short = _digit(seen, seen.count, row.short, "short")
    long = _digit(seen, seen.long_count, row.long, "long")
    if short is None or long is None:
        return None
    fit = matched("state").and_also(short).and_also(long)
    if seen.first is None:
        return fit
    if row.digit_order.startswith(seen.first):
        return fit.and_also(matched("order"))
    return fit.and_also(Fit(assumed=frozenset({"order"}), weight=OTHER_ORDER))


def _digit(
    seen: Observation, told: tuple[int, ...], written: int, slot: str
) -> Fit | None:
    return fit_number(seen, told, written, slot) if told else assumed(slot)
