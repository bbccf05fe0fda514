"""The named checks of the charge's amount: line set and room."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.charge_amount import LINE_SET, line_set_charge
from assistant.checks.comparing import shown
from assistant.checks.entry import NamedCheck, required
from assistant.checks.families.asking import choice, figure, refused
from assistant.checks.inputs import PAIRS, Input, Values
from assistant.checks.law import Law
from assistant.checks.report import CheckReport
from assistant.checks.room_area import (
    NO_LIMIT_FACTOR,
    ROOM,
    TABLE,
    area_from_table,
    largest_charge,
    smallest_area,
)

_OTHER = "other"
_REFUSED = (
    "the local code uses another rule (leak detection, airflow), which is not worked "
    "out here: take the maker's table, or ask the authority"
)


def line_set(values: Values) -> CheckReport:
    """Return what a line set adds to the plate's charge, or gives back."""
    length, free, rate = (values.number(key) for key in ("length", "free", "rate"))
    gives = values.word("shorter") == "taken out"
    found = line_set_charge(length, free, rate, gives=gives)
    reason = ""
    if length < free:
        reason = "shorter than the free length: the document " + (
            "takes charge out" if gives else "changes nothing"
        )
    return figure("line-set-charge", LINE_SET, found, "kg", reason)


def room_area(values: Values) -> CheckReport:
    """Return the smallest room for a charge, by the maker's table or the formula."""
    name, charge = "room-area", values.number("charge")
    if values.has("table"):
        area = area_from_table(charge, values.points("table"))
        return _against(name, values, area, TABLE)
    if values.word("rule") == _OTHER:
        return refused(name, ROOM, "m2", _REFUSED, "the maker's table")
    missing = tuple(key for key in ("lfl", "height") if not values.has(key))
    if missing:
        reason = f"the formula needs {', '.join(missing)} from the document"
        return refused(name, ROOM, "m2", reason, *missing)
    lfl, height = values.number("lfl"), values.number("height")
    area = smallest_area(charge, lfl, height)
    note = ""
    if area == 0:
        none = NO_LIMIT_FACTOR * lfl
        note = f"up to {shown(none, 'kg')} the rule asks for no room"
    report = _against(name, values, area, ROOM, note)
    if not values.has("area"):
        return report
    most = largest_charge(values.number("area"), lfl, height)
    return replace(report, also=(("largest charge of this room", most, "kg"),))


def _against(
    name: str, values: Values, area: float, law: Law, note: str = ""
) -> CheckReport:
    """Return the area asked for, and whether a room of a told area has it."""
    if not values.has("area"):
        return figure(name, law, area, "m2", note)
    told = values.number("area")
    enough = told >= area
    reason = f"{shown(told, 'm2')} against at least {shown(area, 'm2')}"
    return figure(
        name,
        law,
        told,
        "m2",
        note or f"{reason}; the maker and local code decide",
        low=area,
        result="pass" if enough else "fail",
        expected=area,
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "line-set-charge",
        "what the line set adds to the plate's charge",
        LINE_SET,
        (
            required("length", "length", "12 m", "of the liquid line, one way"),
            required("free", "length", "7.5 m", "covered by the plate's charge"),
            required(
                "rate",
                "mass per length",
                "12 g/m",
                "the document's, by liquid size",
            ),
            choice(
                "shorter",
                "what the document does for a shorter line",
                "nothing",
                "taken out",
                default="nothing",
            ),
        ),
        line_set,
    ),
    NamedCheck(
        "room-area",
        "room that a mildly flammable refrigerant needs",
        ROOM,
        (
            required("charge", "mass", "2.0 kg", "of the system, line set included"),
            Input("lfl", "density", "0.307 kg/m3", "of the document, never assumed"),
            Input("height", "length", "1.8 m", "0.6 floor, 1.0 window, 1.8 wall, 2.2"),
            Input("area", "area", "30 m2", "of the smallest room served"),
            Input(
                "table",
                PAIRS,
                "1.90 kg: 30.72 m2; 2.00 kg: 34.04 m2",
                "the maker's own, which outranks the formula",
            ),
            choice(
                "rule",
                "of the local code",
                "IEC 60335-2-40:2018",
                _OTHER,
                default="IEC 60335-2-40:2018",
            ),
        ),
        room_area,
    ),
)
"""The checks of this family."""
