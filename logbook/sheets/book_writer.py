"""The one writer of workbooks: sheets row by row, the look of every cell, what is printed, and formulas with their values.

openpyxl makes everything but the rows: styles, what is printed, charts, lists of choices. The rows are written beside it
(``sheet_xml.py``) and go into the file as it is packed.
"""

import zipfile
from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from io import BytesIO
from pathlib import Path
from typing import Any, BinaryIO

from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.cells import CELL, CellLook, Content, Heading, Role, column_letters
from logbook.sheets.looks import band_rule, dress
from logbook.sheets.printing import set_up_print
from logbook.sheets.progress import Progress
from logbook.sheets.sheet_xml import Dress, SheetRows
from logbook.sheets.text_cells import holdable, lines_of

MOST_ROWS = 1_048_576
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
        self._last: list[str] = []
        self._opens_at = ""
        self._saved = False

    def __enter__(self) -> "BookWriter":
        return self

    def __exit__(self, *_: object) -> None:
        if not self._saved:
            with suppress(Exception):  # openpyxl clears its files up only on saving
                self._book.save(BytesIO())
        for sheet in self._sheets:
            sheet.rows.close()

    def sheet(
        self,
        name: str,
        columns: Sequence[float | Heading],
        *,
        landscape: bool = False,
        pages_wide: int = 1,
        top: int = 0,
        freeze: int = 0,
        last: bool = False,
        hidden: bool = False,
    ) -> "SheetWriter":
        """A new sheet behind the others. ``columns``: their headings, or their widths in characters; ``last``: behind those that
        come later, too; ``hidden``: out of sight.

        The row ``top`` of the headings and the first ``freeze`` columns stay in view (0: none).
        """
        sheet = self._book.create_sheet(name)
        sheet.sheet_state = "hidden" if hidden else "visible"
        widths = [column.width if isinstance(column, Heading) else column for column in columns]
        for place, column in enumerate(columns, start=1):
            dimension = sheet.column_dimensions[column_letters(place)]
            dimension.width = widths[place - 1]
            dimension.hidden = isinstance(column, Heading) and column.hidden
        if top:
            sheet.freeze_panes = f"{column_letters(freeze + 1)}{top + 1}"
        set_up_print(sheet, self.title, self.date, landscape=landscape, pages_wide=pages_wide)
        made = SheetWriter(sheet, widths)
        self._sheets.append(made)
        self._last.extend([name] if last else [])
        return made

    def open_at(self, name: str) -> None:
        """Which sheet is seen first."""
        self._opens_at = name

    def _in_order(self) -> list[Any]:
        """The sheets as they stand in the workbook, the one that is seen first being marked."""
        for name in self._last:
            self._book.move_sheet(name, len(self._sheets))
        sheets: list[Any] = self._book.worksheets
        if self._opens_at:
            self._book.active = [sheet.title for sheet in sheets].index(self._opens_at)
            for sheet in sheets:
                sheet.sheet_view.tabSelected = sheet.title == self._opens_at
        return sheets

    def save(self, stream: BinaryIO, progress: Progress | None = None) -> None:
        """Writes the workbook. Nothing more may be written into it. ``progress`` hears of bytes that are packed."""
        from openpyxl.writer.excel import ExcelWriter

        for sheet in self._sheets:
            sheet.finish()
        self._book.properties.creator = "Swatch and gauge logbook"
        self._book.properties.title = self.title
        self._saved = True
        places = {sheet: place for place, sheet in enumerate(self._in_order(), start=1)}
        rows = {f"xl/worksheets/sheet{places[sheet.raw]}.xml": sheet.rows for sheet in self._sheets}
        with _Archive(stream, rows, progress) as archive:
            ExcelWriter(self._book, archive).save()
            if archive.stopped is not None:
                raise archive.stopped


class SheetWriter:
    """One sheet, from its first row down."""

    def __init__(self, sheet: Any, widths: Sequence[float]) -> None:
        self._sheet, self._widths = sheet, widths
        self.row = 0
        self.rows = SheetRows()
        self.name: str = sheet.title
        self._dresses: dict[CellLook, Dress] = {}
        self._banded: list[str] = []
        self._names: Sequence[str] = ()
        self._who: Callable[[Sequence[Content]], str] = lambda row: f"Sheet “{self.name}”"
        self._merged: list[str] = []

    @property
    def raw(self) -> Any:
        """The sheet itself, for charts and lists of choices."""
        return self._sheet

    def add(self, contents: Sequence[Content], looks: CellLook | Sequence[CellLook] = CELL, height: float | None = None) -> int:
        """One row; its number. Raises RefusedError for text no sheet can hold."""
        every = [looks] * len(contents) if isinstance(looks, CellLook) else looks
        return self._add(contents, [self._dress(look) for look in every], height or self._height(contents, self._wrapped(every)))

    def skip(self, rows: int = 1) -> None:
        """Blank rows."""
        for _ in range(rows):
            self.add(())

    def head(self, title: str, subtitle: str) -> None:
        """The title of the sheet and what it is of, and a blank row."""
        self.add((title,), CellLook(Role.TITLE), height=24)
        self.paragraph(subtitle, Role.SUBTITLE)
        self.skip()

    def paragraph(self, text: str, role: Role = Role.NOTE, columns: int | None = None) -> int:
        """Text over the whole width, wrapped, in a row as high as it needs."""
        across = columns or len(self._widths)
        row = self.add((text,), CellLook(role, wraps=True), height=_LINE * lines_of(text, sum(self._widths[:across])) + 2)
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
        row = self.add([h.name for h in headings], [CellLook(Role.HEADING, right=h.right, wraps=True) for h in headings])
        last = column_letters(len(headings))
        if filtered:
            self._sheet.auto_filter.ref = f"A{row}:{last}{row + max(rows, 1)}"
        if rows:
            self._banded.append(f"A{row + 1}:{last}{row + rows}")
        self.repeat_when_printed(row)
        return row

    def repeat_when_printed(self, row: int) -> None:
        """Prints a row of headings again on top of every later page."""
        self._sheet.print_title_rows = f"{row}:{row}"

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
        looks = [heading.look for heading in headings]
        dresses, wrapped = [self._dress(look) for look in looks], self._wrapped(looks)
        for row in rows:
            self._add(row, dresses, self._height(row, wrapped))
        return top

    def finish(self) -> None:
        """What belongs behind the rows."""
        for area in self._banded:
            self._sheet.conditional_formatting.add(area, band_rule())
        for area in self._merged:
            self._sheet.merged_cells.add(area)
        self._banded, self._merged = [], []

    def _add(self, contents: Sequence[Content], dresses: Sequence[Dress], height: float | None) -> int:
        self.row += 1
        if self.row > MOST_ROWS:
            raise RefusedError(f"A sheet ends at row {grouped(MOST_ROWS)}: split the log in two.")
        self.rows.add(self.row, self._holdable(contents), dresses, height)
        return self.row

    def _wrapped(self, looks: Sequence[CellLook]) -> list[tuple[int, float]]:
        """The places of the columns that wrap, and how many letters a line of each takes."""
        return [
            (place, width * (0.82 if look.role is Role.HEADING else 0.92))
            for place, (look, width) in enumerate(zip(looks, self._widths, strict=False))
            if look.wraps
        ]

    def _height(self, contents: Sequence[Content], wrapped: Iterable[tuple[int, float]]) -> float | None:
        """As high as the longest wrapped text needs, since some spreadsheets leave rows as high as one line; None: one line."""
        lines = 1
        for place, width in wrapped:
            content = contents[place] if place < len(contents) else None
            if isinstance(content, str) and (len(content) > width or "\n" in content):
                lines = max(lines, lines_of(content, width))
        return None if lines == 1 else _LINE * min(lines, _MOST_LINES) + 2

    def _holdable(self, contents: Sequence[Content]) -> list[Content]:
        """The contents with their texts as a cell holds them. Raises RefusedError, naming where a text stands that none can."""
        ready: list[Content] = []
        try:
            for content in contents:
                ready.append(holdable(content) if isinstance(content, str) else content)
        except LogbookError as error:
            where = f", {self._names[len(ready)]}" if len(ready) < len(self._names) else ""
            raise RefusedError(f"{self._who(contents)}{where}: {error}") from error
        return ready

    def _dress(self, look: CellLook) -> Dress:
        """The look as the workbook numbers it."""
        if look not in self._dresses:
            from openpyxl.cell import WriteOnlyCell

            cell = WriteOnlyCell(self._sheet)
            dress(cell, look)
            self._dresses[look] = Dress(cell.style_id, look.role not in (Role.CELL, Role.NOTE, Role.LABEL))
        return self._dresses[look]


class _Archive(zipfile.ZipFile):
    """A workbook's zip file into which the rows of its sheets are poured as their parts go in."""

    def __init__(self, stream: BinaryIO, rows: Mapping[str, SheetRows], progress: Progress | None) -> None:
        super().__init__(stream, "w", zipfile.ZIP_DEFLATED, allowZip64=True)
        self._rows, self._progress = rows, progress
        self._done, self._total = 0, sum(one.size() for one in rows.values())
        self.stopped: Exception | None = None

    def write(self, filename: Any, arcname: Any = None, *rest: Any, **named: Any) -> None:
        """Once stopped no rows are packed any more, but openpyxl comes to its end and clears its files up."""
        if arcname not in self._rows:
            super().write(filename, arcname, *rest, **named)
        elif self.stopped is None:
            try:
                self._rows[arcname].pour(self, arcname, Path(filename).read_text("utf-8"), self._told)
            except Exception as error:  # raised when all is cleared up
                self.stopped = error

    def _told(self, written: int) -> None:
        self._done += written
        if self._progress is not None:
            self._progress(self._done, self._total)
