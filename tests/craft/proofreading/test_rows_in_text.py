"""Written rows inside a finished text: found, proven size by size, and named by their line."""

from logbook.craft.proofreading.rows_in_text import rows_problems, stretches

JACKET = """A jacket of my own, warm and plain.
Sizes S (M, L)

Back
Ch 51 (57, 63).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (50 [56, 62] sts)
Row 2: Ch 1, sc in next 20 (23, 26) sts, [dc in next st, sc in next st] 5 times, sc in next
20 (23, 26) sts, turn. (50 [56, 62] sts)
Rows 3-40: Rep Row 2.
Fasten off and have a cup of tea.

Sleeve
Rnd 1: Ch 40 (44, 48), join. Ch 1, sc in each ch around, join with sl st in first sc. (40 [44, 48] sts)
Rnd 2: Ch 1, sc in each st around, join with sl st in first sc. (40 [44, 48] sts)

Making up
Sew the shoulders, then the sides.
"""


def found(text: str) -> list[tuple[int, str]]:
    return [(problem.line, text[problem.start : problem.end]) for problem in rows_problems(text, ("Back", "Sleeve", "Making up"))]


def test_rows_of_each_piece_are_a_stretch_of_their_own() -> None:
    first, second = stretches(JACKET, ("Back", "Sleeve", "Making up"))
    assert JACKET[first.start : first.end].startswith("Ch 51 (57, 63).")
    assert JACKET[first.start : first.end].endswith("Rep Row 2.")
    assert JACKET[second.start : second.end].startswith("Rnd 1: Ch 40")


def test_right_rows_are_left_alone() -> None:
    assert found(JACKET) == []


def test_a_number_wrong_in_one_size_is_named_in_its_line() -> None:
    spoilt = JACKET.replace("20 (23, 26) sts, turn", "20 (23, 25) sts, turn")
    assert {line for line, _ in found(spoilt)} == {7}
    spoilt = JACKET.replace("in first sc. (40 [44, 48] sts)\n\nMaking", "in first sc. (40 [44, 46] sts)\n\nMaking")
    assert [line for line, _ in found(spoilt)] == [14]


def test_what_is_not_understood_is_no_problem_of_the_text() -> None:
    assert found(JACKET.replace("Rows 3-40: Rep Row 2.", "Row 3: Work the wonder stitch as you like.")) == []
