"""The cells of makers' own sheets: dates, hooks, gauges, thickness and lengths as people write them, in the words of the log.

What can't be told is not guessed: such a cell says why, and its row is a problem.
"""

import re
from collections.abc import Iterable
from datetime import date
from enum import Enum, auto
from typing import NamedTuple

from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.readings import Counted, read_readings
from logbook.craft.words.hooks import read_hook
from logbook.craft.words.lengths import Units, read_size
from logbook.craft.words.numbers import NUMBER, read_number
from logbook.errors import LogbookError, UnreadableError
from logbook.sheets.cells import cell_text
from logbook.sheets.limits import RawCell, Unusable
from logbook.sheets.own_words import CLASS_WORDS, MONTHS, REPEATS, ROWS, STITCHES, UNITS, folded_heading


class DateOrder(Enum):
    """Which comes first where a date is three numbers: ``3/4/2021``."""

    UNKNOWN = auto()
    DAY = auto()
    MONTH = auto()


_NUMBERS = re.compile(r"(\d{1,2})\s*([./-])\s*(\d{1,2})\s*[./-]\s*(\d{4}|\d{2})\.?\Z")
_ISO = re.compile(r"(\d{4})[-./](\d{1,2})[-./](\d{1,2})(?:[T ]\d{1,2}:\d{2}(?::\d{2})?)?\Z")
_WORDY = re.compile(
    r"(?:[a-z]{2,12} )?(?:(\d{1,2})(?:st|nd|rd|th|e|er)? (?:de |of )?([a-z]+)|([a-z]+) (\d{1,2})(?:st|nd|rd|th)?) (\d{4}|\d{2})\Z"
)


def date_order(cells: Iterable[RawCell]) -> DateOrder:
    """What the dates of a column tell of their order: a number above 12 can't be a month; points stand after days."""
    for cell in cells:
        found = _NUMBERS.match(cell.strip()) if isinstance(cell, str) else None
        if found and int(found[1]) > 12:
            return DateOrder.DAY
        if found and int(found[3]) > 12:
            return DateOrder.MONTH
    return DateOrder.UNKNOWN


def date_cell(cell: RawCell, order: DateOrder) -> RawCell:
    """A date in ISO; as it is where it is none, and unusable where day and month can't be told apart."""
    if not isinstance(cell, str):
        return cell
    text = cell.strip()
    if iso := _ISO.match(text):
        return _iso(int(iso[1]), int(iso[2]), int(iso[3]), cell)
    if found := _NUMBERS.match(text):
        first, second, year = int(found[1]), int(found[3]), _year(found[4])
        if found[2] == "." or order is DateOrder.DAY or first == second:
            return _iso(year, second, first, cell)
        if order is DateOrder.MONTH:
            return _iso(year, first, second, cell)
        return Unusable(
            f"“{text}”, in which day and month can't be told apart (choose “day first” or “month first” for the column)"
        )
    if wordy := _WORDY.match(folded_heading(text)):
        month = MONTHS.get(wordy[2] or wordy[3])
        if month:
            return _iso(_year(wordy[5]), month, int(wordy[1] or wordy[4]), cell)
    return cell


def _iso(year: int, month: int, day: int, cell: str) -> RawCell:
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return cell


def _year(text: str) -> int:
    year = int(text)
    return year if year > 99 else 2000 + year if year < 70 else 1900 + year


def is_date(cell: RawCell) -> bool:
    """Whether a cell is a date, in whatever form."""
    return isinstance(cell, date) or (isinstance(cell, str) and date_cell(cell, DateOrder.DAY) != cell) or _is_iso(cell)


def _is_iso(cell: RawCell) -> bool:
    return isinstance(cell, str) and bool(_ISO.match(cell.strip()))


_MM = re.compile(rf"({NUMBER})\s*mm\b", re.IGNORECASE)


class HookCell(NamedTuple):
    """The hook in mm, and what else the cell says of it."""

    mm: RawCell
    note: str = ""


def hook_cell(cell: RawCell) -> HookCell:
    """``4.5 mm``, ``4,5``, ``G/6``, ``US G-6 (4 mm)``: the mm where they are said, since letters differ between makers."""
    if not isinstance(cell, str) or not cell.strip():
        return HookCell(cell)
    text = cell.strip()
    found = _MM.search(text)
    if found:
        rest = (text[: found.start()] + text[found.end() :]).strip(" ()/,;–-=")
        return HookCell(found[1].replace(",", "."), text if rest else "")
    plain = re.sub(r"^(?:us|size|nr\.?|no\.?|n°|hook|gr\.?)\s*", "", text, flags=re.IGNORECASE)
    for tried in (text, plain):
        try:
            mm = read_hook(tried)
        except UnreadableError:
            continue
        return HookCell(cell_text(mm), "" if re.match(r"[\d.,\s]+\Z", tried) else text)
    return HookCell(cell)


def is_hook(cell: RawCell) -> bool:
    """Whether a text says a hook as only hooks are said: with mm, or by a letter and its number."""
    if not isinstance(cell, str) or not re.search(r"mm\b|^[A-Za-z]{1,2}\s?[-/]\s?\d", cell.strip()):
        return False
    try:
        return bool(read_hook(cell_text(hook_cell(cell).mm)))  # type: ignore[arg-type]
    except LogbookError:
        return False


class Over(NamedTuple):
    """The length that counts are over, as text: ``10 cm``, ``4 in``."""

    text: str


_OVER = re.compile(
    r'(\d+(?:[.,]\d+)?)\s*(?:cm|in|")?\s*(?:[x×*]\s*\d+(?:[.,]\d+)?)?\s*(cm|inch(?:es)?|in\b|"|″|zoll|tum|pouces?)', re.IGNORECASE
)
_PER_INCH = re.compile(r"(?:per|/|pro|par)\s*(inch|in\b|zoll|tum|pouce)", re.IGNORECASE)


def over_of(text: str) -> Over | None:
    """The length that a heading or cell states: ``sts per 10 cm``, ``M/10cm``, ``per inch``; None if it states none."""
    if found := _OVER.search(text):
        return Over(f"{found[1].replace(',', '.')} {UNITS[found[2].casefold().replace('″', chr(34))]}")
    return Over("1 in") if _PER_INCH.search(text) else None


def read_over(text: str) -> Over:
    """A typed length that counts are over. Raises UnreadableError."""
    mm = read_size(text, Units.CM, "a length that stitches and rows are counted over")
    found = over_of(text if re.search(r"[a-z\"″]", text, re.IGNORECASE) else f"{text} cm")
    return found or Over(f"{cell_text(round(mm / 10, 9))} cm")


_PART = re.compile(rf"\s*({NUMBER})\s*([^\W\d]*\.?)", re.UNICODE)
_PARTED = re.compile(r"\s*(?:[x×*/;+]|\bby\b|\band\b|\bund\b|\bet\b|\boch\b|\bsur\b|,\s)\s*", re.IGNORECASE)
_TAIL = re.compile(r"\s*(?:=|:|\(|\bauf\b|\bover\b|\bper\b|\bin\b|\bsur\b|\bpour\b|\bpa\b|\bpå\b|\bpro\b|/)?\s*$", re.IGNORECASE)


class CellReadings(NamedTuple):
    """Readings of a cell as the log writes them, along the stitches and up the rows."""

    stitches: str = ""
    rows: str = ""


def gauge_cell(
    cell: RawCell, direction: Direction, over: Over | None, *, repeats: bool = False
) -> CellReadings | Unusable | None:
    """What a cell of a gauge says; ``direction`` is that of a bare number, ``over`` the length where the cell states none.

    None for an empty cell; unusable where it can't be told.
    """
    if cell is None or isinstance(cell, Unusable):
        return cell
    text = " ".join(cell_text(cell).split()) if isinstance(cell, str | float | int) else ""
    if not text:
        return Unusable("a date") if isinstance(cell, date) else None
    stated, counts = over_of(text), text
    if stated and (known := _as_the_log_says(text, direction)) is not None:
        return known
    if stated:
        place = _OVER.search(text)
        counts = _TAIL.sub("", text[: place.start()]) if place else _PER_INCH.sub("", text)
    parts = [part for part in _PARTED.split(counts.strip(" ()")) if part.strip()]
    found = [_PART.fullmatch(part) for part in parts]
    length = stated or over
    if not 1 <= len(parts) <= 2 or not all(found):
        return Unusable(f"“{text[:60]}”, which can't be read as a gauge")
    if length is None:
        return Unusable(f"“{text[:60]}” without the length it is over (say it for the whole sheet, like 10 cm)")
    return _readings([(one[1], one[2]) for one in found if one], direction, length, repeats=repeats)


def _readings(counts: list[tuple[str, str]], direction: Direction, over: Over, *, repeats: bool) -> CellReadings | Unusable:
    said = {Direction.STITCHES: "", Direction.ROWS: ""}
    for place, (number, word) in enumerate(counts):
        plain = folded_heading(word)
        if plain and ROWS.fullmatch(plain):
            way = Direction.ROWS
        elif plain and (STITCHES.fullmatch(plain) or REPEATS.fullmatch(plain)):
            way = Direction.STITCHES if place == 0 else Direction.ROWS
        elif plain:
            return Unusable(f"“{word}”, which is neither stitches nor rows")
        else:
            way = direction if len(counts) == 1 else (Direction.STITCHES, Direction.ROWS)[place]
        counted = bool(plain and REPEATS.fullmatch(plain)) or repeats
        unit = {
            (False, Direction.STITCHES): "stitches",
            (True, Direction.STITCHES): "repeats",
            (False, Direction.ROWS): "rows",
        }.get((counted, way), "row repeats")
        if said[way]:
            return Unusable(f"two counts of {way.value}")
        said[way] = f"{cell_text(float(read_number(number)))} {unit} in {over.text}"
    return CellReadings(said[Direction.STITCHES], said[Direction.ROWS])


def _as_the_log_says(text: str, direction: Direction) -> CellReadings | None:
    """A cell written as the log writes readings, with their length, is kept as it is."""
    try:
        readings = read_readings(text, None if re.search(r"\d\s*[^\W\d]+.*\d\s*(?:rows?|rnds?|rounds?)", text) else direction)
    except LogbookError:
        return None
    ways: dict[Direction, list[str]] = {Direction.STITCHES: [], Direction.ROWS: []}
    for reading in readings:
        of = reading.counted.direction
        if reading.counted is Counted.REPEATS and direction is Direction.ROWS:
            of = Direction.ROWS
        ways[of].append(reading.text)
    return CellReadings("; ".join(ways[Direction.STITCHES]), "; ".join(ways[Direction.ROWS])) if readings else None


def is_gauge(cell: RawCell) -> bool:
    """Whether a text says a gauge as only gauges are said: counts with their words, or a pair of counts."""
    if not isinstance(cell, str):
        return False
    found = gauge_cell(cell, Direction.STITCHES, Over("10 cm"))
    return isinstance(found, CellReadings) and not re.fullmatch(rf"\s*{NUMBER}\s*", cell)


def class_cell(cell: RawCell) -> RawCell:
    """A thickness class by its name."""
    if not isinstance(cell, str):
        return cell
    plain = folded_heading(cell)
    number = CLASS_WORDS.get(plain)
    if number is None and (found := re.fullmatch(r"(?:cyc |class |category )?([0-7])(?: .*)?", plain)):
        number = int(found[1])
    return cell if number is None else str(number)


_UNIT_AT_END = re.compile(
    r"(?<=\d)\s*(?:g|gr|grams?|gramm|m|metres?|meters?|mtrs?|min|minutes?|€|\$|£|kr|sek)\.?\s*\Z", re.IGNORECASE
)
_METRES_AND_GRAMS = re.compile(
    rf"({NUMBER})\s*m[a-z]*\s*(?:[/=]|per|pro|par|auf|je|à|-)\s*({NUMBER})?\s*g[a-z]*\.?\Z", re.IGNORECASE
)


def number_cell(cell: RawCell) -> RawCell:
    """A number without the unit that stands behind it."""
    return _UNIT_AT_END.sub("", cell.strip()) if isinstance(cell, str) else cell


def metres_and_grams(cell: RawCell) -> tuple[str, str] | None:
    """``125 m / 50 g`` as metres and grams of a ball; None for anything else."""
    found = _METRES_AND_GRAMS.match(cell.strip()) if isinstance(cell, str) else None
    return (found[1], found[2]) if found and found[2] else None
