"""Capacitance of a run capacitor while it works."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, stated

AMPS = Limit("current through the capacitor", 0.01, 100.0, "A")
VOLTS = Limit("voltage across the capacitor", 10.0, 1000.0, "V")
MAINS = Limit("mains frequency", 45.0, 65.0, "Hz")

RUNNING = Law(
    name="capacitance from running amps and volts",
    formula="C = I / (2 pi f V)",
    source="reactance of a capacitor; 2652 I / V at 60 Hz in trade training",
    limits=(AMPS, VOLTS, MAINS),
    note=(
        "The lead between capacitor and start winding clamped, volts across the "
        "capacitor, both while it runs on mains. Not for the banks of an inverter."
    ),
)


@stated(RUNNING)
def running_capacitance(current: float, voltage: float, frequency: float) -> float:
    """Return the capacitance that carries a current.

    Parameters
    ----------
    current : float
        Through the capacitor, [A].
    voltage : float
        Across it, [V].
    frequency : float
        Of the mains, [Hz].

    Returns
    -------
    float
        Capacitance, [F].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> 1e6 * running_capacitance(8.3, 295.4, 60.0)
    74.53
    """
    AMPS.hold(current)
    VOLTS.hold(voltage)
    MAINS.hold(frequency)
    return current / (2 * math.pi * frequency * voltage)
