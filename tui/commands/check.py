"""`faultleaf check`: one engineering check by name, with its formula and source."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, UsageError
from tui.plain.console import Console
from tui.wiring import places

if TYPE_CHECKING:
    from assistant.checks.curve import Curve
    from assistant.checks.kinds import Meter
    from assistant.checks.registry import NamedCheck
    from assistant.checks.report import CheckReport

EPILOG = """\
example: faultleaf check thermistor-beta r0='10 kohm' t0='25 C' beta='3950 K' \\
             temperature='40 C' resistance='5.2 kohm' tolerance='5 %' power=off"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the name, its values and `--list`."""
    parser.formatter_class = argparse.RawDescriptionHelpFormatter
    parser.epilog = EPILOG
    parser.add_argument("name", nargs="?", help="the check; --list names them all")
    parser.add_argument(
        "values", nargs="*", metavar="key=value", help="with units: reading='228 V'"
    )
    parser.add_argument(
        "--plot", action="store_true", help="draw the reading on its curve"
    )
    parser.add_argument(
        "--png", metavar="FILE", help="write that drawing as a picture for the record"
    )
    parser.add_argument(
        "--list", action="store_true", help="every check with its values"
    )
    meters = parser.add_argument_group("your meters, kept by name")
    meters.add_argument("--meter", metavar="NAME", help="judge with a saved meter")
    meters.add_argument("--meters", action="store_true", help="list the saved meters")
    meters.add_argument(
        "--save-meter",
        metavar="NAME",
        help="save percent, digits and resolution, and up_to for one range of several",
    )
    meters.add_argument("--forget-meter", metavar="NAME", help="take a meter out")


def run(args: argparse.Namespace, console: Console) -> int:
    """Run the check, list them, or keep a meter."""
    if args.meters or args.save_meter or args.forget_meter:
        return _meters(args, console)
    if args.list:
        return _listed(console)
    if args.name is None:
        raise UsageError("no check is named", "faultleaf check --list")
    return _run_one(args, console)


def _listed(console: Console) -> int:
    from assistant.checks.registry import CHECKS, listing

    if console.json:
        console.document(listing())
    else:
        console.lines(_list_lines(tuple(CHECKS.values()), console.width))
    return ANSWERED


def _run_one(args: argparse.Namespace, console: Console) -> int:
    from assistant.checks.registry import run_named
    from assistant.checks.report import document

    saved = None
    if args.meter is not None:
        from assistant.meters import read_meters

        saved = read_meters(places(args).config).find(args.meter)
    given = _pairs(args.values, args.name)
    report = run_named(args.name, given, saved)
    if args.png:
        _write_picture(args.png, report, given)
    if console.json:
        console.document(document(report))
        return ANSWERED
    lines = _report_lines(report, console.width)
    if args.plot:
        lines += ["", *_plot_lines(report, given, console.width)]
    if args.png:
        lines.append(f"picture: {args.png}")
    console.lines(lines)
    return ANSWERED


def _plot_lines(report: CheckReport, given: Mapping[str, str], width: int) -> list[str]:
    from assistant.checks.registry import curve_of
    from tui.plain.plot import plot_lines

    curve = curve_of(report.check, given)
    return plot_lines(curve, width, _written(report, curve))


def _write_picture(where: str, report: CheckReport, given: Mapping[str, str]) -> None:
    from assistant.checks.registry import curve_of
    from tui.plain.picture import write_png
    from tui.plain.words import VERDICT_WORDS

    curve = curve_of(report.check, given)
    note = ", ".join(_given(report))
    if report.result is not None:
        note = f"{VERDICT_WORDS[report.result]}: {note}"
    try:
        write_png(curve, Path(where), _written(report, curve), note)
    except (OSError, ValueError) as error:
        raise UsageError(
            f"the picture {where!r} cannot be written: {error}", "name another place"
        ) from error


def _written(report: CheckReport, curve: Curve) -> tuple[str, str]:
    """Return the units of both axes as the person wrote them."""
    from assistant.checks.report import unit_like

    return unit_like(report, curve.x_unit), unit_like(report, curve.y_unit)


def _meters(args: argparse.Namespace, console: Console) -> int:
    """Save, forget or list meters, then show what is kept."""
    from assistant.checks.metering import figures_of
    from assistant.meters import read_meters, write_meters

    config = places(args).config
    book = read_meters(config)
    if args.save_meter is not None:
        words = [word for word in (args.name, *args.values) if word is not None]
        told = _pairs(words, "meter")
        book = book.saving(args.save_meter, figures_of(told))
    if args.forget_meter is not None:
        book = book.without(args.forget_meter)
    if args.save_meter is not None or args.forget_meter is not None:
        write_meters(config, book)
    if console.json:
        shown = [meter.model_dump(mode="json") for meter in book.meters]
        console.document({"schema": 1, "meters": shown})
    else:
        console.lines(_meter_lines(book.meters) or ["no meter is saved"])
    return ANSWERED


def _meter_lines(meters: tuple[Meter, ...]) -> list[str]:
    from assistant.units.parse import format_quantity

    lines = []
    for meter in meters:
        lines.append(meter.name)
        for one in (meter, *meter.others):
            end = "" if one.up_to is None else f" up to {format_quantity(one.up_to)}"
            step = format_quantity(one.resolution, digits=1)
            lines.append(f"  {one.percent:g} % + {one.digits} digits of {step}{end}")
    return lines


def _pairs(values: list[str], name: str) -> dict[str, str]:
    given: dict[str, str] = {}
    for word in values:
        key, sign, value = word.partition("=")
        if not sign:
            raise UsageError(
                f"check {name!r}: {word!r} is not key=value",
                "put a value with spaces in quotes: reading='228 V'",
            )
        if key in given:
            raise UsageError(f"check {name!r}: {key} is given twice")
        given[key] = value
    return given


def _list_lines(checks: tuple[NamedCheck, ...], width: int) -> list[str]:
    from assistant.checks.registry import usage
    from tui.plain.text import wrap

    lines: list[str] = []
    for check in checks:
        lines += wrap(f"{check.name}: {check.says}", width)
        lines += wrap(f"formula: {check.law.formula}", width, "  ")
        lines += wrap(f"source: {check.law.source}", width, "  ")
        lines += wrap(usage(check), width, "  ", "      ")
    return lines


def _report_lines(report: CheckReport, width: int) -> list[str]:
    from assistant.checks.report import show, show_as
    from tui.plain.text import wrap
    from tui.plain.words import VERDICT_WORDS

    texts = []
    if report.result is not None:
        texts.append(f"{VERDICT_WORDS[report.result]}. {report.reason}")
    elif report.reason:
        texts.append(report.reason)
    figures = (
        ("value", report.value),
        ("expected", report.expected),
        ("lowest allowed", report.low),
        ("highest allowed", report.high),
        ("uncertainty (k = 2)", report.uncertainty),
    )
    texts += [
        f"{name}: {show(figure, report)}"
        for name, figure in figures
        if figure is not None
    ]
    texts += [
        f"{name}: {show_as(figure, unit, report)}" for name, figure, unit in report.also
    ]
    if report.missing:
        texts.append(f"still to be told: {', '.join(report.missing)}")
    texts += [f"formula: {report.formula}", f"source: {report.source}"]
    texts.append("worked out from: " + ", ".join(_given(report)))
    return [line for text in texts for line in wrap(text, width, "", "  ")]


def _given(report: CheckReport) -> list[str]:
    return [f"{key} {value}" for key, value in report.inputs.items()]
