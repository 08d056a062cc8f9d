import json

import pytest

from logbook.craft.sizes.pattern_lines import pattern_text
from logbook.craft.sizes.published_run import PublishedRun, changes_since, published_run, run_of, run_text
from logbook.craft.sizes.size_run import size_run
from logbook.craft.swatches.conditions import Condition
from tests.support.cloth import gauges_of_swatch, swatch, thrice
from tests.support.size_runs import BUSTS, PLAN, SHELL, SWATCH, written


def published() -> PublishedRun:
    return published_run("2026-06-01", SWATCH, written().sizes, pattern_text(written()))


def test_it_reads_back_as_it_was() -> None:
    run = published()
    assert run_of(run_text(run)) == run
    assert run.readings[0] == "washed, laid flat: 4 repeats = 15.1 cm"
    assert [size.chain for size in run.sizes] == [68, 68, 80, 86]
    assert run.sizes[0].places == {"armhole": 40, "neck begins": 15, "neck ends": 52}
    assert "Ch 68 (68, 80, 86)." in run.lines


@pytest.mark.parametrize("text", ["", "[]", "{}", json.dumps({"sizes": [{}], "readings": []}), "null"])
def test_what_is_no_run_is_told(text: str) -> None:
    with pytest.raises((ValueError, TypeError, LookupError)):
        run_of(text)


def test_it_says_what_would_change_today() -> None:
    # Measured again, 39.25 mm a repeat, 6.54167 mm a stitch: 417.5 → 61 (399.0, −18.5; 67 is 438.3, +20.8)
    wider = gauges_of_swatch(swatch("S1", SHELL, {Condition.WASHED: f"4 repeats = 15.7 cm; {thrice('20 rows = 18 cm')}"}))
    assert changes_since(published().sizes, written().sizes) == ()
    said = changes_since(published().sizes, size_run(PLAN, BUSTS[:3], wider).sizes)
    assert said[:2] == ("A: chain 68, today 62.", "A: width 42.6 cm, today 39.9 cm.")
    assert "A: neck begins 15, today 12." in said
    assert said[-1] == "D: not in the run any more."


def test_sizes_and_marks_that_came_later_are_told() -> None:
    plain = written(sizes=BUSTS[:1])
    run = published_run("2026-06-01", SWATCH, plain.sizes, "")
    assert changes_since(run.sizes, written(sizes=BUSTS[:2]).sizes) == ("B: not in the published run.",)
