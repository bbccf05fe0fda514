"""Suspected causes of a job, moved by its checks, and the check that comes next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from assistant.checks.kinds import Check, LookCheck
from assistant.diagnosis.choice import Choice, Option, choose
from assistant.diagnosis.ranking import (
    Evidence,
    Ranked,
    Suspect,
    factors_of,
    outcome_factors,
    rank,
    weights,
)
from assistant.dialogue.view import View
from assistant.facts import ComplaintFact
from assistant.jobs.events import CheckDone
from assistant.rules.inforce import Row
from assistant.rules.kinds import Cause, ComplaintCall


@dataclass(frozen=True)
class Diagnosis:
    """Causes and checks of one view."""

    view: View

    @cached_property
    def causes(self) -> Mapping[str, Row[Cause]]:
        """Causes in force by global id."""
        return {row.gid: row for row in self.view.force.causes}

    @cached_property
    def complaints(self) -> tuple[Row[ComplaintCall], ...]:
        """The written calls that the complaints told match."""
        told = {
            held.fact.complaint
            for held in self.view.facts
            if isinstance(held.fact, ComplaintFact)
        }
        return tuple(
            Row(row.gid, row.item, row.unit_match, row.pack_kind, row.pack_id)
            for row in self.view.force.procedures
            if isinstance(row.item, ComplaintCall) and row.item.complaint in told
        )

    @cached_property
    def suspects(self) -> tuple[Suspect, ...]:
        """What the lamps point to; without a fault shown, what the complaint does."""
        return self._by_lamp() or self._by_complaint()

    def _by_lamp(self) -> tuple[Suspect, ...]:
        match = self.view.match
        if match is None:
            return ()
        total = sum(candidate.weight for candidate in match.candidates)
        return tuple(
            Suspect(gid, self.causes[gid].item.frequency, candidate.weight / total)
            for candidate in match.candidates
            if candidate.row.signal.is_fault
            for gid in _in_pack(candidate.row.gid, candidate.row.signal.causes)
            if gid in self.causes
        )

    def _by_complaint(self) -> tuple[Suspect, ...]:
        return tuple(
            Suspect(gid, self.causes[gid].item.frequency)
            for row in self.complaints
            for gid in _in_pack(row.gid, row.item.causes)
            if gid in self.causes
        )

    @cached_property
    def done(self) -> tuple[CheckDone, ...]:
        """The last result of each check that still rests on current facts."""
        addresses = {held.address for held in self.view.facts}
        last = {
            done.check: done
            for done in self.view.state.checks
            if tuple(done.of) in addresses
        }
        return tuple(last.values())

    @cached_property
    def evidence(self) -> tuple[Evidence, ...]:
        """What the results of the checks move."""
        return tuple(
            Evidence(done.check, done.result, self._factors(done)) for done in self.done
        )

    def _factors(self, done: CheckDone) -> Mapping[str, float]:
        row = self.view.force.check(done.check)
        for outcome in row.item.outcomes if row else ():
            if outcome.result == done.result:
                return factors_of(outcome, self._ids(done.check))
        return {}

    def _ids(self, check: str) -> Mapping[str, str]:
        pack = check.partition("/")[0]
        return {
            gid.partition("/")[2]: gid
            for gid in self.causes
            if gid.partition("/")[0] == pack
        }

    @cached_property
    def ranked(self) -> tuple[Ranked, ...]:
        """Causes, heaviest first."""
        return rank(self.suspects, self.evidence)

    @cached_property
    def weights(self) -> Mapping[str, float]:
        """Normalised weights, the open cause included."""
        return weights(self.suspects, self.evidence)

    @cached_property
    def remaining(self) -> tuple[Row[Check], ...]:
        """Checks that would move a suspected cause and are not done."""
        settled = {done.check for done in self.done if done.result != "no_verdict"}
        return tuple(
            row
            for row in self.view.force.checks
            if row.gid not in settled
            and not self._declined(row.gid)
            and row.item.mode in (None, self.view.mode)
            and any(
                factors.keys() & self.weights.keys()
                for factors in outcome_factors(row.item, self._ids(row.gid))
            )
        )

    def _declined(self, gid: str) -> bool:
        return bool({f"look:{gid}", f"reading:{gid}"} & set(self.view.state.declined))

    @cached_property
    def allowed(self) -> tuple[Row[Check], ...]:
        """The remaining checks that this person may and can do."""
        gauges = self.view.context("gauges at hand")
        return tuple(
            row
            for row in self.remaining
            if self.view.role in row.item.allowed_for
            and not (row.item.needs == "gauges" and gauges is False)
        )

    @cached_property
    def choice(self) -> Choice | None:
        """The next check among those the person may do."""
        return self._choose(self.allowed)

    @cached_property
    def choice_of_anyone(self) -> Choice | None:
        """The next check if anybody could do it."""
        return self._choose(self.remaining)

    @cached_property
    def held_back(self) -> Row[Check] | None:
        """The check that would come next if this person might do it."""
        best = self.choice_of_anyone
        if best is None or (self.choice and self.choice.check == best.check):
            return None
        row = self.view.force.check(best.check)
        return row if row and self.view.role not in row.item.allowed_for else None

    @cached_property
    def unsettled(self) -> tuple[CheckDone, ...]:
        """Readings that have no verdict yet for want of something untold."""
        return tuple(
            done for done in self.done if done.result == "no_verdict" and done.missing
        )

    def _choose(self, rows: tuple[Row[Check], ...]) -> Choice | None:
        if not self.ranked:
            return None
        options = [
            Option(
                row.gid,
                row.item.needs,
                row.item.minutes,
                outcome_factors(row.item, self._ids(row.gid)),
            )
            for row in rows
        ]
        return choose(self.weights, options, self._follow_on())

    def _follow_on(self) -> str | None:
        """Return the check that the document names after the last result."""
        for done in reversed(self.done):
            row = self.view.force.check(done.check)
            for outcome in row.item.outcomes if row else ():
                if outcome.result == done.result and outcome.then:
                    return f"{done.check.partition('/')[0]}/{outcome.then}"
            return None
        return None


def _in_pack(gid: str, names: tuple[str, ...]) -> tuple[str, ...]:
    pack = gid.partition("/")[0]
    return tuple(name if "/" in name else f"{pack}/{name}" for name in names)


def slot_of(row: Row[Check]) -> str:
    """Return the slot a check's question is asked under."""
    kind = "look" if isinstance(row.item, LookCheck) else "reading"
    return f"{kind}:{row.gid}"
