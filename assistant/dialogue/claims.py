"""Where documents differ about what a job is about, and what decides between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations

from assistant.dialogue import replies
from assistant.dialogue.answer import Statement
from assistant.dialogue.sections.said import computed
from assistant.dialogue.view import View
from assistant.record import Item
from assistant.rules.fittings import settings_in
from assistant.rules.inforce import Row
from assistant.signals.kinds import SignalBase
from assistant.signals.observation import Candidate

Pair = tuple[str, str]


def touched(view: View, checks: Iterable[str] = ()) -> tuple[Pair, ...]:
    """Return the pairs of rows that differ and that the job is about.

    Parameters
    ----------
    view : View
        Its waits, protection stops and decoded rows count.
    checks : iterable of str
        Global ids of checks that were done or come next.
    """
    at_stake = {state.row.gid for state in (*view.waits, *view.waits_shown)}
    at_stake |= {count.row.gid for count in view.stops} | set(checks)
    candidates = view.match.candidates if view.match is not None else ()
    at_stake |= {candidate.row.gid for candidate in candidates}
    force = view.force
    found = {pair for pair in force.claims if at_stake & set(pair)}
    found |= {pair for pair in force.parallel if at_stake & set(pair)}
    return tuple(sorted(found | set(_meanings(view, candidates))))


def _meanings(view: View, candidates: Iterable[Candidate]) -> Iterator[Pair]:
    """Yield candidates that mean something else by a label that is not known yet."""
    undecided = view.force.undecided
    for one, other in combinations(candidates, 2):
        narrowed = one.row.gid in undecided or other.row.gid in undecided
        differ = one.row.signal.meaning != other.row.signal.meaning
        elsewhere = (
            one.row.document != other.row.document
            or one.row.signal.applies_to != other.row.signal.applies_to
        )
        if narrowed and differ and elsewhere:
            yield min(one.row.gid, other.row.gid), max(one.row.gid, other.row.gid)


def deciding(view: View, pairs: Iterable[Pair]) -> tuple[str, ...]:
    """Return the plate or label items that decide between the rows of `pairs`."""
    return view.force.decides(gid for pair in pairs for gid in pair)


def options(view: View, pairs: Iterable[Pair], item: str) -> tuple[str, ...]:
    """Return the answers that split a switch setting or an option; else nothing.

    The first is what the pack asks for, the second its contrary.
    """
    scopes = [
        scope
        for gid in dict.fromkeys(gid for pair in pairs for gid in pair)
        if (row := view.force.find(gid)) is not None
        for held in (view.force.heads[row.pack_id], row.item)
        for scope in held.applies_to
    ]
    if item == "fitted":
        parts = [p for scope in scopes for p in (*scope.fitted, *scope.not_fitted)]
        return (parts[0], f"no {parts[0]}") if parts else ()
    if item == "switch_settings":
        stated = [
            pair
            for scope in scopes
            for setting in scope.settings
            for pair in settings_in(setting).items()
        ]
        return _both_ways(*stated[0]) if stated else ()
    return ()


_CONTRARY = {"on": "off", "off": "on", "open": "closed", "closed": "open", "cut": "in"}


def _both_ways(name: str, state: str) -> tuple[str, ...]:
    other = _CONTRARY.get(state)
    first = f"{name.upper()} {state}"
    return (first, f"{name.upper()} {other}") if other else (first,)


def claim_lines(view: View, pairs: Iterable[Pair]) -> Iterator[Statement]:
    """Say side by side what two documents say, in a turn that told something."""
    if not view.state.told_now():
        return
    for one, other in pairs:
        first, second = view.force.find(one), view.force.find(other)
        if first is None or second is None:
            continue
        closer, wider = sorted((first, second), key=lambda row: (row.trust, row.gid))
        text = replies.differ(
            _what(closer),
            _what(wider),
            closer=closer.trust < wider.trust,
            decided_by=view.force.decides((one, other)),
        )
        yield computed(text, (*view.cite(closer.gid), *view.cite(wider.gid)))


def _what(row: Row[Item]) -> str:
    """Return what a row is called, with its figures where it has some."""
    item = row.item
    if isinstance(item, SignalBase):
        return item.meaning
    name = str(getattr(item, "name", item.id))
    figures = [
        f"{label} {value.text}"
        for label in ("minimum", "usual", "give_up", "window", "low", "high", "nominal")
        if (value := getattr(item, label, None)) is not None
    ]
    limit = getattr(item, "limit", None)
    if limit is not None:
        figures.insert(0, f"limit {limit}")
    return f"{name} ({', '.join(figures)})" if figures else name
