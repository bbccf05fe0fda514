"""Characters that look alike on a seven-segment display."""

from __future__ import annotations

import pytest

from assistant.signals.seven_segment import look_alike, plain_code


@pytest.mark.parametrize(
    ("one", "other"),
    [("b", "6"), ("O", "0"), ("S", "5"), ("l", "1"), ("U", "V"), ("D", "0")],
)
def test_the_known_pairs_look_alike_both_ways(one: str, other: str) -> None:
    assert look_alike(f"E{one}", f"E{other}")
    assert look_alike(f"E{other}", f"E{one}")


def test_looking_alike_does_not_reach_over_two_steps() -> None:
    # b is drawn like 6 and B like 8; a 6 and an 8 are never taken for each other.
    assert look_alike("b", "6")
    assert look_alike("B", "8")
    assert not look_alike("6", "8")


def test_codes_of_another_length_never_look_alike() -> None:
    assert not look_alike("E4", "E40")


def test_hyphens_and_case_do_not_count() -> None:
    assert plain_code("p-6") == plain_code("P 6") == "P6"
