"""Counts stops as a plan says: what one more event may lead to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product
from typing import Literal, cast

from assistant.timing.believable import Event
from assistant.timing.stop_plans import Plan
from assistant.timing.zones import Difference

Maybe = Literal["yes", "no", "maybe"]
Bounds = tuple[Difference, ...]
State = tuple["Tally", ...]
"""One tally for each key of the plan."""


@dataclass(frozen=True, slots=True)
class StopData:
    """What is known of a stop beside its time.

    `keys` are those it may belong to; `group` are the stops told in one breath,
    between which nothing begins anew where they are `in_a_row` or of `one_call`.
    `anew` is a stop after a run that began the count anew.
    """

    counts: Maybe = "yes"
    keys: tuple[int, ...] = (0,)
    group: int = 0
    in_a_row: bool = False
    one_call: bool = False
    anew: bool = False


@dataclass(frozen=True, slots=True)
class Tally:
    """How a count stands.

    Attributes
    ----------
    level : int
        0 is open; else the level that is locked.
    lock : int or None
        The stop that locked it.
    count : int
        Stops of the first level, where it has no window; at the end, with one too.
    pending : tuple of tuple of int
        For each level, what may still stand in its window: stops, then lockouts.
    last : int or None
        The newest stop, where something after it may begin the count anew.
    told : StopData or None
        What is known of that stop.
    call_known : bool
        The newest call was told: no other began after it.
    """

    pending: tuple[tuple[int, ...], ...]
    level: int = 0
    lock: int | None = None
    count: int = 0
    last: int | None = None
    told: StopData | None = None
    call_known: bool = False


@dataclass(frozen=True, slots=True)
class StopMachine:
    """A plan as a machine for `believable.courses`."""

    plan: Plan

    def begin(self) -> State:
        """Return the state of a unit that never stopped."""
        return tuple(self._empty for _ in self.plan.keys or ("",))

    @property
    def _empty(self) -> Tally:
        return Tally(tuple(() for _ in self.plan.tiers))

    def live(self, state: State) -> tuple[int, ...]:
        """Return the stops that are looked back at."""
        found: set[int] = set()
        for tally in state:
            found.update(at for level in tally.pending for at in level)
            found.update(at for at in (tally.lock, tally.last) if at is not None)
        return tuple(sorted(found))

    def step(
        self, state: State, events: Sequence[Event], at: int
    ) -> Iterable[tuple[Bounds, State]]:
        """Yield what event `at` may lead to."""
        event = events[at]
        if event.what == "stop":
            yield from self._stopped(state, event, at)
            return
        moves = [tuple(self._moved(tally, event, at)) for tally in state]
        for chosen in product(*moves):
            bounds = tuple(bound for more, _ in chosen for bound in more)
            yield bounds, tuple(tally for _, tally in chosen)

    def _moved(
        self, tally: Tally, event: Event, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        match event.what:
            case "reset":
                took = cast("tuple[Maybe, ...]", event.data)
                yield from (((), one) for one in self._reset(tally, took))
            case "good":
                yield from (((), one) for one in self._ran_well(tally, event.data))
            case "call":
                anew = replace(self._anew(tally), call_known=True)
                yield (), tally if tally.level else anew
            case "start":
                yield (), replace(tally, last=None, told=None)
            case _:
                yield from self._now(tally, event.data, at)

    def _stopped(
        self, state: State, event: Event, at: int
    ) -> Iterator[tuple[Bounds, State]]:
        data = cast("StopData", event.data)
        for key in data.keys:
            for bounds, tally in self._stop(state[key], data, at):
                yield bounds, (*state[:key], tally, *state[key + 1 :])

    def _stop(
        self, tally: Tally, data: StopData, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        for bounds, free in self._freed(tally, at):
            if free.level == len(self.plan.tiers):
                yield bounds, free
                continue
            if data.counts != "yes":
                late = self.plan.late_clears
                yield bounds, self._anew(free) if late else free
            if data.counts != "no":
                yield from self._one_more(bounds, free, data, at)

    def _one_more(
        self, bounds: Bounds, tally: Tally, data: StopData, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        for more, begun in self._since_last(tally, data, at):
            looks = self.plan.chained or self.plan.latch is not None
            marked = replace(begun, last=at, told=data) if looks else begun
            for most, counted in self._counted(marked, at, 0):
                yield (*bounds, *more, *most), counted

    def _freed(self, tally: Tally, at: int) -> Iterator[tuple[Bounds, Tally]]:
        """Yield whether a lockout had ended before one more event.

        A lower level has: the unit ran, or it could not have stopped.
        """
        if tally.level == 0:
            yield (), tally
            return
        free = replace(tally, level=0, lock=None)
        if tally.level < len(self.plan.tiers):
            yield (), free
            return
        yield from self._released(tally, free, at)

    def _released(
        self, tally: Tally, free: Tally, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        tier = self.plan.tiers[tally.level - 1]
        if tier.may_release:
            yield (), free
            yield (), tally
        elif tier.release is not None and tally.lock is not None:
            yield ((tally.lock, at, -tier.release),), free
            yield ((at, tally.lock, tier.release - 1),), tally
        else:
            yield (), tally

    def _since_last(
        self, tally: Tally, data: StopData | None, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        """Yield whether the count begins anew between the last stop and event `at`.

        `data` None is the present: only what was told in one breath holds on.
        """
        last, plan = tally.last, self.plan
        if last is None or not plan.chained:
            yield (), tally
            return
        if data is not None and data.anew:
            yield (), self._anew(tally)
            return
        told = data or tally.told
        together = told is not None and tally.told is not None
        together = together and told.group == tally.told.group  # type: ignore[union-attr]
        in_a_row = together and told is not None and told.in_a_row
        one_call = in_a_row or (together and told is not None and told.one_call)
        anew = self._anew(tally)
        days = plan.days
        yield ((at, last, days - 1),) if days is not None else (), tally
        if days is not None:
            yield ((last, at, -days),), anew
        may = plan.cycles is not None and not in_a_row
        may |= plan.per_call and not one_call and not tally.call_known
        if may:
            yield (), anew
        elif plan.run is not None and not (in_a_row and data):
            yield ((last, at, -plan.run),), anew

    def _anew(self, tally: Tally) -> Tally:
        pending = ((), *tally.pending[1:])
        return replace(tally, pending=pending, count=0, last=None, told=None)

    def _counted(
        self, tally: Tally, at: int, level: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        """Yield the tally with one more stop, or lockout, counted at a level."""
        tier = self.plan.tiers[level]
        if tier.reach is None:
            more = replace(tally, count=tally.count + 1)
            if tier.limit is not None and more.count >= tier.limit:
                yield from self._locked(more, at, level)
            else:
                yield (), more
            return
        held = (*tally.pending[level], at)
        if tier.limit is None or len(held) < tier.limit:
            yield (), _holding(tally, level, held)
            return
        for bounds, locked in self._locked(_holding(tally, level, ()), at, level):
            yield ((at, held[0], tier.reach), *bounds), locked
        yield (
            ((held[0], at, -tier.reach - 1),),
            _holding(tally, level, held[1:]),
        )

    def _locked(
        self, tally: Tally, at: int, level: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        top = level + 1 == len(self.plan.tiers)
        timed = self.plan.tiers[level].release is not None
        locked = replace(
            tally, level=level + 1, lock=at if timed else None, count=0,
            last=None, told=None,
        )  # fmt: skip
        if top:
            yield (), locked
        else:
            yield from self._counted(locked, at, level + 1)

    def _reset(self, tally: Tally, took: tuple[Maybe, ...]) -> Iterator[Tally]:
        """Yield what a reset leaves; `took` says for each level whether it took."""
        sure = max((n for n, one in enumerate(took) if one == "yes"), default=-1)
        if sure < 0:
            yield tally
        for level, one in enumerate(took):
            if one == "no" or level < sure:
                continue
            if tally.level > level + 1:
                yield tally
                continue
            kept = tally.pending[level + 1 :]
            pending = (*(() for _ in range(level + 1)), *kept)
            yield replace(self._empty, pending=pending)

    def _ran_well(self, tally: Tally, clears: object) -> Iterator[Tally]:
        if clears != "yes" or tally.level:
            yield tally
        if clears != "no" and not tally.level:
            yield self._anew(tally)

    def _now(
        self, tally: Tally, running: object, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        if self.plan.latch is not None:
            yield from self._latched(tally, running, at, self.plan.latch)
            return
        for bounds, held in self._held_now(tally, running, at):
            for more, begun in self._since_last(held, None, at):
                for most, left in self._in_windows(begun, at):
                    end = replace(left, last=None, told=None, call_known=False)
                    yield (*bounds, *more, *most), end

    def _held_now(
        self, tally: Tally, running: object, at: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        if tally.level == 0:
            yield (), tally
            return
        free = replace(tally, level=0, lock=None)
        tier = self.plan.tiers[tally.level - 1]
        if running is True and tier.may_release:
            yield (), free
        else:
            yield from self._released(tally, free, at)

    def _latched(
        self, tally: Tally, running: object, at: int, latch: int
    ) -> Iterator[tuple[Bounds, Tally]]:
        """Yield whether a stop that was not told to have ended has latched."""
        ended = replace(tally, last=None, told=None, count=0)
        if tally.last is None or running is True:
            yield (), ended
            return
        yield ((at, tally.last, latch),), replace(ended, count=1)
        late = ((tally.last, at, -latch - 1),)
        yield late, replace(ended, level=1)
        if running is None:
            yield late, ended

    def _in_windows(self, tally: Tally, at: int) -> Iterator[tuple[Bounds, Tally]]:
        """Yield how many still stand in each level's window."""
        ways = [
            tuple(_newest(held, tier.reach, at))
            for held, tier in zip(tally.pending, self.plan.tiers, strict=True)
        ]
        for chosen in product(*ways):
            bounds = tuple(bound for more, _ in chosen for bound in more)
            held = tuple(kept for _, kept in chosen)
            count = tally.count if self.plan.tiers[0].reach is None else len(held[0])
            yield bounds, replace(tally, pending=held, count=count)


def _holding(tally: Tally, level: int, held: tuple[int, ...]) -> Tally:
    pending = (*tally.pending[:level], held, *tally.pending[level + 1 :])
    return replace(tally, pending=pending)


def _newest(
    held: tuple[int, ...], reach: int | None, at: int
) -> Iterator[tuple[Bounds, tuple[int, ...]]]:
    """Yield each number of newest ones that the window before `at` can hold."""
    if reach is None:
        yield (), held
        return
    for gone in range(len(held) + 1):
        bounds: list[Difference] = []
        if gone < len(held):
            bounds.append((at, held[gone], reach))
        if gone:
            bounds.append((held[gone - 1], at, -reach - 1))
        yield tuple(bounds), held[gone:]
