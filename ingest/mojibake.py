"""UTF-8 that was read as Windows-1252 or Latin-1 is read as UTF-8 again: pure.

Only sequences that no language writes are touched: `Â°C`, `kÎ©`, `â€“`. What might be
a capital letter before a quotation mark or dash stays, unless the same text has a
sequence that is certain.
"""

from __future__ import annotations

import re

_HIGH = bytes(range(0x80, 0xC0))
_BYTES = {
    **{char: value for value, char in enumerate(map(chr, range(0x80, 0xC0)), 0x80)},
    **{
        sign: value
        for value in _HIGH
        if (sign := bytes((value,)).decode("cp1252", "ignore"))
    },
}
"""Character to the byte that it was, for the second and later bytes of UTF-8."""
_LATER = "[" + re.escape("".join(_BYTES)) + "]"
_SEQUENCE = re.compile(f"[ÂÃÄÅÎÏ]{_LATER}|[âï]{_LATER}{_LATER}")
_CLOSING = frozenset("‚„…‘’“”–—›»")
"""May stand behind a word that ends in one of those letters."""
_BLOCKS = (
    (0xA0, 0x17F),  # Latin letters and signs
    (0x370, 0x3FF),  # Greek
    (0x2000, 0x22FF),  # punctuation, units, arrows, mathematics
    (0x2460, 0x27BF),  # numbers in circles, blocks, shapes, marks
    (0xFB00, 0xFB06),  # ligatures
    (0xFEFF, 0xFEFF),  # the mark at the beginning of a file
)


def unmangled(text: str) -> str:
    """Return the text with such sequences read as what they were.

    Examples
    --------
    >>> unmangled("65 Â°C â€“ 10 kÎ©")
    '65 °C – 10 kΩ'
    >>> unmangled("„KÄ“ und 20 °C")
    '„KÄ“ und 20 °C'
    """
    if not _SEQUENCE.search(text):
        return text
    sure = any(_certain(match[0]) for match in _SEQUENCE.finditer(text))
    return _SEQUENCE.sub(
        lambda match: _read(match[0]) if sure or _certain(match[0]) else match[0], text
    )


def _certain(sequence: str) -> bool:
    return _read(sequence) != sequence and sequence[1:] not in _CLOSING


def _read(sequence: str) -> str:
    """Return what a sequence stands for; itself where that is nothing likely."""
    data = sequence[0].encode("latin-1") + bytes(_BYTES[sign] for sign in sequence[1:])
    try:
        sign = data.decode("utf-8")
    except UnicodeDecodeError:
        return sequence
    likely = any(first <= ord(sign) <= last for first, last in _BLOCKS)
    return sign if likely else sequence
