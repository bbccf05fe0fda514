"""Which check comes next: least invasive first, then most told per minute."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from assistant.checks.kinds import NEEDS_ORDER, Needs
from assistant.diagnosis.ranking import expected_fall

LEAST_GAIN = 0.05
"""Bits a check must be expected to gain for its level to be stayed in."""


@dataclass(frozen=True, slots=True)
class Option:
    """One check that could be done."""

    check: str
    needs: Needs
    minutes: float
    outcomes: tuple[Mapping[str, float], ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """The check to do, what it is expected to tell, and why this one."""

    check: str
    gain_bits: float
    named_by_document: bool = False


def choose(
    by_cause: Mapping[str, float],
    options: Sequence[Option],
    follow_on: str | None = None,
) -> Choice | None:
    """Choose the next check.

    Parameters
    ----------
    by_cause : mapping of str to float
        Normalised weights, the open cause included.
    options : sequence of Option
        Checks not done yet that the person may do.
    follow_on : str, optional
        The check that the document names after the last result; it goes first.

    Returns
    -------
    Choice or None
        None when no check is expected to gain `LEAST_GAIN`.
    """
    gains = {
        option.check: expected_fall(by_cause, option.outcomes) for option in options
    }
    if follow_on in gains:
        return Choice(follow_on, gains[follow_on], named_by_document=True)
    for level in NEEDS_ORDER:
        useful = [
            option
            for option in options
            if option.needs == level and gains[option.check] >= LEAST_GAIN
        ]
        if useful:
            best = min(
                useful,
                key=lambda option: (
                    -round(gains[option.check] / option.minutes, 9),
                    option.check,
                ),
            )
            return Choice(best.check, gains[best.check])
    return None
