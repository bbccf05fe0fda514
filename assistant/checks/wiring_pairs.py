"""Which terminals a field cable joins, against the wiring table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

TERMINALS = Limit("terminals of a wiring table", 1.0, 64.0, "1")
Fault = Literal["open", "swapped", "wrong", "shorted"]

PAIRS = Law(
    name="wiring table",
    formula=(
        "open: joined to nothing; swapped: two ends exchanged; wrong: joined to "
        "another; shorted: joined to more than one"
    ),
    source="the document's table of terminal pairs; the words are this project's",
    limits=(TERMINALS,),
    note=(
        "Continuity with every supply isolated and both ends off their terminals, one "
        "pair at a time."
    ),
)


@dataclass(frozen=True, slots=True)
class WiringFault:
    """One thing that a cable does other than its table."""

    fault: Fault
    terminals: tuple[str, ...]


@stated(PAIRS)
def wiring_faults(
    table: Mapping[str, str], found: Mapping[str, tuple[str, ...]]
) -> tuple[WiringFault, ...]:
    """Return where a cable differs from the wiring table.

    Parameters
    ----------
    table : mapping of str to str
        Terminal of one end to the terminal it belongs on, [1].
    found : mapping of str to tuple of str
        Terminal of the first end to all it rings to at the other, [1].

    Returns
    -------
    tuple of WiringFault
        By terminal; empty when all are as the table has them, [1].

    Raises
    ------
    OutOfRangeError
        For an empty table, or a terminal that was not rung out.

    Examples
    --------
    >>> wiring_faults({"1": "1", "2": "2"}, {"1": ("2",), "2": ("1",)})[0]
    WiringFault(fault='swapped', terminals=('1', '2'))
    """
    TERMINALS.hold(float(len(table)))
    unread = sorted(set(table) - set(found))
    if unread:
        raise OutOfRangeError(
            f"terminal {', '.join(unread)} was not rung out", "read every terminal"
        )
    faults: list[WiringFault] = []
    swapped: set[str] = set()
    for near in sorted(table):
        ends = found[near]
        if near in swapped or ends == (table[near],):
            continue
        partner = _partner(table, found, near)
        if partner is not None:
            swapped.add(partner)
            faults.append(WiringFault("swapped", (near, partner)))
        else:
            faults.append(WiringFault(_one(ends), (near, *ends)))
    return tuple(faults)


def _one(ends: tuple[str, ...]) -> Fault:
    if not ends:
        return "open"
    return "shorted" if len(ends) > 1 else "wrong"


def _partner(
    table: Mapping[str, str], found: Mapping[str, tuple[str, ...]], near: str
) -> str | None:
    """Return the terminal whose end was exchanged with that of `near`."""
    for other in sorted(table):
        if (
            other != near
            and found[near] == (table[other],)
            and found[other] == (table[near],)
        ):
            return other
    return None


SPLICE = Law(
    name="conductors of one cable",
    formula="doubtful when R > 2 x the median of its siblings and R > 1 ohm",
    source="common practice, no source: conductors of one cable have one length",
    limits=(Limit("resistance of a conductor", 0.0, 1e5, "ohm"),),
    note="A poor splice, a crushed strand or a loose screw; a meter cannot tell which.",
)
_DOUBT, _FLOOR = 2.0, 1.0


@stated(SPLICE)
def doubtful_conductors(resistances: Mapping[str, float]) -> tuple[str, ...]:
    """Return the conductors that read well above their siblings.

    Parameters
    ----------
    resistances : mapping of str to float
        Each conductor of one cable, end to end, [ohm].

    Returns
    -------
    tuple of str
        Names, sorted, [1].

    Raises
    ------
    OutOfRangeError
        With fewer than three conductors, or outside the limits.

    Examples
    --------
    >>> doubtful_conductors({"1": 0.4, "2": 0.5, "3": 6.0})
    ('3',)
    """
    if len(resistances) < 3:  # noqa: PLR2004
        raise OutOfRangeError("siblings are compared from three conductors on")
    for value in resistances.values():
        SPLICE.limits[0].hold(value)
    found = []
    for name, value in sorted(resistances.items()):
        others = sorted(r for other, r in resistances.items() if other != name)
        median = others[len(others) // 2]
        if value > _FLOOR and value > _DOUBT * median:
            found.append(name)
    return tuple(found)
