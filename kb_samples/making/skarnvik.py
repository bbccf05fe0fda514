"""The Skarnvik handbook and the short technical note."""

from __future__ import annotations

from datetime import date

from kb_samples.making.blocks import (
    Caution,
    Document,
    Heading,
    Items,
    Page,
    Para,
    table,
)
from kb_samples.making.skarnvik_checks import COMPRESSOR, LEAK, SENSORS, SUPPLY
from kb_samples.making.skarnvik_front import (
    BOARDS,
    CONTENTS,
    COVER,
    DATA,
    INDOOR,
    OUTDOOR,
    SAFETY,
)
from kb_samples.making.skarnvik_operation import (
    AFTER_DEFROST,
    HEATING,
    PROTECTION,
    RESET,
    STANDBY,
    STARTING,
)
from kb_samples.making.skarnvik_signals import (
    CODES,
    CODES_MORE,
    FINDING,
    FINDING_MORE,
    GRID,
    GROUPS,
    NO_CODE,
)

NOTE = (
    Page(
        "1",
        (
            Heading("Technical note TN-31: fan board and first start"),
            Para(
                "For: Lomvi outdoor units SKO-L25R, SKO-L35R, SKO-L50R. Issued "
                "2023-02-20, for technicians. It tells how the outdoor fan board is "
                "cleared after a trip and what to expect at the first start."
            ),
            Heading("1 Clearing the fan board", 2),
            Para(
                "After a gust, a stick in the guard or a short dip of the supply the "
                "fan board may trip although the motor is sound. H4 is lit, H1 gives "
                "groups of 7, the display shows P9. Before anything is replaced:"
            ),
            Items(
                (
                    "Film the lamps for 20 seconds.",
                    "Switch off the outdoor supply and watch H4. It stays lit for "
                    "some time from the charge that is left.",
                    "When H4 has gone dark, count 15 seconds without power. Time that "
                    "passed before H4 went dark does not count.",
                    "Switch on. The fan board is clear; the counter of the main board "
                    "is not, for that a reset is needed.",
                ),
                numbered=True,
            ),
            Para(
                "If H4 lights again within ten minutes, look for the cause: blocked "
                "fan, worn bearing, water in plug X7, motor, fan board, in this order."
            ),
            Heading("2 First start", 2),
            Para(
                "After installation or after a long time without supply allow 15 to 20 "
                "seconds until something moves. The compressor comes first, the "
                "outdoor fan 12 seconds later. Callers report this as a dead fan; ask "
                "them to wait for half a minute and look again."
            ),
            Caution(
                "DANGER",
                "A cleared fan board is not a discharged one. For work inside count "
                "only what the meter shows at DC+ and DC- and at FC+ and FC-: below 30 "
                "V.",
            ),
        ),
        "Technical note",
    ),
    Page(
        "2",
        (
            Heading("3 Questions from the field"),
            Heading("Can I clear it from the remote?", 2),
            Para("No. The fan board knows only its own supply."),
            Heading("Do I have to switch off the indoor unit as well?", 2),
            Para(
                "Not for the fan board. For a reset of the lockout yes: both off "
                "together, at least 2 minutes."
            ),
            Heading("The fan turns backwards in the wind. Is this a fault?", 2),
            Para(
                "No. The fan board lets it slow down for up to 90 seconds and then "
                "starts it. On an open shore a wind guard helps."
            ),
            table(
                "Times in this note",
                ("Item", "Time"),
                (
                    ("Fan board without power, from H4 dark", "15 s"),
                    ("First start until something moves", "15 to 20 s"),
                    ("Outdoor fan after the compressor", "12 s"),
                    ("Slowing down of a fan in the wind", "up to 90 s"),
                ),
                (2.4, 1),
            ),
            Para("Skarnvik service desk, note TN-31, valid until withdrawn."),
        ),
        "Technical note",
    ),
)


def documents() -> tuple[Document, ...]:
    """Return the handbook (with an outline) and the note."""
    front = (COVER, SAFETY, CONTENTS, DATA, BOARDS)
    operation = (STARTING, STANDBY, HEATING, AFTER_DEFROST, PROTECTION, RESET)
    middle = (GROUPS, GRID, CODES, CODES_MORE, FINDING, FINDING_MORE)
    checks = (SENSORS, SUPPLY, COMPRESSOR, LEAK, NO_CODE)
    handbook = Document(
        file="skarnvik-lomvi-handbook.pdf",
        maker="Skarnvik",
        title="Handbook for Service, Lomvi heat pumps",
        number="SH-220",
        revision="4",
        issued=date(2022, 10, 3),
        models=(*OUTDOOR, *INDOOR),
        pages=(*front, *operation, *middle, *checks),
        header="SKARNVIK Lomvi - Handbook for Service",
        outline=True,
        keywords=(*OUTDOOR, *INDOOR),
    )
    note = Document(
        file="skarnvik-tn31-fan-board.pdf",
        maker="Skarnvik",
        title="Technical note TN-31, fan board and first start",
        number="TN-31",
        revision="1",
        issued=date(2023, 2, 20),
        models=OUTDOOR,
        pages=NOTE,
        header="SKARNVIK Service",
        keywords=OUTDOOR,
    )
    return handbook, note
