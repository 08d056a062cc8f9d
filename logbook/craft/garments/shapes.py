"""The shapes a piece of a garment may have, and what each wants to know. One table for plan files, forms and checks."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from logbook.craft.words.counting import listed
from logbook.craft.words.numbers import read_positive, read_whole
from logbook.errors import RefusedError, UnreadableError

PANEL, TAPERED, HALF_FRONT = "straight panel", "tapered panel", "half front"
RAGLAN, ROUND_YOKE = "raglan yoke", "round yoke"
CROWN, TRIANGLE, EDGING = "crown and tube", "triangle", "edging"

UP, DOWN, SIDEWAYS, ROUND = "up", "down", "sideways", "round"
WAYS = (UP, DOWN, SIDEWAYS, ROUND)
"""How a piece is worked: which way its rows run on the body."""

NECKS = ("square", "round", "v")
YOKES = (RAGLAN, ROUND_YOKE)
"""Worked from the neck; body and sleeves are worked on from their last round."""
FROM_TOP = (*YOKES, CROWN)
"""Worked in rounds, from the top."""

EDGES = ("start", "end", "side", "left side", "right side", "shoulder", "neck", "armhole", "front")
"""The edges of a piece: ``start`` is the foundation, whichever way it is worked."""


@dataclass(frozen=True, slots=True)
class Shape:
    """What a shape wants: ``needs`` and ``may`` are its measures, ``choices`` what else may be said of it.

    ``ways``: how it may be worked, the usual one first. ``plain``: in plain stitches alone (multiple 1). ``edge_stitches``: what
    is less than a repeat at its edges is worked in plain ones.
    """

    name: str
    needs: tuple[str, ...]
    may: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    ways: tuple[str, ...] = (UP, DOWN)
    plain: bool = False
    edge_stitches: bool = False

    @property
    def measures(self) -> tuple[str, ...]:
        """All its measures."""
        return self.needs + self.may


_NECK_AND_ARMHOLE = ("armhole", "inset", "neck width", "neck depth", "slit")
_YOKE = ("neck round", "yoke depth", "body round", "upper arm round", "underarm")

_TAPER = ("start width", "end width", "length")
_IN_ROUNDS = (ROUND, DOWN, UP)

SHAPES = {
    shape.name: shape
    for shape in (
        Shape(PANEL, ("width", "length"), _NECK_AND_ARMHOLE, ("neck",), WAYS),
        Shape(TAPERED, _TAPER, ("straight",), ("right side rows", "whole repeats"), (UP, DOWN, ROUND), edge_stitches=True),
        Shape(HALF_FRONT, ("width", "length"), _NECK_AND_ARMHOLE, ("neck", "mirrored")),
        Shape(RAGLAN, _YOKE, (), ("line stitches",), _IN_ROUNDS, plain=True),
        Shape(ROUND_YOKE, _YOKE, (), (), _IN_ROUNDS, plain=True),
        Shape(CROWN, ("round", "height"), (), ("each round", "exact"), _IN_ROUNDS, plain=True),
        Shape(TRIANGLE, ("wingspan",), (), ("first stitches", "more a row"), (UP, DOWN), plain=True),
        Shape(EDGING, ("depth",), (), ("along", "draw in"), (UP, ROUND, DOWN)),
    )
}

MEASURES = tuple(dict.fromkeys(measure for shape in SHAPES.values() for measure in shape.measures))
"""Every measure of any shape, once."""
MAY_BE_NOUGHT = ("straight", "underarm", "inset", "slit")
"""The measures that need not be above nought."""


def shape_called(name: str) -> Shape:
    """The shape of that name. Raises RefusedError, naming those there are."""
    if name not in SHAPES:
        raise RefusedError(f"“{name[:40]}” is not a shape known here: it is {listed(tuple(SHAPES), 'or')}.")
    return SHAPES[name]


def _flag(value: Any) -> bool:
    if not isinstance(value, bool):
        raise UnreadableError("say true or false")
    return value


def _neck(value: Any) -> str:
    if value not in NECKS:
        raise UnreadableError(f"say {listed(NECKS, 'or')}")
    return str(value)


def _whole(least: int, most: int) -> Callable[[Any], int]:
    return lambda value: read_whole(_text(value), "a count", least, most)


def _share(value: Any) -> float:
    return 0.0 if _text(value).strip(" %") in ("0", "") else read_positive(_text(value).strip(" %"), "a percentage", 50) / 100


def _text(value: Any) -> str:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise UnreadableError("give a text or a number")
    return str(value)


def _along(value: Any) -> tuple[tuple[str, str], ...]:
    """One place or several; a place is a piece and an edge of it (or several edges)."""
    places = value if isinstance(value, list) and value and not isinstance(value[0], str) else [value]
    found: list[tuple[str, str]] = []
    for place in places:
        if isinstance(place, dict) and set(place) == {"piece", "edge"}:
            place = [place["piece"], place["edge"]]
        if not isinstance(place, list) or len(place) != 2 or not isinstance(place[0], str):
            raise UnreadableError('name a piece and an edge of it, such as ["back", "neck"]')
        for edge in place[1] if isinstance(place[1], list) else [place[1]]:
            if edge not in EDGES:
                raise UnreadableError(f"“{edge}” is not an edge: choose {listed(EDGES, 'or')}")
            found.append((place[0], edge))
    return tuple(found)


CHOICES: dict[str, Callable[[Any], Any]] = {
    "neck": _neck,
    "right side rows": _flag,
    "whole repeats": _flag,
    "mirrored": _flag,
    "exact": _flag,
    "line stitches": _whole(0, 20),
    "each round": _whole(3, 60),
    "first stitches": _whole(1, 1000),
    "more a row": _whole(1, 50),
    "draw in": _share,
    "along": _along,
}
"""What may be said of a piece beside its measures, and how each is read. They raise UnreadableError, saying what to give."""
USUAL: Mapping[str, Any] = {
    "neck": "round", "right side rows": False, "whole repeats": False, "mirrored": True, "exact": False, "line stitches": 1,
    "first stitches": 3, "more a row": 2, "draw in": 0.0, "along": (),
}  # fmt: skip
"""What holds where nothing is said; of each round of a crown it is by its gauge."""
