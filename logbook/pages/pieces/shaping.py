"""Shaping as it is typed: increases and decreases at the edges or along a row, and what an edging picks up."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from logbook.craft.pieces.shaping import pick_up, shape_edges, spread_row
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.fields import exact
from logbook.craft.swatches.gauge import gauge_of
from logbook.craft.swatches.readings import read_readings
from logbook.craft.words.numbers import in_mark, read_whole
from logbook.errors import LogbookError, RefusedError
from logbook.pages.pieces.plan_texts import TICKED
from logbook.tasks.pieces import PieceAnswer

AT_EDGES, ALONG_ROW, PICK_UP = "at both edges", "along one row", "picking up an edging"
KINDS: Mapping[str, tuple[str, ...]] = {
    AT_EDGES: ("start", "end", "rows"),
    ALONG_ROW: ("start", "end", "stitch", "on edge"),
    PICK_UP: ("ends", "row gauge", "edging gauge"),
}
"""What can be shaped, with the texts each asks for."""
EMPTY = {"start": "", "end": "", "rows": "", "stitch": "sc", "on edge": "", "ends": "", "row gauge": "", "edging gauge": ""}


@dataclass(frozen=True, slots=True)
class Shaped:
    """``text``: the rows as they are written, "" while something is missing or wrong, which ``says`` tells; else a check."""

    text: str
    says: str


def shaped(kind: str, texts: Mapping[str, str]) -> Shaped:
    """What the texts come to."""
    if any(not texts[key].strip() for key in KINDS[kind] if key not in ("on edge", "stitch")):
        return Shaped("", _ASKS[kind])
    try:
        return _MAKE[kind](texts)
    except LogbookError as error:
        return Shaped("", str(error))


def texts_from(answer: PieceAnswer | None) -> dict[str, str]:
    """Texts to begin with: the stitches and rows of the piece in hand, and its gauge of rows."""
    texts = dict(EMPTY)
    if answer is None:
        return texts
    numbers, gauges = answer.numbers, answer.gauges
    texts["start"] = str(numbers.stitches)
    if gauges.rows is not None:
        texts["row gauge"] = f"10 rows = {in_mark(exact(round(gauges.rows.pitch_mm, 2)))} cm"
    if numbers.rows is not None:
        texts["ends"] = texts["rows"] = str(numbers.rows)
    if gauges.edge is not None:
        texts["edging gauge"] = f"10 sts = {in_mark(exact(round(gauges.edge.stitch_mm, 2)))} cm"
    return texts


_ASKS = {
    AT_EDGES: "Type from how many stitches to how many, over how many rows.",
    ALONG_ROW: "Type how many stitches the row has, and how many it is to have.",
    PICK_UP: "Type over how many row ends, and both gauges as readings: “22 rows = 15 cm”, “18 sts = 10 cm”.",
}


def _count(texts: Mapping[str, str], key: str, what: str) -> int:
    return read_whole(texts[key], what, 1, 100_000)


def _at_edges(texts: Mapping[str, str]) -> Shaped:
    start, end = (_count(texts, key, "a number of stitches") for key in ("start", "end"))
    edges = shape_edges(start, end, _count(texts, "rows", "a number of rows"))
    text = edges.text[0].upper() + edges.text[1:] + "."
    rows = f" In rows {', '.join(str(row) for row in edges.at)}." if edges.at else ""
    return Shaped(text, f"From {start} to {end} stitches over {edges.rows} rows.{rows}")


def _along_row(texts: Mapping[str, str]) -> Shaped:
    start, end = (_count(texts, key, "a number of stitches") for key in ("start", "end"))
    row = spread_row(start, end - start, texts["stitch"].strip() or "sc", on_edge=texts["on edge"] == TICKED)
    return Shaped(
        f"{row.text[0].upper()}{row.text[1:]}. {row.after} sts.", f"From {row.before} to {row.after} stitches in one row."
    )


def _picked_up(texts: Mapping[str, str]) -> Shaped:
    ends = _count(texts, "ends", "a number of row ends")
    found = pick_up(ends, _pitch(texts["row gauge"], Direction.ROWS), _pitch(texts["edging gauge"], Direction.STITCHES))
    text = f"{found.text[0].upper()}{found.text[1:]}. {found.stitches} sts."
    return Shaped(text, f"{found.stitches} stitches along {found.ends} row ends. Along tops pick up 1 in each stitch.")


def _pitch(text: str, direction: Direction) -> float:
    readings = read_readings(text, direction)
    if any(reading.counted.whole_repeats for reading in readings):
        raise RefusedError(f"“{text.strip()[:40]}” is in repeats: count {direction.value} here.")
    return gauge_of(readings, 1, Assumptions()).pitch_mm


_MAKE: Mapping[str, Callable[[Mapping[str, str]], Shaped]] = {AT_EDGES: _at_edges, ALONG_ROW: _along_row, PICK_UP: _picked_up}
