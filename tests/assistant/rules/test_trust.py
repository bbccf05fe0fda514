"""How closely a row is about a unit, and where two documents differ about it."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.record import Scope, SerialRange, VersionRange
from assistant.rules.applicability import Plate, laid_over, match_scopes, missing_for
from assistant.rules.inforce import in_force
from assistant.rules.loader import load_pack
from assistant.rules.pack import Pack
from assistant.rules.scopes import apart
from assistant.rules.trust import Trust, trust
from tests.pack_folders import GOOD, write_pack


def scope(**fields: object) -> tuple[Scope, ...]:
    return (Scope.model_validate(fields),)


@pytest.mark.parametrize(
    ("stated", "plate", "verdict"),
    [
        ({"board_pn": ("17B-(4021,4022)*",)}, {"board_pn": "17b4021-c"}, "confirmed"),
        ({"board_pn": ("17B-4021",)}, {"board_pn": "17B-4030"}, "excluded"),
        ({"firmware": VersionRange(before="2.0")}, {"firmware": "1.9"}, "confirmed"),
        ({"firmware": VersionRange(before="2.0")}, {"firmware": "2.0"}, "excluded"),
        ({"serial": SerialRange(first="2314")}, {"built": "2023-W20"}, "confirmed"),
        ({"serial": SerialRange(first="2314")}, {"built": "2019"}, "excluded"),
        # A serial of another format leaves the word to the build date.
        (
            {"serial": SerialRange(first="2314")},
            {"serial": "QX9", "built": "2019"},
            "excluded",
        ),
        ({"series": "Heron"}, {"series": "heron series"}, "possible"),
        ({"series": "Heron"}, {"series": "heron"}, "confirmed"),
        ({"series": "Heron"}, {"series": "Tern"}, "excluded"),
        ({"settings": ("SW3-2 on",)}, {"switch_settings": "SW3-2 on"}, "confirmed"),
        ({"settings": ("SW3-2 on",)}, {"switch_settings": "sw3-2 off"}, "excluded"),
        ({"settings": ("SW3-2 on",)}, {"switch_settings": "SW1 on"}, "possible"),
        ({"fitted": ("drain pump",)}, {"fitted": "the drain pump kit"}, "confirmed"),
        ({"fitted": ("drain pump",)}, {"not_fitted": "drain pump"}, "excluded"),
        ({"not_fitted": ("drain pump",)}, {"fitted": "drain pump"}, "excluded"),
        ({"not_fitted": ("drain pump",)}, {"not_fitted": "drain pump"}, "confirmed"),
        ({"capacity_class": "24"}, {"capacity_class": "the middle one"}, "possible"),
    ],
)
def test_each_field_of_a_scope_is_compared(
    stated: dict[str, object], plate: dict[str, str], verdict: str
) -> None:
    scopes = scope(**stated)

    assert match_scopes(scopes, Plate.model_validate(plate)) == verdict
    assert match_scopes(scopes, Plate()) == "possible"
    assert missing_for(scopes, Plate())


def test_a_pair_needs_both_of_its_models() -> None:
    pair = scope(models=("QM-24*",), unit_role="outdoor", paired_with=("HX-24*",))

    def fits(**plate: str) -> str:
        return match_scopes(pair, Plate.model_validate(plate))

    assert fits(outdoor_model="QM-24A", indoor_model="HX-24B") == "confirmed"
    assert fits(outdoor_model="QM-24A", indoor_model="HX-36B") == "excluded"
    assert fits(outdoor_model="QM-24A") == "possible"
    assert missing_for(pair, Plate(outdoor_model="QM-24A")) == ("indoor_model",)


def test_for_some_models_is_never_confirmed_and_nothing_is_asked_for_it() -> None:
    some = scope(models=("QM-24",), some_models=True)
    plate = Plate(outdoor_model="QM-24")

    assert match_scopes(some, plate) == "possible"
    assert match_scopes(some, Plate(outdoor_model="QM-36")) == "excluded"
    assert missing_for(some, plate) == ()


def test_a_serial_that_was_read_and_does_not_fit_is_not_asked_for_again() -> None:
    stated = scope(serial=SerialRange(first="2314"))

    assert missing_for(stated, Plate(serial="QX9")) == ("built",)
    assert missing_for(stated, Plate(serial="QX9", built="2023")) == ()


PLATE = Plate(outdoor_model="QM-24A", board_mark="orange", series="Quell")


@pytest.mark.parametrize(
    ("pack", "item", "found"),
    [
        (scope(models=("QM-*",)), scope(board_mark="orange"), Trust.BOARD_OR_SERIAL),
        (scope(models=("QM-24A",)), (), Trust.EXACT_MODEL),
        (scope(models=("QM-(24,36)A",)), (), Trust.EXACT_MODEL),
        (scope(models=("QM-*",)), scope(models=("QM-24A",)), Trust.EXACT_MODEL),
        (scope(models=("QM-24*",)), (), Trust.PATTERN),
        (scope(series="Quell"), (), Trust.SERIES),
        (scope(models=("QM-24A",)), scope(board_mark="white"), Trust.NOT_CONFIRMED),
        (scope(models=("QM-24A",)), scope(serial=SerialRange(first="2314")),
         Trust.NOT_CONFIRMED),
        ((), (), Trust.NOT_CONFIRMED),
    ],
)  # fmt: skip
def test_the_order_of_trust(
    pack: tuple[Scope, ...], item: tuple[Scope, ...], found: Trust
) -> None:
    assert trust(pack, item, PLATE) is found


def test_trust_falls_from_board_to_family() -> None:
    assert sorted(Trust) == [
        Trust.BOARD_OR_SERIAL,
        Trust.EXACT_MODEL,
        Trust.PATTERN,
        Trust.SERIES,
        Trust.FAMILY,
        Trust.NOT_CONFIRMED,
    ]


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ({"firmware": VersionRange(before="2.0")},
         {"firmware": VersionRange(first="2.0")}, True),
        ({"firmware": VersionRange(last="2.0")},
         {"firmware": VersionRange(first="2.0")}, False),
        ({"serial": SerialRange(before="2314")},
         {"serial": SerialRange(first="2314")}, True),
        ({"serial": SerialRange(before="2314")},
         {"serial": SerialRange(format="WWYY", first="1423")}, False),
        ({"board_pn": ("17B",)}, {"board_pn": ("17C",)}, True),
        ({"fitted": ("pump",)}, {"not_fitted": ("pump",)}, True),
        ({"settings": ("SW1 on",)}, {"settings": ("SW2 off",)}, False),
        ({"series": "Heron"}, {"series": "Tern"}, True),
    ],
)  # fmt: skip
def test_scopes_are_apart_where_no_unit_fits_both(
    one: dict[str, object], other: dict[str, object], expected: bool
) -> None:
    (first,), (second,) = scope(**one), scope(**other)

    assert apart(first, second) is expected
    assert apart(second, first) is expected


def test_what_is_told_later_adds_up_and_takes_back() -> None:
    plate = laid_over(Plate(), Plate(switch_settings="SW1 on", fitted="drain pump"))
    plate = laid_over(plate, Plate(switch_settings="SW2 off", fitted="wind baffle"))
    plate = laid_over(plate, Plate(switch_settings="SW1 off", not_fitted="drain pump"))

    assert plate.switch_settings == "SW1 off, SW2 off"
    assert plate.fitted == "wind baffle"
    assert plate.not_fitted == "drain pump"


def other_pack(folder: Path, name: str, applies: str, minutes: int) -> Pack:
    """Load a pack of one wait and one stop of another document."""
    head = GOOD["pack.yaml"].partition("supersedes:")[0].replace("quellmar", name)
    head = head.replace("QM service manual", f"{name} manual")
    start = GOOD["waits.yaml"].partition("- id: order")[0]
    wait = start.replace("3 min", f"{minutes} min").replace(
        "  lamp_during: green-on\n", ""
    )
    wait = wait.replace("  name:", f"{applies}  name:", 1)
    return load_pack(write_pack(folder / name, {"pack.yaml": head, "waits.yaml": wait}))


def test_two_documents_that_differ_are_parallel_and_the_label_decides(
    tmp_path: Path,
) -> None:
    label = "  applies_to: [{board_mark: blue}]\n"
    packs = [
        other_pack(tmp_path, "one", "", 3),
        other_pack(tmp_path, "two", label, 5),
        other_pack(tmp_path, "three", "", 3),
    ]
    plate = Plate(outdoor_model="QM-24", voltage="230")

    force = in_force(packs, plate)

    assert force.parallel == (
        ("one/restart-delay", "two/restart-delay"),
        ("three/restart-delay", "two/restart-delay"),
    )
    assert force.decides(["one/restart-delay", "two/restart-delay"]) == ("board_mark",)


def test_once_the_label_is_known_the_closer_document_stands_first(
    tmp_path: Path,
) -> None:
    label = "  applies_to: [{board_mark: blue}]\n"
    packs = [other_pack(tmp_path, "one", "", 3), other_pack(tmp_path, "two", label, 5)]
    plate = Plate(outdoor_model="QM-24", voltage="230", board_mark="blue")

    force = in_force(packs, plate)
    other = in_force(packs, plate.model_copy(update={"board_mark": "white"}))

    assert [row.gid for row in force.waits] == [
        "two/restart-delay",
        "one/restart-delay",
    ]
    assert force.parallel == (("one/restart-delay", "two/restart-delay"),)
    assert force.decides(["two/restart-delay"]) == ()
    assert [row.gid for row in other.waits] == ["one/restart-delay"]
    assert other.parallel == ()


def test_without_a_model_nothing_is_called_parallel(tmp_path: Path) -> None:
    packs = [other_pack(tmp_path, "one", "", 3), other_pack(tmp_path, "two", "", 5)]

    force = in_force(packs, Plate())

    assert len(force.waits) == 2
    assert force.parallel == ()
