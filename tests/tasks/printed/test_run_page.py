from dataclasses import replace

from logbook.craft.sizes.pattern_lines import pattern_text
from logbook.craft.sizes.run_numbers import figures_of
from logbook.craft.words.lengths import Units
from logbook.tasks.printed.run_page import run_page
from tests.support.size_runs import PLAN, SWATCH, written


def page(units: Units = Units.CM, name: str = PLAN.name) -> str:
    told = written()
    sizes = [figures_of(size) for size in told.sizes]
    return run_page(name, sizes, pattern_text(told), units, "From S1.", ("Set.",), today="today")


def test_the_page_has_drawing_table_and_lines() -> None:
    html = page()
    assert html.count("<h1>") == 1
    assert html.count("Boathouse vest") == 2  # in the title and the heading, not once more before the lines
    assert "<svg" in html
    assert "<?xml" not in html
    assert "<td>A</td><td>78.5</td><td>68</td><td>62</td><td>42.6</td><td>55.8</td><td>85.3</td><td>40</td><td>5</td>" in html
    assert "<p><b>Gauge</b><br>2.6 repeats" in html
    assert "<p>Set.</p>" in html
    assert "Finished sizes in centimetres. today." in html


def test_hours_stand_in_the_table_where_they_are_known() -> None:
    told = written(own=replace(SWATCH, minutes=60.0))
    html = run_page("Vest", [figures_of(size) for size in told.sizes], "", Units.CM, "From S1.")
    time = told.sizes[0].piece.time
    assert time is not None
    assert "<th>balls</th><th>hours</th>" in html
    assert f"<td>5</td><td>{time.hours:.1f}</td></tr>" in html
    assert "hours" not in page()


def test_inches_keep_their_fraction_on_the_line() -> None:
    html = page(Units.INCHES)
    assert "16\u00a03/4" in html
    assert "<td>16 3/4</td>" in html


def test_names_are_text() -> None:
    assert "<i>" not in page(name="<i>vest")
