"""A garment as it was published: its numbers, text and documents, and what would be otherwise now.

The documents (pages to print, drawings, workbooks) are kept as they were made, not made anew: no later reading, plan or version
of the program moves them.
"""

import base64
import json
import zlib
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType
from typing import Any, NamedTuple

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece

_COUNTS = ("chain", "first", "last", "rows")


class Published(NamedTuple):
    """``date`` is ISO; ``texts`` the whole pattern by the terms it is in; ``sizes`` the numbers of each size by its name, those
    of a piece by its name and what they count; ``packed`` the documents ("": none were kept)."""

    date: str
    texts: Mapping[str, str]
    sizes: Mapping[str, Mapping[str, Mapping[str, Any]]]
    packed: str = ""

    def documents(self) -> Mapping[str, str]:
        """The documents by their names. Raises ValueError or zlib.error if they can't be read."""
        return _unpacked(self.packed) if self.packed else {}


@lru_cache(maxsize=1)
def _unpacked(packed: str) -> Mapping[str, str]:
    """Kept for the next of them that is asked for: they are packed as one."""
    return MappingProxyType(json.loads(zlib.decompress(base64.b85decode(packed))))


class ChangedNumber(NamedTuple):
    """A number that would be otherwise now; None: there is none."""

    size: str
    piece: str
    what: str
    was: int | None
    now: int | None


def published_text(
    date: str, texts: Mapping[str, str], sizes: Sequence[GarmentInSize], documents: Mapping[str, str] | None = None
) -> str:
    """What is kept of a garment that is published, as JSON text."""
    numbers = {size.name: {piece.name: _numbers(piece) for piece in size.pieces} for size in sizes}
    packed = base64.b85encode(zlib.compress(json.dumps(documents or {}, ensure_ascii=False).encode(), 9)).decode()
    value = {"date": date, "texts": dict(texts), "sizes": numbers, "documents": packed}
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def published_of(text: str) -> Published:
    """What was published. Raises ValueError, TypeError or LookupError for a text that is none such."""
    value = json.loads(text)
    texts = {str(terms): str(said) for terms, said in value["texts"].items()}
    sizes = {str(size): {str(name): dict(numbers) for name, numbers in pieces.items()} for size, pieces in value["sizes"].items()}
    return Published(str(value["date"]), texts, sizes, str(value.get("documents", "")))


def changes(before: Published, sizes: Sequence[GarmentInSize]) -> Iterator[ChangedNumber]:
    """Every number that would be otherwise now, and every size or piece that is new or gone (``what``: ``size``, ``piece``)."""
    now = {size.name: {piece.name: _numbers(piece) for piece in size.pieces} for size in sizes}
    for size in dict.fromkeys((*before.sizes, *now)):
        if size not in now or size not in before.sizes:
            yield ChangedNumber(size, "", "size", int(size in before.sizes), int(size in now))
            continue
        was_of, is_of = before.sizes[size], now[size]
        for piece in dict.fromkeys((*was_of, *is_of)):
            if piece not in was_of or piece not in is_of:
                yield ChangedNumber(size, piece, "piece", int(piece in was_of), int(piece in is_of))
                continue
            yield from _of_piece(size, piece, was_of[piece], is_of[piece])


def _of_piece(size: str, piece: str, was: Mapping[str, Any], now: Mapping[str, Any]) -> Iterator[ChangedNumber]:
    for what in _COUNTS:
        if was.get(what) != now.get(what) and not (what == "first" and was.get("chain") != now.get("chain")):
            yield ChangedNumber(size, piece, what, was.get(what), now.get(what))
    alike = all(was.get(what) == now.get(what) for what in _COUNTS)
    if alike and was.get("levels", now["levels"]) != now["levels"]:
        yield ChangedNumber(size, piece, "levels", None, None)


def _numbers(piece: ShapedPiece) -> dict[str, Any]:
    levels = [[level.row, level.stitches] for level in piece.levels]
    return {"chain": piece.chain, "first": levels[0][1], "last": levels[-1][1], "rows": piece.rows, "levels": levels}
