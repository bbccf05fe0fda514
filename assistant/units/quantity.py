"""A quantity as packs write it (``8 s``, ``15 kohm``) and as the core keeps it (SI)."""

from __future__ import annotations

import math
from typing import Annotated

from pydantic import AfterValidator, Field, model_validator

from assistant.record import Record

CANONICAL = {
    "time": "s",
    "resistance": "ohm",
    "voltage": "V",
    "current": "A",
    "temperature": "K",
    "temperature difference": "dK",
    "pressure, absolute": "Pa",
    "pressure, gauge": "PaG",
    "ratio": "1",
    "frequency": "Hz",
    "capacitance": "F",
    "mass": "kg",
    "length": "m",
    "area": "m2",
    "energy": "J",
    "rotation": "1/s",
    "power": "W",
    "airflow": "m3/s",
    "density": "kg/m3",
    "mass per length": "kg/m",
    "energy per mass": "J/kg",
}
"""Dimension -> the one unit the core computes in."""


class Quantity(Record):
    """A number in a canonical unit; written by people as text with any unit.

    Attributes
    ----------
    value : float
        In `unit`.
    unit : str
        One of the values of `CANONICAL`.
    text : str
        As it was written, for quoting back; empty when computed.
    """

    value: Annotated[float, Field(strict=False)]
    unit: str
    text: str = ""

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, given: object) -> object:
        if isinstance(given, str):
            from assistant.units.parse import parse_quantity

            return parse_quantity(given).model_dump()
        return given

    @model_validator(mode="after")
    def _known_unit(self) -> Quantity:
        if self.unit not in CANONICAL.values():
            raise ValueError(f"unit {self.unit!r} is not one of {sorted(CANONICAL)}")
        if not math.isfinite(self.value):
            raise ValueError("a quantity is finite")
        return self


def _require(dimension: str) -> AfterValidator:
    unit = CANONICAL[dimension]

    def check(quantity: Quantity) -> Quantity:
        if quantity.unit != unit:
            raise ValueError(f"expected a {dimension}, got {quantity.text!r}")
        return quantity

    return AfterValidator(check)


Seconds = Annotated[Quantity, _require("time")]
Ohms = Annotated[Quantity, _require("resistance")]
Volts = Annotated[Quantity, _require("voltage")]
Kelvins = Annotated[Quantity, _require("temperature")]
Ratio = Annotated[Quantity, _require("ratio")]
Farads = Annotated[Quantity, _require("capacitance")]
Difference = Annotated[Quantity, _require("temperature difference")]
