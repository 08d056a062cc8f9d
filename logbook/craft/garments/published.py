"""A garment as it was published: its numbers in every size and its text, and what would be otherwise now."""

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece


class Published(NamedTuple):
    """``date`` is ISO; ``texts`` the whole pattern by the terms it is in; ``sizes`` the numbers of each size by its name, those
    of a piece by its name and what they count."""

    date: str
    texts: Mapping[str, str]
    sizes: Mapping[str, Mapping[str, Mapping[str, int | None]]]


class Change(NamedTuple):
    """A number that would be otherwise now; None: there is none."""

    size: str
    piece: str
    what: str
    was: int | None
    now: int | None


def published_text(date: str, texts: Mapping[str, str], sizes: Sequence[GarmentInSize]) -> str:
    """What is kept of a garment that is published, as JSON text."""
    numbers = {size.name: {piece.name: _numbers(piece) for piece in size.pieces} for size in sizes}
    value = {"date": date, "texts": dict(texts), "sizes": numbers}
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def published_of(text: str) -> Published:
    """What was published. Raises ValueError, TypeError or LookupError for a text that is none such."""
    value = json.loads(text)
    texts = {str(terms): str(said) for terms, said in value["texts"].items()}
    sizes = {str(size): {str(name): dict(numbers) for name, numbers in pieces.items()} for size, pieces in value["sizes"].items()}
    return Published(str(value["date"]), texts, sizes)


def changes(before: Published, sizes: Sequence[GarmentInSize]) -> Iterator[Change]:
    """Every number that would be otherwise now, and every size or piece that is new or gone (``what``: ``size``, ``piece``)."""
    now = {size.name: {piece.name: _numbers(piece) for piece in size.pieces} for size in sizes}
    for size in dict.fromkeys((*before.sizes, *now)):
        if size not in now or size not in before.sizes:
            yield Change(size, "", "size", int(size in before.sizes), int(size in now))
            continue
        was_of, is_of = before.sizes[size], now[size]
        for piece in dict.fromkeys((*was_of, *is_of)):
            if piece not in was_of or piece not in is_of:
                yield Change(size, piece, "piece", int(piece in was_of), int(piece in is_of))
                continue
            yield from _of_piece(size, piece, was_of[piece], is_of[piece])


def _of_piece(size: str, piece: str, was: Mapping[str, Any], now: Mapping[str, Any]) -> Iterator[Change]:
    for what in ("chain", "first", "last", "rows"):
        if was.get(what) != now.get(what) and not (what == "first" and was.get("chain") != now.get("chain")):
            yield Change(size, piece, what, was.get(what), now.get(what))


def _numbers(piece: ShapedPiece) -> dict[str, int | None]:
    levels = piece.levels
    return {"chain": piece.chain, "first": levels[0].stitches, "last": levels[-1].stitches, "rows": piece.rows}
