"""What the families of named checks share: flags, refusals and plain figures."""

from __future__ import annotations

from dataclasses import replace
from typing import TypedDict, TypeVar, Unpack

from assistant.checks.comparing import unmet_reason
from assistant.checks.inputs import WORD, Input, Values
from assistant.checks.judge import judge
from assistant.checks.kinds import BenchCheck, CheckBase, Outcome
from assistant.checks.law import Law
from assistant.checks.reading import POWER_OFF, ReadingFor
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.verdict import Result

_OUTCOMES = (Outcome(result="pass", says="in the band"),)
"""For a check that is built from typed values and moves no cause."""


class More(TypedDict, total=False):
    """What a report may say beside its figure, in the figure's unit."""

    low: float | None
    high: float | None
    expected: float | None
    uncertainty: float | None
    result: Result | None


_Kind = TypeVar("_Kind", bound=CheckBase)


def flag(name: str, says: str) -> Input:
    """Return an input that takes yes or no; not given is not known."""
    return Input(name, WORD, "yes", says, choices=("yes", "no"))


def choice(name: str, says: str, *choices: str, default: str = "") -> Input:
    """Return an input that takes one of several words."""
    return Input(name, WORD, choices[0], says, default=default, choices=choices)


def told(values: Values, **keys: str) -> dict[str, bool | None]:
    """Return what is known of each requirement: key of the input to its name."""
    known = {name: values.yes(key) for key, name in keys.items()}
    power = values.word("power")
    if power is not None:
        known[POWER_OFF] = power == "off"
    return known


def built(model: type[_Kind], kind: str, name: str, **fields: object) -> _Kind:
    """Return a pack's kind of check made from typed values."""
    return model.model_validate(
        {
            "kind": kind,
            "id": name,
            "name": name,
            "needs": "power_off",
            "minutes": 1.0,
            "allowed_for": ("technician",),
            "ask": "",
            "outcomes": _OUTCOMES,
            **fields,
        }
    )


def judged(
    check: BenchCheck,
    values: Values,
    reading: ReadingFor,
    context: dict[str, bool | None],
) -> CheckReport:
    """Return the report of a reading judged by its kind."""
    verdict = judge(check, reading, None, context, values.meter())
    return from_verdict(check.id, verdict)


def set_of(values: Values, *names: str) -> ReadingFor:
    """Return several readings by name as one set."""
    several = tuple(reading for name in names for reading in values.named(name))
    last = next((value for _, value in reversed(several) if value is not None), None)
    opened = bool(several) and last is None
    return ReadingFor(value=last, set_of=several, open_line=opened)


def figure(
    name: str,
    law: Law,
    value: float | None,
    unit: str,
    reason: str = "",
    **more: Unpack[More],
) -> CheckReport:
    """Return a report of a figure that is not judged, unless `more` says so."""
    return CheckReport(
        check=name,
        value=value,
        unit=unit,
        reason=reason,
        formula=law.formula,
        source=law.source,
        **more,
    )


def refused(
    name: str,
    law: Law,
    unit: str,
    reason: str,
    *missing: str,
    value: float | None = None,
    **more: Unpack[More],
) -> CheckReport:
    """Return a report without a verdict, with what is still to be told."""
    report = figure(name, law, value, unit, reason, **more)
    return replace(report, result="no_verdict", missing=missing)


def read_live(name: str, law: Law, values: Values) -> CheckReport | None:
    """Return the refusal of a resistance not read with the power off; None if it was.

    Parameters
    ----------
    name : str
        Of the check.
    law : Law
        Quoted with the refusal.
    values : Values
        With the power as told.
    """
    if values.word("power") == "off":
        return None
    reason = "a resistance taken live, or in an unknown state, is not accepted"
    return refused(name, law, "ohm", reason, POWER_OFF)


def lacking(values: Values, *pairs: tuple[str, str]) -> tuple[str, tuple[str, ...]]:
    """Return why conditions do not hold, and their names; empty when all hold.

    Parameters
    ----------
    values : Values
        As parsed.
    *pairs : tuple of (str, str)
        Key of a yes-or-no input and the condition in words.
    """
    false = [words for key, words in pairs if values.yes(key) is False]
    unknown = [words for key, words in pairs if values.yes(key) is None]
    return unmet_reason(false, unknown), (*false, *unknown)
