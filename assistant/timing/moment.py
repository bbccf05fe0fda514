"""Instants with uncertainty: "quarter or twenty past" is a range."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Annotated

from pydantic import AfterValidator, AwareDatetime, model_validator

from assistant.record import Record


def _in_utc(at: datetime) -> datetime:
    """Return the instant in UTC: sums and comparisons in a zone follow its clocks."""
    return at.astimezone(UTC)


Instant = Annotated[AwareDatetime, AfterValidator(_in_utc)]


class Moment(Record):
    """An instant known to lie between two; both inclusive, UTC."""

    earliest: Instant
    latest: Instant

    @model_validator(mode="after")
    def _ordered(self) -> Moment:
        if self.latest < self.earliest:
            raise ValueError("a moment's latest is not before its earliest")
        return self

    def plus(self, by: timedelta) -> Moment:
        """Return the moment moved by `by`."""
        return Moment(earliest=self.earliest + by, latest=self.latest + by)
