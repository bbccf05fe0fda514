"""How YAML 1.2 reads a plain scalar, and where YAML 1.1 readers differ.

YAML 1.2: the core schema of the specification 1.2.2, section 10.3.2.
YAML 1.1: the type repository's bool, int, float and timestamp, as tools read them.
"""

from __future__ import annotations

import re

_NULL = {"", "~", "null", "Null", "NULL"}
_BOOL = {"true": True, "True": True, "TRUE": True}
_BOOL |= {"false": False, "False": False, "FALSE": False}
_INT = re.compile(r"[-+]?[0-9]+")
_OCT = re.compile(r"0o([0-7]+)")
_HEX = re.compile(r"0x([0-9a-fA-F]+)")
_FLOAT = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_SPECIAL = re.compile(r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)")

_OLD_BOOL = re.compile(r"(?i:y|n|yes|no|on|off)")
_OLD_FORMS = re.compile(
    r"[-+]?0[0-9_]+"  # octal
    r"|[-+]?0b[01_]+"
    r"|[-+]?[0-9][0-9,_]*_[0-9_]*(\.[0-9_]*)?"  # digits with underscores
    r"|[-+]?[0-9][0-9_]*(:[0-5]?[0-9])+(\.[0-9_]*)?"  # base sixty
    r"|[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}([Tt ].*)?"  # a date
    r"|0o[0-7]+"
    r"|[-+]?[0-9]+[eE][-+]?[0-9]+"
    r"|[-+]?[0-9]*\.[0-9]*[eE][0-9]+"
)

Plain = str | int | float | bool | None


def read_plain(text: str) -> Plain:
    """Return what YAML 1.2 makes of an unquoted scalar.

    Examples
    --------
    >>> [read_plain(t) for t in ("8 s", "4", "0.5", "off", "true", "")]
    ['8 s', 4, 0.5, 'off', True, None]
    """
    if text in _NULL:
        return None
    if text in _BOOL:
        return _BOOL[text]
    if _INT.fullmatch(text):
        return int(text)
    for form, base in ((_OCT, 8), (_HEX, 16)):
        found = form.fullmatch(text)
        if found:
            return int(found[1], base)
    if _FLOAT.fullmatch(text) or _SPECIAL.fullmatch(text):
        return float(text.replace(".inf", "inf").replace(".nan", "nan").lower())
    return text


def readings_differ(text: str) -> bool:
    """Return whether YAML 1.1 and 1.2 readers disagree on an unquoted scalar.

    Examples
    --------
    >>> [readings_differ(t) for t in ("off", "4E4", "010", "1:30", "E4", "4")]
    [True, True, True, True, False, False]
    """
    return bool(_OLD_BOOL.fullmatch(text) or _OLD_FORMS.fullmatch(text))
