"""Insulation resistance of open motors, brought to 40 C."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, stated

INSULATION = Limit("insulation resistance", 1.0, 1e13, "ohm")
WINDING = Limit("winding temperature", 263.15, 358.15, "K")
REFERENCE = 313.15
"""40 C, where IEEE 43 states its figures, K."""
HALVING = 10.0
"""Kelvin in which insulation resistance halves."""

AT_FORTY = Law(
    name="insulation resistance at 40 C",
    formula="R40 = R 0.5^((40 - t) / 10)",
    source="halving for each 10 K: insulation testing handbooks, IEEE 43",
    limits=(INSULATION, WINDING),
    note=(
        "For open motors only. A hermetic compressor is judged uncorrected, against "
        "its document: refrigerant in the oil moves the reading more than temperature. "
        "Makers' limits differ 500 times; there is no general one."
    ),
)


@stated(AT_FORTY)
def insulation_at_forty(resistance: float, temperature: float) -> float:
    """Return what the insulation of an open motor would read at 40 C.

    Parameters
    ----------
    resistance : float
        As read, [ohm].
    temperature : float
        Of the winding, [K].

    Returns
    -------
    float
        At 40 C, [ohm].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> insulation_at_forty(200e6, 293.15)
    50000000.0
    """
    INSULATION.hold(resistance)
    WINDING.hold(temperature)
    return resistance * math.pow(0.5, (REFERENCE - temperature) / HALVING)
