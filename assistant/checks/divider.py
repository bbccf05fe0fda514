"""A sensor read as a voltage: the divider of the sensor and a fixed resistor."""

from __future__ import annotations

from typing import Literal

from assistant.checks.law import PRACTICE, Law, Limit, stated
from assistant.checks.thermistor import RESISTANCE

SensorTo = Literal["ground", "supply"]
"""Where the sensor's own leg of the divider goes."""

LOGIC = Limit("logic supply", 1.0, 30.0, "V")
FIXED = Limit("fixed resistor", 10.0, 1e7, "ohm", PRACTICE)

DIVIDER = Law(
    name="sensor voltage of a divider",
    formula="V = Vcc R / (R + R fixed), the sensor to ground; V = Vcc R fixed / "
    "(R + R fixed), the sensor to the supply",
    source="Ohm's law; held to a maker's printed voltage column in the tests",
    limits=(RESISTANCE, LOGIC, FIXED),
    note=(
        "Read with the sensor plugged in and the board on, against the board's own "
        "logic ground. A voltage near 0 V or near Vcc is an open or a short, which "
        "of them depends on where the sensor goes."
    ),
)


@stated(DIVIDER)
def divider_voltage(
    resistance: float, supply: float, fixed: float, to: SensorTo
) -> float:
    """Return the voltage that a board sees of a sensor.

    Parameters
    ----------
    resistance : float
        Of the sensor, [ohm].
    supply : float
        Logic supply of the divider, [V].
    fixed : float
        The other resistor, [ohm].
    to : str
        ``ground`` or ``supply``: where the sensor goes, [name].

    Returns
    -------
    float
        Voltage over the board's side, to logic ground, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    10 kohm at 5 V with 12493 ohm at 20 °C is printed as 2.777 V:

    >>> divider_voltage(12493.0, 5.0, 10e3, "ground")
    2.777
    """
    RESISTANCE.hold(resistance)
    _hold(supply, fixed)
    part = resistance if to == "ground" else fixed
    return supply * part / (resistance + fixed)


@stated(DIVIDER)
def divider_slope(
    resistance: float, supply: float, fixed: float, to: SensorTo
) -> float:
    """Return by how much the voltage changes with the resistance.

    Parameters
    ----------
    resistance : float
        Of the sensor, [ohm].
    supply : float
        Logic supply of the divider, [V].
    fixed : float
        The other resistor, [ohm].
    to : str
        ``ground`` or ``supply``: where the sensor goes, [name].

    Returns
    -------
    float
        dV/dR, [V/ohm]; negative with the sensor to the supply.

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> divider_slope(10e3, 5.0, 10e3, "ground") * 1e3
    0.125
    """
    RESISTANCE.hold(resistance)
    _hold(supply, fixed)
    slope = supply * fixed / (resistance + fixed) ** 2
    return slope if to == "ground" else -slope


def _hold(supply: float, fixed: float) -> None:
    LOGIC.hold(supply)
    FIXED.hold(fixed)
