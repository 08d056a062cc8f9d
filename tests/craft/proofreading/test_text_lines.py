"""Lines by the place of a letter."""

from logbook.craft.proofreading.text_lines import TextLines

TEXT = "Back\n\nCh 62.\n"


def test_every_letter_is_in_the_line_that_the_ends_before_it_count() -> None:
    lines = TextLines(TEXT)
    assert [lines.of(at) for at in range(len(TEXT) + 1)] == [TEXT.count("\n", 0, at) + 1 for at in range(len(TEXT) + 1)]


def test_each_line_and_where_it_begins() -> None:
    lines = TextLines(TEXT)
    assert list(lines) == [(0, "Back"), (5, ""), (6, "Ch 62."), (13, "")]
    assert lines[3] == "Ch 62."
    assert [lines.start(line) for line in (1, 2, 3, 4)] == [0, 5, 6, 13]
