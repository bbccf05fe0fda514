"""A dialogue as a file: who says what when, and what must then be answered."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Literal

from pydantic import AwareDatetime, ValidationError, model_validator

from assistant.dialogue.answer import Status
from assistant.errors import InputError
from assistant.facts import Fact
from assistant.record import Record, Role
from assistant.rules.applicability import Plate
from assistant.rules.messages import explain
from assistant.rules.yaml_lines import read_yaml
from assistant.units.quantity import Seconds


class ExpectedDecode(Record):
    """The decode: its verdict, and exactly these candidates in order."""

    verdict: Literal["exact", "several", "none", "not_decodable"]
    ids: tuple[str, ...] | None = None


class ExpectedWait(Record):
    """A wait in force, with its end where one is stated."""

    id: str
    state: Literal["running", "ready", "overdue", "start_unknown"] | None = None
    earliest: AwareDatetime | None = None
    usual: AwareDatetime | None = None
    give_up: AwareDatetime | None = None


class ExpectedStop(Record):
    """A protection-stop counter."""

    id: str
    state: Literal["locked", "open", "unknown"] | None = None
    left: int | None = None


class ExpectedVerdict(Record):
    """The verdict of a check."""

    check: str
    result: Literal["pass", "fail", "inconclusive", "no_verdict"]


class ExpectedPage(Record):
    """A page that some source of the answer cites: file name, physical page."""

    document: str
    page: int


class Expected(Record):
    """What an answer must hold; everything may be left out."""

    status: Status | None = None
    decode: ExpectedDecode | None = None
    waits: tuple[ExpectedWait, ...] = ()
    stops: tuple[ExpectedStop, ...] = ()
    causes: tuple[str, ...] = ()
    """The first causes, in order."""
    next_check: str | None = None
    verdicts: tuple[ExpectedVerdict, ...] = ()
    pages: tuple[ExpectedPage, ...] = ()
    question: str | None = None
    """Words that the question asked back holds."""
    says: tuple[str, ...] = ()
    """Words that stand in some text of the answer."""
    never: tuple[str, ...] = ()
    """Words that stand in none."""


class Turn(Record):
    """One turn: words, or facts from a form, some time after the one before."""

    after: Seconds | None = None
    say: str | None = None
    enter: tuple[Fact, ...] | None = None
    expect: Expected = Expected()

    @model_validator(mode="after")
    def _one_of_both(self) -> Turn:
        if (self.say is None) == (self.enter is None):
            raise ValueError("a turn has either `say` or `enter`")
        return self


class Script(Record):
    """A whole dialogue."""

    title: str
    about: str
    start: AwareDatetime
    utc_offset: int = 0
    """Minutes east of UTC at the place."""
    unit: Plate | None = None
    role: Role | None = None
    turns: tuple[Turn, ...]


def read_script(path: Path) -> Script:
    """Return the dialogue that a YAML file holds.

    Raises
    ------
    InputError
        With every mistake found, as ``file:line: what``.
    """
    written = read_yaml(path, path.name)
    if written.readable and not written.mistakes:
        try:
            # By way of JSON: there a list may stand for a tuple, a text for a time.
            return Script.model_validate_json(json.dumps(written.data))
        except ValidationError as error:
            found = explain(error, Script, (), written, "dialogue")
            written.mistakes.extend(found)
    mistakes = sorted(set(written.mistakes))
    raise InputError("\n".join(map(str, mistakes)), "correct the lines named")
