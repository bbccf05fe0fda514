"""`faultleaf library set`: what a person says of a document, and takes back."""

from __future__ import annotations

import argparse
import os
import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import ANSWERED, UsageError
from tui.plain.console import Console
from tui.wiring import places, readable

if TYPE_CHECKING:
    from assistant.library.sayings import Saying
    from assistant.library.store import LibraryStore
    from assistant.record import Scope

TEXTS = ("title", "maker", "kind", "number", "revision", "date")
PERSON = "FAULTLEAF_PERSON"
_DATE = re.compile(r"(?:19|20)\d\d(?:-(?:0[1-9]|1[0-2])(?:-(?:0[1-9]|[12]\d|3[01]))?)?")


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what can be said of a document."""
    parser.add_argument("name", metavar="DOC", help="path, file name, title or id")
    for name in TEXTS:
        form = "YYYY-MM-DD" if name == "date" else "TEXT"
        parser.add_argument(f"--{name}", metavar=form)
    parser.add_argument(
        "--supersedes",
        action="append",
        metavar="DOC",
        help="a document it replaces as a whole, by number, title or id",
    )
    parser.add_argument(
        "--applies-to",
        action="append",
        metavar="MODELS",
        help="model patterns: KX-24*,KX-36 (* any run, # a digit, AB(C,D)12)",
    )
    parser.add_argument(
        "--serial",
        metavar="FIRST..LAST",
        help="with --applies-to: year and week of the first and last serial",
    )
    parser.add_argument(
        "--accept-applies",
        nargs="?",
        const="all",
        metavar="N,N",
        help="confirm the proposed units, or those of these numbers",
    )
    parser.add_argument(
        "--clear",
        nargs="?",
        const="all",
        metavar="FIELD,FIELD",
        help="take back what persons said: of everything, or of these fields",
    )
    parser.add_argument(
        "--by", metavar="NAME", help=f"who says so; else the variable {PERSON}"
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Keep what is said, or forget it; show how the document stands then."""
    from assistant.library.store import LibraryStore
    from tui.plain.as_json import record_fields
    from tui.plain.one_document import named_document, sheet_lines, sheet_of

    _refuse_nothing(args)
    person = readable(args.by or os.environ.get(PERSON, "")).strip()
    day = SystemClock().now().astimezone().date().isoformat()
    with LibraryStore.open(places(args).library) as store:
        document = named_document(store, args.name)
        with store.transaction():
            if args.clear is not None:
                store.clear_said(document.sha256, _fields(args.clear))
            sayings = list(_sayings(args, person, day, store))
            if sayings:
                store.put_said(document.sha256, sayings)
            if args.accept_applies is not None:
                chosen = _numbers(args.accept_applies)
                _need_person(person)
                store.accept_proposals(document.sha256, person, day, chosen)
        sheet = sheet_of(store, named_document(store, document.sha256))
    if console.json:
        console.document(record_fields(sheet))
    else:
        console.lines(sheet_lines(sheet, console.width))
    return ANSWERED


def _refuse_nothing(args: argparse.Namespace) -> None:
    """Raise when the call says nothing, or says what makes no sense together."""
    if args.serial is not None and args.applies_to is None:
        raise UsageError("--serial narrows --applies-to", "name the models too")
    said = [*TEXTS, "supersedes", "applies_to", "accept_applies", "clear"]
    if all(getattr(args, name) is None for name in said):
        raise UsageError(
            "nothing is said of the document", "faultleaf library set --help"
        )
    if args.accept_applies is not None and args.applies_to is not None:
        raise UsageError(
            "--accept-applies and --applies-to say the same thing twice", "use one"
        )


def _need_person(person: str) -> None:
    if not person:
        raise UsageError(
            "which units a document is for decides what search leaves out: "
            "somebody has to stand for it",
            f"add --by NAME, or set {PERSON}",
        )


def _sayings(
    args: argparse.Namespace, person: str, day: str, store: LibraryStore
) -> Iterator[Saying]:
    """Give every statement of the call."""
    from assistant.library.sayings import Origin, Saying

    for name in TEXTS:
        value = getattr(args, name)
        if value is not None:
            text = _checked(name, readable(value).strip())
            yield Saying(name, Origin.PERSON, text, person, day)
    if args.supersedes is not None:
        names = tuple(_number_of(readable(each), store) for each in args.supersedes)
        yield Saying("supersedes", Origin.PERSON, names, person, day)
    if args.applies_to is not None:
        _need_person(person)
        scope = _scope(args.applies_to, args.serial)
        yield Saying("applies_to", Origin.PERSON, (scope,), person, day)


def _number_of(name: str, store: LibraryStore) -> str:
    """Return the words by which a named document is known as replaced.

    One that is in the library is named by its identity, which fits no other.
    """
    from assistant.errors import InputError

    try:
        found = store.document(name)
    except InputError:
        found = None  # several of that name: the words stand as they are
    return found.document_id if found else name.strip()


def _checked(name: str, value: str) -> str:
    if not value:
        raise UsageError(f"--{name} is empty", f"to take it back: --clear {name}")
    if name == "date" and not _DATE.fullmatch(value):
        raise UsageError(f"{value!r} is no date", "write 2023, 2023-05 or 2023-05-08")
    return value


def _scope(models: list[str], serial: str | None) -> Scope:
    """Return the scope that model patterns and a run of serials spell."""
    from assistant.record import Scope, SerialRange
    from assistant.rules.patterns import pattern_mistake

    # A comma inside brackets parts alternatives, not models.
    named = tuple(
        part.strip()
        for text in models
        for part in re.split(r",(?![^()]*\))", readable(text))
        if part.strip()
    )
    wrong = [f"{each!r}: {why}" for each in named if (why := pattern_mistake(each))]
    if wrong or not named:
        raise UsageError(
            "; ".join(wrong) or "no model is named",
            "write --applies-to 'KX-24*,KX-36'",
        )
    if serial is None:
        return Scope(models=named)
    first, dots, last = serial.partition("..")
    ends = [each.strip() for each in (first, last)]
    if not dots or not any(ends) or not all(_is_week(each) for each in ends if each):
        raise UsageError(
            f"{serial!r} is no run of serials",
            "write --serial 2231.. for week 31 of 2022 and later",
        )
    run = SerialRange(first=ends[0] or None, last=ends[1] or None)
    return Scope(models=named, serial=run)


def _is_week(serial: str) -> bool:
    from assistant.record import SerialRange
    from assistant.rules.serials import serial_key

    return serial_key(SerialRange(), serial) is not None


def _fields(text: str) -> tuple[str, ...]:
    from assistant.library.sayings import FIELDS

    if text == "all":
        return FIELDS
    named = tuple(each.strip().replace("-", "_") for each in text.split(","))
    unknown = [each for each in named if each not in FIELDS]
    if unknown:
        raise UsageError(
            f"no field {', '.join(unknown)}", f"fields: {', '.join(FIELDS)}"
        )
    return named


def _numbers(text: str) -> tuple[int, ...]:
    if text == "all":
        return ()
    parts = [each.strip() for each in text.split(",")]
    if not all(each.isdecimal() for each in parts):
        raise UsageError(f"{text!r} names no proposals", "write --accept-applies 1,3")
    return tuple(int(each) for each in parts)
