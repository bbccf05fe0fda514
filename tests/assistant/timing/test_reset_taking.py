"""Which resets take: by name, scope, time off, and what came before."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.timing.reset_taking import taking_of, takings
from assistant.timing.stop_kinds import Reset
from assistant.timing.stop_values import ResetTold
from tests.wait_rows import at

RULE = {
    "name": "power",
    "together": True,
    "off_at_least": "3 min",
    "off_at_most": "20 min",
    "how": "both supplies off and on",
    "evidence_lost": "the lamp",
}
TOLD = {"which": "power", "off": (300.0, 300.0), "supplies": "together"}


def rule(**fields: Any) -> Reset:
    return Reset.model_validate(RULE | fields)


def told(minute: float = 0, **fields: Any) -> ResetTold:
    return ResetTold(at(minute), **(TOLD | fields))


CASES: tuple[tuple[dict[str, Any], dict[str, Any], str, str], ...] = (
    ({}, {}, "yes", "took"),
    ({}, {"which": "button"}, "no", "other_reset"),
    ({}, {"which": None}, "maybe", "which_unknown"),
    ({}, {"supplies": "one_left_on"}, "no", "one_left_on"),
    ({}, {"supplies": "one_by_one"}, "no", "one_by_one"),
    ({}, {"supplies": None}, "maybe", "supplies_unknown"),
    ({"together": False}, {"supplies": "one_left_on"}, "yes", "took"),
    ({}, {"off": (179.0, 179.0)}, "no", "too_short"),
    ({}, {"off": (180.0, 180.0)}, "yes", "took"),
    ({}, {"off": (1200.0, 1200.0)}, "yes", "took"),
    ({}, {"off": (1201.0, 1300.0)}, "no", "too_long"),
    ({}, {"off": (120.0, 240.0)}, "maybe", "off_unknown"),
    ({}, {"off": None}, "maybe", "off_unknown"),
    ({"off_at_least": None, "off_at_most": None}, {"off": None}, "yes", "took"),
    # From the cut to the dark lamp is not known: it may be all of it, or none.
    ({"counted_from": "lamp_dark"}, {}, "maybe", "off_unknown"),
    ({"counted_from": "lamp_dark"}, {"off": (100.0, 100.0)}, "no", "too_short"),
    ({"counted_from": "lamp_dark"}, {"off_from": "lamp_dark"}, "yes", "took"),
    ({}, {"off_from": "lamp_dark"}, "maybe", "off_unknown"),
    ({"off_at_most": None}, {"off_from": "lamp_dark"}, "yes", "took"),
    ({"clears": "lamp"}, {}, "no", "lamp_only"),
    ({"clears": "lockout"}, {}, "yes", "took"),
    ({"name": "history"}, {"which": "history"}, "no", "lamp_only"),
    ({}, {"cleared": False}, "no", "not_cleared"),
    ({}, {"cleared": True, "off": None, "supplies": None}, "yes", "took"),
    # Seen to clear, though the document says it cannot: both stand.
    ({}, {"cleared": True, "supplies": "one_left_on"}, "maybe", "one_left_on"),
)


@pytest.mark.parametrize(("written", "done", "took", "why"), CASES)
def test_a_reset_takes_as_the_document_says(
    written: dict[str, Any], done: dict[str, Any], took: str, why: str
) -> None:
    found = taking_of(rule(**written), told(**done))

    assert (found.took, found.why) == (took, why)


def test_any_of_several_resets_will_do() -> None:
    rules = (rule(), rule(name="button", together=False, off_at_least=None))

    (found,) = takings(rules, [told(which="button", off=None, supplies=None)])

    assert found.took == "maybe"
    assert found.why == "off_unknown"


def test_a_second_step_takes_only_after_the_first() -> None:
    plain = {"together": False, "off_at_least": None, "off_at_most": None}
    rules = (
        rule(name="remote", order=1, **plain),
        rule(name="power", order=2, **plain),
    )
    remote, power = told(0, which="remote"), told(5)

    assert [one.took for one in takings(rules, [remote, power])] == ["no", "yes"]
    assert [one.why for one in takings(rules, [power])] == ["order"]
    late = told(9, which="remote")
    assert [one.took for one in takings(rules, [power, late])] == ["no", "no"]
    unsure = ResetTold(at(0, 9), "remote")
    assert [one.took for one in takings(rules, [unsure, power])] == ["no", "maybe"]


def test_without_a_written_reset_none_takes() -> None:
    assert [one.took for one in takings((), [told()])] == ["no"]
