"""What the air side delivers: capacity, temperature split and static pressure."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.checks.air import DRY_BULB, MoistAir
from assistant.checks.law import Law, Limit, stated
from assistant.checks.pressure import AIR, SEA_LEVEL

FLOW = Limit("airflow", 0.005, 50.0, "m3/s")
STATIC = Limit("static pressure", -2500.0, 2500.0, "PaG")
STANDARD_DENSITY = 0.075 * 0.45359237 / 0.3048**3
"""kg/m3: the 0.075 lb/ft3 behind the trade's factors 4.5, 1.08 and 0.68."""
HEAT_OF_AIR = 0.24 * 4186.8
"""J/(kg K): the 0.24 Btu/(lb °F) behind 1.08."""
HEAT_OF_WATER = 0.68 * 7000 / 4.5 * 2326.0
"""J/kg of water: what 0.68 for each cfm and grain comes to."""

CAPACITY = Law(
    name="capacity of the air side",
    formula="m = 1.2014 kg/m3 (p/101325) V;  total = m (h1 - h2);  "
    "sensible = m cp (T1 - T2);  latent = m 2460 kJ/kg (W1 - W2)",
    source="the trade's 4.5, 1.08 and 0.68 in training texts, times p/p0 at altitude",
    limits=(FLOW, AIR, DRY_BULB),
    note=(
        "Standard air: 0.075 lb/ft3 at sea level. With an airflow measured at the "
        "entering air, mass is V divided by that air's own volume."
    ),
)
SPLIT = Law(
    name="temperature split",
    formula="split = T return - T supply in cooling, T supply - T return in heating",
    source="definition; the limits come from the document",
    limits=(DRY_BULB,),
    note=(
        "No generic range is a verdict: the split moves with humidity, airflow and "
        "compressor speed."
    ),
)
ESP = Law(
    name="external static pressure",
    formula="ESP = p supply duct - p return duct, each against the room",
    source="definition; the largest allowed stands on the plate",
    limits=(STATIC,),
    note="The return side reads negative. Filter and coil outside the unit count in.",
)


@dataclass(frozen=True, slots=True)
class Capacity:
    """Heat taken from the air, W; `latent` by its own formula, not as a rest."""

    total: float
    sensible: float
    latent: float

    @property
    def sensible_share(self) -> float:
        """Sensible over total."""
        return self.sensible / self.total


@stated(CAPACITY)
def capacity(
    flow: float, entering: MoistAir, leaving: MoistAir, air: float, *, actual: bool
) -> Capacity:
    """Return the heat that an airflow gave up.

    Parameters
    ----------
    flow : float
        Airflow, [m3/s].
    entering : MoistAir
        Air into the coil, [K] and [J/kg].
    leaving : MoistAir
        Air out of the coil, [K] and [J/kg].
    air : float
        Air pressure, absolute, [Pa].
    actual : bool
        Whether `flow` was measured at the entering air; else it is standard air,
        [name].

    Returns
    -------
    Capacity
        Total, sensible and latent, [W]; negative when the air was heated.

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    1200 cfm, 80/67 °F to 58/56 °F at sea level: 41 358 Btu/h.

    >>> from assistant.checks.air import moist_air
    >>> def at(dry, wet):
    ...     k = [(f + 459.67) / 1.8 for f in (dry, wet)]
    ...     return moist_air(k[0], "wet bulb", k[1], 101325.0)
    >>> flow = 1200 * 0.3048**3 / 60
    >>> heat = capacity(flow, at(80, 67), at(58, 56), 101325.0, actual=False)
    >>> round(heat.total * 3.412142 / 41358, 3)
    1.0
    """
    FLOW.hold(flow)
    AIR.hold(air)
    density = STANDARD_DENSITY * air / SEA_LEVEL
    mass = flow / entering.volume if actual else flow * density
    drier = entering.humidity_ratio - leaving.humidity_ratio
    return Capacity(
        total=mass * (entering.enthalpy - leaving.enthalpy),
        sensible=mass * HEAT_OF_AIR * (entering.dry_bulb - leaving.dry_bulb),
        latent=mass * HEAT_OF_WATER * drier,
    )


@stated(SPLIT)
def temperature_split(entering: float, leaving: float, *, heating: bool) -> float:
    """Return by how much the air is cooled, or heated.

    Parameters
    ----------
    entering : float
        Return air at the unit, dry bulb, [K].
    leaving : float
        Supply air at the unit, dry bulb, [K].
    heating : bool
        Whether it heats, [name].

    Returns
    -------
    float
        Split, [dK]; negative when it works the other way round.

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> temperature_split(299.15, 287.15, heating=False)
    12.0
    """
    DRY_BULB.hold(entering)
    DRY_BULB.hold(leaving)
    return leaving - entering if heating else entering - leaving


@stated(ESP)
def external_static(supply: float, back: float) -> float:
    """Return the pressure that the fan works against outside the unit.

    Parameters
    ----------
    supply : float
        In the supply duct, against the room, [PaG].
    back : float
        In the return duct, against the room; usually negative, [PaG].

    Returns
    -------
    float
        External static pressure, [PaG].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> external_static(75.0, -50.0)
    125.0
    """
    STATIC.hold(supply)
    STATIC.hold(back)
    return supply - back
