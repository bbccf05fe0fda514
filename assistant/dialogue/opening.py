"""Open a session over what lies on disk; read the library as the core sees it."""

from __future__ import annotations

from assistant.clock import Clock
from assistant.dialogue.session import Searcher, Session
from assistant.errors import LibraryError
from assistant.jobs.store import JobStore
from assistant.library.store import LibraryStore
from assistant.library.types import Match, SearchResult
from assistant.settings import Settings


class SearchOnDemand:
    """A search that loads the encoder when something is searched for, not before.

    Most turns are answered by rules; they need not wait for a model.
    """

    def __init__(self, library: LibraryStore, settings: Settings) -> None:
        self._library = library
        self._settings = settings
        self._made: Searcher | None = None

    def search(self, query: str, *, match: Match, limit: int) -> SearchResult:
        """Find the passages that answer a question, as `Search.search`."""
        from assistant.library.encoder import load_encoder
        from assistant.library.search import Search

        if self._made is None:
            self._made = Search(self._library, load_encoder(self._settings))
        return self._made.search(query, match=match, limit=limit)


def open_session(
    settings: Settings, clock: Clock, *, utc_offset_minutes: int = 0
) -> Session:
    """Open the library and the jobs of `settings`, without importing torch."""
    problem: LibraryError | None = None
    library: LibraryStore | None = None
    search: SearchOnDemand | None = None
    try:
        library = LibraryStore.open(settings.library, read_only=True)
        search = SearchOnDemand(library, settings)
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
