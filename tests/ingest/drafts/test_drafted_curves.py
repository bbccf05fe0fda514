"""R/T tables as drafts: misread figures show by their own curve, none is mended."""

from __future__ import annotations

import math
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ingest.drafts.curve_checks import (
    degree_as_zero,
    off_the_curve,
    restarts,
    wrong_turns,
)
from ingest.drafts.model import DraftRow
from tests.drafted import by_id, drafted

TITLE = "Resistance of the discharge sensor RT3"
SOUND = [
    ("0", "168"),
    ("10", "101"),
    ("20", "62.7"),
    ("30", "40.2"),
    ("40", "26.5"),
    ("50", "17.9"),
]
"""R = 50 kohm at 25 °C and B = 3950 K, by R = R0 exp(B (1/T - 1/T0)), rounded."""


def curve(
    rows: Sequence[Sequence[str]], head: Sequence[str] = ("°C", "RT3 kohm")
) -> dict[str, DraftRow]:
    return by_id(drafted(TITLE, (head, rows)))


def test_a_sound_table_has_no_doubts() -> None:
    rows = curve(SOUND)

    assert [row.doubts for row in rows.values()] == [{}] * 7
    assert rows["rt3"].fields == {
        "kind": "resistance_table",
        "name": "RT3",
        "role": "discharge",
        "table": "rt3.csv",
    }
    assert rows["rt3:20"].fields == {"temperature": "20 °C", "resistance": "62.7 kohm"}


def test_a_degree_sign_read_as_zero_is_flagged_and_never_mended() -> None:
    rows = curve([*SOUND[:3], ("250", "50.0"), *SOUND[3:]])

    assert "degree" in rows["rt3:250"].doubts
    assert rows["rt3:250"].fields["temperature"] == "250 °C"
    assert not any(row.doubts for name, row in rows.items() if name != "rt3:250")


def test_turned_digits_are_off_the_curve() -> None:
    rows = curve([*SOUND[:4], ("40", "62.5"), SOUND[5]])

    assert {"order", "smooth"} <= set(rows["rt3:40"].doubts)


def test_a_figure_a_little_off_is_found_by_smoothness_alone() -> None:
    rows = curve([*SOUND[:3], ("30", "44.2"), *SOUND[4:]])

    assert set(rows["rt3:30"].doubts) == {"smooth"}


def test_resistance_that_rises_is_a_doubt_of_the_sensor() -> None:
    rising = [
        (warm, ohm) for (warm, _), (_, ohm) in zip(SOUND, SOUND[::-1], strict=True)
    ]

    assert "rising" in curve(rising)["rt3"].doubts


def test_tables_side_by_side_restart_and_go_on_from_each_other() -> None:
    pairs = [(*left, *right) for left, right in zip(SOUND[:3], SOUND[3:], strict=True)]

    rows = curve(pairs, ("°C", "RT3 kohm", "°C", "RT3 kohm"))

    assert [name for name in rows if name.startswith("rt3:")] == [
        f"rt3:{warm}" for warm, _ in SOUND
    ]
    assert not any(row.doubts for row in rows.values())


def test_a_second_table_merged_below_starts_anew_with_a_doubt() -> None:
    rows = drafted(TITLE, (("°C", "RT3 kohm"), [*SOUND, *SOUND]))

    sensors = [row for row in rows if row.file == "sensors"]
    assert [("sensor" in row.doubts) for row in sensors] == [False, True]
    assert len({row.file for row in rows if row.is_point}) == 2


@pytest.mark.parametrize(
    ("head", "doubt"),
    [
        (("°C", "RT3 resistance"), "resistance_unit"),
        (("T", "RT3 kohm"), "temperature_unit"),
    ],
)
def test_a_unit_that_is_not_printed_is_a_doubt(
    head: tuple[str, str], doubt: str
) -> None:
    rows = curve(SOUND, head)

    points = [row for row in rows.values() if row.is_point]
    assert points
    assert all(set(row.doubts) == {doubt} for row in points)


def test_a_unit_in_the_title_is_the_unit_of_the_column() -> None:
    rows = by_id(
        drafted(
            "Resistance of the discharge sensor in kohm",
            (("°C", "RT3 resistance"), SOUND),
        )
    )

    assert rows["rt3:20"].fields["resistance"] == "62.7 kohm"


@pytest.mark.parametrize("cell", ["", "4O.2", "40,2", "about 40"])
def test_a_figure_that_is_no_number_is_a_doubt(cell: str) -> None:
    rows = curve([*SOUND[:3], ("30", cell), *SOUND[4:]])

    assert set(rows["rt3:30"].doubts) == {"resistance"}
    assert "resistance" not in rows["rt3:30"].fields


def test_a_sensor_whose_role_is_not_said_is_a_doubt() -> None:
    rows = by_id(drafted("Table 9", (("°C", "RT3 kohm"), SOUND)))

    assert "role" in rows["rt3"].doubts


def test_a_temperature_no_such_sensor_has_is_a_doubt() -> None:
    rows = curve([*SOUND, ("500", "0.01")])

    assert "range" in rows["rt3:500"].doubts


def test_two_resistances_at_one_temperature_need_their_condition() -> None:
    rows = drafted(
        TITLE, (("°C", "RT3 kohm"), [*SOUND[:3], ("20", "66.0"), *SOUND[3:]])
    )

    doubtful = [row for row in rows if "condition" in row.doubts]
    assert [row.fields["temperature"] for row in doubtful] == ["20 °C", "20 °C"]


def ohms(beta: float, kelvins: Sequence[float]) -> list[float]:
    """R = 10 kohm exp(B (1/T - 1/298.15)): the B equation, rounded to three digits."""
    exact = [1e4 * math.exp(beta * (1 / kelvin - 1 / 298.15)) for kelvin in kelvins]
    return [float(f"{value:.3g}") for value in exact]


betas = st.floats(3000, 4500)
steps = st.sampled_from([2, 5, 10])


@given(betas, steps, st.integers(5, 15))
def test_a_curve_rounded_to_three_digits_is_never_off(
    beta: float, step: int, many: int
) -> None:
    kelvins = [263.15 + step * n for n in range(many)]

    assert off_the_curve(kelvins, ohms(beta, kelvins)) == []
    assert wrong_turns(ohms(beta, kelvins)) == []


@given(betas, steps, st.integers(6, 15), st.data(), st.sampled_from([0.7, 1.4]))
def test_one_misread_figure_inside_a_curve_is_found(
    beta: float, step: int, many: int, data: st.DataObject, factor: float
) -> None:
    kelvins = [263.15 + step * n for n in range(many)]
    place = data.draw(st.integers(1, many - 2))
    values = ohms(beta, kelvins)
    values[place] *= factor

    assert off_the_curve(kelvins, values) == [place]


@given(st.lists(st.integers(-40, 120), min_size=3, max_size=12, unique=True), st.data())
def test_a_zero_put_behind_one_temperature_is_found_where_it_is_out_of_order(
    values: list[int], data: st.DataObject
) -> None:
    ordered = sorted(values)
    place = data.draw(st.integers(0, len(ordered) - 2))
    spoilt = [float(value) for value in ordered]
    spoilt[place] *= 10
    if spoilt[place] <= spoilt[place + 1]:
        return

    assert degree_as_zero(spoilt) == [place]
    assert restarts(spoilt, degree_as_zero(spoilt)) == []
