"""How long something lasted: "5 min", "half a minute", "about two or three hours"."""

from __future__ import annotations

import re

from assistant.language.claims import NUMBER

HEDGE_SHARE = 0.2
"""Width to either side of what is told with "about"."""
SECONDS = {
    "sec": 1.0, "s": 1.0, "min": 60.0, "hour": 3600.0, "h": 3600.0,
    "day": 86400.0, "week": 604800.0, "month": 2629800.0, "year": 31557600.0,
}  # fmt: skip
_VAGUE = {
    "a": (1.0, 1.0),
    "an": (1.0, 1.0),
    "half": (0.5, 0.5),
    "half a": (0.5, 0.5),
    "half an": (0.5, 0.5),
    "couple": (2.0, 3.0),
    "few": (2.0, 5.0),
    "several": (3.0, 8.0),
}
_HEDGE = (
    r"(?:about|around|maybe|roughly|approx|approximately|some|like|say|nearly|almost|"
    r"bout)"
)
UP_TO_A_DAY = r"sec|min|hour|day"
ONLY = r"(?:only |just |a good |at least |for |it for )*"


def lasting(tag: str = "", units: str = UP_TO_A_DAY) -> str:
    """Return a pattern of a duration; `seconds` reads the match by the same tag."""
    return (
        rf"(?P<hedge{tag}>{_HEDGE} )?(?:a )?"
        rf"(?P<n{tag}>half an?|half|an?|couple(?: of)?|few|several|{NUMBER})"
        rf"(?: (?:or|to|-|maybe) (?P<m{tag}>{NUMBER}))? (?P<unit{tag}>{units})"
        rf"(?P<half{tag}> and a half)?(?: (?P<more{tag}>[0-9]{{1,2}}) min)?"
        rf"(?P<so{tag}> or so)?"
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
    unit = SECONDS[match[f"unit{tag}"]]
    more = unit / 2 if match[f"half{tag}"] else 0.0
    more += SECONDS["min"] * float(match[f"more{tag}"] or 0)
    short, long = sorted((abs(first) * unit + more, abs(last) * unit + more))
    if match[f"hedge{tag}"] or match[f"so{tag}"]:
        return short * (1 - HEDGE_SHARE), long * (1 + HEDGE_SHARE)
    return short, long
