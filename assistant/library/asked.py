"""What a question asks for: its words, codes and counts. Pure."""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.library.codes import codes_in, counts_in, loose_codes_in
from assistant.library.keyword import terms


@dataclass(frozen=True, slots=True)
class Asked:
    """A question, taken apart."""

    text: str
    words: tuple[str, ...]
    """What keywords are searched for."""
    plain: tuple[str, ...]
    """The words that are no part of a code or a count."""
    codes: tuple[str, ...]
    """Display codes, part numbers and counts (`#6`) that were surely named."""
    loose: tuple[str, ...]
    """What may be a code: counts as evidence only where the library has it."""


def asked(text: str) -> Asked:
    """Take a typed question apart; any text is fine.

    Examples
    --------
    >>> asked("what is E4, it winks six times").codes
    ('#6', 'E4')
    """
    codes = tuple(sorted({*codes_in(text), *counts_in(text)}))
    loose = tuple(code for code in loose_codes_in(text) if code not in codes)
    words = terms(text)
    spent = {part for code in (*codes, *loose) for part in _spelled(code)}
    plain = tuple(word for word in words if word.upper() not in spent)
    return Asked(text=text, words=words, plain=plain, codes=codes, loose=loose)


def _spelled(code: str) -> set[str]:
    """Every word that a code may have been written with: "P6" also as "P" and "6"."""
    runs = re.findall(r"[^\W\d_]+|\d+", code)
    return {code, *runs, *("".join(runs[at:]) for at in range(len(runs)))}
