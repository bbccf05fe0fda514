"""The Ondreval service guide for Pochard, and the one for Smew with its leak sensor."""

from __future__ import annotations

from datetime import date

from kb_samples.making import ondreval_leak
from kb_samples.making.blocks import Document
from kb_samples.making.ondreval_checks import CIRCUIT, ELECTRICAL, SENSORS
from kb_samples.making.ondreval_display import CAUSES, DISPLAY, SETTINGS
from kb_samples.making.ondreval_front import (
    BOARDS,
    CONTENTS,
    COVER,
    DATA,
    INDOOR,
    OUTDOOR,
    SAFETY,
)
from kb_samples.making.ondreval_lamps import GRID, INVERTER, OPERATION, VALVES
from kb_samples.making.ondreval_operation import COUNTERS, RESET, START, WAITS


def documents() -> tuple[Document, ...]:
    """Return both guides; only the first has an outline."""
    front = (COVER, SAFETY, CONTENTS, DATA, BOARDS)
    operation = (START, WAITS, COUNTERS, RESET)
    signals = (GRID, OPERATION, INVERTER, VALVES, DISPLAY, SETTINGS)
    checks = (CAUSES, SENSORS, ELECTRICAL, CIRCUIT)
    pochard = Document(
        file="ondreval-pochard-service-guide.pdf",
        maker="Ondreval",
        title="Service Guide, Pochard split heat pumps",
        number="OSG-310",
        revision="B",
        issued=date(2024, 4, 18),
        models=(*OUTDOOR, *INDOOR),
        pages=(*front, *operation, *signals, *checks),
        header="ONDREVAL Pochard - Service Guide",
        outline=True,
        keywords=(*OUTDOOR, *INDOOR),
    )
    smew = Document(
        file="ondreval-smew-leak-sensor-guide.pdf",
        maker="Ondreval",
        title="Service Guide, Smew wall units with leak sensor",
        number="OSG-325",
        revision="A",
        issued=date(2024, 9, 9),
        models=(*ondreval_leak.OUTDOOR, *ondreval_leak.INDOOR),
        pages=ondreval_leak.PAGES,
        header="ONDREVAL Smew - leak sensor",
        keywords=(*ondreval_leak.OUTDOOR, *ondreval_leak.INDOOR),
    )
    return pochard, smew
