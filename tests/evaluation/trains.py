"""How often a tapped train of flashes is read right, over many seeded trains.

Run it from the project's folder::

    python tests/evaluation/trains.py [--trains 10000] [--seed 7] [--wrong]

Without jitter every count must be exact. With taps late or early by up to 80 ms, 1 in
20 flashes missed, flashes 0.4 s apart or more, three rounds and counts from 1 to 20,
at least 97 in 100 must be right, and a wrong first answer must have the true one among
its alternatives. It prints a line for each way of watching and leaves with 1 where one
of these does not hold.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from assistant.signals.train_reader import read_train  # noqa: E402
from assistant.signals.windows import in_windows  # noqa: E402
from tests.flash_trains import (  # noqa: E402
    Hand,
    Watching,
    make_digits,
    make_even,
    make_train,
)

STEADY = Hand()
SHAKY = Hand(jitter=0.08, missing=0.05)
TWICE = Hand(jitter=0.08, twice=0.05)
LARGEST = 20
LEAST_RIGHT = 0.97
DIGIT = 9


@dataclass(slots=True)
class Tally:
    """Trains read, those read right, and those whose truth was nowhere."""

    name: str
    least: float
    trains: int = 0
    right: int = 0
    lost: int = 0
    wrong: list[str] = field(default_factory=list)

    def add(self, truth: object, best: object, others: list[object]) -> None:
        """Count one train."""
        self.trains += 1
        self.right += truth == best
        if truth != best:
            self.lost += truth not in others
            self.wrong.append(f"{truth} read as {best}; beside it {others[:6]}")

    @property
    def holds(self) -> bool:
        """Whether enough are right and no truth is lost."""
        return self.right >= self.least * self.trains and not self.lost

    def __str__(self) -> str:
        share = self.right / max(1, self.trains)
        return (
            f"{self.name:<44}{self.trains:>7}{share:>9.2%}{self.lost:>7}"
            f"{'' if self.holds else '  FAILS'}"
        )


def counts(trains: int, seed: int, hand: Hand, watching: Watching) -> Tally:
    """Read trains of groups, counts 1 to 20 in turn."""
    shaky = hand.jitter > 0
    name = f"groups, {watching} a round, {'shaky' if shaky else 'exact'}"
    tally = Tally(name, LEAST_RIGHT if shaky else 1.0)
    rng = Random(seed)  # noqa: S311 - a seed, so that the report can be repeated
    for number in range(trains):
        train = make_train(rng, 1 + number % LARGEST, hand, watching)
        found = read_train(train.rounds)
        tally.add(train.count, found.count, [one.count for one in found.counts])
    return tally


def windows(trains: int, seed: int) -> Tally:
    """Count exact trains over their own window, from every phase."""
    tally = Tally("windows at every phase, exact", 1.0)
    rng = Random(seed)  # noqa: S311
    for number in range(trains):
        train = make_train(rng, 1 + number % LARGEST, STEADY)
        window = (train.count - 1) * train.flash + train.pause
        found = [one.count for one in in_windows(train.rounds, window)]
        tally.add([train.count], found, [[one] for one in found])
    return tally


def digits(trains: int, seed: int, hand: Hand) -> Tally:
    """Read quick and long flashes, digits 1 to 9."""
    shaky = hand.jitter > 0
    name = f"quick and long, {'shaky' if shaky else 'exact'}"
    tally = Tally(name, LEAST_RIGHT if shaky else 1.0)
    rng = Random(seed)  # noqa: S311
    for number in range(trains):
        pair = (1 + number % DIGIT, 1 + number // DIGIT % DIGIT)
        made = make_digits(rng, *pair, hand)
        found = read_train(made.rounds).digits
        short = [one.count for one in found.short] if found else []
        long = [one.count for one in found.long] if found else []
        every: list[object] = [(a, b) for a in short for b in long]
        tally.add(pair, every[0] if every else None, every)
    return tally


def even(trains: int, seed: int, hand: Hand) -> Tally:
    """Read even blinks: no count, and the rate inside its range."""
    shaky = hand.jitter > 0
    tally = Tally(f"even, {'shaky' if shaky else 'exact'}", LEAST_RIGHT)
    rng = Random(seed)  # noqa: S311
    for _ in range(trains):
        flash, rounds = make_even(rng, hand)
        found = read_train(rounds)
        low, high = found.rate_hz or (0.0, 0.0)
        inside = low <= 1 / flash <= high
        tally.add(("even", True), (found.form, inside), [("even", True)])
    return tally


def doubles(trains: int, seed: int) -> Tally:
    """Read trains in which 1 tap in 20 was made twice: each reported, none counted."""
    tally = Tally("groups, taps made twice", LEAST_RIGHT)
    rng = Random(seed)  # noqa: S311
    for number in range(trains):
        train = make_train(rng, 1 + number % LARGEST, TWICE)
        found = read_train(train.rounds)
        others: list[object] = [(one.count, train.doubled) for one in found.counts]
        best = (found.count, found.doubled)
        tally.add((train.count, train.doubled), best, others)
    return tally


def report(trains: int, seed: int) -> Iterator[Tally]:
    """Yield each part of the report; `trains` is the shaky trains of groups."""
    few = max(20, trains // 10)
    ways: tuple[Watching, ...] = ("two periods", "three groups", "one group")
    for watching in ways:
        yield counts(few, seed, STEADY, watching)
    for number, watching in enumerate(ways):
        part = trains // len(ways) + (number < trains % len(ways))
        yield counts(part, seed + number, SHAKY, watching)
    yield windows(few, seed)
    yield digits(few, seed, STEADY)
    yield digits(few, seed, SHAKY)
    yield even(few, seed, STEADY)
    yield even(few, seed, SHAKY)
    yield doubles(few, seed)


def main() -> int:
    """Print the report."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--trains", type=int, default=10_000)
    asked.add_argument("--seed", type=int, default=7)
    asked.add_argument("--wrong", action="store_true", help="print what was read wrong")
    given = asked.parse_args()
    print(f"{'':<44}{'trains':>7}{'right':>9}{'lost':>7}")  # noqa: T201
    failed = 0
    for tally in report(given.trains, given.seed):
        print(tally, flush=True)  # noqa: T201
        failed += not tally.holds
        for line in tally.wrong if given.wrong else ():
            print(f"    {line}")  # noqa: T201
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
