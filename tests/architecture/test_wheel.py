"""The wheel holds everything: installed elsewhere, the demo plays."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
from pathlib import Path

import pytest

pytestmark = pytest.mark.slow
ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return an environment that has the wheel, and this one's other packages."""
    aside = tmp_path_factory.mktemp("wheel")
    run(
        *(sys.executable, "-m", "build", "--wheel", "--no-isolation"),
        *("--outdir", str(aside / "dist"), str(ROOT)),
    )
    (wheel,) = (aside / "dist").glob("*.whl")
    folder = aside / "venv"
    run(sys.executable, "-m", "venv", str(folder))
    run(str(folder / "bin" / "pip"), "install", "-q", "--no-deps", str(wheel))
    (own,) = folder.glob("lib/python*/site-packages")
    # A plain path: an editable install of this tree beside them stays unseen.
    (own / "others.pth").write_text(sysconfig.get_path("purelib") + "\n")
    return folder / "bin"


def without_this_tree() -> dict[str, str]:
    return {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}


def run(*words: str, cwd: Path | None = None, **more: str) -> str:
    done = subprocess.run(
        words,
        cwd=cwd or ROOT,
        env={**without_this_tree(), **more},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]
    return done.stdout


@pytest.mark.model
@pytest.mark.skipif(os.name == "nt", reason="another layout of environments")
def test_the_demo_plays_from_the_wheel_in_another_folder(
    installed: Path, tmp_path: Path
) -> None:
    place = run(
        *(str(installed / "python"), "-c", "import tui; print(tui.__file__)"),
        cwd=tmp_path,
    )
    shown = run(str(installed / "faultleaf"), "demo", cwd=tmp_path)

    assert not Path(place.strip()).is_relative_to(ROOT)
    assert "It means: discharge sensor TH3 out of range" in " ".join(shown.split())
    assert "rev B, p. 8 (PDF page 11)" in " ".join(shown.split())
    assert "Verdict: FAIL" in shown


@pytest.mark.model
@pytest.mark.skipif(os.name == "nt", reason="another layout of environments")
def test_the_wheel_leaves_the_tests_out(installed: Path, tmp_path: Path) -> None:
    listed = run(
        *(str(installed / "pip"), "show", "-f", "faultleaf"),
        cwd=tmp_path,
    )

    assert "kb_samples/literature/vellamere-tern-service-manual.pdf" in listed
    assert "kb_samples/packs/common/pack.yaml" in listed
    assert "tests/" not in listed
