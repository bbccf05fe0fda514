"""Holds data against the part of JSON Schema that our schemas use."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

_TYPES: dict[str, tuple[type, ...]] = {
    "string": (str,),
    "integer": (int,),
    "number": (int, float),
    "boolean": (bool,),
    "array": (tuple, list),
    "object": (dict,),
    "null": (type(None),),
}
_KNOWN = {
    "$defs", "$ref", "$schema", "additionalProperties", "anyOf", "const", "default",
    "description", "discriminator", "enum", "examples", "exclusiveMaximum",
    "exclusiveMinimum", "items", "maxItems", "maxLength", "maximum", "minItems",
    "minLength", "minimum", "oneOf", "pattern",
    "properties", "propertyNames", "required", "title", "type",
}  # fmt: skip


def problems(data: object, schema: Mapping[str, Any]) -> list[str]:
    """Return where data does not fit a schema; unknown keywords are refused."""
    return list(_check(data, schema, schema, "$"))


def _check(
    data: object, here: Mapping[str, Any], root: Mapping[str, Any], at: str
) -> Iterator[str]:
    unknown = set(here) - _KNOWN
    assert not unknown, f"the check does not know {unknown}"
    yield from _elsewhere(data, here, root, at)
    if "type" in here and not _is(data, here["type"]):
        yield f"{at}: {data!r} is no {here['type']}"
        return
    if "const" in here and data != here["const"]:
        yield f"{at}: {data!r} is not {here['const']!r}"
    if "enum" in here and data not in here["enum"]:
        yield f"{at}: {data!r} is not one of {here['enum']}"
    yield from _inside(data, here, root, at)


def _elsewhere(
    data: object, here: Mapping[str, Any], root: Mapping[str, Any], at: str
) -> Iterator[str]:
    """Follow references and choices."""
    if "$ref" in here:
        name = here["$ref"].removeprefix("#/$defs/")
        yield from _check(data, root["$defs"][name], root, at)
    for word in ("anyOf", "oneOf"):
        if word in here:
            fits = [not list(_check(data, each, root, at)) for each in here[word]]
            if not any(fits) or (word == "oneOf" and sum(fits) > 1):
                yield f"{at}: fits {sum(fits)} of {word}"


def _inside(
    data: object, here: Mapping[str, Any], root: Mapping[str, Any], at: str
) -> Iterator[str]:
    if isinstance(data, str):
        yield from _text(data, here, at)
    elif isinstance(data, int | float) and not isinstance(data, bool):
        yield from _number(data, here, at)
    elif isinstance(data, Mapping):
        yield from _object(data, here, root, at)
        for name in data if "propertyNames" in here else ():
            yield from _check(name, here["propertyNames"], root, f"{at}.{name}")
    elif isinstance(data, Sequence):
        if not here.get("minItems", 0) <= len(data) <= here.get("maxItems", len(data)):
            yield f"{at}: too few or too many"
        for place, each in enumerate(data):
            yield from _check(each, here.get("items", {}), root, f"{at}[{place}]")


def _is(data: object, name: str) -> bool:
    if isinstance(data, bool) and name in ("integer", "number"):
        return False
    return isinstance(data, _TYPES[name])


def _text(data: str, here: Mapping[str, Any], at: str) -> Iterator[str]:
    if "pattern" in here and not re.search(here["pattern"], data):
        yield f"{at}: {data!r} does not fit {here['pattern']}"
    if not here.get("minLength", 0) <= len(data) <= here.get("maxLength", len(data)):
        yield f"{at}: {data!r} is too short or too long"


def _number(data: float, here: Mapping[str, Any], at: str) -> Iterator[str]:
    low = here.get("minimum", data)
    if data < low or data > here.get("maximum", data):
        yield f"{at}: {data} is out of bounds"
    if "exclusiveMinimum" in here and data <= here["exclusiveMinimum"]:
        yield f"{at}: {data} is too small"
    if "exclusiveMaximum" in here and data >= here["exclusiveMaximum"]:
        yield f"{at}: {data} is too large"


def _object(
    data: Mapping[str, Any], here: Mapping[str, Any], root: Mapping[str, Any], at: str
) -> Iterator[str]:
    known = here.get("properties", {})
    more = here.get("additionalProperties", True)
    for key, value in data.items():
        yield from _check(key, here.get("propertyNames", {}), root, f"{at} key")
        if key in known:
            yield from _check(value, known[key], root, f"{at}.{key}")
        elif isinstance(more, Mapping):
            yield from _check(value, more, root, f"{at}.{key}")
        elif not more:
            yield f"{at}: unknown key {key}"
    for key in here.get("required", ()):
        if key not in data:
            yield f"{at}: {key} is missing"
