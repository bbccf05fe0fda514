"""The one command: its words, its errors, its exit codes, its manners."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

import pytest

from assistant.errors import FaultleafError, LibraryError, PackError, UsageError
from tui import main as main_module
from tui.main import main
from tui.parser import COMMANDS, named_command, parse

ROOT = Path(__file__).parents[2]
Capture = pytest.CaptureFixture[str]


def python(*words: str, **more: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(  # type: ignore[call-overload, no-any-return]
        [sys.executable, *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
        **more,
    )


def act(monkeypatch: pytest.MonkeyPatch, run: Callable[..., int]) -> None:
    """Let `doctor` do something else."""
    command = SimpleNamespace(arguments=lambda _: None, run=run)
    monkeypatch.setattr(main_module, "command_module", lambda _: command)


def raising(error: BaseException) -> Callable[..., int]:
    def run(args: object, console: object) -> int:  # noqa: ARG001
        raise error

    return run


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (UsageError("the words are off", "say it otherwise"), 2),
        (FaultleafError("something", "do this"), 2),
        (PackError(("a.yaml:1: one", "a.yaml:2: two"), "correct them"), 3),
        (LibraryError("no library", "add one"), 4),
    ],
)
def test_an_error_is_said_on_stderr_with_its_way_out_and_its_code(
    monkeypatch: pytest.MonkeyPatch, capsys: Capture, error: FaultleafError, code: int
) -> None:
    act(monkeypatch, raising(error))

    assert main(["--json", "doctor"]) == code

    told = capsys.readouterr()
    assert told.out == ""
    expected = [f"error: {line}" for line in error.what.splitlines()]
    assert told.err.splitlines() == [*expected, f"try: {error.hint}"]


def test_a_file_that_cannot_be_opened_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    act(monkeypatch, raising(PermissionError(13, "Permission denied", "/some/file")))

    assert main(["doctor"]) == 2
    first, way_out = capsys.readouterr().err.splitlines()
    assert first == "error: Permission denied: /some/file"
    assert way_out.startswith("try: ")


def test_a_fault_of_our_own_is_never_taken_for_not_found(
    monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    act(monkeypatch, raising(ZeroDivisionError("oh")))

    assert main(["doctor"]) == 2
    assert "faultleaf itself failed" in capsys.readouterr().err


def test_an_interrupt_ends_cleanly(
    monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    act(monkeypatch, raising(KeyboardInterrupt()))

    assert main(["doctor"]) == 130
    assert capsys.readouterr().err == "stopped\n"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["chekc"], "did you mean check?"),
        (["frobnicate"], "'frobnicate' is not a command"),
        (["find"], "the following arguments are required"),
        (["find", "--limit", "many", "x"], "invalid int value"),
        (["find", "--limit", "0", "x"], "not between 1 and 100"),
        (["find", "  "], "there is no text"),
        (["job"], "the following arguments are required: ACTION"),
        (["doctor", "--lib", "x"], "unrecognized arguments: --lib"),
        (["talk", "--json"], "talk prints lines, not JSON"),
        (["check"], "no check is named"),
    ],
)
def test_words_that_are_off_exit_2_and_name_the_way_out(
    capsys: Capture, words: list[str], says: str
) -> None:
    assert main(words) == 2

    told = capsys.readouterr()
    assert told.out == ""
    assert says in told.err
    assert "try: " in told.err


@pytest.mark.parametrize(
    "words",
    [
        ["--library", "L", "--json", "job", "list", "--jobs", "J"],
        ["job", "--json", "list", "--jobs", "J", "--library", "L"],
        ["--jobs", "J", "job", "--library", "L", "list", "--json"],
        ["--jobs=J", "job", "list", "--library=L", "--json"],
    ],
)
def test_common_options_stand_anywhere(words: list[str]) -> None:
    args = parse(words)

    assert (args.command, args.action, args.json) == ("job", "list", True)
    assert (args.library, args.jobs) == (Path("L"), Path("J"))


def test_the_value_of_an_option_is_not_taken_for_the_command() -> None:
    assert named_command(["--library", "find", "ask", "x"]) == "ask"
    assert named_command(["--json"]) is None


def test_every_command_is_in_the_help_and_has_a_module() -> None:
    shown = python("-m", "tui", "--help").stdout
    folder = ROOT / "tui" / "commands"
    modules = {path.stem for path in folder.glob("*.py")} - {"__init__"}

    assert modules == set(COMMANDS)
    for name, line in COMMANDS.items():
        assert f"{name} " in shown
        assert line in shown


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_explains_itself(name: str) -> None:
    done = python("-m", "tui", name, "--help")

    assert done.returncode == 0
    assert "usage: faultleaf " + name in done.stdout
    assert "--json" in done.stdout


def test_alone_without_a_terminal_it_prints_its_help(capsys: Capture) -> None:
    assert main([]) == 0
    assert "commands:" in capsys.readouterr().out


def test_a_reader_that_leaves_is_no_error() -> None:
    done = python(
        "-c",
        "import subprocess, sys\n"
        "p = subprocess.Popen([sys.executable, '-m', 'tui', 'check', '--list'],\n"
        "    stdout=subprocess.PIPE, stderr=subprocess.PIPE)\n"
        "p.stdout.close()\n"
        "print(p.wait(), p.stderr.read())",
    )

    assert done.stdout.strip() == "0 b''"


@pytest.mark.skipif(os.name == "nt", reason="signals differ there")
def test_ctrl_c_while_listening_exits_130(tmp_path: Path) -> None:
    process = subprocess.Popen(
        [sys.executable, "-c", LISTENING, str(tmp_path)],
        cwd=ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "listening\n"
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=20)

    assert (process.returncode, out, err) == (130, "", "stopped\n")


LISTENING = """
import signal, sys
# What runs the tests in the background may have it ignored.
signal.signal(signal.SIGINT, signal.default_int_handler)
from tui.main import main
from tui.plain.console import Console

class Source:
    def read(self):
        print("listening", flush=True)
        return sys.stdin.read()

before = Console.of_process
def of_process():
    console = before()
    console.source = Source()
    return console

Console.of_process = of_process
sys.exit(main(["find", "-", "--library", sys.argv[1]]))
"""


def test_json_is_one_document_with_its_schema_first(capsys: Capture) -> None:
    assert main(["job", "list", "--json"]) == 0

    told = capsys.readouterr()
    assert json.loads(told.out) == {"schema": 1, "jobs": []}
    assert told.out.startswith('{\n  "schema": 1,')
    assert told.err == ""


def test_the_program_runs_as_a_module_and_tells_its_version() -> None:
    from importlib.metadata import PackageNotFoundError, version

    try:
        wanted = f"faultleaf {version('faultleaf')}\n"
    except PackageNotFoundError:
        wanted = "faultleaf, from a source tree that is not installed\n"

    assert python("-m", "tui", "--version").stdout == wanted
