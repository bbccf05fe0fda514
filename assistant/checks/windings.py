"""Resistance of windings: temperature, the sum rule of one phase, open overloads."""

from __future__ import annotations

from typing import Literal

from assistant.checks.law import Law, Limit, OutOfRangeError, stated
from assistant.units.table import ZERO_CELSIUS

INFERRED = {"copper": 234.5, "aluminium": 225.0}
"""Degrees below 0 C at which the resistance would vanish (UL standards, 49.8)."""
RESISTANCE = Limit("winding resistance", 1e-4, 1e5, "ohm")
TEMPERATURE = Limit("winding temperature", 213.15, 473.15, "K")
TERMINALS = Limit("resistance between two terminals", 0.0, 1e5, "ohm")
SUM_SHARE = 0.05
SUM_OHMS = 0.1
"""Tolerance of the sum rule, the larger of the two: from memory, not checked."""

TEMPERED = Law(
    name="resistance and temperature of a winding",
    formula="R2 = R1 (K + t2) / (K + t1); t2 = (R2 / R1)(K + t1) - K",
    source="K = 234.5 copper, 225 aluminium, t in C: UL standards, clause 49.8",
    limits=(RESISTANCE, TEMPERATURE),
    note="IEC 60034-1 takes 235 for copper (from memory): 0.1 K apart.",
)
SUM_RULE = Law(
    name="sum rule of a single-phase compressor",
    formula="|R(C-S) + R(C-R) - R(S-R)| <= max(0.1 ohm, 5 %) of R(S-R)",
    source="sum rule: a maker's service manual and its tip sheet; the tolerance is "
    "from memory",
    limits=(TERMINALS,),
    note=(
        "C-S and C-R open while S-R reads: the internal overload is open. A hot "
        "compressor closes it again by itself; let it cool and read again."
    ),
)
Windings = Literal["sum holds", "sum does not hold", "overload open", "open"]


@stated(TEMPERED)
def resistance_at(
    resistance: float, measured_at: float, wanted_at: float, metal: str = "copper"
) -> float:
    """Return a winding's resistance at another temperature.

    Parameters
    ----------
    resistance : float
        As measured, [ohm].
    measured_at : float
        Temperature of the winding then, [K].
    wanted_at : float
        Temperature asked for, [K].
    metal : str
        ``copper`` or ``aluminium``, [1].

    Returns
    -------
    float
        Resistance, [ohm].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or for another metal.

    Examples
    --------
    >>> resistance_at(0.65, 293.15, 298.15)
    0.66277
    """
    RESISTANCE.hold(resistance)
    TEMPERATURE.hold(measured_at)
    TEMPERATURE.hold(wanted_at)
    inferred = _inferred(metal) - ZERO_CELSIUS
    return resistance * (inferred + wanted_at) / (inferred + measured_at)


@stated(TEMPERED)
def temperature_by_resistance(
    cold: float, cold_at: float, hot: float, metal: str = "copper"
) -> float:
    """Return the temperature at which a winding has a resistance.

    Parameters
    ----------
    cold : float
        Resistance at a known temperature, [ohm].
    cold_at : float
        That temperature, [K].
    hot : float
        Resistance now, [ohm].
    metal : str
        ``copper`` or ``aluminium``, [1].

    Returns
    -------
    float
        Temperature, [K].

    Raises
    ------
    OutOfRangeError
        Outside the limits, the result included, or for another metal.

    Examples
    --------
    >>> temperature_by_resistance(80.0, 293.15, 100.0) - 273.15
    83.625
    """
    RESISTANCE.hold(cold)
    RESISTANCE.hold(hot)
    TEMPERATURE.hold(cold_at)
    inferred = _inferred(metal) - ZERO_CELSIUS
    found = hot / cold * (inferred + cold_at) - inferred
    TEMPERATURE.hold(found)
    return found


def _inferred(metal: str) -> float:
    if metal not in INFERRED:
        raise OutOfRangeError(
            f"{metal!r} is no winding metal", f"one of {', '.join(INFERRED)}"
        )
    return INFERRED[metal]


@stated(SUM_RULE)
def single_phase(
    common_start: float | None,
    common_run: float | None,
    start_run: float | None,
    spread: float = 0.0,
) -> Windings:
    """Return how three terminal readings of a single-phase motor fit together.

    Parameters
    ----------
    common_start, common_run, start_run : float or None
        Between two terminals; None for an open line, [ohm].
    spread : float
        U (k = 2) of the difference, added to the tolerance, [ohm].

    Returns
    -------
    str
        How they fit, [1].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> single_phase(11.0, 4.0, 15.0), single_phase(None, None, 15.0)
    ('sum holds', 'overload open')
    """
    for reading in (common_start, common_run, start_run):
        if reading is not None:
            TERMINALS.hold(reading)
    if start_run is not None and common_start is None and common_run is None:
        return "overload open"
    if common_start is None or common_run is None or start_run is None:
        return "open"
    allowed = max(SUM_OHMS, SUM_SHARE * start_run) + spread
    apart = abs(common_start + common_run - start_run)
    return "sum holds" if apart <= allowed else "sum does not hold"
