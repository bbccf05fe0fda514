"""Superheat, subcooling, discharge superheat and approach."""

from __future__ import annotations

from assistant.checks.law import PRACTICE, Law, Limit, stated
from assistant.checks.saturation import (
    PRESSURE,
    Side,
    kelvin_per_pascal,
    saturation_temperature,
)

LINE = Limit("line temperature", 213.15, 423.15, "K")
AIR = Limit("outdoor air temperature", 213.15, 338.15, "K")

SUPERHEAT = Law(
    name="superheat",
    formula="superheat = T line - T dew(p)",
    source="as makers define it: dew for superheat",
    limits=(PRESSURE, LINE),
    note="Of the suction line, or of the discharge line with its own pressure.",
)
SUBCOOLING = Law(
    name="subcooling",
    formula="subcooling = T bubble(p) - T line",
    source="as makers define it: bubble for subcooling",
    limits=(PRESSURE, LINE),
)
APPROACH = Law(
    name="approach",
    formula="approach = T liquid line - T outdoor air",
    source="as makers define it, each with a figure of its own",
    limits=(LINE, AIR),
    note="Limits come from the document; they differ by size.",
)
GAUGE_ERROR = Law(
    name="error of a saturation temperature",
    formula="a = a gauge dT/dp",
    source="first-order propagation (JCGM 100); gauge class as a share of full scale",
    limits=(PRESSURE, Limit("gauge error", 0.0, 1e6, "Pa", PRACTICE)),
)


@stated(SUPERHEAT)
def superheat(refrigerant: str, pressure: float, line: float) -> float:
    """Return by how much a vapour is warmer than its dew point.

    Parameters
    ----------
    refrigerant : str
        With a saturation table, [name].
    pressure : float
        Absolute, at the same place as the temperature, [Pa].
    line : float
        Temperature of the line, [K].

    Returns
    -------
    float
        Superheat, [dK]; negative means that the line is colder than the dew point.

    Raises
    ------
    OutOfRangeError
        Outside the limits or the refrigerant's table.

    Examples
    --------
    R-410A, 118 psig at sea level, line at 52 °F: 12.16 °F.

    >>> kelvin = superheat("R-410A", 118 * 6894.757 + 101325, (52 + 459.67) / 1.8)
    >>> round(kelvin * 1.8, 2)
    12.16
    """
    LINE.hold(line)
    return line - saturation_temperature(refrigerant, pressure, "dew")


@stated(SUBCOOLING)
def subcooling(refrigerant: str, pressure: float, line: float) -> float:
    """Return by how much a liquid is colder than its bubble point.

    Parameters
    ----------
    refrigerant : str
        With a saturation table, [name].
    pressure : float
        Absolute, at the same place as the temperature, [Pa].
    line : float
        Temperature of the line, [K].

    Returns
    -------
    float
        Subcooling, [dK]; negative means that the line is warmer than the bubble
        point.

    Raises
    ------
    OutOfRangeError
        Outside the limits or the refrigerant's table.

    Examples
    --------
    R-410A, 340 psig at sea level, line at 95 °F: 9.61 °F.

    >>> kelvin = subcooling("R-410A", 340 * 6894.757 + 101325, (95 + 459.67) / 1.8)
    >>> round(kelvin * 1.8, 2)
    9.61
    """
    LINE.hold(line)
    return saturation_temperature(refrigerant, pressure, "bubble") - line


@stated(APPROACH)
def approach(line: float, outdoor: float) -> float:
    """Return by how much the liquid line is warmer than the outdoor air.

    Parameters
    ----------
    line : float
        Temperature of the liquid line in cooling, [K].
    outdoor : float
        Temperature of the air that enters the outdoor coil, [K].

    Returns
    -------
    float
        Approach, [dK].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> approach(313.15, 308.15)
    5.0
    """
    LINE.hold(line)
    AIR.hold(outdoor)
    return line - outdoor


@stated(GAUGE_ERROR)
def saturation_error(
    refrigerant: str, pressure: float, error: float, *, liquid: bool
) -> float:
    """Return the largest error of a saturation temperature by its gauge.

    Parameters
    ----------
    refrigerant : str
        With a saturation table, [name].
    pressure : float
        Absolute, [Pa].
    error : float
        Largest error of the gauge, [Pa].
    liquid : bool
        Bubble when true, dew when false, [name].

    Returns
    -------
    float
        Bound either way, [dK].

    Raises
    ------
    OutOfRangeError
        Outside the limits or the refrigerant's table.

    Examples
    --------
    2.5 psi on R-410A near 118 psig are 1.10 °F:

    >>> p = 118 * 6894.757 + 101325
    >>> kelvin = saturation_error("R-410A", p, 2.5 * 6894.757, liquid=False)
    >>> round(kelvin * 1.8, 2)
    1.1
    """
    GAUGE_ERROR.limits[1].hold(error)
    side: Side = "bubble" if liquid else "dew"
    return error * kelvin_per_pascal(refrigerant, pressure, side)
