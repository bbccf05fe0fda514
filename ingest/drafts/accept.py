"""Takes drafted rows into a pack: row by row, by name, verified before it is written.

The pack is written first, file by file, each whole or not at all; only then are the
rows taken out of the draft. Killed in between, the same call finishes the move.
"""

from __future__ import annotations

import hashlib
import shutil
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from assistant.errors import InputError, PackError
from assistant.library.store import LibraryStore
from assistant.rules.mistakes import suggest
from ingest.drafts.folder import head_text, put, put_if_changed, read_draft, rewrite
from ingest.drafts.gather import item_of, shortcomings
from ingest.drafts.model import SEEN, Draft, DraftHead, DraftRow
from ingest.drafts.packing import Record, pack_texts
from ingest.drafts.settling import plain, settle
from ingest.packs import Proved, prove_folder

HEAD = "pack"
"""How the draft's own head is called where a doubt of it is settled."""


@dataclass(frozen=True, slots=True)
class Settling:
    """What a person says settles one doubt; `row` may name a whole printed table."""

    row: str
    doubt: str
    value: str


@dataclass(frozen=True, slots=True)
class Taken:
    """What a call of `accept` did."""

    accepted: tuple[str, ...]
    pack: Path
    left: int
    """Rows that the draft still holds."""
    doubtful: int
    """How many of those have doubts."""
    proved: Proved | None = None


def settle_in(
    folder: Path, settlings: Sequence[Settling], by: str, now: datetime
) -> tuple[str, ...]:
    """Settle doubts in a draft and write it; nothing where one of them fails.

    Returns
    -------
    tuple of str
        The rows that were settled.

    Raises
    ------
    InputError, PackError
        The draft cannot be read, or a value does not settle its doubt.
    """
    if not settlings:
        return ()
    draft = read_draft(folder)
    who = _signed(by, now)
    done: list[str] = []
    head = draft.head
    for each in settlings:
        if each.row == HEAD:
            head = _settled_head(head, each)
            done.append(HEAD)
            continue
        for row in _meant(draft, each):
            settle(row, each.doubt, each.value, who)
            done.append(row.id)
    whole = replace(draft, head=head)
    rewrite(folder, whole, done)
    if head is not draft.head:
        put(folder / "draft.yaml", head_text(head, folder.name))
    return tuple(dict.fromkeys(done))


def _signed(by: str, now: datetime) -> str:
    name = " ".join(by.split())
    if not name:
        raise InputError("nobody is named", "say who accepts: --by NAME")
    return f"{name} at {now.isoformat(timespec='minutes')}"


def _meant(draft: Draft, each: Settling) -> list[DraftRow]:
    """Return the row of that id, or the rows of that table that have the doubt."""
    own = [row for row in draft.rows if row.id == each.row]
    table = [
        row for row in draft.rows if row.table == each.row and each.doubt in row.doubts
    ]
    if not own and not table:
        raise _unknown(draft, each.row)
    return own or table


def _unknown(draft: Draft, name: str) -> InputError:
    ids = [row.id for row in draft.rows]
    return InputError(
        f"the draft has no row `{name}`",
        suggest(name, ids) or "faultleaf rules show DRAFT lists its rows",
    )


def _settled_head(head: DraftHead, each: Settling) -> DraftHead:
    if each.doubt not in head.doubts:
        named = ", ".join(head.doubts) or "none"
        what = f"`{HEAD}` has no doubt `{each.doubt}`; it has: {named}"
        raise InputError(what, "faultleaf rules show DRAFT lists the doubts")
    doubts = {name: why for name, why in head.doubts.items() if name != each.doubt}
    if each.value == SEEN and each.doubt == "applies_to" and head.applies_to:
        return replace(head, doubts=doubts)
    if each.doubt == "revision" and each.value != SEEN:
        document = {**head.document, "revision": each.value}
        return replace(head, document=document, doubts=doubts)
    if each.doubt == "applies_to" and each.value != SEEN:
        return replace(head, applies_to=_scopes(each.value), doubts=doubts)
    raise InputError(
        f"`{HEAD}`: `{each.doubt}` needs a value, not {each.value!r}",
        f"--settle {HEAD} {each.doubt}=VALUE with what the page has",
    )


def _scopes(value: str) -> tuple[dict[str, Any], ...]:
    """Return units written as names of models, or as scopes the way a pack has them."""
    held = plain(value)
    scopes = held if isinstance(held, tuple) else (held,)
    if all(isinstance(scope, dict) for scope in scopes):
        return scopes
    names = held if isinstance(held, tuple) else value.split(",")
    return ({"models": [str(name).strip() for name in names]},)


def accept(
    folder: Path,
    names: Sequence[str] | None,
    by: str,
    now: datetime,
    target: tuple[Path, LibraryStore],
) -> Taken:
    """Move rows of a draft into a pack that stands with them.

    Parameters
    ----------
    folder : Path
        The draft.
    names : sequence of str, or None
        Ids of rows; None for all of them, refused while any doubt stands.
    by, now
        Who accepts them and when: kept in the pack's record.
    target : Path and LibraryStore
        The pack's folder, made where there is none, and the library to prove it with.

    Raises
    ------
    InputError
        An unknown row, or rows whose doubts still stand. Nothing is changed.
    PackError
        The pack would not stand with these rows. Nothing is changed.
    """
    pack, store = target
    draft = read_draft(folder)
    who = _signed(by, now)
    rows = _chosen(draft, names)
    _refuse_doubtful(draft, rows, everything=names is None)
    records = [_record(row, by, now) for row in rows]
    texts = pack_texts(pack, draft.head, rows, who, records)
    proved = _proved(pack, texts, store)
    for name, text in texts.items():
        put_if_changed(pack / name, text)
    done = {row.id for row in rows}
    left = replace(draft, rows=tuple(r for r in draft.rows if r.id not in done))
    rewrite(folder, left, sorted(done))
    doubtful = sum(bool(row.doubts) for row in left.rows)
    accepted = tuple(row.id for row in rows)
    return Taken(accepted, pack, len(left.rows), doubtful, proved)


def _chosen(draft: Draft, names: Sequence[str] | None) -> list[DraftRow]:
    if names is None:
        return list(draft.rows)
    by_id = {row.id: row for row in draft.rows}
    for name in names:
        if name not in by_id:
            raise _unknown(draft, name)
    return [by_id[name] for name in dict.fromkeys(names)]


def _refuse_doubtful(
    draft: Draft, rows: Sequence[DraftRow], *, everything: bool
) -> None:
    """Refuse rows with doubts, and rows whose doubt was only taken out."""
    standing = [f"{HEAD}: {name}: {why}" for name, why in draft.head.doubts.items()]
    for row in rows:
        doubts = dict(row.doubts)
        if not row.is_point and not doubts:
            doubts = dict(shortcomings(row.file, item_of(row)))
        standing += [f"{row.id}: {name}: {why}" for name, why in doubts.items()]
    if not standing:
        return
    what = "doubts still stand, and nothing is accepted"
    if everything:
        what = "all rows at once are refused while doubts stand"
    hint = "--settle ROW DOUBT=VALUE with what the page has, or edit the draft"
    raise InputError("\n".join([what, *standing]), hint)


def _record(row: DraftRow, by: str, now: datetime) -> Record:
    said: dict[str, Any] = {**row.fields, "page": row.page, "quote": row.quote}
    digest = hashlib.sha256(repr(sorted(said.items())).encode()).hexdigest()
    at = now.isoformat(timespec="seconds")
    return Record(
        at, by.strip(), row.id, row.file, row.page, tuple(row.settled), digest
    )


def _proved(pack: Path, texts: dict[str, str], store: LibraryStore) -> Proved:
    """Prove the pack as it would be, in a copy beside nothing of the person's.

    Raises
    ------
    PackError
        With every mistake, told of the pack's own files.
    """
    with TemporaryDirectory(prefix="faultleaf-") as place:
        copy = Path(place) / pack.name
        if pack.is_dir():
            shutil.copytree(pack, copy)
        for name, text in texts.items():
            put(copy / name, text)
        own, there = pack.as_posix(), copy.as_posix()
        hint = "the pack and the draft are as they were: settle it, then accept again"
        try:
            proved = prove_folder(copy, store)
        except PackError as error:
            told = tuple(each.replace(there, own) for each in error.mistakes)
            raise PackError(told, hint) from None
        if proved.errors:
            errors = tuple(str(each).replace(there, own) for each in proved.errors)
            raise PackError(errors, hint)
        mistakes = tuple(
            replace(each, file=each.file.replace(there, own))
            for each in proved.mistakes
        )
        return Proved(proved.pack, mistakes)
