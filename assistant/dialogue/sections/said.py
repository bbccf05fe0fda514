"""Statements, and what each rests on."""

from __future__ import annotations

from assistant.dialogue.answer import (
    SourceRef,
    Statement,
)
from assistant.dialogue.view import View


def rule(view: View, gid: str, text: str) -> Statement:
    """Make a statement that rests on a written rule."""
    return Statement(text=text, basis="rule", sources=view.cite(gid))


def computed(text: str, sources: tuple[SourceRef, ...] = ()) -> Statement:
    """Make a statement that was worked out."""
    return Statement(text=text, basis="computed", sources=sources)
