"""A text together with the question that it answers."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.language.times import Clock
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Pending, Vocabulary


@dataclass(frozen=True, slots=True)
class Asked:
    """A text with what it answers."""

    view: Tokens
    pending: Pending
    vocabulary: Vocabulary
    clock: Clock

    @property
    def subject(self) -> str:
        """Return what follows the colon of the slot."""
        return self.pending.about[1]
