"""What of a passage is embedded, and the identity of that text. Pure."""

from __future__ import annotations

import hashlib

from assistant.library.types import Passage

SPLITTER = "1"
"""Version of the rules that cut pages into passages; part of the manifest."""


def embedded_text(passage: Passage) -> str:
    r"""Return what is embedded: section heading, the table's first line, the text.

    The document's title is not part of it; it is a keyword field.

    Examples
    --------
    >>> embedded_text(Passage(1, 0, 9, "4 | sensor", "Faults", "Flashes | Meaning"))
    'Faults\nFlashes | Meaning\n4 | sensor'
    """
    parts = (passage.section, passage.lead, passage.text)
    return "\n".join(part.strip() for part in parts if part.strip())


def text_hash(text: str) -> str:
    """Return the identity of a text: sha256 over its UTF-8, as hex digits."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()
