"""Body charts: what sizes measure, read from lines of text and shown so."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from logbook.craft.words.lengths import Units, read_size
from logbook.craft.words.numbers import show_number
from logbook.errors import RefusedError, UnreadableError

MEASURES = (
    "bust", "waist", "hip", "back waist length", "armhole depth", "cross back", "upper arm", "arm length", "centre back to wrist",
    "head",
)  # fmt: skip
"""The measures a chart may hold, as its columns are headed."""


class End(StrEnum):
    """Which figure of a range a size goes by."""

    LOW = "low"
    MIDDLE = "middle"
    HIGH = "high"


@dataclass(frozen=True, slots=True)
class BodySize:
    """One size: its name, and each measure as a range (low, high) in mm; both the same where the chart has one figure."""

    name: str
    ranges: Mapping[str, tuple[float, float]]

    def measure(self, name: str, end: End = End.MIDDLE) -> float | None:
        """One measure in mm; None if the chart does not have it."""
        if name not in self.ranges:
            return None
        low, high = self.ranges[name]
        return {End.LOW: low, End.MIDDLE: (low + high) / 2, End.HIGH: high}[end]


@dataclass(frozen=True, slots=True)
class BodyChart:
    """A named chart of sizes, smallest first."""

    name: str
    sizes: tuple[BodySize, ...]


def read_chart(name: str, headings: Sequence[str], rows: Sequence[Sequence[str]], units: Units = Units.CM) -> BodyChart:
    """A chart from rows of text: a column ``size`` and columns of ``MEASURES``, each cell a length or a range such as ``71–76``.

    Empty cells are measures not known, empty rows are passed over. Raises UnreadableError naming row and column at fault, and
    RefusedError if there is no size or one comes twice.
    """
    columns = [_heading(heading) for heading in headings]
    if "size" not in columns:
        raise UnreadableError("The chart has no column “size”: head one so, and the others bust, waist, hip and so on.")
    sizes = tuple(
        _size(columns, row, number, units) for number, row in enumerate(rows, start=2) if any(cell.strip() for cell in row)
    )
    names = [size.name for size in sizes]
    if not sizes:
        raise RefusedError("The chart has no sizes: give at least one row.")
    twice = next((size for size in names if names.count(size) > 1), None)
    if twice is not None:
        raise RefusedError(f"The chart has the size “{twice}” twice: name each size once.")
    return BodyChart(name, sizes)


def chart_of_text(name: str, text: str) -> BodyChart:
    """A chart from lines of cells parted by ``;`` or tabs, in cm, the heading first. Raises as ``read_chart``."""
    lines = [re.split("[;\t]", line) for line in text.splitlines() if line.strip(";\t ")]
    if not lines:
        raise RefusedError("The chart is empty: begin with a heading such as “size; bust; hip”, then a line for each size.")
    return read_chart(name, lines[0], lines[1:])


def chart_text(chart: BodyChart) -> str:
    """The chart as such lines."""
    measures = [measure for measure in MEASURES if any(measure in size.ranges for size in chart.sizes)]
    lines = [["size", *measures]]
    lines += [[size.name, *(_shown(size.ranges.get(measure)) for measure in measures)] for size in chart.sizes]
    return "\n".join("; ".join(line) for line in lines)


def _shown(ends: tuple[float, float] | None) -> str:
    if ends is None:
        return ""
    low, high = (show_number(end / 10, 2) for end in ends)
    return low if low == high else f"{low}–{high}"


_SAME = {
    "chest": "bust",
    "arm length to the underarm": "arm length",
    "arm length to underarm": "arm length",
    "center back to wrist": "centre back to wrist",
}
"""Other names of measures."""


def _heading(heading: str) -> str:
    plain = " ".join(heading.strip().casefold().removesuffix("cm").removesuffix("(cm)").replace("_", " ").split())
    plain = _SAME.get(plain, plain)
    if plain not in ("size", *MEASURES):
        raise UnreadableError(
            f"The chart has a column “{heading.strip()[:40]}”, which is not known: it may have size, {', '.join(MEASURES)}."
        )
    return plain


def _size(columns: Sequence[str], row: Sequence[str], number: int, units: Units) -> BodySize:
    cells = dict(zip(columns, (cell.strip() for cell in row), strict=False))
    name = cells.pop("size", "")
    if not name:
        raise UnreadableError(f"Row {number} of the chart has no size: name it, for example M.")
    ranges = {}
    for measure, cell in cells.items():
        if cell:
            try:
                ranges[measure] = _range(cell, measure, units)
            except UnreadableError as error:
                raise UnreadableError(f"Row {number} of the chart, column {measure}: {error}") from error
    return BodySize(name, ranges)


_RANGE = re.compile(r"(.*\d\D*?)\s*[–—-]\s*(\d.*)\Z")


def _range(cell: str, measure: str, units: Units) -> tuple[float, float]:
    what = f"a {measure} measure"
    found = _RANGE.match(cell)
    low, high = (found[1], found[2]) if found else (cell, cell)
    ends = read_size(low, units, what), read_size(high, units, what)
    if ends[0] > ends[1]:
        raise UnreadableError(f"“{cell}” runs from large to small: write the smaller figure first.")
    return ends


_BABY_WORDS = (
    "baby(?:’s|'s)?|babies|newborns?|preemies?|infants?|toddlers?|cots?|cribs?|cradles?|prams?|strollers?|pushchairs?|boot(?:ie|ee)s?|layettes?|"
    "christenings?|baptisms?|bibs?|rompers?|onesies?|pacifiers?|dumm(?:y|ies)|nurser(?:y|ies)|child(?:ren)?(?:’s|'s)?|kids?|"
    "grandchild(?:ren)?|grandson|granddaughter|godchild|kindergarten|preschool(?:er)?s?|tweens?|teens?|teenagers?|carrycots?|"
    "moses baskets?|swaddl(?:e|ing)|sleep ?sacks?|papoose|teethers?|rattles?|lovey|toys?"
)
_HEIGHT = "(?:50|56|62|68|74|80|86|92|98|104|110|116|122|128|134|140|146|152)"
"""Children's sizes that go by the body's height in cm, as a pair: 98/104."""
_CHILD = re.compile(
    rf"\b(?:{_BABY_WORDS})\b"
    r"|\b(?:boys?|girls?|junior|youth|age|aged|yrs?|years?|yo|mo|mths?|months?|nb|tot)\b"
    r"|(?<![\d.])(?:0\s*[-–/]\s*\d{1,2}|3\s*[-–/]\s*6|6\s*[-–/]\s*9)(?![\d.])"
    rf"|(?<![\d.])(?:{_HEIGHT})\s*/\s*(?:{_HEIGHT})(?![\d.])"
    r"|\b\d+\s*(?:t|m|mo|y|yo|yrs?)\b",
    re.IGNORECASE,
)


def speaks_of_a_child(text: str) -> bool:
    """Whether a longer text, as notes are, speaks of a baby or child: the words alone, no bare figures."""
    return bool(re.search(rf"\b(?:{_BABY_WORDS})\b", text, re.IGNORECASE))


def is_childs_size(name: str) -> bool:
    """Whether a size's name speaks of a baby or child: ``2T``, ``6–12 months``, ``age 4``."""
    return bool(_CHILD.search(name))
