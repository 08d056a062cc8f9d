"""Guessing what each column of a maker's own sheet holds: from the words over it, and from what its cells look like."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.fields import FIELDS, FieldKind, LogField, Owner
from logbook.craft.words.numbers import read_number
from logbook.errors import UnreadableError
from logbook.sheets.limits import RawCell
from logbook.sheets.own_cells import class_cell, is_date, is_gauge, is_hook, metres_and_grams, number_cell
from logbook.sheets.own_table import OwnTable
from logbook.sheets.own_words import COLUMN_OF, GAUGE, PINNED, ROWS, STITCHES, UNWASHED, WASHED, folded_heading

BY_NAME = {field.name: field for field in FIELDS}
NOTES = "notes"
DAY_FIRST, MONTH_FIRST = "date (day first)", "date (month first)"
CHOICES: tuple[str, ...] = (*(f.name for f in FIELDS if f.name != "uid"), DAY_FIRST, MONTH_FIRST, "uid")
"""What a column may be taken as."""
_MOST = 0.6
"""The share of cells that must look like something."""
_LOOKED_AT = 500


@dataclass(frozen=True, slots=True)
class Guess:
    """What a column is taken as ("": not taken), and how sure that is: the higher the surer."""

    column: str
    sure: int


def guesses(table: OwnTable) -> tuple[str, ...]:
    """For each column of the table the column of the log it is taken as, "" for none; each but the notes once."""
    found = [_guess(heading, table.column(place)[:_LOOKED_AT]) for place, heading in enumerate(table.headings)]
    taken: dict[str, int] = {}
    for place in sorted(range(len(found)), key=lambda place: (-found[place].sure, place)):
        if found[place].column != NOTES:
            taken.setdefault(found[place].column, place)
    return tuple(one.column if one.column == NOTES or taken.get(one.column) == place else "" for place, one in enumerate(found))


def _guess(heading: str, cells: Sequence[RawCell]) -> Guess:
    exact = " ".join(heading.split()).casefold()
    if exact in BY_NAME:
        return Guess(exact, 10)
    folded = folded_heading(heading)
    if cells and _share(cells, is_date) >= _MOST and not _share(cells, is_gauge) > _MOST:
        return Guess("date", 8)
    if (gauge := _gauge(folded, cells)) is not None:
        return gauge
    words = COLUMN_OF.get(folded) or COLUMN_OF.get(_without_units(folded))
    if words is None:
        words = next((COLUMN_OF[part] for part in _parts(folded) if part in COLUMN_OF), None)
        sure = 4
    else:
        sure = 7
    if words is not None and _fits(BY_NAME[words], cells):
        return Guess(words, sure)
    if cells and _share(cells, is_hook) >= _MOST:
        return Guess("hook mm", 5)
    if cells and _share(cells, lambda cell: metres_and_grams(cell) is not None) >= _MOST:
        return Guess("ball metres", 5)
    return Guess("", 0)


def _gauge(folded: str, cells: Sequence[RawCell]) -> Guess | None:
    """A column of readings: its cells look like gauges, or its words speak of one and its cells are numbers."""
    looks = bool(cells) and _share(cells, is_gauge) >= _MOST
    numbers = bool(cells) and _share(cells, _is_number) >= _MOST
    speaks = bool(GAUGE.search(folded))
    counts, rows = bool(STITCHES.search(folded)), bool(ROWS.search(folded))
    if folded in COLUMN_OF and not looks and not speaks:
        return None
    if not (looks or (numbers and (speaks or counts or rows))):
        return None
    direction = Direction.ROWS if rows and not counts else Direction.STITCHES
    pinned, washed, unwashed = (bool(words.search(folded)) for words in (PINNED, WASHED, UNWASHED))
    state = "pinned" if pinned and not unwashed else "washed" if washed and not unwashed else "as worked"
    return Guess(f"{direction.value} {state}", 6 + looks + speaks)


def _fits(field: LogField, cells: Sequence[RawCell]) -> bool:
    """Whether the cells can be what the words say: no texts where numbers belong, no numbers for a name."""
    if not cells:
        return True
    if field.name == "date":
        return False
    if field.name in ("hook mm", "foundation hook mm"):
        return _share(cells, lambda cell: _is_number(cell) or is_hook(cell)) >= 0.5
    if field.name == "yarn class":
        return _share(cells, lambda cell: class_cell(cell) != cell or _is_number(cell)) >= 0.5
    if field.name == "ball metres":
        return _share(cells, lambda cell: metres_and_grams(cell) is not None or _is_number(number_cell(cell))) >= 0.5
    if field.kind is FieldKind.NUMBER:
        return _share(cells, lambda cell: _is_number(number_cell(cell))) >= 0.5
    return field.owner is not Owner.READINGS and not (
        field.name in ("yarn", "stitch pattern") and _share(cells, _is_number) > _MOST
    )


def _is_number(cell: RawCell) -> bool:
    if isinstance(cell, str):
        try:
            read_number(cell)
        except UnreadableError:
            return False
        return True
    return isinstance(cell, int | float) and not isinstance(cell, date)


def _share(cells: Sequence[RawCell], like: Callable[[RawCell], object]) -> float:
    return sum(bool(like(cell)) for cell in cells) / len(cells)


def _without_units(folded: str) -> str:
    """``hakelnadel in mm`` → ``hakelnadel``, ``gewicht g`` → ``gewicht``."""
    words = folded.split()
    while len(words) > 1 and words[-1] in (
        "mm",
        "g",
        "m",
        "cm",
        "in",
        "gr",
        "i",
        "en",
        "nr",
        "no",
        "grams",
        "yds",
        "yd",
        "kr",
        "eur",
    ):
        words.pop()
    return " ".join(words)


def _parts(folded: str) -> list[str]:
    """The runs of words in a heading, the longest first: ``garn marke namn`` → all of it, ``garn marke``, …"""
    words = _without_units(folded).split()
    spans = [(start, end) for start in range(len(words)) for end in range(start + 1, len(words) + 1)]
    return [" ".join(words[start:end]) for start, end in sorted(spans, key=lambda span: (span[0] - span[1], span[0]))]


def with_choices(table: OwnTable, guessed: Sequence[str], chosen: Mapping[str, str]) -> tuple[str, ...]:
    """The guess with what the maker says instead, by heading in small letters; a column said once is taken from others."""
    said = tuple(chosen.get(" ".join(heading.casefold().split())) for heading in table.headings)
    fields = {field_of(one) for one in said if one and one != NOTES}
    return tuple(
        own if own is not None else "" if guess != NOTES and field_of(guess) in fields else guess
        for own, guess in zip(said, guessed, strict=True)
    )


def field_of(choice: str) -> str:
    """The column of the log that a choice speaks of."""
    return "date" if choice in (DAY_FIRST, MONTH_FIRST) else choice
