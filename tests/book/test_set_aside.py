"""A damaged logbook set aside: nothing is lost, and whatever goes wrong, each file has the name it had."""

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.book import set_aside as module
from logbook.book.logbook import new_logbook, open_logbook
from logbook.book.set_aside import set_aside
from logbook.errors import RefusedError


@pytest.fixture
def names(tmp_path: Path) -> tuple[Path, Path, Path]:
    """The damaged one, the name for it, and the restored one; the damaged one has a journal."""
    damaged, aside, restored = (tmp_path / f"{name}.logbook" for name in ("a", "a damaged", "a restored"))
    damaged.write_bytes(b"damaged")
    (tmp_path / "a.logbook-journal").write_bytes(b"journal")
    new_logbook(restored).close()
    return damaged, aside, restored


def held(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_the_restored_one_has_its_name_and_it_is_kept_with_its_journal(names: tuple[Path, Path, Path], tmp_path: Path) -> None:
    restored = names[2].read_bytes()
    set_aside(*names)
    assert held(tmp_path) == {
        "a.logbook": restored,
        "a damaged.logbook": b"damaged",
        "a damaged.logbook-journal": b"journal",
    }
    open_logbook(names[0]).close()


@pytest.mark.parametrize("name", ["a damaged.logbook", "a damaged.logbook-journal", "a restored.logbook-journal"])
def test_nothing_is_overwritten(names: tuple[Path, Path, Path], name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_bytes(b"mine")
    before = held(tmp_path)
    with pytest.raises(RefusedError, match=f"{name} is there already"):
        set_aside(*names)
    assert held(tmp_path) == before


@pytest.mark.parametrize("call", ["link", "rename", "replace", "sync"])
def test_whatever_fails_each_has_its_old_name(
    names: tuple[Path, Path, Path], call: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, rename = held(tmp_path), os.rename
    seen: list[Path] = []

    def fail(*places: Path) -> None:
        seen.extend(places)
        monkeypatch.setattr(os, "rename", rename)  # what is taken back works
        raise OSError(errno.EIO, os.strerror(errno.EIO))

    monkeypatch.setattr(*((module, "sync_folder") if call == "sync" else (os, call)), fail)
    with pytest.raises(RefusedError, match=f"a.logbook could not be set aside .{os.strerror(errno.EIO)}"):
        set_aside(*names)
    assert seen
    assert held(tmp_path) == before


def test_neither_is_ever_without_a_name(names: tuple[Path, Path, Path], monkeypatch: pytest.MonkeyPatch) -> None:
    damaged, aside, restored = names
    stood: list[bool] = []

    def watched(real: Callable[[Path, Path], None]) -> Callable[[Path, Path], None]:
        def call(old: Path, new: Path) -> None:
            real(old, new)
            found = [path.read_bytes() for path in names if path.exists()]
            stood.append(damaged.exists() and b"damaged" in found and len(set(found)) == 2)

        return call

    for call in ("link", "rename", "replace"):
        monkeypatch.setattr(os, call, watched(getattr(os, call)))
    set_aside(damaged, aside, restored)
    assert stood == [True, True, True]
