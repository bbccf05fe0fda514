"""What of all packs is in force for one unit, and what replaces what."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.rules.applicability import Plate
from assistant.rules.inforce import in_force
from assistant.rules.loader import load_pack
from assistant.rules.pack import Pack
from tests.pack_folders import GOOD, changed, write_pack

CONFIRMED = Plate(outdoor_model="QM-24", voltage="230")


@pytest.fixture
def pack(tmp_path: Path) -> Pack:
    return load_pack(write_pack(tmp_path / "quellmar"))


def shop(folder: Path, kind: str, name: str) -> Pack:
    head = f'schema: 1\nid: {name}\nversion: "1"\ntitle: {name}\nkind: {kind}\n'
    if kind == "shop":
        head += 'author: A. Moss\ndate: "2026-03-02"\n'
    causes = "- id: dirt\n  kind: airflow\n  name: dirt\n  frequency: common\n"
    return load_pack(
        write_pack(folder / name, {"pack.yaml": head, "causes.yaml": causes})
    )


def test_another_unit_sees_nothing_of_the_pack(pack: Pack) -> None:
    force = in_force([pack], Plate(outdoor_model="XX-24"))

    assert force.rows == {}
    assert force.signals == ()


def test_a_unit_not_known_sees_everything_as_possible(pack: Pack) -> None:
    force = in_force([pack], Plate())

    assert {row.unit_match for row in force.rows.values()} == {"possible"}
    assert len(force.signals) == 5


def test_a_row_is_out_where_its_replacement_is_confirmed(pack: Pack) -> None:
    plate = CONFIRMED.model_copy(update={"board_mark": "orange dot"})

    force = in_force([pack], plate)

    gids = [row.gid for row in force.signals]
    assert "quellmar/amber-4-late" in gids
    assert "quellmar/amber-4" not in gids
    assert force.claims == ()
    assert force.deciding == ()


def test_both_stay_where_the_replacement_is_only_possible(pack: Pack) -> None:
    force = in_force([pack], CONFIRMED)

    assert force.claims == (("quellmar/amber-4-late", "quellmar/amber-4"),)
    assert force.deciding == ("board_mark",)


def test_the_older_row_stands_where_the_replacement_is_excluded(pack: Pack) -> None:
    plate = CONFIRMED.model_copy(update={"board_mark": "white dot"})

    force = in_force([pack], plate)

    gids = [row.gid for row in force.signals]
    assert "quellmar/amber-4" in gids
    assert "quellmar/amber-4-late" not in gids
    assert force.claims == ()


def test_a_row_of_another_pack_is_replaced_by_its_global_id(
    pack: Pack, tmp_path: Path
) -> None:
    head = GOOD["pack.yaml"].replace("id: quellmar", "id: later")
    head = head.replace("rows: [amber-4]", "rows: [quellmar/green-on]")
    head = head.replace("by: amber-4-late", "by: amber-4")
    later = load_pack(write_pack(tmp_path / "later", {**GOOD, "pack.yaml": head}))

    force = in_force([later, pack], CONFIRMED)

    assert "quellmar/green-on" not in force.rows
    assert "later/green-on" in force.rows


def test_rows_of_a_document_replaced_as_a_whole_are_out(tmp_path: Path) -> None:
    files = changed(
        "pack.yaml",
        "bulletin: {title: QM bulletin 7, revision: A}",
        "bulletin: {title: QM bulletin 7, revision: A, supersedes: [service]}",
    )
    pack = load_pack(write_pack(tmp_path / "pack", files))

    force = in_force([pack], CONFIRMED)

    assert list(force.rows) == ["quellmar/amber-4-late"]


def test_the_makers_rules_come_first_then_the_shops_then_common_practice(
    pack: Pack, tmp_path: Path
) -> None:
    packs = [
        shop(tmp_path, "common", "a-common"),
        shop(tmp_path, "shop", "b-shop"),
        pack,
    ]

    force = in_force(packs, CONFIRMED)

    kinds = [row.pack_kind for row in force.causes]
    assert kinds == ["maker", "maker", "shop", "common"]
    assert [force.rank(row.gid) for row in force.causes] == [0, 0, 1, 2]


def test_a_short_id_is_looked_up_in_the_pack_that_wrote_it(pack: Pack) -> None:
    force = in_force([pack], CONFIRMED)

    assert force.by_gid("quellmar/amber-4").item.id == "amber-4"
    assert force.by_gid("main-board", "quellmar/amber-4").gid == "quellmar/main-board"
    assert force.find("main-board", "other/amber-4") is None
    with pytest.raises(KeyError):
        force.by_gid("quellmar/nothing")


def test_a_check_finds_its_sensor_and_a_row_its_document(pack: Pack) -> None:
    force = in_force([pack], CONFIRMED)

    check = force.check("quellmar/measure-discharge")
    assert check is not None
    sensor = force.sensor_of(check)
    assert sensor is not None
    assert sensor.item.role == "discharge"
    document = force.document_of("quellmar/amber-4")
    assert document is not None
    assert document.title == "QM service manual"
    look = force.check("quellmar/look-plug")
    assert look is not None
    assert force.sensor_of(look) is None


def test_a_signal_row_names_its_document_with_its_revision(pack: Pack) -> None:
    force = in_force([pack], CONFIRMED)

    documents = {row.gid: row.document for row in force.signals}
    assert documents["quellmar/amber-4"] == "QM service manual (B)"
    assert documents["quellmar/amber-4-late"] == "QM bulletin 7 (A)"
