"""Scopes of the two halves of one system, when only one half is known."""

from __future__ import annotations

from assistant.record import Scope
from assistant.rules.applicability import Plate, match_scopes

SCOPES = (
    Scope(models=("KX-24*",), unit_role="outdoor"),
    Scope(models=("KW-24*",), unit_role="indoor"),
)


def test_another_outdoor_unit_excludes_though_the_indoor_one_is_not_known() -> None:
    assert match_scopes(SCOPES, Plate(outdoor_model="QM-240")) == "excluded"
    assert match_scopes(SCOPES, Plate(indoor_model="QM-240")) == "excluded"


def test_one_half_that_fits_confirms() -> None:
    assert match_scopes(SCOPES, Plate(outdoor_model="KX-24A")) == "confirmed"
    mixed = Plate(outdoor_model="KX-24A", indoor_model="QM-240")
    assert match_scopes(SCOPES, mixed) == "confirmed"


def test_what_is_not_known_leaves_it_possible() -> None:
    assert match_scopes(SCOPES, Plate(voltage="230")) == "possible"
    assert match_scopes(SCOPES[1:], Plate(outdoor_model="QM-240")) == "possible"
    assert match_scopes(SCOPES, Plate(outdoor_model="KX-2?A")) == "possible"
    assert match_scopes((), Plate(outdoor_model="QM-240")) == "possible"
