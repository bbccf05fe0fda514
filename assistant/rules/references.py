"""Which names in a pack point to other items, and whether those exist."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.checks.kinds import CheckBase, LookCheck
from assistant.record import Item, Record
from assistant.rules.mistakes import Path
from assistant.rules.pack import FILES, Pack


@dataclass(frozen=True, slots=True)
class Reference:
    """A name at `path` of an item that must be an id in `file`."""

    path: Path
    file: str
    name: str


POINTERS: Mapping[str, Mapping[str, str]] = {
    "signals": {
        "waits": "waits",
        "stops": "stops",
        "causes": "causes",
        "cautions": "cautions",
        "same_as": "signals",
        "signals": "signals",
        "checks": "checks",
        "procedure": "procedures",
    },
    "waits": {"lamp_during": "signals"},
    "stops": {"signal": "signals", "causes": "causes"},
    "checks": {"sensor": "sensors", "sensors": "sensors", "cautions": "cautions"},
    "procedures": {"causes": "causes"},
}
"""File -> key that holds one name or several -> file whose ids they are."""


def items_of(pack: Pack) -> dict[str, tuple[Item, ...]]:
    """Return the items of each file of a pack."""
    return {name: tuple(getattr(pack, name)) for name in FILES}


def references(file: str, written: Mapping[str, object]) -> Iterator[Reference]:
    """Yield every name in an item of `file` that points to another item.

    `written` is the item as keys and values, right in its shape or not; the fields
    of a read item (`vars`) serve as well.
    """
    for key, target in POINTERS.get(file, {}).items():
        for path, name in _names(key, written.get(key)):
            yield Reference(path, target, name)
    for place, level in _parts(written.get("levels")):
        shown = level.get("signal")
        if isinstance(shown, str):
            yield Reference(("levels", place, "signal"), "signals", shown)
    for place, outcome in _parts(written.get("outcomes")):
        yield from _of_outcome(("outcomes", place), outcome)


def _names(key: str, named: object) -> Iterator[tuple[Path, str]]:
    """Yield the one name, or each of several, that a key holds."""
    if isinstance(named, str) and named:
        yield (key,), named
    for place, name in enumerate(named if isinstance(named, tuple) else ()):
        if isinstance(name, str):
            yield (key, place), name


def _parts(listed: object) -> Iterator[tuple[int, Mapping[str, object]]]:
    """Yield the parts of an item that are keys and values, as written or as read."""
    for place, part in enumerate(listed if isinstance(listed, tuple) else ()):
        held = vars(part) if isinstance(part, Record) else part
        if isinstance(held, Mapping):
            yield place, held


def _of_outcome(at: Path, outcome: Mapping[str, object]) -> Iterator[Reference]:
    moves = outcome.get("moves")
    for cause in moves if isinstance(moves, Mapping) else ():
        yield Reference((*at, "moves", cause), "causes", cause)
    then = outcome.get("then")
    if isinstance(then, str):
        yield Reference((*at, "then"), "checks", then)


def unresolved(
    file: str,
    written: Mapping[str, object],
    known: Mapping[str, frozenset[str]],
    pack_id: str,
) -> Iterator[Reference]:
    """Yield the references of an item that no id in `known` answers.

    Parameters
    ----------
    file, written : str, mapping
        As for `references`.
    known : mapping of str to frozenset of str
        File -> ids; a file that is not a key is not judged.
    pack_id : str
        A global name of another pack (`pack/id`) is left to the library.
    """
    for reference in references(file, written):
        pack, slash, short = reference.name.rpartition("/")
        if slash and pack != pack_id:
            continue
        if reference.file in known and short not in known[reference.file]:
            yield reference


def results_of(check: CheckBase) -> tuple[str, ...]:
    """Return the results that an outcome of `check` may name."""
    return check.options if isinstance(check, LookCheck) else ("pass", "fail")
