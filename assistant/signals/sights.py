"""What somebody would see in front of a row, whole."""

from __future__ import annotations

from assistant.signals.cells import Shown, Together, cells_of, lamp_of
from assistant.signals.kinds import (
    AnalogRate,
    Beeps,
    CountPerWindow,
    DigitPosition,
    DisplayCode,
    DisplayValue,
    EvenBlink,
    FlickerCount,
    GroupThenPause,
    Heartbeat,
    Lamp,
    LampState,
    MainSubCode,
    Off,
    PhasePair,
    RateBlink,
    ShortLong,
    Signal,
    SingleFlash,
    Steady,
)
from assistant.signals.observation import Observation, State

_SHORTEST = 0.01
_CELL_STATES: dict[str, State] = {
    "on": "on",
    "off": "off",
    "count": "count",
    "flicker": "flicker",
}


def sight_of(signal: Signal) -> tuple[Observation, ...]:
    """Return everything that a row says, as seen: one observation for each lamp."""
    if isinstance(signal, Together):
        shared = shared_slots(signal)
        shared |= circumstances(signal)
        seen = [cell_sight(cell, cell) for cell in cells_of(signal)]
        return tuple(one.model_copy(update=shared) for one in seen if one is not None)
    pattern = pattern_of(signal)
    lamp = lamp_of(signal)
    told = {**circumstances(signal), **(identity(lamp) if lamp else {})}
    return (pattern.model_copy(update=told),)


def circumstances(signal: Signal) -> dict[str, object]:
    """Return what must hold beside the lamps: unit state, settings, mode, history."""
    return {
        "unit_state": signal.unit_state_required,
        "conditions": signal.precondition,
        "mode": signal.mode,
        "stored": signal.stored,
    }


def shared_slots(signal: Together) -> dict[str, object]:
    """Return what every lamp of a row shares: phase, level of the display."""
    if isinstance(signal, PhasePair):
        band = signal.rate.band() if signal.rate is not None else None
        return {"phase": signal.phase, "rate_hz": band}
    if isinstance(signal, FlickerCount):
        return {"display_level": signal.display_level}
    return {}


def identity(lamp: Lamp) -> dict[str, tuple[str, ...]]:
    """Return whose lamp it is, as slots of an observation."""
    found: dict[str, tuple[str, ...]] = {
        name: (value,)
        for name in ("box", "board", "label", "colour")
        if (value := getattr(lamp, name)) is not None
    }
    if lamp.role is not None:
        found.setdefault("label", (lamp.role,))
    return found


def cell_sight(entry: LampState, state: LampState) -> Observation | None:
    """Return the lamp of `entry` doing what `state` says; None if that is open."""
    if state.state == "any":
        return None
    seen = Observation(
        state=_CELL_STATES.get(state.state, "blink"),
        count=() if state.count is None else (state.count,),
        rate=state.state if state.state in ("slow", "fast") else None,
    )
    return seen.model_copy(update=identity(entry.lamp))


PlainSignal = (
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
    | Beeps
    | DisplayCode
    | MainSubCode
    | DigitPosition
    | DisplayValue
)


def pattern_of(signal: PlainSignal) -> Observation:
    """Return what the one lamp, display or buzzer of a row does."""
    match signal:
        case Steady():
            return Observation(state="on")
        case Off():
            return Observation(state="off")
        case Heartbeat():
            return Observation(state="heartbeat")
        case EvenBlink() | RateBlink() | AnalogRate():
            return _even(signal)
        case _:
            return _shown(signal) if isinstance(signal, Shown) else _counted(signal)


def _even(signal: EvenBlink | RateBlink | AnalogRate) -> Observation:
    seen = Observation(state="blink", pause="none")
    if isinstance(signal, RateBlink):
        band = signal.rate.band() if signal.rate is not None else None
        return seen.model_copy(update={"rate": signal.rate_class, "rate_hz": band})
    if isinstance(signal, EvenBlink) and signal.on is not None and signal.off:
        hertz = 1 / max(signal.on.value + signal.off.value, _SHORTEST)
        return seen.model_copy(update={"rate_hz": (hertz, hertz)})
    return seen


def _counted(
    signal: SingleFlash | CountPerWindow | GroupThenPause | ShortLong | Beeps,
) -> Observation:
    match signal:
        case SingleFlash():
            seconds = signal.window.value
            return Observation(state="count", count=(1,), window_s=seconds)
        case ShortLong():
            return Observation(
                state="short_long",
                count=(signal.short,),
                long_count=(signal.long,),
                first="short" if signal.digit_order == "short_first" else "long",
                pause="seen",
            )
        case _:
            every = getattr(signal, "window", None)
            return Observation(
                emitter="buzzer" if isinstance(signal, Beeps) else None,
                state="count",
                count=(signal.count,),
                pause="seen",
                window_s=every.value if every is not None else None,
            )


def _shown(
    signal: DisplayCode | MainSubCode | DigitPosition | DisplayValue,
) -> Observation:
    match signal:
        case DisplayCode():
            return Observation(state="display", code=signal.code)
        case MainSubCode():
            return Observation(state="display", code=signal.code, sub=signal.sub)
        case DigitPosition():
            signs = ["_"] * signal.of
            signs[signal.position - 1] = signal.sign or "_"
            return Observation(state="display", code="".join(signs))
        case DisplayValue():
            return Observation(state="display", code=written(signal.low, signal))


def written(value: float, signal: DisplayValue) -> str:
    """Return how a display writes a value.

    Examples
    --------
    >>> row = DisplayValue(kind="display_value", id="x", meaning="", is_fault=False,
    ...                    encoding="point_is_hundred", low=90, high=120)
    >>> written(107, row), written(95, row)
    ('0.7', '95')
    """
    whole = round(value)
    if signal.encoding == "hexadecimal":
        return f"{whole:X}"
    hundred = 100
    if signal.encoding == "point_is_hundred" and hundred <= whole < 2 * hundred:
        rest = whole - hundred
        return f"0.{rest}" if rest < hundred // 10 else f"0.{rest:02d}"
    return f"{value:g}"
