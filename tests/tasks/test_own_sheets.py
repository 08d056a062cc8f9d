"""Sheets as makers keep them: what their columns are is guessed, corrected, and never written wrong."""

from pathlib import Path

import pytest

from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError, UnreadableError
from logbook.tasks.own_sheets import OwnSheet, SheetChoices, own_sheet, read_choice, read_over
from tests.support.own_sheets import SHEETS, Own

NAMES = {one.name: one for one in SHEETS}


def guessed(name: str, folder: Path, **chosen: str) -> OwnSheet:
    one = NAMES[name]
    one.write(folder / name)
    return own_sheet(folder / name, SheetChoices(chosen, over=read_over(one.over) if one.over else None))


def readings(swatch: Swatch) -> list[str]:
    return [f"{taken.condition}: {taken.reading.text}" for taken in swatch.readings]


def test_nine_columns_of_ten_are_guessed_right_and_none_is_taken_for_what_it_is_not(tmp_path: Path) -> None:
    right = every = 0
    for one in SHEETS:
        found = guessed(one.name, tmp_path)
        as_guessed = dict(zip(found.table.headings, found.choices, strict=True))
        for heading, column in one.columns:
            every += 1
            right += as_guessed[heading] == column
            assert as_guessed[heading] in (column, ""), f"{one.name}: {heading}"
    assert len(SHEETS) == 12
    assert right >= 0.9 * every


@pytest.mark.parametrize("one", SHEETS, ids=lambda one: one.name)
def test_every_swatch_is_taken_or_said_why_not(one: Own, tmp_path: Path) -> None:
    found = guessed(one.name, tmp_path)
    assert len(found.swatches.good) == (one.swatches if one.good is None else one.good)
    assert len({problem.row for problem in found.swatches.problems}) == one.swatches - len(found.swatches.good)
    columns = dict(one.columns)
    left = [heading for heading, column in columns.items() if not column]
    assert [heading for heading in left if not any(heading in remark for remark in found.remarks)] == []


@pytest.mark.parametrize(
    ("name", "date", "hook", "said"),
    [
        ("english.xlsx", "2021-03-04", 5.0, ["worked: 14 stitches in 4 in", "worked: 16 rows in 4 in"]),
        ("german.csv", "2019-03-12", 4.5, ["worked: 14.5 stitches in 10 cm", "worked: 8 rows in 10 cm"]),
        ("french.csv", "2020-11-03", 4.0, ["worked: 18 stitches in 10 cm", "worked: 20 rows in 10 cm"]),
        ("swedish.csv", "2022-02-01", 5.0, ["worked: 14 stitches in 10 cm", "worked: 16 rows in 10 cm"]),
        ("inches.xlsx", "2018-05-03", 4.0, ["worked: 4.25 stitches in 1 in", "worked: 4.5 rows in 1 in"]),
        ("repeats.xlsx", "", 3.5, ["washed: 4 repeats = 15.1 cm"]),
        (
            "merged.xlsx", "", 5.0,
            ["worked: 14 stitches in 10 cm", "worked: 16 rows in 10 cm",
             "washed: 13.5 stitches in 10 cm", "washed: 16.5 rows in 10 cm"],
        ),
    ],
)  # fmt: skip
def test_the_first_row_says_what_it_says(name: str, date: str, hook: float, said: list[str], tmp_path: Path) -> None:
    swatch = guessed(name, tmp_path).swatches.good[0].swatch
    assert (swatch.date, swatch.hook_mm, readings(swatch)) == (date, hook, said)


def test_days_and_months_that_look_alike_are_asked(tmp_path: Path) -> None:
    says = [problem.says for problem in guessed("unsure dates.csv", tmp_path).swatches.problems]
    assert all("day and month can't be told apart" in one for one in says)
    found = guessed("unsure dates.csv", tmp_path, date="date (day first)")
    assert [row.swatch.date for row in found.swatches.good] == ["2021-04-03", "2021-06-05"]


def test_counts_without_their_length_are_asked(tmp_path: Path) -> None:
    NAMES["row four.xlsx"].write(tmp_path / "x.xlsx")
    problems = own_sheet(tmp_path / "x.xlsx", SheetChoices()).swatches.problems
    assert {problem.column for problem in problems} == {"Sts", "Rows"}
    assert all("without the length" in problem.says for problem in problems)


def test_what_is_not_taken_may_go_to_the_notes(tmp_path: Path) -> None:
    found = guessed("row four.xlsx", tmp_path, **{"washed?": "notes"})
    assert found.swatches.good[0].swatch.notes == "yes"
    found = guessed("german.csv", tmp_path, gewaschen="notes", partie="notes")
    assert found.swatches.good[0].swatch.notes == "Partie: 14\ngewaschen: 30 °C\nBemerkung: wird weich"
    assert found.swatches.good[0].swatch.dye_lot == ""


def test_totals_second_tables_and_repeated_headings_stay_out_and_are_said(tmp_path: Path) -> None:
    assert "Row 5 is set aside: a total or a mean." in guessed("totals.csv", tmp_path).remarks
    assert "Row 6 is set aside: beyond the table, in another one." in guessed("two tables.xlsx", tmp_path).remarks


def test_what_the_maker_says_is_held_to_the_sheet(tmp_path: Path) -> None:
    assert read_choice("Tag = Garn = yarn") == ("tag = garn", "yarn")
    assert read_choice("Laden =") == ("laden", "")
    for wrong in ("yarn", "= yarn", "Garn = wool"):
        with pytest.raises(UnreadableError):
            read_choice(wrong)
    with pytest.raises(RefusedError, match="no heading “knitter”"):
        guessed("german.csv", tmp_path, knitter="worked by")
    NAMES["repeats.xlsx"].write(tmp_path / "r.xlsx")
    with pytest.raises(RefusedError, match="no sheet “Log”: its sheets are “Shopping”, “Proben”"):
        own_sheet(tmp_path / "r.xlsx", SheetChoices(sheet="Log"))
