"""Every row of two or more lamps seen as a row of a lamp grid."""

from __future__ import annotations

from assistant.signals.kinds import (
    BankCount,
    Beeps,
    DigitPosition,
    DisplayCode,
    DisplayValue,
    FlickerCount,
    Lamp,
    LampState,
    MainSubCode,
    PhasePair,
    SeveralLamps,
    Signal,
    TensUnits,
    WeightedLamps,
)

Together = (
    SeveralLamps | WeightedLamps | PhasePair | BankCount | FlickerCount | TensUnits
)
Shown = DisplayCode | MainSubCode | DigitPosition | DisplayValue
_TEN = 10


def cells_of(signal: Together) -> tuple[LampState, ...]:
    """Return what each lamp of a row does.

    Examples
    --------
    >>> from assistant.signals.kinds import TensUnits
    >>> code = TensUnits(
    ...     kind="tens_units", id="x", meaning="", is_fault=True, number=40,
    ...     tens_emitter=Lamp(label="A"), units_emitter=Lamp(label="B"))
    >>> [(cell.lamp.label, cell.state, cell.count) for cell in cells_of(code)]
    [('A', 'count', 4), ('B', 'off', None)]
    """
    match signal:
        case SeveralLamps():
            return signal.lamps
        case WeightedLamps():
            return tuple(
                LampState(lamp=entry.lamp, state="on" if lit else "off")
                for entry, lit in zip(signal.lamps, signal.lit() or (), strict=True)
            )
        case PhasePair():
            state = signal.rate_class or "flash"
            return tuple(LampState(lamp=lamp, state=state) for lamp in signal.lamps)
        case BankCount():
            return (
                LampState(lamp=signal.bank_emitter, state=signal.bank_state),
                _counting(signal.count_emitter, signal.count),
            )
        case FlickerCount():
            return (
                LampState(lamp=signal.flicker_emitter, state="flicker"),
                _counting(signal.count_emitter, signal.count),
            )
        case TensUnits():
            tens, units = divmod(signal.shown, _TEN)
            return (
                _counting(signal.tens_emitter, tens),
                _counting(signal.units_emitter, units),
            )


def _counting(lamp: Lamp, count: int) -> LampState:
    if count == 0:
        return LampState(lamp=lamp, state="off")
    return LampState(lamp=lamp, state="count", count=count)


def lamps_of(signal: Signal) -> tuple[Lamp, ...]:
    """Return every lamp, display or buzzer that a row names."""
    if isinstance(signal, Together):
        return tuple(cell.lamp for cell in cells_of(signal))
    lamp = lamp_of(signal)
    return () if lamp is None else (lamp,)


def lamp_of(signal: Signal) -> Lamp | None:
    """Return the lamp or display of a row, if it has exactly one."""
    if isinstance(signal, Together):
        return None
    if isinstance(signal, Shown):
        return signal.display
    return signal.buzzer if isinstance(signal, Beeps) else signal.lamp


def lamp_slot(lamp: Lamp) -> str:
    """Return how a lamp of a grid is named in questions: ``lamp:<label>``."""
    named = lamp.label or lamp.colour or lamp.role or lamp.board or lamp.box
    return f"lamp:{named or 'unnamed'}"
