"""Stand-ins for what is slow or heavy: no model, no time, no screen."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from assistant.errors import InputError
from assistant.library.types import Manifest


class HashEncoder:
    """Same text, same unit vector; texts that share words lie nearer.

    Each word gives a fixed direction drawn from its hash; a text is their sum. So
    the fake has a little of what an encoder is for, and nothing to load.
    """

    def __init__(self, dimension: int = 32, model: str = "hash") -> None:
        self.dimension = dimension
        self.model_hash = hashlib.sha256(f"{model} {dimension}".encode()).hexdigest()
        self.embedded = 0
        """How many passages were embedded so far."""
        self.manifest = Manifest(
            model=model,
            model_hash=self.model_hash,
            dimension=dimension,
            pooling="mean",
            normalise=True,
            query_prompt="",
            passage_prompt="",
            max_tokens=250,
            splitter="1",
        )

    def count_tokens(self, text: str) -> int:
        """Return the words of a text, and two for its ends."""
        return len(re.findall(r"\w+|[^\w\s]", text)) + 2

    def embed_query(self, text: str) -> NDArray[np.float32]:
        """Return the unit vector of a text, shape (dimension,); refuse a long one."""
        if self.count_tokens(text) > self.manifest.max_tokens:
            raise InputError("a text is too long to be embedded")
        total = np.zeros(self.dimension)
        for word in re.findall(r"\w+", text.casefold()) or [""]:
            total += self._direction(word)
        return (total / np.linalg.norm(total)).astype(np.float32)

    def embed_passages(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Return one unit vector a text, shape (n, dimension)."""
        self.embedded += len(texts)
        return np.stack([self.embed_query(text) for text in texts])

    def _direction(self, word: str) -> NDArray[np.float64]:
        seed = int.from_bytes(hashlib.sha256(word.encode()).digest()[:8], "big")
        return np.random.default_rng(seed).standard_normal(self.dimension)
