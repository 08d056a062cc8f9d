import re
from typing import get_args
from xml.etree import ElementTree

from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.craft.drawing.drawing import Drawing, Line, Marker, Polygon, Rect, Role, Text
from logbook.craft.drawing.svg import COLOURS, PAPER_HEIGHT_MM, PAPER_WIDTH_MM, to_svg

SVG = "{http://www.w3.org/2000/svg}"
SHAPES = (
    Rect(0, 0, 100, 40, "band", "muted", dashed=True),
    Line(((0, 50), (100, 50)), "measure", arrows=True),
    Polygon(((0, 0), (9, 0), (9, 9)), "series1", None),
    Marker(20, 20, "circle", "series2"),
    Marker(40, 20, "triangle", "series3", hollow=True),
    Text(50, 60, "46.5 cm", anchor="e", style="bold"),
    Text(5, 30, "rows", turned=True),
)


def parsed(shapes: tuple[Line | Rect | Text | Marker | Polygon, ...], title: str, *notes: str) -> ElementTree.Element:
    return ElementTree.fromstring(to_svg(Drawing(400, 200, 18, shapes), title, notes).encode())


def words(picture: ElementTree.Element) -> list[str]:
    return [text.text or "" for text in picture.iter(f"{SVG}text")]


def test_it_carries_title_units_and_date() -> None:
    picture = parsed(SHAPES, "Back panel", "Lengths in cm", "2 May 2025")
    assert picture.findtext(f"{SVG}title") == "Back panel"
    assert words(picture) == ["Back panel", "46.5 cm", "rows", "Lengths in cm", "2 May 2025"]


def test_every_shape_is_there() -> None:
    picture = parsed(SHAPES, "Panel")
    count = {name: len(list(picture.iter(f"{SVG}{name}"))) for name in ("rect", "polyline", "polygon", "circle")}
    # Two arrow heads, a polygon and a triangle.
    assert count == {"rect": 1, "polyline": 1, "polygon": 4, "circle": 1}
    rect = next(picture.iter(f"{SVG}rect"))
    assert rect.get("stroke-dasharray")
    assert (rect.get("fill"), rect.get("stroke")) == (COLOURS["band"], COLOURS["muted"])


def test_it_fits_both_papers_whatever_its_shape() -> None:
    for width, height in ((400, 200), (2000, 100), (100, 5000)):
        picture = ElementTree.fromstring(to_svg(Drawing(width, height, 18, ()), "T").encode())
        size = [float(re.fullmatch(r"([\d.]+)mm", picture.get(side, "")).group(1)) for side in ("width", "height")]  # type: ignore[union-attr]
        assert size[0] <= PAPER_WIDTH_MM + 0.01
        assert size[1] <= PAPER_HEIGHT_MM + 0.01
        left, top, wide, high = (float(n) for n in picture.get("viewBox", "").split())
        assert (left, top, wide) == (0, 0, width)
        assert high > height


def test_a_long_title_goes_on_in_a_second_line() -> None:
    title = "A very long title for a rather small drawing of the back of a cardigan in six sizes"
    lines = words(parsed((), title))
    assert len(lines) == 2
    assert " ".join(lines) == title


@settings(max_examples=50)
@given(st.text(max_size=40))
def test_any_text_makes_valid_xml(text: str) -> None:
    picture = parsed((Text(0, 0, text),), "T", text)
    assert words(picture)[0] == "T"


def test_marks_of_xml_are_text_and_what_xml_forbids_is_shown_as_missing() -> None:
    assert words(parsed((Text(0, 0, 'a < b & "c" \x00 \ud800'),), "T"))[1] == 'a < b & "c" \ufffd \ufffd'


def test_every_role_has_a_colour() -> None:
    assert set(COLOURS) == set(get_args(Role))
