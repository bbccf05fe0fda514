"""A format with one more step, as a later program would have it."""

from __future__ import annotations

from dataclasses import replace

from assistant.formats import Format, Step


def stepped(known: Format, step: Step) -> Format:
    """Return the format as it is after one more step."""
    return replace(known, steps=(*known.steps, step))
