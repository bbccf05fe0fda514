"""How long something lasted: "5 min", "half a minute", "about two or three hours"."""

from __future__ import annotations

import re

from assistant.language.claims import NUMBER
from assistant.language.times import HEDGE_SHARE

_SECONDS = {"sec": 1.0, "min": 60.0, "hour": 3600.0, "day": 86_400.0}
_VAGUE = {
    "a": (1.0, 1.0),
    "an": (1.0, 1.0),
    "half a": (0.5, 0.5),
    "half an": (0.5, 0.5),
    "couple": (2.0, 3.0),
    "few": (2.0, 5.0),
    "several": (3.0, 8.0),
}
_HEDGE = r"(?:about|around|maybe|roughly|approx|some|like|say|nearly|almost)"
ONLY = r"(?:only |just |a good |at least |for |it for )*"


def lasting(tag: str = "") -> str:
    """Return a pattern of a duration; `seconds` reads the match by the same tag."""
    return (
        rf"(?P<hedge{tag}>{_HEDGE} )?(?:a )?"
        rf"(?P<n{tag}>half an?|an?|couple(?: of)?|few|several|{NUMBER})"
        rf"(?: (?:or|to|-) (?P<m{tag}>{NUMBER}))? (?P<unit{tag}>sec|min|hour|day)"
        rf"(?P<more{tag}> and a half)?(?P<so{tag}> or so)?"
    )


def seconds(match: re.Match[str], tag: str = "") -> tuple[float, float]:
    """Return the smallest and largest believable length [s] of a matched duration.

    Examples
    --------
    >>> seconds(re.search(lasting(), "half a min"))
    (30.0, 30.0)
    >>> seconds(re.search(lasting(), "about 10 min"))
    (480.0, 720.0)
    """
    word = match[f"n{tag}"].removesuffix(" of")
    first, last = _VAGUE[word] if word in _VAGUE else (float(word), float(word))
    if match[f"m{tag}"]:
        last = float(match[f"m{tag}"])
    unit = _SECONDS[match[f"unit{tag}"]]
    half = unit / 2 if match[f"more{tag}"] else 0.0
    short, long = sorted((abs(first) * unit + half, abs(last) * unit + half))
    if match[f"hedge{tag}"] or match[f"so{tag}"]:
        return short * (1 - HEDGE_SHARE), long * (1 + HEDGE_SHARE)
    return short, long
