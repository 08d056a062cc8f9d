"""Body charts: the trade's to begin with, those a maker keeps, and those read from a sheet."""

from pathlib import Path

from logbook.book import body_charts as kept
from logbook.book.logbook import Logbook
from logbook.craft.sizes.body_chart import BodyChart, chart_of_text, chart_text, read_chart
from logbook.craft.sizes.trade_charts import TRADE_CHARTS
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.limits import Unusable
from logbook.sheets.reading import read_sheet

BUILT_IN = TRADE_CHARTS


def chart_texts(book: Logbook | None) -> dict[str, str]:
    """All charts by name as lines to edit: the maker's own, and the built-in ones they did not change."""
    return {name: chart_text(chart) for name, chart in BUILT_IN.items()} | (_kept(book) if book else {})


def chart_called(name: str, book: Logbook | None = None) -> BodyChart:
    """The chart of that name; the maker's own goes before a built-in one. Raises RefusedError, naming those there are."""
    texts = chart_texts(book)
    if name not in texts:
        raise RefusedError(f"There is no body chart “{name}”: the charts are {', '.join(texts)}.")
    return chart_of_text(name, texts[name])


def save_chart(book: Logbook, name: str, text: str) -> BodyChart:
    """Keeps a chart under its name. Raises a LogbookError, in one sentence, if it can't be read; then nothing is written."""
    with book.writing(f"body chart {name}") as writing:
        return kept.put_chart(writing, name, text)


def delete_chart(book: Logbook, name: str) -> None:
    """Takes a maker's own chart out; a built-in one is then again as it was. Undo brings it back."""
    with book.writing(f"delete body chart {name}") as writing:
        kept.remove_chart(writing, name)


def chart_from_sheet(path: Path) -> BodyChart:
    """The chart in a sheet: its heading, then a row for each size, in cm. Raises RefusedError, in one sentence."""
    rows = read_sheet(path).rows
    if not rows:
        raise RefusedError(f"“{path.name}” is empty: head its columns size, bust and so on, then give a row for each size.")
    cells = [["" if cell is None or isinstance(cell, Unusable) else str(cell) for cell in row.cells] for row in rows]
    try:
        return read_chart(path.stem, cells[0], cells[1:])
    except LogbookError as error:
        raise RefusedError(f"“{path.name}”: {error}") from error


def _kept(book: Logbook) -> dict[str, str]:
    with book.reading() as connection:
        return kept.chart_texts(connection)
