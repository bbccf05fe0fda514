"""The one door to YAML: a file to plain data, with the line of every value.

The node tree is read, not the constructed objects: so every mistake of a file can be
told at once, with its own line, and nothing is guessed from an unquoted scalar.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

from assistant.rules.mistakes import Mistake, Path
from assistant.rules.scalars import Plain, read_plain, readings_differ

if TYPE_CHECKING:
    from ruamel.yaml.nodes import MappingNode, Node, ScalarNode

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


def read_yaml(path: FilePath, name: str) -> Written:
    """Return the content of a YAML 1.2 file, called `name` in messages.

    Never raises for the content: what cannot be read is in `mistakes`.
    """
    written = Written(file=name)
    text = read_text(path, written)
    return written if text is None else _read(text, written)


def read_yaml_text(text: str, name: str) -> Written:
    """Return the content of YAML 1.2 text; as `read_yaml` does for a file."""
    return _read(text, Written(file=name))


def _read(text: str, written: Written) -> Written:
    node = _compose(text, written)
    if not written.mistakes:
        written.readable = True
        written.lines[()] = 1
        written.data = None if node is None else _value(node, (), written)
    return written


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


def _compose(text: str, written: Written) -> Node | None:
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    try:
        return YAML(typ="safe", pure=True).compose(text)  # type: ignore[no-any-return]
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line = mark.line + 1 if mark is not None else 1
        said = ": ".join(part for part in (error.context, error.problem) if part)
        written.report(line, f"is not YAML here ({said})", _advice(said))
    except (YAMLError, RecursionError) as error:
        written.report(1, f"is not YAML ({type(error).__name__})")
    return None


def _advice(said: str) -> str:
    if "\\t" in said or "tab" in said:
        return "indent with spaces, not tabs"
    if "mapping values" in said:
        return "put text that holds a colon between quotes"
    return "check indentation, quotes and brackets"


def _value(node: Node, path: Path, written: Written) -> object:
    from ruamel.yaml.nodes import MappingNode, ScalarNode

    line = node.start_mark.line + 1
    written.lines.setdefault(path, line)
    if node.anchor is not None:
        written.report(line, "anchors and aliases are not read", "write it out")
        written.suspect.add(path)
        return None
    if len(path) > DEEPEST:
        written.report(line, f"is nested deeper than {DEEPEST} levels")
        return None
    if isinstance(node, ScalarNode):
        return _scalar(node, path, written)
    if isinstance(node, MappingNode):
        return _mapping(node, path, written)
    return tuple(
        _value(child, (*path, place), written) for place, child in enumerate(node.value)
    )


def _mapping(node: MappingNode, path: Path, written: Written) -> dict[str, Any]:
    from ruamel.yaml.nodes import ScalarNode

    found: dict[str, Any] = {}
    for key, value in node.value:
        line = key.start_mark.line + 1
        if not isinstance(key, ScalarNode):
            written.report(line, "a key is a single word")
            continue
        name = str(key.value)
        if name in found:
            first = written.keys[(*path, name)]
            written.report(line, f"`{name}` is written twice; first on line {first}")
            continue
        written.keys[(*path, name)] = line
        written.lines[(*path, name)] = (
            value.start_mark.line + 1 if isinstance(value, ScalarNode) else line
        )
        found[name] = _value(value, (*path, name), written)
    return found


def _scalar(node: ScalarNode, path: Path, written: Written) -> Plain:
    text = str(node.value)
    if node.style is not None:
        return text
    if readings_differ(text):
        written.suspect.add(path)
        bool_like = text.casefold() in {"y", "n", "yes", "no", "on", "off"}
        also = " (or write true or false)" if bool_like else ""
        written.report(
            node.start_mark.line + 1,
            f"`{text}` without quotes is read one way by some tools and another by "
            "others",
            f'quote it: "{text}"{also}',
        )
        return text
    if not text:
        written.lines[path] = written.keys.get(path, written.lines[path])
    return read_plain(text)
