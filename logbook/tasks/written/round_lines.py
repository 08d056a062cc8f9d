"""The lines of what begins at a neck or a point and is worked in rounds: yokes and crowns."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.words.counting import counted
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import NONE, PieceInSizes, begin, shaping_of, spread_lines


def raglan_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a raglan yoke."""
    yield from begin(of)
    part = {name: of.all(lambda piece, name=name: piece.parts[name]) for name in of.one.parts}  # type: ignore[misc]
    lines = of.one.parts["lines"]
    line = f", with a raglan line of {counted(lines, 'st')} before each of the four" if lines else ""
    yield (
        f"Mark, from the beginning of the round: {part['back']} sts for the back, {part['sleeve']} for a sleeve, {part['front']} "
        f"for the front, {part['sleeve']} for the other sleeve{line}."
    )
    for place, what in (("body", "back and front"), ("sleeves", "each sleeve")):
        yield from spread_lines(
            f"Increase 1 st at both ends of {what} (4 sts in all)", "", of, [shaping_of(piece, place) for piece in of.pieces]
        )
    yield from _raglan_counts(of)
    yield f"{of.all(lambda piece: piece.rows)} rounds in all: {of.all(lambda piece: piece.counts[-1])} sts."
    with_lines = " and the raglan lines beside it" if lines else ""
    yield from _division(of, f"the back{with_lines}", f"the front{with_lines}")


def _division(of: PieceInSizes, back: str, front: str) -> Iterator[str]:
    """How body and sleeves part after the last round of a yoke."""
    part = {name: of.all(lambda piece, name=name: piece.parts[name]) for name in ("underarm", "body", "arm")}  # type: ignore[misc]
    left = of.all(lambda piece: piece.parts["arm"] - piece.parts["underarm"])
    under = f"ch {part['underarm']}, " if any(piece.parts["underarm"] for piece in of.pieces) else ""
    yield (
        f"Divide in the next round: work over {back}, leave the next {left} sts for a sleeve, {under}work over {front}, "
        f"leave the next {left} sts for the other sleeve, {under}join: {part['body']} sts for the body. "
        f"Each sleeve with its underarm has {part['arm']} sts."
    )


def _raglan_counts(of: PieceInSizes) -> Iterator[PatternTable]:
    """Back, front and each sleeve after every round that increases; a table for every size, as their rounds differ."""
    for name, piece in zip(of.names, of.pieces, strict=True):
        body, sleeves = (shaping_of(piece, place) for place in ("body", "sleeves"))
        rows = []
        for row in sorted({*(body.at if body else ()), *(sleeves.at if sleeves else ())}):
            in_body, in_sleeve = (sum(at <= row for at in shaping.at) if shaping else 0 for shaping in (body, sleeves))
            counts = (
                piece.parts["back"] + 2 * in_body,
                piece.parts["front"] + 2 * in_body,
                piece.parts["sleeve"] + 2 * in_sleeve,
                piece.counts[row - 1],
            )
            back, front, sleeve, every = (f"{count} sts" for count in counts)
            rows.append((f"round {row}", f"back {back}", f"front {front}", f"each sleeve {sleeve}", f"{every} in all"))
        yield PatternTable((f"Size {name}" if len(of.names) > 1 else "", "", "", "", ""), tuple(rows))


def round_yoke_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a yoke with rounds of increases."""
    yield from begin(of)
    yield "Increase evenly spread in these rounds, and work the others even:"
    levels = [
        [level for level in piece.levels if level.row > 0 and level.stitches != _before(piece, level.row)] for piece in of.pieces
    ]
    most = max(len(own) for own in levels)
    rows = []
    for number in range(most):
        here = [own[number] if number < len(own) else None for own in levels]
        rounds = alike(NONE if level is None else level.row for level in here)
        gains = alike(
            NONE if level is None else level.stitches - _before(piece, level.row)
            for piece, level in zip(of.pieces, here, strict=True)
        )
        stitches = alike(NONE if level is None else level.stitches for level in here)
        rows.append((f"round {rounds}", f"increase {gains} sts", f"{stitches} sts in all"))
    yield PatternTable(("in round", "increase", "after it"), tuple(rows))
    yield f"{of.all(lambda piece: piece.rows)} rounds in all."
    half = of.all(lambda piece: piece.parts["back"])
    yield from _division(of, f"{half} sts for the back", f"{half} sts for the front")


def _before(piece: ShapedPiece, row: int) -> int:
    return piece.counts[row - 2] if row > 1 else piece.foundation


def crown_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a crown with its tube."""
    each = of.all(lambda piece: piece.parts["each_round"])
    rounds = [piece.parts["crown_rounds"] for piece in of.pieces]
    yield f"Round 1: {each} sts in a ring."
    yield f"Round 2: 2 sts in each st. Round 3: (1 st in next st, 2 sts in next st) {each} times."
    yield f"Continue like this to round {alike(rounds)}, with one more st before each increase: {each} more sts in every round."
    most = max(rounds)
    yield PatternTable(
        ("round", "sts"),
        tuple((f"round {row}", f"{stitches_until(of, row, rounds)} sts") for row in range(1, most + 1)),
    )
    exact = [shaping_of(piece, "exact") for piece in of.pieces]
    if any(exact):
        doing = _evenly([shaping.by if shaping else 0 for shaping in exact])
        yield f"Next round: {doing}{of.all(lambda piece: piece.counts[-1])} sts."
    yield f"Work {of.all(lambda piece: piece.parts['tube_rounds'])} rounds even: {of.all(lambda piece: piece.counts[-1])} sts."
    yield f"{of.all(lambda piece: piece.rows)} rounds in all. Fasten off."


def _evenly(gains: Sequence[int]) -> str:
    """``increase 2 (0, 1) sts, evenly spread: ``; where some sizes lose stitches, and others gain them, to how many."""
    if min(gains) < 0 < max(gains):
        return "increase or decrease evenly to "
    doing = "decrease" if min(gains) < 0 else "increase"
    return f"{doing} {alike(abs(gain) for gain in gains)} sts, evenly spread: "


def stitches_until(of: PieceInSizes, row: int, last: Sequence[int]) -> str:
    """The stitches of a row in all sizes; a dash for those that have so many rows not."""
    return alike(piece.counts[row - 1] if row <= own else NONE for piece, own in zip(of.pieces, last, strict=True))
