"""Vellamere manuals, first part: cover, safety, data and terminals."""

from __future__ import annotations

from kb_samples.making.blocks import (
    Caution,
    Contents,
    Cover,
    Heading,
    Items,
    Page,
    Para,
    table,
)
from kb_samples.making.vellamere_figures import Family


def front(family: Family, contents: tuple[tuple[str, str], ...]) -> tuple[Page, ...]:
    """Return the pages from the cover to the terminals."""
    return (
        _cover(family),
        _safety(family),
        _contents(family, contents),
        _specification(family),
        _wiring(family),
    )


def _cover(family: Family) -> Page:
    pairs = tuple(
        f"{out}  with  {ind}"
        for out, ind in zip(family.outdoor, family.indoor, strict=True)
    )
    return Page(
        "",
        (
            Cover(
                "VELLAMERE",
                "Service Manual",
                f"Inverter room air conditioners, {family.name} series",
                pairs,
                (
                    f"Document {family.number}   Revision {family.revision}"
                    f"   Issued {family.issued:%Y-%m-%d}",
                    "Refrigerant R-32   Single phase 230 V, 50 Hz",
                    "For persons trained for work on this kind of equipment.",
                ),
            ),
        ),
    )


def _safety(family: Family) -> Page:
    minutes, volts = family.bleed_min, family.bleed_volts
    return Page(
        "ii",
        (
            Heading("Safety before any work"),
            Para(
                "The remarks in frames bind every step of this manual, also where they "
                "are not printed again. Local codes for electrical work and for "
                "refrigerants stand above this manual."
            ),
            Caution(
                "DANGER",
                "The capacitors of the outdoor main board stay charged after the "
                f"supply is off. Wait {minutes} minutes, then measure between "
                f"{family.points}. Begin only when the meter shows less than "
                f"{volts} V DC. A dark lamp proves nothing.",
            ),
            Caution(
                "WARNING",
                "Wind turns the outdoor fan, and a turning fan motor feeds the board "
                "like a generator. Pull plug CN20 of the fan motor once the bus is "
                "dead, and measure the bus a second time before you touch the board.",
            ),
            Caution(
                "WARNING",
                "R-32 is mildly flammable (class A2L). Keep sources of ignition away, "
                "air the room, and do not open the circuit without recovery equipment "
                "that is made for it. Only persons licensed for refrigerants may open "
                "the circuit or connect gauges.",
            ),
            Caution(
                "CAUTION",
                "Lock the isolator in the off position and hang up a tag. The unit "
                "starts by itself after waits and after the supply returns: keep "
                "hands, hair and tools away from the fan at all times.",
            ),
            Heading("Order of safe isolation", 2),
            Items(
                (
                    f"Switch off every supply of the system. {family.supplies}",
                    "Lock and tag each isolator.",
                    "Try the meter on a known live source, measure at the terminals of "
                    "the unit, then try the meter on the known source again.",
                    f"Wait {minutes} minutes and measure the bus between "
                    f"{family.points}: less than {volts} V DC.",
                    "Pull plug CN20 of the outdoor fan motor and measure the bus "
                    "again.",
                    "Work with dry hands, without rings or watches.",
                ),
                numbered=True,
            ),
        ),
        "Safety",
    )


def _contents(family: Family, lines: tuple[tuple[str, str], ...]) -> Page:
    return Page(
        "iii",
        (
            Heading("Contents"),
            Contents(lines),
            Heading("How to use this manual", 2),
            Para(
                "Read the lamp first (section 6), before the supply is switched off. "
                "Then find the number of flashes in the lamp table, take the causes of "
                "section 7 in their order, and prove each one with a check of "
                "sections 8 to 10 before a part is ordered."
            ),
            Para(
                f"This manual applies to the {family.name} series only. Other series "
                "of Vellamere look alike and use the same lamp with other meanings. "
                "Compare the model on the nameplate with the cover."
            ),
        ),
        "Contents",
    )


def _specification(family: Family) -> Page:
    rows = (
        ("Indoor unit", *family.indoor),
        ("Supply", *("1 ph 230 V 50 Hz",) * 3),
        ("Supply band at rest", *("207 to 253 V",) * 3),
        ("Rated current", *family.current),
        ("Refrigerant R-32, factory charge", *family.charge),
        ("Charge is enough for pipe up to", "7.5 m", "7.5 m", "10 m"),
        ("Add per metre beyond", "15 g", "15 g", "25 g"),
        ("Outdoor range, cooling", *("-10 to 46 °C",) * 3),
        ("Compressor", *("twin rotary, DC",) * 3),
        ("Expansion device", *("electronic valve",) * 3),
    )
    return Page(
        "1",
        (
            Heading("1 Specifications"),
            table(
                "Table 1-1 Main data",
                ("Outdoor unit", *family.outdoor),
                rows,
                (2.2, 1.3, 1.3, 1.3),
            ),
            Heading("Parts of the outdoor unit", 2),
            table(
                "Table 1-2 Boards and lamps",
                ("Part", "Mark", "What it does"),
                (
                    ("Outdoor main board", "OMB", "Control, rectifier, power module"),
                    ("Lamp, green", "LD1", "Supply of the outdoor main board"),
                    ("Lamp, amber", "LD2", "State and fault display"),
                    ("Push button", "SW3", "Memory of the last fault"),
                    ("Label of the board", "white", "Below the plug CN20"),
                    ("High pressure switch", "63H", "Manual check only, no adjusting"),
                    ("Reactor", "L1", "On the partition plate"),
                ),
                (1.5, 0.8, 2.6),
            ),
            Para(
                "The indoor unit shows a fault by its run lamp only: it flashes evenly "
                "for every fault of the outdoor unit. The meaning is read at LD2."
            ),
        ),
        "1 Specifications",
    )


def _wiring(family: Family) -> Page:
    return Page(
        "2",
        (
            Heading("2 Terminals and plugs"),
            Para(
                f"Terminal strip of the outdoor unit. {family.supplies} Tighten the "
                "screws to 1.2 Nm; a loose screw shows up as a sag at start."
            ),
            table(
                "Table 2-1 Terminals",
                ("Terminal", "Colour", "Use"),
                (
                    ("L", "brown", "Supply, live"),
                    ("N", "blue", "Supply, neutral"),
                    ("1", "brown", "To the indoor unit, live"),
                    ("2", "blue", "To the indoor unit, neutral, zero of the signal"),
                    ("3", "black", "Signal line to the indoor unit"),
                    ("PE", "green and yellow", "Protective earth"),
                ),
                (0.8, 1.2, 3),
            ),
            table(
                "Table 2-2 Plugs of the outdoor main board",
                ("Plug", "Pins", "Part"),
                (
                    ("CN11", "4", "Sensors TH1 and TH2"),
                    ("CN12", "2", "Discharge sensor TH3"),
                    ("CN13", "2", "High pressure switch 63H, closed when sound"),
                    ("CN15", "2", "Four-way valve coil, if fitted"),
                    ("CN18", "6", "Expansion valve coil"),
                    ("CN20", "5", "Outdoor fan motor"),
                    ("U V W", "3", "Compressor, red white black"),
                    ("L1A L1B", "2", "Reactor"),
                ),
                (0.9, 0.6, 3),
            ),
            table(
                "Table 2-3 Plug CN20, five wires of the outdoor fan motor",
                ("Pin", "Colour", "Signal"),
                (
                    ("1", "red", "Motor supply Vm from the DC bus"),
                    ("2", "black", "Zero"),
                    ("3", "white", "Logic supply Vcc"),
                    ("4", "yellow", "Speed command Vsp"),
                    ("5", "blue", "Pulses FG from the motor"),
                ),
                (0.6, 0.9, 3),
            ),
            Caution(
                "CAUTION",
                "Never pull or fit plug CN20 while the bus is charged: the chip inside "
                "the motor fails at once.",
            ),
        ),
        "2 Terminals and plugs",
    )
