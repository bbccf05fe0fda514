"""The unit option names nameplate items, and refuses what it does not know."""

from __future__ import annotations

from contextlib import suppress
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import UsageError
from assistant.record import Role
from assistant.rules.applicability import Plate
from tui.unit_option import KEYS, ROLES, parse_unit


def test_every_key_sets_its_own_item() -> None:
    text = ",".join(f"{key}=v{key}" for key in KEYS)

    plate = parse_unit(text)

    assert plate == Plate(**{field: f"v{key}" for key, field in KEYS.items()})
    assert set(KEYS.values()) == set(Plate.model_fields)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("KX-24,borad=orange", "did you mean board"),
        ("KX-24,blue", "known: outdoor"),
        ("KX-24,outdoor=KX-30", "given twice"),
        ("indoor=", "has no value"),
        ("", "has no value"),
    ],
)
def test_a_slip_is_named_with_the_way_out(text: str, says: str) -> None:
    with pytest.raises(UsageError) as caught:
        parse_unit(text)

    assert says in f"{caught.value.what} {caught.value.hint}"


@given(st.text(max_size=60))
def test_any_text_gives_a_plate_or_a_usage_error(text: str) -> None:
    with suppress(UsageError):
        assert parse_unit(text) != Plate()


def test_the_roles_of_the_option_are_those_of_the_core() -> None:
    assert get_args(Role) == ROLES
