"""Whether what a pack says applies to a unit: confirmed, possible or excluded."""

from __future__ import annotations

import fnmatch

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.record import Scope, SerialRange
from assistant.rules.applicability import Plate, match_both, match_scopes, missing_for
from assistant.rules.patterns import can_match, overlap, pattern_mistake, spelled_out
from assistant.rules.serials import compare_serial


def models(*patterns: str, **fields: object) -> Scope:
    return Scope.model_validate({"models": patterns, **fields})


@pytest.mark.parametrize(
    ("pattern", "model", "fits"),
    [
        ("QM-24", "qm 24", True),
        ("QM-24", "QM-24A", False),
        ("QM-24*", "QM24A-1", True),
        ("QM-24*", "QM-24", True),
        ("QM-#4", "QM-34", True),
        ("QM-#4", "QM-A4", False),
        ("QM-?4", "QM-A4", True),
        ("AB(C,D)12", "ABD12", True),
        ("AB(C,D)12", "ABE12", False),
        ("AB(C,)12", "AB12", True),
        ("QM-(24,36)*", "QM-36/B", True),
        ("*", "anything", False),
        ("QM.24", "QM-24", True),
        ("QM(24", "QM24", False),
    ],
)
def test_a_pattern_fits_models_as_written(pattern: str, model: str, fits: bool) -> None:
    assert can_match(pattern, model) is fits


def test_a_pattern_that_would_fit_everything_is_a_mistake() -> None:
    assert pattern_mistake("*") == "names no model"
    assert pattern_mistake("QM24, QM36") is not None
    assert pattern_mistake("QM((24,36))") is not None


def test_a_pattern_that_spells_thousands_is_refused() -> None:
    many = "(" + ",".join(str(n) for n in range(30)) + ")"

    assert pattern_mistake("QM" + many * 3) is not None
    assert spelled_out("QM" + many * 3) == ()


letters = st.text(alphabet="AB12", max_size=6)


@given(pattern=st.text(alphabet="AB12*?", max_size=7), model=letters)
def test_a_pattern_without_brackets_agrees_with_shell_patterns(
    pattern: str, model: str
) -> None:
    if pattern_mistake(pattern) is None:
        assert can_match(pattern, model) == fnmatch.fnmatchcase(model, pattern)


@given(one=st.text(alphabet="AB1*?", max_size=5), model=letters)
def test_patterns_that_share_a_model_overlap(one: str, model: str) -> None:
    if pattern_mistake(one) is None and pattern_mistake(model) is None:
        assert overlap(one, model) == can_match(one, model)


def test_no_scope_and_no_plate_leave_it_possible() -> None:
    assert match_scopes((), Plate(outdoor_model="QM-24")) == "possible"
    assert match_scopes((Scope(),), Plate(outdoor_model="QM-24")) == "possible"
    assert match_scopes((models("QM-24"),), Plate()) == "possible"


def test_any_known_model_may_fit() -> None:
    scope = (models("HX-24", "QM-24"),)

    assert match_scopes(scope, Plate(indoor_model="HX-24")) == "confirmed"
    assert match_scopes(scope, Plate(outdoor_model="QM-24")) == "confirmed"
    assert match_scopes(scope, Plate(outdoor_model="QM-36")) == "excluded"


def test_only_the_model_of_the_stated_unit_excludes() -> None:
    scope = (models("QM-24", unit_role="outdoor"),)

    assert match_scopes(scope, Plate(outdoor_model="QM-24")) == "confirmed"
    assert match_scopes(scope, Plate(outdoor_model="XX-24")) == "excluded"
    assert match_scopes(scope, Plate(indoor_model="HX-24")) == "possible"
    assert missing_for(scope, Plate(indoor_model="HX-24")) == ("outdoor_model",)


def test_a_model_told_without_its_unit_still_fits() -> None:
    scope = (
        models("QM-24", unit_role="outdoor"),
        models("HX-24", unit_role="indoor"),
    )

    assert match_scopes(scope, Plate(outdoor_model="HX-24")) == "confirmed"
    assert match_scopes(scope, Plate(outdoor_model="HX*")) == "possible"
    assert match_scopes(scope, Plate(outdoor_model="XX-24")) == "excluded"
    assert missing_for(scope, Plate(outdoor_model="XX-24")) == ()


def test_exclude_wins_over_models() -> None:
    scope = (models("QM-*", exclude=("QM-24X",)),)

    assert match_scopes(scope, Plate(outdoor_model="QM-24X")) == "excluded"
    assert match_scopes(scope, Plate(outdoor_model="QM-24")) == "confirmed"


def test_a_model_known_in_part_excludes_others_and_confirms_nothing() -> None:
    scope = (models("QM-24", "QM-36"),)

    assert match_scopes(scope, Plate(outdoor_model="QM-2?")) == "possible"
    assert match_scopes(scope, Plate(outdoor_model="QM*")) == "possible"
    assert match_scopes(scope, Plate(outdoor_model="4T*")) == "excluded"


def test_a_worn_plate_that_may_be_excluded_stays_possible() -> None:
    scope = (models("QM-2*", exclude=("QM-24",)),)

    assert match_scopes(scope, Plate(outdoor_model="QM-2?")) == "possible"


@pytest.mark.parametrize(
    ("stated", "read", "verdict"),
    [
        ("230", "208/230", "confirmed"),
        ("208/230 V", "230", "confirmed"),
        ("230", "220-240 V ~ 50 Hz", "confirmed"),
        ("230", "208-230-1-60", "confirmed"),
        ("115", "208/230", "excluded"),
        ("115", "115-1-60", "confirmed"),
        ("230", "115/230", "possible"),
        ("230", "unknown", "possible"),
        ("460", "230", "excluded"),
    ],
)
def test_voltages_are_compared_by_class(stated: str, read: str, verdict: str) -> None:
    scope = (Scope(voltage=stated),)

    assert match_scopes(scope, Plate(voltage=read)) == verdict


@pytest.mark.parametrize(
    ("field", "stated", "read", "verdict"),
    [
        ("phase", "1", "single phase", "confirmed"),
        ("phase", "3", "1-phase", "excluded"),
        ("board_mark", "orange dot", "Orange dot on the chip", "confirmed"),
        ("board_mark", "orange dot", "orange", "possible"),
        ("board_mark", "orange", "white label", "excluded"),
        ("capacity_class", "40/60 class", "60", "confirmed"),
        ("capacity_class", "24", "24000", "confirmed"),
        ("capacity_class", "24", "36k", "excluded"),
        ("market", "EU", "eu", "confirmed"),
        ("unit_role", "outdoor", "outdoor", "confirmed"),
    ],
)
def test_each_stated_field_must_agree(
    field: str, stated: str, read: str, verdict: str
) -> None:
    scope = (Scope.model_validate({field: stated}),)

    assert match_scopes(scope, Plate.model_validate({field: read})) == verdict
    assert match_scopes(scope, Plate()) == "possible"
    assert missing_for(scope, Plate()) == (field,)


@pytest.mark.parametrize(
    ("serial", "verdict"),
    [
        ("2313-00871", "excluded"),
        ("2314-00001", "confirmed"),
        ("A2401 55", "confirmed"),
        ("2402", "excluded"),
        ("9952", "excluded"),
        ("2399", "possible"),
        ("ABC", "possible"),
    ],
)
def test_a_serial_range_runs_from_week_to_week(serial: str, verdict: str) -> None:
    stated = SerialRange(first="2314", last="2401")

    assert compare_serial(stated, serial) == verdict


def test_serials_may_be_open_at_one_end_or_written_week_first() -> None:
    prior = SerialRange(format="WWYY", last="1423")

    assert compare_serial(prior, "1323") == "confirmed"
    assert compare_serial(prior, "0124") == "excluded"


def test_a_pack_and_its_item_must_both_agree() -> None:
    pack = (models("QM-*"),)
    item = (Scope(board_mark="orange"),)

    def both(**plate: str) -> str:
        return match_both(pack, item, Plate.model_validate(plate))

    assert both(outdoor_model="QM-24") == "possible"
    assert both(outdoor_model="QM-24", board_mark="orange") == "confirmed"
    assert both(outdoor_model="QM-24", board_mark="white") == "excluded"
    assert both(outdoor_model="XX-24", board_mark="orange") == "excluded"
    assert match_both(pack, (), Plate(outdoor_model="QM-24")) == "confirmed"
    assert match_both((), item, Plate(board_mark="orange")) == "confirmed"
    assert match_both((), (), Plate(outdoor_model="QM-24")) == "possible"


def test_what_would_decide_is_named_and_nothing_else() -> None:
    scopes = (
        models("QM-24", board_mark="orange"),
        models("XX-24", serial=SerialRange(first="2314")),
    )

    assert missing_for(scopes, Plate()) == (
        "outdoor_model",
        "indoor_model",
        "serial",
        "board_mark",
    )
    assert missing_for(scopes, Plate(outdoor_model="QM-24")) == ("board_mark",)
    decided = Plate(outdoor_model="QM-24", board_mark="orange")
    assert missing_for(scopes, decided) == ()


@given(
    models=st.lists(st.sampled_from(["QM-24", "QM-36", "QM-*"]), max_size=2),
    voltage=st.none() | st.sampled_from(["115", "230"]),
    mark=st.none() | st.sampled_from(["orange", "white"]),
    plate=st.fixed_dictionaries(
        {},
        optional={
            "outdoor_model": st.sampled_from(["QM-24", "XX-1"]),
            "voltage": st.sampled_from(["115", "208/230"]),
            "board_mark": st.sampled_from(["orange", "white"]),
        },
    ),
    dropped=st.sampled_from(["outdoor_model", "voltage", "board_mark"]),
)
def test_knowing_more_only_ever_decides(
    models: list[str],
    voltage: str | None,
    mark: str | None,
    plate: dict[str, str],
    dropped: str,
) -> None:
    scopes = (Scope(models=tuple(models), voltage=voltage, board_mark=mark),)
    less = {name: value for name, value in plate.items() if name != dropped}

    before = match_scopes(scopes, Plate.model_validate(less))
    after = match_scopes(scopes, Plate.model_validate(plate))

    assert before in (after, "possible")
