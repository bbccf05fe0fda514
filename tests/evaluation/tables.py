"""Prints how well tables are found: python tests/evaluation/tables.py.

Cell F1: exact text but for white space and hyphens, 92 % alike for long cells. Link:
share of (code, other cell of its row) pairs found together in one row.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Mapping
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.ingest.gold.pages import SETS, Maker, scored
from tests.ingest.gold.scoring import Score


def _say(line: str) -> None:
    sys.stdout.write(f"{line}\n")


def report(title: str, makers: Mapping[str, Maker], folder: Path) -> Score:
    """Print the scores of some pages; return their sum."""
    _say(f"{title:28}{'F1':>7}{'link':>7}  tables found / wanted")
    total = Score()
    for name, maker in makers.items():
        one, found, wanted = scored(name, maker, folder)
        _say(f"  {name:26}{one.f1:7.3f}{one.link:7.3f}  {found} / {wanted}")
        total += one
    _say(f"  {'together':26}{total.f1:7.3f}{total.link:7.3f}\n")
    return total


def main() -> None:
    """Print each part of the gold set, and all of it."""
    total = Score()
    with tempfile.TemporaryDirectory() as folder:
        for title, makers in SETS.items():
            total += report(title, makers, Path(folder))
    _say(f"{'all':28}{total.f1:7.3f}{total.link:7.3f}")


if __name__ == "__main__":
    main()
