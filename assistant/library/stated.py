"""Statements about documents, where their files lie, and their earlier states."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from assistant.errors import InputError, LibraryError
from assistant.library import rows
from assistant.library.documents import SHORTEST_PREFIX, Documents
from assistant.library.sayings import (
    FIELDS,
    Earlier,
    Origin,
    Place,
    Proposal,
    Saying,
    accepted,
    dumped,
    loaded,
    settled,
)
from assistant.library.types import ID_DIGITS, Document
from assistant.record import Scope


class Stated(Documents):
    """The part of the library that knows who says what of its documents."""

    def said(self, sha256: str) -> tuple[Saying, ...]:
        """Return every statement about a document, by field, then source."""
        found = self.query(
            "SELECT field, source, value, person, day FROM said JOIN document "
            "ON document.id = said.document WHERE sha256 = ? ORDER BY field, source",
            (sha256,),
        )
        return tuple(
            Saying(row[0], Origin(row[1]), loaded(row[0], row[2]), row[3], row[4])
            for row in found
        )

    def put_said(self, sha256: str, sayings: Sequence[Saying]) -> Document:
        """Keep statements, each in place of another of its field and source.

        Returns
        -------
        Document
            As it now stands.

        Raises
        ------
        InputError
            A field that nothing can be said of.
        LibraryError
            When the document is not in the library.
        """
        unknown = sorted({each.field for each in sayings} - set(FIELDS))
        if unknown:
            raise InputError(
                f"nothing can be said of {', '.join(unknown)}",
                f"fields: {', '.join(FIELDS)}",
            )
        with self.transaction() as connection:
            key = self._key(sha256)
            fields = {each.field for each in sayings}
            persons = {each.field for each in sayings if each.source is Origin.PERSON}
            self._keep_unsaid(sha256, key, persons)
            connection.executemany(
                "INSERT OR REPLACE INTO said VALUES (?,?,?,?,?,?)",
                [
                    (
                        key,
                        each.field,
                        each.source.value,
                        dumped(each.value),
                        each.person,
                        each.day,
                    )
                    for each in sayings
                ],
            )
            return self._settle(sha256, fields)

    def clear_said(self, sha256: str, fields: Collection[str] = FIELDS) -> Document:
        """Forget what a person said of these fields; what was read counts again."""
        with self.transaction() as connection:
            key = self._key(sha256)
            spoken = {
                each.field
                for each in self.said(sha256)
                if each.source is Origin.PERSON and each.field in fields
            }
            connection.executemany(
                "DELETE FROM said WHERE document = ? AND field = ? AND source = ?",
                [(key, field, Origin.PERSON.value) for field in sorted(spoken)],
            )
            return self._settle(sha256, spoken)

    def _keep_unsaid(self, sha256: str, key: int, fields: Collection[str]) -> None:
        """Keep what a document holds without anybody's word, before one is given."""
        spoken = {each.field for each in self.said(sha256)}
        held = self._held(sha256)
        self.connection.executemany(
            "INSERT INTO said VALUES (?,?,?,?,'','')",
            [
                (key, field, Origin.READING.value, dumped(value))
                for field in sorted(set(fields) - spoken)
                if (value := getattr(held, field))
            ],
        )

    def _held(self, sha256: str) -> Document:
        found = self.query(
            f"SELECT {rows.DOCUMENT} FROM document WHERE sha256 = ?",  # noqa: S608 - our own column list
            (sha256,),
        )
        return rows.document(found[0])

    def _settle(self, sha256: str, fields: Collection[str]) -> Document:
        held = self._held(sha256)
        stands = settled(held, self.said(sha256), fields)
        if stands != held:
            self.update_document(stands)
        return stands

    def _key(self, sha256: str) -> int:
        found = self.query("SELECT id FROM document WHERE sha256 = ?", (sha256,))
        if not found:
            raise LibraryError(
                f"no document {sha256[:ID_DIGITS]} is in the library",
                "faultleaf add PATH…",
            )
        return int(found[0][0])

    # proposals

    def proposals(self, sha256: str) -> tuple[Proposal, ...]:
        """Return the units a document seems to be for, in order of its pages."""
        found = self.query(
            "SELECT scope, page, quote FROM proposal JOIN document "
            "ON document.id = proposal.document WHERE sha256 = ? ORDER BY nth",
            (sha256,),
        )
        return tuple(
            Proposal(Scope.model_validate_json(row[0]), row[1], row[2]) for row in found
        )

    def put_proposals(self, sha256: str, proposals: Sequence[Proposal]) -> None:
        """Keep proposals in place of all there were."""
        with self.transaction() as connection:
            key = self._key(sha256)
            connection.execute("DELETE FROM proposal WHERE document = ?", (key,))
            connection.executemany(
                "INSERT INTO proposal VALUES (?,?,?,?,?)",
                [
                    (key, nth, _scope_json(each.scope), each.page, each.quote)
                    for nth, each in enumerate(proposals, start=1)
                ],
            )

    def accept_proposals(
        self, sha256: str, person: str, day: str, chosen: Collection[int] = ()
    ) -> Document:
        """Make proposals, counted from 1, a person's own statement; all if none named.

        Raises
        ------
        InputError
            There is no proposal, or none of that number.
        """
        known = self.proposals(sha256)
        wrong = sorted(set(chosen) - set(range(1, len(known) + 1)))
        if wrong or not known:
            raise InputError(
                f"no proposal {', '.join(map(str, wrong))}" if wrong else
                "no page says which units this document is for",
                "state them: faultleaf library set DOC --applies-to MODEL",
            )  # fmt: skip
        taken = [
            each
            for nth, each in enumerate(known, start=1)
            if not chosen or nth in chosen
        ]
        value = accepted(taken)
        saying = Saying("applies_to", Origin.PERSON, value, person, day)
        return self.put_said(sha256, [saying])

    # places

    def places(self) -> Mapping[str, Place]:
        """Return where the files lay, by sha256."""
        found = self.query(
            "SELECT sha256, origin, place.path FROM place JOIN document "
            "ON document.id = place.document ORDER BY sha256"
        )
        return {row[0]: Place(row[1], row[2]) for row in found}

    def put_place(self, sha256: str, place: Place) -> None:
        """Keep where a document's file lies."""
        with self.transaction() as connection:
            connection.execute(
                "INSERT OR REPLACE INTO place VALUES (?,?,?)",
                (self._key(sha256), place.origin, place.path),
            )

    # states of one file

    def earlier(self, sha256: str) -> tuple[Earlier, ...]:
        """Return the earlier states of a document, by date and revision."""
        found = self.query(
            "SELECT earlier.sha256, earlier.title, earlier.revision, earlier.date "
            "FROM earlier JOIN document ON document.id = earlier.document "
            "WHERE document.sha256 = ? "
            "ORDER BY earlier.date, earlier.revision, earlier.sha256",
            (sha256,),
        )
        return tuple(Earlier(*row) for row in found)

    def put_earlier(self, sha256: str, states: Sequence[Earlier]) -> None:
        """Note earlier states of a document; one that is back in force is none."""
        with self.transaction() as connection:
            key = self._key(sha256)
            connection.executemany(
                "INSERT OR REPLACE INTO earlier VALUES (?,?,?,?,?)",
                [
                    (each.sha256, key, each.title, each.revision, each.date)
                    for each in states
                    if each.sha256 != sha256
                ],
            )
            connection.execute("DELETE FROM earlier WHERE sha256 = ?", (sha256,))

    def state_after(self, name: str) -> Document | None:
        """Return the document that took the place of one, named by its identity."""
        prefix = name.lower()
        if len(prefix) < SHORTEST_PREFIX:
            return None
        found = self.query(
            "SELECT document.sha256 FROM earlier JOIN document ON document.id = "
            "earlier.document WHERE substr(earlier.sha256, 1, ?) = ?",
            (len(prefix), prefix),
        )
        named = {row[0] for row in found}
        return self.document(named.pop()) if len(named) == 1 else None

    # texts

    def units(self) -> Mapping[str, frozenset[str]]:
        """Return the hashes of what each document says, piece by piece, by sha256.

        A piece is a line, or a passage that is one line.
        """
        found = self.query(
            "SELECT sha256, line.text_hash FROM line JOIN passage ON passage.id = "
            "line.passage JOIN document ON document.id = passage.document "
            "UNION SELECT sha256, text_hash FROM passage JOIN document ON document.id "
            "= passage.document WHERE passage.id NOT IN (SELECT passage FROM line)"
        )
        result: dict[str, set[str]] = {}
        for sha256, text in found:
            result.setdefault(sha256, set()).add(text)
        return {name: frozenset(result[name]) for name in sorted(result)}


def _scope_json(scope: Scope) -> str:
    return scope.model_dump_json(exclude_defaults=True)
