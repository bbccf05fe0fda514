"""Takes the members out of ZIP archives, as copies under names of our own.

A member's name is only shown, never used as a path, and no more is written than the
limits allow, whatever the archive says of itself. An archive inside an archive is
opened too; one inside that is left alone and said.
"""

from __future__ import annotations

import io
import stat
import zipfile
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath

from assistant.errors import InputError
from ingest.readers.base import MAX_FILE_BYTES

MAX_MEMBERS = 10_000
MAX_TOTAL_BYTES = 2_000_000_000
"""Of everything that one named path's archives give."""
MAX_RATIO = 200
"""Deflate itself ends near 1,032 to 1; literature, even as text, near 20 to 1."""
RATIO_FROM = 1_000_000
"""Smaller members may be packed as tightly as they like."""
MAX_READ = 8_000_000
"""Bytes that the list of members may take."""
DEEPEST = 2
CHUNK = 1 << 20

_MAGIC = (b"PK\x03\x04", b"PK\x05\x06")
_OFFICE = ("[Content_Types].xml", "mimetype", "META-INF/", "AndroidManifest.xml")
_LITTER = frozenset(("thumbs.db", "desktop.ini", "__macosx"))
_FAULTS = (
    zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, ValueError,
    RuntimeError,
)  # fmt: skip
_METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_UNPACK = "unpack the archive and add the files"


@dataclass(frozen=True, slots=True)
class Member:
    """A file that was in an archive."""

    copy: Path
    name: str
    """Inside the archive, POSIX separators; only to be shown."""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A member, or a whole archive inside, that was not taken out."""

    name: str
    reason: str
    hint: str = _UNPACK


@dataclass(slots=True)
class Room:
    """Where copies go, and how much may still be written there."""

    folder: Path
    left: int = MAX_TOTAL_BYTES
    made: int = 0

    def next(self) -> Path:
        """Return a new path, named by a number."""
        self.made += 1
        return self.folder / f"member-{self.made:06d}"


def is_archive(path: Path, name: str = "") -> bool:
    """Whether a file is a ZIP archive, and no office document or program in one.

    Parameters
    ----------
    path : Path
        The file.
    name : str, optional
        What it is called, where that is not the path's own name: a damaged archive
        is told from another damaged container by its name only.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            return False
        with path.open("rb") as file:
            if not file.read(len(_MAGIC[0])).startswith(_MAGIC):
                return False
            with zipfile.ZipFile(_Bounded(file)) as archive:
                names = archive.namelist()
    except OSError:
        return False
    except (*_FAULTS, InputError):
        return (name or path.name).lower().endswith(".zip")
    return not any(each.startswith(_OFFICE) for each in names)


def members(path: Path, room: Room, depth: int = 1) -> Iterator[Member | LeftOut]:
    """Take out every member that may be a document, sorted by name.

    Parameters
    ----------
    path : Path
        The archive.
    room : Room
        Takes the copies.
    depth : int
        1 for an archive that lies in a folder.

    Raises
    ------
    InputError
        It is damaged, or has too many members.
    """
    try:
        with (
            path.open("rb") as file,
            zipfile.ZipFile(_Bounded(file)) as archive,
        ):
            yield from _Taking(archive, room, depth).all()
    except _FAULTS as error:
        raise InputError(f"damaged archive ({_said(error)})", _UNPACK) from error


def _said(error: Exception) -> str:
    return str(error).rstrip(".") or type(error).__name__


class _Bounded(io.BufferedIOBase):
    """A file of which no one reading takes more than the list of members may."""

    def __init__(self, file: io.BufferedReader) -> None:
        self._file = file

    def read(self, size: int | None = -1, /) -> bytes:
        """Read so many bytes.

        Raises
        ------
        InputError
            That is more than a sound archive asks for.
        """
        if size is not None and size > MAX_READ:
            raise InputError("damaged archive (its list of members is too long)")
        # Without a size the comment behind the list is read: 64 KiB at most.
        return self._file.read(MAX_READ if size is None or size < 0 else size)

    def seek(self, offset: int, whence: int = 0, /) -> int:
        """Go to a place.

        Raises
        ------
        BadZipFile
            There is no such place.
        """
        if whence == io.SEEK_SET and offset < 0:
            raise zipfile.BadZipFile("it leads to a place before its start")
        return self._file.seek(offset, whence)

    def tell(self) -> int:
        """Return the place."""
        return self._file.tell()

    def seekable(self) -> bool:
        """Return true."""
        return True

    def readable(self) -> bool:
        """Return true."""
        return True


@dataclass(slots=True)
class _Taking:
    """One archive's members on their way out."""

    archive: zipfile.ZipFile
    room: Room
    depth: int
    seen: set[str] = field(default_factory=set)

    def all(self) -> Iterator[Member | LeftOut]:
        """Give every member or why it is left out."""
        infos = self.archive.infolist()
        if len(infos) > MAX_MEMBERS:
            raise InputError(
                f"{len(infos)} members; the limit is {MAX_MEMBERS}", _UNPACK
            )
        for info in sorted(infos, key=lambda each: (each.filename, each.header_offset)):
            name = _shown(info.filename)
            if info.is_dir() or name.endswith("/") or _is_litter(name):
                continue
            reason = self._refused(info, name)
            self.seen.add(name)
            if reason:
                yield LeftOut(name, reason)
            else:
                yield from self._taken(info, name)

    def _refused(self, info: zipfile.ZipInfo, name: str) -> str:
        kind = stat.S_IFMT(info.external_attr >> 16)
        checks = (
            (_climbs(name), "its name leads out of the archive"),
            (name in self.seen, "a second member of that name"),
            (kind == stat.S_IFLNK, "a link, not a file"),
            (kind not in {0, stat.S_IFREG, stat.S_IFLNK}, "not a regular file"),
            (bool(info.flag_bits & 1), "encrypted"),
            (info.compress_type not in _METHODS, "packed in a way that is not read"),
            (info.file_size > MAX_FILE_BYTES, _too_large(info.file_size)),
            (_bomb(info), "it swells on unpacking as no document does"),
            (info.file_size > self.room.left, _TOTAL),
        )
        return next((reason for holds, reason in checks if holds), "")

    def _taken(self, info: zipfile.ZipInfo, name: str) -> Iterator[Member | LeftOut]:
        copy = self.room.next()
        try:
            self._copy(info, copy)
        except _FAULTS as error:
            copy.unlink(missing_ok=True)
            yield LeftOut(name, f"damaged in the archive ({_said(error)})")
            return
        if not is_archive(copy, name):
            yield Member(copy, name)
            return
        try:
            yield from self._inner(copy, name)
        except InputError as error:
            yield LeftOut(name, error.what, error.hint or _UNPACK)
        finally:
            copy.unlink(missing_ok=True)

    def _inner(self, copy: Path, name: str) -> Iterator[Member | LeftOut]:
        if self.depth >= DEEPEST:
            yield LeftOut(name, "an archive in an archive in an archive")
            return
        for each in members(copy, self.room, self.depth + 1):
            inner = f"{name}/{each.name}"
            if isinstance(each, Member):
                yield Member(each.copy, inner)
            else:
                yield LeftOut(inner, each.reason, each.hint)

    def _copy(self, info: zipfile.ZipInfo, copy: Path) -> None:
        """Write a member out; never more than its list says and the room holds."""
        with self.archive.open(info) as source, copy.open("xb") as target:
            while chunk := source.read(CHUNK):
                self.room.left -= len(chunk)
                if self.room.left < 0:
                    raise ValueError(_TOTAL)
                target.write(chunk)


_TOTAL = f"the archives hold more than {MAX_TOTAL_BYTES // 10**9} GB unpacked"


def _too_large(size: int) -> str:
    return f"{size / 1e6:.0f} MB; the limit is {MAX_FILE_BYTES / 1e6:.0f} MB"


def _bomb(info: zipfile.ZipInfo) -> bool:
    return info.file_size > RATIO_FROM and info.file_size > MAX_RATIO * max(
        1, info.compress_size
    )


def _shown(name: str) -> str:
    """Return a member's name as it may be shown: one line, POSIX separators."""
    plain = name.replace("\\", "/")
    return "".join(char if char.isprintable() else "\ufffd" for char in plain)


def _climbs(name: str) -> bool:
    parts = PurePosixPath(name).parts
    drive = len(name) > 1 and name[1] == ":"
    return not parts or name.startswith("/") or drive or ".." in parts


def _is_litter(name: str) -> bool:
    parts = PurePosixPath(name).parts
    return any(
        part.lower() in _LITTER or (part.startswith((".", "~$")) and part != "..")
        for part in parts
    )
