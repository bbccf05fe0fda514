"""Settles one doubt of a drafted row by what a person read on the page. Pure."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

from assistant.errors import InputError
from assistant.rules.yaml_lines import read_yaml_text
from assistant.units.parse import find_unit
from ingest.drafts.gather import item_of, shortcomings
from ingest.drafts.model import SEEN, DraftRow
from ingest.drafts.words import slug

LOOKED_AT = frozenset(
    (
        "degree",
        "digit_order",
        "figures",
        "glyph",
        "number",
        "ocr",
        "order",
        "phase",
        "range",
        "rising",
        "sensor",
        "sign",
        "smooth",
    )
)
"""Doubts about what is written: `seen` says that the page has it like this."""
_POINT = ("temperature", "resistance")
_COLOURS = ("green", "red", "amber", "yellow", "orange", "blue", "white")


def settle(row: DraftRow, doubt: str, value: str, who: str) -> None:
    """Take a doubt away and put in what a person says the page has.

    Parameters
    ----------
    row : DraftRow
        Changed in place.
    doubt, value : str
        The doubt's name, and the value; `seen` where it is only to be looked at.
    who : str
        Name and time, for the record.

    Raises
    ------
    InputError
        The row has no such doubt, or the value does not settle it.
    """
    if doubt not in row.doubts:
        named = ", ".join(row.doubts) or "none"
        what = f"`{row.id}` has no doubt `{doubt}`; it has: {named}"
        raise InputError(what, "faultleaf rules show DRAFT lists each row's doubts")
    if value.strip() == SEEN:
        if doubt not in LOOKED_AT:
            told = f"`{row.id}`: `{doubt}` is not settled by looking"
            raise InputError(told, f"write the value: --settle {row.id} {doubt}=VALUE")
    else:
        before = _wrong(row)
        _put(row, doubt, value.strip())
        after = _wrong(row).items()
        fresh = [why for key, why in after if before.get(key) != why]
        if fresh:
            raise InputError(
                f"`{row.id}`: {doubt}={value}: {'; '.join(fresh)}",
                f"write what the page has: --settle {row.id} {doubt}=VALUE",
            )
    del row.doubts[doubt]
    row.settled.append(f"{doubt}={' '.join(value.split())}, {who}")


def _wrong(row: DraftRow) -> Mapping[str, str]:
    if row.is_point:
        return {}
    return dict(shortcomings(row.file, item_of(row)))


def _put(row: DraftRow, doubt: str, value: str) -> None:
    if doubt in _OWN:
        _OWN[doubt](row, value)
    elif doubt.endswith("_unit") and doubt.removesuffix("_unit") in _POINT:
        _point_unit(row, doubt.removesuffix("_unit"), value)
    elif doubt in _POINT:
        row.fields[doubt] = value
    elif doubt.startswith("lamp-"):
        _lamp_state(row, doubt.removeprefix("lamp-"), value)
    elif doubt in LOOKED_AT:
        told = f"`{row.id}`: `{doubt}` has no value of its own"
        hint = (
            f"look at the page, then --settle {row.id} {doubt}={SEEN}, or edit the row"
        )
        raise InputError(told, hint)
    else:
        row.fields[doubt] = plain(value)


def plain(text: str) -> Any:  # noqa: ANN401 - whatever a person wrote
    """Return a value as a pack's file would read it.

    Raises
    ------
    InputError
        It is not YAML on one line.
    """
    written = read_yaml_text(text, "value")
    if not written.readable or written.mistakes:
        return text
    return written.data


def _lamp(row: DraftRow, value: str) -> None:
    held = plain(value)
    if isinstance(held, dict):
        row.fields["lamp"] = held
    else:
        key = "colour" if value.casefold() in _COLOURS else "label"
        row.fields["lamp"] = {key: value}


def _lamp_state(row: DraftRow, name: str, value: str) -> None:
    count = re.fullmatch(r"(\d{1,2})(?: flashes)?", value)
    said = {"state": "count", "count": int(count[1])} if count else {"state": value}
    lamps = []
    for entry in row.fields.get("lamps", ()):
        lamp = entry["lamp"]
        own = slug(lamp.get("label") or lamp.get("colour", "")) == name
        lamps.append({"lamp": lamp, **said} if own else entry)
    row.fields["lamps"] = lamps


def _point_unit(row: DraftRow, name: str, unit: str) -> None:
    if find_unit(unit) is None:
        raise InputError(f"`{row.id}`: {unit!r} is no unit", "such as kohm or °C")
    row.fields[name] = f"{row.fields.get(name, '')} {unit}".strip()


def _degree(row: DraftRow, value: str) -> None:
    row.fields["temperature"] = value


def _condition(row: DraftRow, value: str) -> None:
    held = plain(value)
    if isinstance(held, dict):
        row.fields |= held
    else:
        row.fields["precondition"] = [value]


def _duration(row: DraftRow, value: str) -> None:
    for words, name in (("at least", "minimum"), ("at most", "give_up")):
        if value.startswith(words):
            row.fields[name] = value.removeprefix(words).strip()
            return
    row.fields["usual"] = value


def _reset(row: DraftRow, value: str) -> None:
    held = plain(value)
    if isinstance(held, tuple):
        row.fields["resets"] = held
    elif isinstance(held, dict):
        row.fields["resets"] = [held]
    else:
        row.fields["release"] = value


def _event(row: DraftRow, value: str) -> None:
    row.fields["event"] = value
    row.fields.setdefault("name", f"stops: {value}")


def _band(row: DraftRow, value: str) -> None:
    held = plain(value)
    if not isinstance(held, dict):
        hint = '{low: "4.5 V", high: "5.5 V"}, or one of them'
        raise InputError(f"`{row.id}`: a band is written as keys", hint)
    row.fields |= held


def _unit(row: DraftRow, value: str) -> None:
    unit = find_unit(value)
    if unit is None:
        raise InputError(f"`{row.id}`: {value!r} is no unit", "such as V or kohm")
    for end in ("low", "high"):
        if end in row.fields:
            row.fields[end] = f"{row.fields[end]} {value}"
    needs = {"ohm": "power_off", "PaG": "gauges", "Pa": "gauges"}
    row.fields["needs"] = needs.get(unit.canonical, "live")
    if row.fields["needs"] == "power_off":
        row.fields["requires"] = ["power off"]


def _gauge(row: DraftRow, value: str) -> None:
    if value not in ("gauge", "absolute"):
        hint = "write gauge or absolute"
        raise InputError(f"`{row.id}`: {value!r} is neither", hint)
    for end in ("low", "high"):
        if end in row.fields:
            row.fields[end] = f"{row.fields[end]} {value}"


_OWN: dict[str, Callable[[DraftRow, str], None]] = {
    "lamp": _lamp,
    "degree": _degree,
    "condition": _condition,
    "duration": _duration,
    "reset": _reset,
    "event": _event,
    "band": _band,
    "behaviour": _band,
    "unit": _unit,
    "gauge": _gauge,
}
