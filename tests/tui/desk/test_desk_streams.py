"""Only the driver writes to the terminal, and without colour where that is wished."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from assistant.settings import Settings
from tests.desk_pty import OnTerminal

pytestmark = pytest.mark.model
TARGET = Path(__file__).with_name("desk_stray_target.py")
# ECMA-48, 8.3.117: 30 to 49 of SGR set colours; 90 to 107 are the bright ones that
# terminals add.
COLOUR = re.compile(rb"\x1b\[(?:\d*;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;\d+)*m")


def test_whatever_else_writes_goes_to_the_log(
    sample_places: Settings, tmp_path: Path
) -> None:
    words = (str(TARGET), str(sample_places.library), str(tmp_path / "jobs.sqlite"))
    with OnTerminal({"NO_COLOR": "1"}, 80, 24, words) as screen:
        screen.wait_for(b"Say what the unit shows")
        log = tmp_path / "screen.log"
        while b"STRAY of a child" not in log.read_bytes():
            screen.read(0.05)
        screen.send(b"hello there\r")
        screen.wait_for(b"> hello there")
        screen.send(b"\tq")
        screen.wait_for(b"AFTER on 2")
        written = screen.written

    # While it runs, the terminal is the driver's; afterwards it is anyone's again.
    assert b"STRAY" not in written.partition(b"AFTER on 1")[0]
    assert b"AFTER on 1" in written
    noted = log.read_bytes()
    for way in (b"to 1", b"to 2", b"from C", b"of a child"):
        assert b"STRAY " + way in noted
    # NO_COLOR is kept to the byte: https://no-color.org
    assert COLOUR.findall(written) == []
