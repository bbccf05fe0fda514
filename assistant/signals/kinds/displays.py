"""Rows of a display or remote: codes, sub-codes, digits by place, plain values."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.signals.kinds.base import Lamp, SignalBase

Code = Annotated[str, Field(min_length=1, max_length=12)]


class DisplayCode(SignalBase):
    """A code on a display or remote.

    `glyph_equivalence` lists other ways in which the document or people write it.
    """

    kind: Literal["display_code"]
    code: Code
    display: Lamp | None = None
    glyph_equivalence: tuple[Code, ...] = ()


class MainSubCode(SignalBase):
    """A main code with a second one that is shown in turn or beside it.

    As a `finer cause` the sub-code is part of the row's key; an address, a unit number
    or a number of units only says where.
    """

    kind: Literal["main_sub_code"]
    code: Code
    sub: Code | None = None
    sub_meaning_type: Literal["finer cause", "address", "unit number", "unit count"]
    display: Lamp | None = None

    @model_validator(mode="after")
    def _finer_cause_has_its_code(self) -> MainSubCode:
        if (self.sub_meaning_type == "finer cause") != (self.sub is not None):
            raise ValueError("`sub` is written for a finer cause, and only for one")
        return self


class DigitPosition(SignalBase):
    """One sign at one place of the display: each place has its own table.

    `position` counts from the left, from 1, of `of` places. An empty `sign` is a blank
    place.
    """

    kind: Literal["digit_position"]
    position: Annotated[int, Field(ge=1, le=8)]
    of: Annotated[int, Field(ge=2, le=8)]
    sign: Annotated[str, Field(max_length=1)]
    display: Lamp | None = None

    @model_validator(mode="after")
    def _inside(self) -> DigitPosition:
        if self.position > self.of:
            raise ValueError(f"place {self.position} of {self.of}")
        return self


class DisplayValue(SignalBase):
    """A value and no code: a temperature, a time, a count that the display shows.

    `encoding` says how it is written: as it stands, in hexadecimal, or with a point
    that stands for a hundred left out ("0.7" is 107). `low` and `high` bound the value
    read. `sentinels` are signs that are no number, such as ``--``.
    """

    kind: Literal["display_value"]
    encoding: Literal["plain", "hexadecimal", "point_is_hundred"]
    low: Annotated[float, Field(strict=False)]
    high: Annotated[float, Field(strict=False)]
    unit: str | None = None
    sentinels: dict[str, str] = Field(default_factory=dict)
    display: Lamp | None = None


DisplaySignal = DisplayCode | MainSubCode | DigitPosition | DisplayValue
