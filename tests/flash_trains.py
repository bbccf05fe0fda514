"""Flash trains by rule, as a board makes them and a hand taps them."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Literal

from assistant.signals.flashes import Flash

Watching = Literal["two periods", "one group", "three groups"]
FLASH = (0.4, 1.0)
"""From flash to flash [s]."""
DARK = (2.0, 4.0)
"""Of the pause; 2 to 3 s are printed (references: flash patterns)."""
LIT = (0.1, 0.3)
"""Share of a flash's time that the last one is lit before the pause begins."""


@dataclass(frozen=True, slots=True)
class Train:
    """A train made by rule, and what was tapped of it."""

    count: int
    flash: float
    pause: float
    rounds: tuple[tuple[float, ...], ...]
    missed: int
    doubled: int


@dataclass(frozen=True, slots=True)
class Hand:
    """How somebody taps: late or early by up to `jitter` [s], `missing` and twice."""

    jitter: float = 0.0
    missing: float = 0.0
    twice: float = 0.0


def make_train(
    rng: Random,
    count: int,
    hand: Hand,
    watching: Watching = "two periods",
    rounds: int = 3,
) -> Train:
    """Return rounds of watching a train of groups of `count` flashes."""
    flash = rng.uniform(*FLASH)
    pause = rng.uniform(*DARK) + flash * rng.uniform(*LIT)
    tapped: list[tuple[float, ...]] = []
    missed = doubled = 0
    for _ in range(rounds):
        seen = _seen(rng, count, (flash, pause), watching)
        taps: list[float] = []
        for at in seen:
            if rng.random() < hand.missing:
                missed += 1
                continue
            taps.append(at + rng.uniform(-hand.jitter, hand.jitter))
            if rng.random() < hand.twice:
                doubled += 1
                taps.append(taps[-1] + rng.uniform(0.05, 0.15))
        tapped.append(tuple(sorted(taps)))
    return Train(count, flash, pause, tuple(tapped), missed, doubled)


def _seen(
    rng: Random, count: int, times: tuple[float, float], watching: Watching
) -> list[float]:
    """Return the flashes of one round, from any moment of the period."""
    flash, pause = times
    period = (count - 1) * flash + pause
    if watching == "one group":
        return [nth * flash for nth in range(count)]
    if watching == "three groups":
        return [g * period + nth * flash for g in range(3) for nth in range(count)]
    begin = rng.uniform(0, period)
    end = begin + 2 * period + 0.5 * flash
    every = [g * period + nth * flash for g in range(5) for nth in range(count)]
    return [at for at in every if begin <= at <= end]


@dataclass(frozen=True, slots=True)
class Digits:
    """A train of quick and long flashes, and the keys held for it."""

    short: int
    long: int
    short_first: bool
    rounds: tuple[tuple[Flash, ...], ...]


def make_digits(rng: Random, short: int, long: int, hand: Hand) -> Digits:
    """Return three rounds of two repeats and a part, from any moment."""
    quick, slow = rng.uniform(0.25, 0.4), rng.uniform(1.0, 1.5)
    dark = rng.uniform(0.3, 0.5)
    digit_gap, repeat_gap = rng.uniform(1.0, 1.6), rng.uniform(3.0, 4.5)
    short_first = rng.random() < 0.5
    order = [(quick, short), (slow, long)]
    if not short_first:
        order.reverse()
    one: list[Flash] = []
    at = 0.0
    for lit, count in order:
        for _ in range(count):
            one.append(Flash(at, at + lit))
            at += lit + dark
        at += digit_gap - dark
    period = at - digit_gap + repeat_gap
    rounds = []
    for _ in range(3):
        begin = rng.uniform(0, period)
        end = begin + 2.4 * period
        every = [
            Flash(f.at + n * period, (f.off or f.at) + n * period)
            for n in range(5)
            for f in one
        ]
        rounds.append(tuple(_held(rng, every, begin, end, hand)))
    return Digits(short, long, short_first, tuple(rounds))


def _held(
    rng: Random, every: list[Flash], begin: float, end: float, hand: Hand
) -> list[Flash]:
    found = []
    for flash in every:
        off = flash.off or flash.at
        if begin <= flash.at and off <= end and rng.random() >= hand.missing:
            down = flash.at + rng.uniform(-hand.jitter, hand.jitter)
            up = off + rng.uniform(-hand.jitter, hand.jitter)
            found.append(Flash(down, up))
    return found


def make_even(rng: Random, hand: Hand) -> tuple[float, tuple[tuple[float, ...], ...]]:
    """Return the time from flash to flash, and three rounds of an even blink."""
    flash = rng.uniform(*FLASH)
    rounds = []
    for taps in (rng.randint(8, 12), rng.randint(13, 18), rng.randint(19, 25)):
        every = [nth * flash for nth in range(taps) if rng.random() >= hand.missing]
        jittered = [at + rng.uniform(-hand.jitter, hand.jitter) for at in every]
        rounds.append(tuple(jittered))
    return flash, tuple(rounds)
