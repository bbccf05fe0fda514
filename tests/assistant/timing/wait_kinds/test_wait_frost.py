"""Defrosts: what begins, ends and follows one, by hand."""

from __future__ import annotations

from datetime import timedelta

import pytest

from assistant.timing.defrosts import after_defrost, entry_parts, row_for
from assistant.timing.values import Known
from assistant.timing.wait_kinds.frost import Defrost
from assistant.units.parse import parse_quantity
from tests.wait_rows import NOON, happened, minutes
from tests.waits_told import of_kind, standing, value


def test_a_defrost_ends_by_value_or_by_time() -> None:
    told = [happened("defrost_started", 0)]
    warm = Known(values=(value("outdoor coil temperature", "14 degC", 4),))
    cold = Known(values=(value("outdoor coil temperature", "2 degC", 4),))

    assert standing("defrost", told, 5) == "running"
    assert standing("defrost", told, 5, warm) == "ready"
    assert standing("defrost", told, 5, cold) == "running"
    assert standing("defrost", told, 11.1, cold) == "overdue"
    assert standing("defrost", [*told, happened("defrost_ended", 6)], 7) is None


def test_after_a_defrost_its_parts_follow_and_the_next_keeps_its_interval() -> None:
    told = [happened("defrost_started", 0), happened("defrost_ended", 6)]

    (after,) = after_defrost([of_kind("defrost")], told)

    second = timedelta(seconds=1)
    end = NOON + minutes(6)
    assert after.next_at == end + minutes(35)
    assert after.parts == (
        ("dripping off", end + 40 * second, end + 40 * second),
        ("compressor", end + 60 * second, end + 70 * second),
    )
    again = [*told, happened("defrost_started", 50)]
    assert after_defrost([of_kind("defrost")], again) == ()


@pytest.mark.parametrize(
    ("coil", "ambient", "run", "met"),
    [
        # Above freezing the table asks -5 degC; 7 K under the outdoor air.
        ("-6 degC", "2 degC", 60, (True, True, True)),
        ("-4 degC", "2 degC", 60, (True, False, False)),
        # Below freezing it asks -11 degC and 80 min.
        ("-12 degC", "-3 degC", 60, (True, True, False)),
        ("-12 degC", "-3 degC", 90, (True, True, True)),
        ("-6 degC", None, 40, (False, None, None)),
        (None, None, None, (None, None, None)),
    ],
)
def test_what_lets_a_defrost_begin_is_judged_by_what_was_told(
    coil: str | None,
    ambient: str | None,
    run: int | None,
    met: tuple[bool | None, ...],
) -> None:
    frost = of_kind("defrost").wait
    assert isinstance(frost, Defrost)
    assert frost.entry is not None
    read = [value("outdoor coil temperature", coil, 0)] if coil else []
    read += [value("outdoor temperature", ambient, 0)] if ambient else []

    parts = entry_parts(frost.entry, read, minutes(run) if run else None)

    assert tuple(part.met for part in parts) == met


def test_a_line_of_the_entry_table_holds_from_its_lower_end_on() -> None:
    frost = of_kind("defrost").wait
    assert isinstance(frost, Defrost)
    assert frost.entry is not None

    at_zero = row_for(frost.entry, parse_quantity("0 degC"))

    assert at_zero is frost.entry.table[0]


def test_ice_is_melted_after_heating_was_stopped() -> None:
    told = [happened("call_ended", 0)]
    warm = Known(values=(value("outdoor coil temperature", "9 degC", 2),))

    assert standing("off_defrost", told, 3) == "running"
    assert standing("off_defrost", told, 3, warm) == "ready"
    assert standing("off_defrost", told, 6.1) == "overdue"
