"""The worked examples of the samples' README: every kind has one, and each loads."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from assistant.errors import PackError
from assistant.rules.loader import load_pack
from assistant.rules.schema import schema_of
from assistant.rules.shapes import KINDS
from assistant.rules.yaml_lines import read_yaml_text
from tests.pack_folders import write_pack
from tests.schema_check import problems

README = Path(__file__).parents[2] / "kb_samples" / "README.md"
FENCE = re.compile(r"^```yaml\n# (\w+)\.yaml\n(.*?)^```", re.MULTILINE | re.DOTALL)
HEAD = """\
schema: 1
id: examples
version: "1"
title: Examples
kind: shop
author: R. Ashdown
date: "2031-04-02"
"""
EXPLAINED = ("signals", "waits", "stops")
BLOCKS = FENCE.findall(README.read_text(encoding="utf-8"))
KINDS_TO_SHOW = [(file, kind) for file in EXPLAINED for kind in KINDS[file]]


def kinds_in(text: str) -> list[str]:
    data = read_yaml_text(text, "README.md").data
    return [item["kind"] for item in data]


@pytest.mark.parametrize(("file", "kind"), KINDS_TO_SHOW)
def test_every_kind_has_a_worked_example(file: str, kind: str) -> None:
    shown = [kind for name, text in BLOCKS if name == file for kind in kinds_in(text)]

    assert shown.count(kind) >= 1


@pytest.mark.parametrize("place", range(len(BLOCKS)))
def test_an_example_is_read_by_the_loader(place: int, tmp_path: Path) -> None:
    name, text = BLOCKS[place]
    folder = write_pack(tmp_path, {"pack.yaml": HEAD, f"{name}.yaml": text})

    pack = load_pack(folder)

    assert len(getattr(pack, name)) == text.count("- id:")


@pytest.mark.parametrize("place", range(len(BLOCKS)))
def test_an_example_fits_the_schema_for_editors(place: int) -> None:
    name, text = BLOCKS[place]

    assert problems(read_yaml_text(text, name).data, schema_of(name)) == []


def test_all_examples_of_the_readme_make_one_pack(tmp_path: Path) -> None:
    files = {"pack.yaml": HEAD}
    for name, text in BLOCKS:
        files[f"{name}.yaml"] = files.get(f"{name}.yaml", "") + text

    pack = load_pack(write_pack(tmp_path, files))

    assert {row.kind for row in pack.signals} == set(KINDS["signals"])


def test_a_wrong_example_would_be_noticed(tmp_path: Path) -> None:
    name, text = BLOCKS[0]
    wrong = {"pack.yaml": HEAD, f"{name}.yaml": text.replace("meaning:", "means:", 1)}

    with pytest.raises(PackError):
        load_pack(write_pack(tmp_path, wrong))
