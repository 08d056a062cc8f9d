"""A garment handed on: its plan as a file, its drawing as SVG, its whole pattern as text and as a page to print."""

import json
from datetime import date
from pathlib import Path
from typing import BinaryIO

from logbook.book.logbook import Logbook
from logbook.craft.drawing.svg import to_svg
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.garment_drawing import garment_drawing, piece_drawing, pieces_drawing, without_faults
from logbook.craft.garments.joins import JoinVerdict
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.plan_file import plan_value
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import PLAIN, written_in
from logbook.craft.words.printed_sizes import printed_length
from logbook.craft.words.terms import Terms
from logbook.sheets.atomic import write_text, write_zip
from logbook.sheets.garment_workbook import write_garment_workbook
from logbook.tasks.garment_words import notes, problems
from logbook.tasks.garments import GarmentAnswer
from logbook.tasks.note_words import in_all_sizes
from logbook.tasks.written.garment import whole_pattern
from logbook.tasks.written.page import pattern_page
from logbook.tasks.written.parts import part_lines, plain_text
from logbook.tasks.written.written_garment import WrittenGarment
from logbook.tasks.written_rows import charts_of

_SHEET_WIDTH, _LINE = 720.0, 20.0
_BESIDE_WIDTH = 400.0
"""Of a drawing that stands beside the lines of its piece."""
_HIGHEST_ON_A_PAGE = 15.0
"""Line heights of a drawing that stands on the page of its piece."""


@written_in(PLAIN)
def save_plan(plan: GarmentPlan, target: Path, book: Logbook | None = None) -> None:
    """Writes the plan to a file that ``read_plan`` takes in again. Raises RefusedError, in one sentence."""
    text = json.dumps(plan_value(plan), ensure_ascii=False, indent=2) + "\n"
    write_text(target, text, _never(book))


def garment_svg(answer: GarmentAnswer, size: GarmentInSize, units: Units, today: date | None = None) -> str:
    """The drawing of one size as an SVG file with title, units and date."""
    words = "centimetres" if units is Units.CM else "inches"
    notes = (*_letters(size), f"Finished sizes in {words}.", date_words((today or date.today()).isoformat()))
    return to_svg(garment_drawing(size, units)(_SHEET_WIDTH, _LINE), f"{answer.plan.name}, {size.name}", notes)


def _letters(size: GarmentInSize) -> tuple[str, ...]:
    """What the letters at joined edges mean."""
    if not size.joins:
        return ()
    bad = any(join.verdict is JoinVerdict.TROUBLE for join in size.joins)
    return ("Edges with the same letter are joined" + ("; those with ✕ do not fit." if bad else "."),)


def save_garment_svg(answer: GarmentAnswer, size: GarmentInSize, target: Path, units: Units, book: Logbook | None = None) -> None:
    """Writes the drawing of one size. Raises RefusedError, in one sentence."""
    write_text(target, garment_svg(answer, size, units), _never(book))


def written(answer: GarmentAnswer, terms: Terms) -> WrittenGarment:
    """What the whole pattern is made of."""
    return WrittenGarment(plan=answer.plan, sizes=answer.numbers, cloths=answer.cloths, swatches=answer.swatches, terms=terms)


def pattern_text(answer: GarmentAnswer, terms: Terms) -> str:
    """The whole pattern as plain text."""
    return plain_text(answer.plan.name, whole_pattern(written(answer, terms)))


def pattern_html(answer: GarmentAnswer, terms: Terms, units: Units, today: date | None = None) -> str:
    """The whole pattern as a page to print, drawn in its middle size."""
    size = without_faults(answer.numbers[len(answer.numbers) // 2])
    drawings = {"": to_svg(pieces_drawing(size)(_SHEET_WIDTH, _LINE), "")}
    for piece in size.pieces:
        drawings[piece.name] = to_svg(
            piece_drawing(size, piece.name, units, _HIGHEST_ON_A_PAGE, _printed)(_BESIDE_WIDTH, _LINE), ""
        )
    drawn = f"Drawn: size {size.name}" if len(answer.numbers) > 1 else ""
    foot = f"Finished measurements. {date_words((today or date.today()).isoformat())}"
    return pattern_page(answer.plan.name, whole_pattern(written(answer, terms)), drawings, foot, drawn, " ".join(_letters(size)))


def _printed(mm: float, units: Units) -> str:
    """A length in a drawing as the text beside it tells it."""
    return f"{printed_length(mm, units)} {units.value}"


def save_pattern_text(answer: GarmentAnswer, terms: Terms, target: Path, book: Logbook | None = None) -> None:
    """Writes the whole pattern to a text file. Raises RefusedError, in one sentence."""
    write_text(target, pattern_text(answer, terms), _never(book))


def save_as_it_stands(text: str, target: Path, book: Logbook | None = None) -> None:
    """Writes a pattern, page or drawing as it stands, such as one that was published. Raises RefusedError, in one sentence."""
    write_text(target, text, _never(book))


def save_bytes_as_they_stand(content: bytes, target: Path, book: Logbook | None = None) -> None:
    """Writes a workbook as it stands, such as one that was published. Raises RefusedError, in one sentence."""

    def write(stream: BinaryIO) -> None:
        stream.write(content)

    write_zip(target, write, _never(book))


@written_in(PLAIN)
def garment_workbook(answer: GarmentAnswer, terms: Terms, stream: BinaryIO, day: str, *, published: bool = False) -> None:
    """Writes the workbook of a garment, worked out (and ``published``) on that ISO day. Raises RefusedError, naming the text, for
    a name that no sheet can hold."""
    said = in_all_sizes([(size.name, (*problems(answer, size), *notes(answer, size))) for size in answer.numbers])
    parts = [(part.heading, part_lines(part)) for part in whole_pattern(written(answer, terms))]
    title, charts = answer.plan.name or "A garment", charts_of(swatch.pattern for swatch in answer.swatches.values())
    write_garment_workbook(stream, title, answer.numbers, answer.cloths, said, parts, day, charts, published=published)


def save_garment_workbook(answer: GarmentAnswer, terms: Terms, target: Path, book: Logbook | None = None) -> None:
    """Writes the garment to a workbook. Raises RefusedError, in one sentence."""
    today = date.today().isoformat()
    write_zip(target, lambda stream: garment_workbook(answer, terms, stream, today), _never(book))


def save_pattern_page(answer: GarmentAnswer, terms: Terms, units: Units, target: Path, book: Logbook | None = None) -> None:
    """Writes the whole pattern to a page to print. Raises RefusedError, in one sentence."""
    write_text(target, pattern_html(answer, terms, units), _never(book))


def _never(book: Logbook | None) -> tuple[Path, ...]:
    return (book.path,) if book else ()
