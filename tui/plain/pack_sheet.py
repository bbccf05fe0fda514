"""A rule pack as a person reads it: trade words, sources, for which units. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from assistant.record import Item, Record, Scope, Source
from assistant.rules.examples import in_words
from assistant.rules.pack import FILES, Pack, PackHead
from assistant.signals.kinds import SignalBase
from assistant.signals.sights import sight_of
from assistant.units.quantity import Quantity
from tui.plain.text import wrap

_KIND = {
    "maker": "from the maker's manual",
    "shop": "shop rule",
    "common": "common practice",
}
_SECTIONS = {
    "signals": "Lights and codes",
    "waits": "Timers",
    "stops": "Protection stops and lockout",
    "sensors": "Sensors",
    "checks": "Checks",
    "causes": "Causes",
    "procedures": "Cards and calls",
    "cautions": "Cautions",
}
_WORDS = {
    "applies_to": "only for",
    "is_fault": "a fault",
    "operates": "runs on",
    "lamp_during": "light meanwhile",
    "give_up": "at most",
    "minimum": "at least",
    "usual": "usually",
    "overdue": "when that is over",
    "follows": "then",
    "event": "stop by",
    "limit": "locks on stop number",
    "window": "within",
    "edge": "a stop at the edge",
    "evidence_lost": "loses",
    "allowed_for": "who may",
    "needs": "work",
    "before_ordering": "prove before ordering",
    "frequency": "how often",
    "r0": "resistance R0",
    "t0": "at T0",
    "beta": "B",
    "condition_low": "not below",
    "condition_high": "not above",
}
"""Keys whose own name says too little to somebody who has not read a pack."""
_VALUES = {
    "power_off": "power off",
    "opens_circuit": "opens the circuit",
    "compressor_stopped": "the compressor stopped",
    "does_not_count": "does not count",
    "log_only": "noted only",
}
_PASSED_OVER = frozenset(("id", "kind", "source", "name", "meaning", "points", "note"))
_PATTERN = frozenset(("lamp", "count", "display", "code", "lamps"))
"""Keys that the sight of a row says already, beside windows and pauses."""


def pack_lines(pack: Pack, width: int) -> list[str]:
    """Return a pack in lines of at most `width`."""
    lines = _head_lines(pack.head, width)
    for name in FILES:
        items: Sequence[Item] = getattr(pack, name)
        if items:
            lines += ["", *wrap(f"{_SECTIONS[name].upper()} ({len(items)})", width)]
        for item in items:
            lines += _item_lines(item, width)
    return lines


def _head_lines(head: PackHead, width: int) -> list[str]:
    said = f"{head.title}. Pack {head.id}, version {head.version}: {_KIND[head.kind]}"
    by = f", by {head.author}, {head.date}" if head.author else ""
    lines = wrap(f"{said}{by}.", width)
    units = "; ".join(_scope(scope) for scope in head.applies_to)
    lines += wrap(f"For: {units or 'any unit (none is stated)'}", width, "", "  ")
    for alias, document in head.documents.items():
        told = f"{alias}: {document.title}, revision {document.revision}"
        lines += wrap(f"Rests on {told}", width, "", "  ")
    for entry in head.supersedes:
        told = (
            f"{entry.by} replaces {', '.join(entry.rows)} ({entry.doc} p. {entry.page})"
        )
        lines += wrap(told, width, "", "  ")
    return lines


def _scope(scope: Scope) -> str:
    said = []
    for key, value in scope.model_dump(exclude_defaults=True).items():
        name = {"models": "", "unit_role": "unit "}.get(key, f"{_spoken(key)} ")
        said.append(f"{name}{_value(value)}")
    return ", ".join(said)


def _item_lines(item: Item, width: int) -> list[str]:
    title = str(getattr(item, "meaning", None) or getattr(item, "name", item.id))
    if isinstance(item, SignalBase):
        title = f"{_sight(item)}: {title}"
    lines = ["", *wrap(f"{title} [{item.id}]", width)]
    for key, values in _said(item):
        if len(values) == 1:
            lines += wrap(f"{_spoken(key)}: {values[0]}", width, "  ", "    ")
            continue
        lines += wrap(f"{_spoken(key)}:", width, "  ")
        lines += [x for each in values for x in wrap(each, width, "  - ", "    ")]
    if item.note:
        lines += wrap(f"note: {item.note}", width, "  ", "    ")
    return [*lines, *wrap(_source(item.source), width, "  ", "    ")]


def _sight(item: SignalBase) -> str:
    return in_words(sight_of(item))  # type: ignore[arg-type]  # every such row is seen


def _source(source: Source | None) -> str:
    if source is None:
        return "no page is named"
    return f'{source.doc}, page {source.page}: "{source.quote}"'


def _said(item: Item) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield each key that says something, with its values in words."""
    for key, field in type(item).model_fields.items():
        value = getattr(item, key)
        if key in _PASSED_OVER or value is None or value == field.default:
            continue
        if isinstance(item, SignalBase) and (key in _PATTERN or value is False):
            continue
        if key == "applies_to":
            yield key, ("; ".join(_scope(scope) for scope in item.applies_to),)
        elif isinstance(value, tuple) and isinstance(value[0], Record):
            yield key, tuple(_value(each) for each in value)
        else:
            yield key, (_value(value),)


def _value(value: object) -> str:
    """Return a value in words, whatever later kinds hold."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, Quantity):
        return value.text or f"{value.value:g} {value.unit}"
    if isinstance(value, Mapping):
        return ", ".join(_pair(key, held) for key, held in value.items() if _says(held))
    if isinstance(value, tuple | list):
        parts = [_value(each) for each in value]
        return ("; " if any("," in part for part in parts) else ", ").join(parts)
    if isinstance(value, Record):
        kept = {key: getattr(value, key) for key in type(value).model_fields}
        return _value({k: v for k, v in kept.items() if v != _default(value, k)})
    return _VALUES.get(str(value), str(value).replace("_", " "))


def _default(value: Record, key: str) -> object:
    return type(value).model_fields[key].default


def _says(held: object) -> bool:
    return held is not None and held not in ((), "", {})


def _pair(key: object, held: object) -> str:
    return f"{_spoken(str(key))} {_value(held)}"


def _spoken(key: str) -> str:
    return _WORDS.get(key, key.replace("_", " "))
