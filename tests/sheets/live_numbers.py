"""The live sheets of pieces and sizes, tried with random inputs.

LibreOffice reckons one workbook anew with the inputs of another, and must come to the other's numbers, which are the program's.

``python -m tests.sheets.live_numbers --times 50 --seed 1``
"""

import argparse
import random
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import WrittenSizes
from logbook.craft.sizes.size_run import size_run
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Formula
from logbook.sheets.live_cells import LiveSize
from logbook.sheets.piece_workbook import write_piece_workbook
from logbook.sheets.rounding import halves_even
from logbook.sheets.run_workbook import write_run_workbook
from tests.support.cloth import gauges_of_swatch, swatch, thrice
from tests.support.size_runs import SHELL, SWATCH
from tests.support.spreadsheet import changed_in_place, recalculated, shown

PLAN = PiecePlan(
    name="Vest", body_mm=900, ease=Ease(mm=50), panels=2, seam="mattress stitch", length_mm=560, armhole_mm=200, neck_mm=240,
    slit_mm=80, side_edging_mm=10, top_edging_mm=12, bottom_edging_mm=15, shoulder_seam_mm=4,
)  # fmt: skip
RIB = swatch(
    "R", StitchPattern(uid="r", name="rib", multiple=1, extra_chains=1),
    {Condition.WASHED: f"{thrice('20 sts = 13.1 cm')}; {thrice('22 rows = 11 cm')}"},
    swatch_grams=12.0, swatch_stitches=24, swatch_rows=20, minutes=64.0,
)  # fmt: skip
WITH_YARN = replace(SWATCH, minutes=50.0, pattern=replace(SHELL, set_up_rows=1, rows_in_repeat=2, closing_rows=1, half_plus=2))
KINDS: dict[str, tuple[PiecePlan, Swatch]] = {
    "from below": (PLAN, WITH_YARN),
    "edges": (replace(PLAN, edge_stitches=2), WITH_YARN),
    "snapped": (replace(PLAN, snap=True), WITH_YARN),
    "halves, any row": (
        replace(PLAN, half_repeats=True, any_row=True, width_choose=Choose.AT_MOST, length_choose=Choose.AT_LEAST), WITH_YARN,
    ),
    "odd": (replace(PLAN, stitch_parity=Parity.ODD, row_parity=Parity.EVEN), RIB),
    "sideways": (replace(PLAN, sideways=True), WITH_YARN),
    "in the round": (replace(PLAN, in_round=True, armhole_mm=None, slit_mm=None), WITH_YARN),
}  # fmt: skip
SIZES = (
    SizePlan(name="A", body_mm=800),
    SizePlan(name="B", body_mm=900, length_mm=600),
    SizePlan(name="C", body_mm=1070, neck_mm=260),
)


class Trial(NamedTuple):
    """A workbook to change, its sheets, and one that the program wrote of the other inputs."""

    base: Path
    sheets: tuple[str, ...]
    other: Path


def varied(plan: PiecePlan, gauges: PieceGauges, chance: random.Random) -> tuple[PiecePlan, PieceGauges]:
    """Another ease, other lengths, edgings and gauges."""

    def around(mm: float | None, share: float = 0.25) -> float | None:
        return None if mm is None else round(mm * chance.uniform(1 - share, 1 + share))

    assert gauges.rows is not None
    own = replace(
        plan,
        body_mm=around(plan.body_mm),
        ease=Ease(mm=round(chance.uniform(-60, 160))),
        panels=chance.choice((1, 2)) if not plan.in_round else 2,
        length_mm=around(plan.length_mm),
        armhole_mm=around(plan.armhole_mm),
        neck_mm=around(plan.neck_mm),
        slit_mm=around(plan.slit_mm),
        side_edging_mm=around(plan.side_edging_mm) or 0.0,
        top_edging_mm=around(plan.top_edging_mm) or 0.0,
        edge_stitches=chance.randrange(5) if plan.edge_stitches else 0,
    )
    stitches = replace(gauges.stitches, pitch_mm=gauges.stitches.pitch_mm * chance.uniform(0.8, 1.25))
    rows = replace(gauges.rows, pitch_mm=gauges.rows.pitch_mm * chance.uniform(0.8, 1.25))
    return own, replace(gauges, stitches=stitches, rows=rows)


def write_piece(path: Path, plan: PiecePlan, gauges: PieceGauges) -> Path:
    piece = LiveSize("", plan, work_out(plan, gauges))
    with path.open("wb") as stream:
        write_piece_workbook(stream, "Vest", piece, gauges, ("A note.",), "1 June 2026")
    return path


def write_sizes(path: Path, plan: PiecePlan, gauges: PieceGauges) -> Path:
    run = size_run(plan, SIZES, gauges)
    told = WrittenSizes(plan=plan, sizes=run.sizes, swatch=WITH_YARN, gauges=gauges)
    with path.open("wb") as stream:
        write_run_workbook(stream, told, SIZES, run, (), "1 June 2026")
    return path


def write_rounding(path: Path, numbers: Sequence[float]) -> Path:
    """Each number with what it rounds to."""
    with BookWriter("Rounding", "1 June 2026") as book, path.open("wb") as stream:
        sheet = book.sheet("Rounding", (20, 20, 20))
        sheet.head("Rounding", "A half to the even number.")
        for number in numbers:
            sheet.add(("rounded", number, Formula(halves_even(f"B{sheet.row + 1}"), round(round(number, 9)))))
        book.save(stream)
    return path


def trial_of_rounding(folder: Path) -> Trial:
    """Halves, and what is a half but for the last digits of a computer."""
    numbers = (2.5, 3.5, -2.5, -1.5, 0.5, 3.4999999999, 3.5000000001, 2.4999999999, 2.4, 2.6, 7.0)
    base = write_rounding(folder / "Rounding.xlsx", [0.0] * len(numbers))
    return Trial(base, ("Rounding",), write_rounding(folder / "Rounding of others.xlsx", numbers))


Write = Callable[[Path, PiecePlan, PieceGauges], Path]


def trials(folder: Path, times: int, chance: random.Random) -> Iterator[Trial]:
    """So many of pieces, and so many of sizes."""
    for sheet, write in (("Piece", write_piece), ("Sizes", write_sizes)):
        done = 0
        while done < times:
            name = list(KINDS)[done % len(KINDS)]
            plan, own = KINDS[name]
            gauges = gauges_of_swatch(own)
            base = folder / f"{sheet} {name}.xlsx"
            try:
                if not base.exists():
                    write(base, plan, gauges)
                yield Trial(base, (sheet,), write(folder / f"{sheet} {done}.xlsx", *varied(plan, gauges, chance)))
            except RefusedError:
                continue  # marks that do not fit on so small a panel
            done += 1


def tried(folder: Path, times: int, seed: int) -> list[str]:
    """Where sheets reckoned anew and program differ."""
    return differing(list(trials(folder, times, random.Random(seed))), folder)


def differing(every: Sequence[Trial], folder: Path) -> list[str]:
    """Where sheets differ from the program, each reckoned anew with the inputs of the other; in one run of LibreOffice."""
    changed = []
    for number, one in enumerate(every):
        inputs = {
            sheet: {cell: value for cell, value in typed.items() if isinstance(value, int | float) and int(cell[1:]) >= 4}
            for sheet, typed in shown(one.other, *one.sheets, formulas=True).items()
        }
        changed.append(changed_in_place(one.base, inputs, folder / f"changed {number}.xlsx"))
    wrong = []
    for one, path in zip(every, recalculated(changed, folder), strict=True):
        ours, theirs = shown(one.other, *one.sheets), shown(path, *one.sheets)
        formulas = shown(one.other, *one.sheets, formulas=True)
        wrong += [
            f"{one.other.stem}, {sheet} {cell}, {ours[sheet].get(f'A{cell[1:]}')}: {theirs[sheet].get(cell)} is not {value}"
            for sheet in one.sheets
            for cell, value in ours[sheet].items()
            if (isinstance(value, int | float) or str(formulas[sheet].get(cell, "")).startswith("="))
            and not same(theirs[sheet].get(cell), value)
        ]
    return wrong


def same(said: Any, wanted: float | str) -> bool:
    """Whether a number or word of a sheet is the one that is wanted."""
    if isinstance(wanted, str):
        return bool(said == wanted)
    return isinstance(said, int | float) and bool(said == pytest.approx(wanted, rel=1e-9, abs=1e-9))


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--times", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        wrong = tried(Path(folder), arguments.times, arguments.seed)
    print("\n".join(wrong[:50]))
    print(f"{arguments.times} pieces and {arguments.times} runs of sizes, {len(wrong)} cells differ")


if __name__ == "__main__":
    main()
