"""Written rows in a file, proven, and drawn as a chart."""

from collections.abc import Iterable
from datetime import date
from functools import lru_cache
from pathlib import Path

from logbook.book.logbook import Logbook
from logbook.craft.drawing.svg import to_svg
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.rows.chart import RowsDrawing, chains_drawn, chart
from logbook.craft.rows.courses import Courses
from logbook.craft.rows.proof import fitting_rows, prove
from logbook.craft.rows.report import Proof
from logbook.craft.sizes.pattern_lines import rows_are_of
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.dates import date_words
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.atomic import write_text
from logbook.sheets.limits import require_ordinary

MOST_BYTES = 1_000_000
_WIDTH, _LINE = 900.0, 20.0


def prove_file(path: Path, terms: Terms | None) -> tuple[str, Proof]:
    """The text in the file ``path``, and what its rows say of themselves. Raises RefusedError if it holds no text or no rows."""
    text = _text_of(path)
    proof = prove(text, terms)
    if not proof.rows and not proof.problems:
        raise RefusedError(f"There are no rows in “{path.name}”: write them one to a line, or begin each with “Row 1:”.")
    return text, proof


def save_chart(path: Path, terms: Terms | None, target: Path) -> None:
    """Draws the rows in ``path``, as far as they fit, to the SVG file ``target``. Raises RefusedError, in one sentence."""
    if target.exists() and target.samefile(path):
        raise RefusedError(f"“{target.name}” holds the rows: draw the chart to another file.")
    write_chart(fitting_rows(_text_of(path), terms), path.stem, target)


def write_chart(courses: Courses, title: str, target: Path, book: Logbook | None = None) -> None:
    """Draws rows to the SVG file ``target``; ``book`` is the logbook that is open. Raises RefusedError, in one sentence."""
    drawing = chart(courses, _WIDTH, _LINE)
    never = (book.path,) if book is not None else ()
    write_text(target, to_svg(drawing, title, (_drawn_on(courses), date_words(date.today().isoformat()))), never)


def charts_of(patterns: Iterable[StitchPattern | None]) -> list[RowsDrawing]:
    """The charts of their rows as far as they fit, each once; of those that have rows which can be drawn."""
    found = (_chart_of(pattern.name, pattern.rows_text, pattern.terms) for pattern in patterns if pattern is not None)
    return list(dict.fromkeys(one for one in found if one is not None))


def charts_for(plan: PiecePlan, pattern: StitchPattern) -> list[RowsDrawing]:
    """The chart for a piece of ``plan``, where the rows help with it."""
    return charts_of([pattern] if rows_are_of(plan, pattern) else [])


@lru_cache(maxsize=32)
def _chart_of(name: str, rows: str, terms: str) -> RowsDrawing | None:
    if not rows.strip():
        return None
    try:
        courses = fitting_rows(rows, Terms(terms) if terms in tuple(Terms) else None)
        return RowsDrawing(name, _drawn_on(courses), chart(courses, _WIDTH, _LINE)) if courses.rows else None
    except LogbookError:
        return None


def _drawn_on(courses: Courses) -> str:
    return f"Drawn on {chains_drawn(courses)} chains."


def _text_of(path: Path) -> str:
    try:
        require_ordinary(path, "the text file with the rows")
        with path.open("rb") as stream:
            data = stream.read(MOST_BYTES + 1)
    except OSError as error:
        raise RefusedError(f"“{path.name}” cannot be read ({error.strerror}).") from error
    if len(data) > MOST_BYTES:
        raise RefusedError(f"“{path.name}” is larger than 1 MB: give it only the rows of one pattern.")
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        raise RefusedError(f"“{path.name}” is not text in UTF-8: save it so.") from error
