"""A small pack of its own and a driver of `step`, for tests of the dialogue."""

from __future__ import annotations

import json
from collections import deque
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from assistant.clock import FixedClock
from assistant.dialogue.answer import Answer
from assistant.dialogue.knowledge import Knowledge
from assistant.dialogue.step import Note, Reply, SearchFor, Situation, step
from assistant.facts import Fact
from assistant.jobs.events import Body, Entered, Event, Found, FoundHit, Opened
from assistant.jobs.fold import JobState
from assistant.record import Role
from assistant.rules.applicability import Plate
from assistant.rules.pack import Pack

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
UNIT = Plate(outdoor_model="LAB-20")

LAMP = {"box": "outdoor", "board": "main", "label": "L1", "colour": "amber"}
TECHNICIANS = ["technician", "licensed technician"]
EVERYBODY = ["customer", "maintenance", *TECHNICIANS]


def pack() -> Pack:
    """Return an invented maker's pack: four lamp rows, two waits, one counter."""
    return Pack.model_validate_json(json.dumps(PACK))


PACK: dict[str, object] = {
    "head": {
        "schema": 1,
        "id": "lab",
        "version": "1",
        "title": "Laboratory unit",
        "kind": "maker",
        "applies_to": [{"models": ["LAB-##"]}],
        "documents": {"manual": {"title": "Laboratory manual", "revision": "A"}},
    },
    "signals": [
        {
            "id": "amber-on",
            "kind": "steady",
            "lamp": LAMP,
            "meaning": "start delay",
            "is_fault": False,
            "waits": ["power-up"],
        },
        {
            "id": "amber-4",
            "kind": "group_then_pause",
            "lamp": LAMP,
            "count": 4,
            "meaning": "discharge sensor out of range",
            "is_fault": True,
            "causes": ["sensor-plug", "sensor", "board"],
        },
        {
            "id": "amber-5",
            "kind": "group_then_pause",
            "lamp": LAMP,
            "count": 5,
            "meaning": "high pressure",
            "is_fault": True,
            "causes": ["coil"],
            "stops": ["pressure-stops"],
        },
        {
            "id": "amber-9",
            "kind": "group_then_pause",
            "lamp": LAMP,
            "count": 9,
            "meaning": "lockout after high pressure",
            "is_fault": True,
            "latched": True,
            "causes": ["coil"],
            "stops": ["pressure-stops"],
        },
    ],
    "waits": [
        {
            "id": "power-up",
            "kind": "start_delay",
            "name": "start delay after power-up",
            "trigger": "power_on",
            "minimum": "3 min",
            "usual": "4 min",
            "give_up": "10 min",
        },
    ],
    "stops": [
        {
            "id": "pressure-stops",
            "kind": "sliding_window",
            "name": "high pressure stops",
            "event": "high pressure",
            "limit": 3,
            "window": "60 min",
            "edge": "counts",
            "resets": [
                {
                    "name": "power",
                    "how": "switch all supplies off and on again",
                    "scope": "all supplies together",
                    "off_at_least": "5 min",
                    "evidence_lost": "the count and the lamp",
                }
            ],
        },
    ],
    "sensors": [
        {
            "id": "discharge",
            "kind": "beta",
            "name": "discharge sensor",
            "role": "discharge",
            "r0": "50 kohm",
            "t0": "25 degC",
            "beta": "3950 K",
            "tolerance": "15 %",
            "open_above": "2 Mohm",
        },
    ],
    "checks": [
        {
            "id": "look-plug",
            "kind": "look",
            "name": "plug seated",
            "needs": "look",
            "minutes": 2,
            "allowed_for": EVERYBODY,
            "ask": "Is the cover free of dents over the sensor?",
            "options": ["free", "dented"],
            "outcomes": [
                {
                    "result": "dented",
                    "says": "The lead may be crushed.",
                    "moves": {"sensor-plug": "somewhat for"},
                },
                {
                    "result": "free",
                    "says": "Nothing to see.",
                    "moves": {"sensor-plug": "somewhat against"},
                },
            ],
        },
        {
            "id": "sensor-ohms",
            "kind": "thermistor",
            "name": "discharge sensor resistance",
            "needs": "power_off",
            "minutes": 5,
            "allowed_for": TECHNICIANS,
            "ask": "What does the discharge sensor read, and how warm is it?",
            "sensor": "discharge",
            "requires": ["power off", "sensor unplugged"],
            "outcomes": [
                {
                    "result": "fail",
                    "says": "The sensor is out of its table.",
                    "moves": {"sensor": "strongly for", "board": "strongly against"},
                },
                {
                    "result": "pass",
                    "says": "The sensor is good.",
                    "moves": {"sensor": "strongly against", "board": "somewhat for"},
                },
            ],
        },
    ],
    "causes": [
        {
            "id": "sensor-plug",
            "kind": "wiring",
            "name": "plug of the discharge sensor",
            "frequency": "common",
        },
        {
            "id": "sensor",
            "kind": "part",
            "name": "discharge sensor",
            "frequency": "occasional",
            "part": "the sensor",
            "before_ordering": "its resistance is outside the table",
        },
        {"id": "board", "kind": "part", "name": "main board", "frequency": "rare"},
        {
            "id": "coil",
            "kind": "airflow",
            "name": "blocked coil",
            "frequency": "common",
        },
    ],
}


class Talk:
    """One job driven event by event through `step`, without store or search."""

    def __init__(
        self,
        packs: Sequence[Pack] | None = None,
        *,
        unit: Plate = UNIT,
        role: Role | None = "technician",
        hits: tuple[FoundHit, ...] = (),
    ) -> None:
        self.clock = FixedClock(START)
        self.events: list[Event] = []
        self._hits = hits
        knowledge = Knowledge(packs=(pack(),) if packs is None else tuple(packs))
        self.situation = Situation(state=JobState(), knowledge=knowledge)
        self._turn(Opened(plate=unit, role=role))

    def enter(self, *facts: Fact, after_minutes: float = 1) -> Answer:
        """Enter facts after some minutes and return the answer."""
        return self.tell(Entered(facts=facts), after_minutes=after_minutes)

    def tell(self, body: Body, *, after_minutes: float = 1) -> Answer:
        """Take a whole event in after some minutes and return the answer."""
        self.clock.advance(timedelta(minutes=after_minutes))
        answer = self._turn(body)
        assert answer is not None
        return answer

    def _turn(self, body: Body) -> Answer | None:
        waiting: deque[Body] = deque([body])
        answer: Answer | None = None
        while waiting:
            event = Event(
                id=self.clock.new_id(),
                job="J",
                noted=self.clock.now(),
                machine="M",
                seq=len(self.events),
                prev="",
                body=waiting.popleft(),
            )
            self.events.append(event)
            self.situation, effects = step(self.situation, event)
            for effect in effects:
                match effect:
                    case Note(body=more):
                        waiting.append(more)
                    case SearchFor(query=query):
                        found = Found(query=query, hits=self._hits, searched=1)
                        waiting.append(found)
                    case Reply(answer=ready):
                        answer = ready
        return answer
