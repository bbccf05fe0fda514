"""The two Vellamere manuals put together."""

from __future__ import annotations

from kb_samples.making.blocks import Document, Page, Scan
from kb_samples.making.vellamere_after import after
from kb_samples.making.vellamere_checks import checks
from kb_samples.making.vellamere_figures import HERON, TERN, Family
from kb_samples.making.vellamere_front import front
from kb_samples.making.vellamere_operation import operation
from kb_samples.making.vellamere_signals import signals

CONTENTS = (
    ("Safety before any work", "ii"),
    ("1 Specifications", "1"),
    ("2 Terminals and plugs", "2"),
    ("3 How the unit operates", "3"),
    ("3.7 Standby until the supply is back", "4"),
    ("4 Protection functions and lockout", "5"),
    ("5 Reset", "6"),
    ("6 Lamp display of the outdoor main board", "7"),
    ("7 Causes and remedies", "12"),
    ("8 Sensors", "14"),
    ("9 Checks of supply and board", "15"),
    ("10 Checks of parts", "16"),
    ("11 Complaints without a code", "19"),
    ("12 Change of the outdoor main board", "20"),
)

# What the copied sheet shows; it is in the file as a picture only.
SHEET = (
    "Vellamere works, final test",
    "Heron series, sheet to be kept with the manual",
    "",
    "Fastening of the board cover: 6 screws M4, 1.0 Nm",
    "Fan nut: left-hand thread, 8 Nm",
    "Fuse F1 on the board: 25 A 250 V, slow",
    "Fuse F2 for the fan: 3.15 A 250 V",
    "",
    "Order of refitting the panels",
    "1  partition plate",
    "2  right side panel",
    "3  service cover",
    "4  top panel, front edge first",
    "",
    "Running current at 35 C outdoors, full speed",
    "VEH-O26   5.1 A",
    "VEH-O35   7.0 A",
    "VEH-O50   10.4 A",
    "",
    "Checked by hand after the last fan test.",
)


def _manual(
    family: Family, file: str, extra: tuple[Page, ...], *, marked: bool
) -> Document:
    sheet = (("Works sheet", "21"),) if extra else ()
    return Document(
        file=file,
        maker="Vellamere",
        title=f"Service Manual {family.name} series",
        number=family.number,
        revision=family.revision,
        issued=family.issued,
        models=(*family.outdoor, *family.indoor),
        pages=(
            *front(family, (*CONTENTS, *sheet)),
            *operation(family),
            *signals(family),
            *checks(family),
            *after(family),
            *extra,
        ),
        header=f"Vellamere {family.name} series",
        labels=marked,
        outline=marked,
        keywords=(*family.outdoor, *family.indoor),
    )


def documents() -> tuple[Document, ...]:
    """Return both manuals; only the first carries page labels and an outline."""
    sheet = Page("21", (Scan(SHEET),))
    return (
        _manual(HERON, "vellamere-heron-service-manual.pdf", (sheet,), marked=True),
        _manual(TERN, "vellamere-tern-service-manual.pdf", (), marked=False),
    )
