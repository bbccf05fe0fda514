"""What every law states about itself: formula, source and limits, written once.

The limits are data; a law's function enforces them and its documentation is printed
from them, so the two cannot drift apart.
"""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from assistant.errors import InputError
from assistant.units.parse import format_quantity
from assistant.units.quantity import CANONICAL, Quantity

PRACTICE = "common practice, no source"
_Function = TypeVar("_Function", bound=Callable[..., object])


class OutOfRangeError(InputError, ValueError):
    """A value outside what a law, or a table, is stated for."""


@dataclass(frozen=True, slots=True)
class Limit:
    """The closed range of one input for which a law is stated.

    Attributes
    ----------
    what : str
        The input in words, as it appears in the message.
    low, high : float
        In `unit`.
    unit : str
        A canonical unit.
    basis : str
        Where the range comes from.
    """

    what: str
    low: float
    high: float
    unit: str
    basis: str = PRACTICE

    def __str__(self) -> str:
        return f"{self.what}: {self.low:g} to {self.high:g} {self.unit} ({self.basis})"

    def hold(self, value: float) -> None:
        """Refuse a `value` outside the range.

        Raises
        ------
        OutOfRangeError
            With the value, the range and its basis.
        """
        if not math.isfinite(value) or not self.low <= value <= self.high:
            low, high = self._shown(self.low), self._shown(self.high)
            raise OutOfRangeError(
                f"{self.what} of {self._shown(value)} is outside {low} to {high}",
                f"nothing is stated beyond that range ({self.basis})",
            )

    def _shown(self, value: float) -> str:
        if self.unit not in CANONICAL.values() or not math.isfinite(value):
            return f"{value:g} {self.unit}"
        return format_quantity(Quantity(value=value, unit=self.unit), digits=4)


@dataclass(frozen=True, slots=True)
class Law:
    """A physical law or a decision rule as it is quoted to a person."""

    name: str
    formula: str
    source: str
    limits: tuple[Limit, ...]
    note: str = ""


def stated(law: Law) -> Callable[[_Function], _Function]:
    """Print `law` into the documentation of the function that computes it."""
    lines = [f"    {law.formula}", "", "Limits:", ""]
    lines += [f"- {limit}" for limit in law.limits]
    lines += ["", law.note] if law.note else []
    section = ["Notes", "-----", *lines, "", "References", "----------", law.source]

    def extend(function: _Function) -> _Function:
        text = inspect.cleandoc(function.__doc__ or "")
        function.__doc__ = "\n".join([text, "", *section, ""])
        return function

    return extend
