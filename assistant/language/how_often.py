"""How often something was done or came: "twice", "a couple of times", "4 times"."""

from __future__ import annotations

_NUMBERS = {
    "once": (1,),
    "twice": (2,),
    "thrice": (3,),
    "couple": (2, 3),
    "few": (2, 3, 4),
}


def often(tag: str, figure: str = r"[0-9]{1,2}(?: times| x)?") -> str:
    """Return a pattern of how often, as the group `tag`; `how_often` reads it."""
    return (
        rf"(?:a )?(?P<{tag}>once|twice|thrice|couple(?: of)? times|few times|{figure})"
    )


def how_often(words: str) -> tuple[int, ...]:
    """Return the numbers that are possible.

    Examples
    --------
    >>> how_often("couple of times"), how_often("4 times")
    ((2, 3), (4,))
    """
    first = words.split(maxsplit=1)[0]
    return _NUMBERS.get(first) or (int(first),)
