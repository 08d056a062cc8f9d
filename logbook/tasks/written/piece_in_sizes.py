"""A piece of a garment in all its sizes, and the lines that pieces of every shape have: where they begin, shaping, counts."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.garments.shaped_piece import ShapedPiece, Shaping
from logbook.craft.garments.shapes import HALF_FRONT
from logbook.craft.pieces.shaping import rows_text
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import ordinal
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable

NONE = "–"
"""What stands in a list for a size that has no such row."""


@dataclass(frozen=True, slots=True)
class PieceInSizes:
    """A piece worked out in every size (names in the same order), and its stitch.

    ``stitch``: what to call that stitch where the garment has several ("": it has one).
    """

    names: tuple[str, ...]
    pieces: tuple[ShapedPiece, ...]
    pattern: StitchPattern
    stitch: str = ""

    @property
    def one(self) -> ShapedPiece:
        """The piece in its first size: what all sizes share."""
        return self.pieces[0]

    @property
    def row(self) -> str:
        """What a row is called."""
        return "round" if self.one.in_round else "row"

    def all(self, of: Callable[[ShapedPiece], object]) -> str:
        """A number of every size: ``62 (68, 80)``, once where all share it."""
        return alike(of(piece) for piece in self.pieces)


def is_mirrored(piece: ShapedPiece) -> bool:
    """Whether it is a pair of fronts of which the second is the mirror of the first."""
    return piece.planned.shape == HALF_FRONT and piece.planned.alike == 2 and bool(piece.planned.choice("mirrored"))


def begin(of: PieceInSizes) -> Iterator[str]:
    """Chain, stitches and where the first stitch goes."""
    chains, pattern = [piece.chain for piece in of.pieces], of.pattern
    if of.one.on is not None:
        yield from _going_on(of)
    if None in chains:
        return
    yield f"Ch {alike(chains)}" + (" and join into a ring, taking care not to twist the chain." if of.one.in_round else ".")
    if pattern.first_stitch is not None and not of.one.in_round:
        cover = _cover(pattern.first_stitch - 1, pattern.skip_cover)
        yield f"The first stitch goes into the {ordinal(pattern.first_stitch)} ch from the hook{cover}."
    multiple, plus = pattern.multiple or 1, (pattern.plus or 0) if not of.one.in_round else 0
    repeats = ""
    if multiple > 1:
        repeats = f": {of.all(lambda piece: (piece.foundation - plus) // multiple)} repeats of {multiple}"
        repeats += f" and {plus} more" if plus else ""
    shaped = any(1 in shaping.at for piece in of.pieces for shaping in piece.shapings)
    yield (
        f"{of.all(lambda piece: piece.foundation)} sts in row 1{', before it is shaped' if shaped else ''}{repeats}."
        if not of.one.in_round
        else (f"{of.all(lambda piece: piece.foundation)} sts in the ring{repeats}.")
    )


def _going_on(of: PieceInSizes) -> Iterator[str]:
    """Where a body or a sleeve goes on from the last round of a yoke."""
    ons = [piece.on for piece in of.pieces if piece.on is not None]
    there, added = alike(on.stitches for on in ons), alike(on.added for on in ons)
    if ons[0].edge == "end":
        yield f"Continue over all {there} sts; the round that divides the {ons[0].piece} is round 1."
    elif any(on.added for on in ons):
        left = alike(on.stitches - on.added for on in ons)
        yield (
            f"Join the yarn in the middle of an underarm: {added} sts along its chains and the {left} sts left for the sleeve "
            f"are {there} sts{_first(of)}."
        )
    else:
        yield f"Join the yarn under the arm, at the {there} sts left for the sleeve{_first(of)}."
    if any(piece.on is not None and piece.on.stitches != piece.foundation for piece in of.pieces):
        begin = of.all(lambda piece: piece.foundation)
        yield f"In the first {of.row} after that increase or decrease, evenly spread, to {begin} sts."


def _first(of: PieceInSizes) -> str:
    """That the stitches gone on over are the first round, where no other stands between."""
    same = all(piece.on is not None and piece.on.stitches == piece.foundation for piece in of.pieces)
    return f"; they are {of.row} 1" if same else ""


def _cover(skipped: int, skip_cover: int | None) -> str:
    if skip_cover is None or not skipped:
        return ""
    if not skip_cover:
        return f"; the skipped ch {'does' if skipped == 1 else 'do'} not count as a st"
    counts = "counts" if skipped == 1 else "count"
    return f"; the skipped ch {counts} as a st" + (f" and {skip_cover - 1} ch" if skip_cover > 1 else "")


def spread_lines(
    doing: str, counted_from: str, of: PieceInSizes, shapings: Sequence[Shaping | None]
) -> Iterator[str | PatternTable]:
    """Shaping spread over rows: one sentence where all sizes share it, else a table with a row a size."""
    texts = [
        NONE if shaping is None else rows_text([row - shaping.first + 1 for row in shaping.at], shaping.rows)
        for shaping in shapings
    ]
    if of.row == "round":
        texts = [text.replace("row", "round") for text in texts]
    behind = f" ({counted_from})" if counted_from else ""
    if len(set(texts)) == 1:
        yield f"{doing}{behind} {texts[0]}."
        return
    yield f"{doing}{behind} as follows:"
    times = [str(len(shaping.at)) if shaping else "0" for shaping in shapings]
    yield PatternTable(("size", "times", f"{of.row}s"), tuple(zip(of.names, times, texts, strict=True)))


def shaping_of(piece: ShapedPiece, place: str) -> Shaping | None:
    """What is shaped at that place of a piece; None if nothing is."""
    return next((shaping for shaping in piece.shapings if shaping.place == place and shaping.at), None)
