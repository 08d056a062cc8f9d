"""A whole piece from the command line: the three garments worked by hand in tests/craft, the refusals, the files."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.support.command_line import done, done_json, refused
from tests.support.garments import garment_book

KEYS = {
    "chain", "stitches", "repeats", "edge_stitches", "rows", "width_mm", "length_mm", "give_or_take_mm", "before_washing_mm",
    "marks", "grams", "balls", "stretch", "notes",
}  # fmt: skip
BY_HAND = ("piece", "--gauge", "20 sts = 14 cm", "--rows-gauge", "20 rows = 18 cm", "--first-stitch", "3", "--cover", "0")
VEST = (
    "--body", "94", "--ease", "8", "--seam", "mattress stitch", "--length", "56", "--armhole", "20", "--neck", "24",
    "--upper-arm", "28",
)  # fmt: skip
RIB = (
    "--body",
    "88",
    "--ease",
    "-6cm",
    "--seam",
    "whip stitch",
    "--sideways",
    "--length",
    "52",
    "--armhole",
    "18",
    "--neck",
    "26",
)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    with garment_book(tmp_path_factory.mktemp("garments") / "a.logbook") as made:
        return made.path


def of_book(book: Path, tag: str, *arguments: str) -> tuple[str | Path, ...]:
    return ("piece", "--book", book, "--swatch", tag, *arguments)


def test_a_plain_vest(book: Path) -> None:
    answer = done_json(*of_book(book, "H1", *VEST))
    assert answer.keys() >= KEYS
    counts = {name: answer[name] for name in ("chain", "stitches", "repeats", "edge_stitches", "rows", "balls")}
    assert counts == {"chain": 76, "stitches": 74, "repeats": 74, "edge_stitches": 0, "rows": 62, "balls": 6}
    assert (answer["width_mm"], answer["length_mm"]) == (pytest.approx(518), pytest.approx(558))
    assert answer["give_or_take_mm"] == pytest.approx(31.184, abs=0.001)
    assert answer["before_washing_mm"] == {"width": pytest.approx(532.8), "length": pytest.approx(551.8)}
    assert answer["marks"] == [
        {"name": "armhole", "row": 40, "true_mm": pytest.approx(198)},
        {"name": "neck begins", "stitch": 20, "true_mm": pytest.approx(238)},
        {"name": "neck ends", "stitch": 54, "true_mm": pytest.approx(238)},
    ]
    assert answer["grams"] == pytest.approx(230.94, abs=0.01)
    assert answer["stretch"] is None
    assert (
        answer["notes"][0]
        == "The neck is 47.6 cm round, but an adult’s head usually measures 56.0 cm: make it larger, or leave an opening."
    )


def test_a_wide_lace_with_edge_stitches(book: Path) -> None:
    # tests/craft has edgings of 3 and 2 cm too; without them 58 cm are 58 rows, 56 or 60 hold whole groups
    edge = ("--edge-stitches", "auto", "--edge-gauge", "20 sts = 12 cm")
    answer = done_json(*of_book(book, "L1", "--width", "46", "--length", "58", *edge))
    assert (answer["chain"], answer["stitches"], answer["repeats"], answer["edge_stitches"]) == (92, 89, 5, 4)
    own = done_json(*of_book(book, "L1", "--width", "46", "--length", "58", *edge, "--edge-extra-chains", "1"))
    assert (own["chain"], own["stitches"]) == (90, 89)  # the edge is sc: its own extra chain, not the lace's three
    assert answer["width_mm"] == pytest.approx(453)
    assert answer["rows"] == 58
    plain = done_json(*of_book(book, "L1", "--width", "46", "--length", "58"))
    assert (plain["chain"], plain["width_mm"]) == (100, pytest.approx(485))


def test_a_sideways_rib_with_negative_ease(book: Path) -> None:
    answer = done_json(*of_book(book, "R1", *RIB, "--hip", "96", "--even"))
    assert (answer["chain"], answer["stitches"], answer["rows"]) == (88, 87, 58)
    assert answer["marks"][0] == {"name": "armhole", "stitch": 57, "true_mm": pytest.approx(180)}
    assert answer["marks"][1] == {"name": "neck begins", "row": 10, "true_mm": pytest.approx(266)}
    assert answer["stretch"] == {
        "needed": pytest.approx(0.083744, abs=1e-6),
        "give": pytest.approx(0.35),
        "share": pytest.approx(0.23927, abs=1e-5),
        "verdict": "comfortable",
    }
    assert answer["notes"][1].startswith("The hem is 81.2 cm round, but the hip measures 96.0 cm")


def test_it_warns_of_an_odd_rib_and_of_one_that_does_not_go_on(book: Path) -> None:
    odd = done_json(*of_book(book, "R1", *RIB))
    assert odd["rows"] == 59
    assert any("59 is odd: choose even" in note for note in odd["notes"])
    never = done_json(*of_book(book, "R1", "--body", "88", "--ease", "-30", *RIB[4:]))
    assert never["stretch"]["verdict"] == "does not go on"
    assert never["stretch"]["share"] > 1


def test_not_pulled_yet_says_only_what_is_needed() -> None:
    answer = done_json(*BY_HAND, "--body", "94", "--ease=-8")
    assert answer["stretch"] == {"needed": pytest.approx(940 / 854 - 1), "give": None, "share": None, "verdict": None}
    assert (answer["rows"], answer["length_mm"], answer["grams"], answer["balls"]) == (None, None, None, None)
    assert answer["before_washing_mm"] == {"width": None, "length": None}


def test_in_words_and_inches() -> None:
    said = done(*BY_HAND, *VEST)
    assert said.splitlines()[0] == "Chain 76, 62 rows."
    assert "Armhole: mark the end of row 40; it is 19.8 cm deep (20.0 cm asked)." in said
    assert "It measures 40 in all round, 3 in more than the body." in done(*BY_HAND, *VEST, "--inches")


def test_the_seam_by_its_name_or_its_width() -> None:
    by_name = done_json(*BY_HAND, *VEST)
    by_width = done_json(*BY_HAND, "--body", "94", "--ease", "8", "--seam", "0.525", *VEST[6:])
    assert by_name == by_width


def test_it_draws_and_tabulates(book: Path, tmp_path: Path) -> None:
    svg, sheet = tmp_path / "vest.svg", tmp_path / "vest.xlsx"
    done(*of_book(book, "H1", *VEST, "--svg", str(svg), "--workbook", str(sheet)))
    words = [text.text for text in ElementTree.parse(svg).iter("{http://www.w3.org/2000/svg}text")]
    assert {"51.8 cm", "55.8 cm", "19.8 cm", "row 40", "neck 23.8 cm", "20", "34 sts", "chain 76", "62 rows"} <= set(words)
    assert sheet.read_bytes().startswith(b"PK")
    assert "is the logbook that is open" in refused(1, *of_book(book, "H1", *VEST, "--svg", str(book)))
    assert "is a logbook" in refused(1, *BY_HAND, *VEST, "--svg", book)


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        ((), 2, "give either --width, or --body with --ease"),
        (("--width", "46", "--body", "90"), 2, "not both"),
        (("--width", "46", "--ease", "5"), 2, "--ease goes with --body"),
        (("--width", "46", "--armhole", "20"), 2, "--armhole needs --length"),
        (("--width", "46", "--sideways"), 2, "--sideways needs --length"),
        (("--width", "46", "--round", "--sideways", "--length", "50"), 2, "--sideways goes with a flat piece"),
        (("--width", "46", "--edge-gauge", "20 sts = 12 cm"), 2, "--edge-gauge goes with --edge-stitches"),
        (("--width", "46", "--edge-extra-chains", "1"), 2, "--edge-extra-chains goes with --edge-gauge"),
        (("--width", "46", "--edge-stitches", "few"), 2, "“few” is not a number of edge stitches"),
        (("--width", "46", "--workbook", "a.ods"), 2, "“a.ods” must end in .xlsx"),
        (("--body", "90", "--seam", "glue"), 2, "“glue” is not a length"),
        (("--width", "wide"), 2, "“wide” is not a width"),
        (("--width", "46", "--length", "56", "--armhole", "60"), 1, "That armhole does not fit on the panel"),
        (("--width", "46", "--neck", "60"), 1, "That neck does not fit on the panel"),
        (("--width", "46", "--edge-stitches", "2"), 1, "Edge stitches go beside the whole repeats"),
        (("--body", "90", "--ease=-95"), 1, "nothing would be left"),
    ],
)
def test_refusals_are_one_sentence(arguments: tuple[str, ...], code: int, says: str) -> None:
    assert says in refused(code, *BY_HAND, *arguments)


def test_without_rows_measured_a_length_by_hand_leaves_the_rows_open_and_says_so() -> None:
    said = ("piece", "--gauge", "20 sts = 14 cm", "--stitch", "sc", "--width", "46", "--length", "50", "--armhole", "20")
    assert done(*said).startswith("Chain ")
    answer = done_json(*said)
    assert (answer["rows"], answer["length_mm"], answer["marks"]) == (None, None, [])
    assert any("the rows are left open" in note for note in answer["notes"])
    assert "--sideways needs --rows-gauge" in refused(2, *said[:-2], "--sideways")


def test_a_tag_that_is_not_there(book: Path) -> None:
    assert "There is no swatch with the tag “X”" in refused(1, *of_book(book, "X", "--width", "46"))


def test_json_holds_no_infinity(book: Path) -> None:
    json.loads(done(*of_book(book, "R1", *RIB, "--json")), parse_constant=lambda text: pytest.fail(text))


def test_its_page_and_its_text_are_written(tmp_path: Path) -> None:
    page, text = tmp_path / "vest.html", tmp_path / "vest.txt"
    said = done(*BY_HAND, *VEST, "--html", page, "--text", text)
    assert text.read_text("utf-8").strip() == said.strip()
    html = page.read_text("utf-8")
    assert "<svg" in html
    assert "From a gauge given with it" in html
