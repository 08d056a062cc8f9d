"""A cardigan from the template in a stitch with a repeat of 10: what is written, printed and said of it."""

import re
from dataclasses import replace
from functools import cache
from typing import Any

from logbook.craft.garments.plan_file import plan_of, plan_value
from logbook.craft.garments.templates import template
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import pattern_html, pattern_text, written
from logbook.tasks.garment_words import notes
from logbook.tasks.garments import GarmentAnswer, work_out
from logbook.tasks.written.missing import missing
from logbook.tasks.written.row_repeat import repeat_line, repeat_unknown

ROWS = """Row 1: Dc in 4th ch from hook, dc in each ch across, turn.
Row 2: Ch 3 (counts as dc), dc in each st across, turn."""
STITCH = {
    "stitch pattern": "wave stitch", "yarn": "Fjord 8", "colour": "slate", "stitches": "16 sts = 10 cm", "rows": "9 rows = 10 cm",
    "multiple": 10, "plus": 2, "extra chains": 2, "terms": "US", "hook mm": 4, "written rows": ROWS,
}  # fmt: skip


@cache
def cardigan() -> GarmentAnswer:
    value: dict[str, Any] = plan_value(template("cardigan"))
    for piece in value["pieces"]:
        piece["swatch"] = dict(STITCH)
    value["sizes"] = {"chart": "women", "only": ["S", "M", "L"], "end": "middle"}
    return work_out(plan_of(value))


def text() -> str:
    return pattern_text(cardigan(), Terms.US)


def test_a_join_that_does_not_fit_is_told_and_not_sewn() -> None:
    said = "The shoulder of each front does not fit the shoulder of the back in sizes S, M and L."
    assert f"NOT FINISHED: {said}\n" in text()
    assert said in missing(written(cardigan(), Terms.US))
    assert "Sew the shoulders of each front and the back together, which does not fit yet." in text()


def test_the_printed_page_has_no_mark_of_a_fault_and_says_which_size_is_drawn() -> None:
    page = pattern_html(cardigan(), Terms.US, Units.CM)
    assert "✕" not in page
    assert "NOT FINISHED" in page
    assert page.count("<figcaption>Drawn: size M") == page.count("<figure><svg") == 5
    assert page.count("<figcaption>Drawn: size M. Edges with the same letter are joined.</figcaption>") == 1


def test_the_finished_bust_is_told_with_the_band_closed() -> None:
    # S: 72 sts of 6.25 and twice 32 are 850, and 3 rows of 11.1 of the band 33.3; M: 82 and 84: 1037.5; L: 92 and 84: 1100
    assert "Finished bust, with the band closed: 88.5 (107, 113.5) cm / " in text()


def test_ease_that_repeats_do_not_allow_is_said() -> None:
    # 835 + 100 asked for, and the band's own 3.3 mm that 30 does not make whole rows: 938.3; less than half a repeat is not said
    said = [note for size in cardigan().numbers for note in notes(cardigan(), size) if "All round" in note]
    assert said == [
        "All round it comes to 88.3 cm (ease 4.8 cm), 5.5 cm less than the 93.8 cm asked for: “back” and “front” are made of "
        "whole repeats."
    ]


def test_yarn_that_was_not_weighed_is_named() -> None:
    assert "Materials\nFjord 8 slate: how much it takes is not known yet\n" in text()


def test_the_rows_that_are_repeated_are_told() -> None:
    assert f"{ROWS}\nRepeat row 2.\n" in text()
    pattern = StitchPattern(rows_text=ROWS, terms="US")
    assert (repeat_line(pattern), repeat_unknown(pattern)) == ("Repeat row 2.", False)
    assert repeat_line(replace(pattern, rows_text=f"{ROWS}\nRepeat row 2.")) == ""
    shaped = ROWS.replace("dc in each st across", "sk 2 sts, dc in each st across")
    assert repeat_unknown(StitchPattern(rows_text=shaped, terms="US"))
    assert repeat_line(StitchPattern(rows_text=shaped, terms="US", rows_in_repeat=2)) == "Repeat rows 1–2."
    assert not repeat_unknown(StitchPattern(rows_text=shaped, terms="US", rows_in_repeat=1))
    assert not repeat_unknown(StitchPattern())


def test_marks_stand_where_their_rows_come() -> None:
    front = text()[text().index("Front (make 2") : text().index("Sleeve (make 2)")]
    lines = [
        "Size L: place a marker at the side edge at the end of row 32 for the armhole.",
        "Work even to the end of row 32.",
        "Row 33 is the first row of the neck",
        "Sizes S and M: place a marker at the side edge at the end of row 35 (34) for the armhole, while the neck is shaped.",
        "Decrease 1 st at the neck edge",
    ]
    assert [front.index(line) for line in lines] == sorted(front.index(line) for line in lines)


def test_what_is_picked_up_for_the_band_adds_up() -> None:
    assert (
        "Band\nWorked in wave stitch.\nWith the right side facing, pick up 58 sts along the front edge of the first front"
        in text()
    )
    for size in cardigan().numbers:
        band = size.piece("band")
        assert sum(edge.stitches for edge in band.picked) == band.foundation == 222
        assert [edge.stitches for edge in band.picked] == [edge.stitches for edge in reversed(band.picked)]
    assert "\n222 sts in all, worked into the edge as row 1.\n" in text()
    assert "more or fewer" not in text()


def test_what_several_pieces_lack_is_told_once() -> None:
    of = "“back”, “front”, “sleeve” and “band”"
    asked = "weigh their swatch, count its stitches and rows, and type what a ball weighs and how long it is"
    said = f"The yarn for {of} can't be worked out: {asked}."
    assert [one for one in missing(written(cardigan(), Terms.US)) if "yarn" in one] == [said]


def test_a_piece_is_drawn_beside_its_lines() -> None:
    page = pattern_html(cardigan(), Terms.US, Units.CM)
    widths = [int(width) for width in re.findall(r'<figure><svg[^>]* viewBox="0 0 (\d+) ', page)]
    assert widths == [720, 400, 400, 400, 400]
