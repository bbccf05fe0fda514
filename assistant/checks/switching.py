"""Contacts: open or closed by their resistance, and by the pressure on them."""

from __future__ import annotations

from typing import Literal

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

CONTACT = Limit("contact resistance", 0.0, 1e12, "ohm")
PRESSURE = Limit("pressure at the switch", -101325.0, 6e6, "PaG")
CLOSED_BELOW = 2.0
OPEN_ABOVE = 1e6
State = Literal["open", "closed", "neither"]
Expected = Literal["open", "closed", "either"]

CONTACTS = Law(
    name="state of a contact",
    formula="closed: R <= 2 ohm; open: OL or R >= 1 Mohm; neither: between",
    source="common practice, no source; the document's own figure comes first",
    limits=(CONTACT,),
    note="Both wires off: what lies beside a contact reads as well.",
)
SWITCH = Law(
    name="pressure switch",
    formula=(
        "high-pressure: open from p_open up, closed up to p_close; low-pressure: open "
        "up to p_open, closed from p_close up; between: either, by its history"
    ),
    source="working of a switch with a difference; both pressures are the document's",
    limits=(PRESSURE,),
    note="The pressure is read at the switch's own port, with the uncertainty of it.",
)


@stated(CONTACTS)
def contact_state(resistance: float | None) -> State:
    """Return whether a contact is open, closed, or neither.

    Parameters
    ----------
    resistance : float or None
        Across it; None for OL, [ohm].

    Returns
    -------
    str
        ``open``, ``closed`` or ``neither``, [1].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> contact_state(0.3), contact_state(None), contact_state(45.0)
    ('closed', 'open', 'neither')
    """
    if resistance is None:
        return "open"
    CONTACT.hold(resistance)
    if resistance <= CLOSED_BELOW:
        return "closed"
    return "open" if resistance >= OPEN_ABOVE else "neither"


@stated(SWITCH)
def switch_expected(
    pressure: float, opens: float, closes: float, spread: float = 0.0
) -> Expected:
    """Return the state that a pressure switch must have.

    Parameters
    ----------
    pressure : float
        At the switch, gauge, [PaG].
    opens : float
        Where it opens; above `closes` for a high-pressure switch, [PaG].
    closes : float
        Where it closes again, [PaG].
    spread : float
        U (k = 2) of the pressure with the switch's own tolerance, [PaG].

    Returns
    -------
    str
        ``open``, ``closed``, or ``either`` between the two, [1].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or when it opens and closes at one pressure.

    Examples
    --------
    >>> switch_expected(4.3e6, opens=4.15e6, closes=3.2e6)
    'open'
    >>> switch_expected(1.0e6, opens=4.15e6, closes=3.2e6)
    'closed'
    """
    for one in (pressure, opens, closes):
        PRESSURE.hold(one)
    if opens == closes:
        raise OutOfRangeError("a switch opens and closes at two pressures")
    high = opens > closes
    sign = 1.0 if high else -1.0
    beyond = sign * (pressure - opens)
    before = sign * (closes - pressure)
    if beyond >= spread:
        return "open"
    return "closed" if before >= spread else "either"
