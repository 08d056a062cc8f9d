"""``logbook garment`` as it is used: from a file, into the logbook, out again."""

import json
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.support.command_line import done, done_json, refused
from tests.support.garments import garment_book

STITCH = {"stitches": "16 sts = 10 cm", "rows": "20 rows = 10 cm", "multiple": 1, "plus": 0, "extra chains": 1}
YOKE = {
    "neck round": "48 cm", "yoke depth": "24 cm", "body round": "100 cm", "upper arm round": "36 cm", "underarm": "6 cm",
}  # fmt: skip


def plan(*pieces: dict[str, Any], **said: Any) -> dict[str, Any]:
    return {"name": "Quay jumper", "pieces": [{"swatch": STITCH, **piece} for piece in pieces], **said}


SLEEVE = {
    "name": "sleeve", "shape": "tapered panel", "alike": 2,
    "measures": {"start width": "22 cm", "end width": "upper arm + 6 cm", "length": "45 cm"},
}  # fmt: skip


PANEL = {"name": "a", "shape": "straight panel", "measures": {"width": "9 cm", "length": "9 cm"}}


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "plan.json"


def written(file: Path, value: Any) -> Path:
    file.write_text(json.dumps(value), "utf-8")
    return file


def test_every_size_of_a_chart(file: Path) -> None:
    said = done_json("garment", written(file, plan(SLEEVE, sizes={"chart": "women", "only": ["S", "M"], "end": "middle"})))
    small, medium = said["sizes"]
    assert [small["size"], medium["size"]] == ["S", "M"]
    (sleeve,) = medium["pieces"]
    # 220/6.25 = 35.2 → 35, with 1 extra chain; 280 + 60 = 340: 54.4, odd → 55; 450/5 = 90 rows
    assert (sleeve["chain"], sleeve["rows"]) == (36, 90)
    assert sleeve["levels"][0] == {"row": 0, "stitches": 35, "width_mm": 218.75}
    assert sleeve["levels"][1]["row"] == 5
    assert sleeve["levels"][-1] == {"row": 90, "stitches": 55, "width_mm": 343.75}
    assert set(sleeve) >= {"name", "chain", "levels", "rows", "give_or_take_mm", "grams", "off_line_mm"}


def test_a_yoke_tells_its_parts(file: Path) -> None:
    said = done_json("garment", written(file, plan({"name": "yoke", "shape": "raglan yoke", "measures": YOKE})))
    yoke = said["sizes"][0]["pieces"][0]
    keys = ("chain", "back", "front", "sleeve", "underarm", "body_increases", "sleeve_increases", "body", "arm")
    assert [yoke[key] for key in keys] == [77, 27, 28, 9, 10, 20, 19, 159, 57]


def test_a_table_for_people(file: Path) -> None:
    text = done("garment", written(file, plan(SLEEVE, sizes=[{"size": "L", "upper arm": "30.5 cm"}])))
    assert "Quay jumper, L" in text
    assert "sleeve × 2" in text


def test_into_the_logbook_and_out_again(file: Path, tmp_path: Path) -> None:
    book, again = tmp_path / "a.logbook", tmp_path / "again.json"
    garment_book(book).close()
    piece = {"name": "back", "shape": "straight panel", "swatch": "H1", "measures": {"width": "50 cm", "length": "60 cm"}}
    first = done_json("garment", written(file, plan(piece)), "--keep", "--book", book)
    assert done_json("garment", "--name", "Quay jumper", "--book", book, "--save-plan", again) == first
    assert done_json("garment", again, "--book", book) == first


def test_bad_files_and_bad_words(tmp_path: Path) -> None:
    assert "could not be read" in refused(1, "garment", tmp_path / "none.json")
    broken = tmp_path / "b.json"
    broken.write_text('{"name": ', "utf-8")
    assert "is not a plan, line 1" in refused(1, "garment", broken)
    broken.write_text("[" * 100_000, "utf-8")
    assert "is not a plan" in refused(1, "garment", broken)
    broken.write_bytes(b"\xff\xfe\x00")
    assert "not text" in refused(1, "garment", broken)
    assert "name the garment" in refused(2, "garment")
    assert "name the garment" in refused(2, "garment", broken, "--name", "x")


def test_nothing_is_kept_of_what_is_refused(file: Path, tmp_path: Path) -> None:
    book = tmp_path / "a.logbook"
    garment_book(book).close()
    piece = {"name": "back", "shape": "straight panel", "swatch": "H1", "measures": {"width": "bust", "length": "60 cm"}}
    refused(1, "garment", written(file, plan(piece)), "--keep", "--book", book)
    assert "there is none yet" in refused(1, "garment", "--name", "Quay jumper", "--book", book)


def test_a_drawing_of_one_size(file: Path, tmp_path: Path) -> None:
    out = tmp_path / "g.svg"
    sizes = {"chart": "women", "only": ["S", "M"]}
    done("garment", written(file, plan(SLEEVE, sizes=sizes)), "--svg", out, "--size", "M")
    drawn = out.read_text("utf-8")
    assert "Quay jumper, M" in drawn
    assert "55 sts" in drawn
    assert "not one of the sizes" in refused(2, "garment", file, "--svg", out, "--size", "Q")
    assert "give --svg" in refused(2, "garment", file, "--size", "M")


def test_a_workbook_with_every_number(file: Path, tmp_path: Path) -> None:
    out = tmp_path / "g.xlsx"
    sizes = {"chart": "women", "only": ["S", "M"]}
    done("garment", written(file, plan(SLEEVE, sizes=sizes)), "--workbook", out)
    book = openpyxl.load_workbook(out, data_only=True)
    assert book.sheetnames == ["Pieces", "Rows", "Joins", "Yarn", "Pattern"]
    cells = {row[0].value: [cell.value for cell in row[1:]] for row in book["Pieces"].iter_rows()}
    assert cells["chain"][:2] == [36, 36]
    assert cells["stitches at the end"][:2] == [51, 55]
    assert [cell.value for cell in book["Rows"][6]][:4] == ["sleeve", "S", 6, 37]
