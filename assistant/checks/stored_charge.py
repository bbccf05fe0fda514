"""Charge left on a bus: estimates of time and energy, which never promise safety."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

CAPACITANCE = Limit("bus capacitance", 1e-7, 1.0, "F")
BLEED = Limit("bleed resistance", 1.0, 1e9, "ohm")
VOLTAGE = Limit("bus voltage", 0.0, 1500.0, "V")
ELAPSED = Limit("time since isolated", 0.0, 1e6, "s")

DISCHARGE = Law(
    name="discharge through a bleed resistor",
    formula="t = R C ln(V0 / V); V = V0 exp(-t / (R C))",
    source="a capacitor through a resistor, by definition",
    limits=(CAPACITANCE, BLEED, VOLTAGE, ELAPSED),
    note=(
        "An estimate: a failed bleed resistor, another bank or a fan turned by wind "
        "leaves a charge whatever the time. It is measured at every marked bank."
    ),
)
ENERGY = Law(
    name="energy on a capacitor",
    formula="E = C V^2 / 2",
    source="energy of a charged capacitor, by definition",
    limits=(CAPACITANCE, VOLTAGE),
    note="An estimate; a small energy is no leave to touch.",
)


@stated(DISCHARGE)
def discharge_time(capacitance: float, bleed: float, start: float, end: float) -> float:
    """Return how long a sound bleed resistor would take.

    Parameters
    ----------
    capacitance : float
        Of the bank, [F].
    bleed : float
        Resistance across it, [ohm].
    start : float
        Voltage when isolated, [V].
    end : float
        Voltage asked for, [V].

    Returns
    -------
    float
        Time, [s].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or an end that is zero or above the start.

    Examples
    --------
    >>> discharge_time(680e-6, 47e3, 325.0, 60.0)
    54.0
    """
    CAPACITANCE.hold(capacitance)
    BLEED.hold(bleed)
    VOLTAGE.hold(start)
    VOLTAGE.hold(end)
    if not 0 < end <= start:
        raise OutOfRangeError(
            f"a bank at {start:g} V does not fall to {end:g} V",
            "the voltage asked for lies above zero and not above the first",
        )
    return bleed * capacitance * math.log(start / end)


@stated(DISCHARGE)
def voltage_left(
    capacitance: float, bleed: float, start: float, elapsed: float
) -> float:
    """Return the voltage that a sound bleed resistor would have left.

    Parameters
    ----------
    capacitance : float
        Of the bank, [F].
    bleed : float
        Resistance across it, [ohm].
    start : float
        Voltage when isolated, [V].
    elapsed : float
        Since then, [s].

    Returns
    -------
    float
        Voltage, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> voltage_left(2040e-6, 220e3, 390.0, 600.0)
    102.4
    """
    CAPACITANCE.hold(capacitance)
    BLEED.hold(bleed)
    VOLTAGE.hold(start)
    ELAPSED.hold(elapsed)
    return start * math.exp(-elapsed / (bleed * capacitance))


@stated(ENERGY)
def stored_energy(capacitance: float, voltage: float) -> float:
    """Return the energy a bank holds.

    Parameters
    ----------
    capacitance : float
        Of the bank, [F].
    voltage : float
        Across it, [V].

    Returns
    -------
    float
        Energy, [J].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> stored_energy(2040e-6, 390.0)
    155.1
    """
    CAPACITANCE.hold(capacitance)
    VOLTAGE.hold(voltage)
    return capacitance * voltage**2 / 2
