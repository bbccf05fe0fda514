"""How a seeded mistake is told."""

from __future__ import annotations

Seeded = tuple[str, str, str, str, str]
"""File, what stood there, the mistake, text of its line, what is said."""
