"""`faultleaf remove`: take documents or rule packs out of the library."""

from __future__ import annotations

import argparse

from assistant.errors import ANSWERED, WITH_WARNINGS, InputError
from tui.plain.console import Console
from tui.plain.text import wrap
from tui.wiring import places


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what is removed."""
    parser.add_argument(
        "names",
        nargs="+",
        metavar="DOC",
        help="a document's path, file name, title or identity, or a rule pack's id",
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Remove every named thing, or nothing when one of them is not there."""
    from assistant.library.store import LibraryStore
    from ingest.shaken import shaken_packs

    with LibraryStore.open(places(args).library) as store:
        packs = {pack.id for pack in store.packs()}
        found = [(name, store.document(name)) for name in args.names]
        unknown = [
            name for name, document in found if not document and name not in packs
        ]
        if unknown:
            raise InputError(
                f"not in the library: {', '.join(map(repr, unknown))}",
                "`faultleaf library` lists what is",
            )
        documents = [document for _, document in found if document]
        gone = [name for name, document in found if not document]
        with store.transaction():
            for document in documents:
                store.remove_document(document.sha256)
            for name in gone:
                store.remove_pack(name)
        warnings = shaken_packs(store) if documents else []
    if console.json:
        paths = [document.path for document in documents]
        console.document({"documents": paths, "packs": gone, "warnings": warnings})
    else:
        console.lines(
            f"removed {each.path} ({each.title}, {each.document_id})"
            for each in documents
        )
        console.lines(f"removed rule pack {name}" for name in gone)
        for warning in warnings:
            console.lines(wrap(warning, console.width, "warning: "))
    return WITH_WARNINGS if warnings else ANSWERED
