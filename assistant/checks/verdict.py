"""A verdict: pass, fail, inconclusive, or honestly none."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Result = Literal["pass", "fail", "inconclusive", "no_verdict"]


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
