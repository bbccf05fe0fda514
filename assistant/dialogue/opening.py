"""Open a session over what lies on disk; read the library as the core sees it."""

from __future__ import annotations

from assistant.clock import Clock
from assistant.dialogue.session import Session
from assistant.errors import LibraryError
from assistant.jobs.store import JobStore
from assistant.library.encoder import load_encoder
from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.settings import Settings


def open_session(
    settings: Settings,
    clock: Clock,
    *,
    utc_offset_minutes: int = 0,
    vectors: bool = True,
) -> Session:
    """Open the library and the jobs of `settings`, without importing torch.

    Parameters
    ----------
    vectors : bool
        False searches by words only, until `search_by_meaning`: nothing is loaded.
    """
    problem: LibraryError | None = None
    library: LibraryStore | None = None
    search: Search | None = None
    try:
        library = LibraryStore.open(settings.library, read_only=True)
        search = Search(library, load_encoder(settings) if vectors else None)
    except LibraryError as error:
        problem = error
    return Session(
        jobs=JobStore.open(settings.jobs, clock=clock),
        library=library,
        search=search,
        clock=clock,
        utc_offset_minutes=utc_offset_minutes,
        problem=problem,
    )


def search_by_meaning(session: Session, settings: Settings) -> bool:
    """Load the encoder, then let the session search with it; False without one.

    Takes seconds; the session may be used meanwhile from another thread.

    Raises
    ------
    LibraryError
        When the exported encoder is damaged.
    """
    encoder = load_encoder(settings)
    if encoder is None:
        return False
    encoder.embed_query("ready")
    session.search_by(lambda library: Search(library, encoder))
    return True
