"""The one command: parses, runs, and prints every error in one place."""

from __future__ import annotations

import argparse
import os
import sys
import traceback
from collections.abc import Sequence

from assistant.errors import FaultleafError
from tui.parser import build, command_module, parse
from tui.plain.console import Console

ERROR = FaultleafError.exit_code
INTERRUPTED = 130


def main(argv: Sequence[str] | None = None) -> int:
    """Run one call and return its exit code.

    0 answered, 1 not found, 2 usage or error, 3 done with warnings, 4 library
    unusable; 130 after Ctrl-C.
    """
    console = Console.of_process()
    try:
        code = _run(list(sys.argv[1:] if argv is None else argv), console)
        console.out.flush()
    except FaultleafError as error:
        complain(console, error)
        return error.exit_code
    except KeyboardInterrupt:
        console.talk("stopped")
        return INTERRUPTED
    except BrokenPipeError:
        _close_quietly()
        return 0
    except OSError as error:
        place = f": {error.filename}" if error.filename else ""
        console.talk(f"error: {error.strerror or error}{place}")
        console.talk("try: another place, or see what stands there and who may write")
        return ERROR
    except Exception:  # noqa: BLE001 - Python's own exit code 1 would say "not found"
        console.talk(traceback.format_exc().rstrip())
        console.talk("error: faultleaf itself failed; the lines above say where")
        return ERROR
    return code


def complain(console: Console, error: FaultleafError) -> None:
    """Print what went wrong and the way out."""
    for line in error.what.splitlines() or [""]:
        console.talk(f"error: {line}")
    if error.hint:
        console.talk(f"try: {error.hint}")


def _run(words: list[str], console: Console) -> int:
    args = parse(words)
    console.json = args.json
    if args.no_colour:
        console.colour = False
    if args.version:
        return _version(console)
    if args.command is None:
        return _alone(args, console)
    return command_module(args.command).run(args, console)


def _version(console: Console) -> int:
    from importlib.metadata import PackageNotFoundError, version

    try:
        console.line(f"faultleaf {version('faultleaf')}")
    except PackageNotFoundError:
        console.line("faultleaf, from a source tree that is not installed")
    return 0


def _alone(args: argparse.Namespace, console: Console) -> int:
    """Without a command: the screen for a person, the help for a script."""
    if not console.interactive or console.json:
        console.out.write(build(None).format_help())
        return 0
    if os.environ.get("TERM") == "dumb":
        console.talk("this terminal cannot be drawn on: starting `faultleaf talk`")
        whole = parse(["talk"])
        for name in ("library", "jobs"):
            setattr(whole, name, getattr(args, name))
        return command_module("talk").run(whole, console)
    if args.no_colour:
        os.environ["NO_COLOR"] = "1"
    from tui.desk.start import open_screen
    from tui.wiring import places

    return open_screen(places(args))


def _close_quietly() -> None:
    """Point stdout at nothing, so that closing it at exit raises no more."""
    sink = os.open(os.devnull, os.O_WRONLY)
    os.dup2(sink, sys.stdout.fileno())
    os.close(sink)
