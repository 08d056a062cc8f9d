from logbook.craft.gauges.comparison import compared_fields, gauge_differences
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.lengths import Units
from logbook.pages.gauges.comparing import LEGEND, ComparedLine, ComparedSwatches, side_by_side
from logbook.tasks.compare import Comparison
from logbook.tasks.find import FoundSwatch
from tests.support.gauge_swatches import THREE, shells

BASE = Assumptions()


def compared(*swatches: Swatch, units: Units = Units.CM) -> ComparedSwatches:
    found = tuple(FoundSwatch(one, gauges_of(one, BASE)) for one in swatches)
    return side_by_side(Comparison(found, gauge_differences(swatches, BASE), compared_fields(swatches)), units)


def lines(found: ComparedSwatches) -> dict[str, ComparedLine]:
    return {line.name: line for line in found.lines}


WIDE = "4 repeats = 16.9 cm; 4 repeats = 17 cm; 3 repeats = 12.7 cm"


def test_what_differs_and_what_may_be_the_same() -> None:
    found = compared(
        shells("A", washed=THREE, worked=THREE, colour="moss"),
        shells("B", washed=WIDE, worked=THREE, colour="moss", notes="one\ntwo"),
    )
    assert found.tags == ("A", "B")
    by_name = lines(found)
    assert by_name["sts in 10 cm, washed, laid flat"].mark == "≠"
    assert by_name["sts in 10 cm, washed, laid flat"].values[0] == "15.7 ± 2.5 %"
    assert by_name["sts in 10 cm, as worked"].mark == "≈"
    assert by_name["repeat, as worked"].values == ("3.82 cm", "3.82 cm")
    assert by_name["colour"] == ComparedLine("", "colour", ("moss", "moss"))
    assert by_name["notes"] == ComparedLine("", "notes", ("–", "one / two"))
    assert found.sentences == (
        "A and B: the stitch (as worked) may be the same.",
        "A and B differ: the stitch (washed, laid flat) is 9.9 % narrower in A.",
    )


def test_of_several_those_that_differ_are_named_and_the_rest_in_one_sentence() -> None:
    found = compared(shells("A", washed=THREE), shells("B", washed=WIDE), shells("C", washed=THREE))
    assert found.sentences == (
        "A and B differ: the stitch (washed, laid flat) is 9.9 % narrower in A.",
        "B and C differ: the stitch (washed, laid flat) is 11 % wider in B.",
        "The stitch (washed, laid flat) may be the same in A and C.",
    )
    same = compared(*(shells(tag, washed=THREE) for tag in "ABC"))
    assert same.sentences == ("The stitch (washed, laid flat): no two differ for sure; all may be the same.",)


def test_a_coarse_count_can_not_be_told() -> None:
    found = compared(shells("A", washed="1 repeat in 10 cm"), shells("B", washed=THREE))
    line = lines(found)["sts in 10 cm, washed, laid flat"]
    assert line.mark == "?"
    assert line.values[0] == "6.0, too coarse to be sure"
    assert "was counted too coarsely in one of them" in found.sentences[0]


def test_nothing_in_common_is_said() -> None:
    found = compared(shells("A", washed=THREE), shells("B", worked=THREE))
    assert lines(found)["sts in 10 cm, as worked"].mark == ""
    assert found.sentences == (
        "No two of these were measured in the same state and direction, so their gauges can't be compared.",
    )


def test_a_date_is_written_as_everywhere() -> None:
    found = compared(shells("A", washed=THREE, date="2024-09-21"), shells("B", washed=THREE, date="2024-09-22"))
    assert lines(found)["date"] == ComparedLine("≠", "date", ("21 Sep 2024", "22 Sep 2024"))


def test_in_inches() -> None:
    by_name = lines(compared(shells("A", washed=THREE), shells("B", washed=THREE), units=Units.INCHES))
    assert by_name["sts in 4 in, washed, laid flat"].values[0] == "16.0 ± 2.5 %"
    assert by_name["repeat, washed, laid flat"].values[0] == "1.50 in"


def test_where_one_has_nothing_logged_the_others_may_still_differ() -> None:
    found = compared(*(shells(tag, washed=THREE, colour=colour) for tag, colour in (("A", "moss"), ("B", ""), ("C", "sand"))))
    assert lines(found)["colour"] == ComparedLine("≠", "colour", ("moss", "–", "sand"))
    assert "– nothing logged" in LEGEND
