"""A unit put right after the number: "sorry kilohms, not ohms"."""

from __future__ import annotations

import re

from assistant.facts import ReadingFact
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.quantities import SPELLED, UNIT, quantity
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Pending

_UNIT_FIXED = rx(
    r"(?:sorry|i mean|i meant|no wait|that is|it is|should be|actually|meant)(?: "
    rf"[a-z]+| ,)*? (?P<a>{UNIT})(?: ,)? not (?P<b>{UNIT})"
    rf"|(?P<c>{UNIT})(?: ,)? not (?P<d>{UNIT})"
    rf"|not (?P<e>{UNIT})(?: ,)? (?:but )?(?P<f>{UNIT})"
    r"|(?:sorry|i mean|i meant|no wait|that was in|that is in|in|make that)(?: [a-z]+| "
    rf",)*? (?P<g>{UNIT})"
)


def corrected_unit(view: Tokens, pending: Pending) -> list[Claim]:
    """Claim the last reading again in the unit meant; needs its number."""
    match = _UNIT_FIXED.search(view.folded)
    number = re.match(NUMBER, pending.last_reading.replace(",", ""))
    if match is None or number is None or pending.last_reading_of is None:
        return []
    unit = match["a"] or match["c"] or match["f"] or match["g"]
    value = quantity(number[0], SPELLED[unit])
    if value is None:
        return []
    fact = ReadingFact(of=pending.last_reading_of, value=value)
    return [Claim(*match.span(), fact)]
