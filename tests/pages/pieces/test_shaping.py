"""Shaping as it is typed."""

import pytest

from logbook.pages.pieces.shaping import ALONG_ROW, AT_EDGES, EMPTY, KINDS, PICK_UP, shaped, texts_from
from logbook.pages.session import Session
from logbook.tasks.pieces import basis_of_tag, work_out_piece
from tests.support.cloth import VEST


@pytest.mark.parametrize(
    ("kind", "texts", "text"),
    [
        (AT_EDGES, {"start": "40", "end": "50", "rows": "22"},
         "Increase at both edges in row 2, in every 4th row twice, in every 5th row twice, then 2 rows even."),
        (ALONG_ROW, {"start": "24", "end": "28", "stitch": "hdc"},
         "Hdc in next 4, (inc, hdc in next 4) 4 times. 28 sts."),
        (ALONG_ROW, {"start": "33", "end": "38", "on edge": "yes"},
         "(inc, sc in next 5) twice, (inc, sc in next 6) 3 times. 38 sts."),
        (PICK_UP, {"ends": "60", "row gauge": "20 rows = 18 cm", "edging gauge": "20 sts = 12 cm"},
         "(2 sts in next row end, 1 st in next row end) 30 times. 90 sts."),
    ],
)  # fmt: skip
def test_rows_are_written_as_rows_are(kind: str, texts: dict[str, str], text: str) -> None:
    assert shaped(kind, EMPTY | texts).text.casefold() == text.casefold()


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_typed_says_what_to_type(kind: str) -> None:
    found = shaped(kind, EMPTY)
    assert found.text == ""
    assert found.says.startswith("Type ")


@pytest.mark.parametrize(
    ("kind", "texts", "says"),
    [
        (AT_EDGES, {"start": "40", "end": "45", "rows": "20"}, "odd difference"),
        (AT_EDGES, {"start": "40", "end": "x", "rows": "20"}, "“x” is not a number of stitches"),
        (ALONG_ROW, {"start": "4", "end": "40"}, "no room"),
        (PICK_UP, {"ends": "9", "row gauge": "20 sts = 18 cm", "edging gauge": "20 sts = 12 cm"}, "rows"),
        (PICK_UP, {"ends": "9", "row gauge": "2 row repeats = 18 cm", "edging gauge": "20 sts = 12 cm"}, "count rows here"),
    ],
)
def test_what_cant_be_is_said(kind: str, texts: dict[str, str], says: str) -> None:
    found = shaped(kind, EMPTY | texts)
    assert found.text == ""
    assert says in found.says


def test_it_begins_with_the_counts_of_the_piece(session: Session) -> None:
    answer = work_out_piece(basis_of_tag(session.book, "H1"), VEST)
    texts = texts_from(answer)
    assert (texts["start"], texts["rows"], texts["ends"]) == ("74", "62", "62")
    # rows of 9 mm, edges as on H2: stitches of 6 mm
    assert (texts["row gauge"], texts["edging gauge"]) == ("10 rows = 9 cm", "10 sts = 6 cm")
    assert shaped(PICK_UP, texts).text.endswith("93 sts.")
    assert texts_from(None) == EMPTY
