"""``logbook piece``: a whole panel from a gauge said by hand or a logged swatch: chain, rows, marks, sizes, yarn."""

import argparse
from dataclasses import replace
from pathlib import Path

from logbook.commands.answers import piece_json
from logbook.commands.books import book_of
from logbook.commands.chain_options import (
    add_gauge_options,
    add_target_options,
    all_of,
    count,
    first_stitch_of,
    given,
    hand_gauges,
    hand_pattern,
    not_negative,
    readings,
    refuse,
    require_together,
    target_plan,
)
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with, units_of
from logbook.craft.pieces.fit import ADULT_HEAD_MM
from logbook.craft.pieces.measures import OF_A_SIZE
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.seams import SEAMS, seam_if_named
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Units, read_size
from logbook.craft.words.numbers import read_whole
from logbook.errors import UnreadableError, UsageError
from logbook.tasks.at_home import as_at_home
from logbook.tasks.garment_files import save_as_it_stands
from logbook.tasks.keeping import Logbook
from logbook.tasks.note_words import said
from logbook.tasks.piece_files import save_piece_svg, save_piece_workbook
from logbook.tasks.piece_words import headline, sentences
from logbook.tasks.pieces import Basis, PieceAnswer, basis_by_hand, basis_of_tag, work_out_piece
from logbook.tasks.printed.piece_page import print_page

_MEASURES = tuple(measure for measure in OF_A_SIZE if measure.help)


def fill_piece(parser: Parser) -> None:
    """Its options."""
    add_options(parser)
    parser.set_defaults(run=run)


def add_options(parser: Parser) -> None:
    """All options of a piece: those of a chain, and what it has that a chain has not."""
    add_common(parser, lengths=True)
    add_gauge_options(parser)
    names = ", ".join(seam.name for seam in SEAMS)
    add_target_options(parser, seam_or_width, f"the seam ({names}), or the width each joined edge takes")
    piece = parser.add_argument_group("the piece")
    size = reading_with(read_size)
    for measure in _MEASURES:
        piece.add_argument(f"--{measure.name.replace(' ', '-')}", metavar="LEN", type=size, help=measure.help)
    piece.add_argument("--edge-stitches", metavar="N", type=reading_with(_edges), help="plain stitches at each side, or “auto”")
    piece.add_argument("--edge-gauge", **readings(Direction.STITCHES, "a reading of the plain stitch, such as “20 sts = 12 cm”"))
    extra = count("a number of extra chains", 0)
    piece.add_argument(
        "--edge-extra-chains", metavar="T", type=extra, help="extra chains of the edge stitch (else those of the stitch pattern)"
    )
    piece.add_argument("--svg", metavar="OUT", type=Path, help="write the drawing to this file")
    piece.add_argument("--workbook", metavar="OUT", type=reading_with(_workbook), help="write the figures to this .xlsx")
    piece.add_argument("--html", metavar="OUT", type=Path, help="write a page to print to this file")
    piece.add_argument("--text", metavar="OUT", type=Path, help="write it as text to this file")


def run(arguments: argparse.Namespace) -> int:
    """Answers the question, and writes what is asked for."""
    plan = plan_of(arguments)
    pattern = hand_pattern(arguments)
    units = units_of(arguments)
    if pattern is None:
        with book_of(arguments) as book:
            answer = work_out_piece(logged_basis(arguments, book), plan)
            _write(arguments, answer, units, book)
    else:
        answer = work_out_piece(hand_basis(arguments, pattern), plan)
        _write(arguments, answer, units, None)
    if arguments.json:
        print_json(piece_json(answer, units))
    else:
        print_text(piece_text(answer, units))
    return 0


def piece_text(answer: PieceAnswer, units: Units) -> str:
    """All that is told of a piece."""
    return "\n".join([f"{headline(answer)}.", *sentences(answer, units), "", *said(answer.notes, units)])


def source_words(arguments: argparse.Namespace) -> str:
    """What the numbers are worked out from."""
    return f"From swatch {arguments.swatch}" if arguments.swatch else "From a gauge given with it"


def logged_basis(arguments: argparse.Namespace, book: Logbook) -> Basis:
    """That of the swatch the options name."""
    return basis_of_tag(
        book, arguments.swatch, all_of(arguments.edge_gauge), first_stitch_of(arguments), arguments.edge_extra_chains
    )


def hand_basis(arguments: argparse.Namespace, pattern: StitchPattern) -> Basis:
    """The gauges said by hand. Raises UsageError if rows are to make the width and none were measured."""
    gauge, rows_gauge = hand_gauges(arguments)
    return basis_by_hand(gauge, rows_gauge, pattern, all_of(arguments.edge_gauge), arguments.edge_extra_chains)


def plan_of(arguments: argparse.Namespace) -> PiecePlan:
    """The plan the options speak of. Raises UsageError if they don't go together."""
    require_together(arguments, with_width=("panels", "seam"))
    if arguments.length is None:
        refuse(arguments, ("armhole", "slit"), "needs --length, the length of the piece")
    if given(arguments.edge_gauge) and not given(arguments.edge_stitches):
        raise UsageError("--edge-gauge goes with --edge-stitches")
    if arguments.edge_extra_chains is not None and not given(arguments.edge_gauge):
        raise UsageError("--edge-extra-chains goes with --edge-gauge")
    measures = {measure.field: getattr(arguments, measure.name.replace(" ", "_")) for measure in _MEASURES}
    measures["head_mm"] = measures["head_mm"] or ADULT_HEAD_MM
    return replace(
        target_plan(arguments),
        edge_stitches=None if arguments.edge_stitches == "auto" else arguments.edge_stitches or 0,
        **measures,
    )


def _write(arguments: argparse.Namespace, answer: PieceAnswer, units: Units, book: Logbook | None) -> None:
    if arguments.workbook is not None:
        save_piece_workbook(answer, arguments.workbook, book)
    with as_at_home():
        if arguments.svg is not None:
            save_piece_svg(answer, arguments.svg, units, book)
        if arguments.html is not None:
            save_as_it_stands(print_page(answer, units, source_words(arguments)), arguments.html, book)
        if arguments.text is not None:
            save_as_it_stands(f"{piece_text(answer, units)}\n", arguments.text, book)


def seam_or_width(text: str) -> str | float:
    """The name of a seam, or a width in mm. Raises UnreadableError."""
    seam = seam_if_named(text)
    return not_negative(text) if seam is None else seam.name


def _edges(text: str) -> int | str:
    return "auto" if text.strip().casefold() == "auto" else read_whole(text, "a number of edge stitches", 0, 100)


def _workbook(text: str) -> Path:
    path = Path(text)
    if path.suffix.casefold() != ".xlsx":
        raise UnreadableError(f"“{text}” must end in .xlsx: name it so.")
    return path
