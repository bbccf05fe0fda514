"""Reads a pack's folder; every mistake in it is told at once, each at its line.

YAML is read through one door, `assistant.rules.yaml_lines`; tables through
`assistant.rules.csv_tables`.
"""

from __future__ import annotations

from pathlib import Path as FilePath
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from assistant.errors import PackError
from assistant.record import Item
from assistant.rules.gathering import Gathering
from assistant.rules.messages import explain
from assistant.rules.mistakes import PackLines, suggest
from assistant.rules.pack import FILES, SCHEMA, Pack, PackHead
from assistant.rules.parsed import ParsedFiles
from assistant.rules.shapes import KINDS
from assistant.rules.stored import dump_pack, pack_sha256, read_stored
from assistant.rules.tables import fill_tables
from assistant.rules.whole import check_pack
from assistant.rules.yaml_lines import Written, read_yaml

__all__ = [
    "dump_pack",
    "load_pack",
    "load_pack_with_lines",
    "pack_sha256",
    "read_stored",
]

M = TypeVar("M", bound=BaseModel)

DRAFT_FILE = "draft.yaml"
"""What marks a folder as a draft: it answers nothing until its rows are accepted."""
HINT = "correct the lines named, then load the pack again"


def load_pack(folder: FilePath, kept: ParsedFiles | None = None) -> Pack:
    """Return the pack that a folder holds; files in `kept` are not parsed again.

    Raises
    ------
    PackError
        With every mistake found, as ``file:line: what; did you mean …``.
    """
    return load_pack_with_lines(folder, kept)[0]


def load_pack_with_lines(
    folder: FilePath, kept: ParsedFiles | None = None
) -> tuple[Pack, PackLines]:
    """Return the pack that a folder holds and where each value of it stands.

    Raises
    ------
    PackError
        As for `load_pack`.
    """
    found = Gathering(folder, kept)
    if (folder / DRAFT_FILE).exists():
        raise PackError(
            (f"{found.name(DRAFT_FILE)}:1: this is a draft, and a draft is no pack",),
            "accept its rows first: faultleaf rules accept DRAFT ROW... --by NAME",
        )
    if not (folder / "pack.yaml").is_file():
        raise PackError(
            (f"{found.name('pack.yaml')}:1: there is no such file",),
            "a pack is a folder with a pack.yaml in it",
        )
    _check_names(folder, found)
    _read_head(found)
    for name in FILES:
        _read_items(name, found)
    fill_tables(found)
    check_pack(found)
    if found.mistakes or found.head is None:
        told = sorted(set(found.mistakes))
        raise PackError(tuple(str(mistake) for mistake in told), HINT)
    pack = Pack.model_validate({"head": found.head, **found.composed()})
    return pack, found.pack_lines()


def _check_names(folder: FilePath, found: Gathering) -> None:
    """Report YAML files that nothing would read."""
    expected = ("pack.yaml", *(f"{name}.yaml" for name in FILES))
    for path in sorted(folder.iterdir()):
        if path.suffix.lower() in (".yaml", ".yml") and path.name not in expected:
            near = suggest(path.stem + ".yaml", expected)
            hint = near or f"known: {', '.join(expected)}"
            found.report(path.name, 1, "is not a file of a pack", hint)


def _yaml(file: str, found: Gathering) -> Written:
    return read_yaml(found.folder / file, found.name(file), found.kept)


def _read_head(found: Gathering) -> None:
    written = found.add(_yaml("pack.yaml", found))
    if not written.readable:
        return
    if not isinstance(written.data, dict):
        written.report(1, "is not keys and values", "start with `schema: 1`")
        return
    schema = written.data.get("schema")
    if isinstance(schema, int) and not isinstance(schema, bool) and schema > SCHEMA:
        written.report(
            written.lines[("schema",)],
            f"schema {schema} is newer than this program reads ({SCHEMA})",
            "install a newer faultleaf",
        )
        return
    found.head = _validate(PackHead, written.data, (), written, "pack")


def _read_items(name: str, found: Gathering) -> None:
    path = found.folder / f"{name}.yaml"
    if not path.exists():
        found.ids[name] = {}
        return
    written = found.add(_yaml(path.name, found))
    if not written.readable:
        return
    found.ids[name] = {}
    data = written.data if written.data is not None else ()
    if not isinstance(data, tuple):
        written.report(1, "is not a list of items", "start each item with `- id:`")
        return
    for place, raw in enumerate(data):
        _read_item(name, place, raw, found)


def _read_item(name: str, place: int, raw: object, found: Gathering) -> None:
    written = found.files[f"{name}.yaml"]
    line = written.lines[(place,)]
    if not isinstance(raw, dict):
        written.report(line, "an item has keys", "write `- id: ...`, then its keys")
        return
    if isinstance(raw.get("id"), str):
        found.note_id(name, raw["id"], place)
    label = found.label(name, place)
    model = _model(name, place, raw, written, label)
    if model is None:
        return
    item = _validate(model, raw, (place,), written, label)
    if item is not None:
        found.items[name][place] = item


def _model(
    name: str, place: int, raw: dict[str, Any], written: Written, label: str
) -> type[Item] | None:
    kinds = KINDS[name]
    kind = raw.get("kind")
    if isinstance(kind, str) and kind in kinds:
        return kinds[kind]
    among = f"one of {', '.join(kinds)}"
    if "kind" not in raw:
        written.report(written.lines[(place,)], f"{label}: `kind` is missing", among)
        return None
    line = written.lines[(place, "kind")]
    if (place, "kind") not in written.suspect:
        near = suggest(str(kind), kinds)
        hint = f"{near} {among}" if near else among
        written.report(line, f"{label}: unknown kind `{kind}`", hint)
    return None


def _validate(
    model: type[M], raw: object, base: tuple[int, ...], written: Written, label: str
) -> M | None:
    try:
        return model.model_validate(raw)
    except ValidationError as error:
        written.mistakes.extend(explain(error, model, base, written, label))
        return None
