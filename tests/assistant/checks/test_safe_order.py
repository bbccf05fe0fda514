"""The safe order of work: what comes before what, and what is never said."""

from __future__ import annotations

import pytest

from assistant.checks.kinds import NEEDS_ORDER, Needs
from assistant.checks.order import discharge_limit, safe_order
from assistant.errors import InputError

INSIDE: tuple[Needs, ...] = ("power_off", "live", "opens_circuit", "swap")


def ids(needs: Needs) -> list[str]:
    return [step.id for step in safe_order(needs)]


def test_a_look_needs_no_order() -> None:
    assert safe_order("look") == ()


@pytest.mark.parametrize("needs", INSIDE)
def test_everything_inside_begins_isolated_and_measured(needs: Needs) -> None:
    assert ids(needs)[:5] == [
        "isolate",
        "lock",
        "prove-before",
        "measure",
        "prove-after",
    ]
    assert ids(needs)[-2:] == ["covers", "restore"]


@pytest.mark.parametrize("needs", ["power_off", "opens_circuit", "swap"])
def test_the_fan_is_unplugged_dead_and_the_bus_measured_again(needs: Needs) -> None:
    order = ids(needs)

    fan = order.index("fan-plug")
    assert order.index("prove-after") < fan
    assert order[fan + 1] == "measure-again"
    assert order.index("work") > fan + 1
    assert safe_order(needs)[fan].power == "measured dead"


def test_a_live_reading_is_connected_dead_and_taken_down_dead() -> None:
    order = ids("live")

    assert order.index("connect") < order.index("energise") < order.index("work")
    assert order.index("work") < order.index("isolate-again")
    assert order.index("isolate-again") < order.index("measure-again")
    states = {step.id: step.power for step in safe_order("live")}
    assert states["connect"] == "measured dead"
    assert states["work"] == "live"


@pytest.mark.parametrize("needs", NEEDS_ORDER[1:])
def test_each_order_holds_the_work_once_under_its_own_names(needs: Needs) -> None:
    order = ids(needs)

    assert order.count("work") == 1
    assert len(set(order)) == len(order)


@pytest.mark.parametrize(
    ("stated", "limit"), [(None, 50.0), (60.0, 50.0), (25.0, 25.0), (0.0, 0.0)]
)
def test_the_lower_of_the_documents_limit_and_50_volts_is_used(
    stated: float | None, limit: float
) -> None:
    # 50 V: 29 CFR 1910.333(a)(1)
    measure = next(s for s in safe_order("power_off", stated) if s.id == "measure")

    assert discharge_limit(stated) == limit
    assert f"at or below {limit:g} V" in measure.text
    assert "every marked capacitor bank" in measure.text
    assert "never judge by time or by a dark lamp" in measure.text


def test_a_limit_below_zero_is_refused() -> None:
    with pytest.raises(InputError, match="below zero"):
        safe_order("power_off", -1.0)


@pytest.mark.parametrize("needs", NEEDS_ORDER[1:])
def test_every_caution_names_its_basis(needs: Needs) -> None:
    cautions = [caution for step in safe_order(needs) for caution in step.cautions]

    assert cautions
    assert all(caution.text and caution.basis for caution in cautions)
    assert any("local codes" in caution.text for caution in cautions)
    assert any("start by itself" in caution.text for caution in cautions)


@pytest.mark.parametrize("needs", ["gauges", "opens_circuit"])
def test_refrigerant_work_names_pressure_flame_leak_and_recovery(needs: Needs) -> None:
    text = " ".join(c.text for step in safe_order(needs) for c in step.cautions)

    for word in ("pressure", "A2L", "A3", "leak until proved", "never vented"):
        assert word in text


def test_off_long_enough_to_reset_is_not_discharged() -> None:
    cautions = [c.text for step in safe_order("power_off") for c in step.cautions]

    assert any("long enough to reset is not discharged" in text for text in cautions)


@pytest.mark.parametrize("needs", NEEDS_ORDER)
def test_what_must_never_be_said_is_not_said(needs: Needs) -> None:
    said = " ".join(
        [step.text for step in safe_order(needs)]
        + [c.text for step in safe_order(needs) for c in step.cautions]
    ).lower()

    for never in ("safe to touch", "one more reset", "bigger breaker", "it is normal"):
        assert never not in said
