"""Serials, build dates and versions: in the run, out of it, or not to be told."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.record import SerialRange, VersionRange
from assistant.rules.serials import (
    compare_built,
    compare_serial,
    compare_version,
    serial_form_known,
    serial_key,
    version_key,
)


@pytest.mark.parametrize(
    ("form", "serial", "place"),
    [
        ("YYWW", "2314-00871", (2023, 14)),
        ("YYWW", "A2314", (2023, 14)),
        ("YYWW", "A 23 14 0087", (2023, 14)),
        ("YYWW", "9914", (1999, 14)),
        ("WWYY", "1423", (2023, 14)),
        ("YYMM", "2304", (2023, 4)),
        ("YYYYWW", "202314", (2023, 14)),
        ("XYYWW", "72314", (2023, 14)),
        ("XYYWW", "K2314", (2023, 14)),
        ("YYL", "23D0042", (2023, 4)),
        ("LYY", "D23", (2023, 4)),
        ("YYYYL", "2023L", (2023, 12)),
        # Signs that cannot be a date in the format decide nothing.
        ("YYWW", "2354", None),
        ("YYWW", "2300", None),
        ("YYMM", "2313", None),
        ("YYWW", "23A4", None),
        ("YYWW", "231", None),
        ("YYWW", "K7X2314", None),
        ("YYL", "23M0042", None),
        ("YYL", "2304", None),
        ("YYDD", "2314", None),
    ],
)
def test_a_serial_is_read_by_its_format(
    form: str, serial: str, place: tuple[int, int] | None
) -> None:
    assert serial_key(SerialRange(format=form), serial) == place


def test_month_letters_are_as_the_maker_has_them() -> None:
    skips_i = SerialRange(format="YYL", letters="ABCDEFGHJKLM")

    assert serial_key(skips_i, "23J") == (2023, 9)
    assert serial_key(skips_i, "23I") is None


def test_a_stated_prefix_must_stand_before_the_date() -> None:
    stated = SerialRange(prefix="QX-", first="QX-2314")

    assert compare_serial(stated, "QX2401077") == "confirmed"
    assert compare_serial(stated, "QX2301077") == "excluded"
    assert compare_serial(stated, "2301077") == "possible"
    assert compare_serial(stated, "ZX2301077") == "possible"


@pytest.mark.parametrize(
    ("serial", "verdict"),
    [
        ("QX0012000", "confirmed"),
        ("qx 0013999", "confirmed"),
        ("QX0011999", "excluded"),
        ("QX0014000", "excluded"),
        # Another prefix, a sign too few, a letter behind: not of this format.
        ("QZ0012000", "possible"),
        ("QX12000", "possible"),
        ("QX0012000B", "possible"),
        ("0012000", "possible"),
        ("worn off", "possible"),
    ],
)
def test_plain_numbers_rise_behind_their_prefix(serial: str, verdict: str) -> None:
    run = SerialRange(
        format="NUMBER", prefix="QX", first="QX0012000", before="QX0014000"
    )

    assert compare_serial(run, serial) == verdict


def test_numbers_without_leading_zeros_may_grow_longer() -> None:
    run = SerialRange(format="NUMBER", first="9500", last="12000")

    assert compare_serial(run, "10400") == "confirmed"
    assert compare_serial(run, "9400") == "excluded"
    assert compare_serial(run, "09600") == "possible"


def test_prior_to_leaves_its_own_week_out_and_up_to_keeps_it() -> None:
    prior, up_to = SerialRange(before="2314"), SerialRange(last="2314")

    assert compare_serial(prior, "2313") == "confirmed"
    assert compare_serial(prior, "2314") == "excluded"
    assert compare_serial(up_to, "2314") == "confirmed"


@given(st.text(alphabet="ABQX0123456789- ", max_size=12), st.sampled_from(["YYWW"]))
def test_a_serial_that_does_not_fit_is_never_excluded(serial: str, form: str) -> None:
    run = SerialRange(format=form, first="2314", before="2320")

    if serial_key(run, serial) is None:
        assert compare_serial(run, serial) == "possible"


@given(
    st.dates(date(2000, 1, 3), date(2049, 12, 20)),
    st.dates(date(2000, 1, 3), date(2049, 12, 20)),
)
def test_weeks_are_ordered_as_the_calendar_has_them(one: date, other: date) -> None:
    first, second = (day.isocalendar() for day in (one, other))
    run = SerialRange(format="WWYY", first=f"{first.week:02d}{first.year % 100:02d}")

    verdict = compare_serial(run, f"{second.week:02d}{second.year % 100:02d}")

    later = (second.year, second.week) >= (first.year, first.week)
    assert verdict == ("confirmed" if later else "excluded")


@pytest.mark.parametrize(
    ("form", "first", "built", "verdict"),
    [
        ("YYWW", "2314", "2023-W14", "confirmed"),
        ("YYWW", "2314", "2023-W13", "excluded"),
        ("YYWW", "2314", "2024", "confirmed"),
        ("YYWW", "2314", "2022", "excluded"),
        ("YYWW", "2314", "2023", "possible"),
        # Week 14 of 2023 began on 3 April (ISO 8601 calendar, worked out by hand).
        ("YYWW", "2314", "2023-04", "possible"),
        ("YYWW", "2314", "2023-05", "confirmed"),
        ("YYMM", "2304", "2023-W14", "confirmed"),
        ("YYMM", "2304", "2023-W12", "excluded"),
        ("YYL", "23D", "2023-03", "excluded"),
        ("NUMBER", "9500", "2023", "possible"),
        ("YYWW", "2314", "lately", "possible"),
        # No such month, week or year; 2022 has 52 weeks (ISO 8601 calendar).
        ("YYMM", "2304", "2023-99", "possible"),
        ("YYMM", "2304", "2023-00", "possible"),
        ("YYWW", "2314", "2022-W53", "possible"),
        ("YYWW", "2314", "0000", "possible"),
        ("YYWW", "2314", "0000-W01", "possible"),
        ("YYMM", "2304", "9999-12", "confirmed"),
        ("YYWW", "2314", "9999-W52", "possible"),
    ],
)
def test_a_build_date_is_compared_with_a_run_of_dates(
    form: str, first: str, built: str, verdict: str
) -> None:
    assert compare_built(SerialRange(format=form, first=first), built) == verdict


@pytest.mark.parametrize(
    ("told", "verdict"),
    [
        ("2.1", "confirmed"),
        ("v2.10", "confirmed"),
        ("2.09", "confirmed"),
        ("2.0", "excluded"),
        ("3.0", "excluded"),
        ("3.0.1", "excluded"),
        ("2.99.4", "confirmed"),
        ("2", "possible"),
        ("1", "excluded"),
        ("blue", "possible"),
    ],
)
def test_versions_are_compared_part_by_part(told: str, verdict: str) -> None:
    run = VersionRange(first="2.1", before="3.0")

    assert compare_version(run, told) == verdict


def test_a_version_letter_comes_after_none() -> None:
    assert version_key("1.4") < version_key("1.4a") < version_key("1.4b")  # type: ignore[operator]
    assert version_key("") is None


@pytest.mark.parametrize("form", ["", "YY", "WW", "YYWWMM", "YWW", "YWYW", "YYZZ"])
def test_a_format_that_no_one_can_read_is_not_known(form: str) -> None:
    assert not serial_form_known(form)
