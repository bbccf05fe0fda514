"""What a call loads: static contracts cannot see whether an import is deferred."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.settings import Settings
from tui.parser import COMMANDS

ROOT = Path(__file__).parents[2]
HEAVY = {
    "faiss",
    "numpy",
    "onnx",
    "onnxruntime",
    "pint",
    "pydantic",
    "pypdf",
    "sentence_transformers",
    "sqlite3",
    "textual",
    "tokenizers",
    "torch",
    "transformers",
    "yaml",
}
NEVER = {
    "onnx",
    "onnxscript",
    "pypdf",
    "sentence_transformers",
    "textual",
    "torch",
    "transformers",
}
"""What no answer needs."""
PROBE = """
import json, sys
from tui.main import main
try:
    main(json.loads(sys.argv[1]))
except SystemExit:
    pass
print("\\n" + json.dumps(sorted({name.split(".")[0] for name in sys.modules})))
"""


def loaded(*words: str) -> set[str]:
    """Return the top-level modules that one call leaves loaded."""
    done = subprocess.run(
        [sys.executable, "-c", PROBE, json.dumps(words)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    return set(json.loads(done.stdout.splitlines()[-1]))


@pytest.mark.parametrize(
    "words", [("--help",), ("--version",), *((name, "--help") for name in COMMANDS)]
)
def test_help_loads_nothing_heavy(words: tuple[str, ...]) -> None:
    assert loaded(*words) & HEAVY == set()


@pytest.mark.model
@pytest.mark.parametrize(
    "words",
    [
        ("find", "amber lamp"),
        ("ask", "amber light LD2 flashes 4 times", "--unit", "VET-O50"),
        ("library",),
        ("job", "list"),
        ("check", "--list"),
    ],
)
def test_answering_loads_neither_torch_nor_a_screen(
    words: tuple[str, ...], sample_places: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(sample_places.library))

    assert loaded(*words) & NEVER == set()


def test_importing_a_package_loads_nothing_else() -> None:
    done = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys, assistant, ingest, tui, kb_samples; "
            "print([n for n in sys.modules if n.partition('.')[0] in "
            "('assistant', 'ingest', 'tui', 'kb_samples') and '.' in n])",
        ],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )

    assert done.stdout.strip() == "[]"
