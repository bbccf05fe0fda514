"""A verdict: pass, fail, inconclusive, or honestly none."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from assistant.checks.law import Law
from assistant.units.quantity import Quantity

Result = Literal["pass", "fail", "inconclusive", "no_verdict"]
_SEVERITY: tuple[Result, ...] = ("pass", "no_verdict", "inconclusive", "fail")


@dataclass(frozen=True, slots=True)
class Verdict:
    """The outcome of one check of one reading, in SI.

    Attributes
    ----------
    check : str
        The name of the law or of the pack's check (`pack/id`).
    result : str
        pass, fail, inconclusive or no_verdict.
    reason : str
        Why; for no_verdict, what must be known first.
    value, expected, low, high : float or None
        In `unit`; `low` and `high` are the limits compared against.
    uncertainty : float or None
        U (k = 2) of the reading, in `unit`.
    formula, source : str
        What was computed, and where it stands.
    """

    check: str
    result: Result
    reason: str
    value: float | None = None
    expected: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    uncertainty: float | None = None
    formula: str = ""
    source: str = ""
    missing: tuple[str, ...] = ()
    """For no_verdict: the context still to be told, as in a check's `requires`."""


def unjudged(
    check: str,
    law: Law,
    unit: str,
    low: Quantity | None = None,
    high: Quantity | None = None,
) -> Verdict:
    """Return what a judge starts from: no verdict, by a law, against stated limits.

    Parameters
    ----------
    check : str
        The name of the law or of the pack's check.
    law : Law
        Whose formula and source are quoted.
    unit : str
        A canonical unit.
    low, high : Quantity or None
        As the document states them, [unit].
    """
    return Verdict(
        check=check,
        result="no_verdict",
        reason="",
        low=None if low is None else low.value,
        high=None if high is None else high.value,
        unit=unit,
        formula=law.formula,
        source=law.source,
    )


def worst(verdicts: Sequence[Verdict]) -> Verdict:
    """Return the verdict that counts where one can fail all; the first of equals."""
    return max(verdicts, key=lambda verdict: _SEVERITY.index(verdict.result))
