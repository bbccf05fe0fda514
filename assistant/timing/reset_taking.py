"""Whether a reset that was done is one that a document says resets."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.timing.off_times import compared
from assistant.timing.stop_kinds import Reset
from assistant.timing.stop_values import ResetTold, Taking, Took

_RANK: dict[Took, int] = {"yes": 0, "maybe": 1, "no": 2}


def takings(written: Sequence[Reset], told: Sequence[ResetTold]) -> tuple[Taking, ...]:
    """Return for each told reset whether it took, by the written ones.

    Resets of one order are alternatives. A reset of a later order takes only after
    one of each order before it; of those, the last one ends the lockout.

    Parameters
    ----------
    written : sequence of Reset
        Those of one counter, or of one of its levels.
    told : sequence of ResetTold
        As they were told.
    """
    orders = sorted({reset.order for reset in written if reset.clears_lockout})
    found = []
    for one in told:
        ways = [_in_order(reset, one, written, told, orders) for reset in written]
        best = min(ways, key=_worth, default=None)
        found.append(best or Taking("no", "other_reset"))
    return tuple(found)


def _worth(taking: Taking) -> tuple[int, bool]:
    """Rank ways: one that took first; "another reset" says the least."""
    return _RANK[taking.took], taking.why == "other_reset"


def _in_order(
    reset: Reset,
    told: ResetTold,
    written: Sequence[Reset],
    others: Sequence[ResetTold],
    orders: Sequence[int],
) -> Taking:
    taking = taking_of(reset, told)
    if taking.took == "no" or not orders:
        return taking
    if reset.order < orders[-1]:
        return Taking("no", "order", reset)
    doubts = [_done_before(order, told, written, others) for order in orders[:-1]]
    worst: Took = max(doubts, key=_RANK.__getitem__, default="yes")
    if worst == "yes":
        return taking
    return Taking(worst, "order", reset)


def _done_before(
    order: int,
    told: ResetTold,
    written: Sequence[Reset],
    others: Sequence[ResetTold],
) -> Took:
    """Return whether a reset of an earlier order took before a told one."""
    found: list[Took] = ["no"]
    for step in (one for one in written if one.order == order):
        for other in (one for one in others if one is not told):
            took = taking_of(step, other).took
            if other.at.earliest > told.at.latest:
                took = "no"
            elif other.at.latest > told.at.earliest and took == "yes":
                took = "maybe"
            found.append(took)
    return min(found, key=_RANK.__getitem__)


def taking_of(reset: Reset, told: ResetTold) -> Taking:
    """Return whether one told reset meets one written reset.

    What was seen to come of it stands over what is not known of it; where the document
    says that it cannot have reset and it was seen to, it may have.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> from assistant.timing.moment import Moment
    >>> noon = datetime(2026, 5, 4, 12, tzinfo=UTC)
    >>> at = Moment(earliest=noon, latest=noon)
    >>> rule = Reset(name="power", together=True, how="off", evidence_lost="all")
    >>> taking_of(rule, ResetTold(at, "power", supplies="one_left_on")).why
    'one_left_on'
    """
    if told.which is not None and told.which != reset.name:
        return Taking("no", "other_reset", reset)
    if not reset.clears_lockout:
        return Taking("no", "lamp_only", reset)
    if told.cleared is False:
        return Taking("no", "not_cleared", reset)
    doubts = [
        Taking("maybe", "which_unknown", reset) if told.which is None else None,
        _supplies(reset, told),
        _off(reset, told),
    ]
    found = [doubt for doubt in doubts if doubt is not None]
    against = [doubt for doubt in found if doubt.took == "no"]
    if against and told.which is not None and told.cleared is not True:
        return against[0]
    if found and (told.cleared is not True or against):
        return Taking("maybe", (against or found)[0].why, reset)
    return Taking("yes", "took", reset)


def _supplies(reset: Reset, told: ResetTold) -> Taking | None:
    if not reset.together or told.supplies == "together":
        return None
    if told.supplies is None:
        return Taking("maybe", "supplies_unknown", reset)
    return Taking("no", told.supplies, reset)


def _off(reset: Reset, told: ResetTold) -> Taking | None:
    """Judge the time off; from the dark lamp it is shorter than from the cut."""
    if reset.off_at_least is None and reset.off_at_most is None:
        return None
    if told.off is None:
        return Taking("maybe", "off_unknown", reset)
    short, long = told.off
    if reset.counted_from == "lamp_dark" and told.off_from != "lamp_dark":
        short = 0.0
    if reset.counted_from == "power_off" and told.off_from == "lamp_dark":
        long = math.inf
    match compared(short, long, reset.off_at_least, reset.off_at_most):
        case "held":
            return None
        case "cannot_tell":
            return Taking("maybe", "off_unknown", reset)
        case wrong:
            return Taking("no", wrong, reset)
