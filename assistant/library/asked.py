"""What a question asks for: its words, codes and counts, and its talk. Pure."""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.library.codes import asked_counts, codes_in, counts_in, loose_codes_in
from assistant.library.keyword import fold, terms
from assistant.library.lexicon import Lexicon
from assistant.library.subjects import ELSEWHERE, FIGURES
from assistant.library.talk import in_print, plain_words


@dataclass(frozen=True, slots=True)
class Asked:
    """A question, taken apart."""

    text: str
    said: str
    """The question in the words of print; '' when it holds no talk."""
    words: tuple[str, ...]
    """What keywords are searched for."""
    plain: tuple[str, ...]
    """The words that are no part of a code or a count."""
    printed: tuple[str, ...]
    """Further words that print has for what was said."""
    codes: tuple[str, ...]
    """Display codes, part numbers and counts (`#6`) that were surely named."""
    loose: tuple[str, ...]
    """What may be a code: counts as evidence only where the library has it."""
    figures: tuple[str, ...]
    """Figures of the trade that it names, as typed."""
    elsewhere: tuple[str, ...]
    """Words of other equipment and of everyday life, as typed."""


def asked(text: str, known: Lexicon | None = None) -> Asked:
    """Take a typed question apart; any text is fine.

    Parameters
    ----------
    known : Lexicon, optional
        The talk that is understood; the program's own when not given.

    Examples
    --------
    >>> question = asked("what is E4, it winks six times, caps?")
    >>> question.codes, question.printed
    (('#6', 'E4'), ())
    """
    codes = tuple(sorted({*codes_in(text), *counts_in(text), *asked_counts(text)}))
    loose = tuple(code for code in loose_codes_in(text) if code not in codes)
    words = terms(text)
    said, added = in_print(text, known)
    spent = {part for code in (*codes, *loose) for part in _spelled(code)}
    literal = set(plain_words(said if said else text)) & set(plain_words(text))
    return Asked(
        text=text,
        said=said,
        words=words,
        plain=tuple(word for word in words if word.upper() not in spent),
        printed=tuple(word for word in terms(" ".join(added)) if word not in words),
        codes=codes,
        loose=loose,
        figures=tuple(sorted(literal & FIGURES)),
        elsewhere=tuple(sorted(literal & ELSEWHERE)),
    )


def folded(word: str) -> str:
    """Return the keyword form of one plain word."""
    return fold(word) or word


def _spelled(code: str) -> set[str]:
    """Every word that a code may have been written with: "P6" also as "P" and "6"."""
    runs = re.findall(r"[^\W\d_]+|\d+", code)
    return {code, *runs, *("".join(runs[at:]) for at in range(len(runs)))}
