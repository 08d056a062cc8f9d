"""The numbers of each shape as formulas of a spreadsheet: from a piece's gauge and measures to stitches, rows and shaping.

They are those of ``craft/garments``. Sideways panels, and tapers with edge stitches of another swatch are not live.
"""

from collections.abc import Callable, Mapping, Sequence
from functools import partial

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import (
    CROWN,
    EDGING,
    HALF_FRONT,
    PANEL,
    RAGLAN,
    ROUND,
    ROUND_YOKE,
    SIDEWAYS,
    TAPERED,
    TRIANGLE,
)
from logbook.craft.pieces.length import RowRule
from logbook.sheets.cells import TENTHS
from logbook.sheets.live_edges import LiveEdge, all_stitches
from logbook.sheets.live_lines import NumberLine, long_line, whole_rows, whole_stitches, width_line
from logbook.sheets.live_measures import filled, of_piece
from logbook.sheets.live_rounds import crown_lines, raglan_lines, round_yoke_lines, triangle_lines
from logbook.sheets.rounding import halves_even, halves_up, like, nearest

Edges = Mapping[str, Mapping[str, LiveEdge]]
"""The edges of the pieces that are live, by the names of piece and edge."""


def is_live(pieces: Sequence[ShapedPiece], cloth: Cloth, edges: Edges) -> bool:
    """Whether formulas can say what comes of the piece: those of its first size hold for all that want the same measures.

    ``edges`` of the others: an edging is live where all that it lies along is.
    """
    piece = pieces[0]
    alike = len({(frozenset(one.wanted), bool(one.wanted.get("inset"))) for one in pieces}) == 1
    edge, plain = cloth.gauges.edge, (cloth.gauges.pattern.multiple or 1) == 1
    edges_of_another = piece.planned.shape == TAPERED and not plain and edge is not None and edge.stitch_mm != piece.stitch_mm
    sideways = piece.planned.shape == PANEL and piece.planned.worked == SIDEWAYS
    no_side = "slit" in piece.wanted and "side" not in piece.edges
    flat = piece.on is not None and piece.planned.worked != ROUND
    picked = all(one.edge in edges.get(one.piece, ()) for one in piece.picked)
    return picked and alike and not (edges_of_another or sideways or no_side or flat)


def lines_of(pieces: Sequence[ShapedPiece], cloth: Cloth, edges: Edges) -> list[NumberLine]:
    """The lines of a piece in all sizes: what is wanted of it, then what comes of that; ``edges`` of the others."""
    one, rule = pieces[0], RowRule.of(cloth.gauges.pattern)
    found = [_wanted(name) for name in one.planned.kind.measures if any(name in piece.wanted for piece in pieces)]
    shapes: dict[str, Callable[[ShapedPiece], list[NumberLine]]] = {
        PANEL: lambda one: _panel(one, rule),
        HALF_FRONT: lambda one: _panel(one, rule),
        TAPERED: lambda one: _tapered(one, rule),
        RAGLAN: raglan_lines,
        ROUND_YOKE: round_yoke_lines,
        CROWN: crown_lines,
        TRIANGLE: triangle_lines,
        EDGING: lambda one: _edging(one, rule, edges),
    }
    worked = NumberLine("worked", "stitches of all rows", all_stitches(one), lambda piece: piece.stitches_worked)
    return [*found, *shapes[one.planned.shape](one), worked]


def _wanted(name: str) -> NumberLine:
    return NumberLine(
        name, f"{name} wanted, cm", "", lambda piece: piece.wanted[name] / 10 if name in piece.wanted else None, TENTHS
    )


def _begin(one: ShapedPiece, measure: str) -> list[NumberLine]:
    """Stitches, and the chain where there is one; what is worked on has those it is worked on from."""
    own = whole_stitches(f"({{{measure}}}*10/{{p}})", one)
    found: list[NumberLine] = []
    if one.on is not None:
        there = f"{{{of_piece(one.on.piece, 'body' if one.on.edge == 'end' else 'arm')}}}"
        found.append(
            NumberLine("there", f"stitches of the {one.on.piece}", there, lambda piece: piece.on.stitches if piece.on else None)
        )
        near = f"{{m}}=1,ABS({own}-{{there}})<=MAX(0.05*{{there}},2)"
        own = f"IF(AND({{{of_piece(one.on.piece, 'p')}}}={{p}},{near}),{{there}},{own})"
    found.append(NumberLine("first", "stitches at the start", own, lambda piece: piece.foundation))
    if one.chain is not None:
        found.append(NumberLine("chain", "chain", "{first}+{extra}", lambda piece: piece.chain))
    return found


def _left(piece: ShapedPiece, wanted: str) -> tuple[int, int]:
    return next(((row, count) for place, row, count in piece.left if place == wanted), (0, 0))


def _panel(one: ShapedPiece, rule: RowRule) -> list[NumberLine]:
    sides = 1 if one.planned.shape == HALF_FRONT else 2
    found = _begin(one, "width")
    found.append(NumberLine("rows", "rows", whole_rows("({length}*10/{q})", rule, straight=True), lambda piece: piece.rows))
    if "slit" in one.wanted:
        found.append(NumberLine("slit rows", "slit ends after row", halves_even("{slit}*10/{q}"), _slit_rows))
    inset = bool(one.wanted.get("inset"))
    if "armhole" in one.wanted:
        deep = nearest("{armhole}*10/{q}") if inset else halves_even("{armhole}*10/{q}")
        found.append(NumberLine("deep", "rows of the armhole", deep, lambda piece: piece.edges["armhole"].count))
        row = "{rows}-{deep}+1" if inset else "{rows}-{deep}"
        label = "armhole begins in row" if inset else "armhole is marked at the end of row"
        found.append(NumberLine("armhole row", label, row, lambda piece: piece.rows - piece.edges["armhole"].count + inset))
    if inset:
        count = nearest("{inset}*10/{p}")
        found.append(NumberLine("inset sts", "stitches left at each side", count, lambda piece: _left(piece, "armhole")[1]))
    if "neck depth" in one.wanted:
        found += _neck(one, sides, inset)
    elif "neck width" in one.wanted:
        half = halves_even("({neck width}*10/{p}-MOD({first},2))/2")
        found.append(
            NumberLine("neck sts", "stitches of the neck", f"MOD({{first}},2)+2*{half}", lambda p: p.edges["neck"].count)
        )
        found.append(
            NumberLine("shoulder", "stitches of a shoulder", "({first}-{neck sts})/2", lambda p: p.edges["shoulder"].count)
        )
    found.append(width_line("wide", "width, cm", "{first}", lambda piece: max(piece.widths)))
    return [*found, long_line()]


def _slit_rows(piece: ShapedPiece) -> int:
    """The rows that are neither of the side nor of the armhole."""
    armhole, side = piece.edges.get("armhole"), piece.edges.get("side")
    return piece.rows - (armhole.count if armhole else 0) - (side.count if side else piece.rows)


def _neck(one: ShapedPiece, sides: int, inset: bool) -> list[NumberLine]:
    form = one.planned.choice("neck")
    wanted = "{neck width}*10/{p}"
    of = like(wanted, "{first}") if sides == 2 else nearest(wanted)
    half = like("{neck sts}/2", "{neck sts}") if sides == 2 else nearest("{neck sts}/2")
    leaves = {
        "square": "{neck sts}",
        "v": "MOD({neck sts},2)" if sides == 2 else "0",
        "round": f"MAX({half},{{neck sts}}-{sides}*({{neck rows}}-1))",
    }[form]

    def all_of_neck(piece: ShapedPiece) -> int:
        return _left(piece, "neck")[1] + sides * _decreases(piece)

    gone = "-{inset sts}" if inset else ""
    shoulder = f"({{first}}-{{neck sts}})/{sides}{gone}"
    return [
        NumberLine("neck sts", "stitches of the neck", of, all_of_neck),
        NumberLine(
            "neck rows",
            "rows of the neck",
            nearest("{neck depth}*10/{q}"),
            lambda piece: piece.rows - _left(piece, "neck")[0] + 1,
        ),
        NumberLine("neck row", "neck begins in row", "{rows}-{neck rows}+1", lambda piece: _left(piece, "neck")[0]),
        NumberLine("leaves", "stitches left for it there", leaves, lambda piece: _left(piece, "neck")[1]),
        NumberLine("neck decs", "decreases at each edge of it", f"({{neck sts}}-{{leaves}})/{sides}", _decreases),
        NumberLine("shoulder", "stitches of a shoulder", shoulder, lambda piece: piece.edges["shoulder"].count),
    ]


def _decreases(piece: ShapedPiece) -> int:
    return sum(len(shaping.at) for shaping in piece.shapings if shaping.place == "neck")


def _tapered(one: ShapedPiece, rule: RowRule) -> list[NumberLine]:
    found = _begin(one, "start width")
    found.append(NumberLine("rows", "rows", whole_rows("({length}*10/{q})", rule), lambda piece: piece.rows))
    even = "{even}" if "straight" in one.wanted else "0"
    if "straight" in one.wanted:
        found.append(
            NumberLine("even", "of these even at the end", nearest("{straight}*10/{q}"), lambda piece: piece.parts.get("even", 0))
        )
    step = "(2*{m})" if one.planned.choice("whole repeats") else "2"
    last = f"{{first}}+{step}*{halves_up(f'({{end width}}*10/{{p}}-{{first}})/{step}')}"
    times = "ABS({last}-{first})/2"
    found += [
        NumberLine("last", "stitches at the end", last, lambda piece: piece.counts[-1]),
        NumberLine(
            "times", "shaped at each edge, times", times, lambda piece: len(piece.shapings[0].at) if piece.shapings else 0
        ),
    ]
    if not one.planned.choice("right side rows"):
        spread = f"IF({{times}}=0,0,IF({{times}}>{{rows}}-{even},0,ROUNDUP(INT(({{rows}}-{even})/{{times}})/2,0)))"
        gap = f"IF({{times}}=0,0,INT(({{rows}}-{even})/{{times}}))"
        longer = f"IF({{gap}}=0,0,{{rows}}-{even}-{{gap}}*{{times}})"
        found += [
            NumberLine("shaped first", "first in row", spread, _first_shaped),
            NumberLine("gap", "gaps, rows (0: several a row)", gap, lambda piece: _gap(piece)[0]),
            NumberLine("longer", "the last gaps, a row longer", longer, lambda piece: _gap(piece)[1]),
        ]
    found += [
        width_line("start", "width at the start, cm", "{first}", lambda piece: piece.widths[0]),
        width_line("end", "width at the end, cm", "{last}", lambda piece: piece.widths[-1]),
    ]
    return [*found, long_line()]


def _gap(piece: ShapedPiece) -> tuple[int, int]:
    """The gap of the shapings in rows, and how many are a row longer."""
    if not piece.shapings:
        return 0, 0
    times, rows = len(piece.shapings[0].at), piece.shapings[0].rows
    gap = rows // times
    return gap, rows - gap * times if gap else 0


def _first_shaped(piece: ShapedPiece) -> int:
    gap, _ = _gap(piece)
    return piece.shapings[0].at[0] if gap else 0


def _edging(one: ShapedPiece, rule: RowRule, edges: Edges) -> list[NumberLine]:
    drawn = 1 - float(one.planned.choice("draw in"))
    along = "+".join(filled(edges[of.piece][of.edge].mm, partial(_of, of.piece)) for of in one.picked)
    corners = one.parts.get("corners", 0)
    picked = whole_stitches(f"({{along}}*10*{drawn!r}/{{p}})", one)
    more = f"+{{rows}}*{corners}*MAX(2*{nearest('{q}/{p}')},2)" if corners else ""
    return [
        NumberLine("along", "it lies along, cm", f"({along})/10", lambda piece: sum(of.mm for of in piece.picked) / 10, TENTHS),
        NumberLine("first", "stitches picked up", picked, lambda piece: piece.foundation),
        NumberLine("rows", "rows", whole_rows("({depth}*10/{q})", rule), lambda piece: piece.rows),
        NumberLine("last", "stitches at the end", f"{{first}}{more}", lambda piece: piece.counts[-1]),
        width_line("wide", "width at the end, cm", "{last}", lambda piece: piece.widths[-1]),
        long_line(),
    ]


def _of(name: str, key: str) -> str:
    return f"{{{of_piece(name, key)}}}"
