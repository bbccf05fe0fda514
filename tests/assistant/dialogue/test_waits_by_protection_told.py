"""Waits of which only the protection that stopped the unit says which one runs."""

from __future__ import annotations

from pathlib import Path

from tests.spoken import Spoken, texts

BY = {"soft_stop": "overcurrent", "auto_release": "high pressure"}


def test_waits_of_protections_not_named_are_told_in_one_line(tmp_path: Path) -> None:
    talk = Spoken(tmp_path, BY, stopped_by=BY)

    told = texts(talk.say("third time today, maybe ten minutes apart"))

    assert "Which protection stopped it was not said" in told
    assert "overcurrent: stop after high current" in told
    assert "high pressure: lock after high pressure" in told
    assert "It runs only when" not in told


def test_one_such_wait_is_told_with_what_it_hangs_on(tmp_path: Path) -> None:
    talk = Spoken(tmp_path, {"soft_stop"}, stopped_by=BY)

    told = texts(talk.say("third time today, maybe ten minutes apart"))

    assert "It runs only when: stopped by overcurrent" in told
    assert "Which protection stopped it was not said" not in told
