"""Whatever notation the reader has, sheets, files and answers for scripts keep the point, and forms read back what they show."""

import re
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import COMMA, Notation, written_in
from logbook.craft.words.terms import Terms
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.settings import Settings
from logbook.tasks.browsing import swatch_in_hand, swatches_newest_first
from logbook.tasks.exporting import export
from logbook.tasks.garment_files import pattern_html, save_garment_workbook, save_plan
from logbook.tasks.garment_publishing import publish, published, would_change
from logbook.tasks.garments import garments, work_out
from logbook.tasks.keeping import Logbook
from logbook.tasks.piece_files import save_piece_workbook
from logbook.tasks.pieces import basis_of, planned_pieces, work_out_piece
from logbook.tasks.sampling import new_sample
from logbook.tasks.size_runs import save_run_workbook, work_out_run
from tests.support.command_line import done

WITH_COMMA = Notation(COMMA, month_first=True)


@pytest.fixture(scope="module")
def sample(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Logbook]:
    with new_sample(tmp_path_factory.mktemp("sample")) as book:
        yield book


def content(path: Path) -> Any:
    """What is in a file; of a workbook in its parts, without when it was made."""
    if path.suffix != ".xlsx":
        return path.read_bytes()
    with zipfile.ZipFile(path) as parts:
        return {name: parts.read(name) for name in parts.namelist() if not name.startswith("docProps")}


def written(book: Logbook, folder: Path) -> dict[str, Any]:
    folder.mkdir()
    for name in ("log.csv", "log.xlsx"):
        export(book, folder / name)
    garment = next(one for one in garments(book) if one.name == "Interval cardigan")
    save_plan(garment.plan, folder / "plan.json")
    save_garment_workbook(work_out(garment.plan, book), Terms.US, folder / "garment.xlsx")
    one, run = (next(piece for piece in planned_pieces(book) if bool(piece.sizes) is sized) for sized in (False, True))
    save_piece_workbook(work_out_piece(basis_of(book, one.swatch), one.plan), folder / "piece.xlsx")
    save_run_workbook(work_out_run(basis_of(book, run.swatch), run.plan, run.sizes), Terms.US, folder / "run.xlsx")
    return {path.name: content(path) for path in sorted(folder.iterdir()) if path.is_file()}


def test_sheets_and_files_are_the_same_whatever_the_reader_has(sample: Logbook, tmp_path: Path) -> None:
    plain = written(sample, tmp_path / "plain")
    with written_in(WITH_COMMA):
        assert written(sample, tmp_path / "comma") == plain


def test_what_forms_show_with_commas_reads_back_and_is_not_changed(sample: Logbook) -> None:
    with written_in(WITH_COMMA):
        session = Session(sample, Settings(units="cm"))
        swatches, pieces, made = SwatchForm(session), PieceForm(session), GarmentForm(session)
        shown = ""
        for uid in swatches_newest_first(sample):
            assert swatches.show(uid)
            assert not swatches.typed().errors
            assert swatches.typed().swatch == swatch_in_hand(sample, uid)
            shown += swatches.texts["hook mm"] + " "
        assert "4,5" in shown
        assert "." not in shown
        for piece in planned_pieces(sample):
            assert pieces.show(piece.uid)
            assert pieces.read().plan == piece.plan
            assert [replace(size, uid="") for size in piece.sizes] == list(pieces.sizes().plans)
        for garment in garments(sample):
            assert made.show(garment.uid)
            assert made.read().plan == garment.plan
        assert not any(form.is_dirty for form in (swatches, pieces, made))


def test_a_page_to_print_has_commas_alone(sample: Logbook) -> None:
    garment = next(one for one in garments(sample) if one.name == "Interval cardigan")
    answer = work_out(garment.plan, sample)
    with written_in(WITH_COMMA):
        html = re.sub(r"<style>.*?</style>|<[^>]*>", " ", pattern_html(answer, Terms.US, Units.CM), flags=re.DOTALL)
    assert re.search(r"\d,5 \(\d+(,5)?; ", html)
    assert not re.search(r"\d\.\d", html), re.findall(r".{20}\d\.\d.{20}", html)


@pytest.mark.parametrize("marks", [(".", ","), (",", ".")])
def test_published_with_one_mark_nothing_would_change_with_the_other(sample: Logbook, marks: tuple[str, str]) -> None:
    garment = next(one for one in garments(sample) if one.name == "Interval cardigan")
    answer = work_out(garment.plan, sample)
    with written_in(Notation(marks[0])):
        before = published(publish(sample, garment, answer))
    assert before is not None
    with written_in(Notation(marks[1])):
        assert would_change(before, answer) == ()


def test_answers_of_commands_keep_the_point_and_pages_to_print_do_not(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    by_hand = ("--gauge", "4 repeats = 15.1 cm", "--multiple", "6", "--plus", "1", "--extra-chains", "1")
    html, text = tmp_path / "piece.html", tmp_path / "piece.txt"
    asked = ("piece", *by_hand, "--width", "46,5", "--length", "50", "--rows-gauge", "22 rows = 15 cm")
    plain = [done(*asked), done(*asked, "--json")]
    assert re.search(r"\d\.\d cm", plain[0])
    monkeypatch.setenv("LC_NUMERIC", "de_DE.UTF-8")
    assert [done(*asked, "--html", html, "--text", text), done(*asked, "--json")] == plain
    for path in (html, text):
        said = path.read_text(encoding="utf-8").replace("4 repeats = 15.1 cm", "")  # as it was typed
        assert re.search(r"\d,\d cm", said)
        assert not re.search(r"\d\.\d cm", said)
