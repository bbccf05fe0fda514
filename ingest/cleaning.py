"""Raw page text becomes the page text that is stored: pure.

What is repaired stays repaired for good: the stored page is the cleaned one, and
every passage is a span of it.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ingest.mojibake import unmangled

_KEEP = ("<super>", "<sub>", "<fraction>")
"""Folded, `10³` would read 103 and `2½` 21⁄2: these stay as they are."""
_FORMAT_ALLOWED = "\n\t"
_LIGATURE = re.compile(r"\b([A-Za-z]*(?:ffi|ffl|ff|fi|fl)) ([a-z]+)")
_BARE = ("ffi", "ffl", "ff", "fi", "fl")
_HYPHEN = re.compile(r"\b([^\W\d_]+)-\n([^\W\d_]+)\b(?![-\d])")
_DOTS = re.compile(r" ?\.(?: ?\.){3,} ?")
_RULE = re.compile(r"_{4,}")
_WORD = re.compile(r"[^\W\d_]+")


def repair(text: str) -> str:
    r"""Return the text with its characters put right, line by line the same.

    UTF-8 that was read as Windows-1252 is read as UTF-8. Compatibility forms are
    folded (NFKC) except superscripts, subscripts and fractions; control and invisible
    characters go; lone surrogates become U+FFFD; the dots that lead to a page number,
    or lines to write on, are shortened.

    Examples
    --------
    >>> repair("\ufb02ash\x00ing 10³ Ω\u200b")
    'flashing 10³ Ω'
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    text = text.replace("\x0b", "\n").replace("\x0c", "\n").replace("\u2028", "\n")
    text = text.replace("\u00ad\n", "").replace("\ufffe\n", "").replace("\x02\n", "")
    text = "\n".join(map(unmangled, text.split("\n")))
    signs = set(text)
    text = text.translate({ord(sign): _kept(sign) for sign in signs})
    keep = "".join(filter(_stays, sorted(signs)))
    parts = re.split(f"([{re.escape(keep)}])", text) if keep else [text]
    whole = "".join(part if part and part in keep else _folded(part) for part in parts)
    lines = _RULE.sub("___", _DOTS.sub(" ... ", whole)).split("\n")
    return "\n".join(line.rstrip() for line in lines)


def _stays(char: str) -> bool:
    return unicodedata.decomposition(char).startswith(_KEEP)


def _folded(run: str) -> str:
    return unicodedata.normalize("NFKC", run)


def _kept(char: str) -> str:
    if char in _FORMAT_ALLOWED:
        return char
    category = unicodedata.category(char)
    if category in {"Cc", "Cf", "Cn"}:
        return ""
    return "\ufffd" if category == "Cs" else char


def vocabulary(pages: Iterable[str]) -> frozenset[str]:
    """Return every word of the document, lower case, that is only letters.

    The halves of a word parted at a line end are not in it.
    """
    words: set[str] = set()
    for page in pages:
        whole = _HYPHEN.sub(" ", page)
        words.update(match.lower() for match in _WORD.findall(whole))
    return frozenset(words)


def join(text: str, known: frozenset[str]) -> str:
    r"""Close words that the setting tore apart, where the document knows the whole.

    `fl ashing` and `elec-` / `trical` are joined only when `flashing` and
    `electrical` stand elsewhere; never across digits, so codes stay as printed.

    Examples
    --------
    >>> join("the elec-\ntrical box, E5-\nlow", frozenset({"electrical"}))
    'the electrical box, E5-\nlow'
    """
    return _joined(text, known).text


def _joined(text: str, known: frozenset[str]) -> Cleaned:
    closed: list[int] = []

    def ligature(match: re.Match[str]) -> str:
        left, right = match.groups()
        whole = (left + right).lower()
        bare = left.lower() in _BARE and right not in known
        return left + right if whole in known or bare else match[0]

    def hyphen(match: re.Match[str]) -> str:
        left, right = match.groups()
        whole = left + right
        if not (right[0].islower() and whole.lower() in known):
            return match[0]
        closed.append(match.string.count("\n", 0, match.end()))
        return whole

    whole = _HYPHEN.sub(hyphen, _LIGATURE.sub(ligature, text))
    return Cleaned(whole, tuple(closed))


@dataclass(frozen=True, slots=True)
class Cleaned:
    """A page as it is stored."""

    text: str
    closed: tuple[int, ...] = ()
    """Lines of the repaired page that went into the line before them."""

    def line_of(self, at: int) -> int:
        """Return where a line of the repaired page stands now."""
        return at - sum(gone <= at for gone in self.closed)


def clean(pages: Sequence[str]) -> list[str]:
    """Return the pages of a document as they are stored."""
    return [page.text for page in cleaned(pages)]


def cleaned(pages: Sequence[str]) -> list[Cleaned]:
    """Return the pages of a document as they are stored, and where lines went."""
    repaired = [repair(page) for page in pages]
    known = vocabulary(repaired)
    return [_joined(page, known) for page in repaired]


def before_repair(raw: str, stored: str) -> str:
    r"""Return the raw text where the stored one says other than white space, or "".

    Half surrogate pairs, which no store takes, are written as escapes.

    Examples
    --------
    >>> before_repair("elec-\ntrical  box", "electrical box")
    'elec-\ntrical  box'
    >>> before_repair("four  flashes\r\n", "four flashes")
    ''
    """
    if raw.split() == stored.split():
        return ""
    return raw.encode("utf-8", "backslashreplace").decode("utf-8")


def is_row(line: str) -> bool:
    """Whether a line is set in cells: parted by two spaces or tabs at least."""
    return len(cells(line)) > 1


def cells(line: str) -> list[str]:
    """Return the cells of a line.

    Examples
    --------
    >>> cells("4  Discharge sensor  CN5")
    ['4', 'Discharge sensor', 'CN5']
    """
    return [cell for cell in re.split(r" {2,}|\t+", line.strip()) if cell]
