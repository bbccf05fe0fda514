"""What every check of a pack says, whatever it measures."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from assistant.record import Item, Mode, Record, Role
from assistant.units.quantity import Quantity

Needs = Literal["look", "power_off", "live", "gauges", "opens_circuit", "swap"]
"""How invasive a check is, least first."""
NEEDS_ORDER: tuple[Needs, ...] = (
    "look",
    "power_off",
    "live",
    "gauges",
    "opens_circuit",
    "swap",
)
Move = Literal[
    "strongly for", "somewhat for", "neutral", "somewhat against", "strongly against"
]
MOVE_FACTOR: dict[str, float] = {
    "strongly for": 6.0,
    "somewhat for": 2.0,
    "neutral": 1.0,
    "somewhat against": 1 / 2,
    "strongly against": 1 / 6,
}


def rising(low: Quantity | None, high: Quantity | None) -> None:
    """Refuse a band whose high end lies below its low one.

    Raises
    ------
    ValueError
        With both ends as written.
    """
    if low is not None and high is not None and low.value > high.value:
        raise ValueError(f"`high` {high.text} is below `low` {low.text}")


class Banded(Record):
    """What has a `low` and a `high`, either of which may be left out."""

    @model_validator(mode="after")
    def _limits_rise(self) -> Self:
        rising(getattr(self, "low", None), getattr(self, "high", None))
        return self


class Outcome(Record):
    """What one result of a check means and how it moves the causes.

    `result` is pass, fail, or one of a look check's own `options`.
    """

    result: str
    says: str
    moves: dict[str, Move] = Field(default_factory=dict)
    then: str | None = None
    """The check that the document names next."""


class CheckBase(Item):
    """What every check says.

    `allowed_for` lists the roles that may do it. `requires` names context that must
    be known and true before a reading counts: `call present`, `power off`,
    `sensor unplugged`, `temperature at the sensor`, `mains at the terminals`,
    `fixed speed`. `steps` are done in order; the engine adds the safe order of work.
    """

    name: str
    says: tuple[str, ...] = ()
    needs: Needs
    minutes: Annotated[float, Field(gt=0, strict=False)]
    allowed_for: Annotated[tuple[Role, ...], Field(min_length=1)]
    ask: str
    steps: tuple[str, ...] = ()
    requires: tuple[str, ...] = ()
    mode: Mode | None = None
    cautions: tuple[str, ...] = ()
    outcomes: Annotated[tuple[Outcome, ...], Field(min_length=1)]
