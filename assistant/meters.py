"""A technician's meters, saved by name in the folder of what a person set up."""

from __future__ import annotations

import difflib
from pathlib import Path

from pydantic import ValidationError

from assistant.checks.kinds import Meter, MeterRange
from assistant.errors import FaultleafError, UsageError
from assistant.record import Record

FILE = "meters.json"
SCHEMA = 1
LONGEST_NAME = 60


class MetersError(FaultleafError):
    """The file of meters cannot be used."""


class MeterBook(Record):
    """All saved meters, by name."""

    version: int = SCHEMA
    meters: tuple[Meter, ...] = ()

    def find(self, name: str) -> Meter:
        """Return the meter of a name, whatever its case.

        Raises
        ------
        UsageError
            When there is none, with the nearest name.
        """
        by_name = {one.name.casefold(): one for one in self.meters}
        found = by_name.get(name.strip().casefold())
        if found is None:
            names = [one.name for one in self.meters]
            near = difflib.get_close_matches(name, names, n=1)
            meant = f"did you mean {near[0]!r}? " if near else ""
            raise UsageError(
                f"no meter is saved as {name!r}",
                f"{meant}see them with: faultleaf check --meters",
            )
        return found

    def saving(self, name: str, figures: MeterRange) -> MeterBook:
        """Return the book with figures added to a meter, or put in place of old ones.

        Figures of the same unit and end of range replace each other.

        Raises
        ------
        UsageError
            For a name that is empty or too long.
        """
        kept = name.strip()
        if not kept or len(kept) > LONGEST_NAME:
            raise UsageError(
                f"{name!r} is no name for a meter",
                f"give it one of 1 to {LONGEST_NAME} letters",
            )
        others = [one for one in self.meters if one.name.casefold() != kept.casefold()]
        known = [one for one in self.meters if one not in others]
        ranges = [
            one
            for meter in known
            for one in _ranges(meter)
            if _key(one) != _key(figures)
        ]
        ranges = sorted([*ranges, figures], key=_key)
        meter = Meter(name=kept, others=tuple(ranges[1:]), **ranges[0].model_dump())
        return MeterBook(meters=_sorted([*others, meter]))

    def without(self, name: str) -> MeterBook:
        """Return the book without a meter.

        Raises
        ------
        UsageError
            When there is none of that name.
        """
        gone = self.find(name)
        return MeterBook(meters=tuple(one for one in self.meters if one != gone))


def _sorted(meters: list[Meter]) -> tuple[Meter, ...]:
    return tuple(sorted(meters, key=lambda one: one.name.casefold()))


def _ranges(meter: Meter) -> tuple[MeterRange, ...]:
    first = MeterRange(
        percent=meter.percent,
        digits=meter.digits,
        resolution=meter.resolution,
        up_to=meter.up_to,
    )
    return (first, *meter.others)


def _key(figures: MeterRange) -> tuple[str, float]:
    end = float("inf") if figures.up_to is None else figures.up_to.value
    return figures.resolution.unit, end


def read_meters(config: Path | None) -> MeterBook:
    """Return the meters saved in a folder; none when there is no file yet.

    Raises
    ------
    MetersError
        When the file cannot be read, with its path.
    """
    if config is None or not (config / FILE).exists():
        return MeterBook()
    path = config / FILE
    try:
        return MeterBook.model_validate_json(path.read_text("utf-8"))
    except (OSError, UnicodeDecodeError, ValidationError) as error:
        raise MetersError(
            f"the meters in {path} cannot be read",
            "mend or move the file, then save the meters again",
        ) from error


def write_meters(config: Path | None, book: MeterBook) -> None:
    """Write the meters whole: a kill leaves the old file or the new one.

    Raises
    ------
    MetersError
        When the folder cannot be written.
    """
    if config is None:
        raise MetersError("there is no folder for meters", "set FAULTLEAF_CONFIG")
    path = config / FILE
    fresh = path.with_suffix(".new")
    try:
        config.mkdir(parents=True, exist_ok=True)
        fresh.write_text(book.model_dump_json(indent=1) + "\n", "utf-8")
        fresh.replace(path)
    except OSError as error:
        raise MetersError(
            f"the meters cannot be written to {path}", "set FAULTLEAF_CONFIG elsewhere"
        ) from error
