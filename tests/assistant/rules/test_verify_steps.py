"""Steps of a pack: power before hands, roles, and what is never taken in."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.rules.refused import never_said, refused
from tests.pack_folders import changed
from tests.verified_packs import (
    added,
    line_of,
    verified,
)

LIVE = """\
- id: measure-supply
  kind: supply_voltage
  name: measure the supply
  needs: live
  minutes: 5
  allowed_for: [technician]
  ask: What does the supply read?
  nominal: 230 V
  tolerance: 10 %
  steps:
    - Clip the leads on L and N.
    - Unplug the fan.
  outcomes:
    - result: fail
      says: the supply is off
      moves: {main-board: somewhat for}
  source: {doc: service, page: 41, quote: "measure"}
"""


def test_hands_inside_while_it_is_live_need_the_step_that_isolates(
    tmp_path: Path,
) -> None:
    files = added("checks.yaml", LIVE)
    isolated = LIVE.replace("    - Unplug", "    - Isolate all supplies.\n    - Unplug")

    (found,) = verified(tmp_path / "a", files)

    assert found.line == line_of(files, "checks.yaml", "- Unplug the fan.")
    assert "hands go inside while it is live" in found.what
    assert verified(tmp_path / "b", added("checks.yaml", isolated)) == []


def test_a_live_step_needs_the_power_restored_before_it(tmp_path: Path) -> None:
    steps = LIVE.replace("needs: live", "needs: power_off").replace(
        "Clip the leads on L and N.", "Read the volts with the board energised."
    )
    files = added("checks.yaml", steps)

    called_off, step = verified(tmp_path, files)

    assert "there only while the supply is on" in called_off.what
    assert step.line == line_of(files, "checks.yaml", "- Read the volts")
    assert "a live step without the power restored" in step.what


def test_resistance_is_measured_with_the_power_off(tmp_path: Path) -> None:
    live = changed("checks.yaml", "needs: power_off", "needs: live")
    loose = changed("checks.yaml", "[power off, sensor", "[sensor")

    (hot,) = verified(tmp_path / "a", live)
    (open_,) = verified(tmp_path / "b", loose)

    assert "never measured live" in hot.what
    assert "without requiring the power to be off" in open_.what


def test_a_role_that_may_not_act_is_told(tmp_path: Path) -> None:
    files = changed(
        "checks.yaml",
        "allowed_for: [technician, licensed technician]",
        "allowed_for: [customer, technician]",
    )
    opened = changed("checks.yaml", "needs: power_off", "needs: opens_circuit")

    (found,) = verified(tmp_path / "a", files)
    (other,) = verified(tmp_path / "b", opened)

    assert "a customer may not do what needs `power_off`" in found.what
    assert "only a licensed technician" in other.what


def test_a_step_the_engine_must_refuse_is_told_at_its_line(tmp_path: Path) -> None:
    steps = LIVE.replace("Unplug the fan.", "Jumper the high pressure switch.")
    files = added("checks.yaml", steps)

    (found,) = verified(tmp_path, files)

    assert found.line == line_of(files, "checks.yaml", "- Jumper the high")
    assert "takes a protection out" in found.what


@pytest.mark.parametrize(
    "text",
    [
        "Bypass the float switch for a minute",
        "Bridge out the pressure switch",
        "Defeat the leak sensor",
        "Tape down the door interlock",
        "Short the bus capacitors with a screwdriver",
        "Fit a bigger breaker",
        "Pressurise with oxygen",
        "Vent the refrigerant",
        "Isolate. Then jump the overload.",
    ],
)
def test_hurtful_steps_are_refused(text: str) -> None:
    assert refused(text) is not None


@pytest.mark.parametrize(
    "text",
    [
        "Never bypass the float switch",
        "Do not short the capacitors with a screwdriver",
        "Check the high pressure switch for continuity",
        "Measure the bus capacitors",
        "Pressure-test with dry nitrogen and a regulator",
        "Look for a short in the cable of the fan",
        "Recover the refrigerant",
        "Check that nobody has jumped out: no jumper on the pressure switch",
    ],
)
def test_careful_steps_are_let_through(text: str) -> None:
    assert refused(text) is None


@pytest.mark.parametrize(
    "text",
    [
        "It is now safe to touch",
        "Covered by warranty",
        "Try one more reset",
        "About $40",
    ],
)
def test_what_is_never_said_is_found(text: str) -> None:
    assert never_said(text) is not None
