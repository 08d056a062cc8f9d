"""The sheet "Try it": live formulas from gauge, multiple and width to the chain of every size, as the program reckons it.

With E the stitches that would reach the width just so, the counts go up from the least one in steps of a repeat::

    E = (width − edgings − 2·f·edge stitch) / stitch        S = least + step·max(0, round((E − least)/step))

f being the edge stitches at each side. Halves are rounded down, so that of two counts as far off the narrower is taken; "at
least" and "at most" round up and down. Where the pattern may end on half a repeat, the better of both kinds of count is taken.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from logbook.craft.pieces.options import Option, Parity
from logbook.craft.pieces.piece import PieceNumbers
from logbook.craft.pieces.piece_numbers import chain_rule, stitch_width
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.sizes.pattern_lines import Written
from logbook.sheets.cells import Content, Formula

FIRST_SIZE = 18
"""The row of the first size."""
_REPEATS, _REACH, _MULTIPLE, _PLUS, _EXTRA, _EDGE_EXTRA, _EDGE, _EDGING, _CHOOSE, _STITCH, _LEAST, _STEP, _HALF = (
    f"$B${row}" for row in range(3, 16)
)
_SHOWN_REPEATS = 10


@dataclass(frozen=True, slots=True)
class _Counts:
    """Which stitch counts there are: from the least up in steps, and the least of those that end on half a repeat."""

    least: int
    step: int
    half: int | None


def try_it_rows(written: Written) -> Iterator[tuple[Content, ...]]:
    """The sheet's rows from the top; the table of the sizes is the last of it."""
    plan, gauges = written.plan, written.gauges
    rule, width = chain_rule(plan, gauges), stitch_width(plan, gauges)
    counts = _counts_of(rule)
    yield ("Try it: change a number of the gauge, the pattern or a width, and every chain follows.",)
    yield (None,)
    yield "repeats measured", _SHOWN_REPEATS
    yield "they reach, cm", width.mm * rule.multiple * _SHOWN_REPEATS / 10
    yield "multiple: stitches in a repeat", rule.multiple
    yield "plus: base stitches beside whole repeats", rule.stitches_beside
    yield "extra chains", rule.chains_beside
    edge = gauges.edge
    yield "extra chains with edge stitches", replace(rule, extra_chains=edge.extra_chains).chains_beside if edge else 0
    yield "one edge stitch, mm", edge.stitch_mm if edge else 0.0
    yield "edgings of both sides together, cm", width.ends_mm / 10
    yield "choose: nearest, at least or at most", rule.choose.value
    yield "one stitch, mm", Formula(f"{_REACH}*10/{_REPEATS}/{_MULTIPLE}", width.mm)
    if rule.parity is Parity.ANY:
        yield "least base stitches", Formula(f"{_MULTIPLE}+{_PLUS}", counts.least)
        yield "stitches from one count to the next", Formula(_MULTIPLE, counts.step)
    else:
        yield f"least base stitches ({rule.parity.value})", counts.least
        yield "stitches from one count to the next", counts.step
    yield ("least base stitches that end on half a repeat", counts.half) if counts.half is not None else (None,)
    yield (None,)
    target = "length" if plan.sideways else "width"
    yield (
        "size", f"{target} wanted, cm", "edge stitches at each side", "base stitches that would reach", "base stitches",
        "chain", f"{target}, cm", "difference, cm",
    )  # fmt: skip
    for row, size in enumerate(written.sizes, start=FIRST_SIZE):
        across = size.piece.length if plan.sideways and size.piece.length else size.piece.width
        yield _size_row(row, size.name, size.piece, across, written, counts)


def _counts_of(rule: ChainRule) -> _Counts:
    beside, multiple = rule.stitches_beside, rule.multiple
    if rule.parity is not Parity.ANY:
        return _Counts(next(n + beside for n in (1, 2) if rule.parity.fits(n + beside)), 2, None)
    half = None if rule.half_plus is None or rule.in_round else multiple + multiple // 2 + rule.half_plus
    return _Counts(multiple + beside, multiple, half)


def _size_row(row: int, name: str, piece: PieceNumbers, across: Option, written: Written, counts: _Counts) -> tuple[Content, ...]:
    width, edge = stitch_width(written.plan, written.gauges), written.gauges.edge
    edges_mm = 2 * piece.edge_stitches * edge.stitch_mm if edge else 0.0
    exact = (across.wanted_mm - width.ends_mm - edges_mm) / width.mm
    return (
        name,
        across.wanted_mm / 10,
        piece.edge_stitches,
        Formula(f"(B{row}*10-{_EDGING}*10-2*C{row}*{_EDGE})/{_STITCH}", exact),
        Formula(f"{_stitches(f'D{row}', counts)}+2*C{row}", piece.stitches),
        Formula(f"E{row}+IF(C{row}>0,{_EDGE_EXTRA},{_EXTRA})", piece.chain),
        Formula(f"((E{row}-2*C{row})*{_STITCH}+2*C{row}*{_EDGE})/10+{_EDGING}", across.mm / 10),
        Formula(f"G{row}-B{row}", across.mm / 10 - across.wanted_mm / 10),
    )


def _stitches(exact: str, counts: _Counts) -> str:
    """The base stitches to take where ``exact`` would reach just so."""
    whole = _nearest(exact, _LEAST)
    if counts.half is None:
        return whole
    half = _nearest(exact, _HALF)
    narrow, wide = f"MIN({whole},{half})", f"MAX({whole},{half})"
    farther = f"ROUND(ABS({wide}-{exact})-ABS({narrow}-{exact}),9)"
    at_most = f"IF({wide}<={exact}+0.000000001,{wide},{narrow})"
    return f'IF({_CHOOSE}="at least",{narrow},IF({_CHOOSE}="at most",{at_most},IF({farther}<0,{wide},{narrow})))'


def _nearest(exact: str, least: str) -> str:
    steps = f"({exact}-{least})/{_STEP}"
    rounded = (
        f'IF({_CHOOSE}="at least",ROUNDUP(ROUND({steps},9),0),'
        f'IF({_CHOOSE}="at most",ROUNDDOWN(ROUND({steps},9),0),ROUNDUP(ROUND({steps}-0.5,9),0)))'
    )
    return f"({least}+{_STEP}*MAX(0,{rounded}))"
