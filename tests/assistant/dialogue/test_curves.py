"""Which readings of a job lie on a curve, and where."""

from __future__ import annotations

import pytest

from assistant.dialogue.curves import curves
from assistant.dialogue.step import _view
from assistant.facts import ContextFact, ReadingFact
from assistant.rules.applicability import Plate
from assistant.units.parse import parse_quantity
from tests.conversation import Talk
from tests.gauge_pack import gauge_pack


def read(of: str, text: str, at: str | None = None) -> ReadingFact:
    return ReadingFact(
        of=of,
        value=parse_quantity(text),
        at_temperature=parse_quantity(at) if at else None,
        power_state="off",
    )


UNPLUGGED = ContextFact(name="sensor unplugged", value=True)


def test_a_sensors_reading_lies_on_its_curve_at_its_temperature() -> None:
    talk = Talk()
    talk.enter(read("discharge", "12 kohm", "25 degC"), UNPLUGGED)

    ((done, curve),) = curves(_view(talk.situation))

    assert done.check == "lab/sensor-ohms"
    assert curve.reading == pytest.approx((298.15, 12e3))
    assert curve.title == "resistance of discharge sensor"


def test_a_newer_reading_replaces_the_older_one() -> None:
    talk = Talk()
    talk.enter(read("discharge", "12 kohm", "25 degC"), UNPLUGGED)
    talk.enter(read("discharge", "10 kohm", "25 degC"))

    ((_, curve),) = curves(_view(talk.situation))

    assert curve.reading == pytest.approx((298.15, 10e3))


def test_a_reading_without_its_temperature_has_no_place() -> None:
    talk = Talk()
    talk.enter(read("discharge", "12 kohm"), UNPLUGGED)

    assert curves(_view(talk.situation)) == ()


def test_a_superheat_lies_beside_the_dew_curve() -> None:
    talk = Talk([gauge_pack()], unit=Plate(outdoor_model="LAB-20"))
    talk.enter(
        read("suction pressure", "118 psig"), read("suction temperature", "52 degF")
    )

    ((done, curve),) = curves(_view(talk.situation))

    assert done.check == "lab/charge-superheat"
    assert curve.title == "R-410A, dew"
    # 118 psig and 14.696 psi of air; 52 °F.
    assert curve.reading == pytest.approx((284.26, 914906), rel=1e-4)
