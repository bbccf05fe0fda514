"""What the files of a draft hold, as a person may have edited them."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import ConfigDict, Field

from assistant.record import Record, Source
from ingest.drafts.model import DraftRow, Fields

SCHEMA: Literal[1] = 1


class About(Record):
    """What stands under `draft` in a row: all that is no rule."""

    confidence: float = 0.0
    table: str = ""
    left_out: tuple[str, ...] = ()
    settled: tuple[str, ...] = ()
    doubts: dict[str, str] = Field(default_factory=dict)


class WrittenRow(Record):
    """A row with its source; the keys of the rule itself may still be wrong."""

    model_config = ConfigDict(extra="ignore")

    id: str = Field(min_length=1)
    source: Source
    draft: About = About()

    def as_row(self, file: str, fields: Fields) -> DraftRow:
        """Return the row with the fields of its rule."""
        return DraftRow(
            file,
            self.id,
            fields,
            self.source.page,
            self.source.quote,
            self.draft.confidence,
            dict(self.draft.doubts),
            self.draft.table,
            list(self.draft.left_out),
            list(self.draft.settled),
        )


class WrittenHead(Record):
    """`draft.yaml`."""

    schema_number: Literal[1] = Field(alias="schema")
    id: str
    title: str
    document: dict[str, str]
    applies_to: tuple[dict[str, Any], ...] = ()
    doubts: dict[str, str] = Field(default_factory=dict)
