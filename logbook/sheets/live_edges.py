"""The edges of a garment's pieces as formulas of a spreadsheet, and all the stitches of a piece; keys of the piece in braces.

They are those of ``craft/garments``: what joins and edgings go by, and yarn and hours.
"""

from collections.abc import Callable
from typing import NamedTuple

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import (
    CROWN,
    EDGING,
    HALF_FRONT,
    PANEL,
    RAGLAN,
    ROUND,
    ROUND_YOKE,
    TAPERED,
    TRIANGLE,
    YOKES,
)

_MOST_ROUNDS = 200
"""So many rounds of increases a round yoke may have in a sheet."""


class LiveEdge(NamedTuple):
    """How long an edge is in mm, of how many stitches or rows, and what one of them changes in mm; as formulas."""

    mm: str
    units: str
    step: str


def _stitches(count: str, mm: str = "", step: str = "{p}*{m}") -> LiveEdge:
    return LiveEdge(mm or f"({count})*{{p}}", f"({count})", step)


def _plain(count: str) -> LiveEdge:
    return _stitches(count, step="{p}")


def _row_ends(count: str, mm: str = "") -> LiveEdge:
    return LiveEdge(mm or f"({count})*{{q}}", f"({count})", "{q}")


def live_edges(piece: ShapedPiece) -> dict[str, LiveEdge]:
    """The edges of a piece whose numbers are live, by name."""
    shape = piece.planned.shape
    if shape in (PANEL, HALF_FRONT):
        return _of_panel(piece)
    if shape in YOKES:
        neck = _plain("{first}")
        return {"start": neck, "neck": neck, "end": _plain("{body}"), "armhole": _plain("{arm}")}
    if shape == CROWN:
        return {"end": _plain("{last}")}
    first = str(piece.foundation) if shape == TRIANGLE else "{first}"
    along = _plain if shape == TRIANGLE else _stitches
    found = {"start": along(first), "end": along("{last}")}
    if shape == EDGING or piece.planned.worked == ROUND:
        return found
    across = "{last}" if shape == TRIANGLE else "({last}-{first})"
    side = _row_ends("{rows}", f"SQRT(({{rows}}*{{q}})^2+({across}*{{p}}/2)^2)")
    return found | dict.fromkeys(("side", "left side", "right side"), side)


def _of_panel(piece: ShapedPiece) -> dict[str, LiveEdge]:
    half, shaped, inset = piece.planned.shape == HALF_FRONT, "neck depth" in piece.wanted, bool(piece.wanted.get("inset"))
    sides = 1 if half else 2
    top = f"{{first}}{f'-{sides}*{{inset sts}}' if inset else ''}{'-{neck sts}' if shaped else ''}"
    edges = {"start": _stitches("{first}"), "end": _stitches(top)}
    deep = "armhole" in piece.wanted
    if piece.planned.worked != ROUND:
        side = f"{{rows}}{'-{deep}' if deep else ''}{'-{slit rows}' if 'slit' in piece.wanted else ''}"
        edges |= dict.fromkeys(("side", "left side", "right side"), _row_ends(side))
    if deep:
        edges["armhole"] = _row_ends("{deep}")
    if "neck" in piece.edges:
        edges["shoulder"] = _stitches("{shoulder}")
        edges["neck"] = _neck(piece.planned.choice("neck"), sides) if shaped else _stitches("{neck sts}")
    if half:
        edges["front"] = _row_ends("{rows}-{neck rows}" if shaped else "{rows}")
    return edges


def _neck(form: str, sides: int) -> LiveEdge:
    across, up = "({neck decs}*{p})^2", "{neck rows}*{q}"
    mm = {
        "square": f"{{neck sts}}*{{p}}+{sides}*{up}",
        "v": f"{{leaves}}*{{p}}+{sides}*SQRT({across}+({up})^2)",
        "round": f"{{leaves}}*{{p}}+{sides}*(SQRT({across}+({{neck decs}}*{{q}})^2)+({{neck rows}}-1-{{neck decs}})*{{q}})",
    }[form]
    count = f"{{leaves}}+{sides}*{{neck rows}}"
    return _row_ends(count, f"({mm})") if form == "v" else _stitches(count, f"({mm})")


def all_stitches(piece: ShapedPiece) -> str:
    """The stitches of all rows of one such piece whose numbers are live."""
    shapes: dict[str, Callable[[ShapedPiece], str]] = {
        PANEL: _in_panel,
        HALF_FRONT: _in_panel,
        TAPERED: _in_taper,
        RAGLAN: lambda _: (
            f"{{first}}*{{rows}}+4*{_gained('{body_increases}', '{rows}')}+4*{_gained('{sleeve_increases}', '{rows}')}"
        ),
        ROUND_YOKE: lambda _: _in_round_yoke(),
        CROWN: lambda one: (
            f"{one.parts['each_round']}*{{crown_rounds}}*({{crown_rounds}}+1)/2+{{last}}*({{rows}}-{{crown_rounds}})"
        ),
        TRIANGLE: lambda one: f"{{rows}}*{one.foundation}+{one.planned.choice('more a row')}*{{rows}}*({{rows}}-1)/2",
        EDGING: lambda _: "{first}*{rows}+({last}-{first})*({rows}+1)/2",
    }
    return shapes[piece.planned.shape](piece)


def _in_panel(piece: ShapedPiece) -> str:
    sides = 1 if piece.planned.shape == HALF_FRONT else 2
    text = "{first}*{rows}"
    if piece.wanted.get("inset"):
        text += f"-{sides}*{{inset sts}}*{{deep}}"
    if "neck depth" in piece.wanted:
        decreases, rows = "{neck decs}", "{neck rows}"
        by_row = {
            "square": "0",
            "round": f"({decreases}*{rows}-{decreases}*({decreases}+1)/2)",
            "v": _gained(decreases, rows),
        }[piece.planned.choice("neck")]
        text += f"-{{leaves}}*{rows}-{sides}*{by_row}"
    return text


def _in_taper(piece: ShapedPiece) -> str:
    shaped = "({rows}-{even})" if "straight" in piece.wanted else "{rows}"
    if piece.planned.choice("right side rows"):
        pairs = f"INT(({shaped}+1)/2)"
        at = f"(2*{_sum_of_spread('{times}', pairs)}-{{times}})"
    else:
        at = _sum_of_spread("{times}", shaped)
    return f"{{first}}*{{rows}}+2*SIGN({{last}}-{{first}})*({{times}}*({{rows}}+1)-{at})"


def _in_round_yoke() -> str:
    """The g-th round of increases in round(Y(2g − 1)/2G), to N + round(A·g/G); every g at once."""
    g, more = f"ROW($1:${_MOST_ROUNDS})", "({last}-{first})"
    gained = f"(ROUND(ROUND({more}*{g}/{{times}},9),0)-ROUND(ROUND({more}*({g}-1)/{{times}},9),0))"
    at = f"ROUND(ROUND({{rows}}*(2*{g}-1)/2/{{times}},9),0)"
    return f"{{first}}*{{rows}}+IF({{times}}=0,0,SUMPRODUCT(({g}<={{times}})*{gained}*({{rows}}+1-{at})))"


def _gained(times: str, rows: str) -> str:
    """The stitches that so many shapings, spread over the last rows, come to in all."""
    return f"({times}*({rows}+1)-{_sum_of_spread(times, rows)})"


def _sum_of_spread(times: str, rows: str) -> str:
    """The numbers of the rows of ``spread`` added up: some in every row, and m more with gaps of g, e of them a row longer."""
    m, whole = f"MOD({times},{rows})", f"INT({times}/{rows})*{rows}*({rows}+1)/2"
    g, e = f"INT({rows}/{m})", f"MOD({rows},{m})"
    return f"({whole}+IF({m}=0,0,{m}*INT(({g}+1)/2)+{g}*{m}*({m}-1)/2+{e}*({e}+1)/2))"
