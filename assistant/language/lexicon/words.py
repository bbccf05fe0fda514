"""Splits a run of words into a tuple: how the lists of this package are written."""

from __future__ import annotations


def words(text: str) -> tuple[str, ...]:
    """Return the words of a text, in order."""
    return tuple(text.split())
