"""The sheets "Made pieces" and "Pieces": planned beside measured with the drift, and what each planned piece comes to."""

from collections.abc import Iterator, Mapping, Sequence

from logbook.craft.gauges.drift import HandsDrift
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.words.counting import counted
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import TENTHS, WHOLE, Content, Formula, Heading
from logbook.sheets.log import Log, PieceLine

MADE, PIECES = "Made pieces", "Pieces"
_SIGNED = "+0.0%;-0.0%;0.0%"
MADE_HEADINGS = (
    Heading("name", 22, wraps=True), Heading("piece", 18, wraps=True), Heading("size", 6), Heading("swatch", 8),
    Heading("date", 11),
    Heading("chain", 6, WHOLE, right=True), Heading("rows", 6, WHOLE, right=True), Heading("hook mm", 7, "0.0##", right=True),
    Heading("predicted width cm", 10, TENTHS, right=True), Heading("washed width cm", 9, TENTHS, right=True),
    Heading("width off by", 8, _SIGNED, right=True),
    Heading("predicted length cm", 10, TENTHS, right=True), Heading("washed length cm", 10, TENTHS, right=True),
    Heading("length off by", 8, _SIGNED, right=True),
    Heading("worked width cm", 9, TENTHS, right=True), Heading("worked length cm", 10, TENTHS, right=True),
    Heading("predicted grams", 10, WHOLE, right=True), Heading("grams used", 7, WHOLE, right=True),
    Heading("yarn off by", 8, _SIGNED, right=True),
    Heading("predicted hours", 10, TENTHS, right=True), Heading("hours", 7, TENTHS, right=True),
    Heading("hours off by", 8, _SIGNED, right=True),
    Heading("fits", 20, wraps=True), Heading("notes", 24, wraps=True), Heading("uid", 12, hidden=True),
)  # fmt: skip
TOP = 4
"""The row of the headings in both sheets."""


def write_made(book: BookWriter, log: Log) -> None:
    """Every made piece, planned beside measured."""
    sheet = book.sheet(MADE, MADE_HEADINGS, landscape=True, top=TOP, freeze=1)
    sheet.head(
        "Made pieces",
        f"What was planned, by the swatch alone, beside what was measured after washing. {' '.join(_strays(log.drift))}",
    )
    pieces = {piece.uid: piece.name for piece in log.pieces}
    rows = (made_cells(row, made, pieces, log.tags) for row, made in enumerate(log.made, start=TOP + 1))
    sheet.table(MADE_HEADINGS, rows, len(log.made))


def _strays(known: HandsDrift) -> Iterator[str]:
    """How far pieces stray, a sentence a hand."""
    for drifts in known.hands.values() or (known.of(""),):
        whose = f"A piece by {drifts.stitches.hand}" if drifts.stitches.hand else "A finished piece"
        parts = []
        for drift, less, more, along in (
            (drifts.stitches, "narrower", "wider", "in width"), (drifts.rows, "shorter", "longer", "in length"),
        ):  # fmt: skip
            learnt = (
                f"learned from {counted(drift.pieces, 'piece')}" if drift.pieces else "assumed, until you log finished pieces"
            )
            leans = f", {abs(drift.factor - 1) * 100:.1f} % {more if drift.lean > 0 else less} counted in" if drift.lean else ""
            parts.append(f"by up to {drift.give_or_take * 100:.1f} % {along} ({learnt}{leans})")
        yield f"{whose} usually differs from its swatch {' and '.join(parts)}."


def made_cells(row: int, made: MadePiece, pieces: Mapping[str, str], tags: Mapping[str, str]) -> tuple[Content, ...]:
    """A made piece in the columns of ``MADE_HEADINGS``."""
    return (
        made.name, pieces.get(made.piece, ""), made.size, tags.get(made.swatch, ""), made.date,
        made.chain, made.rows, made.hook_mm,
        in_cm(made.predicted_width_mm), in_cm(made.washed_width_mm),
        _strayed(row, "I", "J", made.predicted_width_mm, made.washed_width_mm),
        in_cm(made.predicted_length_mm), in_cm(made.washed_length_mm),
        _strayed(row, "L", "M", made.predicted_length_mm, made.washed_length_mm),
        in_cm(made.worked_width_mm), in_cm(made.worked_length_mm),
        made.predicted_grams, made.grams_used, _strayed(row, "Q", "R", made.predicted_grams, made.grams_used),
        _in_hours(made.predicted_minutes), _in_hours(made.minutes),
        _strayed(row, "T", "U", made.predicted_minutes, made.minutes), made.fits, made.notes, made.uid,
    )  # fmt: skip


def _strayed(row: int, before: str, after: str, predicted: float | None, measured: float | None) -> Content:
    value = measured / predicted - 1 if predicted and measured is not None else ""
    return Formula(f'IF(AND(N({before}{row})>0,ISNUMBER({after}{row})),{after}{row}/{before}{row}-1,"")', value)


def _in_hours(minutes: float | None) -> float | None:
    return None if minutes is None else minutes / 60


_PIECE_HEADINGS = (
    Heading("piece", 30, wraps=True), Heading("size", 9), Heading("swatch", 10), Heading("body cm", 9, TENTHS, right=True),
    Heading("chain", 9, WHOLE, right=True), Heading("base stitches", 9, WHOLE, right=True), Heading("rows", 9, WHOLE, right=True),
    Heading("width cm", 9, TENTHS, right=True), Heading("length cm", 9, TENTHS, right=True),
    Heading("give or take cm", 9, TENTHS, right=True), Heading("yarn g", 9, WHOLE, right=True),
    Heading("hours", 8, TENTHS, right=True), Heading("published", 10),
    Heading("remark", 34, wraps=True),
)  # fmt: skip


def write_pieces(book: BookWriter, lines: Sequence[PieceLine]) -> None:
    """What each planned piece comes to, a line for each of its sizes: for reading only."""
    sheet = book.sheet(PIECES, _PIECE_HEADINGS, landscape=True, top=TOP, freeze=1)
    sheet.head(
        "Pieces",
        "What each planned piece comes to, as finished; one that was published has its numbers as they were then. Hidden sheets "
        "called “Kept …” bring pieces, charts and garments back when this workbook is imported.",
    )
    sheet.table(_PIECE_HEADINGS, map(_line_cells, lines), len(lines))


def _line_cells(line: PieceLine) -> tuple[Content, ...]:
    return (
        line.piece, line.size, line.swatch, in_cm(line.body_mm), line.chain, line.stitches, line.rows, in_cm(line.width_mm),
        in_cm(line.length_mm), in_cm(line.give_or_take_mm), line.grams, line.hours,
        "yes" if line.published else "", line.trouble,
    )  # fmt: skip


def in_cm(mm: float | None) -> float | None:
    """mm as the cm that read back as the same mm."""
    return None if mm is None else round(mm / 10, 9)
