from datetime import date
from pathlib import Path

import pytest

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.errors import RefusedError
from logbook.sheets.cells import column_letters
from logbook.sheets.limits import RawCell, RawRow, RawSheet, Unusable
from logbook.sheets.reading import read_sheet
from logbook.sheets.swatch_rows import SheetSwatches, swatches_of
from tests.support.faults import FAULTS

SAMPLE = Path(__file__).parents[2] / "sample_data"
GOOD = {"tag": "A", "yarn": "Harbour", "hook mm": "4.5", "stitches washed": "4 repeats = 15.1 cm"}


def read(*rows: dict[str, RawCell], first: int = 2) -> SheetSwatches:
    """Rows by column name, the first of them in row ``first``."""
    names = list(dict.fromkeys(name for row in rows for name in row))
    body = tuple(RawRow(number, tuple(row.get(name) for name in names)) for number, row in enumerate(rows, start=first))
    return swatches_of(RawSheet("log.csv", (RawRow(1, tuple(names)), *body)))


def where(result: SheetSwatches) -> list[tuple[int, str]]:
    return [(problem.row, problem.column) for problem in result.problems]


def test_all_faults_of_a_sheet_at_once() -> None:
    result = swatches_of(read_sheet(SAMPLE / "faulty.csv"))
    assert where(result) == FAULTS
    assert not {one.row for one in result.good} & {row for row, _ in FAULTS}
    assert all(problem.expected and problem.says.endswith(".") for problem in result.problems)


def test_the_sample_is_good() -> None:
    result = swatches_of(read_sheet(SAMPLE / "swatches.csv"))
    assert result.problems == ()
    assert len(result.good) > 10


def test_a_row() -> None:
    result = read({**GOOD, "fibre": "wool", "stitch pattern": "Shell", "multiple": 6.0, "date": date(2026, 5, 31), "notes": 7.0})
    assert result.problems == ()
    assert result.columns == {*GOOD, "fibre", "stitch pattern", "multiple", "date", "notes"}
    swatch = result.good[0].swatch
    assert (swatch.tag, swatch.hook_mm, swatch.date, swatch.notes) == ("A", 4.5, "2026-05-31", "7")
    assert swatch.yarn is not None
    assert (swatch.yarn.name, swatch.yarn.fibre) == ("Harbour", "wool")
    assert swatch.pattern is not None
    assert (swatch.pattern.name, swatch.pattern.multiple) == ("Shell", 6)
    assert swatch.readings_of(Condition.WASHED, Direction.STITCHES)[0].length_mm == 151


def test_headings_take_other_cases_and_spaces() -> None:
    assert read({"TAG": "A", "Yarn ": "H", " Hook  mm": 4.5, "Stitches Washed": "18 sc in 10 cm"}).problems == ()


@pytest.mark.parametrize(
    ("cell", "column"),
    [
        (Unusable("the error #REF!"), "notes"),
        (Unusable("a formula whose result was never worked out"), "hook mm"),
        (date(2026, 4, 5), "hook mm"),
        (date(2026, 4, 5), "dye lot"),
        (43_000.0, "date"),
        ("31/05/2026", "date"),
        ("TRUE", "strands"),
        (4.0, "stitches washed"),
    ],
)
def test_a_cell_that_can_not_be_used(cell: RawCell, column: str) -> None:
    result = read({**GOOD, column: cell})
    assert where(result) == [(2, column)]
    assert result.good == ()


def test_headings_unknown_twice_and_missing() -> None:
    heading = RawRow(1, ("tag", "shelf", "yarn", "Tag", None, "hook mm", "stitches washed"))
    rows = (
        RawRow(2, ("A", "top", "Harbour", "B", None, 4.5, "18 sc in 10 cm")),
        RawRow(4, ("B", "top", "Harbour", "B", "lost", 4.5, "18 sc in 10 cm", None, "far")),
    )
    result = swatches_of(RawSheet("x", (heading, *rows)))
    assert where(result) == [(1, "shelf"), (1, "tag"), (4, "E"), (4, "I")]
    assert [(one.row, one.swatch.tag) for one in result.good] == [(2, "A")]


@pytest.mark.parametrize("rows", [(), (RawRow(3, ("tag",)),), (RawRow(1, ("Swatches of 2026",)), RawRow(2, ("tag", "yarn")))])
def test_no_heading_is_one_problem_of_the_first_row(rows: tuple[RawRow, ...]) -> None:
    assert [problem.row for problem in swatches_of(RawSheet("x", rows)).problems][:1] == [1]


def test_uid_and_tag_twice() -> None:
    result = read({**GOOD, "uid": "u"}, {**GOOD, "uid": "u", "tag": "B"}, {**GOOD, "uid": "v"}, {**GOOD, "uid": "", "tag": ""})
    assert where(result) == [(3, "uid"), (4, "tag")]
    assert [one.row for one in result.good] == [2, 5]


def test_what_a_new_swatch_must_say() -> None:
    assert where(read({"tag": "A"})) == [(2, "yarn"), (2, "hook mm"), (2, "stitches as worked")]
    assert where(read({**GOOD, "yarn": None, "stitch pattern": "Shell"})) == []
    assert where(read({"tag": "A", "yarn": "H", "hook mm": 4.5, "rows hung": "22 rows = 15 cm"})) == []


def test_an_edit_need_not_have_the_columns_it_leaves_alone() -> None:
    assert where(read({"uid": "u", "notes": "soft"})) == []
    assert where(read({"uid": "u", "hook mm": None})) == [(2, "hook mm")]
    assert where(read({"uid": "", "notes": "soft"})) == [(2, "yarn"), (2, "hook mm"), (2, "stitches as worked")]


def test_extra_chains_that_disagree() -> None:
    pattern = {"stitch pattern": "Shell", "first stitch in chain": 4, "skipped chains cover": 1}
    assert where(read({**GOOD, **pattern, "extra chains": 2})) == []
    assert where(read({**GOOD, **pattern, "extra chains": 3})) == [(2, "extra chains")]
    assert where(read({**GOOD, "stitch pattern": "Shell", "skipped chains cover": 1})) == [(2, "extra chains")]


def test_a_later_row_that_denies_an_earlier_one() -> None:
    result = read(
        {**GOOD, "ball grams": 50, "fibre": "wool", "colour": "blue"},
        {**GOOD, "tag": "B", "ball grams": 100, "fibre": None, "colour": "red"},
        {**GOOD, "tag": "C", "ball grams": "50.0", "yarn class": 3},
        {**GOOD, "tag": "D", "yarn": "Other", "ball grams": 100},
    )
    assert where(result) == [(3, "ball grams")]
    assert "50" in result.problems[0].expected
    assert "row 2" in result.problems[0].expected
    first, third, fourth = (one.swatch.yarn for one in result.good)
    assert first == third, "a blank cell says nothing: the yarn is what all its rows say together"
    assert first is not None
    assert (first.fibre, first.ball_grams, first.yarn_class) == ("wool", 50, 3)
    assert fourth is not None
    assert fourth.ball_grams == 100


def test_particulars_of_a_yarn_or_pattern_without_a_name() -> None:
    result = read({**GOOD, "stitch pattern": "", "multiple": 6}, {**GOOD, "tag": "B", "yarn": None, "fibre": "wool"})
    assert where(result) == [(2, "stitch pattern"), (3, "yarn"), (3, "yarn")]


def test_the_problems_of_a_sheet_that_is_not_the_log_come_to_an_end() -> None:
    heading = RawRow(1, ("tag", "strands"))
    many = tuple(RawRow(number, (f"T{number}", "x")) for number in range(2, 12_000))
    with pytest.raises(RefusedError, match=r"more than 10,000 problems.*row 2"):
        swatches_of(RawSheet("x", (heading, *many)))


def test_letters_of_columns() -> None:
    assert [column_letters(number) for number in (1, 26, 27, 52, 53, 256, 703)] == ["A", "Z", "AA", "AZ", "BA", "IV", "AAA"]
