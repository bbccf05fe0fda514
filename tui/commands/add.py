"""`faultleaf add`: literature and rule packs into the library."""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, WITH_WARNINGS
from tui.embedding import Embedded, embed_library
from tui.plain.console import Console
from tui.wiring import places

if TYPE_CHECKING:
    from ingest.outcome import Ingested
    from ingest.plan import Step

EPILOG = """\
A folder is walked; one that holds pack.yaml is a rule pack: it is proved against
the library and is in force only when every source stands. The first time, the
embedding model is prepared for this machine, which takes about a minute."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the paths and the ways to add them."""
    parser.formatter_class = argparse.RawDescriptionHelpFormatter
    parser.epilog = EPILOG
    parser.add_argument(
        "paths",
        nargs="+",
        type=Path,
        metavar="PATH",
        help="PDF, text, web page, table, archive, folder or pack",
    )
    parser.add_argument(
        "--plan", action="store_true", help="say what would be done, and do nothing"
    )
    parser.add_argument(
        "--no-embed", action="store_true", help="leave the vectors for later"
    )
    parser.add_argument(
        "--ocr",
        action=argparse.BooleanOptionalAction,
        help="read pages that are pictures; done where faultleaf[ocr] is installed",
    )
    parser.add_argument(
        "--prune",
        action="store_true",
        help="take out documents whose files are gone from the folders named",
    )
    parser.add_argument("--password", help="of encrypted PDF files")


def run(args: argparse.Namespace, console: Console) -> int:
    """Add, then embed; or say what adding would do."""
    if args.plan:
        return _plan(args, console)
    from assistant.library.store import LibraryStore
    from tui.adding import Ways, add_paths

    settings = places(args)
    with LibraryStore.open(settings.library, create=True) as store:
        result = add_paths(
            args.paths,
            store,
            settings,
            console,
            Ways(args.password, args.ocr, args.prune),
        )
        done = Embedded(0)
        if not args.no_embed:
            done = embed_library(store, settings, console)
    if console.json:
        console.document(_fields(result, done))
    else:
        console.lines(_lines(result, done, console.width))
    if done.warning and result.exit_code == ANSWERED:
        return WITH_WARNINGS
    return result.exit_code


def _fields(result: Ingested, done: Embedded) -> dict[str, object]:
    from dataclasses import asdict

    fields = asdict(result)
    fields["pages"] = {
        status.value: number for status, number in sorted(result.pages.items())
    }
    fields["warnings"] = [*result.warnings, *filter(None, (done.warning,))]
    return {**fields, "embedded": done.texts}


def _lines(result: Ingested, done: Embedded, width: int) -> list[str]:
    from tui.plain.text import count, numbers, wrap

    told = list(_outcomes(result))
    told += [("nearly the same: ", each) for each in result.near]
    told += [
        ("to do: ", f"{each.path}, page {numbers(each.pages)}: {each.way}")
        for each in result.remedies
    ]
    told += [("warning: ", each) for each in (*result.warnings, done.warning) if each]
    pages = ", ".join(
        f"{number} {name}" for name, number in sorted(result.pages.items())
    )
    if pages:
        told.append(("", f"pages: {pages}; {count(result.passages, 'passage')}"))
    if done.texts:
        told.append(("", f"embedded {count(done.texts, 'text')}"))
    return [line for lead, text in told for line in wrap(text, width, lead)]


def _outcomes(result: Ingested) -> Iterator[tuple[str, str]]:
    """Yield each file or pack with what became of it before it."""
    for word in ("added", "replaced", "renamed", "unchanged", "gone", "pruned"):
        yield from ((f"{word} ", path) for path in getattr(result, word))
    yield from (("  ", state) for state in result.states)
    yield from (("left out ", path) for path in result.duplicates)
    yield from (("rule pack in force: ", name) for name in result.packs)
    for refusal in result.refused:
        yield from (("refused: ", line) for line in refusal.reason.splitlines())
        if refusal.hint:
            yield "  try: ", refusal.hint


def _plan(args: argparse.Namespace, console: Console) -> int:
    from assistant.library.connection import FILE
    from assistant.library.store import LibraryStore
    from ingest.collect import collect
    from ingest.plan import plan

    folder = places(args).library
    with tempfile.TemporaryDirectory() as empty:
        # Without a library yet, the plan is made against an empty one.
        there = (folder / FILE).exists()
        where = folder if there else Path(empty)
        with (
            LibraryStore.open(where, create=not there, read_only=there) as store,
            collect(args.paths, leave_out=folder) as found,
        ):
            steps = plan(found, store, args.paths, prune=args.prune)
    if console.json:
        console.document({"plan": [_step_fields(step) for step in steps]})
    else:
        from tui.plain.text import wrap

        for step in steps:
            lead = f"{WORDS.get(step.action.value, step.action.value)} "
            console.lines(wrap(_step_text(step), console.width, lead))
    return ANSWERED


WORDS = {"replace": "new revision", "refuse": "refused", "pack": "rule pack"}
"""What a plan calls a step, where that is not the step's own word."""


def _step_text(step: Step) -> str:
    before = step.other
    told = {
        "replace": f"in place of {before.document_id}" if before else "",
        "rename": f"was {before.path}" if before else "",
        "gone": "its file is no longer there; --prune takes it out",
        "prune": "its file is no longer there; it is taken out",
    }
    notes = [told.get(step.action.value, ""), step.note]
    said = "; ".join(filter(None, notes))
    return f"{step.path} ({said})" if said else step.path


def _step_fields(step: Step) -> dict[str, object]:
    return {
        "action": step.action.value,
        "document": step.path,
        "document_id": step.sha256[:12],
        "note": step.note,
        "before": step.other.document_id if step.other else "",
    }
