"""An answer with its sources as Markdown and as plain text. Pure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.desk.views import JobView, Spoken, sources_of
from tui.plain.moments import date_time
from tui.plain.text import one_line

if TYPE_CHECKING:
    from assistant.dialogue.answer import SourceRef
    from tui.plain.places import Frame

_MARKS = str.maketrans({mark: f"\\{mark}" for mark in "\\`*_{}[]<>#|"})


def as_text(view: JobView, turn: Spoken, frame: Frame) -> str:
    """Return a turn as plain lines, headed by its job and followed by its sources."""
    from tui.plain.render import answer_lines

    head = [
        f"Job {view.job}, {date_time(turn.at, frame.zone)}",
        *(f"{name}: {one_line(value)}" for name, value in view.plate),
        "",
        f"> {one_line(turn.words)}",
    ]
    answer = answer_lines(turn.answer, frame) if turn.answer else []
    sources = _sources(turn)
    places = ["", "Sources", *(f"- {each}" for each in sources)] if sources else []
    return "\n".join((*head, "", *answer, *places, ""))


def as_markdown(view: JobView, turn: Spoken, frame: Frame) -> str:
    """Return a turn as Markdown; what was written by others stays as written."""
    from tui.plain.render import answer_lines

    told = answer_lines(turn.answer, frame) if turn.answer else []
    head = [
        f"# Job {view.job}",
        "",
        f"{_escaped(date_time(turn.at, frame.zone))}",
        "",
        *(f"- {name}: {_escaped(value)}" for name, value in view.plate),
        "",
        f"> {_escaped(one_line(turn.words))}",
        "",
    ]
    fence = "~" * (3 + max((line.count("~") for line in told), default=0))
    sources = [f"- {_escaped(each)}" for each in _sources(turn)]
    places = ["", "## Sources", "", *sources] if sources else []
    return "\n".join((*head, f"{fence}text", *told, fence, *places, ""))


def _sources(turn: Spoken) -> list[str]:
    return [_full(each) for each in sources_of(turn.answer)] if turn.answer else []


def _full(source: SourceRef) -> str:
    """Return a place with all that finds it again: file, id, pages, rule, words."""
    from tui.plain.places import place_of

    parts = [place_of(source), f"file {source.document}", f"id {source.document_id}"]
    if source.rule:
        parts.append(f"rule {source.rule}")
    return f'{"; ".join(parts)}: "{one_line(source.quote)}"'


def _escaped(text: str) -> str:
    return one_line(text).translate(_MARKS)
