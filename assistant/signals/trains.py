"""Compares what one lamp, display or buzzer does with one row of a table."""

from __future__ import annotations

from assistant.record import Mode
from assistant.signals.cells import Shown, Together, lamp_of
from assistant.signals.counting import fit_count, same_window
from assistant.signals.fits import (
    TOOK_BLINK,
    Fit,
    assumed,
    fit_lamp,
    matched,
)
from assistant.signals.kinds import (
    AnalogRate,
    Beeps,
    CountPerWindow,
    EvenBlink,
    GroupThenPause,
    Heartbeat,
    Off,
    RateBlink,
    ShortLong,
    Signal,
    SingleFlash,
    Steady,
)
from assistant.signals.observation import Observation
from assistant.signals.quick_slow import fit_short_long
from assistant.signals.rates import fit_rate, same_rate, told_rate
from assistant.signals.shown import fit_shown

DIMS = 0.5
"""Weight of a blink for a lamp that only grows dim, and the other way round."""
NO_SOUND = 0.25
"""Weight of beeps where "flashes" may have been meant."""
SELDOM = 2.0
"""So many seconds from one flash to the next make an even blink doubtful [s]."""
FLASHING = ("blink", "count", "flicker")


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


def fit_circumstances(
    seen: Observation, signal: Signal, mode: Mode | None
) -> Fit | None:
    """Compare mode, unit state, settings and history, which no lamp shows."""
    open_slots: set[str] = set()
    agreed: set[str] = set()
    told = seen.mode or mode
    if signal.mode is not None:
        if told is not None and told != signal.mode:
            return None
        (open_slots if told is None else agreed).add("mode")
    if signal.unit_state is not None:
        open_slots.add("unit_state")
    if signal.stored:
        if seen.stored is False:
            return None
        (open_slots if seen.stored is None else agreed).add("stored")
    if not _state_allows(seen, signal, open_slots, agreed):
        return None
    return Fit(matched=frozenset(agreed), assumed=frozenset(open_slots))


def _state_allows(
    seen: Observation, signal: Signal, open_slots: set[str], agreed: set[str]
) -> bool:
    """Note what unit state and settings leave open; False where they disagree."""
    required = frozenset(signal.unit_state_required)
    if required:
        if seen.unit_state and not required & set(seen.unit_state):
            return False
        (agreed if seen.unit_state else open_slots).add("unit_state")
    held = {folded(one) for one in seen.conditions}
    denied = {folded(one) for one in seen.not_conditions}
    wanted = {folded(one) for one in signal.precondition}
    if wanted & denied:
        return False
    if wanted:
        (agreed if wanted <= held else open_slots).add("precondition")
    return True


def folded(words: str) -> str:
    """Return a setting's words for comparison: one case, single spaces."""
    return " ".join(words.casefold().split())


def fit_pattern(seen: Observation, signal: Signal) -> Fit | None:
    """Compare what the lamp does, not whose lamp it is."""
    if isinstance(signal, Together):
        return None
    if isinstance(signal, Shown):
        return fit_shown(seen, signal)
    if isinstance(signal, Beeps):
        return _beeps(seen, signal)
    return None if seen.emitter == "buzzer" else _fit_lamp_pattern(seen, signal)


LampSignal = (
    Steady
    | Off
    | Heartbeat
    | EvenBlink
    | RateBlink
    | SingleFlash
    | AnalogRate
    | CountPerWindow
    | GroupThenPause
    | ShortLong
)


def _fit_lamp_pattern(seen: Observation, signal: LampSignal) -> Fit | None:
    match signal:
        case Steady():
            return matched("state") if seen.state == "on" else None
        case Off():
            return matched("state") if seen.state == "off" else None
        case CountPerWindow():
            return _window(seen, signal)
        case GroupThenPause():
            return _group(seen, signal.count)
        case ShortLong():
            return fit_short_long(seen, signal)
        case _:
            return _uncounted(seen, signal)


def _uncounted(
    seen: Observation,
    signal: Heartbeat | EvenBlink | RateBlink | SingleFlash | AnalogRate,
) -> Fit | None:
    match signal:
        case Heartbeat():
            if seen.state == "heartbeat":
                return matched("state")
            even = _even(seen)
            return None if even is None else even.and_also(_DIMMING)
        case EvenBlink():
            return _even_timed(seen, signal)
        case RateBlink():
            timed = seen.state == "count" and told_rate(seen) is not None
            even = matched("state") if timed else _even(seen)
            rate = fit_rate(seen, signal.rate_class, signal.rate)
            return None if even is None or rate is None else even.and_also(rate)
        case SingleFlash():
            return _single(seen, signal)
        case AnalogRate():
            return matched("state") if seen.state in (*FLASHING, "on") else None


_DIMMING = Fit(assumed=frozenset({"state"}), weight=DIMS, near=frozenset({"state"}))


def _even_timed(seen: Observation, signal: EvenBlink) -> Fit | None:
    period = signal.on.value + signal.off.value if signal.on and signal.off else None
    timed = period is not None
    if period is not None and not same_rate(seen, 1 / max(period, 0.01)):
        return None
    agreed = matched("rate") if timed and seen.rate_hz is not None else Fit()
    if not timed and seen.count == (1,) and (seen.window_s or 0) >= SELDOM:
        agreed = Fit(near=frozenset({"window"}))
    if seen.state == "heartbeat":
        return matched("pause").and_also(_DIMMING).and_also(agreed)
    even = _even(seen)
    return None if even is None else even.and_also(agreed)


def _even(seen: Observation) -> Fit | None:
    if seen.state not in FLASHING or seen.pause == "seen":
        return None
    if seen.pause == "none":
        return matched("state", "pause")
    if seen.state == "flicker":
        return matched("state")
    if seen.count:
        return Fit(frozenset({"state"}), frozenset({"pause"}), TOOK_BLINK)
    return matched("state").and_also(assumed("pause"))


def _single(seen: Observation, signal: SingleFlash) -> Fit | None:
    """Compare one flash every so often; a "slow blink" leaves the seconds open."""
    if seen.state not in ("blink", "count") or (seen.count and 1 not in seen.count):
        return None
    if not same_rate(seen, 1 / max(signal.window.value, 0.01)):
        return None
    fit = matched("state", "count") if seen.count else matched("state")
    if seen.window_s is None:
        return fit.and_also(matched("window") if seen.rate_hz else assumed("window"))
    return fit.and_also(matched("window")) if same_window(seen, signal.window) else None


def _group(seen: Observation, written: int) -> Fit | None:
    if seen.pause == "none":
        return None
    count = fit_count(seen, written)
    if count is None:
        return None
    return count.and_also(matched("pause") if seen.pause else assumed("pause"))


def _window(seen: Observation, signal: CountPerWindow | Beeps) -> Fit | None:
    timed = seen.window_s is not None
    if seen.pause == "none" and not timed:
        return None
    count = fit_count(seen, signal.count)
    if count is None:
        return None
    agrees = signal.window is not None and same_window(seen, signal.window)
    timing = matched("window") if agrees else assumed("window")
    if seen.pause == "seen":
        return count.and_also(timing).and_also(matched("pause"))
    pause = Fit() if agrees else assumed("pause")
    return count.and_also(timing).and_also(pause)


def _beeps(seen: Observation, signal: Beeps) -> Fit | None:
    printed = seen.colour or seen.label
    numbered = seen.state == "count"
    if seen.emitter not in (None, "buzzer") or printed or not numbered:
        return None
    heard = matched("emitter")
    if seen.emitter is None:
        slot = frozenset({"emitter"})
        heard = Fit(assumed=slot, weight=NO_SOUND, near=slot)
    timed = signal.window is not None
    counted = _window(seen, signal) if timed else _group(seen, signal.count)
    return None if counted is None else counted.and_also(heard)
