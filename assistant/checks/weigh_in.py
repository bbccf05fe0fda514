"""Charge by weight: what the scale must show, and tables that do not add up."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

MASS = Limit("charge", 0.0, 500.0, "kg")
PARTS = Limit("each entry of a charge table", -50.0, 500.0, "kg")
PRINTED = Limit("last digit printed", 0.0, 1.0, "kg")

WEIGH_IN = Law(
    name="charge left to weigh in",
    formula="left = plate charge + line-set adjustment - already in",
    source="mass balance; plate and adjustment are the document's own",
    limits=(MASS, PARTS),
    note="By weight on a scale; pressures do not tell the charge of an inverter.",
)
TOTAL = Law(
    name="sum of a charge table",
    formula="agrees when |sum of entries - printed total| <= n / 2 last digits",
    source="rounding of n printed entries and their total, by arithmetic",
    limits=(PARTS, PRINTED),
    note="A table that contradicts itself charges nothing: the unit's plate decides.",
)


@stated(WEIGH_IN)
def left_to_charge(plate: float, adjustment: float, already: float = 0.0) -> float:
    """Return what is still to be weighed in; negative when there is too much.

    Parameters
    ----------
    plate : float
        Charge of the unit's plate, [kg].
    adjustment : float
        For the line set, negative allowed, [kg].
    already : float
        Weighed in, or known to be in, [kg].

    Returns
    -------
    float
        Mass, [kg].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or an adjustment that leaves no charge.

    Examples
    --------
    >>> left_to_charge(1.25, 0.054)
    1.304
    """
    MASS.hold(plate)
    PARTS.hold(adjustment)
    MASS.hold(already)
    if plate + adjustment <= 0:
        raise OutOfRangeError("the adjustment takes away the whole charge")
    return plate + adjustment - already


@stated(TOTAL)
def total_disagrees(
    parts: tuple[float, ...], printed: float, last_digit: float
) -> float | None:
    """Return by how much a table's entries miss its printed total.

    Parameters
    ----------
    parts : tuple of float
        The entries, [kg].
    printed : float
        The total as printed, [kg].
    last_digit : float
        One count of the last digit printed, [kg].

    Returns
    -------
    float or None
        Sum less printed total where rounding does not explain it, [kg].

    Raises
    ------
    OutOfRangeError
        Without entries, or outside the limits.

    Examples
    --------
    >>> total_disagrees((2.3, 0.4, 0.35), 3.05, 0.01) is None
    True
    >>> total_disagrees((2.3, 0.4, 0.35), 3.15, 0.01)
    -0.1
    """
    if not parts:
        raise OutOfRangeError("a table without entries has no sum")
    for part in (*parts, printed):
        PARTS.hold(part)
    PRINTED.hold(last_digit)
    apart = sum(parts) - printed
    allowed = (len(parts) + 1) * last_digit / 2
    return None if abs(apart) <= allowed + 1e-12 else apart
