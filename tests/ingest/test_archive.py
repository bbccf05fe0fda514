"""What is taken out of archives, and what is not."""

from __future__ import annotations

import io
import stat
import zipfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import InputError
from ingest.readers import archive
from ingest.readers.archive import LeftOut, Member, Room, is_archive, members


def zipped(path: Path, files: dict[str, bytes]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in files.items():
            made.writestr(name, data)
    return path


def packed(files: dict[str, bytes]) -> bytes:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as inner:
        for name, data in files.items():
            inner.writestr(name, data)
    return made.getvalue()


@pytest.fixture
def room(tmp_path: Path) -> Room:
    folder = tmp_path / "aside"
    folder.mkdir()
    return Room(folder)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "shelf.zip"


def taken(path: Path, room: Room) -> dict[str, bytes]:
    found = list(members(path, room))
    return {
        each.name: each.copy.read_bytes() for each in found if isinstance(each, Member)
    }


def left(path: Path, room: Room) -> dict[str, str]:
    found = list(members(path, room))
    return {each.name: each.reason for each in found if isinstance(each, LeftOut)}


def test_members_are_copied_under_numbers(path: Path, room: Room) -> None:
    zipped(path, {"b/manual.pdf": b"two", "a.txt": b"one"})

    assert taken(path, room) == {"a.txt": b"one", "b/manual.pdf": b"two"}
    copies = sorted(each.name for each in room.folder.iterdir())
    assert copies == ["member-000001", "member-000002"]


@pytest.mark.parametrize(
    "name", ["../evil.txt", "a/../../evil.txt", "/etc/evil.txt", "C:/evil.txt", "..\\e"]
)
def test_a_name_that_leads_out_is_refused(path: Path, room: Room, name: str) -> None:
    zipped(path, {name: b"evil", "good.txt": b"good"})

    assert list(left(path, room).values()) == ["its name leads out of the archive"]
    written = [each for each in path.parent.rglob("*") if each.is_file()]
    assert {each.name for each in written} == {"shelf.zip", "member-000001"}


def test_links_are_refused(path: Path, room: Room) -> None:
    info = zipfile.ZipInfo("link.txt")
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    with zipfile.ZipFile(path, "w") as made:
        made.writestr(info, "/etc/passwd")

    assert left(path, room) == {"link.txt": "a link, not a file"}


def test_encrypted_members_are_said(path: Path, room: Room) -> None:
    zipped(path, {"locked.txt": b"x", "open.txt": b"y"})
    data = bytearray(path.read_bytes())
    # Bit 0 of the flags says "encrypted" (APPNOTE 4.4.4), in the list of members.
    data[data.index(b"PK\x01\x02") + 8] |= 1
    path.write_bytes(data)

    assert left(path, room) == {"locked.txt": "encrypted"}


def test_a_bomb_is_not_unpacked(path: Path, room: Room) -> None:
    zipped(path, {"bomb.txt": bytes(3_000_000), "good.txt": b"good"})

    assert left(path, room) == {
        "bomb.txt": "it swells on unpacking as no document does"
    }
    assert sum(each.stat().st_size for each in room.folder.iterdir()) == len(b"good")


def test_a_member_that_lies_about_its_size_is_damaged(path: Path, room: Room) -> None:
    zipped(path, {"liar.txt": bytes(500_000)})
    data = bytearray(path.read_bytes())
    at = data.index(b"PK\x01\x02") + 24  # uncompressed size (APPNOTE 4.3.12)
    data[at : at + 4] = (10).to_bytes(4, "little")
    path.write_bytes(data)

    (reason,) = left(path, room).values()

    assert reason.startswith("damaged in the archive")
    assert not list(room.folder.iterdir())


def test_all_members_together_are_bounded(path: Path, room: Room) -> None:
    room.left = 1500
    zipped(path, {f"{n}.txt": bytes([n]) * 1000 for n in range(3)})

    assert sorted(left(path, room)) == ["1.txt", "2.txt"]


def test_too_many_members_are_refused(
    path: Path, room: Room, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(archive, "MAX_MEMBERS", 2)
    zipped(path, {f"{n}.txt": b"x" for n in range(3)})

    with pytest.raises(InputError, match="3 members; the limit is 2"):
        list(members(path, room))


def test_one_archive_inside_is_opened_and_the_next_is_said(
    path: Path, room: Room
) -> None:
    deepest = packed({"c.txt": b"three"})
    inner = packed({"b.txt": b"two", "deep.zip": deepest})
    zipped(path, {"a.txt": b"one", "in.zip": inner})

    assert taken(path, room) == {"a.txt": b"one", "in.zip/b.txt": b"two"}
    assert left(path, room) == {
        "in.zip/deep.zip": "an archive in an archive in an archive"
    }


def test_hidden_files_and_folders_are_passed_over(path: Path, room: Room) -> None:
    zipped(path, {"__MACOSX/._a.txt": b"x", ".git/x": b"x", "d/": b"", "a.txt": b"a"})

    assert taken(path, room) == {"a.txt": b"a"}


def test_names_are_shown_on_one_line(path: Path, room: Room) -> None:
    zipped(path, {"a\x1b[31m\nb.txt": b"x"})

    assert list(taken(path, room)) == ["a\ufffd[31m\ufffdb.txt"]


def test_an_office_document_is_no_archive(path: Path) -> None:
    zipped(path, {"[Content_Types].xml": b"<x/>", "word/document.xml": b"<x/>"})

    assert not is_archive(path)


@pytest.mark.parametrize("tenth", range(1, 10))
def test_an_archive_cut_short_is_said(path: Path, room: Room, tenth: int) -> None:
    data = zipped(path, {f"{n}.txt": b"text" * 90 for n in range(9)}).read_bytes()
    path.write_bytes(data[: len(data) * tenth // 10])

    assert is_archive(path)
    with pytest.raises(InputError, match="damaged archive"):
        list(members(path, room))


def test_a_list_of_members_too_long_to_hold_is_refused(path: Path, room: Room) -> None:
    data = bytearray(zipped(path, {"a.txt": b"x"}).read_bytes())
    at = data.index(b"PK\x05\x06") + 12  # size of the list (APPNOTE 4.3.16)
    data[at : at + 4] = (900_000_000).to_bytes(4, "little")
    path.write_bytes(bytes(data))

    with pytest.raises(InputError, match="damaged archive"):
        list(members(path, room))


@given(st.data())
def test_a_damaged_archive_ends_in_members_or_a_reason(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    folder = tmp_path_factory.mktemp("zip")
    whole = zipped(folder / "a.zip", {"a.txt": b"one" * 40, "b/c.txt": b"two"})
    raw = bytearray(whole.read_bytes())
    for _ in range(data.draw(st.integers(1, 6))):
        raw[data.draw(st.integers(0, len(raw) - 1))] = data.draw(st.integers(0, 255))
    whole.write_bytes(raw)
    room = Room(folder / "aside")
    room.folder.mkdir()

    try:
        found = list(members(whole, room))
    except InputError:
        return

    assert all(each.name for each in found)
    assert {each.parent for each in room.folder.rglob("*")} <= {room.folder}
