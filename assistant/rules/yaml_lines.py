"""The one door to YAML: a file to plain data, with the line of every value.

The parser's events are read, not objects made from them: so every mistake of a file
can be told at once, with its own line, and nothing is guessed from an unquoted
scalar. PyYAML's binding of libyaml gives the events; what they mean is YAML 1.2.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any, TypeAlias

from assistant.rules.mistakes import Mistake, Path
from assistant.rules.parsed import ParsedFiles
from assistant.rules.scalars import Plain, read_plain, readings_differ

if TYPE_CHECKING:
    import yaml

    # The library gives no types: an event's marks and value are taken on trust.
    Event: TypeAlias = yaml.Event

LARGEST = 4_000_000
"""Bytes; a rule file written by a person is far smaller."""
DEEPEST = 20


@dataclass(slots=True)
class Written:
    """What a file holds: `data` with tuples for lists; None when not readable.

    `lines` gives the line of each value, `keys` that of its key; both from 1.
    """

    file: str
    data: Any = None
    readable: bool = False
    lines: dict[Path, int] = field(default_factory=dict)
    keys: dict[Path, int] = field(default_factory=dict)
    mistakes: list[Mistake] = field(default_factory=list)
    suspect: set[Path] = field(default_factory=set)
    """Values already reported, so that nothing is reported twice."""

    def report(self, line: int, what: str, hint: str = "") -> None:
        """Add a mistake of this file."""
        self.mistakes.append(Mistake(self.file, line, what, hint))


def read_yaml(path: FilePath, name: str, kept: ParsedFiles | None = None) -> Written:
    """Return the content of a YAML 1.2 file, called `name` in messages.

    Never raises for the content: what cannot be read is in `mistakes`. A text that
    `kept` holds is not parsed again.
    """
    written = Written(file=name)
    text = read_text(path, written)
    if text is None:
        return written
    before = kept.get(READER, text) if kept is not None else None
    if isinstance(before, dict):
        _restore(before, written)
        return written
    _parse(text, written)
    if kept is not None and not written.mistakes:
        kept.put(READER, text, _as_json(written))
    return written


def read_yaml_text(text: str, name: str) -> Written:
    """Return the content of YAML 1.2 text; as `read_yaml` does for a file."""
    written = Written(file=name)
    _parse(text, written)
    return written


READER = "yaml"


def _as_json(written: Written) -> dict[str, Any]:
    """Return a file without mistakes as JSON: its data, and a line for each value.

    A path is written as the place of what holds it and its own last step.
    """
    places = {path: place for place, path in enumerate(written.lines)}
    return {
        "data": written.data,
        "lines": [
            [places[path[:-1]], path[-1], line, written.keys.get(path, 0)]
            for path, line in written.lines.items()
            if path
        ],
    }


def _restore(before: dict[str, Any], written: Written) -> None:
    paths: list[Path] = [()]
    lines, keys = written.lines, written.keys
    lines[()] = 1
    for held, step, line, key in before["lines"]:
        path = (*paths[held], step)
        paths.append(path)
        lines[path] = line
        if key:
            keys[path] = key
    written.data = _with_tuples(before["data"])
    written.readable = True


def _with_tuples(value: Any) -> Any:  # noqa: ANN401 - any data of a file
    if isinstance(value, list):
        return tuple(_with_tuples(one) for one in value)
    if isinstance(value, dict):
        return {key: _with_tuples(one) for key, one in value.items()}
    return value


def read_text(path: FilePath, written: Written) -> str | None:
    """Return a file's UTF-8 text, or None with the mistake noted."""
    try:
        raw = path.read_bytes()
    except OSError as error:
        written.report(1, f"cannot be read: {error.strerror}")
        return None
    if len(raw) > LARGEST:
        written.report(1, f"is {len(raw)} bytes; a rule file has at most {LARGEST}")
        return None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        written.report(line, "is not UTF-8 text", "save the file as UTF-8")
        return None


def _parse(text: str, written: Written) -> None:
    """Read the whole of a text into `written`."""
    import yaml

    unprintable = _UNPRINTABLE.search(text)
    if unprintable is not None:
        line = text.count("\n", 0, unprintable.start()) + 1
        told = f"holds a character that no text has ({unprintable[0]!r})"
        written.report(line, told, "delete it; save the file as UTF-8")
        return
    # The slower parser of the same library is there where no libyaml was built.
    parser = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        _Reader(yaml.parse(text, Loader=parser), written).document()
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line = mark.line + 1 if mark is not None else 1
        said = ": ".join(part for part in (error.context, error.problem) if part)
        written.report(line, f"is not YAML here ({said})", _advice(said))
    except yaml.YAMLError as error:
        written.report(1, f"is not YAML ({type(error).__name__})")


_UNPRINTABLE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]"
)
"""What YAML 1.2.2 leaves out of its printable characters (section 5.1)."""


def _advice(said: str) -> str:
    if "cannot start any token" in said or "tab" in said:
        return "indent with spaces, not tabs"
    if "mapping values" in said:
        return "put text that holds a colon between quotes"
    return "check indentation, quotes and brackets"


class _Reader:
    """Makes plain data of a parser's events, one call a value."""

    def __init__(self, events: Iterator[Event], written: Written) -> None:
        from yaml import events as kinds

        self._events = events
        self._written = written
        self._kinds = kinds

    def document(self) -> None:
        """Read the one document of a stream; with a second nothing is readable."""
        written, documents, data = self._written, 0, None
        written.lines[()] = 1
        for event in self._events:
            if not isinstance(event, self._kinds.DocumentStartEvent):
                continue
            documents += 1
            if documents > 1:
                told = "a second document starts here"
                line = event.start_mark.line + 1
                written.report(line, told, "a rule file is one document")
                return
            data = self._value(next(self._events), ())
        written.data, written.readable = data, True

    def _value(self, event: Event, path: Path) -> object:
        line = event.start_mark.line + 1
        self._written.lines.setdefault(path, line)
        plain = self._plainly(event, line, path)
        if isinstance(event, self._kinds.ScalarEvent):
            return self._scalar(event, line, path) if plain else None
        if isinstance(event, self._kinds.AliasEvent):
            return None
        if len(path) > DEEPEST:
            self._written.report(line, f"is nested deeper than {DEEPEST} levels")
            self._pass_over()
            return None
        mapping = isinstance(event, self._kinds.MappingStartEvent)
        found = self._mapping(path) if mapping else self._list(path)
        return found if plain else None

    def _plainly(self, event: Event, line: int, path: Path) -> bool:
        """Return whether a value is written out: no anchor, no alias, no tag."""
        tag = getattr(event, "tag", None)
        if event.anchor is None and tag is None:
            return True
        if event.anchor is not None:
            told, hint = "anchors and aliases are not read", "write it out"
        else:
            told, hint = f"the tag `{tag}` is not read", "leave it out"
        self._written.report(line, told, hint)
        self._written.suspect.add(path)
        return False

    def _list(self, path: Path) -> tuple[object, ...]:
        entries = enumerate(self._until_end())
        return tuple(self._value(event, (*path, place)) for place, event in entries)

    def _until_end(self) -> Iterator[Event]:
        """Yield the events that start a value, up to the end of the list or keys."""
        for event in self._events:
            if isinstance(event, self._kinds.CollectionEndEvent):
                return
            yield event

    def _mapping(self, path: Path) -> dict[str, Any]:
        found: dict[str, Any] = {}
        written = self._written
        for key in self._until_end():
            line = key.start_mark.line + 1
            if not isinstance(key, self._kinds.ScalarEvent):
                written.report(line, "a key is a single word")
                self._drop(key)
                self._drop(next(self._events))
                continue
            name = str(key.value)
            here = (*path, name)
            if name in found:
                told = f"`{name}` is written twice; first on line {written.keys[here]}"
                written.report(line, told)
                self._drop(next(self._events))
                continue
            written.keys[here] = line
            value = next(self._events)
            scalar = isinstance(value, self._kinds.ScalarEvent)
            written.lines[here] = value.start_mark.line + 1 if scalar else line
            found[name] = self._value(value, here)
        return found

    def _drop(self, event: Event) -> None:
        """Pass over a value that is not kept."""
        if isinstance(event, self._kinds.CollectionStartEvent):
            self._pass_over()

    def _pass_over(self) -> None:
        """Pass over the rest of a list or of keys, however deep."""
        depth = 1
        while depth:
            event = next(self._events)
            depth += isinstance(event, self._kinds.CollectionStartEvent)
            depth -= isinstance(event, self._kinds.CollectionEndEvent)

    def _scalar(self, event: Event, line: int, path: Path) -> Plain:
        text = str(event.value)
        if event.style:
            return text
        written = self._written
        if readings_differ(text):
            written.suspect.add(path)
            bool_like = text.casefold() in {"y", "n", "yes", "no", "on", "off"}
            also = " (or write true or false)" if bool_like else ""
            told = "without quotes is read one way by some tools and another by others"
            written.report(line, f"`{text}` {told}", f'quote it: "{text}"{also}')
            return text
        if not text:
            written.lines[path] = written.keys.get(path, written.lines[path])
        return read_plain(text)
