"""What every written item carries: a strict frozen record, its source, its scope."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

Box = Literal["indoor", "outdoor", "remote", "thermostat"]
Mode = Literal["cool", "heat", "defrost", "test", "off"]
Role = Literal["customer", "maintenance", "technician", "licensed technician"]
"""Who acts; a licensed technician may open a refrigerant circuit."""
UnitMatch = Literal["confirmed", "possible"]


class Record(BaseModel):
    """Base of everything a person writes or a job stores: frozen, strict, closed."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", strict=True, allow_inf_nan=False
    )


class Source(Record):
    """Where a figure or rule stands.

    `doc` is an alias of the pack's `documents`; `page` is physical, from 1;
    `quote` stands on that page, white space folded.
    """

    doc: str
    page: Annotated[int, Field(ge=1)]
    quote: Annotated[str, Field(min_length=1)]


class SerialRange(Record):
    """A half-open or closed run of serial numbers in one stated format.

    `format` names how a serial is compared, e.g. ``YYWW`` (first four digits are
    year and week); `first` and `last` are inclusive.
    """

    format: str = "YYWW"
    first: str | None = None
    last: str | None = None


class Scope(Record):
    """One alternative of `applies_to`; every stated field must agree.

    `models` are patterns: ``*`` any run, ``#`` one digit, ``?`` one character,
    ``AB(C,D)12`` alternatives in brackets. `exclude` wins over `models`.
    """

    models: tuple[str, ...] = ()
    exclude: tuple[str, ...] = ()
    voltage: str | None = None
    phase: str | None = None
    board_mark: str | None = None
    serial: SerialRange | None = None
    capacity_class: str | None = None
    unit_role: str | None = None
    market: str | None = None


class Item(Record):
    """One written item of a pack.

    `id` is unique in the pack; `applies_to` narrows the pack's own scope.
    """

    id: Annotated[str, Field(pattern=r"^[a-z0-9][a-z0-9-]*$")]
    applies_to: tuple[Scope, ...] = ()
    source: Source | None = None
    note: str | None = None
