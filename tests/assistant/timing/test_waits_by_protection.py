"""Waits that only the stop by one protection starts."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from pydantic import ValidationError

from assistant.dialogue.happenings import happenings
from assistant.facts import ProtectionStopFact
from assistant.jobs.fold import Held, JobState
from assistant.timing.values import Happening
from assistant.timing.waits import waits_in_force
from tests.wait_rows import NOON, at, minutes, wait

HOT = wait(
    "hot", "protection_stop", minimum="20 min", stopped_by="discharge temperature"
)
ANY = wait("any", "protection_stop", minimum="3 min")


def stop(number: float, event: str | None) -> Happening:
    return Happening("protection_stop", at(number), event)


@pytest.mark.parametrize(
    ("event", "names", "unsaid"),
    [
        ("discharge temperature", ["hot", "any"], ()),
        ("high pressure", ["any"], ()),
        (None, ["hot", "any"], ("stopped by discharge temperature",)),
    ],
)
def test_a_stop_starts_the_waits_of_its_own_protection(
    event: str | None, names: list[str], unsaid: tuple[str, ...]
) -> None:
    found = waits_in_force([HOT, ANY], [stop(0, event)], NOON + minutes(1))

    assert [state.row.wait.id for state in found] == names
    assert found[0].unsaid == unsaid


def test_a_later_stop_by_another_protection_leaves_the_first_wait_alone() -> None:
    told = [stop(0, "discharge temperature"), stop(5, "high pressure")]

    hot, any_one = waits_in_force([HOT, ANY], told, NOON + minutes(6))

    assert hot.earliest == NOON + minutes(20)
    assert any_one.earliest == NOON + minutes(8)


def test_only_a_protection_stop_has_a_protection() -> None:
    with pytest.raises(ValidationError, match="needs `trigger: protection_stop`"):
        wait("odd", "power_on", minimum="1 min", stopped_by="overcurrent")


def test_a_protection_named_afterwards_names_the_stop_told_before() -> None:
    noted = datetime(2031, 6, 14, tzinfo=UTC)
    told = (
        Held(ProtectionStopFact(at=at(0)), "E1", 0, noted, 1, ""),
        Held(ProtectionStopFact(event="overcurrent"), "E2", 0, noted, 2, "stop_event"),
    )

    stops = [
        one
        for one in happenings(JobState(held=told))
        if one.trigger == "protection_stop"
    ]

    assert stops == [stop(0, "overcurrent")]
