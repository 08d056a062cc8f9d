"""A piece handed on: its drawing as SVG, its figures as a workbook."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

from logbook.book.logbook import Logbook
from logbook.craft.drawing.svg import to_svg
from logbook.craft.pieces.options import Option
from logbook.craft.pieces.panel_drawing import panel_drawing
from logbook.craft.words.lengths import Units
from logbook.sheets.atomic import write_text, write_zip
from logbook.sheets.piece_workbook import Figure, write_piece_workbook
from logbook.tasks.note_words import said
from logbook.tasks.piece_words import headline, mark_place
from logbook.tasks.pieces import PieceAnswer

_WIDTH, _LINE = 720.0, 20.0


def piece_svg(answer: PieceAnswer, units: Units, *, titled: bool = True) -> str:
    """The drawing as an SVG file with title, units and date; or bare, for a page that says them."""
    drawing = panel_drawing(answer.plan, answer.gauges, answer.numbers, units)(_WIDTH, _LINE)
    if not titled:
        return to_svg(drawing, "")
    words = "centimetres" if units is Units.CM else "inches"
    return to_svg(drawing, title_of(answer), (f"Finished sizes in {words}.", date.today().isoformat()))


def title_of(answer: PieceAnswer) -> str:
    """``Chorus vest: chain 76, 62 rows``."""
    said = headline(answer)
    return f"{answer.plan.name}: {said[0].lower()}{said[1:]}" if answer.plan.name else said


def save_piece_svg(answer: PieceAnswer, target: Path, units: Units, book: Logbook | None = None) -> None:
    """Writes the drawing to ``target``; ``book`` is the logbook that is open. Raises RefusedError, in one sentence."""
    write_text(target, piece_svg(answer, units), _never(book))


def save_piece_workbook(answer: PieceAnswer, target: Path, book: Logbook | None = None) -> None:
    """Writes the figures to the workbook ``target``, lengths in cm. Raises RefusedError, in one sentence."""
    figures = list(figures_of(answer))
    notes = (f"Finished sizes; lengths in cm. {date.today().isoformat()}", *said(answer.notes))
    write_zip(target, lambda stream: write_piece_workbook(stream, title_of(answer), figures, notes), _never(book))


def figures_of(answer: PieceAnswer) -> Iterator[Figure]:
    """The figures of a piece, lengths in cm."""
    numbers = answer.numbers
    yield Figure("chain", numbers.chain, "chains")
    yield Figure("stitches", numbers.stitches, "stitches")
    yield Figure("repeats", numbers.repeats, "repeats")
    yield Figure("edge stitches at each side", numbers.edge_stitches, "stitches")
    if numbers.rows is not None:
        yield Figure("rows", numbers.rows, "rows")
    yield _size("width", numbers.width)
    if numbers.length is not None:
        yield _size("length", numbers.length)
    for name, mark in numbers.marks.items():
        yield Figure(f"{name}: {mark_place(mark)}", mark.true_mm / 10, "cm")
    if numbers.fit is not None:
        yield Figure("all round", numbers.fit.around_mm / 10, "cm")
        yield Figure("ease", numbers.fit.ease_mm / 10, "cm")
    if numbers.yarn is not None:
        yield Figure("yarn", numbers.yarn.grams, "g", numbers.yarn.give_or_take_grams)
        if numbers.yarn.balls is not None:
            yield Figure("balls with reserve", numbers.yarn.balls, "balls")


def _size(what: str, size: Option) -> Figure:
    before = None if size.before_washing_mm is None else size.before_washing_mm / 10
    return Figure(what, size.mm / 10, "cm", None if size.give_or_take_mm is None else size.give_or_take_mm / 10, before)


def _never(book: Logbook | None) -> tuple[Path, ...]:
    return (book.path,) if book else ()
