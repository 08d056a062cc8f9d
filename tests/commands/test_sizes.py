"""The run of the trade's example: 38.18 mm a repeat, multiple 6 plus 1, extra chain 1, two panels, ease 5 cm."""

from pathlib import Path

import openpyxl
import pytest

from logbook.tasks.body_charts import save_chart
from logbook.tasks.keeping import open_book
from tests.support.command_line import done, done_json, refused, sentence_of
from tests.support.command_line import run as ran

GAUGE = ("--gauge", "4 repeats = 15.1 cm", "--gauge", "4 repeats = 15.4 cm", "--gauge", "3 repeats = 11.5 cm")
SHELLS = ("sizes", *GAUGE, "--multiple", "6", "--plus", "1", "--extra-chains", "1", "--panels", "2", "--ease", "5 cm")
ROWS = ("--rows-gauge", "20 rows = 18 cm", "--length", "56")


@pytest.fixture
def busts(tmp_path: Path) -> Path:
    path = tmp_path / "busts.csv"
    path.write_text("size;bust\nA;78,5\nB;83.5\nC;94\nD;104\n", "utf-8")
    return path


class TestTheRun:
    def test_the_four_sizes(self, busts: Path) -> None:
        sizes = done_json(*SHELLS, "--sizes", busts)
        assert [(size["size"], size["body_mm"], size["chain"]) for size in sizes] == [
            ("A", 785, 68), ("B", 835, 68), ("C", 940, 80), ("D", 1040, 86),
        ]  # fmt: skip
        assert [size["same_as"] for size in sizes] == [["B"], ["A"], [], []]
        assert sizes[0]["around_mm"] == pytest.approx(852.727, abs=0.001)
        assert sizes[0]["ease_mm"] == pytest.approx(67.727, abs=0.001)
        assert any("edge stitch at each side" in note for note in sizes[0]["notes"])
        assert not any("edge stitch" in note for note in sizes[2]["notes"])

    def test_armholes_as_deep_as_the_sheet_says(self, tmp_path: Path) -> None:
        path = tmp_path / "own.csv"
        path.write_text("size,bust,armhole depth\nA,84,18\nB,94,19\n", "utf-8")

        def depths(*options: str) -> list[list[float]]:
            sizes = done_json(*SHELLS, *ROWS, "--sizes", path, *options)
            return [[mark["true_mm"] for mark in size["marks"] if mark["name"] == "armhole"] for size in sizes]

        assert depths() == [[pytest.approx(180, abs=5)], [pytest.approx(190, abs=5)]]
        assert depths("--armhole", "22") == [[pytest.approx(220, abs=5)]] * 2

    def test_its_keys_are_those_of_a_piece_and_its_own(self, busts: Path) -> None:
        piece = done_json("piece", *SHELLS[1:], "--body", "78.5", *ROWS)
        (size, *_) = done_json(*SHELLS, "--sizes", busts, *ROWS)
        assert set(size) == {*piece, "size", "body_mm", "around_mm", "ease_mm", "same_as"}
        assert {key: size[key] for key in piece if key != "notes"} == {key: piece[key] for key in piece if key != "notes"}

    def test_as_text_it_names_the_same_ones_and_offers_what_parts_them(self, busts: Path) -> None:
        text = done(*SHELLS, "--sizes", busts)
        assert "A and B come out the same." in text
        assert "1 plain edge stitch at each side, in all sizes, would make them differ." in text
        parted = done_json(*SHELLS, "--sizes", busts, "--edge-stitches", "1")
        assert [size["chain"] for size in parted] == [64, 70, 76, 88]
        assert not any(size["same_as"] for size in parted)

    def test_the_lines_of_the_pattern(self, busts: Path) -> None:
        lines = done(*SHELLS, "--sizes", busts, "--lines", "uk").splitlines()
        assert "Ch 68 (68, 80, 86)." in lines
        assert "Tension" in lines
        assert "Gauge" in done(*SHELLS, "--sizes", busts, "--lines", "us").splitlines()

    def test_inches_if_asked(self, busts: Path) -> None:
        assert " cm" not in done(*SHELLS, "--sizes", busts, "--inches").split("\n\n")[0]

    def test_a_logged_swatch(self, wardrobe: Path) -> None:
        sizes = done_json("sizes", "--book", wardrobe, "--swatch", "LC-02", "--chart", "women", "--ease", "5")
        assert [size["size"] for size in sizes] == ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"]


class TestCharts:
    def test_low_middle_and_high(self) -> None:
        bodies = {end: done_json(*SHELLS, "--chart", "women", "--end", end)[0]["body_mm"] for end in ("low", "middle", "high")}
        assert bodies == {"low": 710, "middle": 735, "high": 760}

    def test_the_logbooks_own_chart_goes_before(self, wardrobe: Path) -> None:
        with open_book(wardrobe) as book:
            save_chart(book, "women", "size; bust\nonly; 90")
        assert [size["size"] for size in done_json("sizes", "--book", wardrobe, "--swatch", "LC-02", "--chart", "women")] == [
            "only"
        ]

    def test_armholes_of_the_charts_depth_and_more(self) -> None:
        sizes = done_json(*SHELLS, *ROWS, "--chart", "women", "--armhole-deeper", "3")
        (mark,) = (mark for mark in sizes[0]["marks"] if mark["name"] == "armhole")
        assert mark["true_mm"] == pytest.approx(187.5, abs=5)

    def test_what_is_wrong_with_a_chart_names_file_row_and_column(self, tmp_path: Path) -> None:
        path = tmp_path / "mine.csv"
        path.write_text("size,bust\nA,wide\n", "utf-8")
        sentence = refused(1, *SHELLS, "--sizes", path)
        assert "mine.csv" in sentence
        assert "Row 2" in sentence
        assert "“wide”" in sentence

    @pytest.mark.parametrize("text", ["", "\n\n", "bust\n90\n", "size\nA\n", "size,bust\n", "size,bust\nA,90\nA,95\n"])
    def test_what_is_no_chart(self, tmp_path: Path, text: str) -> None:
        path = tmp_path / "mine.csv"
        path.write_text(text, "utf-8")
        refused(1, *SHELLS, "--sizes", path)

    def test_an_unknown_chart(self) -> None:
        assert "“cats”" in refused(1, *SHELLS, "--chart", "cats")


class TestFiles:
    def test_workbook_and_drawing(self, busts: Path, tmp_path: Path) -> None:
        book, drawing = tmp_path / "run.xlsx", tmp_path / "b.svg"
        done(*SHELLS, *ROWS, "--sizes", busts, "--workbook", book, "--svg", drawing, "--size", "B")
        rows = openpyxl.load_workbook(book, data_only=True)["Sizes"].iter_rows(values_only=True)
        assert next(row[1:5] for row in rows if row[0] == "chain") == (68, 68, 80, 86)
        assert "chain 68" in drawing.read_text("utf-8")

    def test_a_size_that_is_none(self, busts: Path, tmp_path: Path) -> None:
        ended = ran(*SHELLS, *ROWS, "--sizes", busts, "--svg", tmp_path / "b.svg", "--size", "E")
        assert "“E”" in sentence_of(ended)
        assert not (tmp_path / "b.svg").exists()

    def test_the_logbook_is_never_written_over(self, wardrobe: Path) -> None:
        before = wardrobe.read_bytes()
        link = wardrobe.with_suffix(".xlsx")
        link.symlink_to(wardrobe)
        refused(1, "sizes", "--book", wardrobe, "--swatch", "LC-02", "--chart", "women", "--workbook", link)
        assert wardrobe.read_bytes() == before


@pytest.mark.parametrize(
    ("options", "named"),
    [
        ([], "--sizes"),
        (["--chart", "women", "--width", "46"], "--width"),
        (["--chart", "women", "--body", "92"], "--body"),
        (["--chart", "women", "--sizes", "x.csv"], "--sizes"),
        (["--chart", "women", "--svg", "x.svg"], "--size"),
        (["--chart", "women", "--size", "M"], "--svg"),
        (["--chart", "women", "--lines", "au"], "au"),
        (["--chart", "women", "--lines", "us", "--json"], "--lines"),
        (["--chart", "women", "--end", "wide"], "wide"),
        (["--chart", "women", "--armhole-deeper", "3"], "--length"),
        (["--chart", "women", *ROWS, "--armhole-deeper", "3", "--armhole", "20"], "--armhole"),
        (["--chart", "women", "--length", "56", "--sideways"], "--rows-gauge"),
        (["--chart", "women", "--workbook", "x.ods"], ".xlsx"),
    ],
)
def test_arguments_that_are_wrong_alone(options: list[str], named: str) -> None:
    assert named in refused(2, *SHELLS, *options)


def test_the_page_and_the_lines_are_written(busts: Path, tmp_path: Path) -> None:
    page, text = tmp_path / "run.html", tmp_path / "run.txt"
    done(*SHELLS, "--sizes", busts, "--html", page, "--text", text)
    assert text.read_text("utf-8") == done(*SHELLS, "--sizes", busts, "--lines", "us")
    assert "<table" in page.read_text("utf-8")
