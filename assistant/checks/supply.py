"""Supply voltage at the terminals: its band, and how far it falls at start."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, stated

NOMINAL = Limit("nominal voltage", 24.0, 690.0, "V")
TOLERANCE = Limit("tolerance", 0.0, 0.25, "1")
MEASURED = Limit("measured voltage", 0.0, 1000.0, "V")

BAND = Law(
    name="supply voltage band",
    formula="low = V (1 - p), high = V (1 + p)",
    source="nameplate voltage and the maker's percentage; motors at rated frequency "
    "are built for 10 % (NEMA MG 1, 12.44.1)",
    limits=(NOMINAL, TOLERANCE),
    note="A maker's own working range outranks the percentage.",
)
SAG = Law(
    name="supply sag at start",
    formula="sag = V at rest - V at start",
    source="definition; the largest sag is the maker's figure",
    limits=(MEASURED,),
    note="Both measured at the unit's terminals, with the same meter.",
)


@stated(BAND)
def band(nominal: float, tolerance: float) -> tuple[float, float]:
    """Return the lowest and the highest supply voltage allowed.

    Parameters
    ----------
    nominal : float
        Of the nameplate, [V].
    tolerance : float
        Allowed share either way, [1].

    Returns
    -------
    tuple of (float, float)
        Low and high, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> band(230.0, 0.10)
    (207.0, 253.0)
    """
    NOMINAL.hold(nominal)
    TOLERANCE.hold(tolerance)
    return nominal * (1 - tolerance), nominal * (1 + tolerance)


@stated(SAG)
def sag(at_rest: float, at_start: float) -> float:
    """Return how far the supply falls when the compressor starts.

    Parameters
    ----------
    at_rest : float
        Before the start, [V].
    at_start : float
        The lowest shown while it starts, [V].

    Returns
    -------
    float
        Fall, negative for a rise, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> sag(231.0, 198.5)
    32.5
    """
    MEASURED.hold(at_rest)
    MEASURED.hold(at_start)
    return at_rest - at_start
