"""The whole pattern of a garment: every number follows its input, and each part stands where a reader wants it."""

import re
from typing import Any

import pytest

from logbook.craft.garments.plan_file import plan_of
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import pattern_html, pattern_text, written
from logbook.tasks.garments import work_out
from logbook.tasks.written.garment import short_version
from logbook.tasks.written.missing import missing

STITCH = {
    "stitches": "16 sts = 10 cm", "rows": "20 rows = 10 cm", "multiple": 1, "plus": 0, "extra chains": 1, "yarn": "Fennel",
    "fibre": "wool", "ball grams": 50, "ball metres": 120, "swatch grams": 12, "swatch stitches": 24, "swatch rows": 24,
    "stitch pattern": "single crochet", "terms": "US", "hook mm": 4,
}  # fmt: skip
TOP = {"length": "56 cm", "armhole": "20 cm", "neck width": "18 cm"}
PLAN: dict[str, Any] = {
    "name": "Quay jumper",
    "ease": "5 cm",
    "sizes": {"chart": "women", "only": ["S", "M", "L"]},
    "pieces": [
        {
            "name": "back", "shape": "straight panel", "swatch": STITCH,
            "measures": {"width": "(bust + ease) / 2", **TOP, "neck depth": "3 cm"},
        },
        {
            "name": "front", "shape": "straight panel", "swatch": STITCH,
            "measures": {"width": "width of back", **TOP, "neck depth": "8 cm"},
        },
        {
            "name": "sleeve", "shape": "tapered panel", "alike": 2, "swatch": STITCH,
            "measures": {"start width": "22 cm", "end width": "40 cm", "length": "45 cm"},
        },
        {
            "name": "neckband", "shape": "edging", "worked": "round", "swatch": STITCH,
            "along": [["back", "neck"], ["front", "neck"]],
            "measures": {"depth": "2 cm"},
        },
    ],
    "joins": [
        {"of": "back", "edge": "side", "to": ["front"], "at": "side"},
        {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
        {"of": "back", "edge": "shoulder", "to": ["front"], "at": "shoulder"},
    ],
}  # fmt: skip


def text_of(plan: dict[str, Any], terms: Terms = Terms.US) -> str:
    return pattern_text(work_out(plan_of(plan)), terms)


def test_the_parts_stand_in_the_order_of_a_reader() -> None:
    text = text_of(PLAN)
    order = ["Quay jumper", "Finished measurements", "Materials", "Gauge", "Abbreviations", "Notes", "Back, worked"]
    order += ["Front, worked", "Sleeve (make 2)", "Neckband", "Making up", "Care and cautions"]
    places = [text.index(f"\n{heading}" if heading != "Quay jumper" else heading) for heading in order]
    assert places == sorted(places)
    # back: (835 + 50)/2 = 442.5: 70.8 → 71, with 1 extra chain
    assert "Ch 72 (80, 88).\n71 (79, 87) sts in row 1." in text
    assert "Ask the wearer about allergies" in text


def test_making_up_is_one_sequence() -> None:
    text = text_of(PLAN)
    steps = [
        "shoulders of the back",
        "Work the neckband",
        "last row of each sleeve to the armhole",
        "Sew the sides",
        "seam of each sleeve",
    ]
    places = [text.index(step, text.index("Making up")) for step in steps]
    assert places == sorted(places)


CHANGES: list[tuple[int, str, str]] = [
    (piece, measure, "7 cm")
    for piece, measures in (
        (0, ("width", "length", "armhole", "neck width", "neck depth")),
        (1, ("length", "armhole", "neck width", "neck depth")),
        (2, ("start width", "end width", "length")),
        (3, ("depth",)),
    )
    for measure in measures
]


@pytest.mark.parametrize(("piece", "measure", "more"), CHANGES)
def test_the_text_follows_every_measure(piece: int, measure: str, more: str) -> None:
    pieces = [dict(each) for each in PLAN["pieces"]]
    pieces[piece]["measures"] = {**pieces[piece]["measures"], measure: f"{pieces[piece]['measures'][measure]} + {more}"}
    if measure == "neck width":  # both necks, so that the shoulders still meet
        for each in pieces[:2]:
            each["measures"] = {**each["measures"], measure: f"18 cm + {more}"}
    assert text_of({**PLAN, "pieces": pieces}) != text_of(PLAN)


@pytest.mark.parametrize("column", ["stitches", "rows", "extra chains", "swatch grams", "ball grams", "hook mm", "fibre"])
def test_the_text_follows_every_column_of_the_swatch(column: str) -> None:
    other = {"stitches": "17 sts = 10 cm", "rows": "22 rows = 10 cm", "extra chains": 2, "swatch grams": 20, "ball grams": 25,
             "hook mm": 5, "fibre": "acrylic"}  # fmt: skip
    pieces = [{**each, "swatch": {**STITCH, column: other[column]}} for each in PLAN["pieces"]]
    assert text_of({**PLAN, "pieces": pieces}) != text_of(PLAN)


def test_uk_terms() -> None:
    text = text_of(PLAN, Terms.UK)
    assert "This pattern uses UK terms." in text
    assert "Tension" in text
    assert "double crochet" in text
    assert "Work straight" in text
    assert re.search(r"then \d+ rows? straight", text)  # in tables too
    assert not re.search(r"\beven\b(?!ly)", text)


def test_the_short_version_and_what_is_missing() -> None:
    made = written(work_out(plan_of(PLAN)), Terms.US)
    assert "back: ch 72 (80, 88)" in short_version(made)
    assert "The pattern has no introduction yet." in missing(made)


ALL = "“back”, “front”, “sleeve” and “neckband”"


@pytest.mark.parametrize(
    ("lacking", "said"),
    [
        ((), []),
        (("ball metres",), [f"How many metres {ALL} take can't be worked out: type how long a ball is."]),
        (("ball grams",), [f"How many balls {ALL} take can't be worked out: type what a ball weighs."]),
        (
            ("ball grams", "ball metres"),
            [f"How many balls {ALL} take can't be worked out: type what a ball weighs and how long it is."],
        ),
        (("swatch grams",), [f"The yarn for {ALL} can't be worked out: weigh their swatch."]),
        (("swatch rows",), [f"The yarn for {ALL} can't be worked out: count the stitches and rows of their swatch."]),
        (
            ("swatch grams", "ball metres"),
            [f"The yarn for {ALL} can't be worked out: weigh their swatch, and type how long a ball is."],
        ),
    ],
)
def test_only_what_is_missing_is_asked_for_to_know_the_yarn(lacking: tuple[str, ...], said: list[str]) -> None:
    stitch = {key: value for key, value in STITCH.items() if key not in lacking}
    plan = plan_of({**PLAN, "pieces": [{**piece, "swatch": stitch} for piece in PLAN["pieces"]]})
    assert [one for one in missing(written(work_out(plan), Terms.US)) if "worked out" in one] == said


def test_what_one_piece_lacks_and_what_pieces_of_several_swatches_lack_is_worded_for_them() -> None:
    bare = {key: value for key, value in STITCH.items() if not key.startswith("swatch ")}
    pieces = [{**piece, "swatch": bare if piece["name"] == "back" else STITCH} for piece in PLAN["pieces"]]
    said = missing(written(work_out(plan_of({**PLAN, "pieces": pieces})), Terms.US))
    assert "The yarn for “back” can't be worked out: weigh its swatch, and count its stitches and rows." in said
    pieces[1]["swatch"] = {**bare, "colour": "slate"}
    said = missing(written(work_out(plan_of({**PLAN, "pieces": pieces})), Terms.US))
    assert "The yarn for “back” and “front” can't be worked out: weigh their swatches, and count their stitches and rows." in said


def test_a_page_to_print_stands_alone() -> None:
    page = pattern_html(work_out(plan_of({**PLAN, "says": "Cool & <light>"})), Terms.US, Units.CM)
    assert "Cool &amp; &lt;light&gt;" in page
    assert page.count("<svg") == 5
    assert page.count("</h2><figure>") == 4  # each piece's drawing stands under its heading, on the same page
    assert '<p class="before">Increase 1 st at each edge' in page
    assert "http://www.w3.org/2000/svg" in page
    assert "<script" not in page
    assert 'href="http' not in page


def test_a_body_goes_on_from_its_yoke() -> None:
    around = {"swatch": STITCH, "worked": "round"}
    measures = {"neck round": "48 cm", "yoke depth": "24 cm", "body round": "100 cm", "upper arm round": "36 cm"}
    pieces = [
        {"name": "yoke", "shape": "raglan yoke", "swatch": STITCH, "measures": {**measures, "underarm": "6 cm"}},
        {"name": "body", "shape": "straight panel", **around, "measures": {"width": "100 cm", "length": "34 cm"}},
        {"name": "sleeve", "shape": "tapered panel", "alike": 2, **around,
         "measures": {"start width": "36 cm", "end width": "22 cm", "length": "45 cm"}},
    ]  # fmt: skip
    joins = [
        {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
        {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
    ]
    text = text_of({"name": "g", "pieces": pieces, "joins": joins})
    assert [line for line in text.splitlines() if line.startswith("Ch ")] == [
        "Ch 77 and join into a ring, taking care not to twist the chain."
    ]
    assert "leave the next 47 sts for a sleeve, ch 10, work over the front" in text
    assert "10 sts along its chains and the 47 sts left for the sleeve are 57 sts; they are round 1." in text
    assert "Sew" not in text
    assert "Worked in one piece: yoke, with body and sleeve (× 2) worked on from it." in text


def test_how_stitches_are_gained_and_lost_is_told_where_they_are() -> None:
    text = text_of(PLAN)
    assert "To increase, work 2 sts into one; to decrease, work 2 sts together." in text
    assert "With the right side facing, pick up" in text
    straight = [{**PLAN["pieces"][0], "measures": {"width": "50 cm", "length": "56 cm"}}]
    assert "To increase" not in text_of({**PLAN, "pieces": straight, "joins": []})
    sleeve = text_of({**PLAN, "pieces": [PLAN["pieces"][2]], "joins": []})
    assert "To increase, work 2 sts into one." in sleeve
    necks = text_of({**PLAN, "pieces": PLAN["pieces"][:2], "joins": []})
    assert "To decrease, work 2 sts together." in necks


def sleeve_of(length: str) -> str:
    return text_of({**PLAN, "pieces": [{**PLAN["pieces"][2], "measures": {**PLAN["pieces"][2]["measures"], "length": length}}],
                    "joins": []})  # fmt: skip


def test_a_row_1_that_is_shaped_says_what_its_stitches_are() -> None:
    assert "35 sts in row 1.\n" in sleeve_of("45 cm")
    assert "35 sts in row 1, before it is shaped.\n" in sleeve_of("8 cm")


def test_where_a_neck_has_parted_the_work_the_second_side_is_told() -> None:
    text = text_of(PLAN)
    back = text[text.index("Back, worked") : text.index("Front, worked")]
    assert "Row 112 is the last: " in back
    assert "Work the second side to match: join the yarn in the next st after the middle ones, and begin with row " in back


def test_a_band_names_each_of_two_fronts_and_its_first_row() -> None:
    measures = {**TOP, "width": "width of back / 2", "neck width": "9 cm", "neck depth": "8 cm"}
    front = {**PLAN["pieces"][0], "name": "front", "shape": "half front", "alike": 2, "measures": measures}
    band = {**PLAN["pieces"][3], "name": "band", "worked": "up",
            "along": [["front", "neck"], ["back", "neck"], ["front", "neck"]]}  # fmt: skip
    text = text_of({**PLAN, "pieces": [PLAN["pieces"][0], front, band], "joins": []})
    for one in ("the neck edge of the first front", "the neck edge of the back", "the neck edge of the second front"):
        assert f" sts along {one}" in text
        assert one in text[text.index("Making up") :]
    assert " sts in all, worked into the edge as row 1." in text


def test_yarn_and_body_are_told_as_one_buys_and_measures_them() -> None:
    text = text_of(PLAN)
    assert "Fennel (wool, 50 g = 120 m): " in text
    assert "To fit waist: 65.5 (73.5, 83.8) cm / 25 3/4 (29, 33) in." in text


def test_drawings_on_the_page_tell_lengths_as_the_text_does() -> None:
    answer = work_out(plan_of(PLAN))
    (line,) = [line for line in pattern_text(answer, Terms.US).splitlines() if line.startswith("back, width")]
    middle = line.split("(")[1].split(",")[0]
    assert f">back: {middle} cm wide, 112 rows<" in pattern_html(answer, Terms.US, Units.CM)
