"""What the loader and the verifier of packs take, and what they let through.

    python tests/evaluation/packs.py speed
    python tests/evaluation/packs.py mutate [--count 400] [--seed 1]

`speed` loads and verifies packs of ten thousand rules, ten thousand table rows and a
thousand entries. `mutate` puts one slip at a time into the sample packs and counts
which of them were refused, at which line, which only warned of, and which missed.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

import kb_samples  # noqa: E402
from assistant.errors import PackError  # noqa: E402
from assistant.rules.csv_tables import read_table  # noqa: E402
from assistant.rules.loader import load_pack, load_pack_with_lines  # noqa: E402
from assistant.rules.parsed import ParsedFiles  # noqa: E402
from assistant.rules.verify import verify_pack  # noqa: E402
from tests.evaluation.machine import Checks, say, table  # noqa: E402
from tests.mutations import KINDS, Files, Slip, slips  # noqa: E402
from tests.pack_folders import write_pack  # noqa: E402
from tests.packs_at_scale import (  # noqa: E402
    one_file,
    one_table,
    pages_of,
    whole_pack,
)
from tests.sample_pages import page_text  # noqa: E402

RULES, ROWS, ENTRIES = 10_000, 10_000, 1_000
LIMIT = 2.0
"""Seconds of the processor that each may take."""
PACKS = Path(kb_samples.__file__).parent / "packs"
NEAR = 1
"""Lines off at which a slip still counts as told at its own line: a lost line is told
at the line that follows or at its item."""


def main(words: list[str] | None = None) -> int:
    """Run one of the reports; return 1 where something does not hold."""
    parser = argparse.ArgumentParser(description=__doc__)
    actions = parser.add_subparsers(dest="report", required=True)
    actions.add_parser("speed")
    mutate = actions.add_parser("mutate")
    mutate.add_argument("--count", type=int, default=400)
    mutate.add_argument("--seed", type=int, default=1)
    args = parser.parse_args(words)
    if args.report == "speed":
        return speed()
    return mutations(args.count, args.seed)


def speed() -> int:
    """Measure loading and verifying, on the wall and in processor time."""
    checks = Checks()
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        rows = []
        pack, lines = load_pack_with_lines(whole_pack(folder / "whole", RULES))
        text = pages_of(pack)
        path = one_table(folder / "table.csv", ROWS)
        entries = one_file(folder / "entries", ENTRIES)
        kept = ParsedFiles(folder / "kept")
        load_pack(entries, kept)
        for name, run in (
            (f"{RULES} rules verified", lambda: verify_pack(pack, text, lines)),
            (f"{ROWS} rows of a table loaded", lambda: read_table(path, "table.csv")),
            (f"{ENTRIES} entries of YAML loaded", lambda: load_pack(entries)),
            (f"{ENTRIES} unchanged entries", lambda: load_pack(entries, kept)),
        ):
            wall, processor = timed(run)
            rows.append([name, f"{wall:.2f}", f"{processor:.2f}"])
            # One thread: on a machine with nothing else to do both times are one.
            checks.hold(f"{name} in under {LIMIT:g} s", holds=processor < LIMIT)
        table(["what", "wall s", "processor s"], rows)
    return checks.code()


def timed(run: Callable[[], object], rounds: int = 3) -> tuple[float, float]:
    """Return the shortest time on the wall and the processor time of that round."""
    found = []
    for _ in range(rounds):
        wall, processor = time.perf_counter(), time.process_time()
        run()
        found.append((time.perf_counter() - wall, time.process_time() - processor))
    return min(found)


@dataclass(frozen=True, slots=True)
class Told:
    """Mistakes of a pack as (file, line, what), by how much they weigh."""

    errors: frozenset[tuple[str, int, str]]
    warnings: frozenset[tuple[str, int, str]]


def told_of(folder: Path, files: Files) -> Told:
    """Load and verify a pack and return what speaks against it."""
    write_pack(folder, dict(files))
    prefix = f"{folder.as_posix()}/"
    try:
        pack, lines = load_pack_with_lines(folder)
    except PackError as error:
        return Told(frozenset(_parted(m, prefix) for m in error.mistakes), frozenset())
    found = [
        (m.severity, (m.file.removeprefix(prefix), m.line, m.what))
        for m in verify_pack(pack, page_text, lines)
    ]
    return Told(
        frozenset(each for severity, each in found if severity == "error"),
        frozenset(each for severity, each in found if severity == "warning"),
    )


def _parted(mistake: str, prefix: str) -> tuple[str, int, str]:
    file, line, what = mistake.removeprefix(prefix).split(":", 2)
    return file, int(line), what


def verdict(slip: Slip, told: Told, before: Told) -> str:
    """Return how a slip was noticed: where, as what, or not at all."""
    known = {what for *_, what in before.errors | before.warnings}
    for name, found in (("refused", told.errors), ("warned", told.warnings)):
        new = [(file, line) for file, line, what in found if what not in known]
        own = [line for file, line in new if file == slip.file]
        if any(abs(line - slip.line) <= NEAR for line in own):
            return f"{name} at its line"
        if own or new:
            return f"{name} elsewhere"
    return "missed"


VERDICTS = (
    "refused at its line",
    "refused elsewhere",
    "warned at its line",
    "warned elsewhere",
    "missed",
)


def mutations(count: int, seed: int) -> int:
    """Make so many slips, each alone in a sample pack, and count what came of them."""
    rng = random.Random(seed)  # noqa: S311 - a repeatable choice, no secret
    packs = {folder.name: read(folder) for folder in sorted(PACKS.iterdir())}
    packs = {name: files for name, files in packs.items() if "pack.yaml" in files}
    made = chosen(packs, count, rng)
    tally: Counter[tuple[str, str]] = Counter()
    missed: list[tuple[str, Slip]] = []
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        before = {name: told_of(root / name, packs[name]) for name in packs}
        for name, slip in made:
            told = told_of(root / name, slip.into(packs[name]))
            found = verdict(slip, told, before[name])
            tally[slip.kind, found] += 1
            if found == "missed":
                missed.append((name, slip))
    report(tally, missed)
    return 0


def read(folder: Path) -> dict[str, str]:
    """Return the files of a pack's folder; nothing of what is no folder."""
    if not folder.is_dir():
        return {}
    return {
        path.relative_to(folder).as_posix(): path.read_text("utf-8")
        for path in sorted(folder.rglob("*"))
        if path.suffix in (".yaml", ".csv")
    }


def chosen(
    packs: dict[str, dict[str, str]], count: int, rng: random.Random
) -> list[tuple[str, Slip]]:
    """Return slips of every kind in turn, drawn from all packs."""
    places = {
        kind: [(name, slip) for name in packs for slip in slips(kind, packs[name], rng)]
        for kind in KINDS
    }
    for held in places.values():
        rng.shuffle(held)
    made: list[tuple[str, Slip]] = []
    while len(made) < count and any(places.values()):
        for held in places.values():
            if held and len(made) < count:
                made.append(held.pop())
    return made


def report(tally: Counter[tuple[str, str]], missed: list[tuple[str, Slip]]) -> None:
    """Write the counts by kind, then every slip that nothing noticed."""
    rows = []
    for kind in KINDS:
        counts = [tally[kind, name] for name in VERDICTS]
        if sum(counts):
            rows.append([kind, str(sum(counts)), *map(str, counts)])
    sums = [sum(n for (_, v), n in tally.items() if v == name) for name in VERDICTS]
    rows.append(["all", str(sum(sums)), *map(str, sums)])
    table(["slip", "made", *VERDICTS], rows)
    say()
    for name, slip in missed:
        say(f"missed: {name}/{slip.file}:{slip.line} {slip.kind}")
        say(f"    {slip.stood.strip()[:90]}")
        say(f"    {slip.put.strip()[:90]}")


if __name__ == "__main__":
    sys.exit(main())
