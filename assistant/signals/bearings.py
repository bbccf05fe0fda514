"""What each candidate would answer to each question that can be asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from assistant.signals.cells import Together, cells_of, lamp_of, lamp_slot
from assistant.signals.kinds import (
    Beeps,
    CountPerWindow,
    DisplayCode,
    EvenBlink,
    FlickerCount,
    GroupThenPause,
    Heartbeat,
    LampState,
    MainSubCode,
    PhasePair,
    RateBlink,
    ShortLong,
    Signal,
    SingleFlash,
)
from assistant.signals.observation import Candidate, Observation
from assistant.signals.trains import folded

Answers = Mapping[str, frozenset[str]]
"""Global id -> the answers it would bear; an empty set bears every answer."""
NOTHING: frozenset[str] = frozenset()
RUNNING = "context:compressor running"
_RUNS = {"running": "yes", "starting": "yes", "stopped": "no", "standby": "no"}


def answers_of(
    candidates: Sequence[Candidate], seen: Sequence[Observation]
) -> dict[str, Answers]:
    """Return every question that what was seen leaves open, with its answers."""
    found: dict[str, Answers] = {}
    if len(seen) == 1 and seen[0].lamps is None:
        found.update(_of_one_lamp(candidates, seen[0]))
    for slot, bears in _OPEN_SLOTS.items():
        if any(slot in one.assumed for one in candidates):
            found[slot] = _each(candidates, bears)
    found.update(_lamps(candidates))
    found.update(_circumstances(candidates))
    return found


def _each(
    candidates: Sequence[Candidate], bears: Callable[[Signal], frozenset[str]]
) -> Answers:
    return {one.row.gid: bears(one.row.signal) for one in candidates}


def _set(answer: str | None) -> frozenset[str]:
    return NOTHING if answer is None else frozenset({answer})


def _of_one_lamp(
    candidates: Sequence[Candidate], seen: Observation
) -> dict[str, Answers]:
    """Return what a lamp report leaves open about the one lamp."""
    found: dict[str, Answers] = {}
    if seen.pause is None:
        found["pause"] = _each(candidates, pause_of)
    if len(seen.count) != 1 or any("count" in one.assumed for one in candidates):
        found["count"] = _each(candidates, count_of)
    if any({"glyph", "code"} & set(one.assumed) for one in candidates):
        found["code"] = _each(candidates, _code)
    for slot in ("colour", "box", "board", "label"):
        told = getattr(seen, slot)
        near = any(slot in one.assumed for one in candidates)
        if len(told) != 1 or near:
            found[slot] = {one.row.gid: _identity(one, slot) for one in candidates}
    return found


def pause_of(signal: Signal) -> frozenset[str]:
    """Return whether a row has a dark pause, where its kind says so."""
    match signal:
        case EvenBlink() | RateBlink():
            return frozenset({"none"})
        case CountPerWindow() | GroupThenPause() | ShortLong() | Beeps():
            return frozenset({"seen"})
        case _:
            return NOTHING


def count_of(signal: Signal) -> frozenset[str]:
    """Return the flashes of a row that has a number of them."""
    match signal:
        case CountPerWindow() | GroupThenPause() | Beeps():
            return frozenset({str(signal.count)})
        case SingleFlash():
            return frozenset({"1"})
        case _:
            return NOTHING


def _code(signal: Signal) -> frozenset[str]:
    return _set(signal.code if isinstance(signal, DisplayCode | MainSubCode) else None)


def short_of(signal: Signal) -> frozenset[str]:
    """Return the quick flashes of a row of quick and long ones."""
    return _set(str(signal.short) if isinstance(signal, ShortLong) else None)


def _long(signal: Signal) -> frozenset[str]:
    return _set(str(signal.long) if isinstance(signal, ShortLong) else None)


def _sub(signal: Signal) -> frozenset[str]:
    return _set(signal.sub if isinstance(signal, MainSubCode) else None)


def _rate(signal: Signal) -> frozenset[str]:
    if isinstance(signal, RateBlink | PhasePair):
        return _set(signal.rate_class)
    return NOTHING


def _every(signal: Signal) -> frozenset[str]:
    match signal:
        case SingleFlash() | CountPerWindow():
            return frozenset({f"{signal.window.value:g} s"})
        case _:
            return NOTHING


def _phase(signal: Signal) -> frozenset[str]:
    return _set(signal.phase if isinstance(signal, PhasePair) else None)


def _level(signal: Signal) -> frozenset[str]:
    return _set(signal.display_level if isinstance(signal, FlickerCount) else None)


def _emitter(signal: Signal) -> frozenset[str]:
    return frozenset({"buzzer" if isinstance(signal, Beeps) else "lamp"})


def _dims(signal: Signal) -> frozenset[str]:
    return frozenset({"heartbeat" if isinstance(signal, Heartbeat) else "blink"})


_OPEN_SLOTS: dict[str, Callable[[Signal], frozenset[str]]] = {
    "short": short_of,
    "long": _long,
    "sub": _sub,
    "rate": _rate,
    "window": _every,
    "phase": _phase,
    "display_level": _level,
    "emitter": _emitter,
    "state": _dims,
    "stored": lambda signal: frozenset({"history" if signal.stored else "now"}),
}


def _identity(candidate: Candidate, slot: str) -> frozenset[str]:
    lamp = lamp_of(candidate.row.signal)
    return _set(getattr(lamp, slot) if lamp is not None else None)


def _lamps(candidates: Sequence[Candidate]) -> dict[str, Answers]:
    """Return the lamps of rows of several that were not reported."""
    names = {
        slot for one in candidates for slot in one.assumed if slot.startswith("lamp:")
    }
    return {
        name: {one.row.gid: _lamp_answer(one, name) for one in candidates}
        for name in sorted(names)
    }


def _lamp_answer(candidate: Candidate, name: str) -> frozenset[str]:
    signal = candidate.row.signal
    if not isinstance(signal, Together):
        return NOTHING
    return frozenset(
        describe(entry)
        for entry in cells_of(signal)
        if lamp_slot(entry.lamp) == name and entry.state != "any"
    )


def describe(entry: LampState) -> str:
    """Return a lamp's state as an answer: on, off, flash or a number of flashes."""
    return f"{entry.count} flashes" if entry.state == "count" else entry.state


def _circumstances(candidates: Sequence[Candidate]) -> dict[str, Answers]:
    """Return mode, unit, what runs and what is set, as far as rows differ by it."""
    found: dict[str, Answers] = {
        "mode": {
            one.row.gid: _set(one.row.signal.mode if "mode" in one.assumed else None)
            for one in candidates
        },
        RUNNING: _each(candidates, _running),
    }
    for words in sorted({folded(w) for one in candidates for w in _open_settings(one)}):
        found[f"precondition:{words}"] = {
            one.row.gid: frozenset(
                {"yes"} if words in map(folded, _open_settings(one)) else {"no", "yes"}
            )
            for one in candidates
        }
    if any(one.row.unit_match == "possible" for one in candidates):
        found["unit"] = {
            one.row.gid: _set(one.row.document or one.row.gid.partition("/")[0])
            for one in candidates
        }
    return found


def _open_settings(candidate: Candidate) -> tuple[str, ...]:
    assumes = "precondition" in candidate.assumed
    return candidate.row.signal.precondition if assumes else ()


def _running(signal: Signal) -> frozenset[str]:
    return frozenset(_RUNS[state] for state in signal.unit_state_required)
