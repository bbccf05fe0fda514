"""Takes single damaged lines of a page from another reading of it: pure."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from ingest.readers.legible import Fault, faults_of_lines

_LINEWISE = (Fault.GLUED, Fault.REVERSED, Fault.SPLIT)
"""Faults that leave the letters right: they tell which line is which."""


def mended(lines: Sequence[str], read_again: Callable[[], Sequence[str]]) -> list[str]:
    """Return lines, the damaged ones as the other reading has them where it is clean.

    Parameters
    ----------
    lines : sequence of str
        The page.
    read_again : callable
        Gives the lines of another reading; only asked where a line is damaged.

    Examples
    --------
    >>> mended(
    ...     ["Lamp", "eht no dna eht hctiws"],
    ...     lambda: ["Lamp", "switch the and on the"],
    ... )
    ['Lamp', 'switch the and on the']
    """
    found = {
        at: fault
        for at, fault in faults_of_lines("\n".join(lines)).items()
        if fault in _LINEWISE
    }
    if not found:
        return list(lines)
    others = read_again()
    damaged = faults_of_lines("\n".join(others))
    clean = {
        _letters(line): line for at, line in enumerate(others) if at not in damaged
    }
    return [
        clean.get(_key(line, found[at]), line) if at in found else line
        for at, line in enumerate(lines)
    ]


def _key(line: str, fault: Fault) -> str:
    letters = _letters(line)
    return letters[::-1] if fault is Fault.REVERSED else letters


def _letters(line: str) -> str:
    return "".join(line.split())
