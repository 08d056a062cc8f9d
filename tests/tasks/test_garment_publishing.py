"""A published garment: whatever is changed later, text, page, drawing and workbook stay to the byte."""

import shutil
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.craft.garments.garment_drawing import without_faults
from logbook.craft.garments.plan import Garment
from logbook.craft.garments.plan_file import plan_of, plan_value
from logbook.craft.garments.published import published_of, published_text
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.body_charts import chart_texts, save_chart
from logbook.tasks.browsing import save_assumptions, swatch_in_hand
from logbook.tasks.garment_files import garment_svg, garment_workbook, pattern_html, pattern_text
from logbook.tasks.garment_publishing import (
    publish,
    published,
    published_drawing,
    published_page,
    published_workbook,
    would_change,
)
from logbook.tasks.garments import garment_called, save_garment, work_out
from logbook.tasks.keeping import Logbook, open_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.stitch_patterns import save_pattern
from tests.support.command_line import done, done_json, refused
from tests.support.garments import garment_book, uid_of

PLAN: dict[str, Any] = {
    "name": "Quay cardigan",
    "ease": "10 cm",
    "sizes": {"chart": "own", "only": ["S", "M"], "end": "middle"},
    "says": "To throw on.",
    "pieces": [
        {"name": "back", "shape": "straight panel", "swatch": "H1", "neck": "round", "seam": "1 cm",
         "measures": {"width": "(bust + ease) / 2", "length": "56 cm", "armhole": "20 cm", "inset": "3 cm",
                      "neck width": "18 cm", "neck depth": "3 cm"}},
        {"name": "front", "shape": "half front", "swatch": "H1", "neck": "v",
         "measures": {"width": "width of back / 2 - 2 cm", "length": "56 cm", "armhole": "20 cm", "inset": "3 cm",
                      "neck width": "8 cm", "neck depth": "19 cm"}},
        {"name": "sleeve", "shape": "tapered panel", "swatch": "H1", "alike": 2,
         "measures": {"start width": "24 cm", "end width": "40 cm", "length": "44 cm", "straight": "3 cm"}},
        {"name": "band", "shape": "edging", "swatch": "R1", "along": [["front", "front"], ["back", "neck"]],
         "measures": {"depth": "3 cm"}},
    ],
    "joins": [
        {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
        {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
    ],
}  # fmt: skip

OUT = {"--text": "text.txt", "--html": "page.html", "--svg": "drawing.svg", "--workbook": "numbers.xlsx"}


def outputs(book: Path, name: str = "Quay cardigan") -> Mapping[str, bytes]:
    """Everything that is handed on, in both terms and units."""
    found = {}
    for terms, units in (("us", ()), ("uk", ("--inches",))):
        paths = [part for option, file in OUT.items() for part in (option, book.parent / file)]
        found[f"{terms} lines"] = done("garment", "--name", name, "--book", book, "--lines", terms, *paths, *units).encode()
        found |= {f"{terms} {file}": (book.parent / file).read_bytes() for file in OUT.values()}
    return found


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("published") / "a.logbook"
    with garment_book(path) as book:
        save_chart(book, "own", chart_texts(book)["women"])
        garment = Garment(plan=plan_of(PLAN), uid=save_garment(book, Garment(plan=plan_of(PLAN))))
        publish(book, garment, work_out(garment.plan, book), "2026-03-01")
    return path


@pytest.fixture(scope="module")
def first(made: Path) -> Mapping[str, bytes]:
    return outputs(made)


Change = Callable[[Logbook], object]


def of_plan(change: Callable[[dict[str, Any]], object]) -> Change:
    def changed(book: Logbook) -> None:
        garment = garment_called(book, "Quay cardigan")
        value = plan_value(garment.plan)
        change(value)
        save_garment(book, replace(garment, plan=plan_of(value)))

    return changed


def of_swatch(tag: str, change: Callable[[Swatch], Swatch]) -> Change:
    def changed(book: Logbook) -> None:
        swatch = swatch_in_hand(book, uid_of(book, tag))
        assert swatch is not None
        save_swatch(book, change(swatch))

    return changed


def with_reading(swatch: Swatch, text: str) -> Swatch:
    more = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(text))
    return replace(swatch, readings=(*swatch.readings, *more))


def of_yarn(**fields: Any) -> Change:
    return of_swatch("H1", lambda swatch: replace(swatch, yarn=replace(swatch.yarn or Yarn(), **fields)))


def of_pattern(**fields: Any) -> Change:
    return of_swatch("H1", lambda swatch: replace(swatch, pattern=replace(swatch.pattern or StitchPattern(), **fields)))


def of_written_rows(book: Logbook) -> None:
    swatch = swatch_in_hand(book, uid_of(book, "H1"))
    assert swatch is not None
    assert swatch.pattern is not None
    save_pattern(
        book, replace(swatch.pattern, rows_text="Row 1: Hdc in 3rd ch from hook and in each ch across, turn.", terms="US")
    )


def measure(piece: int, name: str) -> Change:
    def more(plan: dict[str, Any]) -> None:
        measures = plan["pieces"][piece]["measures"]
        measures[name] = "4 cm" if name in ("inset", "straight", "depth") else f"{measures[name]} + 12 %"

    return of_plan(more)


def of_chart(book: Logbook) -> None:
    save_chart(book, "own", "size; bust\nS; 91\nM; 99\n")


MEASURES = {
    f"{name} of {piece['name']}": measure(number, name)
    for number, piece in enumerate(PLAN["pieces"])
    for name in piece["measures"]
}
CHANGES: dict[str, Change] = {
    **MEASURES,
    "ease": of_plan(lambda plan: plan.update(ease="18 cm")),
    "sizes": of_plan(lambda plan: plan["sizes"].update(only=["M", "L"])),
    "end of a range": of_plan(lambda plan: plan["sizes"].update(end="high")),
    "says": of_plan(lambda plan: plan.update(says="For the evenings.")),
    "joins": of_plan(lambda plan: plan["joins"].pop()),
    "form of neck": of_plan(lambda plan: plan["pieces"][1].update(neck="square")),
    "seam": of_plan(lambda plan: plan["pieces"][0].update(seam="2.5 cm")),
    "alike": of_plan(lambda plan: plan["pieces"][2].update(alike=3)),
    "along": of_plan(lambda plan: plan["pieces"][3].update(along=[["back", "neck"]])),
    "draw in": of_plan(lambda plan: plan["pieces"][3].update({"draw in": "8 %"})),
    "a piece's swatch": of_plan(lambda plan: plan["pieces"][2].update(swatch="H2")),
    "a piece taken out": of_plan(lambda plan: (plan["pieces"].pop(3), plan["pieces"][2].update(says="new"))),
    "body chart": of_chart,
    "stitches": of_swatch("H1", lambda swatch: with_reading(swatch, "20 sts = 15.5 cm")),
    "rows": of_swatch("H1", lambda swatch: with_reading(swatch, "20 rows = 21 cm")),
    "band's stitches": of_swatch("R1", lambda swatch: with_reading(swatch, "20 sts = 16 cm")),
    "swatch grams": of_swatch("H1", lambda swatch: replace(swatch, swatch_grams=19.0)),
    "hook": of_swatch("H1", lambda swatch: replace(swatch, hook_mm=6.0)),
    "way of washing": of_swatch("H1", lambda swatch: replace(swatch, way_of_washing="by hand")),
    "colour": of_swatch("H1", lambda swatch: replace(swatch, colour="teal")),
    "extra chains": of_pattern(extra_chains=3),
    "written rows": of_written_rows,
    "yarn's ball": of_yarn(ball_grams=25.0),
    "yarn's metres": of_yarn(ball_metres=90.0),
    "fibre": of_yarn(fibre="acrylic"),
    "reserve": lambda book: save_assumptions(book, Assumptions(reserve=0.5)),
}


@pytest.mark.parametrize("name", CHANGES)
def test_nothing_published_moves(name: str, made: Path, first: Mapping[str, bytes], tmp_path: Path) -> None:
    path = Path(shutil.copy(made, tmp_path / "a.logbook"))
    with open_book(path) as book:
        before = published(garment_called(book, "Quay cardigan"))
        assert before is not None
        assert would_change(before, work_out(garment_called(book, "Quay cardigan").plan, book)) == ()
        CHANGES[name](book)
        now = garment_called(book, "Quay cardigan")
        assert published(now) == before
        assert would_change(before, work_out(now.plan, book)), "the change is one that can be seen"
    assert outputs(path) == first


def test_every_document_is_in_the_terms_and_units_asked_for(made: Path, tmp_path: Path) -> None:
    with open_book(Path(shutil.copy(made, tmp_path / "a.logbook"))) as book:
        garment = garment_called(book, "Quay cardigan")
        answer, before, day = work_out(garment.plan, book), published(garment), date(2026, 3, 1)
    assert before is not None
    for terms in Terms:
        now = BytesIO()
        garment_workbook(answer, terms, now, day.isoformat(), published=True)
        assert cells(published_workbook(before, terms)) == cells(now.getvalue())
        assert before.texts[terms.value] == pattern_text(answer, terms)
        for units in Units:
            assert published_page(before, terms, units) == pattern_html(answer, terms, units, day)
    for units in Units:
        for size in answer.numbers:
            drawn = garment_svg(answer, without_faults(size), units, day)
            assert published_drawing(before, size.name, units) == drawn
    assert cells(published_workbook(before, Terms.US)) != cells(published_workbook(before, Terms.UK))


def cells(workbook: bytes) -> dict[str, list[tuple[Any, ...]]]:
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in openpyxl.load_workbook(BytesIO(workbook))}


def test_its_workbook_calculates_and_has_what_was_published_beside_it(made: Path, tmp_path: Path) -> None:
    done("garment", "--name", "Quay cardigan", "--book", made, "--workbook", tmp_path / "a.xlsx")
    rows = list(openpyxl.load_workbook(tmp_path / "a.xlsx")["Pieces"].iter_rows(values_only=True))
    labels = [row[0] for row in rows]
    top = labels.index("As published on 2026-03-01")
    chains = [(place < top, row[1]) for place, row in enumerate(rows) if row[0] == "chain"]
    assert [str(chain).startswith("=") for live, chain in chains if live] == [True] * 3
    assert [isinstance(chain, int) for live, chain in chains if not live] == [True] * 3


def test_what_would_change_is_said_by_the_command(made: Path, tmp_path: Path) -> None:
    path = Path(shutil.copy(made, tmp_path / "a.logbook"))
    with open_book(path) as book:
        CHANGES["length of sleeve"](book)
    said = done_json("garment", "--name", "Quay cardigan", "--book", path)
    assert said["published"] == "2026-03-01"
    assert "“sleeve”" in said["would_change"][0]
    assert "Published on 1 Mar 2026" in done("garment", "--name", "Quay cardigan", "--book", path)
    assert "not one of the sizes" in refused(
        2, "garment", "--name", "Quay cardigan", "--book", path, "--svg", tmp_path / "a", "--size", "9"
    )


def test_what_can_no_longer_be_worked_out_is_still_handed_on(made: Path, first: Mapping[str, bytes], tmp_path: Path) -> None:
    path = Path(shutil.copy(made, tmp_path / "a.logbook"))
    with open_book(path) as book:
        save_chart(book, "own", "size; bust\nXS; 71\n")
    assert outputs(path) == first


def test_of_one_published_before_documents_were_kept_there_is_its_text() -> None:
    before = published_of(published_text("2026-01-01", {"US": "text"}, ()))
    old = published_of('{"date":"2026-01-01","texts":{"US":"text"},"sizes":{}}')
    assert (old.date, old.texts) == (before.date, before.texts)
    for refusing in (lambda: published_page(old, Terms.US, Units.CM), lambda: published_drawing(old, "M", Units.CM)):
        with pytest.raises(RefusedError, match="was kept when this was published on 1 Jan 2026"):
            refusing()
    with pytest.raises(RefusedError, match="can't be read"):
        published_page(old._replace(packed="!!"), Terms.US, Units.CM)
