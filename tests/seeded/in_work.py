"""Mistakes in what is done and suspected: checks, causes, procedures, cautions."""

from __future__ import annotations

from tests.seeded.form import Seeded

WORK: dict[str, Seeded] = {
    "a missing kind": (
        "causes.yaml",
        "  kind: part\n",
        "",
        "- id: discharge-sensor",
        "`kind` is missing; one of part, supply",
    ),
    "a moved cause that is not there": (
        "checks.yaml",
        "main-board: somewhat for",
        "mainboard: somewhat for",
        "mainboard: somewhat for",
        "did you mean `main-board`?",
    ),
    "a move that is no move": (
        "checks.yaml",
        "main-board: somewhat for",
        "main-board: somewat for",
        "main-board: somewat for",
        "did you mean `somewhat for`?",
    ),
    "a next check that is not there": (
        "checks.yaml",
        "then: measure-discharge",
        "then: measure-discharg",
        "then: measure-discharg",
        "did you mean `measure-discharge`?",
    ),
    "a sensor that is not there": (
        "checks.yaml",
        "sensor: discharge-table",
        "sensor: discharge",
        "sensor: discharge",
        "is not an id in sensors.yaml; did you mean `discharge-table`?",
    ),
    "an outcome that the check cannot have": (
        "checks.yaml",
        "result: loose",
        "result: losse",
        "result: losse",
        "result `losse` is not one of this check; did you mean `loose`?",
    ),
    "a maker's rule without a source": (
        "causes.yaml",
        '  source: {doc: service, page: 31, quote: "board"}\n',
        "",
        "- id: main-board",
        "a maker's rule names its source",
    ),
    "a quote left empty": (
        "causes.yaml",
        'quote: "board"',
        'quote: ""',
        'quote: ""',
        "`source.quote` is empty",
    ),
    "text with a colon and no quotes": (
        "cautions.yaml",
        "text: Measure the bus",
        "text: First: measure the bus",
        "text: First: measure",
        "put text that holds a colon between quotes",
    ),
    "one name where a list belongs": (
        "procedures.yaml",
        "causes: [discharge-sensor]",
        "causes: discharge-sensor",
        "causes: discharge-sensor",
        "`causes` is `discharge-sensor`; expected a list",
    ),
    "an alias": (
        "causes.yaml",
        "name: main board",
        "name: &board main board",
        "name: &board main board",
        "anchors and aliases are not read; write it out",
    ),
    "low and high taken for each other": (
        "checks.yaml",
        "- id: look-plug\n",
        "- id: band-5v\n  kind: band\n  name: five volts\n  needs: live\n  minutes: 3\n"
        "  allowed_for: [technician]\n  ask: How many volts?\n  points: CN1 1-3\n"
        "  low: 5.5 V\n  high: 4.5 V\n  outcomes:\n    - {result: pass, says: good}\n"
        '  source: {doc: service, page: 41, quote: "plug"}\n- id: look-plug\n',
        "high: 4.5 V",
        "`high` 4.5 V is below `low` 5.5 V",
    ),
    "a band of two dimensions": (
        "checks.yaml",
        "- id: look-plug\n",
        "- id: band-5v\n  kind: band\n  name: five volts\n  needs: live\n  minutes: 3\n"
        "  allowed_for: [technician]\n  ask: How many volts?\n  points: CN1 1-3\n"
        "  low: 4.5 V\n  high: 5.5 A\n  outcomes:\n    - {result: pass, says: good}\n"
        '  source: {doc: service, page: 41, quote: "plug"}\n- id: look-plug\n',
        "high: 5.5 A",
        "differ in what they measure",
    ),
    "a role that does not exist": (
        "checks.yaml",
        "allowed_for: [technician, licensed technician]",
        "allowed_for: [tech, licensed technician]",
        "allowed_for: [tech,",
        "one of customer, maintenance, technician",
    ),
    "a tag": (
        "causes.yaml",
        "name: main board",
        "name: !part main board",
        "!part",
        "the tag `!part` is not read; leave it out",
    ),
    "a second document in a file": (
        "causes.yaml",
        "- id: main-board",
        "---\n- id: main-board",
        "---",
        "a second document starts here",
    ),
    "a character that no text has": (
        "causes.yaml",
        "name: main board",
        "name: main\x07 board",
        "main\x07 board",
        "holds a character that no text has",
    ),
}
