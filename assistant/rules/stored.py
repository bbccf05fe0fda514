"""A pack as it is stored: canonical JSON and its hash, read without YAML."""

from __future__ import annotations

import hashlib
import json

from pydantic import ValidationError

from assistant.errors import LibraryError
from assistant.rules.pack import Pack


def dump_pack(pack: Pack) -> str:
    """Return the pack as canonical JSON: sorted keys, no spaces, UTF-8 text."""
    data = pack.model_dump(mode="json", by_alias=True)
    return json.dumps(data, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def read_stored(payload: str) -> Pack:
    """Return the pack that `dump_pack` wrote.

    Raises
    ------
    LibraryError
        When the stored text is not a pack of this schema.
    """
    try:
        return Pack.model_validate_json(payload)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = ".".join(str(part) for part in first["loc"])
        raise LibraryError(
            f"a stored rule pack cannot be read ({place}: {first['msg']})",
            "add the pack again from its folder",
        ) from error


def pack_sha256(pack: Pack) -> str:
    """Return the SHA-256 of the canonical JSON, as 64 hex digits."""
    return hashlib.sha256(dump_pack(pack).encode()).hexdigest()
