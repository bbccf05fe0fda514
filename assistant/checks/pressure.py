"""Air pressure at an altitude, and gauge against absolute pressure."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, stated

SEA_LEVEL = 101325.0
"""Standard air pressure at sea level, Pa."""

ALTITUDE = Limit("altitude", -500.0, 6000.0, "m", "the troposphere, where people work")
AIR = Limit("air pressure", 45e3, 110e3, "Pa", "the altitudes above")
GAUGE = Limit("gauge pressure", -110e3, 10e6, "PaG")

ATMOSPHERE = Law(
    name="air pressure at an altitude",
    formula="p = 101325 (1 - 2.25577e-5 z)^5.2559",
    source="standard atmosphere (ASHRAE Handbook Fundamentals 2017, chapter 1)",
    limits=(ALTITUDE,),
    note="The weather moves it by some 3 % either way.",
)
ABSOLUTE = Law(
    name="absolute pressure",
    formula="p absolute = p gauge + p air",
    source="what a service gauge is set to zero by",
    limits=(GAUGE, AIR),
    note="A vacuum is a negative gauge pressure; it ends at minus the air pressure.",
)


@stated(ATMOSPHERE)
def atmosphere(altitude: float) -> float:
    """Return the air pressure at an altitude.

    Parameters
    ----------
    altitude : float
        Above sea level, [m].

    Returns
    -------
    float
        Absolute, [Pa].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    5000 ft is printed as 12.228 psia:

    >>> round(atmosphere(1524.0) / 6894.757, 3)
    12.228
    """
    ALTITUDE.hold(altitude)
    return float(SEA_LEVEL * (1 - 2.25577e-5 * altitude) ** 5.2559)


@stated(ABSOLUTE)
def absolute(gauge: float, air: float) -> float:
    """Return the absolute pressure behind a gauge reading.

    Parameters
    ----------
    gauge : float
        As the gauge shows it, [Pa].
    air : float
        Air pressure where the gauge is, [Pa].

    Returns
    -------
    float
        Absolute, [Pa].

    Raises
    ------
    OutOfRangeError
        Outside the limits.
    ValueError
        Below a perfect vacuum.

    Examples
    --------
    >>> absolute(800e3, 101325.0)
    901325.0
    """
    GAUGE.hold(gauge)
    AIR.hold(air)
    if gauge + air < 0:
        raise ValueError(
            f"a gauge pressure of {gauge / 1e3:.4g} kPa lies below a perfect vacuum"
        )
    return gauge + air


@stated(ABSOLUTE)
def gauge(pressure: float, air: float) -> float:
    """Return what a gauge shows of an absolute pressure.

    Parameters
    ----------
    pressure : float
        Absolute, [Pa].
    air : float
        Air pressure where the gauge is, [Pa].

    Returns
    -------
    float
        Gauge, [Pa].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> gauge(901325.0, 101325.0)
    800000.0
    """
    AIR.hold(air)
    GAUGE.hold(pressure - air)
    return pressure - air
