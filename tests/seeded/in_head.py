"""Mistakes in `pack.yaml`: documents, what replaces what, for which units."""

from __future__ import annotations

from tests.seeded.form import Seeded

HEAD: dict[str, Seeded] = {
    "a version number without quotes": (
        "pack.yaml",
        'version: "1.0"',
        "version: 1.0",
        "version: 1.0",
        '`version` is read as a number; expected text; quote it: "1.0"',
    ),
    "a replacement by a row that is not there": (
        "pack.yaml",
        "by: amber-4-late",
        "by: amber-4-lat",
        "by: amber-4-lat",
        "did you mean `amber-4-late`?",
    ),
    "a replaced row that is not there": (
        "pack.yaml",
        "rows: [amber-4]",
        "rows: [ambre-4]",
        "rows: [ambre-4]",
        "did you mean `amber-4`?",
    ),
    "a pattern with an open bracket": (
        "pack.yaml",
        'models: ["QM-(24,36)*"]',
        'models: ["QM-(24,36*"]',
        "QM-(24,36*",
        "a bracket is not closed",
    ),
    "a newer schema": (
        "pack.yaml",
        "schema: 1",
        "schema: 2",
        "schema: 2",
        "schema 2 is newer than this program reads (1)",
    ),
    "a shop pack without its author": (
        "pack.yaml",
        "kind: maker",
        'kind: shop\ndate: "2026-03-02"',
        "kind: shop",
        "a shop pack says who wrote it; add `author:`",
    ),
    "a serial format that nobody knows": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {format: YYDD, first: "2314"}',
        "YYDD",
        "serial format `YYDD` is not known; write YYWW, WWYY",
    ),
    "a serial that is not of its format": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {format: WWYY, first: "6023"}',
        "6023",
        "`6023` is not a serial of WWYY",
    ),
    "a serial without its prefix": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {format: NUMBER, prefix: QX, first: "0012000"}',
        "0012000",
        "`0012000` is not a serial of QX and NUMBER",
    ),
    "a serial range that runs backwards": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {first: "2320", last: "2314"}',
        "2320",
        "serial range runs backwards: 2320 to 2314",
    ),
    "a serial range without an end": (
        "pack.yaml",
        'voltage: "230"',
        "serial: {format: YYWW}",
        "format: YYWW",
        "a serial range names its `first`, its `last` or `before`",
    ),
    "a range up to and before": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {last: "2314", before: "2314"}',
        "2314",
        "`last` belongs to the run and `before` does not",
    ),
    "month letters that stand for two months": (
        "pack.yaml",
        'voltage: "230"',
        'serial: {format: YYL, letters: ABCDEFGHJKLL, first: "23A"}',
        "ABCDEFGHJKLL",
        "a month letter stands for two months",
    ),
    "a firmware version that is none": (
        "pack.yaml",
        'voltage: "230"',
        'firmware: {before: "the new one"}',
        "the new one",
        "`the new one` is not a version",
    ),
    "a voltage that is no supply": (
        "pack.yaml",
        'voltage: "230"',
        'voltage: "24"',
        'voltage: "24"',
        "`24` is not a supply voltage",
    ),
    "a phase in words nobody uses": (
        "pack.yaml",
        'voltage: "230"',
        "phase: two of them",
        "phase: two",
        "`two of them` is not a phase",
    ),
    "an exclusion of everything": (
        "pack.yaml",
        'models: ["QM-(24,36)*"]',
        'models: ["QM-24"]\n    exclude: ["QM-24"]',
        "exclude:",
        "`exclude` leaves none of `models`",
    ),
    "a document superseded that is not named": (
        "pack.yaml",
        "bulletin: {title: QM bulletin 7, revision: A}",
        "bulletin: {title: QM bulletin 7, revision: A, supersedes: [servise]}",
        "supersedes: [servise]",
        "`servise` is not a document of this pack; did you mean `service`?",
    ),
}
