"""The calculator to take along, tried with random inputs: LibreOffice reckons it anew, and it must say what the program says.

``python -m tests.sheets.calculator --times 200 --seed 1``
"""

import argparse
import random
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.book.pieces import put_made_piece
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Ease
from logbook.sheets import chain_sheet
from logbook.sheets.chain_cells import (
    BODY,
    EASE,
    EXTRA,
    FIRST_OPTION,
    LENGTH,
    MULTIPLE,
    PANELS,
    PLUS,
    REACH,
    REPEATS,
    ROW_OPTION,
    SWATCH,
    UNITS,
    WIDTH,
)
from logbook.tasks.chain import ChainAnswer, chain_by_hand, chain_for_tag
from logbook.tasks.exporting import export
from logbook.tasks.keeping import Logbook
from logbook.tasks.pieces import basis_of_tag, work_out_piece
from logbook.tasks.sampling import new_sample
from tests.support.spreadsheet import recalculated, shown, with_inputs


@dataclass(frozen=True)
class Trial:
    """Inputs by cell, and what the program says to the same wish; ``length_mm``: of the rows."""

    inputs: Mapping[str, object]
    answer: ChainAnswer
    tag: str | None
    length_mm: float | None


def trial(book: Logbook, tags: list[str], chance: random.Random) -> Trial:
    """One random wish, with a swatch or by hand, in cm or inches, of a width or a body."""
    unit, mm = chance.choice((("cm", 10.0), ("in", 25.4)))
    inputs: dict[str, object] = {UNITS: unit, WIDTH: None, BODY: None, EASE: None, PANELS: None, LENGTH: None}
    typed = chance.randrange(160, 900) / 10 if unit == "cm" else chance.randrange(50, 300) / 8
    if chance.random() < 0.5:
        inputs[WIDTH] = typed
        wish = PiecePlan(width_mm=typed * mm)
    else:
        ease, panels = chance.randrange(-80, 160) / 10, chance.choice((None, 1, 2, 3))
        inputs |= {BODY: typed + 20, EASE: ease, PANELS: panels}
        wish = PiecePlan(body_mm=(typed + 20) * mm, ease=Ease(mm=ease * mm), panels=panels or 2)
    if chance.random() < 0.2:
        repeats, reach, multiple, plus, extra = (
            chance.randrange(2, 9),
            chance.randrange(60, 250) / 10,
            *chance.choices(range(1, 9), k=3),
        )
        inputs |= {
            SWATCH: None,
            REPEATS: repeats,
            REACH: reach,
            MULTIPLE: multiple,
            PLUS: plus,
            EXTRA: extra,
        }
        pattern = StitchPattern(multiple=multiple, plus=plus, extra_chains=extra)
        return Trial(inputs, chain_by_hand(read_readings(f"{repeats} repeats = {reach} {unit}"), pattern, wish), None, None)
    tag = chance.choice(tags)
    length = chance.randrange(100, 800) / 10
    inputs |= {SWATCH: tag, LENGTH: length}
    return Trial(inputs, chain_for_tag(book, tag, wish), tag, length * mm)


def differences(book: Logbook, one: Trial, cells: Mapping[str, Any]) -> list[str]:
    """Where the sheet says something else than the program."""
    best = one.answer.recommended
    wrong = []
    for away in (-1, 0, 1):
        row = FIRST_OPTION + 1 + away
        around = [option for option in one.answer.options if option.repeats == best.repeats + away]
        if not around:
            if best.repeats + away < 1 and cells.get(f"B{row}"):
                wrong.append(f"{one.inputs}: an option of {cells.get(f'B{row}')} chains that there is not")
            continue
        (option,) = around
        cm = [
            None if mm is None else mm / 10
            for mm in (
                option.mm,
                option.difference_mm,
                option.gauge_give_or_take_mm,
                option.give_or_take_mm,
                option.before_washing_mm,
            )
        ]
        if one.tag is None:
            cm[4] = None
        wanted = [option.chain, option.count, option.repeats, *cm]
        said = [cells.get(f"{letter}{row}") or None for letter in "BCDEGHIJ"]
        wrong += [f"{one.inputs}: {a} is not {b}" for a, b in zip(said, wanted, strict=True) if not _same(a, b)]
    if one.tag is not None and one.length_mm is not None:
        wrong += _row_differences(book, one.tag, one.length_mm, cells)
    return wrong


def _row_differences(book: Logbook, tag: str, length_mm: float, cells: Mapping[str, Any]) -> list[str]:
    basis = basis_of_tag(book, tag)
    if not any(taken.direction.one == "row" for taken in basis.swatch.readings):
        return []
    numbers = work_out_piece(basis, PiecePlan(width_mm=500, length_mm=length_mm)).numbers
    assert numbers.length is not None
    said = [cells.get(f"{letter}{ROW_OPTION}") or None for letter in "BDEI"]
    sure = numbers.length.give_or_take_mm
    wanted = [numbers.rows, numbers.groups, numbers.length.mm / 10, None if sure is None else sure / 10]
    return [f"{tag}, {length_mm} mm long: {a} is not {b}" for a, b in zip(said, wanted, strict=True) if not _same(a, b)]


def _same(said: Any, wanted: float | None) -> bool:
    if said is None or wanted is None:
        return said is None and (wanted is None or abs(wanted) < 1e-9)
    return bool(said == pytest.approx(wanted, rel=1e-9, abs=1e-9))


def tried(folder: Path, times: int, seed: int) -> list[str]:
    """So many random trials on the sample, of whose hands one leans; where sheet and program differ."""
    chance = random.Random(seed)
    workbook = folder / "log.xlsx"
    with new_sample(folder) as book:
        with book.writing("make what leans") as writing:
            for wide, high in ((424, 590), (431, 585), (428, 593)):
                sizes = {"predicted_length_mm": 600, "washed_length_mm": high, "predicted_width_mm": 410, "washed_width_mm": wide}
                put_made_piece(writing, MadePiece(name="vest", worked_by="Noémie", **sizes))
        export(book, workbook)
        gauges = openpyxl.load_workbook(workbook, data_only=True)["Gauges"]
        tags = [row[0] for row in gauges.iter_rows(min_row=5, values_only=True) if row[7]]
        trials = [trial(book, tags, chance) for _ in range(times)]
        changed = with_inputs(workbook, chain_sheet.NAME, [one.inputs for one in trials], folder / "changed.xlsx")
        cells = shown(recalculated([changed], folder)[0], *map(str, range(1, times + 1)))
        return [said for number, one in enumerate(trials, start=1) for said in differences(book, one, cells[str(number)])]


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--times", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        wrong = tried(Path(folder), arguments.times, arguments.seed)
    print("\n".join(wrong[:50]))
    print(f"{arguments.times} inputs, {len(wrong)} cells differ")


if __name__ == "__main__":
    main()
