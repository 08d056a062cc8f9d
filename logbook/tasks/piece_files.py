"""A piece handed on: its drawing as SVG, its numbers as a workbook."""

from datetime import date
from pathlib import Path

from logbook.book.logbook import Logbook
from logbook.craft.drawing.svg import to_svg
from logbook.craft.pieces.panel_drawing import panel_drawing
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import PLAIN, written_in
from logbook.sheets.atomic import write_text, write_zip
from logbook.sheets.live_cells import LiveSize
from logbook.sheets.piece_workbook import write_piece_workbook
from logbook.tasks.note_words import said
from logbook.tasks.piece_words import headline
from logbook.tasks.pieces import PieceAnswer
from logbook.tasks.written_rows import charts_for

_WIDTH, _LINE = 720.0, 20.0


def piece_svg(answer: PieceAnswer, units: Units, *, titled: bool = True) -> str:
    """The drawing as an SVG file with title, units and date; or bare, for a page that says them."""
    drawing = panel_drawing(answer.plan, answer.gauges, answer.numbers, units)(_WIDTH, _LINE)
    if not titled:
        return to_svg(drawing, "")
    words = "centimetres" if units is Units.CM else "inches"
    return to_svg(drawing, title_of(answer), (f"Finished sizes in {words}.", date_words(date.today().isoformat())))


def title_of(answer: PieceAnswer) -> str:
    """``Chorus vest: chain 76, 62 rows``."""
    said = headline(answer)
    return f"{answer.plan.name}: {said[0].lower()}{said[1:]}" if answer.plan.name else said


def save_piece_svg(answer: PieceAnswer, target: Path, units: Units, book: Logbook | None = None) -> None:
    """Writes the drawing to ``target``; ``book`` is the logbook that is open. Raises RefusedError, in one sentence."""
    write_text(target, piece_svg(answer, units), _never(book))


@written_in(PLAIN)
def save_piece_workbook(answer: PieceAnswer, target: Path, book: Logbook | None = None) -> None:
    """Writes the numbers to the workbook ``target``, lengths in cm. Raises RefusedError, in one sentence."""
    piece = LiveSize("", answer.plan, answer.numbers)
    today, notes = date.today().isoformat(), said(answer.notes)
    charts = charts_for(answer.plan, answer.gauges.pattern)
    write_zip(
        target,
        lambda stream: write_piece_workbook(stream, title_of(answer), piece, answer.gauges, notes, today, charts),
        _never(book),
    )


def _never(book: Logbook | None) -> tuple[Path, ...]:
    return (book.path,) if book else ()
