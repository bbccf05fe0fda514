"""Finds rows that no unit and no question can ever reach, and waits without an end."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from assistant.record import Item, Scope
from assistant.rules.findings import Finding
from assistant.rules.mistakes import suggest
from assistant.rules.pack import Pack
from assistant.rules.references import items_of, references
from assistant.rules.scopes import apart
from assistant.timing.stop_kinds import StopBase, events_of, resets_at
from assistant.timing.wait_kinds.base import WaitBase
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.wait_kinds.holds import Standby
from assistant.timing.wait_kinds.shows import ButtonTiming

_NAMED_ELSEWHERE = {
    "causes": "no row names this cause: it is never suspected",
    "sensors": "no check measures this sensor",
}


def check_times(item: Item) -> Iterator[tuple[Finding, bool]]:
    """Yield waits without an end and power resets without an off-time.

    The second value says whether it keeps the pack out of force.
    """
    if isinstance(item, WaitBase):
        yield from _wait_end(item)
    if isinstance(item, StopBase):
        for at, reset in resets_at(item):
            if reset.name == "power" and reset.off_at_least is None:
                told = "a reset by power names no time off"
                hint = "add `off_at_least`: off too short resets nothing"
                yield Finding(at, told, hint), True


def _wait_end(item: WaitBase) -> Iterator[tuple[Finding, bool]]:
    timed = bool(item.durations) or isinstance(item, ButtonTiming)
    ended = item.until_event is not None or item.cancelled_by or item.wanted
    if not timed and not ended:
        hint = "add `minimum`, `usual` or `give_up`"
        yield Finding((), "the wait has no end", hint), True
    elif item.give_up is None and isinstance(item, Standby | Defrost):
        told = "nothing says when this wait has lasted too long"
        yield Finding((), told, "add `give_up` if the document has it"), False


def find_unreachable(pack: Pack) -> Iterator[tuple[Item, Finding, bool]]:
    """Yield rows that nothing reaches; the last value: keeps the pack out of force."""
    replaced = _replaced(pack)
    outdated = {
        older
        for document in pack.head.documents.values()
        for older in document.supersedes
    }
    files = items_of(pack)
    named = _named(pack)
    for file, items in files.items():
        for item in items:
            if _never_applies(pack.head.applies_to, item.applies_to):
                told = "its `applies_to` fits no unit of the pack's own `applies_to`"
                yield item, Finding(("applies_to",), told), True
            elif item.id in replaced:
                told = f"never shown: `{replaced[item.id]}` replaces it on every unit"
                yield item, Finding((), told), False
            elif item.source is not None and item.source.doc in outdated:
                told = f"never shown: `{item.source.doc}` is replaced as a whole"
                yield item, Finding(("source", "doc"), told), False
            elif file in _NAMED_ELSEWHERE and item.id not in named[file]:
                yield item, Finding((), _NAMED_ELSEWHERE[file]), False
    yield from _idle_checks(pack, named["checks"])
    yield from _by_no_protection(pack)


def _by_no_protection(pack: Pack) -> Iterator[tuple[Item, Finding, bool]]:
    """Yield waits that ask for a protection which no counter of the pack counts.

    A stop is told by the names of the counters: the wait would then never run.
    """
    events = {event for stop in pack.stops for event in events_of(stop)}
    for wait in pack.waits:
        wanted = wait.stopped_by
        if wanted is not None and wanted not in events:
            told = f"`stopped_by` {wanted} is the `event` of no counter of this pack"
            hint = suggest(wanted, events) or "add its row to stops.yaml"
            yield wait, Finding(("stopped_by",), told, hint), False


def _named(pack: Pack) -> dict[str, set[str]]:
    """Return the ids that some row of the pack points to, by file."""
    found: dict[str, set[str]] = {file: set() for file in items_of(pack)}
    for file, items in items_of(pack).items():
        for item in items:
            for reference in references(file, vars(item)):
                found[reference.file].add(reference.name.rpartition("/")[2])
    return found


def _idle_checks(pack: Pack, named: set[str]) -> Iterator[tuple[Item, Finding, bool]]:
    for check in pack.checks:
        moves = any(outcome.moves for outcome in check.outcomes)
        if not moves and check.id not in named:
            told = "no result of this check moves a cause: it is never the next check"
            yield check, Finding(("outcomes",), told), False


def _replaced(pack: Pack) -> dict[str, str]:
    """Return rows replaced wherever the pack applies, with what replaces them."""
    own = {item.id: item for items in items_of(pack).values() for item in items}
    found = {}
    for entry in pack.head.supersedes:
        newer = own.get(entry.by)
        if newer is not None and not newer.applies_to:
            for row in entry.rows:
                found[row.removeprefix(f"{pack.head.id}/")] = entry.by
    return found


def _never_applies(pack: tuple[Scope, ...], item: tuple[Scope, ...]) -> bool:
    """Return whether no unit can fit one scope of the pack and one of the item."""
    if not pack or not item:
        return False
    return all(apart(one, other) for one, other in product(pack, item))
