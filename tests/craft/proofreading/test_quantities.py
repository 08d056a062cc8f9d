"""Quantities in a text: lists in many forms, kinds by the word beside, and what is none."""

import pytest

from logbook.craft.proofreading.quantities import QuantityKind, quantities


def found(text: str, sizes: int = 3) -> list[tuple[QuantityKind, tuple[float | None, ...]]]:
    return [(one.kind, one.values) for one in quantities(text, sizes, ("back", "sleeve"))]


@pytest.mark.parametrize(
    ("text", "kind", "values"),
    [
        ("Ch 62 (68, 80).", QuantityKind.CHAINS, (62, 68, 80)),
        ("62[68,80] sts remain", QuantityKind.STITCHES, (62, 68, 80)),
        ("62 (68; 80) stitches", QuantityKind.STITCHES, (62, 68, 80)),
        ("62 (68/80) sts", QuantityKind.STITCHES, (62, 68, 80)),
        ("62 (68) (80) sts", QuantityKind.STITCHES, (62, 68, 80)),
        ("Work 40 (42,\n44) rows even", QuantityKind.ROWS, (40, 42, 44)),
        ("at the end of row 71 (69, 66) for", QuantityKind.ROW, (71, 69, 66)),
        ("in row – (72, 60)", QuantityKind.ROW, (None, 72, 60)),
        ("3 (3, 4) balls", QuantityKind.BALLS, (3, 3, 4)),
        ("8 (10, 12) times", QuantityKind.TIMES, (8, 10, 12)),
        ("12 (13, 15) repeats", QuantityKind.REPEATS, (12, 13, 15)),
        ("42.5 (46.5, 50.5) cm", QuantityKind.LENGTH, (425, 465, 505)),
        ("16 3/4 (18 1/4, 20) in", QuantityKind.LENGTH, (425.45, 463.55, 508)),
        ("42,5 (46,5; 50,5) cm", QuantityKind.LENGTH, (425, 465, 505)),
        ("20,5 cm", QuantityKind.LENGTH, (205,)),
        ("1,5 (2; 2,5) repeats", QuantityKind.REPEATS, (1.5, 2, 2.5)),
        ("120 (130, 150) g", QuantityKind.MASS, (120, 130, 150)),
        ("300 (320, 350) m", QuantityKind.YARN, (300, 320, 350)),
        ("62, 68, 80 sts", QuantityKind.STITCHES, (62, 68, 80)),
        ("22 in all round", QuantityKind.LENGTH, (558.8,)),
        ("112 rows in all", QuantityKind.ROWS, (112,)),
        ("ch 36", QuantityKind.CHAINS, (36,)),
        ("yoke, body round  92.5 (101, 112) cm", QuantityKind.LENGTH, (925, 1010, 1120)),
    ],
)
def test_lists_and_numbers(text: str, kind: QuantityKind, values: tuple[float | None, ...]) -> None:
    (one,) = found(text)
    assert one[0] is kind
    assert one[1] == pytest.approx(values)


@pytest.mark.parametrize(
    "text",
    [
        "Row 3: sc in next 5 sts, ch 2, turn.",
        "Rnd 2: 2 dc in each dc around, join. (24 dc)",
        "4.5 mm hook",
        "4,5 mm hook",
        "21 Sep 2026",
        "Sep 21, 2026",
        "16 sts and 20 rows = 10 cm / 4 in",
        "2026-11-27",
        "1. Sew the shoulders",
        "my 3 cats",
        "14 in every 2nd row",
        "197 in all",
    ],
)
def test_what_is_no_quantity(text: str) -> None:
    assert found(text) == []


def test_a_quantity_knows_its_section_and_line() -> None:
    text = "Back, worked up\nCh 62 (68, 80).\n\nSleeve (make 2)\nCh 30 (32, 34).\n"
    assert [(one.section, one.line) for one in quantities(text, 3, ("back", "sleeve"))] == [("back", 2), ("sleeve", 5)]


def test_a_number_with_more_figures_than_anything_has_is_none() -> None:
    assert found("1" * 5000 + " sts, 1." + "5" * 5000 + " cm, ch 12") == [(QuantityKind.CHAINS, (12,))]


def test_a_line_is_read_once_however_many_numbers_stand_in_it(monkeypatch: pytest.MonkeyPatch) -> None:
    read = []

    def counted(line: str) -> bool:
        read.append(len(line))
        return False

    monkeypatch.setattr("logbook.craft.proofreading.quantities._is_row_or_gauge", counted)
    text = "1,1; " * 200 + "62 sts\n" + "ch 3, " * 200
    assert len(found(text)) == 201
    assert sum(read) == len(text) - 1
