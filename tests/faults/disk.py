"""A file layer between SQLite and the disk that records, and can refuse, every write: a VFS made with ``ctypes``.

It is SQLite's own file layer with four methods of each file (write, truncate, sync, close) and two of the layer (open, delete)
led through here, and it becomes the default, so that the program under test knows nothing of it.
"""

import _sqlite3
import ctypes
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any, ClassVar

OK = 0
FULL = 13
IOERR_WRITE = 10 | 3 << 8
IOERR_FSYNC = 10 | 4 << 8
IOERR_TRUNCATE = 10 | 6 << 8
IOERR_DELETE = 10 | 10 << 8
CANTOPEN = 14
_OPEN_CREATE = 0x4
_OPEN_MAIN_JOURNAL = 0x800

_pointer = ctypes.c_void_p
_OPEN = ctypes.CFUNCTYPE(ctypes.c_int, _pointer, _pointer, _pointer, ctypes.c_int, _pointer)
_DELETE = ctypes.CFUNCTYPE(ctypes.c_int, _pointer, _pointer, ctypes.c_int)
_CLOSE = ctypes.CFUNCTYPE(ctypes.c_int, _pointer)
_WRITE = ctypes.CFUNCTYPE(ctypes.c_int, _pointer, _pointer, ctypes.c_int, ctypes.c_int64)
_TRUNCATE = ctypes.CFUNCTYPE(ctypes.c_int, _pointer, ctypes.c_int64)
_SYNC = ctypes.CFUNCTYPE(ctypes.c_int, _pointer, ctypes.c_int)


class _Vfs(ctypes.Structure):
    """``sqlite3_vfs``, version 3."""

    _fields_: ClassVar = [
        ("iVersion", ctypes.c_int), ("szOsFile", ctypes.c_int), ("mxPathname", ctypes.c_int), ("pNext", _pointer),
        ("zName", ctypes.c_char_p), ("pAppData", _pointer), ("xOpen", _OPEN), ("xDelete", _DELETE),
        *((f"other{n}", _pointer) for n in range(14)),
    ]  # fmt: skip


class _Methods(ctypes.Structure):
    """``sqlite3_io_methods``, version 1: without shared memory and memory mapping, which would go past this layer."""

    _fields_: ClassVar = [
        ("iVersion", ctypes.c_int), ("xClose", _CLOSE), ("xRead", _pointer), ("xWrite", _WRITE), ("xTruncate", _TRUNCATE),
        ("xSync", _SYNC), *((f"other{n}", _pointer) for n in range(7)),
    ]  # fmt: skip


class _File(ctypes.Structure):
    """``sqlite3_file``: what follows the pointer to its methods is the real layer's own."""

    _fields_: ClassVar = [("methods", ctypes.POINTER(_Methods))]


def library() -> ctypes.CDLL:
    """The very SQLite that Python's sqlite3 uses. Raises OSError or AttributeError where it is built in and can't be reached."""
    found = ctypes.CDLL(getattr(_sqlite3, "__file__", None))
    found.sqlite3_vfs_find.restype = ctypes.POINTER(_Vfs)
    return found


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that was done to a file (by its whole name): ``create``, ``write``, ``truncate``, ``sync``, ``delete``, ``link``
    or ``rename`` (both ``to`` another name); to a folder: ``folder`` (made), ``sync folder``; or a ``note``.

    ``durable``: a sync or delete after which the names in the folder are on the disk too.
    """

    kind: str
    name: str = ""
    offset: int = 0
    data: bytes = b""
    durable: bool = False
    to: str = ""


@dataclass(slots=True)
class Disk:
    """What was done, in order; and which of the coming writes, syncs, truncations and deletions is refused.

    ``refuse_from``: the number of the first to be refused, counted from 1 (0: none); ``refusals``: how many from there on;
    ``code``: the error of a refused write (FULL or IOERR_WRITE; the other kinds have their own).
    """

    events: list[Event] = field(default_factory=list)
    recording: bool = True
    asked: int = 0
    refuse_from: int = 0
    refusals: int = 1
    code: int = FULL
    keep_alive: list[Any] = field(default_factory=list)

    def note(self, text: str) -> None:
        """Marks a moment among the events."""
        self.events.append(Event("note", text))

    def record(self, event: Event) -> None:
        """Adds an event, if events are wanted."""
        if self.recording:
            self.events.append(event)

    def refuses(self) -> bool:
        """Counts one more request; whether it is one to refuse."""
        self.asked += 1
        return bool(self.refuse_from) and self.refuse_from <= self.asked < self.refuse_from + self.refusals


_IOERR_OF = {"truncate": IOERR_TRUNCATE, "sync": IOERR_FSYNC, "delete": IOERR_DELETE}


@contextmanager
def shimmed(disk: Disk) -> Iterator[Disk]:
    """Leads all file work of connections made within through ``disk``. They must be closed before it ends."""
    sqlite = library()
    real = sqlite.sqlite3_vfs_find(None)
    shim = _Vfs.from_buffer_copy(real.contents)
    shim.zName = b"recorded"
    layer = _Layer(disk, real.contents)
    shim.xOpen, shim.xDelete = _OPEN(layer.open), _DELETE(layer.delete)
    assert sqlite.sqlite3_vfs_register(ctypes.byref(shim), 1) == OK
    try:
        yield disk
    finally:
        sqlite.sqlite3_vfs_unregister(ctypes.byref(shim))
        assert sqlite.sqlite3_vfs_register(real, 1) == OK
        disk.keep_alive += [shim, layer]
    assert not layer.names, f"still open: {layer.names}"


class _Layer:
    def __init__(self, disk: Disk, real: _Vfs) -> None:
        self.disk = disk
        self.real = real
        self.names: dict[int, str] = {}
        self.new_journals: set[int] = set()
        self.tables: dict[int, tuple[_Methods, _Methods]] = {}

    def open(self, vfs: int, name: int | None, file: int, flags: int, out: int | None) -> int:
        path = ctypes.string_at(name) if name else b""
        creates = bool(flags & _OPEN_CREATE) and bool(path) and not os.path.exists(path)
        if creates and self.disk.refuses():
            ctypes.cast(file, ctypes.POINTER(_File)).contents.methods = None  # type: ignore[assignment]
            return CANTOPEN
        code = int(self.real.xOpen(vfs, name, file, flags, out))
        opened = ctypes.cast(file, ctypes.POINTER(_File)).contents
        if code == OK:
            self.names[file] = os.fsdecode(path)
            opened.methods = ctypes.pointer(self._led_through_here(opened.methods))
            if creates:
                self.disk.record(Event("create", self.names[file]))
                if flags & _OPEN_MAIN_JOURNAL:
                    self.new_journals.add(file)
        return code

    def delete(self, vfs: int, name: int, sync_folder: int) -> int:
        if self.disk.refuses():
            return IOERR_DELETE
        code = int(self.real.xDelete(vfs, name, sync_folder))
        if code == OK:
            self.disk.record(Event("delete", os.fsdecode(ctypes.string_at(name)), durable=bool(sync_folder)))
        return code

    def close(self, real: _Methods, file: int) -> int:
        del self.names[file]
        self.new_journals.discard(file)
        return int(real.xClose(file))

    def write(self, real: _Methods, file: int, data: int, size: int, offset: int) -> int:
        if self.disk.refuses():
            return self.disk.code
        code = int(real.xWrite(file, data, size, offset))
        if code == OK and self.names[file]:
            self.disk.record(Event("write", self.names[file], offset, ctypes.string_at(data, size)))
        return code

    def truncate(self, real: _Methods, file: int, size: int) -> int:
        if self.disk.refuses():
            return IOERR_TRUNCATE
        code = int(real.xTruncate(file, size))
        if code == OK:
            self.disk.record(Event("truncate", self.names[file], size))
        return code

    def sync(self, real: _Methods, file: int, flags: int) -> int:
        if self.disk.refuses():
            return IOERR_FSYNC
        code = int(real.xSync(file, flags))
        if code == OK:
            # SQLite's layer for Unix syncs the folder with the first sync of a journal it has made.
            self.disk.record(Event("sync", self.names[file], durable=file in self.new_journals))
            self.new_journals.discard(file)
        return code

    def _led_through_here(self, methods: Any) -> _Methods:
        """The table of methods for a file whose real table is ``methods``; one for each real table."""
        address = ctypes.addressof(methods.contents)
        if address not in self.tables:
            real = methods.contents
            ours = _Methods.from_buffer_copy(real)
            ours.iVersion = 1

            def led(kind: Any, method: Callable[..., int]) -> Any:
                return kind(lambda *arguments: method(real, *arguments))

            ours.xClose, ours.xWrite = led(_CLOSE, self.close), led(_WRITE, self.write)
            ours.xTruncate, ours.xSync = led(_TRUNCATE, self.truncate), led(_SYNC, self.sync)
            self.tables[address] = (real, ours)
        return self.tables[address][1]
