"""Plans that can't be: one sentence each, exit 1, nothing kept and nothing written."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from logbook.tasks.garments import garments
from logbook.tasks.keeping import open_book
from tests.support.command_line import refused
from tests.support.garments import garment_book

STITCH = {"stitches": "16 sts = 10 cm", "rows": "20 rows = 10 cm", "multiple": 1, "plus": 0, "extra chains": 1}
LACE = {**STITCH, "multiple": 8}
PANEL = {"width": "50 cm", "length": "60 cm"}
NECK = {**PANEL, "neck width": "18 cm", "neck depth": "8 cm"}
TAPER = {"start width": "22 cm", "end width": "34 cm", "length": "45 cm"}
YOKE = {
    "neck round": "48 cm", "yoke depth": "24 cm", "body round": "100 cm", "upper arm round": "36 cm", "underarm": "6 cm",
}  # fmt: skip


def piece(shape: str = "straight panel", measures: Any = PANEL, name: str = "back", **said: Any) -> dict[str, Any]:
    return {"name": name, "shape": shape, "swatch": STITCH, "measures": measures, **said}


def plan(*pieces: Any, **said: Any) -> dict[str, Any]:
    return {"name": "Quay", "pieces": list(pieces or (piece(),)), **said}


def join(**said: Any) -> dict[str, Any]:
    return {"of": "back", "edge": "side", "to": ["front"], "at": "side", **said}


BAND = piece("edging", {"depth": "2 cm"}, "band")
FRONT = piece(name="front")

BAD: dict[str, tuple[Any, str]] = {
    "no object": ([], "must be an object"),
    "no pieces": ({"name": "Quay"}, "has no pieces"),
    "pieces that are no list": ({"name": "Quay", "pieces": {}}, "must be a list"),
    "too many pieces": (plan(*[piece(name=f"p{n}") for n in range(201)]), "the most is 200"),
    "no name to keep it by": ({**plan(), "name": " "}, "needs a name"),
    "unknown key": (plan(colour="red"), "“colour”, which is not known"),
    "unknown key of a piece": (plan(piece(depth="3 cm")), "“depth”, which is not known"),
    "unknown key of a join": (plan(piece(), FRONT, joins=[join(by="hand")]), "“by”, which is not known"),
    "unknown key of the sizes": (plan(sizes={"chart": "women", "all": True}), "have “all”, which is not known: they may"),
    "unknown key of a size": (plan(sizes=[{"size": "M", "belly": "90 cm"}]), "“belly”, which is not known"),
    "unknown column of a swatch": (plan(piece(swatch={"gauge": "4"})), "“gauge”, which is not a column"),
    "unknown shape": (plan(piece("cape")), "“cape” is not a shape"),
    "unknown measure": (plan(piece(measures={**PANEL, "girth": "9 cm"})), "have “girth”, which is not known"),
    "measure of another shape": (plan(piece("triangle", {"wingspan": "1 m", "width": "9 cm"})), "“width”, which is not known"),
    "measure that is missing": (plan(piece(measures={"width": "9 cm"})), "has no length"),
    "measure that is no text": (plan(piece(measures={**PANEL, "width": ["9"]})), "must be a text"),
    "no formula": (plan(piece(measures={**PANEL, "width": "wide"})), "Couldn't read “wide”"),
    "formula without an end": (plan(piece(measures={**PANEL, "width": "20 cm +"})), "Couldn't read"),
    "formula of a body that has none": (plan(piece(measures={**PANEL, "width": "bust / 2"})), "There is no bust"),
    "bare number in a sum": (plan(piece(measures={**PANEL, "width": "20 cm + 3"})), "does not come to a length"),
    "division by nought": (plan(piece(measures={**PANEL, "width": "20 cm / 0"})), "divides by zero"),
    "too long": (plan(piece(measures={**PANEL, "length": "900 m"})), "900 m"),
    "circle": (plan(piece(measures={"width": "length of back", "length": "width of back"})), "go round in a circle"),
    "circle of two pieces": (
        plan(piece(measures={**PANEL, "width": "width of front"}), {**FRONT, "measures": {**PANEL, "width": "width of back"}}),
        "go round in a circle",
    ),
    "of itself": (plan(piece(measures={**PANEL, "width": "width of back"})), "go round in a circle"),
    "no rows": (plan(piece(measures={**PANEL, "length": "0 cm"})), "must be more than 0"),
    "less than nothing": (plan(piece(measures={**PANEL, "width": "2 cm - 9 cm"})), "must be more than 0"),
    "rows of no group": (plan(piece(swatch={**STITCH, "rows in repeat": 0})), "rows in repeat"),
    "neck wider than the shoulders": (plan(piece(measures={**NECK, "neck width": "49.5 cm"})), "no shoulder"),
    "neck and insets take all": (
        plan(piece(measures={**NECK, "armhole": "20 cm", "inset": "16 cm"})), "no shoulder",
    ),
    "neck deeper than the piece": (plan(piece(measures={**NECK, "neck depth": "70 cm"})), "less deep than the piece"),
    "neck without its width": (plan(piece(measures={**PANEL, "neck depth": "8 cm"})), "needs its width"),
    "inset without an armhole": (plan(piece(measures={**PANEL, "inset": "3 cm"})), "needs the depth of its armhole"),
    "shaped neck worked down": (plan(piece(measures=NECK, worked="down")), "shaped in a panel worked up"),
    "form of neck": (plan(piece(measures=NECK, neck="boat")), "say square, round or v"),
    "straight as long as the piece": (plan(piece("tapered panel", {**TAPER, "straight": "45 cm"})), "as long as the whole piece"),
    "end without a stitch": (
        plan(piece("tapered panel", {**TAPER, "start width": "22.5 cm", "end width": "1 mm"})),
        "less than a stitch wide",
    ),
    "yoke with a neck too wide": (plan(piece("raglan yoke", {**YOKE, "neck round": "120 cm"})), "neck is too wide"),
    "yoke with too small a neck": (plan(piece("raglan yoke", {**YOKE, "neck round": "3 cm"})), "too few stitches"),
    "round yoke under the arm": (plan(piece("round yoke", {**YOKE, "underarm": "40 cm"})), "underarm takes all"),
    "yoke in repeats": (plan(piece("raglan yoke", YOKE, swatch=LACE)), "needs a plain stitch"),
    "hat that is all crown": (plan(piece("crown and tube", {"round": "54 cm", "height": "4 cm"})), "make it taller"),
    "shawl narrower than its tip": (plan(piece("triangle", {"wingspan": "1 cm"}, **{"first stitches": 40})), "narrower than"),
    "edging along nothing": (plan(piece(), BAND), "nothing to pick up from"),
    "edging along an edge that is not there": (plan(piece(), {**BAND, "along": ["back", "neck"]}), "has no edge “neck”"),
    "edging along an edging": (
        plan(piece(), {**BAND, "along": ["trim", "end"]}, {**BAND, "name": "trim", "along": ["back", "side"]}),
        "nothing to pick up",
    ),
    "edging along a piece that is not there": (plan(piece(), {**BAND, "along": ["hood", "neck"]}), "“hood”, which the plan"),
    "edge that is none": (plan(piece(), {**BAND, "along": ["back", "top"]}), "“top” is not an edge"),
    "two of a name": (plan(piece(), piece()), "Two pieces are called"),
    "name of a measure": (plan(piece(name="bust")), "can't be called “bust”"),
    "piece without a name": (plan(piece(name="")), "has no name"),
    "way of working": (plan(piece(worked="inside out")), "can't be worked “inside out”"),
    "alike": (plan(piece(alike=0)), "whole number from 1"),
    "seam": (plan(piece(seam="glue"), FRONT, joins=[join()]), "glue"),
    "choice": (plan(piece("tapered panel", TAPER, **{"right side rows": "often"})), "say true or false"),
    "join to nothing": (plan(piece(), joins=[join(to=[])]), "joined to nothing"),
    "join to a piece that is not there": (plan(piece(), joins=[join()]), "“front”, which the plan"),
    "join without an edge": (plan(piece(), FRONT, joins=[{"of": "back", "to": ["front"], "at": "side"}]), "does not say “edge”"),
    "join of an edge that is not there": (plan(piece(), FRONT, joins=[join(at="armhole")]), "no edge “armhole”"),
    "chart": (plan(sizes={"chart": "cats"}), "no body chart “cats”"),
    "size of a chart": (plan(sizes={"chart": "women", "only": ["Q"]}), "no size Q"),
    "end of a range": (plan(sizes={"chart": "women", "end": "far"}), "“far”"),
    "size twice": (plan(sizes=[{"size": "M"}, {"size": "M"}]), "“M” is there twice"),
    "ease": (plan(ease="much"), "The ease of the garment"),
    "swatch that is not there": (plan(piece(swatch="Z-9")), "Z-9"),
    "no swatch": (plan(piece(swatch="")), "has no swatch"),
    "swatch without rows": (plan(piece(swatch={**STITCH, "rows": ""})), "rows"),
}  # fmt: skip


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    path = tmp_path_factory.mktemp("refused") / "a.logbook"
    garment_book(path).close()
    yield path
    with open_book(path) as book:
        assert garments(book) == []


@pytest.mark.parametrize("name", BAD)
def test_a_bad_plan_is_one_sentence_and_nothing_is_kept(name: str, book: Path, tmp_path: Path) -> None:
    value, says = BAD[name]
    file = tmp_path / "plan.json"
    file.write_text(json.dumps(value), "utf-8")
    outputs = [tmp_path / f"out.{suffix}" for suffix in ("txt", "html", "svg", "xlsx")]
    options = [part for pair in zip(("--text", "--html", "--svg", "--workbook"), outputs, strict=True) for part in pair]
    said = refused(1, "garment", file, "--keep", "--book", book, "--json", *options)
    assert says in said
    assert said.endswith(".")
    assert not any(output.exists() for output in outputs)
