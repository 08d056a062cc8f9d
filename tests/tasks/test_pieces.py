"""Planned pieces as a user keeps them, and their files."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import openpyxl
import pytest

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.words.lengths import Units
from logbook.errors import RefusedError
from logbook.tasks.keeping import Logbook
from logbook.tasks.note_words import CHILDREN_CAUTION, said
from logbook.tasks.piece_files import piece_svg, save_piece_svg, save_piece_workbook
from logbook.tasks.piece_words import headline, sentences
from logbook.tasks.pieces import (
    basis_of,
    basis_of_tag,
    copy_of,
    delete_piece,
    made_pieces,
    matching_pieces,
    planned_pieces,
    save_piece,
    work_out_piece,
)
from logbook.tasks.undoing import redo, undo
from tests.support.cloth import LACE_PANEL, RIBBED, VEST
from tests.support.garments import garment_book, uid_of


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "a.logbook") as made:
        yield made


def test_a_vest_in_words(book: Logbook) -> None:
    answer = work_out_piece(basis_of_tag(book, "H1"), VEST)
    assert headline(answer) == "Chain 76, 62 rows"
    assert list(sentences(answer, Units.CM)) == [
        "51.8 cm wide, 0.2 cm narrower than asked; the swatch says give or take 1.2 cm, a whole piece usually 3.1 cm. "
        "Before washing it measures 53.3 cm.",
        "55.8 cm long, 0.2 cm shorter than asked; the swatch says give or take 1.3 cm, a whole piece usually 3.4 cm. "
        "Before washing it measures 55.2 cm.",
        "74 stitches.",
        "62 rows; the last is a wrong-side row.",
        "Armhole: mark the end of row 40; it is 19.8 cm deep (20.0 cm asked).",
        "Neck: the middle 34 stitches, 23.8 cm wide (24.0 cm asked); shoulders of 20 stitches, 14.0 cm each.",
        "Yarn for 2 panels and the seams: 231 g, give or take 16 g; 554 m; 6 balls with 10 % in reserve.",
    ]
    assert said(answer.notes)[-3:] == (
        "A finished garment usually differs from its swatch by up to 5.6 % (assumed, until you log finished pieces).",
        # √(5.553² + 2.325²) = 6.02, and √(5.553² + 2.318²) = 6.02
        "With the swatch’s own 2.3 % that comes to about ± 6 % for the stitches: the two seldom add up in full.",
        "With the swatch’s own 2.3 % that comes to about ± 6 % for the rows: the two seldom add up in full.",
    )


def test_a_lace_panel_takes_its_edge_stitch_from_the_plain_swatch_of_the_yarn(book: Logbook) -> None:
    answer = work_out_piece(basis_of_tag(book, "L1"), LACE_PANEL)
    lines = list(sentences(answer, Units.CM))
    assert "89 stitches: 5 repeats, and 4 edge stitches at each side." in lines
    assert "54 rows: 1 set-up row, 13 repeats of 4 rows, 1 closing row; the last is a wrong-side row." in lines
    assert "Slit: mark the end of row 9; it is 12.0 cm long." in lines
    # H1 is as plain and comes first in the logbook; the maker may choose the other one
    assert "as wide as on swatch H1" in " ".join(said(answer.notes))
    chosen = work_out_piece(basis_of(book, uid_of(book, "L1"), uid_of(book, "H2")), LACE_PANEL)
    assert "as wide as on swatch H2" in " ".join(said(chosen.notes))
    assert (chosen.numbers.chain, chosen.numbers.stitches) == (91, 89)


def test_a_sideways_rib_in_words(book: Logbook) -> None:
    lines = list(sentences(work_out_piece(basis_of_tag(book, "R1"), RIBBED), Units.CM))
    assert lines[2:6] == [
        "87 stitches up the body.",
        "58 rows round the body; the last is a wrong-side row.",
        "Armhole: mark after stitch 57; it is 18.0 cm deep.",
        "Neck: the middle 38 rows, 26.6 cm wide (26.0 cm asked); shoulders of 10 rows, 7.0 cm each.",
    ]


def test_stopping_inside_a_group_is_said(book: Logbook) -> None:
    answer = work_out_piece(basis_of_tag(book, "L1"), PiecePlan(width_mm=485, length_mm=560, any_row=True))
    assert (
        "56 rows: 1 set-up row, 13 repeats of 4 rows, 2 rows of the next, 1 closing row; the last is a wrong-side row."
        in list(sentences(answer, Units.CM))
    )


def test_childrens_wear_shows_the_caution_first(book: Logbook) -> None:
    answer = work_out_piece(basis_of_tag(book, "H1"), replace(VEST, name="Vest, age 4"))
    assert said(answer.notes)[0] == CHILDREN_CAUTION
    assert CHILDREN_CAUTION not in said(work_out_piece(basis_of_tag(book, "H1"), VEST).notes)


def test_saving_finding_copying_deleting_and_undoing(book: Logbook) -> None:
    piece = PlannedPiece(plan=replace(VEST, name="Vest"), swatch=uid_of(book, "H1"), sizes=(SizePlan(name="M", body_mm=940.0),))
    uid = save_piece(book, piece)
    (kept,) = planned_pieces(book)
    assert matching_pieces(book, "heather half vest") == [uid]
    copies = [copy_of(kept, ["Vest"]), copy_of(kept, ["Vest", "Vest, copy", "Vest, copy 2"])]
    assert [(copy.name, copy.uid, copy.sizes[0].uid) for copy in copies] == [("Vest, copy", "", ""), ("Vest, copy 3", "", "")]
    save_piece(book, copies[0])
    assert [one.name for one in planned_pieces(book)] == ["Vest", "Vest, copy"]
    delete_piece(book, kept)
    assert [one.name for one in planned_pieces(book)] == ["Vest, copy"]
    assert undo(book).label == "delete Vest"
    assert kept in planned_pieces(book)
    redo(book)
    assert kept not in planned_pieces(book)
    assert made_pieces(book) == []


def test_a_swatch_that_is_gone_is_said(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="not in the logbook any more"):
        basis_of(book, "gone")


def test_the_drawing_as_a_file(book: Logbook, tmp_path: Path) -> None:
    answer = work_out_piece(basis_of_tag(book, "H1"), replace(VEST, name="Chorus vest"))
    target = tmp_path / "vest.svg"
    save_piece_svg(answer, target, Units.CM, book)
    assert target.read_text("utf-8") == piece_svg(answer, Units.CM)
    assert "Chorus vest: chain 76, 62 rows" in target.read_text("utf-8")
    with pytest.raises(RefusedError, match="is the logbook that is open"):
        save_piece_svg(answer, book.path, Units.CM, book)


def test_the_figures_as_a_workbook(book: Logbook, tmp_path: Path) -> None:
    answer = work_out_piece(basis_of_tag(book, "H1"), replace(VEST, name="=1+1"))
    target = tmp_path / "vest.xlsx"
    save_piece_workbook(answer, target, book)
    sheet = openpyxl.load_workbook(target, data_only=True)["Piece"]
    rows = {row[0]: row[1] for row in sheet.iter_rows(min_row=4, values_only=True) if row[0]}
    assert (rows["chain"], rows["armhole begins after row"], rows["balls, with the reserve"]) == (76, 40, 6)
    assert rows["width, cm"] == pytest.approx(51.8)
    assert rows["give or take of a whole piece, cm"] == pytest.approx(3.1184, abs=0.0001)
    assert rows["width before washing, cm"] == pytest.approx(53.28)
    assert rows["the armhole is deep, cm"] == pytest.approx(19.8)
    assert (sheet["A1"].value, sheet["A1"].data_type) == ("=1+1: chain 76, 62 rows", "s")
    assert said(answer.notes)[0] in rows
