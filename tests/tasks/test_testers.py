"""Those who try a run and a garment: kept, taken from a sheet, and what their measures say."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.sizes.size_off import SizeOff
from logbook.craft.sizes.tester import Tester
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.sheets.reading import read_own_sheets
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into_new
from logbook.tasks.keeping import Logbook, open_book
from logbook.tasks.own_sheets import found_table
from logbook.tasks.pieces import basis_of_tag, delete_piece, planned_pieces, save_piece
from logbook.tasks.set_runs import set_run
from logbook.tasks.size_runs import work_out_run
from logbook.tasks.testers import (
    delete_tester,
    off_sentences,
    off_words,
    save_round_sheet,
    save_testers,
    taken_together,
    tester_guesses,
    testers_in,
    testers_of,
    trial_of,
)
from logbook.tasks.undoing import undo
from tests.support.cloth import VEST
from tests.support.garments import garment_book, uid_of

SIZES = tuple(SizePlan(name=name, body_mm=body) for name, body in (("S", 860.0), ("M", 940.0), ("L", 1020.0), ("2X", 1180.0)))


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "a.logbook") as made:
        plan = replace(VEST, name="Chorus vest", body_mm=None)
        save_piece(made, PlannedPiece(plan=plan, swatch=uid_of(made, "H1"), sizes=SIZES))
        piece = planned_pieces(made)[0]
        set_run(made, piece, work_out_run(basis_of_tag(made, "H1"), piece.plan, piece.sizes), Terms.US)
        yield made


def vest(book: Logbook) -> PlannedPiece:
    return planned_pieces(book)[0]


def gauge(stitch_mm: float, row_mm: float = 9.0) -> str:
    """Five places, wholly alike."""
    stitches = "; ".join([f"20 sts = {20 * stitch_mm / 10:.2f} cm"] * 5)
    return f"{stitches}; " + "; ".join([f"20 rows = {20 * row_mm / 10:.2f} cm"] * 5)


def tried(book: Logbook, size: str, off: float, by_gauge: float, name: str) -> Tester:
    told = trial_of(book, vest(book)).told[size, ""]["width"]
    width = told.mm * (1 + off)
    return Tester(name=name, size=size, state="done", readings=gauge(7.0 * (1 + by_gauge)), width_mm=width)


def test_they_are_kept_with_their_piece_and_go_with_it(book: Logbook) -> None:
    piece = vest(book)
    save_testers(book, piece, [Tester(name="N. B.", size="M"), Tester(name="Ida", size="2X", readings=gauge(7.0))])
    first, second = testers_of(book, piece)
    assert (first.name, first.state, first.piece, second.readings) == ("N. B.", "asked", piece.uid, gauge(7.0))
    save_testers(book, piece, [replace(first, state="done", width_mm=518.0, said="Lovely.")])
    assert testers_of(book, piece)[0].said == "Lovely."
    delete_tester(book, piece, second)
    undo(book)
    assert len(testers_of(book, piece)) == 2
    delete_piece(book, piece)
    assert testers_of(book, piece) == []
    undo(book)
    assert len(testers_of(book, piece)) == 2
    with pytest.raises(RefusedError, match="name or initials"):
        save_testers(book, piece, [Tester(size="M")])


def test_a_size_that_is_off_is_named_with_its_give_or_take(book: Logbook) -> None:
    fine = [tried(book, size, 0.002 * k, 0.0, f"{size}{k}") for size in ("S", "M", "L") for k in (-1, 0, 1)]
    assert off_sentences(book, vest(book), fine) == (
        "No size is off beyond what gauge explains, as far as 9 measures in 3 sizes tell.",
    )
    assert off_sentences(book, vest(book), fine[:1]) == (
        "No size is off beyond what gauge explains, as far as 1 measure in 1 size tells.",
    )
    off = [tried(book, "2X", 0.05 + 0.002 * k, 0.01, f"2X{k}") for k in (-1, 0, 1)]
    (said,) = off_sentences(book, vest(book), [*fine, *off])
    assert said.startswith(
        "Three of three in 2X came out wider than their gauge says: measured +5 %, by gauge +1 %. That leaves 4 %"
    )
    assert said.endswith("look at the width of 2X.")
    assert "give or take" in said


def test_too_little_measured_is_said(book: Logbook) -> None:
    assert "Nothing to compare yet" in off_sentences(book, vest(book), [Tester(name="Ida", size="M", width_mm=518.0)])[0]


def test_the_sentence_says_how_many_and_which_way() -> None:
    assert off_words(SizeOff("2X", "length", 0.04, 0.01, -0.03, 0.019, 2, 3)) == (
        "Two of three in 2X came out shorter than their gauge says: measured +4 %, by gauge +1 %. That leaves 3 %, give or take "
        "1.9 %: look at the length of 2X."
    )


def test_the_sheet_that_goes_round_comes_back(book: Logbook, tmp_path: Path) -> None:
    piece = vest(book)
    save_testers(book, piece, [Tester(name="Ida", size="2X")])
    target = tmp_path / "round.xlsx"
    save_round_sheet(book, piece, target)
    table = found_table("round.xlsx", read_own_sheets(target, None))
    assert tester_guesses(table) == (
        "name", "size", "state", "gauge of stitches", "gauge of rows", "part", "width cm", "length cm", "said",
    )  # fmt: skip
    (ida,) = testers_in(table, tester_guesses(table), None).good.values()
    assert (ida.name, ida.size, ida.state) == ("Ida", "2X", "asked")


@pytest.mark.parametrize(
    "first",
    [Tester(name="Ida", size="M"), Tester(name="Ida", size="S", state="done", said="The neck band wanted one row less.")],
)
def test_the_first_answer_is_never_taken_for_a_heading(book: Logbook, tmp_path: Path, first: Tester) -> None:
    piece = vest(book)
    save_testers(book, piece, [first, Tester(name="Noor", size="L")])
    save_round_sheet(book, piece, tmp_path / "round.xlsx")
    table = found_table("round.xlsx", read_own_sheets(tmp_path / "round.xlsx", None))
    came = testers_in(table, tester_guesses(table), None).good.values()
    assert [(one.name, one.size, one.said) for one in came] == [("Ida", first.size, first.said), ("Noor", "L", "")]


def test_answers_in_their_own_words_are_laid_over_what_is_known(book: Logbook, tmp_path: Path) -> None:
    sheet = tmp_path / "answers.csv"
    sheet.write_text(
        "Who,Size made,Gauge (sts in 10 cm),Width (in),What did you think?\nida,2X,14,20 1/2,Sleeve tight\n,S,,19,\n"
        "Noor,M,lots,,\n",
        "utf-8",
    )
    table = found_table(sheet.name, read_own_sheets(sheet, None))
    rows = testers_in(table, tester_guesses(table), None)
    (came,) = rows.good.values()
    assert (came.name, came.size, came.readings, came.said) == ("ida", "2X", "14 stitches in 10 cm", "Sleeve tight")
    assert came.width_mm == pytest.approx(520.7)
    assert [problem.row for problem in rows.problems] == [3, 4]
    known = Tester(uid="u", name="Ida", size="2X", state="working", length_mm=560.0)
    (together,) = taken_together([known], [came])
    assert (together.uid, together.length_mm, together.width_mm) == ("u", 560.0, came.width_mm)


def test_they_travel_in_a_workbook(book: Logbook, tmp_path: Path) -> None:
    save_testers(book, vest(book), [tried(book, "M", 0.01, 0.0, "Ida")])
    export(book, tmp_path / "all.xlsx")
    plan, _ = import_into_new(tmp_path / "b.logbook", tmp_path / "all.xlsx")
    assert plan.problems == ()
    with open_book(tmp_path / "b.logbook") as other:
        assert testers_of(other, vest(other)) == testers_of(book, vest(book))
