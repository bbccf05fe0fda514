"""From what was seen to what it can mean: exact, several, none, or not yet to tell.

Unknown is never a default, a count outside the table is never brought to the nearest
row, and everything a candidate needs that was not told is named.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from assistant.record import Mode
from assistant.signals.bearings import count_of
from assistant.signals.cells import Together, lamp_of
from assistant.signals.counting import same_window, settled
from assistant.signals.explain import notes_of
from assistant.signals.fits import SLOTS, Fit, fit_lamp
from assistant.signals.grids import fit_grid
from assistant.signals.kinds import (
    Beeps,
    CountPerWindow,
    DigitPosition,
    EvenBlink,
    GroupThenPause,
    RateBlink,
    ShortLong,
)
from assistant.signals.observation import Candidate, Match, Observation, SignalRow
from assistant.signals.placed import Placed, standing, without_near
from assistant.signals.questions import best_question, plain_question
from assistant.signals.trains import fit_circumstances, fit_row
from assistant.signals.wordings import (
    NO_CODE_YET,
    NO_TABLE,
    count_over,
    in_no_row,
    need_count,
    need_pause,
    need_short,
    outside,
)

OTHER_DOCUMENT = 0.5
"""Weight of a row that explains one of several lamps, beside a row for them all."""


def decode(
    observations: Sequence[Observation],
    rows: Sequence[SignalRow],
    mode: Mode | None = None,
) -> Match:
    """Return what the lamps or display seen can mean.

    Parameters
    ----------
    observations : sequence of Observation
        One for each lamp or display; two lamps that a grid row names together are
        read together, others each for itself.
    rows : sequence of SignalRow
        The rows that apply, or may apply, to the unit.
    mode : Mode, optional
        The unit's mode; unknown leaves rows of every mode possible.

    Returns
    -------
    Match
        `exact` has one candidate for each observation read, `several` more; `none`
        and `not_decodable` say why in `reason`.
    """
    if not observations:
        return Match("none", (), None, "nothing was reported")
    kept = [row for row in rows if _no_lamp_disagrees(observations, row, mode)]
    together, rest = _grids(observations, kept, mode)
    matches = [together] if together is not None else []
    matches += [_beside(observations[place], kept, rows, mode) for place in rest]
    return _merged(matches)


def _no_lamp_disagrees(
    seen: Sequence[Observation], row: SignalRow, mode: Mode | None
) -> bool:
    """Return whether a grid row could stand beside every lamp reported."""
    signal = row.signal
    if not isinstance(signal, Together):
        return True
    return fit_joint(seen, signal, mode) is not None


def _grids(
    seen: Sequence[Observation], rows: Sequence[SignalRow], mode: Mode | None
) -> tuple[Match | None, list[int]]:
    """Read several lamps together where a grid row explains two or more of them."""
    everything = list(range(len(seen)))
    if len(seen) == 1:
        return None, everything
    joint = [
        Placed(row, fit)
        for row in rows
        if isinstance(row.signal, Together)
        and (fit := fit_joint(seen, row.signal, mode)) is not None
    ]
    most = max((len(one.fit.explained) for one in joint), default=0)
    if most <= 1:
        return None, everything
    joint = without_near(
        [one for one in joint if len(one.fit.explained) == most], set()
    )
    covered = {place for one in joint for place in one.fit.explained}
    documents = {one.row.document for one in joint}
    others = [
        Placed(one.row, replace(one.fit, weight=one.fit.weight * OTHER_DOCUMENT))
        for place in sorted(covered)
        for one in _fits(seen[place], rows, mode)
        if one.row.document not in documents
        or (_nameless(seen[place]) and not isinstance(one.row.signal, Together))
    ]
    match = _judged([seen[n] for n in sorted(covered)], [*joint, *others])
    return match, [place for place in everything if place not in covered]


def _nameless(seen: Observation) -> bool:
    """Return whether any lamp may be meant: then one that is read alone too."""
    flashes = seen.state in ("blink", "count")
    return flashes and not (seen.label or seen.colour or seen.lamps)


def fit_joint(
    seen: Sequence[Observation], signal: Together, mode: Mode | None
) -> Fit | None:
    """Return how a grid row and its circumstances fit what was seen."""
    fit = fit_grid(seen, signal)
    circumstances = fit_circumstances(seen[0], signal, mode)
    if fit is None or circumstances is None:
        return None
    return fit.and_also(circumstances)


def _beside(
    seen: Observation,
    kept: Sequence[SignalRow],
    rows: Sequence[SignalRow],
    mode: Mode | None,
) -> Match:
    """Read a lamp that no row joins with the others told; say where rows know it."""
    match = _decode_one(seen, kept, mode)
    if match.verdict != "none" or len(kept) == len(rows) or not _fits(seen, rows, mode):
        return match
    return replace(match, reason=in_no_row(seen))


def _decode_one(
    seen: Observation, rows: Sequence[SignalRow], mode: Mode | None
) -> Match:
    if seen.state == "no_code":
        return Match("not_decodable", (), None, NO_CODE_YET)
    if not rows:
        return Match("none", (), None, NO_TABLE)
    fits = _fits(seen, rows, mode)
    untold = _outside_table(seen, rows, fits)
    if untold is not None:
        return untold
    if not fits:
        return Match("none", (), None, outside(seen, _counts(seen, rows)))
    return _by_place(seen, fits) or _judged([seen], fits)


def _by_place(seen: Observation, fits: Sequence[Placed]) -> Match | None:
    """Read each place of a display by its own table; None where no row has places."""
    places: dict[int, list[Placed]] = {}
    for one in fits:
        signal = one.row.signal
        place = signal.position if isinstance(signal, DigitPosition) else 0
        places.setdefault(place, []).append(one)
    if not places.keys() - {0}:
        return None
    return _merged([_judged([seen], places[place]) for place in sorted(places)])


def _fits(
    seen: Observation, rows: Sequence[SignalRow], mode: Mode | None
) -> list[Placed]:
    """Return the rows that one observation allows, near ones beside exact ones."""
    found = []
    for row in rows:
        signal = row.signal
        fit = (
            fit_joint([seen], signal, mode)
            if isinstance(signal, Together)
            else fit_row(seen, signal, mode)
        )
        if fit is not None:
            found.append(Placed(row, fit))
    return standing(seen, rows, found)


def _counts(
    seen: Observation, rows: Iterable[SignalRow]
) -> Mapping[str, tuple[int, ...]]:
    """Return the counts that each document lists for the lamp seen."""
    found: dict[str, set[int]] = {}
    for row in rows:
        lamp = lamp_of(row.signal)
        sound = isinstance(row.signal, Beeps) != (seen.emitter == "buzzer")
        if lamp is not None and not sound and fit_lamp(seen, lamp) is not None:
            for count in count_of(row.signal):
                found.setdefault(row.document, set()).add(int(count))
    return {name: tuple(sorted(found[name])) for name in sorted(found)}


def _outside_table(
    seen: Observation, rows: Sequence[SignalRow], fits: Sequence[Placed]
) -> Match | None:
    """Say that a count is in no table, though an even blink would still be possible."""
    if not seen.count or seen.pause == "none":
        return None
    listed = _counts(seen, rows)
    if not listed or any(not _taken_for_count(one) for one in fits):
        return None
    blinks = sorted({one.row.signal.meaning for one in fits})
    return Match("none", (), None, outside(seen, listed, blinks))


def _taken_for_count(one: Placed) -> bool:
    """Return whether a row is an even blink of which only some flashes were counted."""
    timed = "rate" in one.fit.matched
    return isinstance(one.row.signal, EvenBlink | RateBlink) and not timed


_NEEDS = {"pause": need_pause, "count": need_count, "short": need_short}


def _judged(seen: Sequence[Observation], placed: Sequence[Placed]) -> Match:
    candidates = tuple(sorted((_candidate(one, seen) for one in placed), key=_order))
    kinds = {_form(one) for one in placed}
    open_pause = any(one.pause is None and one.state != "display" for one in seen)
    mixed = open_pause and _mixed_in_one_document(placed)
    uncounted = any("count" in one.fit.assumed - one.fit.near for one in placed)
    even_only = open_pause and kinds == {"even"}
    if uncounted or even_only:
        must = "pause" if mixed or even_only else "count"
        if must == "count" and all(isinstance(p.row.signal, ShortLong) for p in placed):
            must = "short"
        question = best_question(candidates, seen, must)
        if question is None or question.slot != must:
            question = plain_question(must, candidates)
        reason = _NEEDS[must]()
        return Match("not_decodable", candidates, question, reason)
    if _counted_otherwise(seen, placed):
        question = best_question(candidates, seen)
        return Match("not_decodable", candidates, question, count_over(placed[0].row))
    if len(candidates) == 1:
        return Match("exact", candidates, None)
    enough = {"count"} if len(seen) == 1 and settled(seen[0]) else ()
    question = best_question(candidates, seen, "pause" if mixed else None, enough)
    return Match("several", candidates, question)


def _form(one: Placed) -> str:
    match one.row.signal:
        case EvenBlink():
            return "even"
        case RateBlink():
            return "rate"
        case CountPerWindow() | GroupThenPause() | ShortLong() | Beeps():
            return "count"
        case _:
            return "other"


def _mixed_in_one_document(placed: Sequence[Placed]) -> bool:
    """Return whether only the pause tells two rows of one document apart."""
    forms: dict[str, set[str]] = {}
    for one in placed:
        forms.setdefault(one.row.document, set()).add(_form(one))
    return any("count" in held and held & {"even", "rate"} for held in forms.values())


def _counted_otherwise(seen: Sequence[Observation], placed: Sequence[Placed]) -> bool:
    """Return whether flashes were counted over another time than every row's."""
    if len(seen) != 1 or seen[0].window_s is None or seen[0].pause == "seen":
        return False
    return all(
        isinstance(one.row.signal, CountPerWindow)
        and not same_window(seen[0], one.row.signal.window)
        for one in placed
    )


def _candidate(one: Placed, seen: Sequence[Observation]) -> Candidate:
    near = one.fit.near - {"value", "flicker"}
    both = one.fit.assumed - one.fit.matched | near
    agreed = one.fit.matched - both
    notes = notes_of(one.row.signal, seen)
    return Candidate(one.row, _told(agreed), _told(both), one.fit.weight, notes)


def _told(slots: Iterable[str]) -> tuple[str, ...]:
    return tuple(
        sorted(slots, key=lambda s: (SLOTS.index(s) if s in SLOTS else len(SLOTS), s))
    )


def _order(one: Candidate) -> tuple[float, bool, int, int, str]:
    possible = one.row.unit_match == "possible"
    return (-one.weight, possible, one.row.trust, len(one.assumed), one.row.gid)


def _merged(matches: Sequence[Match]) -> Match:
    """Put the readings of lamps that have nothing to do with each other together.

    What could be read stands; what could not adds its question.
    """
    if len(matches) == 1:
        return matches[0]
    read = [one for one in matches if one.verdict in ("exact", "several")]
    if not read:
        open_ones = [one for one in matches if one.verdict == "not_decodable"]
        return (open_ones or list(matches))[0]
    best: dict[str, Candidate] = {}
    for one in read:
        for candidate in one.candidates:
            held = best.setdefault(candidate.row.gid, candidate)
            if candidate.weight > held.weight:
                best[candidate.row.gid] = candidate
    asked = [one.question for one in matches if one.question is not None]
    question = max(asked, key=lambda split: split.gain_bits, default=None)
    several = any(one.verdict == "several" for one in read)
    reason = "; ".join(one.reason for one in matches if one.reason)
    candidates = tuple(sorted(best.values(), key=_order))
    return Match("several" if several else "exact", candidates, question, reason)
