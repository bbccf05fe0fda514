"""How fast a lamp blinks, by the document's own definition and no other."""

from __future__ import annotations

from assistant.signals.fits import Fit, assumed, matched
from assistant.signals.kinds import Rate, RateClass
from assistant.signals.observation import Observation

TOLERANCE = 0.35
"""Blinks counted over 10 s agree with a printed rate within this share: a blink is
lost at either end, and printed times are nominal (common practice, no source)."""
OTHER_WORD = 0.3
"""Weight of a row called slow where "fast" was said: the word is personal."""


def fit_rate(seen: Observation, rate_class: RateClass, rate: Rate | None) -> Fit | None:
    """Compare how fast a blink is; a word alone leaves the rate open.

    Blinks that were counted are compared with the document's definition; without one
    they tell nothing.
    """
    band = rate.band() if rate is not None else None
    told = told_rate(seen)
    if told is not None and band is not None:
        return matched("rate") if _meet(told, band) else None
    if seen.rate is None or seen.rate == rate_class:
        return assumed("rate")
    return Fit(assumed=frozenset({"rate"}), weight=OTHER_WORD, near=frozenset({"rate"}))


def told_rate(seen: Observation) -> tuple[float, float] | None:
    """Return the blinks in a second that were told, also as so many in so long.

    Examples
    --------
    >>> told_rate(Observation(state="count", count=(20,), window_s=10.0))
    (1.9, 2.1)
    """
    if seen.rate_hz is not None or seen.pause == "seen" or not seen.window_s:
        return seen.rate_hz
    if not seen.count:
        return None
    fewest, most = min(seen.count) - 1, max(seen.count) + 1
    return (fewest / seen.window_s, most / seen.window_s)


def same_rate(seen: Observation, hertz: float) -> bool:
    """Return whether blinks that were counted agree with a printed rate."""
    return seen.rate_hz is None or _meet(seen.rate_hz, (hertz, hertz))


def _meet(told: tuple[float, float], band: tuple[float, float]) -> bool:
    low, high = band[0] * (1 - TOLERANCE), band[1] * (1 + TOLERANCE)
    return told[0] <= high and low <= told[1]
