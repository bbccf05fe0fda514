"""All wording of the answers. Plain trade words, one thought a line."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.checks.kinds import Needs
from assistant.dialogue.signal_replies import slot_question
from assistant.facts import ReadingFact
from assistant.jobs.events import CheckDone, Found
from assistant.rules.applicability import Plate
from assistant.signals.observation import Candidate, Match, Observation, Split
from assistant.units.quantity import Quantity
from assistant.units.show import format_quantity

PLATE_WORDS = {
    "indoor_model": "indoor model",
    "outdoor_model": "outdoor model",
    "serial": "serial number",
    "voltage": "supply voltage on the nameplate",
    "phase": "phase",
    "refrigerant": "refrigerant",
    "charge": "charge",
    "board_mark": "colour or print on the board label",
    "switch_settings": "switch settings",
    "capacity_class": "capacity class",
    "unit_role": "kind of unit",
    "market": "market suffix",
    "board_pn": "part number on the board",
    "firmware": "firmware version",
    "built": "build week or date",
    "series": "series name",
    "family": "product family",
    "fitted": "which options are fitted",
}
NEEDS_WORDS: dict[Needs, str] = {
    "look": "look only, covers on",
    "power_off": "power off, cover off",
    "live": "live measurement",
    "gauges": "gauges",
    "opens_circuit": "opens the refrigerant circuit",
    "swap": "swap of a part",
}
CONTEXT_QUESTIONS = {
    "call present": "Is there a call for cooling or heating at the unit right now?",
    "power off": "Was every supply off, locked and measured dead for that reading?",
    "sensor unplugged": "Was the sensor unplugged from the board for that reading?",
    "temperature at the sensor": (
        "What temperature does the sensor itself have? "
        "Measure it at the sensor, and say the unit (C or F)."
    ),
    "mains at the terminals": (
        "What does the supply read at the unit's own terminals, in volts?"
    ),
    "off before the outage": "Was the unit off already before the power went?",
    "fixed speed": "Is the unit held at fixed speed (the maker's test run)?",
    "stops in a row": "Were those stops in a row, with no good run in between?",
    "stops in one call": "Were all those stops in one and the same call?",
    "compressor running": "Was the compressor running for that reading?",
    "module disconnected": "Was the inverter module disconnected for that reading?",
    "not under vacuum": (
        "Is there pressure in the system, so that it is not under vacuum?"
    ),
    "leads disconnected": "Were the part's own wires off for that reading?",
    "header unplugged": "Was the motor's header unplugged for that reading?",
    "capacitor discharged": (
        "Was the capacitor discharged through a resistor and measured so?"
    ),
    "bus measured dead": "Was the bus measured dead at every marked bank?",
    "digital meter": "Is it a digital meter? An analogue one has its leads reversed.",
    "gauge at the named port": (
        "Is the gauge on the port that the check names, and not on another one?"
    ),
    "charge test running": "Is the maker's own charge test running right now?",
    "running steadily": "Has it run steadily for 15 minutes, without a stop?",
    "sensors at one temperature": (
        "Have both sensors stood at one temperature long enough to agree?"
    ),
    "board powered": "Was the board powered, with the sensor plugged in?",
    "full speed": "Is the compressor held at full speed?",
    "airflow as stated": (
        "Is the airflow known to be the document's: fan speed, filter and coil?"
    ),
    "temperature at the coil": (
        "What temperature does the coil itself have? Say the unit (C or F)."
    ),
}
MODE_QUESTION = "What mode is it running in: cooling or heating?"
SLOT_QUESTIONS = {
    "pause": "Is there a dark pause between groups of flashes, or does it never stop?",
    "count": "How many flashes are in one group? Watch two whole groups.",
    "colour": "What colour is the lamp?",
    "box": "Which box is the lamp on: indoor, outdoor, remote or thermostat?",
    "board": "Which board is the lamp on?",
    "label": "What is printed beside the lamp?",
    "code": "What does the display show, sign by sign?",
    "state": "What does the lamp do: dark, steady, or flashing?",
    "unit": "Which unit is it? Read the model from the nameplate.",
}
UNIT_QUESTION = (
    "Which unit is it? Read the outdoor and indoor model from the nameplates "
    "(a photo keeps them)."
)
LAMP_QUESTION = (
    "Before any reset: what do the lamps or the display show now? "
    "Film the light for 20 s; say colour, which board, and how many flashes."
)
EVIDENCE_QUESTION = (
    "What does the light do right now? Film it for 20 s before anything is reset: "
    "a reset can erase it."
)
ROLE_QUESTION = (
    "Who is at the unit: customer, maintenance, technician, "
    "or technician with a refrigerant licence?"
)
ATTEMPT_QUESTION = (
    "Which restart is it: the first since it ran properly, the second, a later one?"
)
STOP_NUMBER_QUESTION = (
    "Which stop is it: the first since it ran properly or was reset, or a later one?"
)
VALUE_QUESTION = "What is {sensor} now, with its unit?"
UNIT_NOT_CONFIRMED = "Unit not confirmed: check that the document is for this model."
TO_CONFIRM = (
    "That row was read by OCR, which can misread a code: to be confirmed on the page."
)
OFF_TOPIC = "That is not something the literature or the rules here can answer."
NOTHING_APPLIES = (
    "Nothing in the library applies to {unit}. "
    "To look through every unit's literature: faultleaf find TEXT --all-units."
)
TEACHES_CAUTION = (
    "This page speaks of bridging or bypassing. It is shown for reading only: "
    "nothing that protects is bridged, and no such step is given here."
)


def decoded(candidate: Candidate, *, exact: bool) -> str:
    """Say what a row means, and whether it is a fault."""
    signal = candidate.row.signal
    kind = "fault" if signal.is_fault else "normal state, no fault"
    lead = "It means" if exact else "It can mean"
    parts = [f"{lead}: {signal.meaning} ({kind})."]
    if signal.stored:
        parts.append("This is stored history, not what is wrong now.")
    if signal.unit_action:
        parts.append(f"The unit: {signal.unit_action}.")
    if signal.recover:
        parts.append(f"It clears: {signal.recover}.")
    return " ".join(parts)


def assumed(candidate: Candidate) -> str:
    """Name what the decode took for granted."""
    return f"Assumed, not told: {', '.join(candidate.assumed)}."


def not_decoded(match: Match) -> str:
    """Say that a report is not in the table, or cannot be told yet."""
    if match.verdict == "none":
        return f"Not in this manual: {match.reason}."
    return f"Cannot tell yet: {match.reason.removeprefix('cannot tell yet: ')}."


def not_read(match: Match) -> str:
    """Say what of several lamps or codes told could not be read beside the rest."""
    return f"What else was told: {match.reason}."


def heard(observation: Observation) -> str:
    """Repeat a lamp report in a few words."""
    if observation.state == "display":
        beside = f" with {observation.sub}" if observation.sub else ""
        starts = (
            f"{observation.code_starts} and more" if observation.code_starts else ""
        )
        return f"display {observation.code or starts or 'a code'}{beside}"
    where = "/".join((*observation.box, *observation.board, *observation.label))
    colour = " or ".join(observation.colour)
    lamp = " ".join(word for word in (where, colour, "lamp") if word)
    count = " or ".join(str(n) for n in observation.count)
    if observation.state == "short_long":
        long = " or ".join(str(n) for n in observation.long_count)
        return f"{lamp}: {count or 'some'} quick and {long or 'some'} long flashes"
    if observation.count:
        heard_not_seen = observation.emitter == "buzzer"
        return f"{lamp}: {count} {'beeps' if heard_not_seen else 'flashes'}"
    return f"{lamp}: {observation.state}"


def split_question(split: Split) -> str:
    """Word the question that splits the candidates."""
    if split.slot.startswith("lamp:"):
        return f"What does the lamp {split.slot.partition(':')[2]} do?"
    told = slot_question(split.slot, (answer for answer, _ in split.options))
    if told is not None:
        return told
    return SLOT_QUESTIONS.get(split.slot, f"Which {split.slot} is it?")


def verdict(done: CheckDone, name: str) -> str:
    """Word a verdict with its value, limits and reason."""
    if done.result == "no_verdict":
        return f"{name}: no verdict. {sentence(done.reason)}"
    words = {"pass": "pass", "fail": "FAIL", "inconclusive": "too close to call"}
    text = f"{name}: {words.get(done.result, done.result)}"
    if done.value is not None:
        text += f". Read {amount(done.value, done.unit)}"
        text += _limits(done)
    return f"{text}. {sentence(done.reason)}".strip()


def _limits(done: CheckDone) -> str:
    text = ""
    if done.expected is not None:
        text += f", expected {amount(done.expected, done.unit)}"
    if done.low is not None and done.high is not None:
        low, high = amount(done.low, done.unit), amount(done.high, done.unit)
        return f"{text}, limits {low} to {high}"
    if done.low is not None:
        return f"{text}, not under {amount(done.low, done.unit)}"
    if done.high is not None:
        return f"{text}, not over {amount(done.high, done.unit)}"
    return text


def amount(value: float, unit: str) -> str:
    """Write a value in a person's unit."""
    return format_quantity(Quantity(value=value, unit=unit))


def sentence(text: str) -> str:
    """Give a reason a capital and a full stop."""
    if not text:
        return ""
    return f"{text[0].upper()}{text[1:]}{'' if text.endswith(('.', '?')) else '.'}"


def taken_back(done: CheckDone, name: str) -> str:
    """Name a verdict that fell with a corrected fact."""
    return f"Taken back: {name}, {done.result}. It rested on what was corrected."


def replaced(old: str, new: str) -> str:
    """Say that a fact was corrected."""
    return f"Noted: {new} instead of {old}. The old one stays in the record."


def nothing_found(found: Found) -> str:
    """Say that the literature does not answer, and what was searched."""
    many = "1 document" if found.searched == 1 else f"{found.searched} documents"
    text = f"Not found in the {many} searched"
    text += f" ({found.reason})." if found.reason else "."
    unread = [
        f"{document} p. {', '.join(str(page) for page in pages)}"
        for document, pages in sorted(found.unreadable.items())
    ]
    if unread:
        text += f" Pages that cannot be searched: {'; '.join(unread)}."
    return text


def unit_name(plate: Plate) -> str:
    """Name a unit as far as it is known."""
    names = (plate.outdoor_model, plate.indoor_model)
    return " with ".join(name for name in names if name) or "this unit"


def deciding(fields: Sequence[str], answers: Sequence[str] = ()) -> str:
    """Ask for the plate or label item that decides between documents."""
    words = ", ".join(PLATE_WORDS.get(field, field) for field in fields)
    text = f"Two documents differ here. What decides is on the unit: {words}."
    return f"{text} Is it {' or '.join(answers)}?" if answers else text


def differ(
    closer_says: str, other_says: str, *, closer: bool, decided_by: Sequence[str]
) -> str:
    """Say two documents side by side; `closer` where the first is more about it."""
    text = f"Two documents differ: {closer_says}; {other_says}."
    if decided_by:
        words = ", ".join(PLATE_WORDS.get(field, field) for field in decided_by)
        return f"{text} Which holds is decided by: {words}."
    if closer:
        text += " The first is more closely about this unit."
    return f"{text} Neither names the other as replaced."


def why_causes(
    shares: Sequence[tuple[str, float]], moved: Sequence[tuple[str, str]]
) -> str:
    """Explain the order of causes by weights (not chances) and results so far."""
    order = ", ".join(f"{name} {weight:.2f}" for name, weight in shares)
    text = f"Weights, not chances: {order}."
    if moved:
        text += " Moved by: " + ", ".join(f"{name} ({r})" for name, r in moved) + "."
    return text


def why_check(name: str, gain_bits: float, minutes: float, *, by_document: bool) -> str:
    """Explain why a check comes next."""
    if by_document:
        return f"{name} is next because the document names it after the last result."
    return (
        f"{name} is next: the least invasive level that still tells something, "
        f"{gain_bits:.2f} bit expected in {minutes:g} min."
    )


def needs_other_role(name: str, roles: Sequence[str]) -> str:
    """Say that the next check is for somebody else."""
    return f"The next check ({name}) is for: {', '.join(roles)}. Leave covers on."


def ambiguous(of: str, options: Sequence[Quantity]) -> str:
    """Ask which of two readings was meant."""
    shown = " or ".join(format_quantity(option) for option in options)
    return f"Reading of {of}: did the meter show {shown}?"


def exactly(of: str, near: Sequence[str]) -> str:
    """Ask for the exact figure of a reading told roughly."""
    shown = " or ".join(near)
    return f"Reading of {of}: near {shown}. What exactly does the meter show?"


def kept(facts: Sequence[ReadingFact], serial: str | None) -> str:
    """Say which readings are kept with the unit as its baseline."""
    told = [
        f"{fact.of} {format_quantity(fact.value) if fact.value else 'OL'}"
        for fact in facts
        if fact.value is not None or fact.open_line
    ]
    open_ones = [fact.of for fact in facts if not fact.value and not fact.open_line]
    unit = f"the unit {serial}" if serial else "this job; tell the serial number"
    parts = [f"Kept from commissioning with {unit}: {', '.join(told)}."] if told else []
    if open_ones:
        parts.append(
            f"Not kept until its figure and unit are told: {', '.join(open_ones)}."
        )
    return " ".join(parts)


def cannot_decide(name: str, why: str) -> str:
    """Say that the tools at hand cannot decide a check."""
    return f"{name}: before you try: {why}."


def gauge_port(port: str) -> str:
    """Ask whether the gauge is where a check of the charge is stated for."""
    return f"Is the gauge on the {port}, and on no other port?"


def point(name: str) -> str:
    """Ask for one of several readings that are compared."""
    return f"What does {name} read? Say the unit, or OL."


def still_dangerous(words: str) -> str:
    """Carry an earlier danger through the later turns."""
    return f"Still open from before: {words}"
