"""The tree keeps its shape: what lies at the top, how long modules grow."""

from __future__ import annotations

import ast
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGES = ("assistant", "ingest", "tui", "kb_samples")
AT_THE_TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "tests", *PACKAGES}
LONGEST_MODULE = 400
CLOCKS = {
    ("datetime", "now"),
    ("datetime", "utcnow"),
    ("datetime", "today"),
    ("date", "today"),
    ("time", "time"),
    ("time", "sleep"),
}


def modules() -> Iterator[Path]:
    for package in PACKAGES:
        yield from sorted((ROOT / package).rglob("*.py"))


def test_tests_are_no_packages() -> None:
    # One __init__.py under tests/assistant, and `import assistant` finds the tests.
    assert not list((ROOT / "tests").rglob("__init__.py"))


def test_every_package_of_ours_is_one() -> None:
    lacking = [
        folder
        for package in PACKAGES
        for folder in {path.parent for path in (ROOT / package).rglob("*.py")}
        if not (folder / "__init__.py").exists()
    ]

    assert lacking == []


def test_test_files_have_unique_names() -> None:
    names = [path.name for path in (ROOT / "tests").rglob("test_*.py")]

    assert sorted(names) == sorted(set(names))


def test_no_module_grows_past_its_ceiling() -> None:
    long = {
        str(path.relative_to(ROOT)): lines
        for path in modules()
        if (lines := len(path.read_text("utf-8").splitlines())) > LONGEST_MODULE
    }

    assert long == {}


def test_every_module_says_what_it_is_for() -> None:
    silent = [
        str(path.relative_to(ROOT))
        for path in modules()
        if not ast.get_docstring(ast.parse(path.read_text("utf-8")))
    ]

    assert silent == []


def test_only_the_clock_reads_the_time() -> None:
    readers = {
        str(path.relative_to(ROOT))
        for path in modules()
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Attribute)
        and isinstance(node.value, ast.Name)
        and (node.value.id, node.attr) in CLOCKS
    }

    assert readers == {"assistant/clock.py"}


@pytest.mark.skipif(
    not (ROOT / ".git").exists() or not shutil.which("git"), reason="no git here"
)
def test_nothing_else_lies_at_the_top() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    tops = {line.split("/")[0] for line in listed.stdout.splitlines()}

    assert {top for top in tops if not top.startswith(".")} <= AT_THE_TOP
