"""Why a decode gave nothing, in a line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.signals.kinds import CountPerWindow
from assistant.signals.observation import Observation, SignalRow

FEW = 3
"""Counts told that are named one by one."""
NO_CODE_YET = "no code was seen: no code yet is not no fault"
NO_TABLE = "no light or code table applies to this unit"


def need_count() -> str:
    """Return why a blink without a number cannot be read."""
    return "cannot tell yet: need the number of flashes between two dark pauses"


def need_short() -> str:
    """Return why quick and long flashes without their numbers cannot be read."""
    return "cannot tell yet: need how many quick flashes and how many long ones"


def need_pause() -> str:
    """Return why a blink without its pause cannot be read."""
    return "cannot tell yet: need the pause"


def count_over(row: SignalRow) -> str:
    """Return over which time the document counts."""
    signal = row.signal
    over = signal.window.text if isinstance(signal, CountPerWindow) else "its own time"
    return f"cannot tell yet: the document counts over {over}"


def outside(
    seen: Observation,
    listed: Mapping[str, Sequence[int]],
    blinks: Sequence[str] = (),
) -> str:
    """Return that what was seen is in no table, and what the tables hold.

    Parameters
    ----------
    listed : mapping of str to sequence of int
        Document -> the counts it lists for the lamp.
    blinks : sequence of str
        What an even blink of the lamp means, where no dark pause was reported.
    """
    if not seen.count or not listed or seen.state == "short_long":
        what = f"code {seen.code}" if seen.code else _what(seen)
        return f"{what}: not in this document"
    many = len(seen.count) > FEW
    told = _runs(seen.count) if many else " or ".join(str(c) for c in seen.count)
    tables = "; ".join(
        f"{name or 'the table'} lists {_runs(counts)}"
        for name, counts in listed.items()
    )
    more = (
        f"; without a dark pause it is an even blink: {', '.join(blinks)}"
        if blinks
        else ""
    )
    return f"{told} flashes: not in this document ({tables}){more}"


_THIS = "this light and what it does"


def in_no_row(seen: Observation) -> str:
    """Return that a light is known, but not beside what the others were said to do."""
    return f"{_what(seen)}: in no row together with the other lights told"


def _what(seen: Observation) -> str:
    if seen.emitter == "buzzer":
        return "these beeps"
    if seen.state == "short_long" and seen.count and seen.long_count:
        return f"{_runs(seen.count)} quick and {_runs(seen.long_count)} long flashes"
    if seen.phase is not None and seen.state == "blink":
        how = "together" if seen.phase == "together" else "in turn"
        return f"lights that flash {how}"
    if seen.lamps == "every":
        return "these lights and what they do"
    name = " or ".join(seen.label or seen.colour)
    return f"the {name} light and what it does" if name else _THIS


def _runs(counts: Sequence[int]) -> str:
    """Return numbers with runs drawn together.

    Examples
    --------
    >>> _runs((1, 2, 3, 5))
    '1-3, 5'
    """
    runs: list[list[int]] = []
    for count in counts:
        if runs and count == runs[-1][-1] + 1:
            runs[-1].append(count)
        else:
            runs.append([count])
    return ", ".join(
        f"{run[0]}-{run[-1]}" if len(run) > 1 else str(run[0]) for run in runs
    )
