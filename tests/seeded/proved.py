"""Mistakes that only show against the pages of the library or the whole pack."""

from __future__ import annotations

from tests.seeded.form import Seeded

PROVED: dict[str, Seeded] = {
    "a quote that is not on its page": (
        "causes.yaml",
        'quote: "board"',
        'quote: "motherboard"',
        "motherboard",
        "`motherboard` does not stand on page 31",
    ),
    "a quote from the page after": (
        "signals.yaml",
        "page: 33",
        "page: 34",
        "page: 34",
        "`E4` does not stand on page 34 of QM service manual; it stands on page 33",
    ),
    "a page beyond the document": (
        "signals.yaml",
        "page: 33",
        "page: 333",
        "page: 333",
        "QM service manual has no page 333",
    ),
    "a quote in other capitals": (
        "signals.yaml",
        'quote: "E4"',
        'quote: "e4"',
        'quote: "e4"',
        "it stands there in other capitals",
    ),
    "a document that is not in the library": (
        "pack.yaml",
        "title: QM bulletin 7,",
        "title: QM bulletin 8,",
        "QM bulletin 8",
        "(QM bulletin 8, revision A) is not in the library",
    ),
    "a replacement that the bulletin does not speak of": (
        "pack.yaml",
        "replaces the row",
        "withdraws the row",
        "withdraws the row",
        "does not stand on page 1 of QM bulletin 7",
    ),
    "a count that is not the one of the quote": (
        "signals.yaml",
        "  count: 4\n",
        "  count: 6\n",
        "count: 6",
        "`count` is 6, and the quote says `4 flashes`",
    ),
    "a limit that is not the one of the quote": (
        "stops.yaml",
        "limit: 3",
        "limit: 5",
        "limit: 5",
        "`limit` is 5, and the quote says",
    ),
    "a resistance copied wrongly": (
        "tables/discharge.csv",
        "20,68,",
        "20,86,",
        "20,86,",
        "86 kohm is not in the quote `20 68`",
    ),
    "a lost off-time of a reset": (
        "stops.yaml",
        "      off_at_least: 30 s\n",
        "",
        "- name: power",
        "a reset by power names no time off",
    ),
    "a wait without an end": (
        "waits.yaml",
        "  minimum: 3 min\n  give_up: 10 min\n",
        "",
        "- id: restart-delay",
        "the wait has no end",
    ),
    "resistance measured live": (
        "checks.yaml",
        "needs: power_off",
        "needs: live",
        "needs: live",
        "resistance is never measured live; power_off",
    ),
    "power not required to be off": (
        "checks.yaml",
        "requires: [power off, sensor unplugged",
        "requires: [sensor unplugged",
        "requires: [sensor",
        "resistance is measured without requiring the power to be off",
    ),
    "a live measurement called power off": (
        "checks.yaml",
        "- id: look-plug\n",
        "- id: band-5v\n  kind: band\n  name: five volts\n  needs: power_off\n"
        "  minutes: 3\n  allowed_for: [technician]\n  ask: How many volts?\n"
        "  points: CN1 1-3\n  low: 4.5 V\n  high: 5.5 V\n  outcomes:\n"
        "    - {result: pass, says: good}\n"
        '  source: {doc: service, page: 41, quote: "plug"}\n- id: look-plug\n',
        "needs: power_off\n  minutes: 3",
        "what is measured here is there only while the supply is on",
    ),
    "an isolated check called live": (
        "checks.yaml",
        "needs: look\n  minutes: 2\n  allowed_for: "
        "[customer, maintenance, technician]\n  ask: Is the plug seated?",
        "needs: live\n  minutes: 2\n  allowed_for: [technician]\n"
        "  ask: Isolated, is the plug seated?",
        "needs: live",
        "it is live, and its own words isolate first",
    ),
    "a fixed speed with the power off": (
        "checks.yaml",
        "requires: [power off, sensor unplugged",
        "requires: [power off, fixed speed, sensor unplugged",
        "needs: power_off",
        "`fixed speed` cannot be so with the power off",
    ),
    "a live step without the power restored": (
        "checks.yaml",
        "  options: [seated, loose]\n",
        "  options: [seated, loose]\n  steps: [Measure while the unit is running]\n",
        "steps: [Measure",
        "a live step without the power restored before it",
    ),
    "hands inside while it is live": (
        "checks.yaml",
        "  needs: power_off\n",
        "  needs: power_off\n  steps: [Switch the power back on, Unplug the sensor]\n",
        "steps: [Switch",
        "hands go inside while it is live: `Unplug the sensor`",
    ),
    "a customer sent to measure": (
        "checks.yaml",
        "allowed_for: [technician,",
        "allowed_for: [customer, technician,",
        "allowed_for: [customer, technician,",
        "a customer may not do what needs `power_off`",
    ),
    "anybody sent to open the circuit": (
        "checks.yaml",
        "needs: look\n  minutes: 2\n  allowed_for: [customer, maintenance, technician]",
        "needs: opens_circuit\n  minutes: 2\n  allowed_for: [technician]",
        "allowed_for: [technician]",
        "only a licensed technician opens a refrigerant circuit",
    ),
    "a step that the engine refuses": (
        "causes.yaml",
        "  frequency: rare\n",
        "  frequency: rare\n  remedy: Jumper the high pressure switch and start it\n",
        "remedy: Jumper",
        "it takes a protection out; say the safe way",
    ),
    "what is never said": (
        "stops.yaml",
        "how: open the disconnect",
        "how: give it one more reset",
        "how: give it",
        "is never said; say to find the cause first",
    ),
    "two rows for one sight": (
        "signals.yaml",
        "- id: green-on\n",
        "- id: amber-4-twin\n  kind: count_per_window\n"
        "  lamp: {board: outdoor main, label: LD2, colour: amber}\n  count: 4\n"
        "  window: 10 s\n  meaning: fan blocked\n  is_fault: true\n"
        '  source: {doc: service, page: 31, quote: "4 flashes"}\n- id: green-on\n',
        "- id: amber-4-twin",
        "`amber-4-twin` cannot be told from `amber-4` on line 1",
    ),
    "a code written twice": (
        "signals.yaml",
        "- id: grid-1\n",
        '- id: e4-again\n  kind: display_code\n  code: "E4"\n  meaning: main board\n'
        "  is_fault: true\n"
        '  source: {doc: service, page: 33, quote: "E4"}\n- id: grid-1\n',
        "- id: e4-again",
        "`e4-again` cannot be told from `code-e4`",
    ),
    "a row for units that the pack is not for": (
        "signals.yaml",
        "    - board_mark: orange dot",
        '    - {voltage: "115"}',
        "  applies_to:",
        "its `applies_to` fits no unit of the pack's own `applies_to`",
    ),
}
"""Mistakes that `verify_pack` refuses a loaded pack for."""
