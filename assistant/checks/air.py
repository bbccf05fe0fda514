"""Moist air: the one door to psychrolib, imported when air is first asked for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Literal

from assistant.checks.law import Law, Limit, stated
from assistant.checks.pressure import AIR

if TYPE_CHECKING:
    from types import ModuleType

DRY_BULB = Limit("dry bulb", 233.15, 338.15, "K", "air that units meet")
SHARE = Limit("relative humidity", 0.001, 1.0, "1", "moist air")
ZERO = 273.15
DRIEST = 173.15
"""K: the coldest dew point that the relations are stated for."""
By = Literal["wet bulb", "dew point", "relative humidity"]

MOIST = Law(
    name="moist air",
    formula="ASHRAE moist-air relations at the local air pressure",
    source="ASHRAE Handbook Fundamentals 2017, chapter 1, as in PsychroLib",
    limits=(DRY_BULB, SHARE, AIR),
    note=(
        "Enthalpy is per kilogram of dry air, counted from dry air at 0 °C. Other "
        "libraries differ by 0.5 % in humidity and 0.2 % in enthalpy."
    ),
)


@dataclass(frozen=True, slots=True)
class MoistAir:
    """One state of air, all from dry bulb, one humidity and the air pressure.

    Attributes
    ----------
    dry_bulb, wet_bulb, dew_point : float
        Temperatures, K.
    relative_humidity : float
        Share of saturation.
    humidity_ratio : float
        kg of water in one kg of dry air.
    enthalpy : float
        J/kg of dry air.
    volume : float
        m3/kg of dry air.
    """

    dry_bulb: float
    wet_bulb: float
    dew_point: float
    relative_humidity: float
    humidity_ratio: float
    enthalpy: float
    volume: float


@cache
def _library() -> ModuleType:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    found: ModuleType = psychrolib
    return found


@stated(MOIST)
def moist_air(dry_bulb: float, by: By, humidity: float, air: float) -> MoistAir:
    """Return the state of air.

    Parameters
    ----------
    dry_bulb : float
        Temperature, [K].
    by : str
        What `humidity` is: ``wet bulb``, ``dew point`` or ``relative humidity``,
        [name].
    humidity : float
        Wet bulb or dew point [K], or share of saturation, [1].
    air : float
        Air pressure, absolute, [Pa].

    Returns
    -------
    MoistAir
        Temperatures [K], enthalpy [J/kg], humidity ratio [1], volume [m3/kg].

    Raises
    ------
    OutOfRangeError
        Outside the limits, a wet bulb or dew point above the dry bulb included.

    Examples
    --------
    80 °F with a wet bulb of 67 °F is 51.1 % of saturation:

    >>> state = moist_air((80 + 459.67) / 1.8, "wet bulb", (67 + 459.67) / 1.8, 101325)
    >>> round(state.relative_humidity, 3)
    0.511
    """
    DRY_BULB.hold(dry_bulb)
    AIR.hold(air)
    library, celsius = _library(), dry_bulb - ZERO
    if by == "relative humidity":
        SHARE.hold(humidity)
        found = library.CalcPsychrometricsFromRelHum(celsius, humidity, air)
        ratio, wet, dew, relative = found[0], found[1], found[2], humidity
    else:
        Limit(by, DRIEST, dry_bulb, "K", "the dry bulb").hold(humidity)
        ratio, wet, dew, relative = _by_temperature(celsius, by, humidity - ZERO, air)
    return MoistAir(
        dry_bulb=dry_bulb,
        wet_bulb=wet + ZERO,
        dew_point=dew + ZERO,
        relative_humidity=relative,
        humidity_ratio=ratio,
        enthalpy=library.GetMoistAirEnthalpy(celsius, ratio),
        volume=library.GetMoistAirVolume(celsius, ratio, air),
    )


def _by_temperature(
    celsius: float, by: By, humidity: float, air: float
) -> tuple[float, float, float, float]:
    """Return humidity ratio, wet bulb, dew point and share of saturation."""
    library = _library()
    if by == "wet bulb":
        found = library.CalcPsychrometricsFromTWetBulb(celsius, humidity, air)
        ratio, wet, dew, relative = found[0], humidity, found[1], found[2]
    else:
        found = library.CalcPsychrometricsFromTDewPoint(celsius, humidity, air)
        ratio, wet, dew, relative = found[0], found[1], humidity, found[2]
    # A wet bulb far below the dry bulb is drier than dry: the library clamps it.
    SHARE.hold(min(relative, 1.0))
    return ratio, wet, dew, min(relative, 1.0)
