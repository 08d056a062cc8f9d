"""What is written comes back cell by cell: every column, whatever the text."""

import io
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.craft.swatches.fields import FIELDS, Owner
from logbook.craft.swatches.swatch import Swatch
from logbook.sheets.csv_file import write_csv
from logbook.sheets.reading import read_sheet
from logbook.sheets.swatch_rows import SheetSwatches, swatches_of
from logbook.sheets.workbook import write_workbook
from tests.support.logged import Listed, cells_of, log_of
from tests.support.swatches import AWKWARD, awkward_swatches, full_swatch, plain_swatch

ENDINGS = ["csv", "xlsx"]
SHOWN = st.characters(exclude_categories=["Cc", "Cs"], exclude_characters="\ufffe\uffff")
TEXTS = st.text(SHOWN, min_size=1, max_size=30).map(str.strip).filter(bool)


def written(swatches: Sequence[Swatch], ending: str) -> bytes:
    stream = io.BytesIO()
    if ending == "csv":
        write_csv(stream, Listed(swatches))
    else:
        write_workbook(stream, log_of(swatches), "The log", "2026-05-31")
    return stream.getvalue()


def there_and_back(swatches: Sequence[Swatch], ending: str, folder: Path) -> SheetSwatches:
    file = folder / f"log.{ending}"
    file.write_bytes(written(swatches, ending))
    return swatches_of(read_sheet(file))


@pytest.mark.parametrize("ending", ENDINGS)
def test_every_column_comes_back_equal(ending: str, tmp_path: Path) -> None:
    before = awkward_swatches()
    assert all(cell not in ("", None) for cell in cells_of(before[0])), "every column is to be filled"
    result = there_and_back(before, ending, tmp_path)
    assert result.problems == ()
    assert result.columns == {field.name for field in FIELDS}
    assert [one.row for one in result.good] == list(range(2, len(before) + 2))
    after = [one.swatch for one in result.good]
    assert [cells_of(swatch) for swatch in after] == [cells_of(swatch) for swatch in before]
    assert after[0] == before[0]
    assert written(after, "csv") == written(before, "csv")


def test_both_kinds_of_sheet_say_the_same(tmp_path: Path) -> None:
    results = [there_and_back(awkward_swatches(), ending, tmp_path).good for ending in ENDINGS]
    assert results[0] == results[1]


@settings(max_examples=10)
@given(st.lists(TEXTS, min_size=10, max_size=20))
def test_any_text_comes_back(tmp_path_factory: pytest.TempPathFactory, texts: list[str]) -> None:
    before = [full_swatch(number, text) for number, text in enumerate(dict.fromkeys(texts))]
    for ending in ENDINGS:
        result = there_and_back(before, ending, tmp_path_factory.mktemp("log"))
        assert [one.swatch for one in result.good] == before


@settings(max_examples=10)
@given(st.lists(st.tuples(st.floats(0.01, 1000), st.floats(1e-6, 100_000), st.floats(0.4, 40)), min_size=10, max_size=20))
def test_any_number_is_exported_the_same_again(
    tmp_path_factory: pytest.TempPathFactory, numbers: list[tuple[float, float, float]]
) -> None:
    fields = [field for field in FIELDS if field.name in ("hook mm", "swatch grams", "hung clip cm")]
    before = []
    for count, typed in enumerate(numbers):
        values = {f.attribute: f.value(format(number, ".17f")) for f, number in zip(fields, reversed(typed), strict=True)}
        before.append(replace(plain_swatch(count), **values))
    for ending in ENDINGS:
        result = there_and_back(before, ending, tmp_path_factory.mktemp("log"))
        assert [cells_of(one.swatch) for one in result.good] == [cells_of(swatch) for swatch in before]


def test_the_awkward_texts_are_awkward_in_every_way_that_matters() -> None:
    beginnings = {text[0] for text in AWKWARD}
    assert beginnings >= set("=+-@'#0")
    assert any("\n" in text for text in AWKWARD)
    assert {field.owner for field in FIELDS} == {Owner.SWATCH, Owner.YARN, Owner.PATTERN, Owner.READINGS}
