"""What a text contradicts itself in."""

import pytest

from logbook.craft.proofreading.quantities import quantities
from logbook.craft.proofreading.text_checks import LONGEST_SENTENCE, _in_table, problems_of

NAMES = ("S", "M", "L")


def said(text: str) -> list[str]:
    return [problem.says for problem in problems_of(text, quantities(text, 3, ()), NAMES)]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Sizes S (L, M)", "another order: S, L, M"),
        ("Work 12 (14, 16, 18) rows.", "4 numbers, but there are 3 sizes"),
        ("Sizes: S (M, L)\nWork 12 (14, 16, 18) rows.", "4 numbers, but there are 3 sizes"),
        ("Work 12 (14, 16, 18) rows. Sizes M and L: turn.", "4 numbers, but there are 3 sizes"),
        ("46 cm / 19 in", "not the same length."),
        ("46 (50, 54) cm / 18 (19 3/4, 24) in", "not the same length in size L."),
        ("16 sts and 20 rows = 10 cm / 6 in", "“10 cm” and “6 in” are not the same length"),
        ("L     14     in row 2\n1st   row 2 (3, 4, 5)  41 sts\nM   2  ", "4 numbers, but there are 3 sizes"),
        ("Ch 5, sc in next st.\n\nAbbreviations\nch: chain\nst: stitch\n\nEnd", "“sc” is used, but not among"),
        ("Ch 5.\n\nAbbreviations\nch: chain\ndc: double crochet\n\nEnd", "“dc” is among the abbreviations, but not used"),
        ("Sc in next st, miss 1 st.", "US and UK words"),
    ],
)
def test_problems(text: str, says: str) -> None:
    assert any(says in one for one in said(text)), said(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Ch 61 (69, 77 85).", "“61 (69, 77 85)” has no comma between 77 and 85."),
        ("46.5 (52 57.5, 62.5) cm", "“46.5 (52 57.5, 62.5)” has no comma between 52 and 57.5."),
        ("18 1/4 [20 1/2 22 1/2,\n24 1/2] in", "“18 1/4 [20 1/2 22 1/2,\n24 1/2]” has no comma between 20 1/2 and 22 1/2."),
        ("18 1/4 (20 1/2, 22 1/2, 24 1/2) in", ""),
        ("Ch 61 (69 77 85).", ""),  # a list that is written without any
        ("Rows 2 (3, 4 5, 6)", ""),  # as many as there are no sizes
    ],
)
def test_a_list_that_lost_a_comma(text: str, says: str) -> None:
    names = ("S", "M", "L", "XL")
    told = [problem.says for problem in problems_of(text, quantities(text, 4, ()), names)]
    assert [one for one in told if "comma" in one] == ([says] if says else [])


def test_a_text_for_other_sizes_gets_one_sentence() -> None:
    told = ["The text is for the sizes XS, S, M and L, the logbook has S, M and L."]
    assert said("My top\n\nSizes: XS (S, M, L)\nCh 61 (69, 77, 85).\n59 (67, 75, 83) sts in row 1.\n") == told
    assert said("Sizes\nXS [S, M, L]\nCh 61 (69, 77, 85).\n") == told


@pytest.mark.parametrize(
    "text",
    [
        "Sizes: 8 (10, 12)",
        "Sizes S (M): work 2 rows.",
        "Sizes S (M, L)",
        "Sizes M and L: place a marker at the end of row 39 (38, 37, 36) of the piece.",
        "For sizes M and L only: work 12 (14) rows more.",
        "10 cm / 4 in",
        "16 sts = 10 cm / 4 in",
        "46 (50, 54) cm / 18 (19 3/4, 21 1/4) in",
        "This pattern uses US terms: sc is UK dc.",
        "Rows 2 (RS) and 4 (WS)",
    ],
)
def test_what_is_none(text: str) -> None:
    assert said(text) == []


def test_the_line_of_a_word_behind_the_abbreviations() -> None:
    text = "Ch 5.\n\nAbbreviations\nch: chain\nst: stitch\n\nEnd\nsc in next st"
    assert [problem.line for problem in problems_of(text, (), NAMES) if "“sc”" in problem.says] == [8]


def test_before_a_list_no_more_is_read_than_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    read = []

    class Counted:
        def sub(self, new: str, sentence: str) -> str:
            read.append(len(sentence))
            return sentence

        def finditer(self, text: str) -> tuple[()]:
            return ()

    monkeypatch.setattr("logbook.craft.proofreading.text_checks._all_sizes", lambda names: Counted())
    assert len(problems_of("12 (14, 16, 18) sts " * 200, (), NAMES)) == 200
    assert read == []
    assert problems_of("12 (14, 16, 18) S, " * 200, (), NAMES) == ()
    assert len(read) == 200
    assert max(read) < LONGEST_SENTENCE + 100


def test_a_long_line_is_not_read_again_for_each_of_its_lists() -> None:
    class Line(str):
        def strip(self, chars: str | None = None, /) -> str:
            raise AssertionError("read whole")

    assert not _in_table(Line("12 (14, 16) sts  " * 200))
    assert _in_table("1st   row 2 (3, 4, 5)  41 sts")


def test_what_is_not_used_is_told_at_the_heading_not_at_the_empty_line_above() -> None:
    text = "Ch 5.\n\n* Abbreviations *\nch: chain\ndc: double crochet\n\nEnd"
    assert [problem.line for problem in problems_of(text, (), NAMES)] == [3]
