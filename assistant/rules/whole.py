"""What a pack must keep as a whole: names that resolve, sources, who wrote it."""

from __future__ import annotations

from assistant.checks.kinds import ResistanceTable
from assistant.record import Item
from assistant.rules.gathering import Gathering
from assistant.rules.item_rules import check_item
from assistant.rules.mistakes import Mistake, Path, nearest, suggest
from assistant.rules.pack import PackHead
from assistant.rules.references import unresolved
from assistant.rules.scope_rules import check_scopes


def check_pack(found: Gathering) -> None:
    """Report everything that only shows once all files are read."""
    if found.head is not None:
        _check_head(found, found.head)
    for name, placed in found.items.items():
        for place, item in sorted(placed.items()):
            for finding in check_item(item):
                _report(found, name, place, finding.path, (finding.what, finding.hint))
            _check_source(found, name, place, item)
    known = {file: frozenset(ids) for file, ids in found.ids.items()}
    for name in found.ids:
        for place, raw in found.raw_items(name):
            _check_references(found, name, place, raw, known)


def _report(
    found: Gathering, name: str, place: int, path: Path, told: tuple[str, str]
) -> None:
    line = found.line(name, place, *path)
    label = found.label(name, place)
    found.report(f"{name}.yaml", line, f"{label}: {told[0]}", told[1])


def _check_references(
    found: Gathering,
    name: str,
    place: int,
    raw: dict[str, object],
    known: dict[str, frozenset[str]],
) -> None:
    pack_id = found.head.id if found.head is not None else ""
    for reference in unresolved(name, raw, known, pack_id):
        ids = known[reference.file]
        told = f"`{reference.name}` is not an id in {reference.file}.yaml"
        hint = suggest(reference.name, ids) or _elsewhere(known, reference.name)
        _report(found, name, place, reference.path, (told, hint))


def _elsewhere(known: dict[str, frozenset[str]], name: str) -> str:
    for file, ids in known.items():
        if name in ids:
            return f"it is an id in {file}.yaml"
    return ""


def _check_source(found: Gathering, name: str, place: int, item: Item) -> None:
    head = found.head
    if head is None:
        return
    if item.source is not None and item.source.doc not in head.documents:
        hint = suggest(item.source.doc, head.documents) or _documents(head)
        told = f"`{item.source.doc}` is not a document of this pack"
        _report(found, name, place, ("source", "doc"), (told, hint))
    if head.kind == "maker" and item.source is None and not _by_table(item):
        told = "a maker's rule names its source"
        hint = 'add `source: {doc: ..., page: ..., quote: "..."}`'
        _report(found, name, place, (), (told, hint))


def _documents(head: PackHead) -> str:
    named = ", ".join(sorted(head.documents))
    return f"documents: {named}" if named else "name it under `documents` in pack.yaml"


def _by_table(item: Item) -> bool:
    """Return whether every row of a sensor's table carries its own source."""
    return (
        isinstance(item, ResistanceTable)
        and bool(item.points)
        and all(point.doc and point.page and point.quote for point in item.points)
    )


def _check_head(found: Gathering, head: PackHead) -> None:
    if head.kind == "shop":
        for field, meaning in (("author", "who wrote it"), ("date", "when")):
            if getattr(head, field) is None:
                _head(
                    found,
                    ("kind",),
                    f"a shop pack says {meaning}",
                    f"add `{field}:`",
                )
    if head.kind == "maker" and not head.documents:
        _head(found, ("kind",), "a maker pack names its `documents`", "")
    for finding in check_scopes(head.applies_to, ("applies_to",)):
        _head(found, finding.path, finding.what, finding.hint)
    for alias, document in head.documents.items():
        for place, older in enumerate(document.supersedes):
            path: Path = ("documents", alias, "supersedes", place)
            _known_alias(found, head, older, path)
    _check_supersession(found, head)


def _check_supersession(found: Gathering, head: PackHead) -> None:
    own = frozenset(called for ids in found.ids.values() for called in ids)
    whole = len(found.ids) == len(found.items)
    for place, entry in enumerate(head.supersedes):
        at: Path = ("supersedes", place)
        _known_alias(found, head, entry.doc, (*at, "doc"))
        names: list[tuple[str, Path]] = [(entry.by, (*at, "by"))]
        names += [
            (row, (*at, "rows", number))
            for number, row in enumerate(entry.rows)
            if "/" not in row or row.startswith(f"{head.id}/")
        ]
        for called, path in names:
            short = called.removeprefix(f"{head.id}/")
            if whole and short not in own:
                told = f"`{called}` is not an id of this pack"
                hint = suggest(short, own) or "write another pack's row as `pack/id`"
                _head(found, path, told, hint)


def _known_alias(found: Gathering, head: PackHead, alias: str, path: Path) -> None:
    if alias not in head.documents:
        told = f"`{alias}` is not a document of this pack"
        _head(found, path, told, suggest(alias, head.documents) or _documents(head))


def _head(found: Gathering, path: Path, what: str, hint: str) -> None:
    written = found.files["pack.yaml"]
    line = nearest(written.lines, path)
    found.other.append(Mistake(written.file, line, what, hint))
