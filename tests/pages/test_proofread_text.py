"""What is marked in a pasted text, and which mark comes next."""

import pytest

from logbook.pages.proofread_text import NOTHING_YET, TROUBLE, UNKNOWN, marked, next_mark
from logbook.tasks.proofreading import of_run

HELD = of_run(("S", "M", "L", "XL"), "Sizes S (M, L, XL)\nCh 62 (68, 80, 86).\nWork 71 (73, 75, 77) rows.")
TEXT = "My top\nCh 62 (68, 81, 86).\nWork 71 (73, 75, 77) rows.\nI walked 5 (9, 14, 20) times round the lake.\n"


def test_what_differs_is_marked_in_place() -> None:
    found = marked(TEXT, HELD)
    (trouble,) = found.troubles
    assert TEXT[trouble.start : trouble.end] == "62 (68, 81, 86)"
    assert "the logbook has 62 (68, 80, 86)" in trouble.says
    (unknown,) = [mark for mark in found.marks if mark.sort == UNKNOWN]
    assert TEXT[unknown.start : unknown.end].startswith("5 (9, 14, 20)")
    assert found.says == "1 of 3 numbers and lists agree. 1 differs. 1 is not in the logbook."


def test_a_problem_of_a_line_marks_the_line() -> None:
    text = TEXT.replace("68, 81, 86", "68, 80") + "Sizes M (S, L, XL)\n"
    lines = {text[mark.start : mark.end] for mark in marked(text, HELD).marks if mark.sort == TROUBLE}
    assert {"Ch 62 (68, 80).", "Sizes M (S, L, XL)"} <= lines


def test_rows_are_marked_where_they_are_wrong() -> None:
    text = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\nRow 2: Ch 1, sc in each st. (9 sts)\n"
    assert "9 sts" in {text[mark.start : mark.end] for mark in marked(text, HELD).troubles}


@pytest.mark.parametrize(("text", "says"), [("", NOTHING_YET), (" \n", NOTHING_YET), ("x" * 1_000_001, "too long")])
def test_a_text_that_is_none_has_a_sentence(text: str, says: str) -> None:
    found = marked(text, HELD)
    assert (found.marks, says in found.says) == ((), True)


def test_a_text_without_numbers_is_not_called_right() -> None:
    none = "No numbers of a pattern were found in this text."
    assert marked("My top, for the lake.", HELD).says == none
    assert marked("Single crochet, miss two.", HELD).says == f"{none} 1 problem in the text itself."


def test_the_next_mark_goes_round() -> None:
    marks = [(5, 8), (20, 30), (41, 45)]
    assert [next_mark(marks, at) for at in (0, 5, 20, 41)] == [0, 1, 2, 0]
    assert [next_mark(marks, at, back=True) for at in (50, 41, 20, 5)] == [2, 1, 0, 2]
    assert next_mark([], 3) is None
