"""The Vellamere bulletin that replaces two rows of the Heron manual."""

from __future__ import annotations

from datetime import date

from kb_samples.making.blocks import (
    Caution,
    Cover,
    Document,
    Heading,
    Items,
    Page,
    Para,
    table,
)

MODELS = ("VEH-O35", "VEH-O50")

PAGES = (
    Page(
        "",
        (
            Cover(
                "VELLAMERE",
                "Service Bulletin VSB-2231",
                "Heron series: blue label on the outdoor main board",
                MODELS,
                (
                    "Revision A, issued 2022-09-12",
                    "Replaces two rows of table 6-2, Service Manual VSM-1407 Rev. C, "
                    "page 8 and page 9.",
                    "All other pages of VSM-1407 Rev. C stay in force.",
                ),
            ),
        ),
    ),
    Page(
        "1",
        (
            Heading("Which units"),
            Para(
                "From serial week 2230 the outdoor units VEH-O35 and VEH-O50 leave the "
                "works with another outdoor main board. It carries a blue label below "
                "plug CN20; the board before has a white one. The first four digits of "
                "the serial number are year and week. VEH-O26 is not concerned."
            ),
            Para(
                "A blue board may also have been fitted as a spare part in an older "
                "unit. The label on the board decides, not the serial number. Look at "
                "it before you count."
            ),
            Heading("What changes", 2),
            table(
                "Rows that replace those of VSM-1407 Rev. C, blue label only",
                ("Flashes", "Meaning", "Unit", "Ends"),
                (
                    (
                        "6",
                        "Current sensor drifts, no overcurrent",
                        "stops",
                        "reset only",
                    ),
                    ("9", "Fan drive on the board too hot", "stops", "after 20 min"),
                ),
                (0.8, 2.9, 0.8, 1.3),
            ),
            Para(
                "On a blue board an overcurrent is shown with 14 flashes, limit 20 A; "
                "it is locked out after 5 stops in 60 minutes. A fan motor without "
                "pulses is shown with 15 flashes. Both are new rows."
            ),
            table(
                "New rows, blue label only",
                ("Flashes", "Meaning", "Unit", "Ends"),
                (
                    ("14", "Overcurrent, power module above 20 A", "stops", "3 min"),
                    ("15", "Outdoor fan motor gives no pulses", "stops", "reset only"),
                ),
                (0.8, 2.9, 0.8, 1.3),
            ),
            Caution(
                "NOTE",
                "With a white label nothing changes: 6 flashes stay overcurrent, 9 "
                "flashes stay the fan motor.",
            ),
        ),
        "Bulletin",
    ),
    Page(
        "2",
        (
            Heading("What to do on a blue board"),
            Heading("6 flashes", 2),
            Items(
                (
                    "Film LD2 for 20 seconds and read the label.",
                    "Reset once after section 5 of VSM-1407 and wait 4 minutes.",
                    "Comes back at once: outdoor main board. No check of windings or "
                    "supply is needed for this display.",
                    "Does not come back: note it, look again within a month.",
                ),
                numbered=True,
            ),
            Heading("9 flashes", 2),
            Items(
                (
                    "Leave the supply on. The unit tries again 20 minutes after the "
                    "stop; LD2 goes on flashing until then.",
                    "Fan blocked or slow? Free it, check plug CN20 after isolation.",
                    "Hot wall, closed cage or fluff before the board? Give it air.",
                    "Three times in a day with a free fan: fan motor first, then the "
                    "outdoor main board.",
                ),
                numbered=True,
            ),
            table(
                "White and blue label compared",
                ("Flashes", "White label", "Blue label"),
                (
                    ("6", "Overcurrent, above 22 A", "Current sensor drifts"),
                    ("9", "Outdoor fan motor, no pulses", "Fan drive too hot"),
                    ("14", "not used", "Overcurrent, above 20 A"),
                    ("15", "not used", "Outdoor fan motor, no pulses"),
                ),
                (0.8, 2.2, 2.2),
            ),
            Para(
                "Spare parts: board with white label 0914-107, board with blue label "
                "0914-131. They do not replace each other; the plug-in must be moved."
            ),
        ),
        "Bulletin",
    ),
)


def documents() -> tuple[Document, ...]:
    """Return the bulletin."""
    return (
        Document(
            file="vellamere-vsb-2231-blue-label.pdf",
            maker="Vellamere",
            title="Service Bulletin VSB-2231",
            number="VSB-2231",
            revision="A",
            issued=date(2022, 9, 12),
            models=MODELS,
            pages=PAGES,
            header="Vellamere Service Bulletin",
            keywords=MODELS,
        ),
    )
