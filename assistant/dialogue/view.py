"""One turn's view: the job, what is in force for its unit, and the instant."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from functools import cached_property

from assistant.dialogue.answer import SourceRef
from assistant.dialogue.happenings import happenings
from assistant.dialogue.knowledge import Knowledge
from assistant.dialogue.known import known
from assistant.dialogue.observations import seen_before_reset, seen_now
from assistant.dialogue.stops_told import stops_told, unnamed_for
from assistant.facts import (
    Act,
    ContextFact,
    LampFact,
    ModeFact,
    ProtectionStopFact,
)
from assistant.jobs.events import Answered, Said
from assistant.jobs.fold import Held, JobState, current
from assistant.record import Mode, Role
from assistant.rules.applicability import Plate
from assistant.rules.fittings import compare_settings, settings_in
from assistant.rules.inforce import InForce
from assistant.signals.decode import decode
from assistant.signals.observation import Match, Observation
from assistant.timing.stop_events import counted_by
from assistant.timing.stop_values import StopCount, StopsTold
from assistant.timing.stops import count_stops
from assistant.timing.values import Happening, Known, WaitState
from assistant.timing.waits import waits_in_force


@dataclass(frozen=True)
class View:
    """Everything one answer is computed from; computed once, never changed."""

    state: JobState
    knowledge: Knowledge
    now: datetime

    @property
    def utc_offset(self) -> int:
        """Minutes of the place's local time over UTC."""
        opened = self.state.opened
        return opened.utc_offset_minutes if opened else 0

    @property
    def acts(self) -> tuple[Act, ...]:
        """What the turn's words want beside telling facts."""
        words = self.state.words
        return words.acts if isinstance(words, Said | Answered) else ()

    @property
    def text(self) -> str:
        """The words of the turn, as typed."""
        words = self.state.words
        return words.text if isinstance(words, Said | Answered) else ""

    @property
    def stops_of_decode(self) -> tuple[str, ...]:
        """The counters that the decoded rows name."""
        return self._named_by_decode("stops")

    @property
    def plate(self) -> Plate:
        """What is known of the unit."""
        return self.state.plate

    @property
    def role(self) -> Role:
        """Who acts; until said, a customer."""
        return self.state.role or "customer"

    @property
    def works_inside(self) -> bool:
        """Whether the person may work, and measure, inside the unit."""
        return self.role in ("technician", "licensed technician")

    @cached_property
    def force(self) -> InForce:
        """The items that apply, or may apply, to the unit."""
        return self.knowledge.in_force(self.plate)

    @cached_property
    def facts(self) -> tuple[Held, ...]:
        """Facts that still count as evidence."""
        return current(self.state)

    @cached_property
    def observations(self) -> tuple[Observation, ...]:
        """Lamps as they look now."""
        return seen_now(self.state)

    @cached_property
    def older_observations(self) -> tuple[Observation, ...]:
        """Lamps known only from before the last reset."""
        return seen_before_reset(self.state)

    @cached_property
    def mode(self) -> Mode | None:
        """The mode told last."""
        modes = self.state.of(ModeFact)
        fact = modes[-1].fact if modes else None
        return fact.mode if isinstance(fact, ModeFact) else None

    @cached_property
    def match(self) -> Match | None:
        """The decode of the lamps, if any were reported."""
        seen = self.observations or self.older_observations
        told = tuple(self._while(one) for one in seen if one.state != "no_code")
        return decode(told, self.force.signals) if told else None

    @property
    def told_lamp_now(self) -> bool:
        """Whether this turn told of a lamp or display."""
        return any(isinstance(held.fact, LampFact) for held in self.state.told_now())

    def _while(self, seen: Observation) -> Observation:
        """Return what was seen together with whether the compressor ran."""
        seen = self._as_set(seen)
        running = self.context("compressor running")
        if running is None or seen.unit_state:
            return seen
        state = ("running", "starting") if running else ("stopped", "standby")
        return seen.model_copy(update={"unit_state": state})

    def _as_set(self, seen: Observation) -> Observation:
        """Return what was seen together with how the switches told stand."""
        held: list[str] = []
        denied: list[str] = []
        for words in self._settings_asked:
            verdict = compare_settings((words,), self.plate.switch_settings)
            if verdict != "possible":
                (held if verdict == "confirmed" else denied).append(words)
        if not held and not denied:
            return seen
        return seen.model_copy(
            update={
                "conditions": (*seen.conditions, *held),
                "not_conditions": (*seen.not_conditions, *denied),
            }
        )

    @cached_property
    def _settings_asked(self) -> tuple[str, ...]:
        """Return the switch settings that rows make a condition of."""
        words = [w for row in self.force.signals for w in row.signal.precondition]
        return tuple(one for one in dict.fromkeys(words) if settings_in(one))

    @cached_property
    def waits(self) -> tuple[WaitState, ...]:
        """Waits that what happened has started."""
        return waits_in_force(
            self.force.waits, self.happenings, self.now, self.mode, self.known
        )

    @cached_property
    def waits_before(self) -> tuple[WaitState, ...]:
        """Waits as they would stand now without what this turn told."""
        earlier = [held for held in self.state.held if held.turn < self.state.turn]
        if len(earlier) == len(self.state.held):
            return self.waits
        before = replace(self.state, held=tuple(earlier))
        facts = tuple(held for held in self.facts if held.turn < self.state.turn)
        return waits_in_force(
            self.force.waits, happenings(before), self.now, self.mode, known(facts)
        )

    @cached_property
    def happenings(self) -> tuple[Happening, ...]:
        """What happened that starts or ends waits, in the order told."""
        return happenings(self.state)

    @cached_property
    def known(self) -> Known:
        """What else was said that waits depend on."""
        return known(self.facts)

    @cached_property
    def waits_shown(self) -> tuple[WaitState, ...]:
        """Waits in force, and those the decoded state speaks of: start not known."""
        known = {state.row.gid for state in self.waits}
        named = self._named_by_decode("waits")
        spoken = tuple(
            WaitState(row, None, None, None, None, "start_unknown")
            for row in self.force.waits
            if row.gid in named and row.gid not in known
        )
        return (*self.waits, *spoken)

    @cached_property
    def stops(self) -> tuple[StopCount, ...]:
        """Protection-stop counters, where stops were told."""
        if not self.state.of(ProtectionStopFact):
            return ()
        unnamed = unnamed_for(self.force.stops, self.stops_of_decode)
        counts = count_stops(self.force.stops, self.stops_told, self.now, unnamed)
        return tuple(count for count in counts if count.stands)

    @cached_property
    def stops_touched(self) -> frozenset[str]:
        """The counters that any stop told is counted by, reset since or not."""
        unnamed = unnamed_for(self.force.stops, self.stops_of_decode)
        told = self.stops_told.stops
        rows = self.force.stops
        return frozenset(row.gid for row in rows if counted_by(row, told, unnamed))

    @cached_property
    def stops_told(self) -> StopsTold:
        """Stops, resets and runs as the counters read them."""
        running = self.context("compressor running")
        return stops_told(self.state, running=running)

    def _named_by_decode(self, items: str) -> tuple[str, ...]:
        """Return the waits or stops that the decoded rows name."""
        if self.match is None:
            return ()
        return tuple(
            f"{candidate.row.gid.partition('/')[0]}/{name}"
            for candidate in self.match.candidates
            for name in getattr(candidate.row.signal, items)
        )

    def context(self, name: str) -> bool | None:
        """Return what was said last of a yes-or-no about the unit; None is unknown."""
        for held in reversed(self.facts):
            if isinstance(held.fact, ContextFact) and held.fact.name == name:
                return held.fact.value
        return None

    def cite(self, gid: str) -> tuple[SourceRef, ...]:
        """Cite an item in force by its global id."""
        return self.knowledge.cite(gid, self.force.by_gid(gid).item)
