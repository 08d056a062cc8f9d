"""Plans to begin a garment from: usual pieces with usual measures and usual joins, their swatches still to be chosen.

No chart has the round of a neck, so the plans bring one.
"""

from dataclasses import replace
from typing import Any

from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.garments.shapes import PANEL, shape_called
from logbook.craft.garments.usual_joins import usual_joins

EMPTY = "empty"
_WOMEN = {"chart": "women", "end": "middle"}
_HALF_ROUND = "(bust + ease) / 2"
_SLEEVE = {
    "start width": "24 cm",
    "end width": "2 × armhole of back",
    "length": "arm length",
}

_VALUES: dict[str, dict[str, Any]] = {
    "two-panel top": {
        "ease": "14 cm",
        "sizes": _WOMEN,
        "pieces": [
            {
                "name": "back",
                "shape": PANEL,
                "neck": "round",
                "measures": {
                    "width": _HALF_ROUND,
                    "length": "56 cm",
                    "armhole": "armhole depth + 2 cm",
                    "neck width": "24 cm",
                    "neck depth": "3 cm",
                },
            },
            {
                "name": "front",
                "shape": PANEL,
                "neck": "round",
                "measures": {
                    "width": "width of back",
                    "length": "length of back",
                    "armhole": "armhole of back",
                    "neck width": "neck width of back",
                    "neck depth": "10 cm",
                },
            },
        ],
    },
    "cardigan": {
        "ease": "10 cm",
        "sizes": _WOMEN,
        "pieces": [
            {
                "name": "back",
                "shape": PANEL,
                "neck": "round",
                "measures": {
                    "width": _HALF_ROUND,
                    "length": "58 cm",
                    "armhole": "armhole depth + 2 cm",
                    "neck width": "18 cm",
                    "neck depth": "2.5 cm",
                },
            },
            {
                "name": "front",
                "shape": "half front",
                "neck": "v",
                "measures": {
                    "width": "(width of back - depth of band) / 2",
                    "length": "length of back",
                    "armhole": "armhole of back",
                    "neck width": "(neck width of back - depth of band) / 2",
                    "neck depth": "22 cm",
                },
            },
            {"name": "sleeve", "shape": "tapered panel", "alike": 2, "measures": _SLEEVE},
            {
                "name": "band",
                "shape": "edging",
                "measures": {"depth": "3 cm"},
                "along": [["front", ["front", "neck"]], ["back", "neck"], ["front", ["neck", "front"]]],
            },
        ],
    },
    "top-down raglan": {
        "ease": "8 cm",
        "sizes": _WOMEN,
        "pieces": [
            {
                "name": "yoke",
                "shape": "raglan yoke",
                "measures": {
                    "neck round": "58 cm",
                    "yoke depth": "armhole depth + 5 cm",
                    "body round": "bust + ease",
                    "upper arm round": "upper arm + 6 cm",
                    "underarm": "8 cm",
                },
            },
            {
                "name": "body",
                "shape": PANEL,
                "worked": "round",
                "measures": {"width": "body round of yoke", "length": "34 cm"},
            },
            {
                "name": "sleeve",
                "shape": "tapered panel",
                "worked": "round",
                "alike": 2,
                "measures": {"start width": "upper arm round of yoke", "end width": "22 cm", "length": "arm length"},
            },
        ],
    },
    "hat": {
        "sizes": {"chart": "heads", "end": "middle"},
        "pieces": [{"name": "crown", "shape": "crown and tube", "measures": {"round": "head - 4 cm", "height": "36 % of head"}}],
    },
    "shawl": {
        "pieces": [
            {
                "name": "triangle",
                "shape": "triangle",
                "first stitches": 3,
                "more a row": 2,
                "measures": {"wingspan": "150 cm"},
            }
        ]
    },
    "blanket with border": {
        "pieces": [
            {"name": "blanket", "shape": PANEL, "measures": {"width": "90 cm", "length": "120 cm"}},
            {
                "name": "border",
                "shape": "edging",
                "worked": "round",
                "measures": {"depth": "4 cm"},
                "along": [["blanket", ["start", "right side", "end", "left side"]]],
            },
        ]
    },
}

TEMPLATES = (*_VALUES, EMPTY)
"""What a garment may be begun from."""


def template(name: str, swatch: str = "") -> GarmentPlan:
    """The plan of that name, every piece from the swatch with that tag ("": still to be chosen); a garment without a name."""
    plan = plan_of({"name": "", **_VALUES.get(name, {})}, whole=False)
    plan = replace(plan, pieces=tuple(replace(piece, swatch=swatch) for piece in plan.pieces))
    return replace(plan, joins=usual_joins(plan))


def new_piece(shape: str, plan: GarmentPlan) -> str:
    """A free name for a piece of that shape."""
    known = {piece.name for piece in plan.pieces}
    first = {"straight panel": "panel", "tapered panel": "sleeve", "half front": "front"}.get(shape, shape_called(shape).name)
    first = {"raglan yoke": "yoke", "round yoke": "yoke", "crown and tube": "crown", "edging": "band"}.get(first, first)
    return next(name for name in (first, *(f"{first} {number}" for number in range(2, 1000))) if name not in known)
