"""A maker's own sheet turned into rows of the log, column by column as was chosen; what is not taken is told."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.fields import Owner
from logbook.sheets.cells import cell_text
from logbook.sheets.limits import RawCell, RawRow, RawSheet, Unusable
from logbook.sheets.own_cells import (
    CellReadings,
    DateOrder,
    HookCell,
    Over,
    class_cell,
    date_cell,
    date_order,
    gauge_cell,
    hook_cell,
    metres_and_grams,
    number_cell,
    over_of,
)  # fmt: skip
from logbook.sheets.own_guess import BY_NAME, DAY_FIRST, MONTH_FIRST, NOTES, field_of
from logbook.sheets.own_table import OwnTable
from logbook.sheets.own_words import REPEATS, folded_heading
from logbook.sheets.swatch_rows import MOST_PROBLEMS

_METRES_IN_A_YARD = 0.9144


@dataclass(frozen=True, slots=True)
class OwnRows:
    """The rows as a sheet of the log, the headings they come from by column, and what was left: headings, and rows with why."""

    sheet: RawSheet
    headings: dict[str, str]
    not_taken: tuple[str, ...]
    aside: tuple[tuple[int, str], ...]


def as_log(table: OwnTable, choices: Sequence[str], over: Over | None) -> OwnRows:
    """The table with its columns taken as ``choices`` say; ``over`` is the length of counts that state none."""
    taken = [_Column.of(table, place, choice, over) for place, choice in enumerate(choices) if choice]
    names: dict[str, str] = {}
    rows = []
    for row in table.rows:
        cells = _log_cells(row, taken)
        if any(cell not in (None, "") for cell in cells.values()):
            rows.append((row.number, cells))
            for column in taken:
                names.setdefault(field_of(column.choice), column.heading)
    columns = list(dict.fromkeys(name for _, cells in rows for name in cells))
    log = [RawRow(number, tuple(cells.get(name) for name in columns)) for number, cells in rows]
    left = tuple(
        heading or f"column {place + 1}"
        for place, (heading, choice) in enumerate(zip(table.headings, choices, strict=True))
        if not choice and table.column(place)
    )
    return OwnRows(RawSheet(table.sheet, (RawRow(1, tuple(columns)), *log)), names, left, table.aside[:MOST_PROBLEMS])


@dataclass(frozen=True, slots=True)
class _Column:
    place: int
    heading: str
    choice: str
    order: DateOrder
    over: Over | None
    repeats: bool
    yards: bool
    alone: bool

    @staticmethod
    def of(table: OwnTable, place: int, choice: str, over: Over | None) -> "_Column":
        heading = table.headings[place]
        folded = folded_heading(heading)
        order = {DAY_FIRST: DateOrder.DAY, MONTH_FIRST: DateOrder.MONTH}.get(choice)
        if order is None:
            order = date_order(table.column(place)) if choice == "date" else DateOrder.UNKNOWN
        repeats = bool(REPEATS.search(folded))
        yards = bool({"yards", "yds", "yd", "yardage"} & set(folded.split()))
        own = " ".join(heading.casefold().split()) == NOTES
        return _Column(place, heading, choice, order, over_of(heading) or over, repeats, yards, own)


def _log_cells(row: RawRow, columns: Sequence[_Column]) -> dict[str, RawCell]:
    cells: dict[str, RawCell] = {}
    several = sum(column.choice == NOTES for column in columns) > 1
    for column in columns:
        cell = row.cells[column.place] if column.place < len(row.cells) else None
        for name, content in _taken(column, cell, label=several and not column.alone):
            _put(cells, name, content)
    return cells


def _put(cells: dict[str, RawCell], name: str, content: RawCell) -> None:
    before = cells.get(name)
    if before in (None, "") or isinstance(content, Unusable):
        cells[name] = content
    elif content not in (None, "") and isinstance(before, str):
        apart = "\n" if name == NOTES else "; "
        cells[name] = f"{before}{apart}{cell_text(content) if isinstance(content, str | float | int) else content}"


def _taken(column: _Column, cell: RawCell, *, label: bool) -> Iterator[tuple[str, RawCell]]:
    """The cells of the log that one cell of the sheet gives."""
    choice = field_of(column.choice)
    field = BY_NAME[choice]
    if choice == NOTES:
        text = cell_text(cell) if isinstance(cell, str | float | int) else "" if cell is None else str(cell)
        yield choice, f"{column.heading}: {text}" if label and text else text
    elif choice == "date":
        yield choice, date_cell(cell, column.order)
    elif field.owner is Owner.READINGS:
        yield from _readings(column, choice, cell)
    elif choice in ("hook mm", "foundation hook mm"):
        hook: HookCell = hook_cell(cell)
        yield choice, hook.mm
        if hook.note and choice == "hook mm":
            yield "hook note", hook.note
    elif choice == "yarn class":
        yield choice, class_cell(cell)
    elif choice == "ball metres" and (both := metres_and_grams(cell)):
        yield choice, both[0]
        yield "ball grams", both[1]
    elif choice == "ball metres" and column.yards and isinstance(number := _as_number(cell), float):
        yield choice, round(number * _METRES_IN_A_YARD, 1)
    elif field.kind.value == "number":
        yield choice, number_cell(cell)
    else:
        yield choice, cell_text(cell) if isinstance(cell, float | int) else cell


def _as_number(cell: RawCell) -> RawCell:
    text = number_cell(cell)
    try:
        return float(str(text).replace(",", "."))
    except ValueError:
        return cell


def _readings(column: _Column, choice: str, cell: RawCell) -> Iterator[tuple[str, RawCell]]:
    direction = Direction.ROWS if choice.startswith("rows") else Direction.STITCHES
    state = choice.removeprefix(direction.value).strip()
    found = gauge_cell(cell, direction, column.over, repeats=column.repeats)
    if isinstance(found, CellReadings):
        yield f"stitches {state}", found.stitches
        yield f"rows {state}", found.rows
    else:
        yield choice, found
