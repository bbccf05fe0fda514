"""Diode readings of an inverter module, phase against phase."""

from __future__ import annotations

from typing import Literal

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

FORWARD = Limit("diode reading", 0.0, 3.0, "V")
SHORT_BELOW = 0.05
"""Volts at which a diode counts as shorted: a maker prints 0 V."""
ALIKE = 0.1
"""Volts within which the phases agree: from memory, not checked."""
Diodes = Literal["alike", "differ", "short", "open"]

MODULE = Law(
    name="module diodes across phases",
    formula=(
        "short: any V <= 0.05 V; open: any OL forward; differ: highest - lowest > "
        "0.1 V + U; alike: otherwise"
    ),
    source="short at 0 V and open at OL both ways: a maker's service note on modules; "
    "phases within 0.1 V is from memory",
    limits=(FORWARD,),
    note=(
        "Digital meter: black on P and red on U, V, W; red on N and black on U, V, W. "
        "An analogue meter's leads are the other way round. Module isolated, bus "
        "measured dead. The document's own figures come first."
    ),
)


@stated(MODULE)
def phases_alike(readings: tuple[float | None, ...], spread: float = 0.0) -> Diodes:
    """Return how the forward readings of the three phases compare.

    Parameters
    ----------
    readings : tuple of (float or None)
        One for each phase, in one direction; None for OL, [V].
    spread : float
        U (k = 2) of a difference, [V].

    Returns
    -------
    str
        ``alike``, ``differ``, ``short`` or ``open``, [1].

    Raises
    ------
    OutOfRangeError
        For other than three readings, or outside the limits.

    Examples
    --------
    >>> phases_alike((0.41, 0.42, 0.40)), phases_alike((0.41, 0.0, 0.40))
    ('alike', 'short')
    """
    if len(readings) != 3:  # noqa: PLR2004
        raise OutOfRangeError("the three phases are compared: U, V and W")
    told = [reading for reading in readings if reading is not None]
    for reading in told:
        FORWARD.hold(reading)
    if any(reading <= SHORT_BELOW for reading in told):
        return "short"
    if len(told) < len(readings):
        return "open"
    apart = max(told) - min(told)
    return "differ" if apart > ALIKE + spread else "alike"
