"""The colours of the screen; every pair of them is legible (WCAG 2.2, 1.4.3)."""

from __future__ import annotations

from textual.theme import Theme

COLOURS = Theme(
    name="desk",
    primary="#7fb2d9",
    secondary="#9fc5a8",
    warning="#e6c15c",
    error="#ff8f80",
    success="#8fd19e",
    accent="#7fb2d9",
    foreground="#e8e6e0",
    background="#14181c",
    surface="#20262c",
    panel="#2a323a",
    dark=True,
)
UNCOLOURED = "ansi-dark"
"""Textual's theme of the terminal's own colours; with NO_COLOR it uses none."""
