"""Which rule packs in force rest on pages that are no longer in the library."""

from __future__ import annotations

from assistant.library.store import LibraryStore
from ingest.packs import prove_stored


def shaken_packs(store: LibraryStore) -> list[str]:
    """Return a warning for each pack in force of which a source does not stand.

    To be asked after documents were replaced or taken out; the packs stay in force.
    """
    told = []
    for pack in store.packs():
        errors = prove_stored(pack.id, store).errors
        if errors:
            told.append(
                f"rule pack {pack.id} is in force and does not stand any more: "
                f"{errors[0].what}; see all: faultleaf rules verify {pack.id}"
            )
    return told
