"""`rules new`, `rules show` and `rules schema`, as a shop uses them."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from assistant.library.store import LibraryStore
from assistant.rules.loader import load_pack
from assistant.rules.pack import FILES
from assistant.rules.schema import NAMES, schema_of
from tui.main import main
from tui.plain.pack_sheet import pack_lines

Capture = pytest.CaptureFixture[str]
PACKS = Path(__file__).parents[3] / "kb_samples" / "packs"
NARROW = 40


def said(capsys: Capture, *words: str, code: int = 0) -> dict[str, Any]:
    assert main([*words, "--json"]) == code
    read: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert read["schema"] == 1
    return read


@pytest.fixture
def library(tmp_path: Path) -> None:
    LibraryStore.open(tmp_path / "library", create=True).close()


@pytest.mark.usefixtures("library")
def test_a_new_pack_verifies_clean(tmp_path: Path, capsys: Capture) -> None:
    folder = tmp_path / "Boat house"

    made = said(capsys, "rules", "new", str(folder), "--author", "R. Ashdown")
    proved = said(capsys, "rules", "verify", str(folder))

    assert made["pack"] == "boat-house"
    assert (proved["stands"], proved["mistakes"]) == (True, [])


@pytest.mark.usefixtures("library")
def test_the_examples_of_a_new_pack_are_right_once_uncommented(
    tmp_path: Path, capsys: Capture
) -> None:
    folder = tmp_path / "shop"
    said(capsys, "rules", "new", str(folder), "--author", "R. Ashdown")
    for name in FILES:
        path = folder / f"{name}.yaml"
        lines = path.read_text(encoding="utf-8").splitlines()
        examples = [line[2:] for line in lines if re.match(r"# (?:-|  )", line)]
        assert examples, name
        path.write_text("\n".join(examples) + "\n", encoding="utf-8")

    proved = said(capsys, "rules", "verify", str(folder), code=3)

    pack = load_pack(folder)
    assert all(len(getattr(pack, name)) == 1 for name in FILES)
    assert proved["stands"]
    assert {each["severity"] for each in proved["mistakes"]} == {"warning"}


def test_a_folder_that_holds_something_is_not_written_over(
    tmp_path: Path, capsys: Capture
) -> None:
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "notes.txt").write_text("mine")

    assert main(["rules", "new", str(tmp_path / "shop")]) == 2

    assert "is there already" in capsys.readouterr().err
    assert [path.name for path in (tmp_path / "shop").iterdir()] == ["notes.txt"]


def test_a_new_pack_names_its_own_schemas(tmp_path: Path, capsys: Capture) -> None:
    folder = tmp_path / "shop"
    said(capsys, "rules", "new", str(folder))

    for name in NAMES:
        first = (folder / f"{name}.yaml").read_text(encoding="utf-8").splitlines()[0]
        local = first.removeprefix("# yaml-language-server: $schema=")
        held = json.loads((folder / local).read_text(encoding="utf-8"))
        assert held == schema_of(name)


def test_a_name_with_yaml_in_it_stays_a_name(tmp_path: Path, capsys: Capture) -> None:
    name = 'A: "B" #c'

    said(capsys, "rules", "new", str(tmp_path / "shop"), "--author", name)

    assert load_pack(tmp_path / "shop").head.author == name


def test_a_schema_is_printed_or_written_for_each_file(
    tmp_path: Path, capsys: Capture
) -> None:
    one = said(capsys, "rules", "schema", "--file", "waits")
    all_ = said(capsys, "rules", "schema", "--out", str(tmp_path / "s"))

    assert one["json_schema"] == schema_of("waits")
    assert len(all_["files"]) == len(NAMES)
    held = (tmp_path / "s" / "waits.schema.json").read_text(encoding="utf-8")
    assert json.loads(held) == schema_of("waits")


@pytest.mark.parametrize("words", [[], ["--file", "wait"]])
def test_a_schema_of_nothing_known_is_refused(
    words: list[str], capsys: Capture
) -> None:
    assert main(["rules", "schema", *words]) == 2

    assert "try:" in capsys.readouterr().err


@pytest.mark.parametrize("name", sorted(path.name for path in PACKS.iterdir()))
def test_a_pack_is_shown_in_forty_columns_with_every_item_and_page(name: str) -> None:
    pack = load_pack(PACKS / name)

    lines = pack_lines(pack, NARROW)

    text = " ".join(" ".join(lines).split())
    assert max(len(line) for line in lines) <= NARROW
    for file in FILES:
        for item in getattr(pack, file):
            assert f"[{item.id}]" in text.replace(" ", "") or f"[{item.id}]" in text
            if item.source is not None:
                assert f"page {item.source.page}:" in text


def test_a_pack_is_shown_in_trade_words(capsys: Capture) -> None:
    assert main(["rules", "show", str(PACKS / "vellamere-heron")]) == 0

    told = capsys.readouterr().out
    assert "LIGHTS AND CODES" in told
    assert "amber LD2 (outdoor main board): 3 flashes" in told
    assert "from the maker's manual" in told
    assert "count_per_window" not in told


def test_a_pack_that_is_not_there_is_said(tmp_path: Path, capsys: Capture) -> None:
    LibraryStore.open(tmp_path / "library", create=True).close()

    assert main(["rules", "show", "nobody"]) == 2

    assert "no rule pack 'nobody' is in force" in capsys.readouterr().err


def test_a_shown_pack_as_json_is_the_pack(tmp_path: Path, capsys: Capture) -> None:
    shutil.copytree(PACKS / "common", tmp_path / "common")

    told = said(capsys, "rules", "show", str(tmp_path / "common"))

    assert told["pack"] == "common"
    assert len(told["rules"]["causes"]) == len(load_pack(PACKS / "common").causes)
