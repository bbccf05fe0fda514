"""Writes plain data as the YAML that a pack holds: block items, quoted codes. Pure."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

from assistant.rules.scalars import read_plain, readings_differ

_SAFE = re.compile(r"[A-Za-z0-9°µΩ±(][\w°µΩ±%/.,()+ -]*")
_CODES = frozenset(("code", "sub", "sign", "codes", "glyph_equivalence", "quote"))
"""Keys whose text is always quoted."""
WIDEST = 70
_OPEN = frozenset(("draft", "doubts", "left_out", "settled"))
"""Keys whose values stand a line each, for a person to take one out."""


def item_text(item: Mapping[str, Any]) -> str:
    """Return an item of a list as the lines of a pack's file.

    Examples
    --------
    >>> print(item_text({"id": "a", "lamp": {"label": "LD2"}, "code": "E4"}), end="")
    - id: a
      lamp: {label: LD2}
      code: "E4"
    """
    lines = _block(item, "  ")
    return "\n".join(["- " + lines[0].lstrip(), *lines[1:]]) + "\n"


def mapping_text(data: Mapping[str, Any]) -> str:
    """Return a whole file of keys and values."""
    return "\n".join(_block(data, "")) + "\n"


def _block(data: Mapping[str, Any], indent: str) -> list[str]:
    lines: list[str] = []
    for key, value in data.items():
        flow = _flow(value, str(key))
        fits = len(indent) + len(key) + len(flow) <= WIDEST
        short = fits and key not in _OPEN
        if isinstance(value, Mapping) and value and not short:
            lines += [f"{indent}{_key(key)}:", *_block(value, f"{indent}  ")]
        elif _is_list(value) and value and not short:
            lines.append(f"{indent}{_key(key)}:")
            lines += [f"{indent}  - {_flow(each, str(key))}" for each in value]
        else:
            lines.append(f"{indent}{_key(key)}: {flow}")
    return lines


def _is_list(value: object) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)


def _flow(value: object, key: str) -> str:
    """Return a value on one line."""
    if isinstance(value, Mapping):
        parts = (f"{_key(k)}: {_flow(v, str(k))}" for k, v in value.items())
        return "{" + ", ".join(parts) + "}"
    if isinstance(value, str):
        return _text(value, key)
    if _is_list(value):
        assert isinstance(value, Sequence)  # noqa: S101 - told apart just above
        return "[" + ", ".join(_flow(each, key) for each in value) + "]"
    return json.dumps(value)


def _key(key: object) -> str:
    return _text(str(key), "")


def _text(text: str, key: str) -> str:
    """Return text plain where every reader takes it as that text, else quoted."""
    plain = (
        key not in _CODES
        and _SAFE.fullmatch(text) is not None
        and text == text.strip()
        and isinstance(read_plain(text), str)
        and not readings_differ(text)
        and ", " not in text
        and "," not in text[-1:]
    )
    return text if plain else json.dumps(text, ensure_ascii=False)
