"""What Ctrl-C leaves behind while files are added, and how a password is asked."""

from __future__ import annotations

import getpass
import io
from pathlib import Path

import pytest

from ingest import assemble, pipeline
from tui.adding import STOPPED, ask_password
from tui.main import INTERRUPTED, main
from tui.plain.console import Console

Capture = pytest.CaptureFixture[str]


@pytest.mark.model
def test_a_stop_says_what_stays_and_the_same_command_goes_on(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    for name in "ab":
        (shelf / f"{name}.txt").write_text(f"Lamp {name} flashes four times.")
    whole = assemble.prepare
    asked = []

    def until_the_second(*words: object) -> object:
        asked.append(words)
        if len(asked) > 1:
            raise KeyboardInterrupt
        return whole(*words)  # type: ignore[arg-type]

    monkeypatch.setattr(pipeline, "prepare", until_the_second)
    stopped = main(["add", str(shelf), "--no-embed"])
    said = capsys.readouterr().err
    monkeypatch.setattr(pipeline, "prepare", whole)
    again = main(["add", str(shelf), "--no-embed"])

    assert stopped == INTERRUPTED
    assert STOPPED in said
    assert again == 0
    out = capsys.readouterr().out
    assert "unchanged a.txt" in out
    assert "added b.txt" in out


@pytest.mark.parametrize(("typed", "given"), [("heron", "heron"), ("", None)])
def test_a_password_is_asked_beside_the_data_and_may_be_left_out(
    typed: str, given: str | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(getpass, "getpass", lambda _: typed)
    console = Console(out=io.StringIO(), err=io.StringIO())

    assert ask_password(console, "locked.pdf") == given

    assert isinstance(console.out, io.StringIO)
    assert isinstance(console.err, io.StringIO)
    assert console.out.getvalue() == ""
    assert "locked.pdf is encrypted" in console.err.getvalue()
