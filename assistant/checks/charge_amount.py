"""How much refrigerant the line set adds to the charge of the plate."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, stated

LENGTH = Limit("line length", 0.0, 300.0, "m")
RATE = Limit("charge per length", 0.0, 0.5, "kg/m")

LINE_SET = Law(
    name="charge of the line set",
    formula="add = (L - L free) rate; shorter than L free: 0, or taken out",
    source="as makers print it: a rate for each liquid size beyond a free length",
    limits=(LENGTH, RATE),
    note=(
        "The rate belongs to the refrigerant, the liquid size and the model: from "
        "the document only. Whether a short line set gives charge back, it says too."
    ),
)


@stated(LINE_SET)
def line_set_charge(length: float, free: float, rate: float, *, gives: bool) -> float:
    """Return what a line set adds to the charge of the plate.

    Parameters
    ----------
    length : float
        One way, of the liquid line, [m].
    free : float
        Length that the plate's charge covers, [m].
    rate : float
        Of the liquid size, [kg/m].
    gives : bool
        Whether the document takes charge out for a shorter line, [name].

    Returns
    -------
    float
        To add, [kg]; negative is to recover.

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    R-32, 1/4 in. liquid at 12 g/m, 12 m with 7.5 m free: 54 g.

    >>> round(line_set_charge(12.0, 7.5, 0.012, gives=False), 3)
    0.054
    """
    LENGTH.hold(length)
    LENGTH.hold(free)
    RATE.hold(rate)
    amount = (length - free) * rate
    return amount if gives else max(0.0, amount)
