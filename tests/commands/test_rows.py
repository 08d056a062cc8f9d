"""``logbook rows``: written rows in a file."""

from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.support.command_line import done, done_json, refused, run, sentence_of
from tests.support.sample_sheets import written_rows

BAD = "Row 1: sc in 2nd ch from hook and in each ch across\nRow 2: ch 1, sc in each st to last 2 sts\n"


@pytest.fixture
def shells(tmp_path: Path) -> Path:
    path = tmp_path / "shells.txt"
    path.write_bytes(written_rows()["shell stitch"].replace("\n", "\r\n").encode("utf-8-sig"))
    return path


@pytest.fixture
def bad(tmp_path: Path) -> Path:
    path = tmp_path / "bad.txt"
    path.write_text(BAD, "utf-8")
    return path


def test_the_figures_as_json(shells: Path) -> None:
    value = done_json("rows", "--file", shells)
    assert (value["multiple"], value["chain_constant"], value["smallest"], value["leads_back_to"]) == (6, 2, 8, 2)
    row = {"stitches_per_repeat": 6, "stitches_constant": 1, "spaces_per_repeat": 0, "spaces_constant": 0}
    assert value["rows"] == [{"row": number, **row} for number in (1, 2, 3)]
    assert value["problems"] == []


def test_the_figures_in_words(shells: Path) -> None:
    said = done("rows", "--file", shells)
    assert "Row 2  6k + 1 sts" in said
    assert "Chain a multiple of 6 plus 2, at least 8" in said
    assert "The last row leads back to row 2." in said


def test_trouble_is_told_and_is_no_success(bad: Path) -> None:
    ran = run("rows", "--file", bad)
    assert ran.code == 1
    assert "Row 2 ends with 2 stitches over at every width." in ran.out
    assert sentence_of(ran) == "The rows in “bad.txt” do not add up: 1 problem."
    value = run("rows", "--file", bad, "--json")
    problem = {"row": 2, "says": "Row 2 ends with 2 stitches over at every width.", "kind": "does not fit"}
    assert (value.code, value.json["problems"]) == (1, [problem])


def test_terms_may_be_said(tmp_path: Path) -> None:
    path = tmp_path / "plain.txt"
    path.write_text("dc in 2nd ch from hook, dc in each ch to end", "utf-8")
    assert done_json("rows", "--file", path, "--terms", "uk")["smallest"] == 2
    assert "neither us nor uk" in refused(2, "rows", "--file", path, "--terms", "fr")


SIZED = (
    "Neckband\nCh 31 (35, 39).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 [34, 38] sts)\n"
    "Row 2: Ch 1, sc in next 10 (12, 14) sts, turn, leaving rem sts unworked. (10 [12, 14] sts)\nFasten off.\n"
)


def test_sizes_inside_rows_are_told_size_by_size(tmp_path: Path) -> None:
    path = tmp_path / "neck.txt"
    path.write_text(SIZED, "utf-8")
    value = done_json("rows", "--file", path)
    assert [[row["stitches_constant"] for row in size["rows"]][1] for size in value["sizes"]] == [10, 12, 14]
    assert value["notes"] == ["Neckband", "Fasten off."]
    said = done("rows", "--file", path)
    assert "Size 3 of 3" in said
    assert "Set aside as a note: Neckband" in said
    path.write_text(SIZED.replace("(10 [12, 14] sts)", "(10 [12, 13] sts)"), "utf-8")
    ran = run("rows", "--file", path, "--json")
    assert ran.code == 1
    assert [(problem["row"], problem["kind"], problem["says"][:12]) for problem in ran.json["problems"]] == [
        (2, "claim", "Size 3 of 3:")
    ]


def test_what_the_text_leaves_open_is_asked(tmp_path: Path) -> None:
    path = tmp_path / "hdc.txt"
    path.write_text("hdc in 3rd ch from hook and in each ch across\nch 2, hdc in each st across", "utf-8")
    assert [problem["kind"] for problem in run("rows", "--file", path, "--json").json["problems"]] == ["asked"]
    path.write_text("Ch an odd number\n" + "sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across", "utf-8")
    assert [problem["kind"] for problem in run("rows", "--file", path, "--json").json["problems"]] == ["claim"]


def test_a_chart_is_drawn(shells: Path, tmp_path: Path) -> None:
    target = tmp_path / "shells.svg"
    done("rows", "--file", shells, "--svg", target)
    drawn = ElementTree.fromstring(target.read_text("utf-8"))
    assert len(list(drawn.iter("{http://www.w3.org/2000/svg}polyline"))) > 50


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "There are no rows in “rows.txt”"),
        (b"\xff\xfe\x00", "is not text in UTF-8"),
        (b"x" * 1_000_001, "is larger than 1 MB"),
    ],
)
def test_a_file_without_rows_is_refused(content: bytes, says: str, tmp_path: Path) -> None:
    path = tmp_path / "rows.txt"
    path.write_bytes(content)
    assert says in refused(1, "rows", "--file", path)


def test_a_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    assert "“none.txt” cannot be read" in refused(1, "rows", "--file", tmp_path / "none.txt")
    assert "--file" in refused(2, "rows")


def test_rows_worked_into_a_ring_are_no_chart(tmp_path: Path) -> None:
    path = tmp_path / "ring.txt"
    path.write_text("Rnd 1: 6 sc in ring\nRnd 2: inc in each st around", "utf-8")
    ran = run("rows", "--file", path, "--svg", tmp_path / "ring.svg")
    assert ran.code == 1
    assert "starting chain" in sentence_of(ran)


def test_a_chart_never_takes_the_place_of_its_rows(shells: Path) -> None:
    kept = shells.read_bytes()
    ran = run("rows", "--file", shells, "--svg", shells)
    assert (ran.code, sentence_of(ran)) == (1, "“shells.txt” holds the rows: draw the chart to another file.")
    assert shells.read_bytes() == kept


def test_where_no_row_is_understood_the_trouble_is_told_and_no_chart_drawn(tmp_path: Path) -> None:
    path, target = tmp_path / "rows.txt", tmp_path / "rows.svg"
    path.write_text("Row 1: 1 htr into each ch to end", "utf-8")
    ran = run("rows", "--file", path, "--terms", "us", "--svg", target, "--json")
    assert (ran.code, ran.json["rows"], target.exists()) == (1, [], False)
    assert ran.json["problems"][0]["says"].startswith("“htr” is not understood: the rows are read in US terms")
    assert sentence_of(ran) == "The rows in “rows.txt” do not add up: 1 problem."


@pytest.mark.parametrize(
    ("rows", "count", "says"),
    [
        ("sc in 4th ch from hook, *ch 1, sk next ch, sc in next ch; rep from * to end", "k + 1 sts  k − 1 spaces", "the repeats"),
        ("sc in 2nd ch from hook, sc in each ch to end", "k sts", "the base stitches"),
    ],
)
def test_k_counts_what_it_counts_in_the_window(tmp_path: Path, rows: str, count: str, says: str) -> None:
    """4 chains of moss are one repeat of 2 base stitches and 2 extra chains; row 1 then has 2 sc and no space between."""
    file = tmp_path / "rows.txt"
    file.write_text(f"Row 1: {rows}", encoding="utf-8")
    text = done("rows", "--file", file)
    assert f"Row 1  {count}" in text
    assert text.rstrip().endswith(f"k counts {says}.")
