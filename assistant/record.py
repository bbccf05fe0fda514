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

    Attributes
    ----------
    format : str
        What the serial begins with, sign by sign: ``YYWW``, ``WWYY``, ``YYMM`` or
        ``YYYYWW`` for year, week and month, ``L`` for a letter that stands for the
        month, ``X`` for a sign that says nothing; or ``NUMBER``, a plain number that
        rises.
    prefix : str, optional
        What stands before it; letters before a date are passed over without one.
    first, last : str, optional
        Inclusive: "from", "starting at", "up to and including".
    before : str, optional
        Exclusive: "prior to".
    letters : str
        Month letters from January on; makers leave out I, or more.
    """

    format: str = "YYWW"
    prefix: str | None = None
    first: str | None = None
    last: str | None = None
    before: str | None = None
    letters: Annotated[str, Field(pattern=r"^[A-Z]{12}$")] = "ABCDEFGHIJKL"


class VersionRange(Record):
    """A run of firmware versions: `first` and `last` inclusive, `before` exclusive."""

    first: str | None = None
    last: str | None = None
    before: str | None = None


class Scope(Record):
    """One alternative of `applies_to`; every stated field must agree.

    Attributes
    ----------
    models, exclude : tuple of str
        Patterns: ``*`` any run, ``#`` one digit, ``?`` one character, ``AB(C,D)12``
        alternatives in brackets. `exclude` wins over `models`.
    paired_with : tuple of str
        Patterns for the model of the other unit of a pair.
    series, family : str, optional
        Names under which people know the unit.
    board_pn : tuple of str
        Part numbers of the board, as patterns.
    board_mark : str, optional
        Print or colour of the label on the board.
    settings : tuple of str
        Switches or jumpers as they must stand, such as ``SW3-2 on``.
    fitted, not_fitted : tuple of str
        Parts that must be, or must not be, in the unit.
    some_models : bool
        The document says "for some models" and not for which: never confirmed.
    """

    models: tuple[str, ...] = ()
    exclude: tuple[str, ...] = ()
    paired_with: tuple[str, ...] = ()
    series: str | None = None
    family: str | None = None
    voltage: str | None = None
    phase: str | None = None
    board_mark: str | None = None
    board_pn: tuple[str, ...] = ()
    firmware: VersionRange | None = None
    serial: SerialRange | None = None
    capacity_class: str | None = None
    unit_role: str | None = None
    market: str | None = None
    settings: tuple[str, ...] = ()
    fitted: tuple[str, ...] = ()
    not_fitted: tuple[str, ...] = ()
    some_models: bool = False


class Item(Record):
    """One written item of a pack.

    `id` is unique in the pack; `applies_to` narrows the pack's own scope.
    """

    id: Annotated[str, Field(pattern=r"^[a-z0-9][a-z0-9-]*$")]
    applies_to: tuple[Scope, ...] = ()
    source: Source | None = None
    note: str | None = None
