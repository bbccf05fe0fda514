"""Filled-in forms to facts, by the same parsers as typed words. Pure."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Literal, TypeVar

if TYPE_CHECKING:
    from assistant.checks.kinds import Meter
    from assistant.facts import Fact
    from assistant.language.vocabulary import Vocabulary
    from assistant.meters import MeterBook
    from assistant.units.quantity import Quantity

OPEN_LINE = {"ol", "o.l", "open", "open line", "over limit"}
DIGITS = 3
"""Counts of the last digit that a meter told by its percentage alone is given."""
ANY_TIME = datetime(2000, 1, 1, tzinfo=UTC)
"""The words of a reading name no time, so it does not matter when they are read."""
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class ReadingFields:
    """The readings form as filled in."""

    of: str = ""
    value: str = ""
    temperature: str = ""
    meter: str = ""
    power: Literal["", "off", "live"] = ""
    unplugged: Literal["", "yes", "no"] = ""


@dataclass(frozen=True, slots=True)
class UnitFields:
    """The unit form as filled in."""

    outdoor: str = ""
    indoor: str = ""
    serial: str = ""
    more: str = ""
    """Other nameplate items as ``key=value``."""
    role: str = ""


class WrongFieldsError(Exception):
    """Fields that cannot be taken: name to reason."""

    def __init__(self, fields: dict[str, str]) -> None:
        super().__init__("; ".join(fields.values()))
        self.fields = fields


class _Taker:
    """Takes fields one by one and keeps every reason why one cannot be taken."""

    def __init__(self) -> None:
        self.wrong: dict[str, str] = {}

    def take(self, name: str, text: str, parse: Callable[[str], T]) -> T | None:
        if not text.strip():
            return None
        try:
            return parse(text.strip())
        except (ValueError, ArithmeticError) as error:
            self.wrong[name] = str(error)
        return None


def reading_facts(
    fields: ReadingFields, vocabulary: Vocabulary, saved: MeterBook | None = None
) -> tuple[tuple[Fact, ...], str]:
    """Return the facts of a readings form, and the same in words.

    Parameters
    ----------
    fields : ReadingFields
    vocabulary : Vocabulary
        Words of the packs in force: what their sensors and checks are called.
    saved : MeterBook, optional
        The technician's meters, which the form may name.

    Raises
    ------
    WrongFieldsError
        With every field that is wrong, and why.
    """
    from assistant.facts import ContextFact, ReadingFact

    taker = _Taker()
    is_open = fields.value.strip().casefold() in OPEN_LINE
    value = None if is_open else taker.take("value", fields.value, quantity)
    shown = fields.value.strip() if value is not None else "OL"
    of = taker.take("of", fields.of, lambda text: measurand(text, shown, vocabulary))
    warm = taker.take("temperature", fields.temperature, temperature)
    meter = taker.take("meter", fields.meter, lambda text: meter_of(text, value, saved))
    if not fields.of.strip():
        taker.wrong["of"] = "say what was measured, such as TH3 or supply"
    if not fields.value.strip():
        taker.wrong["value"] = "write the value with its unit, or OL"
    if taker.wrong:
        raise WrongFieldsError(taker.wrong)
    words = reading_words(fields)
    reading = ReadingFact(
        of=of or "",
        value=value,
        open_line=is_open,
        at_temperature=warm,
        power_state=fields.power or None,
        meter=meter,
        origin="form",
        words=words,
    )
    if not fields.unplugged:
        return (reading,), words
    apart = ContextFact(
        name="sensor unplugged",
        value=fields.unplugged == "yes",
        origin="form",
        words=f"unplugged: {fields.unplugged}",
    )
    return (reading, apart), words


def reading_words(fields: ReadingFields) -> str:
    """Return a readings form as a person would say it."""
    parts = [f"{fields.of.strip()} {fields.value.strip()}"]
    if fields.temperature.strip():
        parts.append(f"at {fields.temperature.strip()} at the sensor")
    if fields.power:
        parts.append(f"power {fields.power}")
    if fields.unplugged:
        parts.append("unplugged" if fields.unplugged == "yes" else "plugged in")
    if fields.meter.strip():
        parts.append(f"meter {fields.meter.strip()}")
    return ", ".join(parts)


def measurand(text: str, value: str, vocabulary: Vocabulary) -> str:
    """Return what was measured, as the parser names it in "TEXT reads VALUE".

    Raises
    ------
    ValueError
        When the parser knows no such thing.
    """
    from assistant.facts import ReadingFact
    from assistant.language.understand import understand

    for words in (f"{text} reads {value}", f"{text} sensor reads {value}"):
        told = understand(words, now=ANY_TIME, vocabulary=vocabulary).facts
        named = [fact.of for fact in told if isinstance(fact, ReadingFact)]
        # A thing with no name of its own is called by its dimension or "sensor".
        if named and (named[0] not in _nameless() or named[0] in text.casefold()):
            return named[0]
    known = sorted({name for _, says in vocabulary.sensors for name in says})
    hint = f"; this unit's sensors: {', '.join(known[:8])}" if known else ""
    raise ValueError(f"{text!r} is nothing that is measured here{hint}")


def _nameless() -> set[str]:
    from assistant.language.quantities import DIMENSION

    return {*DIMENSION.values(), "sensor", "resistance", ""}


def quantity(text: str) -> Quantity:
    """Return a value with its unit; see `assistant.units.parse`."""
    from assistant.units.parse import parse_quantity

    return parse_quantity(text)


def temperature(text: str) -> Quantity:
    """Return a temperature.

    Raises
    ------
    ValueError
        When it is none, or its unit is of something else.
    """
    read = quantity(text)
    if read.unit != "K":
        raise ValueError(f"{text!r} is no temperature; write it as 25 C or 77 F")
    return read


def meter_of(
    text: str, value: Quantity | None, saved: MeterBook | None = None
) -> Meter | None:
    """Return a saved meter by its name, or one by its promise: ``1 % + 3`` (digits).

    The last digit is that of a four-digit meter on the range of the reading.

    Raises
    ------
    ValueError
        When it is not so written.
    """
    named = [m for m in saved.meters if _alike(m.name, text)] if saved else []
    if named:
        return named[0]
    from assistant.checks.kinds import Meter
    from assistant.checks.reading import usual_resolution
    from assistant.units.parse import parse_number
    from assistant.units.quantity import Quantity

    percent, _, digits = text.replace("digits", "").partition("+")
    try:
        share = parse_number(percent.replace("%", "").strip())
        counts = int(digits.strip() or DIGITS)
    except ValueError as error:
        told = "no saved meter and no accuracy; write it as 1 % + 3"
        raise ValueError(f"{text!r} is {told}") from error
    if share < 0 or counts < 0:
        raise ValueError(f"{text!r}: an accuracy is not below zero")
    if value is None:
        return None
    step = Quantity(value=usual_resolution(value.value, value.unit), unit=value.unit)
    return Meter(name=text.strip(), percent=share, digits=counts, resolution=step)


def unit_facts(fields: UnitFields) -> tuple[tuple[Fact, ...], str]:
    """Return the facts of a unit form, and the same in words.

    Raises
    ------
    WrongFieldsError
        With every field that is wrong, and why.
    """
    from assistant.errors import UsageError
    from assistant.facts import RoleFact, UnitFact
    from tui.unit_option import ROLES, parse_unit

    plain = (("outdoor", fields.outdoor), ("indoor", fields.indoor))
    named = (*plain, ("serial", fields.serial))
    parts = [f"{key}={text.strip()}" for key, text in named if text.strip()]
    parts += [part.strip() for part in fields.more.split(",") if part.strip()]
    facts: list[Fact] = []
    if parts:
        try:
            plate = parse_unit(",".join(parts))
        except UsageError as error:
            raise WrongFieldsError({"more": f"{error.what}; {error.hint}"}) from error
        facts.append(UnitFact(plate=plate, origin="form", words=", ".join(parts)))
    if fields.role:
        if fields.role not in ROLES:
            raise WrongFieldsError({"role": f"{fields.role!r} is no role"})
        facts.append(RoleFact(role=fields.role, origin="form", words=fields.role))  # type: ignore[arg-type]
    if not facts:
        raise WrongFieldsError({"outdoor": "write the model, or choose who you are"})
    return tuple(facts), ", ".join((*parts, *filter(None, (fields.role,))))


def _alike(one: str, other: str) -> bool:
    return one.casefold().split() == other.casefold().split()
