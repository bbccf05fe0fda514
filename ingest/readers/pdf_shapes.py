"""What stands on one page of a PDF, by pdfium: its shapes, and whether it is blank."""

from __future__ import annotations

from dataclasses import dataclass

from ingest.readers.geometry import Fill, Shapes
from ingest.readers.pdf_paths import lines
from ingest.readers.pdf_words import words
from ingest.readers.pdfium import OpenPage


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page as it was laid out."""

    shapes: Shapes
    drawn: bool
    """A picture, or anything painted, stands on it."""
    raw: str = ""
    """The characters as the file gives them."""


def sheet(page: OpenPage) -> Sheet:
    """Return the shapes of a page, its rotation undone."""
    frame = page.frame()
    objects = page.objects()
    found = lines(objects.paths, frame)
    width, height = frame.size
    pictures = tuple(Fill(*frame.see_box(*box), (0, 0, 0)) for box in objects.pictures)
    shapes = Shapes(
        width=width,
        height=height,
        words=words(page, frame),
        rules=() if objects.drawing else tuple(found.rules),
        fills=tuple(found.fills),
        pictures=pictures,
        drawing=objects.drawing,
    )
    drawn = bool(pictures) or found.ink or objects.shaded or objects.drawing
    return Sheet(shapes, drawn, page.text().replace("\r\n", "\n"))
