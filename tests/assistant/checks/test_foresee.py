"""It is said before the reading is taken that the tools can never decide."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.checks.foresee import foreseen
from assistant.checks.kinds import Check, Meter

MakeCheck = Callable[..., Check]


@pytest.mark.parametrize(
    ("kind", "limits", "says"),
    [
        # 1 % + 3 digits of 0.1 ohm at 0.6 ohm: a = 0.306 ohm, U = 0.353 ohm.
        ("band", {"low": "0.5 ohm", "high": "0.6 ohm"}, "no reading can pass"),
        ("band", {"low": "400 ohm", "high": "600 ohm"}, ""),
        ("band", {"low": "400 ohm", "high": None}, ""),
        # 1 K of thermometer: U = 1.15 K either way.
        ("band", {"low": "20 C", "high": "22 C"}, "no reading can pass"),
        ("band", {"low": "20 C", "high": "23 C"}, ""),
        ("supply_voltage", {"tolerance": "1 %"}, "no reading can pass"),
        ("supply_voltage", {"tolerance": "10 %"}, ""),
        ("standby_bus", {}, ""),
        ("look", {}, ""),
    ],
)
def test_a_band_narrower_than_twice_the_uncertainty_is_foreseen(
    kind: str, limits: dict[str, str | None], says: str, make_check: MakeCheck
) -> None:
    told = foreseen(make_check(kind, **limits), None)

    assert says in told
    assert bool(told) == bool(says)


def test_a_finer_meter_can_decide_it(make_check: MakeCheck) -> None:
    check = make_check("band", low="0.5 ohm", high="0.6 ohm")
    fine = Meter.model_validate(
        {"percent": 0.1, "digits": 1, "resolution": "1 milliohm", "up_to": "2 ohm"}
    )

    assert foreseen(check, fine) == ""
    assert "uncertain by" in foreseen(check, None)
