"""What each file of a pack may hold: the kinds, their models and their keys."""

from __future__ import annotations

from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel

from assistant.checks.kinds import Check, Sensor
from assistant.record import Item
from assistant.rules.kinds import Cause, CautionItem, Procedure
from assistant.signals.kinds import SignalItem
from assistant.timing.stop_kinds import Stop
from assistant.timing.wait_kinds.every import Wait


def _variants(union: object) -> tuple[type[Item], ...]:
    inner = get_args(union)[0] if get_origin(union) is not None else union
    models = get_args(inner) or (inner,)
    return tuple(models)


def _literals(model: type[BaseModel], field: str) -> tuple[str, ...]:
    annotation = model.model_fields[field].annotation
    return tuple(get_args(annotation)) if get_origin(annotation) is Literal else ()


def _kinds(*models: type[Item]) -> dict[str, type[Item]]:
    return {kind: model for model in models for kind in _literals(model, "kind")}


KINDS: dict[str, dict[str, type[Item]]] = {
    "signals": _kinds(*_variants(SignalItem)),
    "waits": _kinds(*_variants(Wait)),
    "stops": _kinds(*_variants(Stop)),
    "sensors": _kinds(*_variants(Sensor)),
    "checks": _kinds(*_variants(Check)),
    "causes": _kinds(Cause),
    "procedures": _kinds(*_variants(Procedure)),
    "cautions": _kinds(*_variants(CautionItem)),
}
"""File -> value of `kind` -> model."""


def keys_at(model: type[BaseModel], path: tuple[str | int, ...]) -> tuple[str, ...]:
    """Return the keys a person may write at `path` inside `model`.

    Examples
    --------
    >>> keys_at(KINDS["signals"]["steady"], ("lamp",))
    ('box', 'board', 'label', 'colour', 'role')
    """
    here: type[BaseModel] | None = model
    for step in path:
        if isinstance(step, int) or here is None:
            continue
        field = by_alias(here).get(step)
        here = _inner(field) if field is not None else here
    return tuple(by_alias(here)) if here is not None else ()


def kinds_with(model: type[BaseModel], key: str) -> tuple[str, ...]:
    """Return the kinds of the same file that have a key which `model` has not.

    Examples
    --------
    >>> kinds_with(KINDS["waits"]["minimum_off"], "condition_low")
    ('standby',)
    """
    for kinds in KINDS.values():
        if model in kinds.values():
            return tuple(k for k, other in kinds.items() if key in by_alias(other))
    return ()


def by_alias(model: type[BaseModel]) -> dict[str, Any]:
    """Return the written name of each field with its annotation."""
    return {
        field.alias or name: field.annotation
        for name, field in model.model_fields.items()
    }


def _inner(annotation: object) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for argument in get_args(annotation):
        found = _inner(argument)
        if found is not None:
            return found
    return None
