"""``logbook garment``: a garment of several pieces in all its sizes, from the file of a plan."""

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from logbook.commands.answers import give_or_take, table
from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, units_of
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import Joined
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.published import Published
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import YOKES
from logbook.craft.garments.together import yarn_of_piece
from logbook.craft.words.counting import counted, listed
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.terms import Terms
from logbook.errors import UsageError
from logbook.tasks.at_home import as_at_home
from logbook.tasks.garment_files import (
    pattern_text,
    save_as_it_stands,
    save_bytes_as_they_stand,
    save_garment_svg,
    save_garment_workbook,
    save_pattern_page,
    save_pattern_text,
    save_plan,
)
from logbook.tasks.garment_publishing import (
    published,
    published_drawing,
    published_page,
    published_workbook,
    would_change,
)
from logbook.tasks.garment_words import notes, problems, rate_words
from logbook.tasks.garments import GarmentAnswer, garment_called, keep, needs_book, read_plan, work_out
from logbook.tasks.keeping import Logbook
from logbook.tasks.note_words import in_all_sizes


def fill_garment(parser: Parser) -> None:
    """Its options."""
    parser.add_argument("plan", metavar="PLAN.json", type=Path, nargs="?", help="the file of a plan")
    parser.add_argument("--name", metavar="NAME", help="a garment of the logbook")
    parser.add_argument("--keep", action="store_true", help="save the garment of the file in the logbook")
    parser.add_argument(
        "--lines", choices=[terms.value.lower() for terms in Terms], help="print the whole pattern in US or UK terms"
    )
    parser.add_argument("--text", metavar="OUT", type=Path, help="write the whole pattern to a text file")
    parser.add_argument("--html", metavar="OUT", type=Path, help="write the whole pattern to a page to print")
    parser.add_argument("--workbook", metavar="OUT", type=Path, help="write all its numbers to a workbook")
    parser.add_argument("--svg", metavar="OUT", type=Path, help="draw one size: all its pieces together, and each of them large")
    parser.add_argument("--size", metavar="NAME", help="the size that is drawn (the first)")
    parser.add_argument("--save-plan", metavar="FILE", type=Path, help="write the plan to a file")
    add_common(parser, lengths=True)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Works the garment out and answers."""
    if (arguments.plan is None) == (arguments.name is None):
        raise UsageError("name the garment: the file of its plan, or --name NAME of one in the logbook")
    if arguments.json and arguments.lines and arguments.text is None and arguments.html is None:
        raise UsageError("--lines is text: leave --json out")
    if arguments.size is not None and arguments.svg is None:
        raise UsageError("--size says which size --svg draws: give --svg OUT too")
    if arguments.keep and arguments.plan is None:
        raise UsageError("--keep takes in the file of a plan: the garment named with --name is in the logbook already")
    plan = None if arguments.plan is None else read_plan(arguments.plan)
    if plan is not None and not arguments.keep and not needs_book(plan):
        return _answered(arguments, plan, None)
    with book_of(arguments) as book:
        if plan is not None:
            return _answered(arguments, plan, book)
        garment = garment_called(book, arguments.name)
        return _answered(arguments, garment.plan, book, published(garment))


def _answered(arguments: argparse.Namespace, plan: GarmentPlan, book: Logbook | None, before: Published | None = None) -> int:
    """Answers by the plan; what was ``published`` of it is handed on as it was published."""
    terms, units = Terms((arguments.lines or "us").upper()), units_of(arguments)
    answer = None if before is not None and arguments.lines and not arguments.json else work_out(plan, book)
    if arguments.keep and book is not None:
        keep(book, plan)
    if arguments.save_plan is not None:
        save_plan(plan, arguments.save_plan, book)
    if before is not None:
        _write_published(arguments, before, terms, units, book)
    elif answer is not None:
        _write(arguments, answer, terms, units, book)
    if answer is None:
        print(before.texts[terms.value] if before is not None else "", end="")
    elif arguments.json:
        print_json(garment_json(answer, before))
    elif arguments.lines:
        print(pattern_text(answer, terms), end="")
    else:
        print_text("\n".join([garment_text(answer, units), *_as_published(answer, before)]))
    return 0


def _write(arguments: argparse.Namespace, answer: GarmentAnswer, terms: Terms, units: Units, book: Logbook | None) -> None:
    if arguments.workbook is not None:
        save_garment_workbook(answer, terms, arguments.workbook, book)
    with as_at_home():
        if arguments.svg is not None:
            save_garment_svg(answer, _size_called(answer, arguments.size), arguments.svg, units, book)
        if arguments.text is not None:
            save_pattern_text(answer, terms, arguments.text, book)
        if arguments.html is not None:
            save_pattern_page(answer, terms, units, arguments.html, book)


def _write_published(arguments: argparse.Namespace, before: Published, terms: Terms, units: Units, book: Logbook | None) -> None:
    if arguments.svg is not None:
        size = _named(list(before.sizes), arguments.size)
        save_as_it_stands(published_drawing(before, size, units), arguments.svg, book)
    if arguments.text is not None:
        save_as_it_stands(before.texts[terms.value], arguments.text, book)
    if arguments.workbook is not None:
        save_bytes_as_they_stand(published_workbook(before, terms), arguments.workbook, book)
    if arguments.html is not None:
        save_as_it_stands(published_page(before, terms, units), arguments.html, book)


def _as_published(answer: GarmentAnswer, before: Published | None) -> list[str]:
    """When it was published, and what would be otherwise now."""
    if before is None:
        return []
    return [
        f"Published on {date_words(before.date)}; text, page, drawing and workbook are as published.",
        *would_change(before, answer),
    ]


def _size_called(answer: GarmentAnswer, name: str | None) -> GarmentInSize:
    names = [size.name for size in answer.numbers]
    return answer.numbers[names.index(_named(names, name))]


def _named(names: Sequence[str], name: str | None) -> str:
    if name is not None and name not in names:
        raise UsageError(f"“{name}” is not one of the sizes: they are {listed(names)}")
    return names[0] if name is None else name


def garment_json(answer: GarmentAnswer, before: Published | None = None) -> dict[str, Any]:
    """All sizes as they are now; lengths in mm. ``problems`` and ``notes`` of all sizes stand once more at the end, with their
    sizes; of one that was published also its date and what would be otherwise now."""
    said = {} if before is None else {"published": before.date, "would_change": list(would_change(before, answer))}
    return {
        **said,
        "name": answer.plan.name,
        "sizes": [_size_json(answer, size) for size in answer.numbers],
        "problems": list(in_all_sizes([(size.name, problems(answer, size)) for size in answer.numbers])),
        "notes": list(in_all_sizes([(size.name, notes(answer, size)) for size in answer.numbers])),
    }


def _size_json(answer: GarmentAnswer, size: GarmentInSize) -> dict[str, Any]:
    return {
        "size": size.name,
        "pieces": [_piece_json(answer, size, piece) for piece in size.pieces],
        "joins": [_join_json(join) for join in size.joins],
        "yarn": [
            {"yarn": of.yarn, "colour": of.colour, "grams": of.needed.grams, "metres": of.needed.metres, "balls": of.needed.balls}
            for of in size.yarn
        ],
        "hours": size.hours,
        "hours_give_or_take": size.time.give_or_take_hours if size.time else None,
        "cost": size.cost[0] if size.cost else None,
        "currency": size.cost[1] if size.cost else None,
        "problems": list(problems(answer, size)),
        "notes": list(notes(answer, size)),
    }


def _piece_json(answer: GarmentAnswer, size: GarmentInSize, piece: ShapedPiece) -> dict[str, Any]:
    yarn = yarn_of_piece(piece, answer.cloths[piece.name], size.joins)
    value: dict[str, Any] = {
        "name": piece.name,
        "alike": piece.planned.alike,
        "chain": piece.chain,
        "levels": [{"row": level.row, "stitches": level.stitches, "width_mm": level.width_mm} for level in piece.levels],
        "rows": piece.rows,
        "give_or_take_mm": piece.give_or_take_mm,
        "grams": None if yarn is None else yarn.grams,
        "off_line_mm": piece.off_line_mm,
    }
    if piece.planned.shape in YOKES:
        keys = ("back", "front", "sleeve", "underarm", "body_increases", "sleeve_increases", "body", "arm")
        value |= {key: piece.parts.get(key) for key in keys}
    if piece.picked:
        value["picked_up"] = [
            {"piece": of.piece, "edge": of.edge, "stitches": of.stitches, "rate": list(of.rate), "over": of.over}
            for of in piece.picked
        ]
    return value


def _join_json(join: Joined) -> dict[str, Any]:
    return {
        "of": join.planned.of,
        "edge": join.planned.edge,
        "to": list(join.planned.to),
        "at": join.planned.at,
        "a_mm": join.a.mm,
        "b_mm": join.b_mm,
        "difference_mm": join.difference_mm,
        "verdict": join.verdict.value,
        "rate": list(join.rate),
    }


def garment_text(answer: GarmentAnswer, units: Units) -> str:
    """A table of the pieces for each size, the joins, the yarn; then what is to be said."""
    parts = []
    for size in answer.numbers:
        headings = ("piece", "chain", "stitches", "rows", "width at the end", "give or take")
        rows = [_piece_row(piece, units) for piece in size.pieces]
        parts += [f"{answer.plan.name}, {size.name}", table(headings, rows, right=range(1, len(headings)))]
        parts += [_join_line(join, units) for join in size.joins]
        parts += [_yarn_line(of.yarn, of.colour, of.needed) for of in size.yarn]
        parts.append("")
    said = [(size.name, problems(answer, size, units)) for size in answer.numbers]
    remarks = [(size.name, notes(answer, size, units)) for size in answer.numbers]
    return "\n".join([*parts, *in_all_sizes(said), *in_all_sizes(remarks)]).rstrip()


def _piece_row(piece: ShapedPiece, units: Units) -> tuple[str, ...]:
    first, last = piece.levels[0].stitches, piece.levels[-1]
    counts = str(last.stitches) if first in (last.stitches, 0) else f"{first} → {last.stitches}"
    alike = f" × {piece.planned.alike}" if piece.planned.alike > 1 else ""
    return (
        piece.name + alike,
        "–" if piece.chain is None else str(piece.chain),
        counts,
        str(piece.rows),
        show_length(last.width_mm, units),
        give_or_take(piece.give_or_take_mm, units),
    )


def _join_line(join: Joined, units: Units) -> str:
    to = " and ".join(join.planned.to)
    a, b = show_length(join.a.mm, units), show_length(join.b_mm, units)
    return f"{join.planned.of} {join.planned.edge} to {join.planned.at} of {to}: {a} to {b}, {join.verdict}, {rate_words(join)}"


def _yarn_line(yarn: str, colour: str, needed: Any) -> str:
    balls = "" if needed.balls is None else f", {counted(needed.balls, 'ball')}"
    return f"{' '.join(part for part in (yarn, colour) if part)}: {needed.grams:.0f} g{balls}"
