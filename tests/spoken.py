"""A job told in words, driven through the parser and `step` on an invented pack."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from datetime import timedelta
from pathlib import Path
from types import MappingProxyType

from assistant.dialogue.answer import Answer, WaitShown
from assistant.dialogue.view import View
from assistant.dialogue.vocabulary import pending, vocabulary
from assistant.dialogue.words import told
from assistant.language.understand import understand
from assistant.record import Role
from assistant.rules.loader import load_pack
from tests.conversation import Talk
from tests.pack_folders import write_pack
from tests.waits_of_each_kind import pack_files


class Spoken:
    """A conversation about a unit whose pack has waits of some kinds only."""

    def __init__(
        self,
        folder: Path,
        kinds: Collection[str],
        role: Role = "technician",
        stopped_by: Mapping[str, str] = MappingProxyType({}),
    ) -> None:
        pack = load_pack(write_pack(folder / "quellmar", pack_files()))
        waits = tuple(
            one.model_copy(update={"stopped_by": stopped_by.get(one.kind)})
            for one in pack.waits
            if one.kind in kinds
        )
        self.talk = Talk([pack.model_copy(update={"waits": waits})], role=role)

    def say(self, text: str, *, after: float = 1) -> Answer:
        """Say something some minutes later; the job opened at 08:30 UTC."""
        situation = self.talk.situation
        now = self.talk.clock.now() + timedelta(minutes=after)
        view = View(situation.state, situation.knowledge, now)
        understood = understand(
            text,
            now=now,
            pending=pending(situation.state),
            vocabulary=vocabulary(view),
        )
        return self.talk.tell(
            told(situation.state, text, understood), after_minutes=after
        )


def only(answer: Answer) -> WaitShown:
    """Return the one wait of an answer."""
    (wait,) = answer.waits
    return wait


def texts(answer: Answer) -> str:
    """Return every statement of an answer, and its question."""
    lines = [statement.text for statement in answer.statements]
    lines += [answer.question.text] if answer.question else []
    return "\n".join(lines)
