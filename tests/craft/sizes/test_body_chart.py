import pytest

from logbook.craft.sizes.body_chart import MEASURES, End, is_childs_size, read_chart, speaks_of_a_child
from logbook.craft.sizes.trade_charts import WOMEN
from logbook.craft.words.lengths import Units
from logbook.errors import RefusedError, UnreadableError


def test_the_women_s_chart() -> None:
    assert [size.name for size in WOMEN.sizes] == ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"]
    medium = WOMEN.sizes[2]
    assert [medium.measure("bust", end) for end in (End.LOW, End.MIDDLE, End.HIGH)] == [915, 940, 965]
    assert medium.measure("back waist length") == 435
    assert medium.measure("head") is None
    for measure in MEASURES[:7]:
        figures = [size.measure(measure) or 0 for size in WOMEN.sizes]
        assert figures == sorted(figures)
        assert min(figures) > 100


def test_the_last_row_as_printed() -> None:
    largest = WOMEN.sizes[-1]
    assert {name: largest.ranges[name] for name in MEASURES[:7]} == {
        "bust": (1520, 1580),
        "waist": (1245, 1270),
        "hip": (1550, 1575),
        "back waist length": (470, 470),
        "armhole depth": (255, 265),
        "cross back": (470, 470),
        "upper arm": (495, 495),
    }


def test_a_chart_of_the_maker_s_own() -> None:
    chart = read_chart("mine", ["Size", "Bust (cm)", "upper_arm"], [["A", "78.5", ""], ["", "", ""], ["B", "83,5 - 85", "28 cm"]])
    assert [size.name for size in chart.sizes] == ["A", "B"]
    assert chart.sizes[0].ranges == {"bust": (785, 785)}
    assert chart.sizes[1].ranges == {"bust": (835, 850), "upper arm": (280, 280)}
    inches = read_chart("mine", ["size", "bust"], [["A", "32–34"], ["B", "36 1/2"]], Units.INCHES)
    assert inches.sizes[0].measure("bust", End.HIGH) == pytest.approx(863.6)
    assert inches.sizes[1].measure("bust") == pytest.approx(927.1)


@pytest.mark.parametrize(
    ("headings", "rows", "says"),
    [
        (["bust"], [["78"]], "no column “size”"),
        (["size", "shoe"], [["A", "39"]], "column “shoe”, which is not known: it may have size, bust"),
        (["size", "bust"], [["", "78"]], "Row 2 of the chart has no size"),
        (["size", "bust"], [["A", "78"], ["B", "wide"]], "Row 3 of the chart, column bust: “wide” is not a bust measure"),
        (["size", "bust"], [["A", "85–80"]], "runs from large to small"),
        (["size", "bust"], [["A", "0"]], "must be more than 0"),
    ],
)
def test_what_cannot_be_read_is_named(headings: list[str], rows: list[list[str]], says: str) -> None:
    with pytest.raises(UnreadableError, match=says):
        read_chart("mine", headings, rows)


def test_sizes_come_once_and_at_all() -> None:
    with pytest.raises(RefusedError, match="no sizes"):
        read_chart("mine", ["size"], [[""]])
    with pytest.raises(RefusedError, match="the size “A” twice"):
        read_chart("mine", ["size"], [["A"], ["A"]])


@pytest.mark.parametrize(
    "name", ["2T", "4 T", "newborn", "0-3 months", "6–12 m", "age 4", "4 yrs", "Child 8", "toddler", "Kids M", "6 mo", "3y"]
)
def test_children_s_sizes_are_known_by_their_names(name: str) -> None:
    assert is_childs_size(name)


@pytest.mark.parametrize("name", ["XS", "M", "1X", "5X", "38", "40/42", "Large", "M/L", "Tall"])
def test_others_are_not(name: str) -> None:
    assert not is_childs_size(name)


@pytest.mark.parametrize(
    "name",
    [
        "cot blanket",
        "Pram rug",
        "booties",
        "layette",
        "Christening gown",
        "newborn",
        "NB",
        "0–3",
        "0-3",
        "3-6",
        "0 / 6",
        "Baby's hat",
        "98/104",
        "carrycot blanket",
        "Kindergarten vest",
    ],
)
def test_more_that_is_for_a_child(name: str) -> None:
    assert is_childs_size(name)


@pytest.mark.parametrize(
    "name", ["12–18", "8-10", "10-3", "0.5-3 cm", "Cottage vest", "Crible", "34/36", "apricot shawl", "13-6"]
)
def test_more_that_is_not(name: str) -> None:
    assert not is_childs_size(name)


def test_notes_speak_of_a_child_by_words_alone() -> None:
    assert speaks_of_a_child("A gift for Noémie's christening.")
    assert not speaks_of_a_child("Worked rows 0-3 with a 4 mm hook; aged yarn.")
