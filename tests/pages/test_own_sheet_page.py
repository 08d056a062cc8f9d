from pathlib import Path

import pytest

from logbook.pages.own_sheet_page import NOT_TAKEN, OwnSheetPage, remembering
from logbook.tasks.own_sheets import pasted_sheets, raw_sheets
from tests.support.own_sheets import SHEETS

NAMES = {one.name: one for one in SHEETS}


def page_of(name: str, folder: Path, **remembered: dict[str, str]) -> OwnSheetPage:
    NAMES[name].write(folder / name)
    return OwnSheetPage(name, raw_sheets(folder / name), remembered)


def choices(page: OwnSheetPage) -> dict[str, str]:
    return {heading: choice for heading, choice, _ in page.columns}


def test_it_shows_the_first_rows_with_a_guess_for_each_column(tmp_path: Path) -> None:
    page = page_of("german.csv", tmp_path)
    assert page.columns[1] == ("Datum", "date", ["12.03.2019", "2.4.2019", "17. Mai 2019"])
    assert choices(page)["gewaschen"] == NOT_TAKEN
    assert page.outcome() == "3 swatches can be read."
    assert page.left() == "Not used: “gewaschen”."


def test_a_column_is_taken_once_and_what_follows_is_said_at_once(tmp_path: Path) -> None:
    page = page_of("german.csv", tmp_path)
    page.choose(list(choices(page)).index("Nr."), "yarn")
    assert (choices(page)["Nr."], choices(page)["Garn"]) == ("yarn", NOT_TAKEN)
    page.choose(list(choices(page)).index("Häkelnadel"), NOT_TAKEN)
    assert page.outcome().startswith("0 swatches can be read, 3 rows can't:\nRow 2")
    page.rest_to_notes()
    assert page.left() == ""


def test_the_length_of_counts_is_asked_and_a_wrong_one_said(tmp_path: Path) -> None:
    page = page_of("row four.xlsx", tmp_path)
    assert "without the length" in page.outcome()
    page.say_over("10 apples")
    assert "10 apples" in page.trouble
    page.say_over("10 cm")
    assert (page.trouble, page.outcome()) == ("", "2 swatches can be read.")


def test_what_was_chosen_is_remembered_for_sheets_with_those_headings(tmp_path: Path) -> None:
    page = page_of("german.csv", tmp_path)
    page.choose(list(choices(page)).index("gewaschen"), "way of washing")
    kept = remembering({"a": {}, "b": {}}, page.signature, page.to_remember(), most=2)
    assert list(kept) == ["b", page.signature]
    assert choices(page_of("german.csv", tmp_path, **kept))["gewaschen"] == "way of washing"


def test_another_sheet_of_the_workbook_can_be_chosen(tmp_path: Path) -> None:
    page = page_of("repeats.xlsx", tmp_path)
    assert (page.sheet_names, page.own.table.sheet) == (("Shopping", "Proben"), "Proben")
    page.take_sheet("Shopping")
    assert list(choices(page)) == ["buttons", "thread"]


@pytest.mark.parametrize("one", SHEETS, ids=lambda one: one.name)
def test_every_sheet_opens(one: object, tmp_path: Path) -> None:
    assert page_of(one.name, tmp_path).sentence()  # type: ignore[attr-defined]


def test_rows_copied_in_a_spreadsheet_are_a_sheet(tmp_path: Path) -> None:
    copied = "Garn\tNadel\tMaschenprobe\nHafenwolle\t4,5\t14 M x 16 R auf 10 cm\n"
    page = OwnSheetPage("what was copied", pasted_sheets(copied), {})
    assert choices(page) == {"Garn": "yarn", "Nadel": "hook mm", "Maschenprobe": "stitches as worked"}
    assert page.outcome() == "1 swatch can be read."
