"""How it is said that the literature does not answer."""

from __future__ import annotations

import pytest

from assistant.dialogue.replies import nothing_found
from assistant.jobs.events import Found


@pytest.mark.parametrize(
    ("searched", "says"),
    [
        (1, "Not found in the 1 document searched."),
        (7, "Not found in the 7 documents searched."),
    ],
)
def test_what_was_searched_is_counted(searched: int, says: str) -> None:
    assert says in nothing_found(Found(query="a lamp", searched=searched))
