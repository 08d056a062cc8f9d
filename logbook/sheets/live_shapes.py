"""The numbers of each shape as formulas of a spreadsheet: from a piece's gauge and measures to stitches, rows and shaping.

They are those of ``craft/garments``. Live are pieces in plain stitches whose rows go by no groups.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

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
from logbook.sheets.cells import TENTHS, WHOLE
from logbook.sheets.rounding import halves_down, halves_even, like, nearest


class NumberLine(NamedTuple):
    """One number of a piece: its label, its formula with other keys in braces ("": it is typed), what it is in a piece, how it
    shows. ``of`` None: it is not there."""

    key: str
    label: str
    formula: str
    of: Callable[[ShapedPiece], float | None]
    numbers: str = WHOLE


def is_live(pieces: Sequence[ShapedPiece], cloth: Cloth) -> bool:
    """Whether formulas can say what comes of the piece: those of its first size hold for all that want the same measures."""
    piece = pieces[0]
    alike = len({(frozenset(one.wanted), bool(one.wanted.get("inset"))) for one in pieces}) == 1
    grouped = piece.wish.shape in (PANEL, HALF_FRONT, TAPERED) and RowRule.of(cloth.gauges.pattern).in_repeat != 1
    marks = piece.wish.shape == PANEL and ("slit" in piece.wanted or piece.wish.worked == SIDEWAYS)
    flat = piece.on is not None and piece.wish.worked != ROUND
    return (cloth.gauges.pattern.multiple or 1) == 1 and piece.wish.shape != EDGING and alike and not (grouped or marks or flat)


def lines_of(pieces: Sequence[ShapedPiece], cloth: Cloth) -> list[NumberLine]:
    """The lines of a piece in all sizes: what is wanted of it, then what comes of that."""
    one, rule = pieces[0], RowRule.of(cloth.gauges.pattern)
    begun = rule.set_up + rule.closing
    found = [_wanted(name) for name in one.wish.kind.measures if any(name in piece.wanted for piece in pieces)]
    shapes: dict[str, Callable[[ShapedPiece], list[NumberLine]]] = {
        PANEL: _panel,
        HALF_FRONT: _panel,
        TAPERED: lambda one: _tapered(one, begun),
        RAGLAN: _raglan,
        ROUND_YOKE: _round_yoke,
        CROWN: _crown,
        TRIANGLE: _triangle,
    }
    return [*found, *shapes[one.wish.shape](one)]


def _wanted(name: str) -> NumberLine:
    return NumberLine(
        name, f"{name} wanted, cm", "", lambda piece: piece.wanted[name] / 10 if name in piece.wanted else None, TENTHS
    )


def _begin(one: ShapedPiece, measure: str) -> list[NumberLine]:
    """Stitches, and the chain where there is one; what is worked on has those it is worked on from."""
    own = halves_down(f"{{{measure}}}*10/{{p}}")
    found: list[NumberLine] = []
    if one.on is not None:
        there = f"{{{one.on.piece}.{'body' if one.on.edge == 'end' else 'arm'}}}"
        found.append(
            NumberLine("there", f"stitches of the {one.on.piece}", there, lambda piece: piece.on.stitches if piece.on else None)
        )
        near = f"ABS({own}-{{there}})<=MAX(0.05*{{there}},2)"
        own = f"IF(AND({{{one.on.piece}.p}}={{p}},{near}),{{there}},{own})"
    found.append(NumberLine("first", "stitches at the start", own, lambda piece: piece.foundation))
    if one.chain is not None:
        found.append(NumberLine("chain", "chain", "{first}+{extra}", lambda piece: piece.chain))
    return found


def _width(key: str, label: str, stitches: str, of: Callable[[ShapedPiece], float]) -> NumberLine:
    return NumberLine(key, label, f"{stitches}*{{p}}/10", lambda piece: of(piece) / 10, TENTHS)


def _long() -> NumberLine:
    return NumberLine("long", "length, cm", "{rows}*{q}/10", lambda piece: piece.rows * piece.row_mm / 10, TENTHS)


def _left(piece: ShapedPiece, wanted: str) -> tuple[int, int]:
    return next(((row, count) for place, row, count in piece.left if place == wanted), (0, 0))


def _panel(one: ShapedPiece) -> list[NumberLine]:
    sides = 1 if one.wish.shape == HALF_FRONT else 2
    found = _begin(one, "width")
    found.append(NumberLine("rows", "rows", halves_down("{length}*10/{q}"), lambda piece: piece.rows))
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
    found.append(_width("wide", "width, cm", "{first}", lambda piece: max(piece.widths)))
    return [*found, _long()]


def _neck(one: ShapedPiece, sides: int, inset: bool) -> list[NumberLine]:
    form = one.wish.choice("neck", "round")
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


def _tapered(one: ShapedPiece, begun: int) -> list[NumberLine]:
    """``begun``: rows that are worked once, before and behind those that are repeated."""
    found = _begin(one, "start width")
    exact = "{length}*10/{q}"
    rows = halves_down(exact) if begun else f"MAX(1,{nearest(exact)})"
    found.append(NumberLine("rows", "rows", rows, lambda piece: piece.rows))
    even = "{even}" if "straight" in one.wanted else "0"
    if "straight" in one.wanted:
        found.append(
            NumberLine("even", "of these even at the end", nearest("{straight}*10/{q}"), lambda piece: piece.parts.get("even", 0))
        )
    last = like("{end width}*10/{p}", "{first}")
    times = "ABS({last}-{first})/2"
    found += [
        NumberLine("last", "stitches at the end", last, lambda piece: piece.counts[-1]),
        NumberLine(
            "times", "shaped at each edge, times", times, lambda piece: len(piece.shapings[0].at) if piece.shapings else 0
        ),
    ]
    if not one.wish.choice("right side rows", False):
        spread = f"IF({{times}}=0,0,IF({{times}}>{{rows}}-{even},0,ROUNDUP(INT(({{rows}}-{even})/{{times}})/2,0)))"
        gap = f"IF({{times}}=0,0,INT(({{rows}}-{even})/{{times}}))"
        longer = f"IF({{gap}}=0,0,{{rows}}-{even}-{{gap}}*{{times}})"
        found += [
            NumberLine("shaped first", "first in row", spread, _first_shaped),
            NumberLine("gap", "gaps, rows (0: several a row)", gap, lambda piece: _gap(piece)[0]),
            NumberLine("longer", "the last gaps, a row longer", longer, lambda piece: _gap(piece)[1]),
        ]
    found += [
        _width("start", "width at the start, cm", "{first}", lambda piece: piece.widths[0]),
        _width("end", "width at the end, cm", "{last}", lambda piece: piece.widths[-1]),
    ]
    return [*found, _long()]


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


def _part(name: str, label: str, formula: str) -> NumberLine:
    return NumberLine(name, label, formula, lambda piece: piece.parts[name])


def _yoke(one: ShapedPiece) -> list[NumberLine]:
    found = [
        NumberLine("first", "stitches at the neck", nearest("{neck round}*10/{p}"), lambda piece: piece.foundation),
        NumberLine("rows", "rounds", nearest("{yoke depth}*10/{q}"), lambda piece: piece.rows),
        NumberLine(
            "underarm sts", "stitches under each arm", nearest("{underarm}*10/{p}"), lambda piece: piece.parts["underarm"]
        ),
    ]
    if one.chain is not None:
        found.insert(1, NumberLine("chain", "chain", "{first}+{extra}", lambda piece: piece.chain))
    return found


def _raglan(one: ShapedPiece) -> list[NumberLine]:
    lines = 4 * one.parts["lines"]
    ring = f"({{back}}+{{front}}+2*{{underarm sts}}+{lines})"
    return [
        *_yoke(one),
        _part("sleeve", "each sleeve at the neck", nearest(f"({{first}}-{lines})/8")),
        _part("back", "back at the neck", f"INT(({{first}}-{lines}-2*{{sleeve}})/2)"),
        _part("front", "front at the neck", f"{{first}}-{lines}-2*{{sleeve}}-{{back}}"),
        _part("body_increases", "increases in the body, at each line", nearest(f"({{body round}}*10/{{p}}-{ring})/4")),
        _part("sleeve_increases", "in the sleeves", nearest("({upper arm round}*10/{p}-{sleeve}-{underarm sts})/2")),
        _part("body", "stitches of the body", f"{ring}+4*{{body_increases}}"),
        _part("arm", "stitches of a sleeve with its underarm", "{sleeve}+{underarm sts}+2*{sleeve_increases}"),
        NumberLine(
            "last", "stitches of the last round", "{first}+4*{body_increases}+4*{sleeve_increases}", lambda p: p.counts[-1]
        ),
        _width("around", "body round, cm", "{body}", lambda piece: piece.edges["end"].mm),
        _long(),
    ]


def _round_yoke(one: ShapedPiece) -> list[NumberLine]:
    more = "({last}-{first})"
    return [
        *_yoke(one),
        _part("body", "stitches of the body", f"2*{nearest('{body round}*10/{p}/2')}"),
        _part("sleeve", "each sleeve", f"{nearest('{upper arm round}*10/{p}')}-{{underarm sts}}"),
        _part("back", "back, and as many in front", "{body}/2-{underarm sts}"),
        _part("arm", "stitches of a sleeve with its underarm", "{sleeve}+{underarm sts}"),
        NumberLine("last", "stitches of the last round", "2*{back}+2*{sleeve}", lambda piece: piece.counts[-1]),
        NumberLine(
            "times",
            "rounds that increase",
            f"IF({more}=0,0,MIN({{rows}},MAX(3,ROUNDUP(ROUND(3*{more}/{{first}},9),0))))",
            lambda piece: sum(
                now != before for before, now in zip((piece.foundation, *piece.counts), piece.counts, strict=False)
            ),
        ),
        _width("around", "body round, cm", "{body}", lambda piece: piece.edges["end"].mm),
        _long(),
    ]


def _crown(one: ShapedPiece) -> list[NumberLine]:
    each = one.parts["each_round"]
    exact = bool(one.wish.choice("exact", False))
    stitches = nearest("{round}*10/{p}") if exact else f"{{crown_rounds}}*{each}"
    one_more = f"-({{last}}<>{{crown_rounds}}*{each})" if exact else ""
    return [
        _part("crown_rounds", f"rounds of {each} more", nearest(f"{{round}}*10/{{p}}/{each}")),
        NumberLine("last", "stitches round", stitches, lambda piece: piece.counts[-1]),
        NumberLine("rows", "rounds", nearest("{height}*10/{q}"), lambda piece: piece.rows),
        _part("tube_rounds", "of these even", f"{{rows}}-{{crown_rounds}}{one_more}"),
        _width("around", "round, cm", "{last}", lambda piece: piece.widths[-1]),
        _long(),
    ]


def _triangle(one: ShapedPiece) -> list[NumberLine]:
    first, more = one.foundation, int(one.wish.choice("more a row", 2))
    return [
        NumberLine("rows", "rows", f"1+{nearest(f'({{wingspan}}*10/{{p}}-{first})/{more}')}", lambda piece: piece.rows),
        NumberLine("last", "stitches of the last row", f"{first}+{more}*({{rows}}-1)", lambda piece: piece.counts[-1]),
        _width("wide", "wingspan, cm", "{last}", lambda piece: piece.widths[-1]),
        _long(),
    ]
