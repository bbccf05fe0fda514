"""`faultleaf check` with meters that are kept by name."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tui.main import main

Capture = pytest.CaptureFixture[str]
SAVE = ("--save-meter", "Kittiwake", "percent=0.5 %", "digits=2", "resolution=0.1 V")


@pytest.fixture(autouse=True)
def own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FAULTLEAF_CONFIG", str(tmp_path / "config"))


def test_a_meter_is_saved_listed_used_and_forgotten(capsys: Capture) -> None:
    assert main(["check", *SAVE]) == 0
    assert "0.5 % + 2 digits of 100 mV" in capsys.readouterr().out

    told = ["supply-voltage", "nominal=230 V", "reading=209.0 V", "--json"]
    assert main(["check", "--meter", "kittiwake", *told]) == 0
    assert json.loads(capsys.readouterr().out)["result"] == "pass"
    assert main(["check", *told]) == 0
    assert json.loads(capsys.readouterr().out)["result"] == "inconclusive"

    assert main(["check", "--meters", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert listed["schema"] == 1
    assert [meter["name"] for meter in listed["meters"]] == ["Kittiwake"]

    assert main(["check", "--forget-meter", "Kittiwake"]) == 0
    assert "no meter is saved" in capsys.readouterr().out


def test_a_meter_that_is_not_saved_is_an_error_with_the_way_out(
    capsys: Capture,
) -> None:
    main(["check", *SAVE])
    capsys.readouterr()

    code = main(["check", "--meter", "kitiwake", "supply-voltage", "nominal=230 V"])

    assert code == 2
    assert "did you mean 'Kittiwake'" in capsys.readouterr().err


def test_figures_that_lack_something_save_nothing(capsys: Capture) -> None:
    assert main(["check", "--save-meter", "Kittiwake", "percent=0.5 %"]) == 2
    assert "needs 'digits'" in capsys.readouterr().err
    main(["check", "--meters"])
    assert "no meter is saved" in capsys.readouterr().out


def test_the_bench_is_worked_from_the_command(capsys: Capture) -> None:
    told = ["voltage-unbalance", "volts=462; 463; 455 V", "--json"]

    assert main(["check", *told]) == 0

    document = json.loads(capsys.readouterr().out)
    # The tip-sheet example of the US DOE: 1.1 %.
    assert document["value"] == pytest.approx(0.011, abs=5e-4)
    assert document["result"] is None


def test_a_turn_with_a_meter_that_is_not_saved_opens_no_job(
    tmp_path: Path, capsys: Capture
) -> None:
    jobs = tmp_path / "jobs.sqlite"

    code = main(["--jobs", str(jobs), "ask", "--meter", "none", "supply is 231 V"])

    assert code == 2
    assert "no meter is saved as 'none'" in capsys.readouterr().err
    assert not jobs.exists()
