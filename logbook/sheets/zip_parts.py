"""The parts of a workbook, taken out of its zip file under limits, and read as XML without ever building a tree of it.

Sizes that a zip file states are not believed: bytes are counted as they come out. Document types are refused in every part, so
no entity can grow. What is held while reading is bounded by the limits, not by what a file says.
"""

import io
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from xml.parsers import expat

from logbook.craft.words.numbers import grouped
from logbook.errors import RefusedError
from logbook.sheets.limits import FOREIGN, LONGEST_TAG_BYTES, MOST_DEPTH, MOST_ZIP_ENTRIES, Limits
from logbook.sheets.progress import Progress

_CHUNK = 65_536
_ENTRY_MARK = b"PK\x01\x02"
_DAMAGE = (
    zipfile.BadZipFile, zlib.error, struct.error, expat.ExpatError, EOFError, NotImplementedError, ValueError, LookupError,
    RuntimeError, OverflowError, OSError,
)  # fmt: skip


class DamagedZipError(ValueError):
    """The workbook contradicts itself or its format."""


class _Enough(Exception):
    """Ends the reading of a part early."""


@contextmanager
def refusing_damage(name: str) -> Iterator[None]:
    """Turns whatever a broken workbook makes zip and XML raise into one sentence."""
    try:
        yield
    except _DAMAGE as error:
        raise RefusedError(
            f"“{name}” is not a workbook that can be read ({error}): open it in a spreadsheet and save it again as .xlsx or CSV."
        ) from error


def _ignore(piece: str) -> None:
    """For texts that don't matter."""


@dataclass(frozen=True, slots=True)
class Handlers:
    """What to call while a part is read: by element, without its prefix, where it starts and where it ends; and for text."""

    starts: Mapping[str, Callable[[dict[str, str]], None]]
    ends: Mapping[str, Callable[[], None]] = field(default_factory=dict)
    text: Callable[[str], None] = _ignore


class ZipParts:
    """An open workbook. Raises RefusedError past a limit, and what ``refusing_damage`` turns into a sentence."""

    def __init__(self, content: bytes, name: str, limits: Limits = FOREIGN, progress: Progress | None = None) -> None:
        self._name, self._limits, self._progress = name, limits, progress
        # The directory itself can be a bomb: count its entries before they are built.
        if content.count(_ENTRY_MARK) > MOST_ZIP_ENTRIES:
            raise self._refused(f"holds more than {grouped(MOST_ZIP_ENTRIES)} parts")
        self._archive = zipfile.ZipFile(io.BytesIO(content))
        self._entries = {info.filename.replace("\\", "/").casefold(): info for info in self._archive.infolist()}
        self._elements_left = limits.elements
        self._look_through()

    def close(self) -> None:
        """Lets go of the archive."""
        self._archive.close()

    def has(self, path: str) -> bool:
        """Whether there is such a part."""
        return path.casefold() in self._entries

    def read(self, path: str, handlers: Handlers) -> None:
        """Reads one part as XML. Raises KeyError if it is not there."""
        parser = self._parser()
        starts, ends = handlers.starts, handlers.ends
        depth, left = 0, self._elements_left

        def start(name: str, attributes: dict[str, str]) -> None:
            nonlocal depth, left
            depth += 1
            left -= 1
            if depth > MOST_DEPTH or left < 0:
                most = self._limits.elements
                raise self._refused(f"holds more than {grouped(most)} elements, or elements nested deeper than {MOST_DEPTH}")
            if handler := starts.get(name) or starts.get(name[name.find(":") + 1 :]):
                handler(attributes)

        def end(name: str) -> None:
            nonlocal depth
            depth -= 1
            if handler := ends.get(name) or ends.get(name[name.find(":") + 1 :]):
                handler()

        parser.StartElementHandler, parser.EndElementHandler, parser.CharacterDataHandler = start, end, handlers.text
        self._feed(parser, self._chunks(self._entries[path.casefold()]))
        self._elements_left = left

    def _look_through(self) -> None:
        if len(self._entries) != len(self._archive.infolist()):
            raise DamagedZipError("it holds one part twice")
        inflated = 0
        for info in self._archive.infolist():
            if info.flag_bits & 1:
                raise self._refused("is locked with a password")
            if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
                raise DamagedZipError("it is packed in a way workbooks are not")
            for chunk in self._chunks(info):
                inflated += len(chunk)
                if self._progress is not None:
                    self._progress(0, 0)
                if inflated > self._limits.inflated_bytes:
                    raise self._refused(f"unpacks to more than {self._limits.inflated_bytes // 1_000_000} MB")
        for info in self._archive.infolist():
            self._look_for_document_type(info)

    def _look_for_document_type(self, info: zipfile.ZipInfo) -> None:
        """A document type can stand only before the first element, in whatever encoding the parser reads."""
        parser = self._parser()

        def stop(name: str, attributes: dict[str, str]) -> None:
            raise _Enough

        parser.StartElementHandler = stop
        try:
            self._feed(parser, self._chunks(info))
        except (_Enough, expat.ExpatError):
            return  # begun without one, or not XML at all: pictures are parts too

    def _parser(self) -> expat.XMLParserType:
        parser = expat.ParserCreate()
        parser.buffer_text = True

        def refuse(*_: object) -> None:
            raise self._refused("declares a document type, which no workbook needs")

        parser.StartDoctypeDeclHandler = refuse
        return parser

    def _feed(self, parser: expat.XMLParserType, chunks: Iterator[bytes]) -> None:
        fed = 0
        for chunk in chunks:
            fed += len(chunk)
            parser.Parse(chunk, False)
            if fed - max(parser.CurrentByteIndex, 0) > LONGEST_TAG_BYTES:
                raise self._refused(f"holds a tag of more than {grouped(LONGEST_TAG_BYTES)} bytes")
        parser.Parse(b"", True)

    def _chunks(self, info: zipfile.ZipInfo) -> Iterator[bytes]:
        with self._archive.open(info) as part:
            while chunk := part.read(_CHUNK):
                yield chunk

    def _refused(self, what: str) -> RefusedError:
        return RefusedError(f"“{self._name}” {what}: save what you need of it as a new workbook or as CSV.")
