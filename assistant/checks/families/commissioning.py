"""The named checks of commissioning: nitrogen, vacuum, weight, pressure tables."""

from __future__ import annotations

from assistant.checks.comparing import because, compare, shown
from assistant.checks.entry import NamedCheck, required
from assistant.checks.evacuation import CLASSES, EVACUATION, evacuation_level
from assistant.checks.families.asking import More, choice, figure, flag, refused
from assistant.checks.grid import GRID, Cells, from_grid
from assistant.checks.inputs import SERIES, TEXT, Input, Values
from assistant.checks.instruments import gauge_bound
from assistant.checks.nitrogen import GAS, nitrogen_by_rule, nitrogen_pressure
from assistant.checks.report import CheckReport
from assistant.checks.uncertainty import expanded
from assistant.checks.vacuum import DECAY, decay
from assistant.checks.weigh_in import TOTAL, WEIGH_IN, left_to_charge, total_disagrees
from assistant.errors import UsageError
from assistant.units.parse import parse_quantity

THERMOMETER = 1.0
"""Error of a thermometer that is not told, kelvin: common practice, no source."""


def nitrogen_test(values: Values) -> CheckReport:
    """Return the pressure that a tight system has now, and the verdict of a gauge."""
    name = "nitrogen-test"
    start, t1, t2 = (values.number(key) for key in ("start", "t_start", "t_end"))
    air = values.number("air")
    expected = nitrogen_pressure(start, t1, t2, air)
    beside = ""
    if values.has("rule"):
        ruled = nitrogen_by_rule(start, t1, t2, values.number("rule"))
        beside = f"by the maker's rule {shown(ruled, 'PaG')}"
    if not values.has("end"):
        return figure(name, GAS, expected, "PaG", beside, expected=expected)
    end = values.number("end")
    if not (values.has("full_scale") and values.has("gauge_class")):
        reason = because("the gauge's class and full scale are not told", beside)
        return refused(
            name, GAS, "PaG", reason, "the gauge's class", value=end, expected=expected
        )
    a = gauge_bound(values.number("full_scale"), values.number("gauge_class") * 100)
    slope = (start + air) / t1
    u = expanded(a, a, slope * THERMOMETER, slope * THERMOMETER)
    base: More = {"expected": expected, "uncertainty": u}
    if values.has("allowed"):
        low = expected - values.number("allowed")
        base["low"] = low
        base["result"], reason = compare(end, low, None, u, "PaG")
        reason = because(reason, "the document's allowed fall, after its whole time")
        return figure(name, GAS, end, "PaG", because(reason, beside), **base)
    base["result"] = "fail" if end < expected - u else "inconclusive"
    reason = (
        f"it fell {shown(expected - end, 'PaG')} below what the temperature explains, "
        "more than the tools allow for: find the leak"
    )
    if end > expected + u:
        reason = "it rose beyond temperature and gauge: read both again"
    elif base["result"] == "inconclusive":
        reason = (
            "no fall beyond temperature and gauge: a leak of less than "
            f"{shown(u, 'PaG')} in this time would not show; the document's allowed "
            "fall and time, and soap, decide"
        )
    return figure(name, GAS, end, "PaG", because(reason, beside), **base)


def vacuum_decay(values: Values) -> CheckReport:
    """Return how a vacuum moved, and its verdict by the document's target and time."""
    name, points = "vacuum-decay", values.points("readings")
    last = max(points)
    if values.yes("isolated") is not True:
        reason = "with the pump on, the pressure says nothing about the system"
        return refused(
            name, DECAY, "Pa", reason, "isolated from the pump", value=last[1]
        )
    still = values.number("gauge_error") if values.has("gauge_error") else 0.0
    moved = decay(points, still)
    seen = f"it is {_MOVES[moved]} (common practice, no source)"
    lacks = tuple(
        words
        for key, words in (
            ("target", "the document's target"),
            ("hold", "the document's time"),
        )
        if not values.has(key)
    )
    if lacks:
        reason = f"{seen}; a low pressure after some minutes is no pass by itself"
        return refused(name, DECAY, "Pa", reason, *lacks, value=last[1])
    target, hold = values.number("target"), values.number("hold")
    if last[0] < hold:
        reason = f"{seen}; the document's {shown(hold, 's')} are not over"
        return refused(
            name, DECAY, "Pa", reason, "the whole time", value=last[1], high=target
        )
    u = expanded(still)
    result, why = compare(last[1], None, target, u, "Pa")
    if result == "pass" and moved == "rising":
        result = "inconclusive"
        why = because(why, "still rising: wait for it to flatten or to pass the target")
    return figure(
        name,
        DECAY,
        last[1],
        "Pa",
        because(why, seen),
        high=target,
        result=result,
        uncertainty=u,
    )


_MOVES = {
    "steady": "steady",
    "flattening": "flattening, which points to moisture or oil boiling off",
    "rising": "rising on, which points to a leak",
}


def evacuation(values: Values) -> CheckReport:
    """Return the level to evacuate to before an appliance is opened."""
    name, kind = "evacuation-level", values.word("pressure_class")
    level = evacuation_level(
        kind or "", values.number("charge"), values.word("machine") or "since"
    )
    reason = "for a licensed person; recover, never vent; the refrigerant's class by "
    reason += "its own list"
    return figure(name, EVACUATION, level, "PaG", reason)


def weigh_in(values: Values) -> CheckReport:
    """Return what is still to be weighed in."""
    left = left_to_charge(
        values.number("plate"),
        values.number("adjustment"),
        values.number("already") if values.has("already") else 0.0,
    )
    reason = "too much is in: recover it" if left < 0 else "by weight, on a scale"
    return figure("weigh-in", WEIGH_IN, left, "kg", reason)


def charge_table(values: Values) -> CheckReport:
    """Return whether a charge table adds up; one that does not charges nothing."""
    name, printed = "charge-table", values.number("total")
    parts = tuple(one.value for one in values.many("parts"))
    apart = total_disagrees(parts, printed, values.number("last_digit"))
    if apart is None:
        return figure(name, TOTAL, printed, "kg", "the table adds up", result="pass")
    reason = (
        f"its entries make {shown(sum(parts), 'kg')} and it prints "
        f"{shown(printed, 'kg')}: the table contradicts itself, so neither is used; "
        "the unit's plate decides"
    )
    return refused(name, TOTAL, "kg", reason, "charge on the unit's plate")


def pressure_table(values: Values) -> CheckReport:
    """Return the pressure of a table with two temperatures, and a verdict."""
    name = "pressure-table"
    if values.yes("fixed_speed") is not True:
        reason = "the table holds at the fixed speed that the document sets"
        return refused(name, GRID, "PaG", reason, "fixed speed")
    rows = tuple(one.value for one in values.many("rows"))
    columns = tuple(one.value for one in values.many("columns"))
    cells = _cells(values.word("cells") or "")
    expected = from_grid(
        rows, columns, cells, values.number("row"), values.number("column")
    )
    if not values.has("reading"):
        return figure(name, GRID, expected, "PaG", expected=expected)
    lacks = [
        key for key in ("tolerance", "full_scale", "gauge_class") if not values.has(key)
    ]
    reading = values.number("reading")
    if lacks:
        words = ", ".join(key.replace("_", " ") for key in lacks)
        return refused(
            name,
            GRID,
            "PaG",
            f"not told: {words}",
            *lacks,
            value=reading,
            expected=expected,
        )
    spread = values.number("tolerance")
    low, high = expected - spread, expected + spread
    u = expanded(
        gauge_bound(values.number("full_scale"), values.number("gauge_class") * 100)
    )
    result, why = compare(reading, low, high, u, "PaG")
    why = because(why, "one pressure alone does not tell the charge")
    return figure(
        name,
        GRID,
        reading,
        "PaG",
        why,
        expected=expected,
        low=low,
        high=high,
        result=result,
        uncertainty=u,
    )


def _cells(text: str) -> Cells:
    """Read ``0.80 MPa, 0.85 MPa | -, 0.95 MPa``: a row each, ``-`` for a blank."""
    lines = [line.strip() for line in text.split("|")]
    try:
        return tuple(
            tuple(
                None if cell.strip() == "-" else _gauge(cell)
                for cell in line.split(",")
            )
            for line in lines
        )
    except ValueError as error:
        raise UsageError(
            f"check 'pressure-table': cells: {error}",
            "write cells='0.80 MPa, 0.85 MPa | -, 0.95 MPa'",
        ) from error


def _gauge(text: str) -> float:
    value = parse_quantity(text)
    if value.unit != "PaG":
        raise ValueError(f"{text.strip()!r} is not a gauge pressure")
    return value.value


_GAUGE = (
    Input("full_scale", "pressure, gauge", "5.5 MPa", "of the gauge"),
    Input("gauge_class", "ratio", "1 %", "of its full scale"),
)

NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "nitrogen-test",
        "a nitrogen test at another temperature, by the gas law, beside a maker's rule",
        GAS,
        (
            required("start", "pressure, gauge", "3.8 MPa", "when it was shut in"),
            required("t_start", "temperature", "27 °C", "of the pipes then"),
            required("t_end", "temperature", "20 °C", "of the pipes now"),
            Input("end", "pressure, gauge", "3.71 MPa", "now"),
            Input(
                "rule", "pressure, gauge", "0.01 MPa", "the maker's, for each kelvin"
            ),
            Input("allowed", "pressure, gauge", "0.02 MPa", "fall the document allows"),
            Input(
                "air",
                "pressure, absolute",
                "101.325 kPaA",
                "around the gauge",
                default="101.325 kPaA",
            ),
            *_GAUGE,
        ),
        nitrogen_test,
    ),
    NamedCheck(
        "vacuum-decay",
        "how a vacuum moves with the pump shut off, by the document's target and time",
        DECAY,
        (
            required(
                "readings",
                SERIES,
                "0 min: 300 micron; 10 min: 380 micron; 20 min: 400 micron",
                "time since shut off, and pressure",
            ),
            flag("isolated", "whether the pump was shut off by a valve"),
            Input("target", "pressure, absolute", "500 micron", "of the document"),
            Input("hold", "time", "20 min", "of the document"),
            Input("gauge_error", "pressure, absolute", "15 micron", "of the gauge"),
        ),
        vacuum_decay,
    ),
    NamedCheck(
        "evacuation-level",
        "level to evacuate to before an appliance is opened (United States)",
        EVACUATION,
        (
            Input(
                "pressure_class",
                "word",
                "high",
                "of the refrigerant",
                required=True,
                choices=CLASSES,
            ),
            required("charge", "mass", "3.2 kg", "full charge of the appliance"),
            choice(
                "machine",
                "recovery machine made before, or since, 15 November 1993",
                "since",
                "before",
                default="since",
            ),
        ),
        evacuation,
    ),
    NamedCheck(
        "weigh-in",
        "what is still to be weighed in",
        WEIGH_IN,
        (
            required("plate", "mass", "1.25 kg", "charge on the unit's plate"),
            required("adjustment", "mass", "54 g", "of the document, for the line set"),
            Input("already", "mass", "0.9 kg", "weighed in so far"),
        ),
        weigh_in,
    ),
    NamedCheck(
        "charge-table",
        "whether a charge table adds up to the total it prints",
        TOTAL,
        (
            Input(
                "parts",
                "mass",
                "2.30; 0.40; 0.35 kg",
                "its entries",
                required=True,
                many=True,
            ),
            required("total", "mass", "3.05 kg", "as printed"),
            required("last_digit", "mass", "0.01 kg", "one count of the last digit"),
        ),
        charge_table,
    ),
    NamedCheck(
        "pressure-table",
        "a pressure of the document's table with two temperatures",
        GRID,
        (
            Input(
                "rows",
                "temperature",
                "25 °C; 35 °C",
                "of the rows, rising",
                required=True,
                many=True,
            ),
            Input(
                "columns",
                "temperature",
                "20 °C; 27 °C",
                "of the columns, rising",
                required=True,
                many=True,
            ),
            required(
                "cells",
                TEXT,
                "0.80 MPa, 0.95 MPa | 0.90 MPa, 1.05 MPa",
                "a row each, - for a blank",
            ),
            required("row", "temperature", "30 °C", "now"),
            required("column", "temperature", "24 °C", "now"),
            Input("reading", "pressure, gauge", "0.92 MPa", "at the document's port"),
            Input("tolerance", "pressure, gauge", "0.1 MPa", "of the document"),
            flag("fixed_speed", "whether the document's fixed speed is set"),
            *_GAUGE,
        ),
        pressure_table,
    ),
)
