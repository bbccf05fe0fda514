"""Which written items apply to a unit: confirmed, possible or excluded."""

from __future__ import annotations

from assistant.record import Record


class Plate(Record):
    """What is known of the unit; None is not known yet."""

    indoor_model: str | None = None
    outdoor_model: str | None = None
    serial: str | None = None
    voltage: str | None = None
    phase: str | None = None
    refrigerant: str | None = None
    charge: str | None = None
    board_mark: str | None = None
    switch_settings: str | None = None
    capacity_class: str | None = None
    unit_role: str | None = None
    market: str | None = None
