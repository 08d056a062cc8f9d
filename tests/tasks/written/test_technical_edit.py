"""A cardigan and a raglan recomputed in all sizes from nothing but their printed text."""

import re
from typing import Any

import pytest

from logbook.craft.garments.plan_file import plan_of
from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.garments import work_out
from tests.support.technical_editor import Worked, measured, sizes_in, worked_through

HDC = {
    "stitches": "40 sts = 25 cm", "rows": "40 rows = 36 cm", "multiple": 1, "plus": 0, "first stitch in chain": 3,
    "skipped chains cover": 0, "stitch pattern": "half double crochet", "terms": "US",
}  # fmt: skip
SC = {**HDC, "rows": "40 rows = 21 cm", "first stitch in chain": 2, "stitch pattern": "single crochet"}
WOMEN = {"chart": "women", "end": "middle"}


def cardigan(neck: str, deep: str) -> dict[str, Any]:
    body = {"length": "58 cm", "armhole": "armhole depth + 2 cm", "inset": "3 % of bust"}
    return {
        "name": "Set-in cardigan",
        "ease": "10 cm",
        "sizes": WOMEN,
        "pieces": [
            {"name": "back", "shape": "straight panel", "neck": "round", "swatch": HDC,
             "measures": {"width": "(bust + ease) / 2", **body, "neck width": "18 cm", "neck depth": "3 cm"}},
            {"name": "front", "shape": "half front", "neck": neck, "swatch": HDC,
             "measures": {"width": "width of back / 2", **body, "neck width": "9 cm", "neck depth": deep}},
            {"name": "sleeve", "shape": "tapered panel", "alike": 2, "swatch": HDC,
             "measures": {"start width": "24 cm", "end width": "2 × armhole of back", "length": "arm length",
                          "straight": "inset of back"}},
        ],
        "joins": [
            {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
            {"of": "front", "edge": "side", "to": ["back"], "at": "side"},
            {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
        ],
    }  # fmt: skip


RAGLAN: dict[str, Any] = {
    "name": "Raglan",
    "ease": "8 cm",
    "sizes": WOMEN,
    "pieces": [
        {"name": "yoke", "shape": "raglan yoke", "swatch": SC,
         "measures": {"neck round": "56 cm", "yoke depth": "armhole depth + 5 cm", "body round": "bust + ease",
                      "upper arm round": "upper arm + 6 cm", "underarm": "8 % of bust"}},
        {"name": "body", "shape": "straight panel", "worked": "round", "swatch": SC,
         "measures": {"width": "body round of yoke", "length": "34 cm"}},
        {"name": "sleeve", "shape": "tapered panel", "worked": "round", "alike": 2, "swatch": SC,
         "measures": {"start width": "upper arm round of yoke", "end width": "22 cm", "length": "arm length",
                      "straight": "4 cm"}},
    ],
    "joins": [
        {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
        {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
    ],
}  # fmt: skip


def text_of(plan: dict[str, Any]) -> str:
    return pattern_text(work_out(plan_of(plan)), Terms.US)


def edited(text: str) -> list[dict[str, Worked]]:
    return [worked_through(text, place) for place in range(len(sizes_in(text)))]


@pytest.mark.parametrize(
    ("neck", "deep"), [("v", "armhole of back + 2 cm"), ("v", "15 cm"), ("round", "8 cm"), ("square", "24 cm")]
)
def test_a_cardigan_in_all_sizes(neck: str, deep: str) -> None:
    text = text_of(cardigan(neck, deep))
    every = edited(text)
    assert len(every) == 9
    for place, made in enumerate(every):
        assert sorted(made) == ["back", "front", "sleeve"]
        for name, piece in made.items():
            assert piece.wrong == [], f"{sizes_in(text)[place]}, {name}"
            assert piece.checked >= 3
        assert measured(text, place, made) == []
        assert made["front"].shoulder == made["back"].shoulder or "shoulders of each front" in text
        assert len(made["front"].counts) == len(made["back"].counts)


def test_a_raglan_in_all_sizes() -> None:
    text = text_of(RAGLAN)
    every = edited(text)
    assert len(every) == 9
    for place, made in enumerate(every):
        assert sorted(made) == ["body", "sleeve", "yoke"]
        for name, piece in made.items():
            assert piece.wrong == [], f"{sizes_in(text)[place]}, {name}"
        assert made["yoke"].checked > 60
        assert measured(text, place, made) == []


def test_the_editor_finds_a_wrong_number_wherever_it_stands() -> None:
    """Each number of the pieces changed by itself, in one size, is found."""
    text = text_of(RAGLAN)
    first = text.index("Yoke, worked")
    lists = [found for found in re.finditer(r"(\d+) \((?:\d+(?:, |\))){8}", text) if found.start() > first]
    assert len(lists) > 15
    missed = []
    for found in lists:
        wrong = f"{text[: found.start(1)]}{int(found[1]) + 1}{text[found.end(1) :]}"
        try:
            made = worked_through(wrong, 0)
        except (AssertionError, IndexError):
            continue
        if not any(piece.wrong for piece in made.values()) and not measured(wrong, 0, made):
            missed.append(text[found.start() - 40 : found.end()])
    assert missed == []
