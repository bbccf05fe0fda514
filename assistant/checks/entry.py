"""A law that a person can run by name, and the inputs that many of them share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from assistant.checks.curve import Curve
from assistant.checks.inputs import COUNT, POWER, READING, Input, Values
from assistant.checks.law import Law
from assistant.checks.reading import ReadingFor
from assistant.checks.report import CheckReport


@dataclass(frozen=True, slots=True)
class NamedCheck:
    """A law that a person can run by name.

    Attributes
    ----------
    name, says : str
        The name typed, and one line on what it is for.
    law : Law
        Formula, source and limits.
    inputs : tuple of Input
        In the order they are listed.
    run : callable
        Parsed values to a report.
    curve : callable or None
        Parsed values to the curve that a reading lies on, where there is one.
    """

    name: str
    says: str
    law: Law
    inputs: tuple[Input, ...]
    run: Callable[[Values], CheckReport]
    curve: Callable[[Values], Curve] | None = None


METER_INPUTS = (
    Input("percent", "ratio", "1 %", "the meter's share of the reading"),
    Input("digits", COUNT, "3", "the meter's counts of the last digit"),
    Input("resolution", READING, "0.1 V", "one count of the range used"),
)
POWER_INPUT = Input("power", POWER, "off", "power while it was read: off or live")
TEN_PERCENT = Input(
    "tolerance", "ratio", "10 %", "allowed share either way", default="10 %"
)
VOLTS = Input("reading", "voltage", "228 V", "as measured")


def required(name: str, dimension: str, example: str, says: str) -> Input:
    """Return an input that must be given."""
    return Input(name, dimension, example, says, required=True)


def reading_of(values: Values, name: str, at: str = "", supply: str = "") -> ReadingFor:
    """Return the reading that typed values tell.

    Parameters
    ----------
    values : Values
        As parsed.
    name, at, supply : str
        The keys of the reading, its temperature and its supply; empty for none.
    """
    word = values.word("power")
    power: Literal["off", "live"] | None = None
    if word is not None:
        power = "off" if word == "off" else "live"
    return ReadingFor(
        value=values.maybe(name),
        at_temperature=values.maybe(at) if at else None,
        supply=values.maybe(supply) if supply else None,
        power_state=power,
    )
