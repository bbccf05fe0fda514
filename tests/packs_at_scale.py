"""Packs of an invented maker as large as a shop's whole shelf, for speed and caching.

Every row is a right one, unlike its neighbours in lamp, count or code, so that a
verifier that stops at the first thing wrong has nothing to stop at.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path

from assistant.rules.pack import Pack
from assistant.rules.references import items_of
from assistant.rules.sources import PageText
from tests.pack_folders import write_pack

HEAD = """\
schema: 1
id: brackmoor
version: "1.0"
title: Brackmoor units, the whole shelf
kind: maker
applies_to:
  - models: ["BM-(24,36)*"]
documents:
  service: {title: Brackmoor service manual, revision: B}
"""
COUNTS = 20
"""Flash counts of one lamp's table."""


def whole_pack(folder: Path, rules: int) -> Path:
    """Write a pack of so many rules of every kind and return its folder."""
    shares = {
        "signals.yaml": (rules * 6 // 10, _signal),
        "waits.yaml": (rules // 10, _wait),
        "stops.yaml": (rules // 20, _stop),
        "checks.yaml": (rules // 10, _check),
        "cautions.yaml": (rules // 20, _caution),
    }
    files = {name: "".join(_each(make, n)) for name, (n, make) in shares.items()}
    left = rules - sum(number for number, _ in shares.values())
    files["causes.yaml"] = "".join(_each(_cause, left))
    return write_pack(folder, {"pack.yaml": HEAD, **files})


def one_file(folder: Path, entries: int) -> Path:
    """Write a pack of one item file with so many signals and return its folder."""
    signals = "".join(_each(_signal, entries)).replace("  causes: [c0]\n", "")
    return write_pack(folder, {"pack.yaml": HEAD, "signals.yaml": signals})


def one_table(path: Path, rows: int) -> Path:
    """Write a resistance table of so many rows, falling, and return its path."""
    lines = ["temperature degC,resistance kohm,page,quote\n"]
    for n in range(rows):
        kelvins, ohms = -40 + n * 160 / rows, 900 - n * 850 / rows
        lines.append(f'{kelvins:.4f},{ohms:.4f},{40 + n // 60},"{n} {ohms:.4f}"\n')
    path.write_text("".join(lines), encoding="utf-8")
    return path


def _each(make: Callable[[int], str], number: int) -> Iterator[str]:
    return (make(n) for n in range(number))


PAGES = 300


def _source(n: int, figures: str = "") -> str:
    quote = f"entry e{n}x {figures}".rstrip()
    return f'  source: {{doc: service, page: {1 + n % PAGES}, quote: "{quote}"}}\n'


def pages_of(pack: Pack) -> PageText:
    """Return the pages on which every quote of a pack stands."""
    held: dict[int, list[str]] = defaultdict(list)
    for items in items_of(pack).values():
        for item in items:
            if item.source is not None:
                held[item.source.page].append(item.source.quote)
    texts = {page: " . ".join(quotes) for page, quotes in held.items()}
    return lambda _document, page: texts.get(page)


def _signal(n: int) -> str:
    makers = (_counted, _coded, _grid, _grouped)
    return makers[n % 4](n)


def _meaning(n: int) -> str:
    return f"  meaning: fault number {n}\n  is_fault: true\n  causes: [c0]\n"


def _counted(n: int) -> str:
    table, count = divmod(n // 4, COUNTS)
    return (
        f"- id: s{n}\n  kind: count_per_window\n"
        f"  lamp: {{board: outdoor main, label: LD{table}, colour: amber}}\n"
        f"  count: {count + 1}\n  window: 10 s\n"
        + _meaning(n)
        + _source(n, f"{count + 1} flashes")
    )


def _grouped(n: int) -> str:
    table, count = divmod(n // 4, COUNTS)
    return (
        f"- id: s{n}\n  kind: group_then_pause\n"
        f"  lamp: {{board: indoor main, label: LG{table}, colour: green}}\n"
        f"  count: {count + 1}\n  pause: 2 s\n"
        + _meaning(n)
        + _source(n, f"{count + 1} flashes")
    )


def _coded(n: int) -> str:
    code = _code(n // 4)
    head = f'- id: s{n}\n  kind: display_code\n  code: "{code}"\n'
    return head + _meaning(n) + _source(n, code)


_SIGNS = "ACEFHJLPRT"
"""Letters that no digit looks like."""


def _code(n: int) -> str:
    return f"{_SIGNS[n % 10]}{n // 10:03d}"


def _grid(n: int) -> str:
    states = ('"on"', '"off"', "flash")
    table, row = divmod(n // 4, 9)
    return (
        f"- id: s{n}\n  kind: several_lamps\n  lamps:\n"
        f"    - {{lamp: {{label: run {table}}}, state: {states[row % 3]}}}\n"
        f"    - {{lamp: {{label: timer {table}}}, state: {states[row // 3]}}}\n"
        + _meaning(n)
        + _source(n)
    )


def _wait(n: int) -> str:
    return (
        f"- id: w{n}\n  kind: minimum_off\n  name: wait {n}\n"
        f"  trigger: compressor_stopped\n  minimum: {2 + n % 5} min\n"
        "  give_up: 20 min\n" + _source(n, f"{2 + n % 5} min")
    )


def _stop(n: int) -> str:
    return (
        f"- id: p{n}\n  kind: sliding_window\n  name: stops {n}\n  event: event {n}\n"
        "  limit: 3\n  window: 60 min\n  edge: counts\n  causes: [c0]\n  resets:\n"
        "    - {name: power, off_at_least: 30 s, how: open the disconnect,"
        " evidence_lost: the lamp}\n" + _source(n, "3 in 60 min")
    )


def _check(n: int) -> str:
    return (
        f"- id: k{n}\n  kind: look\n  name: look at plug {n}\n  needs: look\n"
        "  minutes: 2\n  allowed_for: [customer, maintenance, technician]\n"
        f"  ask: Is plug {n} seated?\n  options: [seated, loose]\n  outcomes:\n"
        "    - {result: seated, says: it is good, moves: {c0: somewhat against}}\n"
        "    - {result: loose, says: seat it, moves: {c0: strongly for}}\n" + _source(n)
    )


def _cause(n: int) -> str:
    return f"- id: c{n}\n  kind: part\n  name: part {n}\n  frequency: rare\n" + _source(
        n
    )


def _caution(n: int) -> str:
    return (
        f"- id: d{n}\n  kind: caution\n  when: panel_off\n  text: Measure bank {n}.\n"
        "  basis: the maker's service manual\n" + _source(n)
    )
