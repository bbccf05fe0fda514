"""JSON Schema of a pack's files, from the models that the loader validates with.

For editors: it offers keys and kinds while somebody writes. The loader stays the
judge, for it knows what a schema cannot say.
"""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import models_json_schema

from assistant.rules.pack import FILES, PackHead
from assistant.rules.shapes import KINDS

DIALECT = "https://json-schema.org/draft/2020-12/schema"
HEAD = "pack"
NAMES = (HEAD, *FILES)
"""Every file of a pack that has a schema."""
_REF = "#/$defs/{model}"
_QUANTITY = {
    "title": "Quantity",
    "description": "A number and its unit, such as 8 s, 15 kohm or 25 °C.",
    "type": "string",
    "pattern": r"^\s*[-+−]?[\d.,]+(?:[eE][-+]?\d+)?\s*[^\d\s].*$",
    "examples": ["8 s", "3 min", "15 kohm", "25 °C", "2.1 MPa gauge", "5 %"],
}
_NOT_WRITTEN = {"ResistanceTable": ("points",)}
"""Keys that the loader fills from elsewhere and nobody writes."""


def schema_of(name: str) -> dict[str, Any]:
    """Return the schema of one file of a pack, such as `signals` or `pack`.

    Raises
    ------
    KeyError
        A pack has no such file.
    """
    if name == HEAD:
        refs, definitions = _defined((PackHead,))
        return _whole(name, {"$ref": refs[PackHead]}, definitions)
    refs, definitions = _defined(tuple(KINDS[name].values()))
    kinds = {kind: refs[model] for kind, model in KINDS[name].items()}
    choice = {
        "discriminator": {"propertyName": "kind", "mapping": kinds},
        "oneOf": [{"$ref": ref} for ref in dict.fromkeys(kinds.values())],
    }
    return _whole(name, {"type": "array", "items": choice}, definitions)


def _defined(
    models: tuple[type[BaseModel], ...],
) -> tuple[dict[type[BaseModel], str], dict[str, Any]]:
    """Return where each model is defined, and every definition."""
    pairs = [(model, "validation") for model in dict.fromkeys(models)]
    places, made = models_json_schema(pairs, by_alias=True, ref_template=_REF)  # type: ignore[arg-type]
    definitions = made.get("$defs", {})
    if "Quantity" in definitions:
        definitions["Quantity"] = _QUANTITY
    for model, keys in _NOT_WRITTEN.items():
        for key in keys:
            definitions.get(model, {}).get("properties", {}).pop(key, None)
    refs = {model: places[model, "validation"]["$ref"] for model in models}
    return refs, definitions


def _whole(
    name: str, root: dict[str, Any], definitions: dict[str, Any]
) -> dict[str, Any]:
    title = f"faultleaf rule pack: {name}.yaml"
    used = _reached(root, definitions)
    return {"$schema": DIALECT, "title": title, **root, "$defs": used}


def _reached(root: dict[str, Any], definitions: dict[str, Any]) -> dict[str, Any]:
    """Return the definitions that something refers to, sorted."""
    found: set[str] = set()
    left: list[object] = [root]
    while left:
        here = left.pop()
        if isinstance(here, dict):
            ref = here.get("$ref")
            name = ref.rpartition("/")[2] if isinstance(ref, str) else ""
            if name in definitions and name not in found:
                found.add(name)
                left.append(definitions[name])
            left += list(here.values())
        elif isinstance(here, list):
            left += here
    return {name: definitions[name] for name in sorted(found)}
