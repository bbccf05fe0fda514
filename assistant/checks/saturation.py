"""Saturation of the refrigerants: pressure of a temperature and back.

Bubble is the saturated liquid, for subcooling; dew is the saturated vapour, for
superheat. A single fluid has one curve for both.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from functools import lru_cache
from typing import Literal

from assistant.checks.law import Law, Limit, stated
from assistant.checks.refrigerants import REFRIGERANTS, refrigerant_named
from assistant.checks.saturation_table import (
    BUBBLE,
    DEW,
    LOWEST,
    MADE_FROM,
    STEP,
    Curve,
)

Side = Literal["bubble", "dew"]
_ROWS = len(BUBBLE[REFRIGERANTS[0]][0])
_TURNS = 60
TEMPERATURE = Limit(
    "saturation temperature",
    LOWEST,
    LOWEST + (_ROWS - 1) * STEP,
    "K",
    "the committed table",
)
PRESSURE = Limit("absolute pressure", 1e4, 5e6, "Pa", "the committed tables together")

SATURATION = Law(
    name="saturation",
    formula="ln p over 1/T, a cubic between two rows with the rows' own slopes",
    source=f"tables made from {MADE_FROM}; R-410A and R-407C as pseudo-pure fluids, "
    "R-454B and R-452B by their phase envelope",
    limits=(TEMPERATURE, PRESSURE),
    note=(
        "Published charts of one refrigerant differ by up to 1 °F. Bubble for a "
        "liquid, dew for a vapour."
    ),
)


@stated(SATURATION)
def saturation_pressure(refrigerant: str, temperature: float, side: Side) -> float:
    """Return the pressure at which a refrigerant boils or condenses.

    Parameters
    ----------
    refrigerant : str
        One of `REFRIGERANTS`, [name].
    temperature : float
        Of the saturated liquid or vapour, [K].
    side : str
        ``bubble`` or ``dew``, [name].

    Returns
    -------
    float
        Absolute, [Pa].

    Raises
    ------
    OutOfRangeError
        Outside the table.
    InputError
        For a refrigerant without a table.

    Examples
    --------
    R-32 at 0 °C is 0.8139 MPa in a published table, 0.8131 MPa here:

    >>> round(saturation_pressure("R-32", 273.15, "bubble") / 1e6, 4)
    0.8131
    """
    curve = _curve(refrigerant, side)
    TEMPERATURE.hold(temperature)
    row = min(int((temperature - LOWEST) / STEP), _ROWS - 2)
    return math.exp(_cubic(curve, row, 1 / temperature))


@stated(SATURATION)
def saturation_temperature(refrigerant: str, pressure: float, side: Side) -> float:
    """Return the temperature at which a refrigerant boils or condenses.

    Parameters
    ----------
    refrigerant : str
        One of `REFRIGERANTS`, [name].
    pressure : float
        Absolute, [Pa].
    side : str
        ``bubble`` or ``dew``, [name].

    Returns
    -------
    float
        Temperature, [K].

    Raises
    ------
    OutOfRangeError
        Outside the table of this refrigerant.
    InputError
        For a refrigerant without a table.

    Examples
    --------
    R-410A at 118 psig and sea level, saturated vapour:

    >>> kelvin = saturation_temperature("R-410A", 118 * 6894.757 + 101325, "dew")
    >>> round(kelvin * 1.8 - 459.67, 2)
    39.84
    """
    curve = _curve(refrigerant, side)
    _held(refrigerant, side).hold(pressure)
    wanted = math.log(pressure)
    row = min(max(bisect_right(curve[0], wanted) - 1, 0), _ROWS - 2)
    cold, warm = LOWEST + row * STEP, LOWEST + (row + 1) * STEP
    for _ in range(_TURNS):
        middle = (cold + warm) / 2
        if _cubic(curve, row, 1 / middle) < wanted:
            cold = middle
        else:
            warm = middle
    return (cold + warm) / 2


@stated(SATURATION)
def kelvin_per_pascal(refrigerant: str, pressure: float, side: Side) -> float:
    """Return by how much the saturation temperature moves with pressure.

    Parameters
    ----------
    refrigerant : str
        One of `REFRIGERANTS`, [name].
    pressure : float
        Absolute, [Pa].
    side : str
        ``bubble`` or ``dew``, [name].

    Returns
    -------
    float
        dT/dp, [K/Pa].

    Raises
    ------
    OutOfRangeError
        Outside the table of this refrigerant.

    Examples
    --------
    R-410A near 118 psig moves by 0.44 °F for each psi:

    >>> slope = kelvin_per_pascal("R-410A", 118 * 6894.757 + 101325, "dew")
    >>> round(slope * 1.8 * 6894.757, 2)
    0.44
    """
    temperature = saturation_temperature(refrigerant, pressure, side)
    step = STEP / 100
    cold = max(temperature - step, TEMPERATURE.low)
    warm = min(temperature + step, TEMPERATURE.high)
    low = saturation_pressure(refrigerant, cold, side)
    high = saturation_pressure(refrigerant, warm, side)
    return (warm - cold) / (high - low)


def _curve(refrigerant: str, side: Side) -> Curve:
    name = refrigerant if refrigerant in BUBBLE else refrigerant_named(refrigerant)
    return BUBBLE[name] if side == "bubble" else DEW[name]


@lru_cache(maxsize=64)
def _held(refrigerant: str, side: Side) -> Limit:
    logs = _curve(refrigerant, side)[0]
    low, high = (
        math.exp(logs[0]) * (1 - 1e-12),
        math.exp(logs[-1]) * (1 + 1e-12),
    )
    what = f"absolute pressure of {refrigerant}"
    return Limit(what, low, high, "Pa", TEMPERATURE.basis)


def _cubic(curve: Curve, row: int, inverse: float) -> float:
    """Return ln p between two rows: the cubic with the rows' values and slopes.

    Parameters
    ----------
    curve : Curve
        Values and slopes.
    row : int
        The colder of the two.
    inverse : float
        1/T, [1/K].
    """
    logs, slopes = curve
    left, right = 1 / (LOWEST + row * STEP), 1 / (LOWEST + (row + 1) * STEP)
    width = right - left
    s = (inverse - left) / width
    rest = 1 - s
    value = logs[row] * (1 + 2 * s) * rest**2 + logs[row + 1] * (3 - 2 * s) * s**2
    bend = slopes[row] * s * rest**2 - slopes[row + 1] * s**2 * rest
    return value + bend * width
