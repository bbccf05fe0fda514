"""The decode of the lamps, as data and as lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.dialogue import replies
from assistant.dialogue.answer import (
    Decode,
    DecodeCandidate,
    SourceRef,
    Statement,
)
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.sections.signals import beside_lines, lost_lines, table_lines
from assistant.dialogue.view import View
from assistant.facts import (
    LampFact,
    ModeFact,
    PartFact,
    ResetFact,
    SettingFact,
    UnitFact,
)
from assistant.signals.bearings import RUNNING
from assistant.signals.observation import Candidate, Match

CHANGES_DECODE = (LampFact, UnitFact, ResetFact, ModeFact, PartFact, SettingFact)
"""Facts told in a turn that can change what the lamps mean."""


def decodes(view: View) -> tuple[Decode, ...]:
    """Return the decode of the lamps as data."""
    match = view.match
    if match is None:
        return ()
    confirmed = bool(match.candidates) and all(
        candidate.row.unit_match == "confirmed" for candidate in match.candidates
    )
    candidates = tuple(_candidate(view, one) for one in match.candidates)
    # A row that was only ever recognised in a picture decides nothing alone.
    settled = not any(one.to_confirm for one in candidates)
    return (
        Decode(
            verdict=match.verdict if settled or match.verdict != "exact" else "several",
            unit_confirmed=confirmed,
            candidates=candidates,
            reason=match.reason or ("" if settled else replies.TO_CONFIRM),
        ),
    )


def _recognised_only(sources: Sequence[SourceRef]) -> bool:
    """Whether all pages that a row stands on were read by OCR."""
    printed = [source for source in sources if source.page]
    return bool(printed) and all(source.read_by == "ocr" for source in printed)


def _candidate(view: View, candidate: Candidate) -> DecodeCandidate:
    signal = candidate.row.signal
    sources = view.cite(candidate.row.gid)
    return DecodeCandidate(
        id=candidate.row.gid,
        meaning=signal.meaning,
        is_fault=signal.is_fault,
        matched=candidate.matched,
        assumed=candidate.assumed,
        notes=candidate.notes,
        sources=sources,
        to_confirm=_recognised_only(sources),
    )


def decode_lines(view: View) -> Iterator[Statement]:
    """Say what the lamps can mean, each line with its page."""
    match = view.match
    if match is None or not _news(view):
        return
    if view.older_observations:
        yield computed("This was seen before the reset, not now.")
    for candidate in match.candidates:
        doubtful = _recognised_only(view.cite(candidate.row.gid))
        exact = match.verdict == "exact" and not doubtful
        yield rule(view, candidate.row.gid, replies.decoded(candidate, exact=exact))
        if doubtful:
            yield computed(replies.TO_CONFIRM)
        if candidate.assumed and not exact:
            yield computed(replies.assumed(candidate))
        yield from beside_lines(view, candidate)
    yield from table_lines(view, match.candidates)
    yield from _left_open(match)
    yield from lost_lines(view)


def _left_open(match: Match) -> Iterator[Statement]:
    """Say what could not be read, and that the unit is not confirmed."""
    if match.verdict in ("none", "not_decodable"):
        yield computed(replies.not_decoded(match))
        return
    if match.reason:
        yield computed(replies.not_read(match))
    if any(one.row.unit_match != "confirmed" for one in match.candidates):
        yield computed(replies.UNIT_NOT_CONFIRMED)


def _news(view: View) -> bool:
    """Say whether what the lamps mean changed in this turn, or was asked for."""
    told = any(isinstance(held.fact, CHANGES_DECODE) for held in view.state.told_now())
    told = told or any(held.answers == RUNNING for held in view.state.told_now())
    asked = {"ask_meaning", "ask_page"} & set(view.acts)
    return told or bool(view.state.corrected) or bool(asked)
