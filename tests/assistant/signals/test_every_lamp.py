"""What is told of every lamp, of the other one, or of two that keep step."""

from __future__ import annotations

import pytest

from assistant.signals.decode import decode
from assistant.signals.observation import Observation
from tests.signal_rows import GREEN, amber, grid, ids, row, window

TWO = (
    grid("dark", run="off", timer="off"),
    grid("ready", run="on", timer="off"),
    grid("waiting", run="on", timer="on"),
    grid("locked", run="flash", timer="on"),
)
THREE = (
    grid("first", run="on", timer="off", filter="off"),
    grid("second", run="on", timer="off", filter="on"),
)
EVERY_OFF = Observation(state="off", lamps="every")


def test_every_lamp_dark_is_the_row_in_which_all_are() -> None:
    match = decode([EVERY_OFF], TWO)

    assert (match.verdict, ids(match)) == ("exact", ["dark"])


def test_every_lamp_stands_for_those_that_are_not_named() -> None:
    run = Observation(label=("run",), state="on")

    match = decode([run, EVERY_OFF], THREE)

    assert (match.verdict, ids(match)) == ("exact", ["first"])


def test_every_lamp_says_nothing_more_where_all_are_named() -> None:
    run = Observation(label=("run",), state="on")
    timer = Observation(label=("timer",), state="on")

    match = decode([EVERY_OFF, run, timer], TWO)

    assert (match.verdict, ids(match), match.reason) == ("exact", ["waiting"], "")


def test_the_other_lamp_is_the_one_that_is_left() -> None:
    run = Observation(label=("run",), state="blink")
    other = Observation(state="on", lamps="other")

    match = decode([run, other], TWO)

    assert (match.verdict, ids(match)) == ("exact", ["locked"])


def test_the_other_lamp_of_three_is_not_both() -> None:
    run = Observation(label=("run",), state="on")
    other = Observation(state="off", lamps="other")

    match = decode([run, other], THREE)

    assert match.verdict != "exact"


def test_a_nameless_flash_beside_another_may_be_a_lamp_that_counts() -> None:
    timer = {"label": "timer"}
    counted = window(3, "three", lamp=timer)
    flash = Observation(state="count", count=(3,), pause="seen")
    other = Observation(state="on", lamps="other")

    match = decode([flash, other], [*TWO, counted])

    assert match.verdict == "several"
    assert {"locked", "three"} == set(ids(match))


@pytest.mark.parametrize("phase", ["together", "alternating"])
def test_lamps_that_keep_step_are_never_read_from_a_row_of_one(phase: str) -> None:
    rows = [*TWO, row("even", "even_blink"), window(4)]
    both = Observation.model_validate(
        {"state": "blink", "phase": phase, "lamps": "every"}
    )

    match = decode([both], rows)

    how = "in turn" if phase == "alternating" else "together"
    assert match.verdict == "none"
    assert match.reason.startswith(f"lights that flash {how}: not in")


def test_a_lamp_known_beside_others_is_not_called_unknown() -> None:
    lamps = (
        {"lamp": GREEN, "state": "on"},
        {"lamp": {**GREEN, "label": "LD2", "colour": "amber"}, "state": "on"},
    )
    rows = [row("waiting", "several_lamps", lamps=lamps), window(4)]
    green = Observation(colour=("green",), state="on")

    match = decode([green, amber(count=(4,), pause="seen")], rows)

    assert (match.verdict, ids(match)) == ("exact", ["amber-4"])
    assert match.reason == (
        "the green light and what it does: in no row together with the other lights "
        "told"
    )
