"""What a written `applies_to` must keep: patterns that fit, runs that can be read."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.record import Scope, SerialRange, VersionRange
from assistant.rules.findings import Finding
from assistant.rules.fittings import settings_in
from assistant.rules.mistakes import Path
from assistant.rules.patterns import pattern_mistake
from assistant.rules.plates import read_phases, read_voltages
from assistant.rules.ranges import Key
from assistant.rules.serials import serial_form_known, serial_key, version_key

ENDS = ("first", "last", "before")
_PATTERNS = ("models", "exclude", "paired_with", "board_pn")
_FORMS = (
    "write YYWW, WWYY, YYMM, YYYYWW or YYL (a letter for the month), with X for a "
    "sign passed over; or NUMBER for a plain number"
)


def check_scopes(scopes: tuple[Scope, ...], base: Path) -> Iterator[Finding]:
    """Yield what is wrong in `applies_to`."""
    for place, scope in enumerate(scopes):
        at = (*base, place)
        if scope == Scope():
            yield Finding(at, "an entry of `applies_to` states nothing")
        yield from _patterns(scope, at)
        yield from _classes(scope, at)
        if scope.serial is not None:
            yield from _serial(scope.serial, (*at, "serial"))
        if scope.firmware is not None:
            yield from _firmware(scope.firmware, (*at, "firmware"))


def _patterns(scope: Scope, at: Path) -> Iterator[Finding]:
    for field in _PATTERNS:
        for number, pattern in enumerate(getattr(scope, field)):
            wrong = pattern_mistake(pattern)
            if wrong:
                yield Finding((*at, field, number), f"pattern `{pattern}`: {wrong}")
    if scope.exclude and set(scope.exclude) >= set(scope.models) != set():
        yield Finding((*at, "exclude"), "`exclude` leaves none of `models`")


def _classes(scope: Scope, at: Path) -> Iterator[Finding]:
    if scope.voltage is not None and not read_voltages(scope.voltage):
        told = f"`{scope.voltage}` is not a supply voltage"
        yield Finding((*at, "voltage"), told, 'write it as `voltage: "230"`')
    if scope.phase is not None and not read_phases(scope.phase):
        told = f"`{scope.phase}` is not a phase"
        yield Finding((*at, "phase"), told, "write 1, single, 3 or three")
    for number, setting in enumerate(scope.settings):
        if not settings_in(setting):
            told = f"`{setting}` names no switch with its state"
            yield Finding((*at, "settings", number), told, "such as `SW3-2 on`")
    for part in sorted(set(scope.fitted) & set(scope.not_fitted)):
        told = f"`{part}` cannot be both fitted and not fitted"
        yield Finding((*at, "not_fitted"), told)


def _serial(serial: SerialRange, at: Path) -> Iterator[Finding]:
    if not serial_form_known(serial.format):
        told = f"serial format `{serial.format}` is not known"
        yield Finding((*at, "format"), told, _FORMS)
        return
    if len(set(serial.letters)) != len(serial.letters):
        yield Finding((*at, "letters"), "a month letter stands for two months")
    keys: dict[str, Key | None] = {}
    for end in ENDS:
        text = getattr(serial, end)
        if text is None:
            continue
        keys[end] = serial_key(serial, text)
        if keys[end] is None:
            named = f"{serial.prefix} and {serial.format}" if serial.prefix else ""
            told = f"`{text}` is not a serial of {named or serial.format}"
            yield Finding((*at, end), told)
    yield from _run(keys, at, "serial", serial)


def _firmware(versions: VersionRange, at: Path) -> Iterator[Finding]:
    keys: dict[str, Key | None] = {}
    for end in ENDS:
        text = getattr(versions, end)
        if text is None:
            continue
        keys[end] = version_key(text)
        if keys[end] is None:
            told = f"`{text}` is not a version"
            yield Finding((*at, end), told, "write numbers with points, such as 2.10")
    yield from _run(keys, at, "version", versions)


def _run(
    keys: dict[str, Key | None], at: Path, of: str, run: SerialRange | VersionRange
) -> Iterator[Finding]:
    """Yield a run without an end, with two ends on one side, or that runs backwards."""
    if not keys:
        yield Finding(at, f"a {of} range names its `first`, its `last` or `before`")
    if {"last", "before"} <= keys.keys():
        told = "`last` belongs to the run and `before` does not: write one of them"
        yield Finding((*at, "before"), told)
    first = keys.get("first")
    for end in ("last", "before"):
        key = keys.get(end)
        backwards = key is not None and first is not None and key < first
        if backwards or (end == "before" and key is not None and key == first):
            told = f"{of} range runs backwards: {run.first} to {getattr(run, end)}"
            yield Finding((*at, end), told)
