"""The lines of an edging, and where it lies."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.shaped_piece import PickedUp, ShapedPiece
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import listed
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import PieceInSizes
from logbook.tasks.written.round_lines import stitches_until


def edging_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of an edging."""
    which = _which(of.one.picked)
    for number, edge in enumerate(of.one.picked):
        rate = f", {_rate([piece.picked[number] for piece in of.pieces])}"
        stitches = of.all(lambda piece, number=number: piece.picked[number].stitches)  # type: ignore[misc]
        doing = "Pick up" if number else "With the right side facing, pick up"
        yield f"{doing} {stitches} sts along the {edge_words(edge.edge)} of {which[number]}{rate}."
    there = of.all(lambda piece: piece.foundation)
    exact = all(sum(edge.stitches for edge in piece.picked) == piece.foundation for piece in of.pieces)
    first = f"worked into the edge as {of.row} 1"
    fewer = f"Pick up slightly fewer here and there, so that there are {there} sts, {first}."
    yield f"{there} sts in all, {first}." if exact else fewer
    corners = of.one.parts.get("corners")
    if corners:
        by = of.one.parts["corner"]
        turn = (
            f"{by} more sts at each of the {corners} corners"
            if corners > 0
            else f"{by} fewer sts at each of the {-corners} corners"
        )
        yield f"In every round, including round 1, work {turn}."
        yield PatternTable(
            ("round", "sts"),
            tuple(
                (f"round {row}", f"{stitches_until(of, row, [piece.rows for piece in of.pieces])} sts")
                for row in range(1, max(piece.rows for piece in of.pieces) + 1)
            ),
        )
    yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all. Fasten off."


def _rate(edges: Sequence[PickedUp]) -> str:
    """``3 sts to 4 rows``, in lists where sizes differ; ``about``, where that does not give the stitches told."""
    by_rows, mixed = edges[0].along is Direction.ROWS, edges[0].mixed
    if {edge.rate for edge in edges} == {(1, 1)}:
        return f"one in each {'row end' if by_rows else 'st'}" + (" and row end" if mixed else "")
    stitches, of = (alike(edge.rate[side] for edge in edges) for side in (0, 1))
    units = ("row" if by_rows else "st") if of == "1" else ("rows" if by_rows else "sts")
    about = "" if all(edge.over in (0, 1) for edge in edges) else "about "
    return f"{about}{stitches} st{'' if stitches == '1' else 's'} to {of} {units}" + (" and row ends" if mixed else "")


def along_words(piece: ShapedPiece) -> str:
    """``the neck of the back and the neck of the front``."""
    return listed(
        [f"the {edge_words(edge.edge)} of {which}" for edge, which in zip(piece.picked, _which(piece.picked), strict=True)]
    )


def _which(picked: Sequence[PickedUp]) -> list[str]:
    """The piece of each edge: ``the back``; of a pair, both of which it goes along, ``the first front``, ``the second front``."""
    edges = [(edge.piece, edge.edge) for edge in picked]
    said = []
    for number, edge in enumerate(edges):
        turn = "the second" if edge in edges[:number] else "the first"
        said.append(f"{turn if edges.count(edge) == 2 else 'the'} {edge[0]}")
    return said


def edge_words(edge: str) -> str:
    """An edge as a pattern calls it: ``front edge``, ``lower edge`` and so on."""
    return {"start": "foundation edge", "end": "last row", "shoulder": "shoulder", "armhole": "armhole"}.get(edge, f"{edge} edge")
