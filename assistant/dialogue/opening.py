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

    def __init__(
        self, library: LibraryStore, settings: Settings, *, vectors: bool = True
    ) -> None:
        self._library = library
        self._settings = settings
        self._vectors = vectors
        self._made: Searcher | None = None

    def search(self, query: str, *, match: Match, limit: int) -> SearchResult:
        """Find the passages that answer a question, as `Search.search`."""
        from assistant.library.encoder import load_encoder
        from assistant.library.search import Search

        if self._made is None:
            encoder = load_encoder(self._settings) if self._vectors else None
            self._made = Search(self._library, encoder)
        return self._made.search(query, match=match, limit=limit)


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
    search: SearchOnDemand | None = None
    try:
        library = LibraryStore.open(settings.library, read_only=True)
        search = SearchOnDemand(library, settings, vectors=vectors)
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
    from assistant.library.encoder import load_encoder
    from assistant.library.search import Search

    encoder = load_encoder(settings)
    if encoder is None:
        return False
    encoder.embed_query("ready")
    session.search_by(lambda library: Search(library, encoder))
    return True
