"""Data to stdout, talk to stderr, progress to a terminal only, colour on request."""

from __future__ import annotations

import io
import json

import pytest

from tui.plain.console import Console


class Terminal(io.StringIO):
    """A text stream that claims to be a terminal."""

    def isatty(self) -> bool:
        return True


class Latin(io.StringIO):
    """A text stream that carries ASCII only."""

    encoding = "ascii"


def test_progress_is_drawn_on_a_terminal_and_nowhere_else() -> None:
    quiet = Console(out=io.StringIO(), err=io.StringIO())
    loud = Console(out=io.StringIO(), err=Terminal())

    for console in (quiet, loud):
        console.progress("reading 1 of 2")
        console.progress("reading 2 of 2", last=True)
        console.talk("done")

    assert isinstance(quiet.err, io.StringIO)
    assert quiet.err.getvalue() == "done\n"
    assert isinstance(loud.err, io.StringIO)
    assert loud.err.getvalue() == (
        "\r\x1b[Kreading 1 of 2\r\x1b[Kreading 2 of 2\ndone\n"
    )


def test_a_message_never_stands_on_the_line_of_progress() -> None:
    console = Console(out=io.StringIO(), err=Terminal())

    console.progress("half way")
    console.talk("a word")

    assert isinstance(console.err, io.StringIO)
    assert console.err.getvalue().endswith("half way\na word\n")


def test_a_stream_without_the_sign_gets_words() -> None:
    console = Console(out=Latin(), err=Latin())

    console.line("5 kΩ at 25 °C")

    assert isinstance(console.out, io.StringIO)
    assert console.out.getvalue() == "5 kohm at 25 deg C\n"


def test_a_document_is_ascii_and_has_its_schema() -> None:
    console = Console(out=Latin(), err=Latin())

    console.document({"unit": "kΩ"})

    assert isinstance(console.out, io.StringIO)
    assert json.loads(console.out.getvalue()) == {"schema": 1, "unit": "kΩ"}
    assert console.out.getvalue().isascii()


@pytest.mark.parametrize(
    ("environment", "coloured"),
    [
        ({}, True),
        ({"NO_COLOR": "1"}, False),
        ({"NO_COLOR": ""}, True),
        ({"TERM": "dumb"}, False),
    ],
)
def test_colour_is_for_terminals_whose_owner_wants_it(
    monkeypatch: pytest.MonkeyPatch, environment: dict[str, str], coloured: bool
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr("sys.stdout", Terminal())

    assert Console.of_process().colour is coloured


def test_without_colour_no_code_is_written() -> None:
    assert Console(colour=False).emphasis("STOP.", "alarm") == "STOP."
    assert Console(colour=True).emphasis("STOP.", "alarm") == "\x1b[1;31mSTOP.\x1b[0m"


@pytest.mark.parametrize(("columns", "width"), [("40", 40), ("300", 100)])
def test_lines_are_as_wide_as_the_terminal_within_reason(
    monkeypatch: pytest.MonkeyPatch, columns: str, width: int
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    assert Console.of_process().width == width
