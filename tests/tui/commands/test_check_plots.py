"""`check --plot` and `--png`, and the plots of a job's own readings."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from PIL import Image

from assistant.settings import Settings
from tui.main import main

Capture = pytest.CaptureFixture[str]
SENSOR = ["thermistor-beta", "r0=10 kohm", "t0=25 C", "beta=3950 K"]
READ = ["temperature=104 F", "resistance=5.2 kohm", "tolerance=5 %", "power=off"]


def test_a_plot_follows_the_verdict_in_the_units_typed(capsys: Capture) -> None:
    assert main(["check", *SENSOR, *READ, "--plot"]) == 0

    told = capsys.readouterr().out
    assert told.index("TOO CLOSE TO CALL") < told.index("resistance of sensor")
    assert told.count("X") >= 1
    assert "°F" in told.splitlines()[-2]


def test_a_plot_of_a_temperature_alone_shows_the_point_it_settles(
    capsys: Capture,
) -> None:
    assert main(["check", *SENSOR, "temperature=40 C", "--plot"]) == 0

    assert any("X" in line for line in capsys.readouterr().out.splitlines()[5:])


@pytest.mark.parametrize(
    "words",
    [
        ["superheat", "refrigerant=R-32", "pressure=120 psig", "line=50 F"],
        ["subcooling", "refrigerant=R-32", "pressure=330 psig", "line=92 F"],
        ["discharge-superheat", "refrigerant=R-32", "pressure=350 psig", "line=190 F"],
        ["saturation", "refrigerant=R-454B", "temperature=40 F"],
        ["saturation", "refrigerant=R-454B", "pressure=110 psig", "side=bubble"],
        ["thermistor-table", "points=0 C: 30 k; 50 C: 4 k", "resistance=10 k"],
    ],
)
def test_every_check_with_a_curve_draws_it(words: list[str], capsys: Capture) -> None:
    assert main(["check", *words, "--plot"]) == 0

    assert "X reading" in capsys.readouterr().out


def test_a_picture_is_written_beside_the_one_json_document(
    tmp_path: Path, capsys: Capture
) -> None:
    place = tmp_path / "reading.png"

    assert main(["check", *SENSOR, *READ, "--png", str(place), "--json"]) == 0

    assert json.loads(capsys.readouterr().out)["check"] == "thermistor-beta"
    with Image.open(place) as picture:
        assert picture.format == "PNG"


@pytest.mark.parametrize("flag", [["--plot"], ["--png", "x.png"]])
def test_a_check_without_a_curve_says_which_have_one(
    flag: list[str], capsys: Capture
) -> None:
    assert main(["check", "supply-sag", "rest=231 V", "start=215 V", *flag]) == 2

    told = capsys.readouterr().err
    assert "has no curve" in told
    assert "superheat" in told


def test_a_picture_that_cannot_be_written_is_an_error(
    tmp_path: Path, capsys: Capture
) -> None:
    place = tmp_path / "none" / "reading.png"

    assert main(["check", *SENSOR, *READ, "--png", str(place)]) == 2

    assert "cannot be written" in capsys.readouterr().err


@pytest.mark.model
def test_a_jobs_own_readings_are_drawn_and_written(
    sample_places: Settings,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: Capture,
) -> None:
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(sample_places.library))
    jobs = ["--jobs", str(tmp_path / "jobs.sqlite")]
    said = (
        "discharge sensor reads 12.4k at 70F, power is off, locked and measured dead, "
        "sensor unplugged"
    )
    words = ["ask", "--unit", "VET-O50", "--role", "technician", *jobs, "--plot", said]

    assert main(words) == 0
    told = capsys.readouterr().out
    assert "X reading" in told
    job = told.split("Job ")[-1].split(";")[0]

    folder = tmp_path / "pictures"
    assert main(["job", "show", job, *jobs, "--png", str(folder)]) == 0
    (picture,) = folder.glob("*.png")
    assert f"picture: {picture}" in capsys.readouterr().out
