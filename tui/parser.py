"""The words of a call. Only the named command's own module is imported."""

from __future__ import annotations

import argparse
import difflib
import importlib
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NoReturn, Protocol, cast

from assistant.errors import UsageError
from tui.plain.console import Console

COMMANDS = {
    "demo": "play a worked case on the sample library",
    "add": "put literature and rule packs into the library",
    "remove": "take a document or a rule pack out of the library",
    "library": "what is in the library, and which pages can be searched",
    "find": "find a passage in the literature",
    "ask": "one turn of a job: say what you see, get what is known",
    "talk": "work a job as a conversation in plain lines",
    "check": "work out one engineering check",
    "rules": "begin, draft, show and prove rule packs",
    "job": "list, show and verify stored jobs",
    "doctor": "check the installation, the library and the jobs",
}
"""Every command and its one line; the module of the same name does the work."""

EPILOG = """\
exit codes: 0 answered, 1 not found, 2 usage or error, 3 done with warnings,
4 the library cannot be used.

Everything here defers to the maker's own literature, local codes and licensed
practice."""
_WITH_VALUE = ("--library", "--jobs")


class Command(Protocol):
    """What each module of `tui.commands` offers."""

    def arguments(self, parser: argparse.ArgumentParser) -> None:
        """Declare the command's own words."""
        ...

    def run(self, args: argparse.Namespace, console: Console) -> int:
        """Do it and return the exit code."""
        ...


class Parser(argparse.ArgumentParser):
    """A parser that raises instead of printing and leaving."""

    def error(self, message: str) -> NoReturn:
        """Raise UsageError, with a near word for a mistyped command."""
        raise UsageError(message, f"{self.prog} --help")


def command_module(name: str) -> Command:
    """Import the module of one command."""
    return cast(Command, importlib.import_module(f"tui.commands.{name}"))


def named_command(words: Sequence[str]) -> str | None:
    """Return the first word that is neither an option nor an option's value.

    Raises
    ------
    UsageError
        When it names no command, with the nearest one.
    """
    skip = False
    for word in words:
        if skip or word.startswith("-"):
            skip = not skip and word in _WITH_VALUE
            continue
        if word in COMMANDS:
            return word
        near = difflib.get_close_matches(word, COMMANDS, n=1)
        meant = f"did you mean {near[0]}? " if near else ""
        raise UsageError(f"{word!r} is not a command", f"{meant}faultleaf --help")
    return None


def build(
    chosen: str | None, module: Callable[[str], Command] = command_module
) -> Parser:
    """Return the parser, with the arguments of the chosen command only."""
    common = common_options()
    parser = Parser(
        prog="faultleaf",
        description="Diagnoses inverter air conditioners and heat pumps from the "
        "makers' own literature: says what is worked out, what is a rule, and on "
        "which page it stands.",
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        parents=[common],
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="store_true", help="print the version")
    commands = parser.add_subparsers(
        dest="command", metavar="COMMAND", title="commands"
    )
    for name, line in COMMANDS.items():
        own = commands.add_parser(
            name,
            help=line,
            description=line[0].upper() + line[1:] + ".",
            parents=[common],
            allow_abbrev=False,
        )
        if name == chosen:
            module(name).arguments(own)
    return parser


def parse(words: Sequence[str]) -> argparse.Namespace:
    """Return the words of a call as a namespace; every common option is set.

    Raises
    ------
    UsageError
        When the words are off.
    """
    args = build(named_command(words)).parse_args(words)
    defaults = {"library": None, "jobs": None, "json": False, "no_colour": False}
    for name, value in defaults.items():
        if not hasattr(args, name):
            setattr(args, name, value)
    return args


def common_options() -> Parser:
    """Return the options every command and every action of one takes."""
    # SUPPRESS: given before the command, an option must outlive the command's own
    # default.
    common = Parser(
        add_help=False, argument_default=argparse.SUPPRESS, allow_abbrev=False
    )
    group = common.add_argument_group("everywhere")
    group.add_argument(
        "--library", type=Path, metavar="FOLDER", help="the library to use"
    )
    group.add_argument("--jobs", type=Path, metavar="FILE", help="the file of jobs")
    group.add_argument(
        "--json", action="store_true", help="one JSON document on stdout"
    )
    group.add_argument("--no-colour", action="store_true", help="no colour codes")
    return common
