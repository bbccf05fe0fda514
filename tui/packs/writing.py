"""Begins a pack, and writes the JSON Schemas that editors help with."""

from __future__ import annotations

import argparse
import getpass
import json
import re
import shlex
from pathlib import Path

from assistant.clock import SystemClock
from assistant.errors import ANSWERED, InputError, UsageError
from tui.plain.console import Console


def new_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the words of `rules new`."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the pack's folder")
    parser.add_argument("--author", metavar="NAME", help="who writes it")


def new(args: argparse.Namespace, console: Console) -> int:
    """Write a commented starter pack into a new folder.

    Raises
    ------
    InputError
        The folder holds something already.
    UsageError
        No id can be made of its name.
    """
    from assistant.rules.starter import SCHEMAS, starter_texts

    folder: Path = args.folder
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise InputError(f"{folder} is there already", "name a folder that is not")
    called = "-".join(re.findall(r"[a-z0-9]+", folder.resolve().name.casefold()))
    if not called:
        what = f"{folder}: no id can be made of this name"
        raise UsageError(what, "use letters or digits")
    author = args.author or _user()
    today = SystemClock().now().date().isoformat()
    texts = starter_texts(str(folder), called, author, today)
    texts |= {f"{SCHEMAS}/{name}": text for name, text in schema_texts().items()}
    for name, text in texts.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    if console.json:
        fields = {"pack": called, "folder": str(folder), "files": sorted(texts)}
        console.document(fields)
    else:
        console.line(f"{folder}: pack {called}, by {author}; every file is commented")
        console.line(f"next: faultleaf rules verify {shlex.quote(str(folder))}")
    return ANSWERED


def _user() -> str:
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return "this shop"


def schema_texts(only: str | None = None) -> dict[str, str]:
    """Return file name -> text of the schemas, one for each file of a pack."""
    from assistant.rules.schema import NAMES, schema_of

    names = NAMES if only is None else (only,)
    return {
        f"{name}.schema.json": json.dumps(schema_of(name), indent=2, ensure_ascii=False)
        + "\n"
        for name in names
    }


def schema_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the words of `rules schema`."""
    parser.add_argument("--file", metavar="NAME", help="print one file's, as signals")
    parser.add_argument(
        "--out", type=Path, metavar="FOLDER", help="write one file each into a folder"
    )


def schema(args: argparse.Namespace, console: Console) -> int:
    """Print a schema, or write them into a folder."""
    if args.out is None and args.file is None:
        hint = "--file signals prints one; --out FOLDER writes them all"
        raise UsageError("neither a file nor a folder is named", hint)
    _check_name(args.file)
    texts = schema_texts(args.file)
    if args.out is None:
        told = json.loads(next(iter(texts.values())))
        if console.json:
            console.document({"file": args.file, "json_schema": told})
        else:
            console.lines(next(iter(texts.values())).splitlines())
        return ANSWERED
    args.out.mkdir(parents=True, exist_ok=True)
    for name, text in texts.items():
        (args.out / name).write_text(text, encoding="utf-8")
    if console.json:
        console.document({"folder": str(args.out), "files": sorted(texts)})
    else:
        console.lines(f"{args.out / name}" for name in sorted(texts))
    return ANSWERED


def _check_name(name: str | None) -> None:
    from assistant.rules.mistakes import suggest
    from assistant.rules.schema import NAMES

    if name is not None and name not in NAMES:
        hint = suggest(name, NAMES) or f"one of {', '.join(NAMES)}"
        raise UsageError(f"a pack has no file {name!r}", hint)
