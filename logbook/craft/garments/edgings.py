"""Edgings in a stitch of their own, picked up along edges of other pieces.

Along edges of length L together an edging of pitch p takes L·(1 − draw in)/p stitches, brought to its multiple and plus, and
shared out to the edges by their lengths. In the round,
at an outer corner the even number nearest 2q/p more a round, at least 2; at an inner corner as many fewer.
"""

from collections.abc import Sequence

from logbook.craft.garments.making import Making
from logbook.craft.garments.rates import small_ratio
from logbook.craft.garments.shaped_piece import Edge, PickedUp, ShapedPiece, counts_from
from logbook.craft.garments.shapes import HALF_FRONT, ROUND
from logbook.craft.garments.tapers import whole_rows
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_numbers import chain_rule
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError

_ALL_ROUND = {"start", "end", "left side", "right side"}


def edging(making: Making) -> ShapedPiece:
    """An edging. Raises RefusedError if there is nothing to pick up from."""
    along: tuple[tuple[str, str], ...] = making.planned.choice("along")
    if not along:
        raise RefusedError("It has nothing to pick up from: name a piece and an edge of it after “along”.")
    in_round, drawn = making.planned.worked == ROUND, 1 - float(making.planned.choice("draw in"))
    edges = [(piece, name, edge_of(making, piece, name)) for piece, name in along]
    length = sum(edge.mm for _, _, edge in edges) * drawn
    if not length > 0:
        raise RefusedError("It has nothing to pick up from: the edge it lies along has no length.")
    stitches = making.chain(length, chain_rule(PiecePlan(in_round=in_round), making.gauges)).count
    rows = whole_rows(making, making.need("depth"))
    corner = max(2 * half_up(making.q / making.p), 2)
    more = corner * _corners(making, along) if in_round else 0
    counts = counts_from(stitches, rows, [(row, more) for row in range(1, rows + 1)])
    if counts[-1] < 1:
        raise RefusedError("Its inner corners take all its stitches away: make it less deep.")
    return making.piece(
        stitches,
        counts,
        chain=None,
        edges={"start": making.along_stitches(stitches, "depth"), "end": making.along_stitches(counts[-1], "depth")},
        picked=tuple(
            _picked(piece, name, edge, share)
            for (piece, name, edge), share in zip(edges, shares([edge.mm for _, _, edge in edges], stitches), strict=True)
        ),
        parts={"corner": corner, "corners": more // corner} if more else {},
    )


def edge_of(making: Making, piece: str, name: str) -> Edge:
    """An edge of a piece worked out before. Raises RefusedError if the piece has no such edge."""
    shaped = making.done.get(piece)
    if shaped is None:
        raise RefusedError(f"It has nothing to pick up from: “{piece}” is an edging itself.")
    if name not in shaped.edges:
        raise RefusedError(f"It has nothing to pick up from: “{piece}” has no edge “{name}”; it has {', '.join(shaped.edges)}.")
    return shaped.edges[name]


def shares(lengths: Sequence[float], stitches: int) -> tuple[int, ...]:
    """So many stitches shared out to edges by their lengths, by largest remainder; edges of one length get as many where that
    can be, and each at least one (then the sum may be more).
    """
    whole = sum(lengths)
    exact = [round(stitches * length / whole, 9) for length in lengths]
    found = [int(share) for share in exact]
    left = stitches - sum(found)
    for remainder in sorted({share % 1 for share in exact}, reverse=True):
        for value in sorted({share for share in exact if share % 1 == remainder}, reverse=True):
            here = [place for place, share in enumerate(exact) if share == value]
            if len(here) <= left:
                left -= len(here)
                for place in here:
                    found[place] += 1
    alone = sorted(range(len(exact)), key=lambda place: (exact.count(exact[place]) > 1, -exact[place]))
    for place in (alone * left)[:left]:
        found[place] += 1
    return tuple(max(share, 1) for share in found)


def _picked(piece: str, name: str, edge: Edge, stitches: int) -> PickedUp:
    rate = small_ratio(stitches, edge.count)
    at_rate = edge.count * rate[0] // rate[1]
    return PickedUp(
        piece=piece,
        edge=name,
        mm=edge.mm,
        stitches=stitches,
        along=edge.along,
        rate=rate,
        over=stitches - at_rate,
        mixed=edge.mixed,
    )


def _corners(making: Making, along: tuple[tuple[str, str], ...]) -> int:
    """Outer corners less inner ones: all round a panel there are four outer ones, in a square neck an inner one at each side."""
    outer = 4 * sum({name for piece, name in along if piece == of} >= _ALL_ROUND for of in {piece for piece, _ in along})
    necks = [making.done[piece].planned for piece, name in along if name == "neck"]
    square = [planned for planned in necks if "neck depth" in planned.measures and planned.choice("neck") == "square"]
    return outer - sum(1 if planned.shape == HALF_FRONT else 2 for planned in square)
