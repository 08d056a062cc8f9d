"""A swatch as texts and back."""

from pathlib import Path

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import Counted, read_readings
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.words.lengths import Units
from logbook.pages.swatches.form_texts import EMPTY, read_texts, readings_key, texts_of
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.sampling import new_sample
from tests.support.written_gauges import WRITTEN_GAUGES

WASHED = readings_key(Condition.WASHED)


def test_every_swatch_of_the_sample_comes_back_from_its_texts(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        for line in swatch_lines(book):
            swatch = swatch_in_hand(book, line.uid)
            assert swatch is not None
            typed = read_texts(texts_of(swatch), swatch.uid, Units.INCHES)
            assert typed.errors == {}
            again = texts_of(typed.swatch)
            assert again == texts_of(swatch)
            assert [t.reading for t in typed.swatch.readings] == [t.reading for t in swatch.readings]


def test_row_repeats_typed_among_rows_stay_row_repeats() -> None:
    (reading,) = read_readings("2 pattern repeats = 5 cm")
    rows = TakenReading(Condition.WASHED, type(reading)(2, Counted.ROW_REPEATS, 50, False, False, None, reading.text))
    texts = texts_of(Swatch(readings=(rows,)))
    assert texts[WASHED] == "2 row repeats = 5 cm"
    assert read_texts(texts, "", Units.CM).swatch.readings[0].reading.counted is Counted.ROW_REPEATS


def test_each_line_is_read_by_itself() -> None:
    typed = read_texts({**EMPTY, WASHED: "14 sts x 11 rows = 10 cm\n4 rep\n\n3 repeats = 11.5 cm"}, "", Units.CM)
    assert [len(line.readings) for line in typed.lines[WASHED]] == [2, 0, 0, 1]
    assert typed.errors[WASHED].startswith("“4 rep”: read “4 rep”")
    assert len(typed.swatch.readings) == 3


def test_a_length_without_its_unit_is_in_the_users() -> None:
    texts = {**EMPTY, WASHED: "4 repeats = 6", "hung clip cm": "2", "yarn": "Any"}
    inches = read_texts(texts, "", Units.INCHES).swatch
    assert inches.readings[0].reading.text == "4 repeats = 6 in"
    assert inches.hung_clip_mm == 50.8
    assert texts_of(inches)["hung clip cm"] == "5.08 cm"


def test_what_cannot_be_read_is_named_and_left_out() -> None:
    typed = read_texts({**EMPTY, "hook mm": "thick", "strands": "1/2", "date": "May", "yarn": "Any"}, "", Units.CM)
    assert set(typed.errors) == {"hook mm", "strands", "date"}
    assert typed.swatch.hook_mm is None
    assert typed.swatch.yarn is not None


def test_chains_that_disagree_are_said_beside_the_extra_chains() -> None:
    texts = {**EMPTY, "stitch pattern": "Fans", "extra chains": "2", "first stitch in chain": "2"}
    assert "do not agree" in read_texts(texts, "", Units.CM).errors["extra chains"]


def test_a_line_of_readings_is_read_as_people_write_it() -> None:
    for plain, ways in WRITTEN_GAUGES.items():
        wanted = swatch_typed(plain)
        for written in ways:
            assert swatch_typed(written) == wanted, written


def swatch_typed(readings: str) -> list[tuple[str, float, float]]:
    typed = read_texts({**EMPTY, readings_key(Condition.WASHED): readings.replace("; ", "\n")}, "", Units.CM)
    assert not typed.errors
    found = [taken.reading for taken in typed.swatch.readings]
    return sorted((reading.counted.value, reading.number, reading.length_mm) for reading in found)
