"""Every number of the whole pattern follows what it comes from: each input is changed in turn, and the text with it."""

import re
import shutil
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import pytest

from logbook.craft.garments.plan import Garment
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.words.terms import Terms
from logbook.tasks.body_charts import chart_texts, save_chart
from logbook.tasks.garment_files import written
from logbook.tasks.garments import garment_called, save_garment, work_out
from logbook.tasks.keeping import Logbook, open_book
from logbook.tasks.written.garment import whole_pattern
from logbook.tasks.written.parts import part_lines
from tests.support.garments import garment_book
from tests.tasks.test_garment_publishing import CHANGES, PLAN

WHERE = {
    "ease": "", "says": "", "body chart": "", "sizes": "Finished measurements", "end of a range": "Finished measurements",
    "joins": "Making up", "form of neck": "Front", "seam": "Back", "alike": "Sleeve (make 3)", "along": "Band", "draw in": "Band",
    "a piece's swatch": "Sleeve", "a piece taken out": "Band", "stitches": "Gauge", "rows": "Gauge", "band's stitches": "Band",
    "swatch grams": "Materials", "hook": "Materials", "way of washing": "Care and cautions", "colour": "Materials",
    "extra chains": "Back", "written rows": "Stitch pattern", "yarn's ball": "Materials", "yarn's metres": "Materials",
    "fibre": "Care and cautions", "reserve": "Materials",
}  # fmt: skip
"""The part of the text in which the change must be seen; that of a measure is its piece."""

Text = Mapping[str, Sequence[str]]


def text_of(book: Logbook) -> Text:
    """The lines of each part by its heading."""
    answer = work_out(garment_called(book, PLAN["name"]).plan, book)
    return {part.heading: part_lines(part) for part in whole_pattern(written(answer, Terms.US))}


@pytest.fixture(scope="module")
def texts(tmp_path_factory: pytest.TempPathFactory) -> tuple[Text, Mapping[str, Text]]:
    """The text as it is, and after each change by itself."""
    folder = tmp_path_factory.mktemp("follows")
    path = folder / "a.logbook"
    with garment_book(path) as book:
        save_chart(book, "own", chart_texts(book)["women"])
        save_garment(book, Garment(plan=plan_of(PLAN)))
        first = text_of(book)
    changed = {}
    for name, change in CHANGES.items():
        with open_book(Path(shutil.copy(path, folder / "b.logbook"))) as book:
            change(book)
            changed[name] = text_of(book)
    return first, changed


@pytest.mark.parametrize("name", CHANGES)
def test_the_text_follows_each_input(name: str, texts: tuple[Text, Mapping[str, Text]]) -> None:
    first, changed = texts
    place = WHERE[name] if name in WHERE else name.split(" of ")[1].capitalize()
    (heading,) = [heading for heading in {**first, **changed[name]} if heading.startswith(place) and (place or not heading)][:1]
    assert first.get(heading) != changed[name].get(heading)


def test_no_number_stands_still_whatever_is_changed(texts: tuple[Text, Mapping[str, Text]]) -> None:
    first, changed = texts
    still = set(_numbers(first))
    for text in changed.values():
        still &= set(_numbers(text))
    said = {first[heading][line] for heading, line, *_ in still}
    assert said == set()


def _numbers(text: Text) -> Iterator[tuple[str, int, int, str]]:
    """Every number with its place: the heading, the line, and which number of it it is.

    Not those that are the same in every pattern: of the notes, of the steps of making up, and what a gauge is over.
    """
    for heading, lines in text.items():
        for number, line in enumerate([] if heading == "Notes" else lines):
            own = re.sub(r"^\d+\. |= 10 cm / 4 in", "", line)
            for place, found in enumerate(re.findall(r"\d+ \d/\d|\d[\d./]*", own)):
                yield heading, number, place, found
