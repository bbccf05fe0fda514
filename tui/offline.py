"""Proof that the program has no way to the network: it imports none of its doors."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable

PACKAGES = ("assistant", "ingest", "tui")
NETWORK = frozenset(
    {"aiohttp", "ftplib", "grpc", "http", "httplib2", "httpx", "imaplib", "nntplib"}
    | {"poplib", "requests", "smtplib", "socket", "socketserver", "ssl", "telnetlib"}
    | {"urllib.request", "urllib3", "webbrowser", "websocket", "websockets", "xmlrpc"}
)
"""Modules through which Python programs reach a network."""


def network_imports() -> tuple[str, ...]:
    """Return every import of a network module in our own code, as `module: name`."""
    found = [
        f"{place}: {name}"
        for package in PACKAGES
        for place, source in _sources(files(package), package)
        for name in imported(source)
        if is_network(name)
    ]
    return tuple(sorted(found))


def imported(source: str) -> Iterator[str]:
    """Yield the dotted names that a module's text imports, wherever it does so."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def is_network(name: str) -> bool:
    """Whether a dotted name lies in a network module."""
    parts = name.split(".")
    return any(".".join(parts[:end]) in NETWORK for end in range(1, len(parts) + 1))


def modules_read() -> int:
    """Return how many modules the proof reads."""
    return sum(1 for package in PACKAGES for _ in _sources(files(package), package))


def _sources(folder: Traversable, dotted: str) -> Iterator[tuple[str, str]]:
    for entry in sorted(folder.iterdir(), key=lambda each: each.name):
        if entry.is_dir():
            yield from _sources(entry, f"{dotted}.{entry.name}")
        elif entry.name.endswith(".py"):
            yield f"{dotted}.{entry.name[:-3]}", entry.read_text("utf-8")
