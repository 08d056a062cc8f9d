"""What Python itself does to files, recorded beside what SQLite does: names made and taken away, bytes written, syncs.

It stands in for ``open`` and the functions of ``os`` that write; what goes past it (``sendfile``, another process) would show in
``power``, which compares the files it put together from the records with those that are there.
"""

import builtins
import io
import os
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any
from unittest import mock

from tests.faults.disk import Disk, Event

_io_open, _os_open = io.open, os.open


@contextmanager
def recorded(disk: Disk, root: Path, left_out: str = "") -> Iterator[None]:
    """Records what is done below ``root``, a folder without links in its path, by its whole name; not the kind ``left_out``."""
    recorder = _Recorder(disk, root, left_out)
    with ExitStack() as stack:
        for name in ("open", "fsync", "link", "rename", "replace", "unlink", "remove", "mkdir"):
            stack.enter_context(mock.patch.object(os, name, getattr(recorder, name)))
        stack.enter_context(mock.patch.object(io, "open", recorder.open_file))
        stack.enter_context(mock.patch.object(builtins, "open", recorder.open_file))
        yield


class _File(io.FileIO):
    """A file whose writes are recorded."""

    def __init__(self, disk: Disk, path: str, mode: str) -> None:
        super().__init__(path, mode)
        self._disk, self._path, self._at_end = disk, path, "a" in mode

    def write(self, content: Any, /) -> int:
        place = os.fstat(self.fileno()).st_size if self._at_end else self.tell()
        written = super().write(content) or 0
        self._disk.record(Event("write", self._path, place, bytes(content[:written])))
        return written

    def truncate(self, size: int | None = None, /) -> int:
        cut = super().truncate(size)
        self._disk.record(Event("truncate", self._path, cut))
        return cut


class _Recorder:
    def __init__(self, disk: Disk, root: Path, left_out: str) -> None:
        self.disk, self.root, self._left_out = disk, str(root), left_out
        self._handles: dict[int, str] = {}
        self._real = {name: getattr(os, name) for name in ("fsync", "link", "rename", "unlink", "mkdir")}

    def _within(self, path: Any) -> str:
        """The whole name, if it is below the root, else nothing."""
        if isinstance(path, int):
            return ""
        name = os.path.abspath(os.fsdecode(path))
        return name if name.startswith(self.root) else ""

    def open(self, path: Any, flags: int, mode: int = 0o777, **more: Any) -> int:
        """``os.open``: files made by it, and handles that may be synced."""
        name = self._within(path)
        new = bool(name) and bool(flags & os.O_CREAT) and not os.path.exists(name)
        handle = _os_open(path, flags, mode, **more)
        self._handles.pop(handle, None)  # of a file that was closed
        if name:
            self._handles[handle] = name
            if new:
                self.disk.record(Event("create", name))
            elif flags & os.O_TRUNC:
                self.disk.record(Event("truncate", name, 0))
        return handle

    def open_file(self, file: Any, mode: str = "r", buffering: int = -1, *rest: Any, **named: Any) -> Any:
        """``open``: with a recorded file under it if it is one of ours and to be written."""
        name = self._handles.get(file, "") if isinstance(file, int) else self._within(file)
        if not name or not set(mode) & set("wax+"):
            return _io_open(file, mode, buffering, *rest, **named)
        bare = mode.replace("b", "").replace("t", "")
        new = not os.path.exists(name)
        if isinstance(file, int):  # made by ``os.open`` before
            os.close(file)
            bare = "r+"
        raw = _File(self.disk, name, bare)
        if new:
            self.disk.record(Event("create", name))
        elif "w" in bare:
            self.disk.record(Event("truncate", name, 0))
        buffered = io.BufferedRandom(raw) if "+" in bare else io.BufferedWriter(raw)
        return buffered if "b" in mode else io.TextIOWrapper(buffered, *rest, **named)

    def fsync(self, handle: Any) -> None:
        """``os.fsync`` of a file or a folder, told by its identity."""
        self._real["fsync"](handle)
        found = os.fstat(handle if isinstance(handle, int) else handle.fileno())
        for path in (Path(self.root), *Path(self.root).rglob("*")):
            if os.path.samestat(found, path.stat()):
                kind = "sync folder" if path.is_dir() else "sync"
                if kind != self._left_out:
                    self.disk.record(Event(kind, str(path)))
                return

    def link(self, old: Any, new: Any, **more: Any) -> None:
        """``os.link``."""
        self._named("link", self._real["link"], old, new, **more)

    def rename(self, old: Any, new: Any, **more: Any) -> None:
        """``os.rename``."""
        self._named("rename", self._real["rename"], old, new, **more)

    replace = rename

    def _named(self, kind: str, real: Callable[..., None], old: Any, new: Any, **more: Any) -> None:
        real(old, new, **more)
        if self._within(new):
            self.disk.record(Event(kind, self._within(old), to=self._within(new)))

    def unlink(self, path: Any, **more: Any) -> None:
        """``os.unlink``."""
        self._real["unlink"](path, **more)
        if self._within(path):
            self.disk.record(Event("delete", self._within(path)))

    remove = unlink

    def mkdir(self, path: Any, *rest: Any, **more: Any) -> None:
        """``os.mkdir``."""
        self._real["mkdir"](path, *rest, **more)
        if self._within(path):
            self.disk.record(Event("folder", self._within(path)))
