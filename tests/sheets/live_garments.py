"""The live sheet of garments, tried with random inputs.

LibreOffice reckons one workbook anew with the inputs of another garment of the same pieces, and must come to the other's numbers,
which are the program's.

``python -m tests.sheets.live_garments --times 50 --seed 1``
"""

import argparse
import random
import tempfile
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Any

from logbook.craft.garments.body import GarmentSize
from logbook.craft.garments.garment import work_out_garment
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError
from logbook.sheets.garment_workbook import write_garment_workbook
from tests.sheets.live_numbers import Trial, differing
from tests.support.shaped_pieces import cloth

Parts = tuple[list[dict[str, Any]], list[dict[str, Any]]]
"""Pieces and joins, as a plan has them."""


def _body(chance: random.Random, neck: str, *, inset: bool) -> dict[str, str]:
    deep = chance.uniform(20, 90) if neck != "v" else chance.uniform(120, 260)
    measures = {"width": chance.uniform(220, 320), "length": chance.uniform(500, 640), "armhole": chance.uniform(170, 230),
                "neck width": chance.uniform(70, 100), "neck depth": deep}  # fmt: skip
    return _mm(measures | ({"inset": chance.uniform(20, 50)} if inset else {}))


def _mm(measures: dict[str, float]) -> dict[str, str]:
    return {name: f"{length:.1f} mm" for name, length in measures.items()}


def _taper(chance: random.Random, start: float, end: float, *, straight: bool) -> dict[str, str]:
    measures = {"start width": start, "end width": end, "length": chance.uniform(380, 480)}
    return _mm(measures | ({"straight": chance.uniform(10, 60)} if straight else {}))


def cardigan(chance: random.Random) -> Parts:
    """A set-in cardigan, with panels and edges of other forms beside it."""
    back = _body(chance, "round", inset=True)
    back |= _mm({"width": chance.uniform(430, 640), "neck width": chance.uniform(140, 200)})
    front = _body(chance, "v", inset=True)
    plain = _mm({"width": chance.uniform(300, 500), "length": chance.uniform(300, 500), "armhole": chance.uniform(100, 200),
                 "neck width": chance.uniform(90, 160), "slit": chance.uniform(30, 90)})  # fmt: skip
    made = [
        {"name": "back", "shape": "straight panel", "neck": "round", "measures": back},
        {"name": "front", "shape": "half front", "neck": "v", "measures": front},
        {"name": "yoked", "shape": "half front", "neck": "round", "measures": _body(chance, "round", inset=False)},
        {"name": "square", "shape": "straight panel", "neck": "square",
         "measures": {**_body(chance, "square", inset=False), **_mm({"width": chance.uniform(400, 600)})}},
        {"name": "vest", "shape": "straight panel", "measures": plain},
        {"name": "sleeve", "shape": "tapered panel", "alike": 2,
         "seam": "whip stitch",
         "measures": _taper(chance, chance.uniform(200, 280), chance.uniform(300, 420), straight=True)},
        {"name": "band", "shape": "edging", "along": [["front", ["front", "neck"]], ["back", "neck"], ["yoked", "neck"]],
         "measures": _mm({"depth": chance.uniform(15, 50)})},
    ]  # fmt: skip
    return made, [
        {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
        {"of": "front", "edge": "side", "to": ["back"], "at": "side"},
        {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
        {"of": "sleeve", "edge": "end", "to": ["vest"], "at": "armhole"},
        {"of": "vest", "edge": "side", "to": ["square"], "at": "side"},
        {"of": "band", "edge": "end", "to": ["square"], "at": "neck"},
    ]


def hat_and_shawl(chance: random.Random) -> Parts:
    """Two hats, one of the exact girth, and a shawl."""
    hat = {"name": "hat", "shape": "crown and tube", "each round": 6}
    measures = _mm({"round": chance.uniform(450, 600), "height": chance.uniform(190, 260)})
    wide = _mm({"wingspan": chance.uniform(500, 1800)})
    return [
        {**hat, "measures": measures},
        {**hat, "name": "other", "exact": True, "measures": measures},
        {"name": "shawl", "shape": "triangle", "first stitches": 5, "more a row": 3, "measures": wide},
    ], []


def yoked(shape: str, chance: random.Random) -> Parts:
    """A yoke, with body and sleeves worked on from it."""
    body, arm = chance.uniform(800, 1300), chance.uniform(280, 460)
    yoke = {"neck round": chance.uniform(420, 560), "yoke depth": chance.uniform(190, 300), "body round": body,
            "upper arm round": arm, "underarm": chance.uniform(30, 100)}  # fmt: skip
    off = chance.choice([1.0, 1.0, 1.2])
    made = [
        {"name": "yoke", "shape": shape, "measures": _mm(yoke)},
        {"name": "body", "shape": "straight panel", "worked": "round", "measures": _mm({"width": body * off, "length": 340})},
        {"name": "sleeve", "shape": "tapered panel", "worked": "round", "alike": 2,
         "measures": _taper(chance, arm * off, chance.uniform(180, 240), straight=False)},
    ]  # fmt: skip
    return made, [
        {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
        {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
    ]


def by_the_body(_: random.Random) -> Parts:
    """Pieces measured by the body, its ease and one another, with seams, all round one of them a border."""
    body = {"length": "60 % of arm length + 30 cm", "armhole": "armhole depth + 2 cm"}
    back = {"width": "(bust + ease) / 2", **body, "neck width": "bust / 5", "neck depth": "2.5 cm"}
    front = {"width": "width of back", **body, "neck width": "neck width of back", "neck depth": "armhole of back / 2"}
    sleeve = {"start width": "24 cm", "end width": "2 x armhole of back - 5 %", "length": "arm length", "straight": "ease / 20"}
    made = [
        {"name": "back", "shape": "straight panel", "seam": "mattress stitch", "measures": back},
        {"name": "front", "shape": "straight panel", "seam": "0.5 cm", "neck": "v", "measures": front},
        {"name": "St. sleeve", "shape": "tapered panel", "alike": 2, "right side rows": True, "seam": "slip stitch",
         "measures": sleeve},
        {"name": "scarf", "shape": "straight panel", "measures": {"width": "20 cm + ease", "length": "length of back + 70 cm"}},
        {"name": "border", "shape": "edging", "worked": "round", "draw in": "5 %", "measures": {"depth": "3 cm"},
         "along": [["scarf", ["start", "right side", "end", "left side"]]]},
    ]  # fmt: skip
    return made, [
        {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
        {"of": "front", "edge": "side", "to": ["back"], "at": "side"},
        {"of": "St. sleeve", "edge": "side", "to": ["St. sleeve"], "at": "side"},
        {"of": "St. sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
    ]


def in_repeats(chance: random.Random) -> Parts:
    """Panels, sleeves and a band in a stitch with repeats, whose rows go by groups."""
    back = _body(chance, "round", inset=False) | _mm({"width": chance.uniform(500, 640), "neck width": chance.uniform(140, 200)})
    sleeve = _taper(chance, chance.uniform(200, 280), chance.uniform(300, 420), straight=False)
    made = [
        {"name": "back", "shape": "straight panel", "measures": back},
        {"name": "front", "shape": "half front", "neck": "v", "measures": _body(chance, "v", inset=False)},
        {"name": "cowl", "shape": "straight panel", "worked": "round", "measures": _mm({"width": 600, "length": 300})},
        {"name": "sleeve", "shape": "tapered panel", "measures": sleeve},
        {"name": "other", "shape": "tapered panel", "whole repeats": True, "measures": sleeve},
        {"name": "band", "shape": "edging", "along": [["front", ["front", "neck"]], ["back", "neck"]],
         "measures": _mm({"depth": chance.uniform(15, 50)})},
    ]  # fmt: skip
    return made, [
        {"of": "front", "edge": "side", "to": ["back"], "at": "side"},
        {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
    ]


KINDS: dict[str, Callable[[random.Random], Parts]] = {
    "cardigan": cardigan,
    "raglan": partial(yoked, "raglan yoke"),
    "round yoke": partial(yoked, "round yoke"),
    "hat and shawl": hat_and_shawl,
    "by the body": by_the_body,
    "in repeats": in_repeats,
}
"""Random pieces of each kind of garment, always of the same shapes and measures, and their joins."""


def sizes_of(kind: str, own: dict[str, dict[str, str]], chance: random.Random) -> list[GarmentSize]:
    """Two sizes: the second with its own measures, or each with its own body and ease."""
    if kind != "by the body":
        return [GarmentSize(name="A"), GarmentSize(name="B", pieces=own)]
    return [
        GarmentSize(
            name=name,
            body={"bust": round(chance.uniform(700, 1400), 1), "armhole depth": round(chance.uniform(150, 240), 1),
                  "arm length": round(chance.uniform(350, 480), 1)},
            ease=Ease(mm=round(chance.uniform(-50, 250), 1)),
        )
        for name in ("A", "B")
    ]  # fmt: skip


def written(path: Path, kind: str, chance: random.Random) -> Path:
    """A workbook of two sizes. Raises RefusedError for pieces that can't be."""
    made, joins = KINDS[kind](chance)
    larger, _ = KINDS[kind](chance)
    plan = plan_of({"name": kind, "pieces": made, "joins": joins})
    own = {piece["name"]: piece["measures"] for piece in larger}
    p, q = round(chance.uniform(3, 9), 2), round(chance.uniform(3, 9), 2)
    groups = {"set_up_rows": 1, "rows_in_repeat": 1} if kind == "cardigan" else {}
    cloths = dict.fromkeys((piece.name for piece in plan.pieces), cloth(p, q, **groups))
    if kind == "in repeats":
        repeat = {"set_up_rows": 1, "rows_in_repeat": chance.choice((2, 4)), "closing_rows": 1}
        cloths = dict.fromkeys(cloths, cloth(p, q, chance.choice((3, 4, 6)), chance.randrange(3), **repeat))
    if kind == "raglan":  # sleeves of another stitch, which begin by their own width however near that is
        cloths["sleeve"] = cloth(round(p * 1.04, 2), q)
    sizes = work_out_garment(plan, sizes_of(kind, own, chance), cloths)
    with path.open("wb") as stream:
        write_garment_workbook(stream, kind, sizes, cloths, (), (), "1 June 2026")
    return path


def trials(folder: Path, times: int, chance: random.Random) -> Iterator[Trial]:
    """So many, of every kind in turn."""
    done = 0
    while done < times:
        kind = tuple(KINDS)[done % len(KINDS)]
        base = folder / f"{kind}.xlsx"
        try:
            if not base.exists():
                written(base, kind, chance)
            yield Trial(base, ("Pieces", "Joins", "Yarn"), written(folder / f"{kind} {done}.xlsx", kind, chance))
        except RefusedError:
            if not base.exists() or base.stat().st_size == 0:
                base.unlink(missing_ok=True)
            continue
        done += 1


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--times", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        wrong = differing(list(trials(Path(folder), arguments.times, random.Random(arguments.seed))), Path(folder))
    print("\n".join(wrong[:50]))
    print(f"{arguments.times} garments, {len(wrong)} cells differ")


if __name__ == "__main__":
    main()
