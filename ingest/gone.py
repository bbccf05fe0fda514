"""Which documents of a folder have no file there any more: looks, changes nothing."""

from __future__ import annotations

import os
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from assistant.library.sayings import Place
from assistant.library.types import Document


def gone(
    documents: Sequence[Document],
    places: Mapping[str, Place],
    roots: Sequence[Path],
    found: Mapping[str, str],
) -> list[Document]:
    """Return the documents whose content is no longer under the named paths.

    A file that is there and cannot be read is not gone, nor is one in a folder that
    cannot be entered or an archive that cannot be opened. Documents from elsewhere
    are never among them.

    Parameters
    ----------
    documents : sequence of Document
        What the library holds and nothing of this run takes the place of.
    places : mapping of str to Place
        Where each file lay, by sha256.
    roots : sequence of Path
        What is being added.
    found : mapping of str to str
        The whole path of everything found in this run, to its sha256.
    """
    tops = [os.path.realpath(root) for root in roots]
    here = set(found.values())
    result = []
    for document in documents:
        place = places.get(document.sha256)
        if place is None or not place.path or document.sha256 in here:
            continue
        under = any(place.path.startswith(top.rstrip("/") + os.sep) for top in tops)
        if under and (place.path in found or _is_gone(place.path, found)):
            result.append(document)
    return result


def _is_gone(path: str, found: Collection[str]) -> bool:
    """Whether nothing lies at a path, and one could see it if it did."""
    if os.path.lexists(path):
        return False
    above = Path(path).parent
    while not os.path.lexists(above):
        above = above.parent
    if above.is_dir():
        return os.access(above, os.R_OK | os.X_OK)
    # An archive: it was opened when anything in it was found.
    return any(each.startswith(f"{above}{os.sep}") for each in found)


def still_lies(place: Place | None) -> bool | None:
    """Return whether a file still lies where it lay; None where that is not known."""
    if place is None or not place.path:
        return None
    try:
        return what_lies_at(place.path) is not None
    except OSError:
        return None  # its folder cannot be entered


def what_lies_at(path: str) -> Path | None:
    """Return the file at a path, or the archive it is in; None where nothing is.

    Raises
    ------
    OSError
        When a folder above it cannot be entered.
    """
    at = Path(path)
    while at != at.parent:
        if at.is_file():
            return at
        at = at.parent
    return None
