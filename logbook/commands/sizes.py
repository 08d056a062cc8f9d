"""``logbook sizes``: a garment in several sizes: the numbers of each, which come out the same, and the pattern's lines."""

import argparse
from pathlib import Path
from typing import Any

from logbook.commands.answers import piece_json, table
from logbook.commands.books import book_of
from logbook.commands.chain_options import given, hand_pattern, refuse
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, reading_with, units_of
from logbook.commands.piece import add_options, hand_basis, logged_basis, plan_of, source_words
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.body_chart import End
from logbook.craft.sizes.run_numbers import figures_of
from logbook.craft.sizes.size_run import SizeNumbers, sizes_of_chart
from logbook.craft.words.lengths import Units, read_length
from logbook.craft.words.terms import Terms
from logbook.errors import UsageError
from logbook.tasks.at_home import as_at_home
from logbook.tasks.body_charts import BUILT_IN, chart_called, chart_from_sheet
from logbook.tasks.garment_files import save_as_it_stands
from logbook.tasks.keeping import Logbook
from logbook.tasks.note_words import said
from logbook.tasks.piece_files import save_piece_svg
from logbook.tasks.pieces import Basis
from logbook.tasks.printed.run_page import run_page
from logbook.tasks.run_words import shown
from logbook.tasks.size_runs import RunAnswer, lines_of, save_lines, save_run_workbook, work_out_run
from logbook.tasks.written_rows import charts_for

ARMHOLE_DEPTH = "armhole depth"


def fill_sizes(parser: Parser) -> None:
    """Its options."""
    add_options(parser)
    add_size_options(parser)
    parser.set_defaults(run=run)


def add_size_options(parser: Parser) -> None:
    """Which sizes, and what to write of them."""
    sizes = parser.add_argument_group("the sizes")
    which = sizes.add_mutually_exclusive_group()
    which.add_argument("--sizes", metavar="FILE", type=Path, help="a .csv with the columns size, bust and other measures, in cm")
    which.add_argument("--chart", metavar="NAME", help=f"a body chart: {', '.join(BUILT_IN)}, or one of the logbook's")
    sizes.add_argument(
        "--end", choices=[end.value for end in End], help="which value to take where the chart has a range (middle)"
    )
    deeper = reading_with(read_length)
    sizes.add_argument("--armhole-deeper", metavar="LEN", type=deeper, help="how much deeper than in the chart the armholes are")
    sizes.add_argument("--size", metavar="NAME", help="the size that --svg draws")
    sizes.add_argument(
        "--lines", choices=[terms.value.lower() for terms in Terms], help="print the pattern lines in US or UK terms"
    )


def run(arguments: argparse.Namespace) -> int:
    """Answers the question, and writes what is asked for."""
    _require_together(arguments)
    pattern = hand_pattern(arguments)
    if pattern is None:
        with book_of(arguments) as book:
            return _answered(arguments, logged_basis(arguments, book), book)
    return _answered(arguments, hand_basis(arguments, pattern), None)


def _require_together(arguments: argparse.Namespace) -> None:
    """Raises UsageError if an option is given that would not be heeded, or one is missing that another needs."""
    refuse(arguments, ("width", "body"), "comes from the sizes: leave it out")
    if arguments.sizes is None and arguments.chart is None:
        raise UsageError("give the sizes: --sizes FILE.csv with the columns size and bust, or --chart women")
    if given(arguments.svg) != given(arguments.size):
        raise UsageError("--svg and --size go together: the drawing is of one size")
    if arguments.json:
        refuse(arguments, ("lines",), "is text: leave --json out")
    if arguments.armhole_deeper is not None:
        refuse(arguments, ("armhole",), "says how deep the armholes are, and so does --armhole-deeper: leave one of them out")
        if arguments.length is None:
            raise UsageError("--armhole-deeper needs --length, the length of the piece")


def _write(arguments: argparse.Namespace, answer: RunAnswer, terms: Terms, units: Units, book: Logbook | None) -> None:
    if arguments.workbook is not None:
        save_run_workbook(answer, terms, arguments.workbook, book)
    with as_at_home():
        if arguments.svg is not None:
            save_piece_svg(answer.piece(_size_called(answer, arguments.size)), arguments.svg, units, book)
        if arguments.html is not None:
            figures = [figures_of(size) for size in answer.run.sizes]
            charts = charts_for(answer.plan, answer.gauges.pattern)
            html = run_page("", figures, lines_of(answer, terms), units, f"{source_words(arguments)}.", charts=charts)
            save_as_it_stands(html, arguments.html, book)
        if arguments.text is not None:
            save_lines(lines_of(answer, terms), arguments.text, book)


def _answered(arguments: argparse.Namespace, basis: Basis, book: Logbook | None) -> int:
    sizes = _sizes(arguments, book)
    plan = plan_of(argparse.Namespace(**(vars(arguments) | {"body": sizes[0].body_mm})))
    units, terms = units_of(arguments), Terms((arguments.lines or "us").upper())
    answer = work_out_run(basis, plan, sizes)
    _write(arguments, answer, terms, units, book)
    if arguments.json:
        print_json([size_json(answer, size, units) for size in answer.run.sizes])
    elif arguments.lines:
        print_text(lines_of(answer, terms), end="")
    else:
        print_text(run_text(answer, units))
    return 0


def _sizes(arguments: argparse.Namespace, book: Logbook | None) -> tuple[SizePlan, ...]:
    chart = chart_called(arguments.chart, book) if arguments.sizes is None else chart_from_sheet(arguments.sizes)
    deeper, end = arguments.armhole_deeper, End(arguments.end or End.MIDDLE)
    own = arguments.sizes is not None and arguments.armhole is None and arguments.length is not None
    if deeper is None and own and all(size.measure(ARMHOLE_DEPTH, end) is not None for size in chart.sizes):
        deeper = 0.0  # a column of the maker's own sheet is there to be used
    return sizes_of_chart(chart, end, armhole_deeper_mm=deeper)


def _size_called(answer: RunAnswer, name: str) -> SizeNumbers:
    found = next((size for size in answer.run.sizes if size.name == name), None)
    if found is None:
        raise UsageError(f"“{name}” is not one of the sizes: they are {', '.join(size.name for size in answer.run.sizes)}")
    return found


def size_json(answer: RunAnswer, size: SizeNumbers, units: Units) -> dict[str, Any]:
    """One size: a piece's keys and its own. What would part it from sizes that come out the same stands among its notes."""
    fit = size.piece.fit
    value: dict[str, Any] = {"size": size.name, "body_mm": size.body_mm, **piece_json(answer.piece(size), units)}
    if size.same_as:
        value["notes"] = [*said(answer.notes), *value["notes"]]
    return value | {
        "around_mm": fit.around_mm if fit else None,
        "ease_mm": fit.ease_mm if fit else None,
        "same_as": list(size.same_as),
    }


_COLUMNS = ("size", "body", "chain", "repeats", "rows", "width", "length", "all round", "ease", "yarn", "balls")


def run_text(answer: RunAnswer, units: Units) -> str:
    """All sizes in one table, the yarn for all, then what is to be said."""
    rows = [[shown(figures_of(size), name, units) for name in _COLUMNS] for size in answer.run.sizes]
    yarn = answer.run.yarn
    if yarn is not None:
        rows.append(["all", *[""] * (len(_COLUMNS) - 3), f"{yarn.grams:.0f} g", "–" if yarn.balls is None else str(yarn.balls)])
    return "\n".join([table(_COLUMNS, rows, right=range(1, len(_COLUMNS))), "", *answer.sentences(units)])
