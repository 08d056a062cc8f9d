"""The one writer of workbooks: sheets row by row, the look of every cell, what is printed, and formulas with their values.

Rows go out as they come, so that a long sheet takes no more memory than a short one. Up to ``MOST_STYLED`` rows each cell has
its look; beyond that plain values (styled cells cost twice the time), and only text that must not be taken for a formula, numbers
that need their last digit, and columns that wrap are cells of their own.
"""

import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from io import BytesIO
from pathlib import Path
from typing import Any, BinaryIO

from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.cells import CELL, Content, Formula, Heading, Look, Role, cell_text, column_letters
from logbook.sheets.formula_values import filled
from logbook.sheets.looks import band_rule, dress
from logbook.sheets.printing import in_margin
from logbook.sheets.text_cells import holdable

MOST_STYLED = 2_000
MOST_ROWS = 1_048_576
_A4 = "9"
_LINE = 14.5
"""Points a line of text is high."""
_MOST_LINES = 27
"""A row can be 409 points high."""


class BookWriter:
    """A workbook being written; ``title`` and ``date`` (as shown) stand at the foot of every printed page.

    Used as a context manager: what goes wrong inside leaves nothing behind.
    """

    def __init__(self, title: str, date: str) -> None:
        import openpyxl  # only here: it takes a tenth of a second

        self.title, self.date = title, date
        self._book: Any = openpyxl.Workbook(write_only=True)
        self._sheets: list[SheetWriter] = []
        self._saved = False

    def __enter__(self) -> "BookWriter":
        return self

    def __exit__(self, *_: object) -> None:
        if not self._saved:
            with suppress(Exception):  # openpyxl clears its files up only on saving
                self._book.save(BytesIO())

    def sheet(
        self,
        name: str,
        columns: Sequence[float | Heading],
        *,
        landscape: bool = False,
        pages_wide: int = 1,
        top: int = 0,
        freeze: int = 0,
    ) -> "SheetWriter":
        """A new sheet behind the others. ``columns``: their headings, or their widths in characters.

        The row ``top`` of the headings and the first ``freeze`` columns stay in view (0: none).
        """
        sheet = self._book.create_sheet(name)
        widths = [column.width if isinstance(column, Heading) else column for column in columns]
        for place, column in enumerate(columns, start=1):
            dimension = sheet.column_dimensions[column_letters(place)]
            dimension.width = widths[place - 1]
            dimension.hidden = isinstance(column, Heading) and column.hidden
        if top:
            sheet.freeze_panes = f"{column_letters(freeze + 1)}{top + 1}"
        _set_up_print(sheet, self, landscape, pages_wide)
        made = SheetWriter(sheet, widths)
        self._sheets.append(made)
        return made

    def open_at(self, name: str) -> None:
        """Which sheet is seen first."""
        self._book.active = [sheet.title for sheet in self._book.worksheets].index(name)
        for sheet in self._book.worksheets:
            sheet.sheet_view.tabSelected = sheet.title == name

    def save(self, stream: BinaryIO) -> None:
        """Writes the workbook. Nothing more may be written into it."""
        from openpyxl.writer.excel import ExcelWriter

        for sheet in self._sheets:
            sheet.finish()
        values = {f"xl/worksheets/sheet{n}.xml": sheet.values for n, sheet in enumerate(self._sheets, start=1) if sheet.values}
        self._book.properties.creator = "Swatch and gauge logbook"
        self._book.properties.title = self.title
        self._saved = True
        with _Archive(stream, values) as archive:
            ExcelWriter(self._book, archive).save()


class SheetWriter:
    """One sheet, from its first row down."""

    def __init__(self, sheet: Any, widths: Sequence[float]) -> None:
        self._sheet, self._widths = sheet, widths
        self.row = 0
        self.values: dict[str, str | int | float] = {}
        self.name: str = sheet.title
        self._cells: dict[Look, Any] = {}
        self._banded: list[str] = []
        self._names: Sequence[str] = ()
        self._who: Callable[[Sequence[Content]], str] = lambda row: f"Sheet “{self.name}”"
        self._merged: list[str] = []

    @property
    def raw(self) -> Any:
        """The sheet itself, for charts and lists of choices."""
        return self._sheet

    def add(self, contents: Sequence[Content], looks: Look | Sequence[Look] = CELL, height: float | None = None) -> int:
        """One row; its number. Raises UnreadableError for text no sheet can hold."""
        self.row += 1
        if self.row > MOST_ROWS:
            raise RefusedError(f"A sheet ends at row {grouped(MOST_ROWS)}: split the log in two.")
        every = [looks] * len(contents) if isinstance(looks, Look) else looks
        ready = self._holdable(contents)
        self._append(self._row(ready, every), height or self._height(ready, every))
        return self.row

    def skip(self, rows: int = 1) -> None:
        """Blank rows."""
        for _ in range(rows):
            self.add(())

    def head(self, title: str, subtitle: str) -> None:
        """The title of the sheet and what it is of, and a blank row."""
        self.add((title,), Look(Role.TITLE), height=24)
        self.paragraph(subtitle, Role.SUBTITLE)
        self.skip()

    def paragraph(self, text: str, role: Role = Role.NOTE, columns: int | None = None) -> int:
        """Text over the whole width, wrapped, in a row as high as it needs."""
        across = columns or len(self._widths)
        row = self.add((text,), Look(role, wraps=True), height=_LINE * lines_of(text, sum(self._widths[:across])) + 2)
        if across > 1:
            self._merged.append(f"A{row}:{column_letters(across)}{row}")
        return row

    def new_page(self) -> None:
        """Prints what follows on a page of its own."""
        from openpyxl.worksheet.pagebreak import Break

        self._sheet.row_breaks.append(Break(id=self.row))

    def rule(self, area: str, rule: Any) -> None:
        """A rule that dresses cells by what stands in them."""
        self._sheet.conditional_formatting.add(area, rule)

    def merge(self, area: str) -> None:
        """Makes one cell of an area."""
        self._merged.append(area)

    def headings(self, headings: Sequence[Heading], rows: int, *, filtered: bool = True) -> int:
        """The heading row of a table of ``rows``: repeated when printed, with a filter."""
        row = self.add([h.name for h in headings], [Look(Role.HEADING, right=h.right, wraps=True) for h in headings])
        last = column_letters(len(headings))
        if filtered:
            self._sheet.auto_filter.ref = f"A{row}:{last}{row + max(rows, 1)}"
        if rows:
            self._banded.append(f"A{row + 1}:{last}{row + rows}")
        self._sheet.print_title_rows = f"{row}:{row}"
        return row

    def table(
        self,
        headings: Sequence[Heading],
        rows: Iterable[Sequence[Content]],
        count: int,
        *,
        who: Callable[[Sequence[Content]], str] | None = None,
    ) -> int:
        """The heading row and the rows of a table, and the number of the heading's row.

        ``who`` says what a row is of, for the refusal of a text that no sheet can hold.
        """
        self._who, self._names = who or self._who, [heading.name for heading in headings]
        top = self.headings(headings, count)
        append = self.rows_for(headings, count)
        for row in rows:
            append(row)
        return top

    def rows_for(self, headings: Sequence[Heading], count: int) -> Any:
        """What appends the rows of a table of ``count`` rows: dressed cells, or plain values where they are many."""
        looks = [heading.look for heading in headings]
        if count <= MOST_STYLED:
            return lambda row: self.add(row, looks)
        wide = [heading.width if heading.wraps else 0 for heading in headings]

        def append(row: Sequence[Content]) -> int:
            self.row += 1
            if self.row > MOST_ROWS:
                raise RefusedError(f"A sheet ends at row {grouped(MOST_ROWS)}: split the log in two.")
            ready = self._holdable(row)
            cells = (self._plain(content, width) for content, width in zip(ready, wide, strict=True))
            self._append(cells, self._height(ready, looks))
            return self.row

        return append

    def finish(self) -> None:
        """What belongs behind the rows."""
        for area in self._banded:
            self._sheet.conditional_formatting.add(area, band_rule())
        for area in self._merged:
            self._sheet.merged_cells.add(area)
        self._banded, self._merged = [], []

    def _append(self, cells: Iterator[Any], height: float | None) -> None:
        if height is not None:
            self._sheet.row_dimensions[self.row].height = height
        self._sheet.append(cell for cell in cells)
        self._sheet.row_dimensions.pop(self.row, None)  # written, and not wanted again

    def _height(self, contents: Sequence[Content], looks: Sequence[Look]) -> float | None:
        """As high as the longest wrapped text needs, since some spreadsheets leave rows as high as one line; None: one line."""
        lines = 1
        for content, look, width in zip(contents, looks, self._widths, strict=False):
            if look.wraps and isinstance(content, str) and content:
                lines = max(lines, lines_of(content, width * (0.82 if look.role is Role.HEADING else 0.92)))
        return None if lines == 1 else _LINE * min(lines, _MOST_LINES) + 2

    def _holdable(self, contents: Sequence[Content]) -> list[Content]:
        """The contents with their texts as a cell holds them. Raises RefusedError, naming where a text stands that none can."""
        ready: list[Content] = []
        for place, content in enumerate(contents):
            try:
                ready.append(holdable(content) if isinstance(content, str) else content)
            except LogbookError as error:
                where = f", {self._names[place]}" if place < len(self._names) else ""
                raise RefusedError(f"{self._who(contents)}{where}: {error}") from error
        return ready

    def _row(self, contents: Sequence[Content], looks: Sequence[Look]) -> Iterator[Any]:
        for place, (content, look) in enumerate(zip(contents, looks, strict=True), start=1):
            if (content is None or content == "") and look.role in (Role.CELL, Role.NOTE, Role.LABEL):
                yield None
            else:
                yield self._filled(self._dressed(look), content, place)

    def _plain(self, content: Content, wraps_at: float) -> Any:
        """What openpyxl takes as it is, or a cell: of text that wraps at so many characters (0: never) or must not be taken for
        a formula or an error, and of a number whose last digit openpyxl would leave off."""
        if content is None or content == "":
            return None
        if isinstance(content, str):
            long = wraps_at and (len(content) > wraps_at or "\n" in content)
            if not long and content[0] not in "=#":
                return content
            return self._filled(self._dressed(Look(wraps=bool(long))), content, 0)
        if isinstance(content, float) and float(f"{content:.16g}") != content:
            return self._filled(self._dressed(Look()), content, 0)
        return content

    def _dressed(self, look: Look) -> Any:
        """The one cell of a look; it is written before it is filled anew."""
        if look not in self._cells:
            from openpyxl.cell import WriteOnlyCell

            cell = WriteOnlyCell(self._sheet)
            dress(cell, look)
            self._cells[look] = cell
        return self._cells[look]

    def _filled(self, cell: Any, content: Content, place: int) -> Any:
        if isinstance(content, Formula):
            cell.value = f"={content.text}"
            cell.data_type = "f"
            self.values[f"{column_letters(place)}{self.row}"] = content.value
        elif isinstance(content, str):
            cell.value = content
            cell.data_type = "s"  # also of what looks like a formula or an error
        elif content is None:
            cell.value, cell.data_type = None, "n"
        else:
            cell.value = cell_text(content)  # as text, since openpyxl would leave off the last digit of a number like 1/3
            cell.data_type = "n"
        return cell


class _Archive(zipfile.ZipFile):
    """A workbook's zip file that gives the formulas of its sheets their values as they go in."""

    def __init__(self, stream: BinaryIO, values: Mapping[str, Mapping[str, str | int | float]]) -> None:
        super().__init__(stream, "w", zipfile.ZIP_DEFLATED, allowZip64=True)
        self._values = values

    def write(self, filename: Any, arcname: Any = None, *rest: Any, **named: Any) -> None:
        if arcname in self._values:
            self.writestr(arcname, filled(Path(filename).read_text("utf-8"), self._values[arcname]))
        else:
            super().write(filename, arcname, *rest, **named)


def lines_of(text: str, width: float) -> int:
    """How many lines a text takes, wrapped between words into so many characters."""
    lines = 0
    for paragraph in text.split("\n"):
        lines, left = lines + 1, width
        for word in paragraph.split(" "):
            if len(word) > left and left < width:
                lines, left = lines + 1, width
            lines += int(max(len(word) - 1, 0) // max(width, 1))
            left -= len(word) + 1
    return lines


def _set_up_print(sheet: Any, book: BookWriter, landscape: bool, pages_wide: int) -> None:
    """A4, fitted to the width; a printer with Letter in it makes it fit that."""
    sheet.page_setup.orientation = "landscape" if landscape else "portrait"
    sheet.page_setup.paperSize = _A4
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = pages_wide, 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    margins = sheet.page_margins
    margins.left = margins.right = 0.5
    margins.top, margins.bottom, margins.header, margins.footer = 0.6, 0.7, 0.3, 0.35
    sheet.oddFooter.left.text = in_margin(f"{book.title} · {book.date}" if book.date else book.title)
    sheet.oddFooter.center.text = "&A"
    sheet.oddFooter.right.text = "page &P of &N"
    for part in (sheet.oddFooter.left, sheet.oddFooter.center, sheet.oddFooter.right):
        part.size = 9
    sheet.sheet_view.showGridLines = False
