"""Display codes, part numbers and flash counts, found in text. Pure.

A code is stored in one normal form: upper case, no punctuation, no spaces. So
``P6``, ``P-6`` and ``P 6`` are one code, and ``E4`` never equals ``E40``. A
count of flashes is stored beside them as ``#6``.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from assistant.library.keyword import fold
from assistant.library.synonyms import COUNT_WORDS

SHORTEST, LONGEST = 2, 24
"""Letters and digits of a code."""
COUNT_DIGITS = 2
REACH = 3
"""Words from a number to the flash word it counts."""

_TOKEN = re.compile(r"[^\W_]+(?:[-./][^\W_]+)*")
_SPACED = re.compile(r"(?<![\w.-])([A-Z]{1,2}) (\d{1,3})(?![\w.,%°]|\s?[-/°Ω])")
_LOOSE = re.compile(r"(?<![\w.-])([b-hj-z]) ?(\d{1,2})(?![\w.,%°])")
_NUMBERED = re.compile(
    r"\b(?:code|codes|error|fault|alarm)\s+(?:no\.?\s*|number\s*)?(\d{1,4})\b(?!\.\d)"
)
_QUANTITY = re.compile(
    r"\d+(?:V|VAC|VDC|A|MA|W|KW|HZ|KHZ|S|SEC|MS|MIN|H|HR|K|KOHM|OHM|MOHM|Ω|KΩ|MΩ|C|F|"
    r"PSI|PSIG|KPA|MPA|BAR|MM|CM|M|IN|FT|LB|LBS|KG|G|OZ|BTU|BTUH|UF|µF|ΜF|MFD|X|PH|"
    r"ST|ND|RD|TH|WAY|AWG|RPM|DB|T|YR|D|LED|BIT|PIN|WIRE|POINT|DIGIT|SEGMENT)"
)
_ASIDE = (
    "red green amber blue white long short quick slow fast lamp of the a time in on "
    "slowly quickly"
)
_BETWEEN = frozenset(_ASIDE.split())
_ROW = re.compile(r"^\W{0,3}(\d{1,2})(?:\s*[|:;,)\u2013-]|\s{1,}\D|\s*$)", re.MULTILINE)

MOST_FLASHES = 40
_COLOUR = "amber|red|green"
_NO_UNIT = (
    "(?! (?:time|voltage|kohm|ohm|mohm|second|minute|hour|hz|celsius|amp|metre|"
    "fahrenheit|psi|bar|mpa|kpa|gram|percent|mm|year|day))"
)
_MEANT = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b(\d{{1,2}}) (?:{_COLOUR})s?\b",
        rf"\b(?:{_COLOUR}|blue|lamp) (?:do |does |goes |go |did |going |doing )?"
        rf"(\d{{1,2}})\b{_NO_UNIT}",
        r"\b(\d{1,2}) (?:and )?then (?:a |it )?(?:gap|delay|rests?|dark|stop)\b",
        r"\b(\d{1,2}) of (?:em|them)\b",
        rf"\bcounted (\d{{1,2}})\b{_NO_UNIT}",
        rf"\b(?:does|doing|goes) (?:the )?(\d{{1,2}})\b{_NO_UNIT}",
    )
)
"""Ways to give a count without a flash word, in folded text."""


def normal(code: str) -> str:
    """Return a code's one stored form.

    Examples
    --------
    >>> normal("p-6"), normal("R 410a")
    ('P6', 'R410A')
    """
    plain = unicodedata.normalize("NFKC", code).upper()
    return "".join(letter for letter in plain if letter.isalnum())


def codes_in(text: str) -> tuple[str, ...]:
    """Return the display codes and part numbers of a text, sorted.

    A code holds a letter and a digit. A joined token also gives its parts that
    are codes themselves (``A1/A3``). A quantity such as ``12V`` is no code. A
    bare number counts only where the text calls it a code.

    Examples
    --------
    >>> codes_in("P-6 or P 6, not E40; 240VAC, fault code 54, A1/A3")
    ('54', 'A1', 'A1A3', 'A3', 'E40', 'P6')
    """
    plain = unicodedata.normalize("NFKC", text)
    found = {code for token in _TOKEN.findall(plain) for code in _token_codes(token)}
    found |= {a + b for a, b in _SPACED.findall(plain) if a not in {"A", "I"}}
    found |= set(_NUMBERED.findall(plain.casefold()))
    return tuple(sorted(found))


def loose_codes_in(text: str) -> tuple[str, ...]:
    """Return what might be a code in a typed question ("p 6", "e zero").

    These count only when the library holds them: nothing was missed if not.

    Examples
    --------
    >>> loose_codes_in("what is p 6 and e zero")
    ('E0', 'P6')
    """
    words = fold(text)
    return tuple(sorted({normal(a + b) for a, b in _LOOSE.findall(words)}))


def counts_in(text: str, lead: str = "") -> tuple[str, ...]:
    """Return the counts of flashes a text names, as ``#n``, sorted.

    A number beside a flash word counts. Where the table's first line (`lead`, or
    the text's own first line) speaks of flashes, so does a number that opens a
    line.

    Examples
    --------
    >>> counts_in("blinks amber six times")
    ('#6',)
    >>> counts_in("11 | fan motor", lead="Flashes | Meaning")
    ('#11',)
    """
    words = fold(text).split()
    found = set(_beside(words))
    first = lead or text.partition("\n")[0]
    if COUNT_WORDS & set(fold(first).split()):
        found |= set(_ROW.findall(unicodedata.normalize("NFKC", text)))
    return tuple(sorted(f"#{int(number)}" for number in found if int(number) > 0))


def asked_counts(text: str) -> tuple[str, ...]:
    """Return the counts of flashes that a question means without saying "flash".

    Examples
    --------
    >>> asked_counts("a dozen reds"), asked_counts("does fourteen, then a gap")
    (('#12',), ('#14',))
    >>> asked_counts("3 minutes after 240 volts")
    ()
    """
    words = fold(text.replace("a dozen", "twelve"))
    found = {int(number) for pattern in _MEANT for number in pattern.findall(words)}
    return tuple(sorted(f"#{number}" for number in found if 0 < number <= MOST_FLASHES))


def _token_codes(token: str) -> Iterator[str]:
    for part in {token, *re.split(r"[-./]", token)}:
        code = normal(part)
        if _is_code(code):
            yield code


def _is_code(code: str) -> bool:
    return (
        SHORTEST <= len(code) <= LONGEST
        and any(letter.isdigit() for letter in code)
        and any(letter.isalpha() for letter in code)
        and not _QUANTITY.fullmatch(code)
    )


def _beside(words: list[str]) -> Iterator[str]:
    """Yield numbers up to two colour or pace words away from a flash word."""
    for at, word in enumerate(words):
        if not (word.isdecimal() and len(word) <= COUNT_DIGITS):
            continue
        for step in (1, -1):
            if _reaches(words, at, step):
                yield word
                break


def _reaches(words: list[str], at: int, step: int) -> bool:
    for distance in range(1, REACH + 1):
        other = at + step * distance
        if not 0 <= other < len(words):
            return False
        if words[other] in COUNT_WORDS:
            return True
        if words[other] not in _BETWEEN:
            return False
    return False
