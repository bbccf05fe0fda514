"""The exception tree and the exit codes.

FaultleafError            2
├── UsageError            2   the words of the call are off
├── InputError              2   a file or text that cannot be taken in
├── JobsError               2   the file of jobs cannot be opened or trusted
├── PackError             3   a rule pack is not in force
└── LibraryError          4   the library cannot be opened or trusted
"""

from __future__ import annotations

from typing import ClassVar


class FaultleafError(Exception):
    """An error a person can act on.

    Parameters
    ----------
    what : str
        What went wrong, with the value and the place (file:line or page).
    hint : str, optional
        The way out, as a sentence or a command.
    """

    exit_code: ClassVar[int] = 2

    def __init__(self, what: str, hint: str = "") -> None:
        super().__init__(what)
        self.what = what
        self.hint = hint


class UsageError(FaultleafError):
    """The words of the call are off."""


class InputError(FaultleafError):
    """A file or a text that cannot be taken in."""


class JobsError(FaultleafError):
    """The file of jobs cannot be opened, written or trusted."""


class PackError(FaultleafError):
    """A rule pack that is not in force, with every mistake found in it."""

    exit_code: ClassVar[int] = 3

    def __init__(self, mistakes: tuple[str, ...], hint: str = "") -> None:
        super().__init__("\n".join(mistakes), hint)
        self.mistakes = mistakes


class LibraryError(FaultleafError):
    """The library cannot be opened or trusted."""

    exit_code: ClassVar[int] = 4


ANSWERED = 0
NOT_FOUND = 1
WITH_WARNINGS = 3
