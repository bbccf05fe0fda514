"""Speed of a fan from the pulses of its tachometer wire."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

PULSES = Limit("frequency of the tachometer wire", 0.0, 5000.0, "Hz")
_MOST = 24

SPEED = Law(
    name="speed from tachometer pulses",
    formula="n = f / p (60 f / p in turns a minute)",
    source="p pulses a turn: as many as pole pairs, as fan makers print it; some "
    "divide to 2, so the document's p decides",
    limits=(PULSES,),
    note="4 poles 2, 6 poles 3, 8 poles 4 pulses a turn where nothing else is stated.",
)


@stated(SPEED)
def fan_speed(frequency: float, pulses: float) -> float:
    """Return the turns a second of a fan.

    Parameters
    ----------
    frequency : float
        Of the tachometer wire, [Hz].
    pulses : float
        A turn, a whole number, [1].

    Returns
    -------
    float
        Turns a second, [1/s].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or pulses that are no whole number from 1 to 24.

    Examples
    --------
    >>> 60 * fan_speed(80.0, 12)
    400.0
    """
    PULSES.hold(frequency)
    if pulses != int(pulses) or not 1 <= pulses <= _MOST:
        raise OutOfRangeError(
            f"{pulses:g} pulses a turn", f"a whole number from 1 to {_MOST}"
        )
    return frequency / pulses
