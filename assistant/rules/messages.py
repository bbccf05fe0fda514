"""Says in one plain line what pydantic found wrong with a written item."""

from __future__ import annotations

import ast
from collections.abc import Callable

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from assistant.rules.mistakes import Mistake, Path, nearest, suggest
from assistant.rules.shapes import keys_at, kinds_with
from assistant.rules.yaml_lines import Written

LONGEST = 40
"""Characters of a value quoted in a message."""

_PLAIN = {
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "bool_type": "true or false",
    "tuple_type": "a list",
    "dict_type": "keys and values",
    "model_type": "keys and values",
    "model_attributes_type": "keys and values",
}
_LIMIT = {
    "greater_than_equal": ("ge", "at least"),
    "greater_than": ("gt", "more than"),
    "less_than_equal": ("le", "at most"),
    "less_than": ("lt", "less than"),
}


def explain(
    error: ValidationError,
    model: type[BaseModel],
    base: Path,
    written: Written,
    name: str,
) -> list[Mistake]:
    """Return one mistake for each thing wrong, at the line of its own node.

    Parameters
    ----------
    error : ValidationError
        What validation of the value at `base` raised.
    model : type of BaseModel
        The model that the value was read as.
    base : Path
        Where the value stands in `written`.
    name : str
        How messages call the item, such as its id.
    """
    details = error.errors(include_url=False)
    meant = _meant(details, model)
    mistakes = []
    for detail in details:
        loc: Path = tuple(detail["loc"])
        if (*base, *loc) in written.suspect:
            continue
        if detail["type"] == "missing" and (loc[:-1], loc[-1]) in meant:
            continue
        if detail["type"] == "too_short" and _wrong_inside(loc, details):
            continue
        what, hint = _say(detail, model)
        lines = written.keys if detail["type"] == "extra_forbidden" else written.lines
        line = nearest({**written.lines, **lines}, (*base, *loc))
        mistakes.append(Mistake(written.file, line, f"{name}: {what}", hint))
    return mistakes


def _wrong_inside(loc: Path, details: list[ErrorDetails]) -> bool:
    """Return whether an entry of a list is wrong: it then is not counted in it."""
    return any(
        len(detail["loc"]) > len(loc) and detail["loc"][: len(loc)] == loc
        for detail in details
    )


def _meant(
    details: list[ErrorDetails], model: type[BaseModel]
) -> set[tuple[Path, str | int]]:
    """Keys that a misspelt one stands for: not reported as missing as well."""
    found: set[tuple[Path, str | int]] = set()
    for detail in details:
        if detail["type"] == "extra_forbidden":
            loc = detail["loc"]
            said = suggest(str(loc[-1]), keys_at(model, loc[:-1]))
            found.add((loc[:-1], said.removeprefix("did you mean `").rstrip("`?")))
    return found


def _say(detail: ErrorDetails, model: type[BaseModel]) -> tuple[str, str]:
    kind = detail["type"]
    loc = detail["loc"]
    key = ".".join(str(part) for part in loc) or "the item"
    for prefix, say in _SAYINGS.items():
        if kind.startswith(prefix):
            return say(detail, model, key)
    given = _short(detail["input"])
    if kind in _PLAIN:
        return f"`{key}` is {given}; expected {_PLAIN[kind]}", ""
    if kind in _LIMIT:
        bound, words = _LIMIT[kind]
        limit = detail.get("ctx", {}).get(bound)
        return f"`{key}` is {given}; expected {words} {limit}", ""
    return f"`{key}` is {given}: {detail['msg'].lower()}", ""


def _missing(
    detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    del detail
    return f"`{key}` is missing", ""


def _unknown(detail: ErrorDetails, model: type[BaseModel], key: str) -> tuple[str, str]:
    loc = detail["loc"]
    keys = keys_at(model, loc[:-1])
    near = suggest(str(loc[-1]), keys)
    kinds = kinds_with(model, str(loc[-1])) if len(loc) == 1 else ()
    elsewhere = f"a key of kind {', '.join(kinds)}" if kinds else ""
    return f"unknown key `{key}`", elsewhere or near or f"known: {', '.join(keys)}"


def _literal(
    detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    expected = detail.get("ctx", {}).get("expected", "")
    choices = _choices(str(expected))
    near = suggest(str(detail["input"]), choices)
    among = f"one of {', '.join(choices)}"
    what = f"`{key}` is {_short(detail['input'])}"
    return what, f"{near} {among}" if near else among


def _choices(expected: str) -> tuple[str, ...]:
    parts = expected.replace(" or ", ", ").split(", ")
    return tuple(str(ast.literal_eval(part)) for part in parts if part)


def _string(detail: ErrorDetails, _model: type[BaseModel], key: str) -> tuple[str, str]:
    given = detail["input"]
    if isinstance(given, bool | int | float):
        word = str(given).lower() if isinstance(given, bool) else str(given)
        kind = "true or false" if isinstance(given, bool) else "a number"
        return f"`{key}` is read as {kind}; expected text", f'quote it: "{word}"'
    if given is None:
        return f"`{key}` has no value; expected text", ""
    return f"`{key}` is {_short(given)}; expected text", ""


def _short_text(
    _detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    return f"`{key}` is empty", ""


def _short_list(
    detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    least = detail.get("ctx", {}).get("min_length", 1)
    return f"`{key}` needs at least {least} entries", ""


def _pattern(
    detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    return (
        f"`{key}` is {_short(detail['input'])}",
        "an id has small letters, digits and hyphens only",
    )


def _value_error(
    detail: ErrorDetails, _model: type[BaseModel], key: str
) -> tuple[str, str]:
    reason = str(detail.get("ctx", {}).get("error", detail["msg"]))
    return (f"`{key}`: {reason}" if detail["loc"] else reason), ""


_SAYINGS: dict[str, Callable[[ErrorDetails, type[BaseModel], str], tuple[str, str]]] = {
    "missing": _missing,
    "extra_forbidden": _unknown,
    "literal_error": _literal,
    "string_type": _string,
    "string_too_short": _short_text,
    "string_pattern_mismatch": _pattern,
    "too_short": _short_list,
    "value_error": _value_error,
}


def _short(value: object) -> str:
    """Return the value as a person wrote it, cut to one line."""
    if value is None:
        return "empty"
    if isinstance(value, dict):
        return "keys and values"
    if isinstance(value, tuple | list):
        return "a list"
    text = str(value).lower() if isinstance(value, bool) else str(value)
    cut = text[:LONGEST] + ("…" if len(text) > LONGEST else "")
    return f"`{cut}`"
