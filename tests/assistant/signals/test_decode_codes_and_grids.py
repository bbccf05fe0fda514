"""Display codes, grids of lamps, and lamps read beside each other."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.signals.decode import decode
from assistant.signals.observation import Match, Observation
from tests.signal_rows import GREEN, TABLE, amber, grid, ids, row, window


def test_a_code_that_is_the_same_comes_before_one_that_only_looks_so() -> None:
    rows = [
        row("e-zero", "display_code", code="E0"),
        row("e-oh", "display_code", code="EO"),
        row("e-four", "display_code", code="E4"),
    ]

    match = decode([Observation(state="display", code="e0")], rows)

    assert ids(match) == ["e-zero", "e-oh"]
    assert match.verdict == "several"
    assert match.candidates[1].assumed == ("glyph",)
    assert match.question is not None
    assert match.question.slot == "code"


def test_a_code_that_looks_like_one_row_only_is_that_row() -> None:
    match = decode(
        [Observation(state="display", code="b6")],
        [row("sixty-six", "display_code", code="66")],
    )

    assert match.verdict == "exact"
    assert match.candidates[0].assumed == ("glyph",)
    assert match.candidates[0].weight == 1.0


@pytest.mark.parametrize("code", ["E40", "E", "4E", "F4"])
def test_a_code_is_never_brought_to_a_near_one(code: str) -> None:
    rows = [row("e-four", "display_code", code="E4")]

    match = decode([Observation(state="display", code=code)], rows)

    assert match.verdict == "none"
    assert match.reason == f"code {code}: not in this document"


def test_a_row_of_history_is_assumed_until_it_is_said_to_be_stored() -> None:
    rows = [row("old", "display_code", code="E4", stored=True)]

    def decoded(stored: bool | None) -> Match:
        seen = Observation(state="display", code="E4", stored=stored)
        return decode([seen], rows)

    assert decoded(None).candidates[0].assumed == ("stored",)
    assert decoded(True).candidates[0].assumed == ()
    assert decoded(False).verdict == "none"


def test_no_code_is_not_read_as_no_fault() -> None:
    match = decode([Observation(state="no_code")], TABLE)

    assert match.verdict == "not_decodable"
    assert "no code yet is not no fault" in match.reason


def test_several_lamps_are_read_together() -> None:
    rows = [
        grid("coil", run="on", timer="flash"),
        grid("room", run="on", timer="off"),
        row("running", "steady", lamp={"label": "run"}, is_fault=False),
    ]
    seen = [
        Observation(label=("run",), state="on"),
        Observation(label=("timer",), state="blink"),
    ]

    match = decode(seen, rows)

    assert match.verdict == "exact"
    assert ids(match) == ["coil"]


def test_a_part_of_the_lamps_lists_what_agrees_and_asks_for_the_lamp_that_splits() -> (
    None
):
    rows = [
        grid("coil", run="on", timer="flash", power="any"),
        grid("room", run="on", timer="off", power="any"),
        grid("link", run="off", timer="off", power="any"),
    ]

    match = decode([Observation(label=("run",), state="on")], rows)

    assert sorted(ids(match)) == ["coil", "room"]
    assert match.question is not None
    assert match.question.slot == "lamp:timer"
    assert [answer for answer, _ in match.question.options] == ["flash", "off"]


def test_a_grid_row_that_one_lamp_contradicts_is_out() -> None:
    rows = [grid("coil", run="on", timer="flash")]
    seen = [
        Observation(label=("run",), state="on"),
        Observation(label=("timer",), state="off"),
    ]

    assert decode(seen, rows).verdict == "none"


def test_a_counted_lamp_of_a_grid_is_compared_by_its_count() -> None:
    rows = [grid("two", run="on", timer="2"), grid("three", run="on", timer="3")]
    run = Observation(label=("run",), state="on")

    counted = decode(
        [run, Observation(label=("timer",), state="count", count=(2,))], rows
    )
    blinking = decode([run, Observation(label=("timer",), state="blink")], rows)

    assert ids(counted) == ["two"]
    assert blinking.verdict == "not_decodable"


def test_lamps_that_have_nothing_to_do_with_each_other_are_each_read() -> None:
    rows = [window(4), row("supply", "steady", lamp=GREEN, is_fault=False)]
    seen = [amber(count=(4,)), Observation(colour=("green",), state="on")]

    match = decode(seen, rows)

    assert match.verdict == "exact"
    assert sorted(ids(match)) == ["amber-4", "supply"]


def test_what_could_be_read_stands_beside_what_could_not() -> None:
    rows = [window(4), window(2, "green-2", lamp=GREEN)]
    seen = [amber(count=(4,)), Observation(colour=("green",), state="blink")]

    match = decode(seen, rows)

    assert ids(match) == ["amber-4"]
    assert match.question is not None
    assert match.question.slot == "count"


def test_without_a_table_nothing_is_found() -> None:
    assert decode([amber(count=(4,))], ()).verdict == "none"
    assert decode([], TABLE).verdict == "none"


@pytest.mark.parametrize(
    ("shown", "rows"),
    [
        ("J13", ["code"]),
        ("A2", ["code-short"]),
        ("210", ["left-2", "middle-1", "right-0"]),
        ("_10", ["left-blank", "middle-1", "right-0"]),
        ("913", ["middle-1"]),
    ],
)
def test_a_code_of_the_whole_display_is_not_taken_apart_into_places(
    shown: str, rows: list[str]
) -> None:
    setting: dict[str, Any] = {"precondition": ("switch SW4 at STATUS",), "of": 3}
    table = [
        row("code", "display_code", code="J13"),
        row("code-short", "display_code", code="A2"),
        row("left-blank", "digit_position", position=1, sign="", **setting),
        row("left-2", "digit_position", position=1, sign="2", **setting),
        row("middle-1", "digit_position", position=2, sign="1", **setting),
        row("right-0", "digit_position", position=3, sign="0", **setting),
    ]

    match = decode([Observation(state="display", code=shown)], table)

    assert ids(match) == rows
