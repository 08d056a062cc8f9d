"""Those who try a pattern: kept with a piece or a garment, taken from a sheet, and what their measures say of its sizes."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from logbook.book import testers as kept
from logbook.book.assumptions import assumptions
from logbook.book.logbook import Logbook
from logbook.craft.garments.plan import Garment
from logbook.craft.garments.shapes import SIDEWAYS
from logbook.craft.pieces.length import FOUNDATION_MM
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.sizes.run_numbers import SizeFigures, figures_of
from logbook.craft.sizes.size_off import SizeOff, sizes_off
from logbook.craft.sizes.tester import Tester
from logbook.craft.sizes.trying import Told, ToldSize, tried_of
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted
from logbook.craft.words.notation import PLAIN, written_in
from logbook.craft.words.numbers import show_change, show_percent
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_zip
from logbook.sheets.tester_sheet import CHOICES as TESTER_CHOICES
from logbook.sheets.tester_sheet import TesterRows, write_round_sheet
from logbook.sheets.tester_sheet import guesses as tester_guesses
from logbook.sheets.tester_sheet import testers_of as testers_in
from logbook.tasks.garment_publishing import published as published_garment
from logbook.tasks.garments import work_out
from logbook.tasks.pieces import basis_of
from logbook.tasks.set_runs import published
from logbook.tasks.size_runs import never_over, work_out_run

__all__ = [
    "TESTER_CHOICES", "Pattern", "TesterRows", "delete_tester", "off_sentences", "save_round_sheet", "save_testers",
    "taken_together", "tester_guesses", "testers_in", "testers_of", "trial_of",
]  # fmt: skip
Pattern = PlannedPiece | Garment
"""What is tried: a saved piece with its sizes, or a saved garment."""


@dataclass(frozen=True, slots=True)
class Trial:
    """What a pattern tells its testers: sizes in their order, parts that can be measured, and the figures by size and part."""

    sizes: tuple[str, ...]
    parts: tuple[str, ...]
    told: Mapping[tuple[str, str], Told]
    pattern: StitchPattern | None


def testers_of(book: Logbook, of: Pattern) -> list[Tester]:
    """Those who try it, in the order they were put in."""
    with book.reading() as connection:
        return kept.testers(connection, of.uid)


def save_testers(book: Logbook, of: Pattern, testers: Sequence[Tester]) -> None:
    """Saves them in one step, new ones (no uid) or known. Raises RefusedError, in one sentence; then nothing is written."""
    piece, garment = ("", of.uid) if isinstance(of, Garment) else (of.uid, "")
    label = f"tester {testers[0].name}" if len(testers) == 1 else counted(len(testers), "tester")
    with book.writing(f"{label} of {of.name}") as writing:
        for tester in testers:
            kept.put_tester(writing, replace(tester, piece=piece, garment=garment))


def delete_tester(book: Logbook, of: Pattern, tester: Tester) -> None:
    """Takes one out; undo brings them back."""
    with book.writing(f"delete tester {tester.name} of {of.name}") as writing:
        writing.remove("tester", tester.uid)


def taken_together(known: Sequence[Tester], coming: Sequence[Tester]) -> list[Tester]:
    """The answers of a sheet laid over those known, by name and size (or by a name alone that is there once): what a sheet leaves
    empty stays.
    """
    found = []
    for new in coming:
        alike = [old for old in known if _called(old.name) == _called(new.name)]
        same = [old for old in alike if _called(old.size) == _called(new.size)] or (alike if len(alike) == 1 else [])
        found.append(_over(same[0], new) if same else new)
    return found


def trial_of(book: Logbook, of: Pattern) -> Trial:
    """What it tells: as published, else as it is today. Raises RefusedError, in one sentence, if it can't be worked out."""
    return _garment_trial(book, of) if isinstance(of, Garment) else _run_trial(book, of)


def off_sentences(book: Logbook, of: Pattern, testers: Sequence[Tester]) -> tuple[str, ...]:
    """Which sizes are off beyond what gauge explains; how it stands where none is, or too little is measured."""
    trial = trial_of(book, of)
    with book.reading() as connection:
        assumed = assumptions(connection)
    tried = list(tried_of(testers, trial.told, trial.pattern, assumed))
    if not tried:
        return ("Nothing to compare yet: log size, gauge, and width or length of what each of them made.",)
    found = sizes_off(tried, assumed)
    if found:
        return tuple(map(off_words, found))
    sizes = len({one.size for one in tried})
    measures = f"{counted(len(tried), 'measure')} in {counted(sizes, 'size')}"
    return (f"No size is off beyond what gauge explains, as far as {measures} tell{'s' if len(tried) == 1 else ''}.",)


def off_words(off: SizeOff) -> str:
    """``Two of three in 2X came out wider than told: 4 % in the mean, their gauge says 1 %. …``"""
    more, less = ("wider", "narrower") if off.what == "width" else ("longer", "shorter")
    way = more if off.left > 0 else less
    return (
        f"{_count(off.alike).capitalize()} of {_count(off.testers)} in {off.size} came out {way} than their gauge says: measured "
        f"{show_change(off.came_out)}, by gauge {show_change(off.by_gauge)}. That leaves {show_percent(abs(off.left))}, "
        f"give or take {show_percent(off.give_or_take)}: look at the {off.what} of {off.size}."
    )


@written_in(PLAIN)
def save_round_sheet(book: Logbook, of: Pattern, target: Path) -> None:
    """Writes the sheet to send round. Raises RefusedError, in one sentence."""
    testers, sizes, today = testers_of(book, of), trial_of(book, of).sizes, date.today().isoformat()
    write_zip(target, lambda stream: write_round_sheet(stream, of.name, testers, sizes, today), never_over(book))


def _run_trial(book: Logbook, piece: PlannedPiece) -> Trial:
    if not piece.sizes:
        raise RefusedError(f"“{piece.name}” has no sizes yet: give it some, then testers can try them.")
    basis, run = basis_of(book, piece.swatch, piece.edge_swatch), published(piece)
    if run is not None:
        figures = {str(size["size"]): size for size in run.sizes}
    else:
        sizes = work_out_run(basis, piece.plan, piece.sizes, piece.condition).run.sizes
        figures = {size.name: figures_of(size) for size in sizes}
    told = {(name, ""): _told(size, piece.plan) for name, size in figures.items()}
    return Trial(tuple(figures), (), told, basis.swatch.pattern)


def _told(size: SizeFigures, plan: PiecePlan) -> dict[str, ToldSize]:
    """Width and length without the edgings give the pitch that was reckoned with."""
    across, up = (Direction.ROWS, Direction.STITCHES) if plan.sideways else (Direction.STITCHES, Direction.ROWS)
    ends = plan.top_edging_mm + plan.bottom_edging_mm + (FOUNDATION_MM if plan.foundation_chain else 0.0)
    found = {}
    for what, along, edgings in (("width", across, 2 * plan.side_edging_mm), ("length", up, ends)):
        mm, count = size.get(what), size.get(along.value)
        if isinstance(mm, int | float) and isinstance(count, int | float) and mm > edgings and count:
            found[what] = ToldSize(float(mm), along, (mm - edgings) / count)
    return found


def _garment_trial(book: Logbook, garment: Garment) -> Trial:
    answer = work_out(garment.plan, book)
    before = published_garment(garment)
    told: dict[tuple[str, str], Told] = {}
    parts = tuple(piece.name for piece in garment.plan.pieces)
    for size in answer.numbers:
        for piece in size.pieces:
            as_handed_on = before.sizes.get(size.name, {}).get(piece.name, {}) if before else {}
            most, rows = max(piece.foundation, *piece.counts), piece.rows
            levels = [count for _, count in as_handed_on.get("levels", ())]
            wide = max(piece.widths) * (max(levels) / most if levels else 1.0)
            high = piece.row_mm * as_handed_on.get("rows", rows)
            across, up = (Direction.STITCHES, piece.stitch_mm, wide), (Direction.ROWS, piece.row_mm, high)
            width, length = (up, across) if piece.planned.worked == SIDEWAYS else (across, up)
            of_piece = {what: ToldSize(mm, along, pitch) for what, (along, pitch, mm) in (("width", width), ("length", length))}
            told[size.name, piece.name] = of_piece
            if piece.name == parts[0]:
                told[size.name, ""] = of_piece
    first = answer.swatches.get(parts[0]) if parts else None
    return Trial(tuple(size.name for size in answer.numbers), parts, told, first.pattern if first else None)


def _over(old: Tester, new: Tester) -> Tester:
    said = {name: value for name in _ANSWERS if (value := getattr(new, name)) not in ("", None)}
    return replace(old, **said)


_ANSWERS = ("size", "state", "readings", "part", "width_mm", "length_mm", "said")


def _called(name: str) -> str:
    return " ".join(name.split()).casefold()


def _count(number: int) -> str:
    words = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
    return words[number] if number < len(words) else str(number)
