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
    settings: Settings, clock: Clock, *, utc_offset_minutes: int = 0
) -> Session:
    """Open the library and the jobs of `settings`, without importing torch."""
    problem: LibraryError | None = None
    library: LibraryStore | None = None
    search: Search | None = None
    try:
        library = LibraryStore.open(settings.library, read_only=True)
        search = Search(library, load_encoder(settings))
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
