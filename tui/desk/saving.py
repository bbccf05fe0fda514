"""Answers as files: Markdown and plain text, side by side, written whole."""

from __future__ import annotations

import os
from datetime import tzinfo
from pathlib import Path

from tui.desk.export import as_markdown, as_text
from tui.desk.views import JobView, Spoken
from tui.plain.places import Frame

COLUMNS = 78


def save_answer(
    folder: Path, view: JobView, turn: Spoken, zone: tzinfo | None
) -> tuple[str, Path]:
    """Write an answer with its sources.

    Returns
    -------
    text, path
        The plain text, and the Markdown file; the text lies beside it.

    Raises
    ------
    OSError
        When the folder cannot be written.
    """
    frame = Frame(width=COLUMNS, now=turn.at, zone=zone)
    text = as_text(view, turn, frame)
    folder.mkdir(parents=True, exist_ok=True)
    stem = f"{view.job}-{turn.at:%Y%m%dT%H%M%S}"
    _write(folder / f"{stem}.txt", text)
    path = folder / f"{stem}.md"
    _write(path, as_markdown(view, turn, frame))
    return text, path


def _write(path: Path, text: str) -> None:
    """Replace a file whole: a crash leaves the old one or the new one."""
    beside = path.with_suffix(f"{path.suffix}.new")
    with beside.open("w", encoding="utf-8") as opened:
        opened.write(text)
        opened.flush()
        os.fsync(opened.fileno())
    beside.replace(path)


def offered(
    folder: Path, view: JobView, turn: Spoken, zone: tzinfo | None
) -> tuple[str, str]:
    """Return an answer that was saved and where it is; '' and why when it was not."""
    try:
        text, path = save_answer(folder, view, turn, zone)
    except OSError as error:
        return "", f"cannot be saved in {folder}: {error.strerror}"
    return text, f"sent to the terminal's clipboard; also saved to {path}"
