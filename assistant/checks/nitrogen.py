"""Nitrogen test: what the pressure must be at another temperature."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

GAUGE = Limit("test pressure", 0.0, 6e6, "PaG")
AIR = Limit("atmospheric pressure", 5e4, 1.1e5, "Pa")
TEMPERATURE = Limit("gas temperature", 233.15, 343.15, "K")
STANDARD_AIR = 101325.0

GAS = Law(
    name="nitrogen at another temperature",
    formula="p2 = (p1 + p_air) T2 / T1 - p_air",
    source="gas law on absolute pressure, volume kept",
    limits=(GAUGE, AIR, TEMPERATURE),
    note=(
        "Makers print rules such as 0.01 MPa a kelvin, which correct about 30 % too "
        "little at 3.8 MPa: a fall between the two is no proof of a leak. Real "
        "nitrogen differs by well under 1 % here. The temperature is of the pipes."
    ),
)


@stated(GAS)
def nitrogen_pressure(
    pressure: float, start: float, end: float, air: float = STANDARD_AIR
) -> float:
    """Return the gauge pressure of a tight system at another temperature.

    Parameters
    ----------
    pressure : float
        At the start, gauge, [PaG].
    start : float
        Temperature then, [K].
    end : float
        Temperature now, [K].
    air : float
        Atmospheric pressure, absolute, [Pa].

    Returns
    -------
    float
        Gauge pressure, [PaG].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> nitrogen_pressure(3.8e6, 300.15, 293.15) / 1e6
    3.709
    """
    GAUGE.hold(pressure)
    AIR.hold(air)
    TEMPERATURE.hold(start)
    TEMPERATURE.hold(end)
    return (pressure + air) * end / start - air


@stated(GAS)
def nitrogen_by_rule(pressure: float, start: float, end: float, rate: float) -> float:
    """Return the gauge pressure by a maker's linear rule, to stand beside the law.

    Parameters
    ----------
    pressure : float
        At the start, gauge, [PaG].
    start : float
        Temperature then, [K].
    end : float
        Temperature now, [K].
    rate : float
        Pressure a kelvin, as the document prints it, [PaG].

    Returns
    -------
    float
        Gauge pressure, [PaG].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or a negative rate.

    Examples
    --------
    >>> nitrogen_by_rule(3.8e6, 300.15, 293.15, 1e4) / 1e6
    3.73
    """
    GAUGE.hold(pressure)
    TEMPERATURE.hold(start)
    TEMPERATURE.hold(end)
    if rate < 0:
        raise OutOfRangeError(f"a rate of {rate:g} Pa a kelvin is below zero")
    return pressure + rate * (end - start)
