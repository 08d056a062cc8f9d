"""What a spreadsheet program sees and reckons is what the program wrote. (With other inputs: ``test_changed_inputs.py``.)"""

from dataclasses import replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import WrittenSizes
from logbook.craft.sizes.size_run import size_run
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Ease
from logbook.craft.words.terms import Terms
from logbook.sheets.columns import COLUMNS
from logbook.sheets.reading import read_sheet
from logbook.sheets.run_workbook import write_run_workbook
from logbook.sheets.workbook import write_workbook
from logbook.tasks.exporting import export
from logbook.tasks.garment_files import save_garment_workbook
from logbook.tasks.garments import garments, work_out
from logbook.tasks.sampling import new_sample
from tests.support.cloth import gauges_of_swatch, swatch, thrice
from tests.support.logged import cells_of, log_of
from tests.support.size_runs import PLAN, SHELL, SWATCH
from tests.support.spreadsheet import recalculated
from tests.support.swatches import awkward_swatches

BODIES = tuple(SizePlan(name=f"body {cm}", body_mm=cm * 10.0) for cm in range(70, 220, 3))
LEAN = PiecePlan(ease=Ease(share=-0.06))
PLAIN = swatch("P", StitchPattern(uid="p", multiple=1, extra_chains=1), {Condition.WASHED: thrice("20 sts = 13.1 cm")})
WIDE = swatch("W", StitchPattern(uid="w", multiple=16, plus=1, extra_chains=2), {Condition.WASHED: thrice("2 repeats = 16 cm")})
HALVES = replace(SWATCH, pattern=replace(SHELL, half_plus=2))
RUNS: dict[str, tuple[PiecePlan, Swatch]] = {
    "shells": (PLAN, SWATCH),
    "edge stitches": (replace(LEAN, edge_stitches=2, side_edging_mm=8), SWATCH),
    "edges as wanted": (replace(LEAN, edge_stitches=None), WIDE),
    "halves": (replace(LEAN, half_repeats=True), HALVES),
    "halves at least": (replace(LEAN, half_repeats=True, width_choose=Choose.AT_LEAST), HALVES),
    "halves at most": (replace(LEAN, half_repeats=True, width_choose=Choose.AT_MOST), HALVES),
    "at least": (replace(LEAN, width_choose=Choose.AT_LEAST), SWATCH),
    "at most": (replace(LEAN, width_choose=Choose.AT_MOST), SWATCH),
    "odd": (replace(LEAN, stitch_parity=Parity.ODD), PLAIN),
    "even": (replace(LEAN, stitch_parity=Parity.EVEN), PLAIN),
    "in the round": (replace(LEAN, in_round=True, joined_after_row_1=True), SWATCH),
    "sideways": (replace(PLAN, sideways=True, top_edging_mm=10), SWATCH),
}
GARMENTS = ("Matinee top", "Interval cardigan", "Foyer raglan")
"""Those of the sample."""


@pytest.fixture(scope="module")
def workbooks(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Path, Path]]:
    """By name: the workbook as written (or with its widths changed), and as a spreadsheet program saved it again."""
    folder = tmp_path_factory.mktemp("workbooks")
    written = {name: write_run(folder / f"{name}.xlsx", plan, own) for name, (plan, own) in RUNS.items()}
    written["log"] = folder / "log.xlsx"
    with new_sample(folder) as book:
        export(book, written["log"])
        for garment in garments(book):
            written[garment.name] = folder / f"{garment.name}.xlsx"
            save_garment_workbook(work_out(garment.plan, book), Terms.US, written[garment.name])
    written["awkward"] = folder / "awkward.xlsx"
    with written["awkward"].open("wb") as stream:
        write_workbook(stream, log_of(awkward_swatches()), "Swatches & more", "2026-05-31")
    again = recalculated(list(written.values()), folder)
    return {name: (path, saved) for (name, path), saved in zip(written.items(), again, strict=True)}


def write_run(path: Path, plan: PiecePlan, own: Swatch) -> Path:
    gauges = gauges_of_swatch(own)
    run = size_run(plan, BODIES, gauges)
    told = WrittenSizes(plan=plan, sizes=run.sizes, swatch=own, gauges=gauges)
    with path.open("wb") as stream:
        write_run_workbook(stream, told, BODIES, run, (), "1 June 2026")
    return path


def cells(path: Path) -> dict[tuple[str, str], Any]:
    book = openpyxl.load_workbook(path, data_only=True)
    return {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    }


@pytest.mark.long
@pytest.mark.parametrize("name", [*RUNS, "log", *GARMENTS])
def test_no_cell_differs_after_recalculation(workbooks: dict[str, tuple[Path, Path]], name: str) -> None:
    ours, theirs = (cells(path) for path in workbooks[name])
    assert ours.keys() == theirs.keys()
    for place, value in ours.items():
        if isinstance(value, str):
            assert theirs[place] == value, place
        else:
            assert theirs[place] == pytest.approx(value, rel=1e-12, abs=1e-9), place


def test_it_sees_every_swatch_as_it_is(workbooks: dict[str, tuple[Path, Path]]) -> None:
    heading, *rows = read_sheet(workbooks["awkward"][1]).rows
    assert list(heading.cells) == [column.name for column in COLUMNS]
    for row, written in zip(rows, awkward_swatches(), strict=True):
        seen = [*row.cells, *[None] * (len(COLUMNS) - len(row.cells))]
        for cell, column, content in zip(seen, COLUMNS, cells_of(written), strict=True):
            assert cell == (None if content == "" else content), column.name
