"""A two-page service sheet that no pack has seen, some rows of it damaged on purpose.

``python -m tests.draft_walk FILE`` writes it: the walk in the contributor's guide
begins there.
"""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

from kb_samples.making import writer_cells
from kb_samples.making.blocks import Document, Heading, Page, Para, table

MODELS = ("ULO-20", "ULO-28")
FINE = (1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12, 13)
"""The counts that can be read; the tenth is lost, others contradict each other."""

FLASHES = table(
    "Table 1 Faults shown by red lamp LD3, flashes repeated every 8 seconds",
    ("Flashes", "Meaning", "Unit", "What to do"),
    (
        ("1", "Outdoor air sensor RT1 open or short", "runs on", "measure RT1"),
        ("2", "Coil sensor RT2 open or short", "stops", "measure RT2"),
        ("3", "Discharge sensor RT3 open or short", "stops", "measure RT3"),
        ("4", "Discharge temperature too high", "stops", "look for fluff on the coil"),
        (
            "5",
            "High pressure switch PS open",
            "stops",
            "Bridge the high pressure switch and start it",
        ),
        ("6", "Overcurrent of the drive", "stops", "measure the windings"),
        ("7", "Supply too low", "waits", "measure at the terminals"),
        ("8", "Compressor start failed", "stops", "look at leads U V W"),
        ("9", "Drive board too hot", "stops", "clean the fins"),
        ("", "Outdoor fan motor gives no pulses", "stops", "look at plug X7"),
        ("11", "No message from the indoor unit", "stops", "look at terminal 3"),
        ("12", "Current sensor fault", "no start", "outdoor board"),
        ("13", "Stored data of the board lost", "no start", "fit the plug-in"),
        ("eight (14)", "Valve coil open", "runs on", "measure the coil"),
        ("15", "Four-way valve fault", "stops", "look at plug X9"),
        ("15", "Coil frozen, defrost failed twice", "stops", "look at the drain"),
    ),
    (0.8, 2.6, 0.8, 2.2),
)
"""Sixteen rows: twelve that can be read, four that cannot."""

CURVE = table(
    "Table 3 Resistance of the discharge sensor RT3",
    ("°C", "RT3 kohm"),
    (
        ("0", "168"),
        ("10", "101"),
        ("20", "62.7"),
        ("250", "50.0"),
        ("30", "40.2"),
        ("40", "62.5"),
        ("50", "17.9"),
        ("60", "12.4"),
        ("70", "8.80"),
    ),
    (1.0, 1.4),
)
"""R = 50 kohm at 25 °C, B = 3950 K, rounded; `250` has lost its degree sign and the
value at 40 °C has its digits turned (26.5)."""

PAGES = (
    Page(
        "1",
        (
            Heading("Ulvetarn Service Sheet US-12, ULO outdoor units"),
            Para("Applicable models: ULO-20, ULO-28. Issue 1, 2031-04-02."),
            Heading("1 Flashes"),
            FLASHES,
        ),
    ),
    Page(
        "2",
        (
            Heading("2 Waits and lockout"),
            Para(
                "After the supply is switched on nothing turns for 40 seconds. After "
                "every stop the compressor stays off for at least 5 minutes. The unit "
                "waits 10 minutes."
            ),
            table(
                "Table 2 Lockout",
                ("Function", "Limit", "Locked out after"),
                (
                    ("High pressure", "4.1 MPa", "4 stops in 30 minutes"),
                    ("Drive board heat", "90 °C", "6 stops in 60 minutes"),
                ),
                (1.5, 1.0, 1.6),
            ),
            Para("Supply off for 2 minutes ends a lockout, once its cause is found."),
            CURVE,
            table(
                "Table 4 What is right at the service ports",
                ("Port", "Right"),
                (("Suction, cooling", "0.75 to 0.95 MPa"),),
                (1.5, 1.5),
            ),
        ),
    ),
)


def document() -> Document:
    """Return the sheet."""
    return Document(
        file="ulvetarn-us-12.pdf",
        maker="Ulvetarn",
        title="Service Sheet US-12",
        number="US-12",
        revision="1",
        issued=date(2031, 4, 2),
        models=MODELS,
        pages=PAGES,
        header="Ulvetarn Service Sheet US-12",
        keywords=MODELS,
    )


def write_sheet(path: Path) -> Path:
    """Write the PDF and return its path."""
    path.parent.mkdir(parents=True, exist_ok=True)
    writer_cells.write(document(), path)
    return path


if __name__ == "__main__":
    sys.stdout.write(f"{write_sheet(Path(sys.argv[1]))}\n")
