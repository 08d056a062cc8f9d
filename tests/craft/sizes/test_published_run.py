import json

import pytest

from logbook.craft.sizes.pattern_lines import pattern_text
from logbook.craft.sizes.published_run import KEPT, MARKS, PublishedRun, changes_since, published_run, run_of, run_text
from logbook.craft.sizes.run_numbers import NUMBERS, figures_of
from tests.support.size_runs import BUSTS, SWATCH, written


def published() -> PublishedRun:
    return published_run("2026-06-01", SWATCH, written().sizes, pattern_text(written()))


def test_it_reads_back_as_it_was() -> None:
    run = published()
    assert run_of(run_text(run)) == run
    assert run.readings[0] == "washed, laid flat: 4 repeats = 15.1 cm"
    assert [size["chain"] for size in run.sizes] == [68, 68, 80, 86]
    assert [run.sizes[0][name] for name in ("armhole at", "neck begins at", "neck ends at")] == [40, 15, 52]
    assert "Ch 68 (68, 80, 86)." in run.lines


@pytest.mark.parametrize("text", ["", "[]", "{}", json.dumps({"sizes": [{}], "readings": []}), "null"])
def test_what_is_no_run_is_told(text: str) -> None:
    with pytest.raises((ValueError, TypeError, LookupError)):
        run_of(text)


def test_sizes_stand_beside_those_of_today_by_name() -> None:
    today = [figures_of(size) for size in written(sizes=BUSTS[1:3]).sizes]
    pairs = [(old.get("size"), new.get("size")) for old, new in changes_since(published().sizes[:2], today)]
    assert pairs == [("A", None), ("B", "B"), (None, "C")]


def test_every_number_kept_is_one_of_the_table() -> None:
    assert {*KEPT.values(), *(name for mark in MARKS.values() for name in mark)} <= set(NUMBERS)
