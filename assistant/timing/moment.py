"""Instants with uncertainty: "quarter or twenty past" is a range."""

from __future__ import annotations

from datetime import timedelta

from pydantic import AwareDatetime, model_validator

from assistant.record import Record


class Moment(Record):
    """An instant known to lie between two; both inclusive, UTC."""

    earliest: AwareDatetime
    latest: AwareDatetime

    @model_validator(mode="after")
    def _ordered(self) -> Moment:
        if self.latest < self.earliest:
            raise ValueError("a moment's latest is not before its earliest")
        return self

    def plus(self, by: timedelta) -> Moment:
        """Return the moment moved by `by`."""
        return Moment(earliest=self.earliest + by, latest=self.latest + by)
