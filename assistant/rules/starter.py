"""The files of a new pack: short, commented, and right as they stand."""

from __future__ import annotations

import json

from assistant.rules.pack import FILES

SCHEMAS = ".schema"
"""Folder of a pack that holds its JSON Schemas for editors."""
_LINE = "# yaml-language-server: $schema={schemas}/{name}.schema.json\n"

_HEAD = """\
# {title}: rules of this shop, written in a text editor.
#   faultleaf rules verify {folder}   tells every mistake with its line
#   faultleaf rules show {folder}     reads it back in plain words
#   faultleaf add {folder}            puts it in force
schema: 1
id: {id}
version: "1"
title: {title}
kind: shop      # ranks below the maker's; in a `maker` pack every row has a source
author: {author}
date: "{date}"
# For which units. One entry must agree in every field; leave it out if it is for all.
# applies_to:
#   - {{models: ["AB-(24,36)*"], unit_role: outdoor}}
# On which documents it rests: an alias, used by every `source`.
# documents:
#   manual: {{title: the title as `faultleaf library` shows it, revision: A}}
"""

_EXAMPLES = {
    "signals": """\
# What each lamp or display can show, normal states too. Take a # away to begin.
# - id: amber-four
#   kind: count_per_window
#   lamp: {box: outdoor, label: LD2, colour: amber}
#   count: 4
#   window: 10 s
#   meaning: what four flashes say
#   is_fault: true
""",
    "waits": """\
# What starts a wait, how long it is, what follows.
# - id: restart-delay
#   kind: minimum_off
#   name: off time of the compressor
#   trigger: compressor_stopped
#   minimum: 3 min
""",
    "stops": """\
# How many protection stops in which time lock the unit, and what resets it.
# - id: high-pressure-stops
#   kind: sliding_window
#   name: stops by high pressure
#   event: high pressure
#   limit: 3
#   window: 60 min
#   edge: counts              # a stop exactly 60 min ago still counts
#   release: by itself, after the window
""",
    "sensors": """\
# A sensor and its values: a CSV in tables/, or R0 at T0 and B.
# - id: room-sensor
#   kind: beta
#   name: room sensor
#   role: room
#   r0: 10 kohm
#   t0: 25 °C
#   beta: 3950 K
""",
    "checks": """\
# Who may do it, what it asks, what each result means.
# - id: coil-clean
#   kind: look
#   name: outdoor coil
#   needs: look
#   minutes: 3
#   allowed_for: [customer, maintenance, technician, licensed technician]
#   ask: Is the outdoor coil clean or blocked?
#   options: [clean, blocked]
#   outcomes:
#     - {result: clean, says: the air is free}
#     - {result: blocked, says: clean it and watch one cycle}
""",
    "causes": """\
# What can be wrong, and how often: common, occasional or rare.
# - id: coil-blocked
#   kind: airflow
#   name: outdoor coil blocked
#   frequency: common
#   remedy: clean the coil
""",
    "procedures": """\
# A card that is shown whole, or a call that brings no code.
# - id: first-minute
#   kind: card
#   name: Before anything is touched
#   when: first_minute
#   steps:
#     - Film the lamps for 20 seconds.
#     - Ask what changed since it last worked.
""",
    "cautions": """\
# A warning with its basis, shown before the work that it binds.
# - id: roof
#   kind: caution
#   when: any
#   text: Two persons on the roof, never one alone.
#   basis: rule of this shop
""",
}


def starter_texts(folder: str, called: str, author: str, date: str) -> dict[str, str]:
    """Return file name -> text of a new pack.

    Parameters
    ----------
    folder : str
        How the person called the folder.
    called : str
        The pack's id.
    author, date : str
        Who writes it, and the day.
    """
    title = called.replace("-", " ")
    values = {
        "folder": folder,
        "id": called,
        "title": title[0].upper() + title[1:],
        "author": json.dumps(author, ensure_ascii=False),
        "date": date,
    }
    head = _LINE.format(schemas=SCHEMAS, name="pack") + _HEAD.format(**values)
    texts = {"pack.yaml": head}
    for name in FILES:
        line = _LINE.format(schemas=SCHEMAS, name=name)
        texts[f"{name}.yaml"] = f"{line}{_EXAMPLES[name]}"
    return texts
