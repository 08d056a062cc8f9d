"""One piece of a garment as it is written down, in all sizes at once: chain, rows, shaping, counts after every change."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.garments.shaped_piece import PickedUp, ShapedPiece, Shaping
from logbook.craft.garments.shapes import (
    CROWN,
    DOWN,
    EDGING,
    HALF_FRONT,
    RAGLAN,
    ROUND,
    ROUND_YOKE,
    SIDEWAYS,
    TAPERED,
    TRIANGLE,
    YOKES,
)
from logbook.craft.pieces.shaping import rows_text
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted, listed, ordinal
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import Part, PatternTable

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
        return "round" if in_round(self.one) else "row"

    def all(self, of: Callable[[ShapedPiece], object]) -> str:
        """A number of every size: ``62 (68, 80)``, once where all share it."""
        return alike(of(piece) for piece in self.pieces)


def in_round(piece: ShapedPiece) -> bool:
    """Whether it is worked in rounds."""
    return piece.wish.worked == ROUND or piece.wish.shape in (*YOKES, CROWN)


def written_piece(of: PieceInSizes) -> Part:
    """The part of the pattern for a piece."""
    lines = {
        TAPERED: _tapered,
        RAGLAN: _raglan,
        ROUND_YOKE: _round_yoke,
        CROWN: _crown,
        TRIANGLE: _triangle,
        EDGING: _edging,
    }.get(of.one.wish.shape, _panel)
    said = [of.one.wish.says] if of.one.wish.says.strip() else []
    said += [f"Worked in {of.stitch}."] if of.stitch else []
    return Part(heading(of.one), (*said, *lines(of)), of.one.name)


def heading(piece: ShapedPiece) -> str:
    """``Sleeve (make 2), worked from the bottom up``."""
    wish = piece.wish
    name = wish.name[:1].upper() + wish.name[1:]
    if wish.shape == HALF_FRONT and wish.alike == 2:
        name += " (make 2, the second mirrored)"
    elif wish.alike > 1:
        name += f" (make {wish.alike})"
    if wish.shape == EDGING:
        return name
    if piece.on is not None:
        return f"{name}, worked on from the {piece.on.piece}"
    if in_round(piece):
        return f"{name}, worked in the round" + (" from the top" if wish.shape in (*YOKES, CROWN) else "")
    if wish.shape == TRIANGLE:
        return f"{name}, worked from the tip"
    how = {DOWN: "from the top down", SIDEWAYS: "sideways"}.get(wish.worked, "from the bottom up")
    return f"{name}, worked {how}"


def _start(of: PieceInSizes) -> Iterator[str]:
    """Chain, stitches and where the first stitch goes."""
    chains, pattern = [piece.chain for piece in of.pieces], of.pattern
    if of.one.on is not None:
        yield from _going_on(of)
    if None in chains:
        return
    yield f"Ch {alike(chains)}" + (" and join into a ring without a twist." if in_round(of.one) else ".")
    if pattern.first_stitch is not None and not in_round(of.one):
        yield f"The first stitch goes into the {ordinal(pattern.first_stitch)} ch from the hook{_cover(pattern.skip_cover)}."
    multiple, plus = pattern.multiple or 1, (pattern.plus or 0) if not in_round(of.one) else 0
    repeats = ""
    if multiple > 1:
        repeats = f": {of.all(lambda piece: (piece.foundation - plus) // multiple)} repeats of {multiple}"
        repeats += f" and {plus} more" if plus else ""
    yield (
        f"{of.all(lambda piece: piece.foundation)} sts in row 1{repeats}."
        if not in_round(of.one)
        else (f"{of.all(lambda piece: piece.foundation)} sts in the ring{repeats}.")
    )


def _going_on(of: PieceInSizes) -> Iterator[str]:
    """Where a body or a sleeve goes on from the last round of a yoke."""
    ons = [piece.on for piece in of.pieces if piece.on is not None]
    there, added = alike(on.stitches for on in ons), alike(on.added for on in ons)
    if ons[0].edge == "end":
        yield f"Go on over the {there} sts on the hook; the round that divides the {ons[0].piece} is round 1."
    elif any(on.added for on in ons):
        left = alike(on.stitches - on.added for on in ons)
        yield (
            f"Join the yarn in the middle of an underarm: {added} sts along its chains and the {left} sts left of the sleeve "
            f"are {there} sts."
        )
    else:
        yield f"Join the yarn under the arm, at the {there} sts left of the sleeve."
    if any(piece.on is not None and piece.on.stitches != piece.foundation for piece in of.pieces):
        begin = of.all(lambda piece: piece.foundation)
        yield f"In the first {of.row} after that increase or decrease, evenly spread, to {begin} sts."


def _cover(skip_cover: int | None) -> str:
    if not skip_cover:
        return "" if skip_cover is None else "; the skipped ch do not count"
    return "; the skipped ch count as a st" + (f" and {skip_cover - 1} ch" if skip_cover > 1 else "")


def _panel(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from _start(of)
    shaped = any(piece.left for piece in of.pieces)
    if not shaped:
        yield f"Work {of.all(lambda piece: piece.rows)} {of.row}s."
    yield from _marks(of)
    yield from _insets(of)
    yield from _neck(of)
    if shaped:
        yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all."
    yield "Fasten off."


def _marks(of: PieceInSizes) -> Iterator[str]:
    """Armholes and slits that are only marked."""
    one = of.one
    if one.wish.worked == SIDEWAYS or "side" not in one.edges:
        return
    sides = one.edges["side"].count
    if "armhole" in one.edges and not any(place == "armhole" for place, _, _ in one.left):
        place = of.all(lambda piece: piece.rows - piece.edges["armhole"].count)
        edge = "the side edge" if one.wish.shape == HALF_FRONT else "both edges"
        if one.wish.worked == DOWN:
            place = of.all(lambda piece: piece.edges["armhole"].count)
        yield f"Place a marker at {edge} at the end of row {place} for the armhole."
    slits = [_slit(piece) for piece in of.pieces]
    if sides and any(slits):
        yield f"Place a marker at the end of row {alike(slits)} for the side slit; below it the sides stay open."


def _slit(piece: ShapedPiece) -> int:
    deep = piece.edges["armhole"].count if "armhole" in piece.edges else 0
    return piece.rows - deep - piece.edges["side"].count


def _insets(of: PieceInSizes) -> Iterator[str]:
    left = [next(((row, count) for place, row, count in piece.left if place == "armhole"), None) for piece in of.pieces]
    found = [place for place in left if place is not None]
    if len(found) < len(left) or not found:
        return
    edges = 1 if of.one.wish.shape == HALF_FRONT else 2
    where = "at the side edge" if edges == 1 else "at each edge"
    rows, counts = alike(row for row, _ in found), alike(count for _, count in found)
    after = alike(piece.foundation - edges * count for piece, (_, count) in zip(of.pieces, found, strict=True))
    yield f"Row {rows}: leave {counts} sts unworked {where} for the armhole: {after} sts."


def _neck(of: PieceInSizes) -> Iterator[str | PatternTable]:
    neck = [next(((row, count) for place, row, count in piece.left if place == "neck"), None) for piece in of.pieces]
    found = [place for place in neck if place is not None]
    if not found or len(found) < len(neck):
        if "shoulder" in of.one.edges and of.one.wish.worked != SIDEWAYS:
            shoulder = of.all(lambda piece: piece.edges["shoulder"].count)
            between = of.all(lambda piece: piece.edges["neck"].count)
            yield f"Shoulders of {shoulder} sts on each side; the {between} sts between are the neck."
        return
    half = of.one.wish.shape == HALF_FRONT
    yield f"Work even to the end of row {alike(row - 1 for row, _ in found)}."
    each = alike((piece.counts[row - 1]) // (1 if half else 2) for piece, (row, _) in zip(of.pieces, found, strict=True))
    rows, gone = alike(row for row, _ in found), alike(count for _, count in found)
    if half:
        what = (
            f"leave {gone} sts unworked at the front edge for the neck" if any(count for _, count in found) else "begin the neck"
        )
        yield f"Row {rows}: {what}: {each} sts."
    else:
        middle = (
            f"leave the middle {gone} sts unworked for the neck"
            if any(count for _, count in found)
            else "divide the work at the middle"
        )
        yield f"Row {rows}: {middle}; from here each side is worked by itself: {each} sts on each side."
    shoulders = of.all(lambda piece: piece.edges["shoulder"].count)
    yield from _neck_decreases(of)
    which = "the" if half else "each"
    yield f"Work even to the end of row {of.all(lambda piece: piece.rows)}: {shoulders} sts for {which} shoulder."


def _neck_decreases(of: PieceInSizes) -> Iterator[str | PatternTable]:
    shapings = [_shaping(piece, "neck") for piece in of.pieces]
    if not any(shapings):
        return
    times = [len(shaping.at) if shaping else 0 for shaping in shapings]
    straight = all(
        shaping is None or list(shaping.at) == list(range(shaping.first + 1, shaping.first + 1 + len(shaping.at)))
        for shaping in shapings
    )
    if straight:
        rows = "row" if set(times) == {1} else "rows"
        yield f"Decrease 1 st at the neck edge in each of the next {alike(times)} {rows}."
        return
    yield from _spread("Decrease 1 st at the neck edge", "counted from the first row of the neck", of, shapings)


def _spread(doing: str, counted_from: str, of: PieceInSizes, shapings: Sequence[Shaping | None]) -> Iterator[str | PatternTable]:
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


def _shaping(piece: ShapedPiece, place: str) -> Shaping | None:
    return next((shaping for shaping in piece.shapings if shaping.place == place and shaping.at), None)


def _tapered(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from _start(of)
    shapings = [_shaping(piece, "edges") for piece in of.pieces]
    known = [shaping for shaping in shapings if shaping]
    if known:
        word = "Increase" if known[0].by > 0 else "Decrease"
        mixed = len({shaping.by > 0 for shaping in known}) > 1
        where = "at each edge, a stitch in from the edge"
        if of.row == "round":
            where = "at the beginning and at the end of the round, a stitch in from where it begins"
        doing = f"{'Increase or decrease' if mixed else word} 1 st {where}"
        yield from _spread(doing, "", of, shapings)
        yield _counts_after(of, shapings)
        yield f"{of.all(lambda piece: piece.counts[-1])} sts after the last {'change' if mixed else word.lower()}."
    even = [piece.parts.get("even", 0) for piece in of.pieces]
    if any(even):
        yield f"Work {alike(even)} {of.row}s even."
    yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all. Fasten off."


def _counts_after(of: PieceInSizes, shapings: Sequence[Shaping | None]) -> PatternTable:
    """The row and the count of every shaping, in all sizes."""
    most = max(len(shaping.at) if shaping else 0 for shaping in shapings)
    rows = []
    for number in range(most):
        at = [shaping.at[number] if shaping and number < len(shaping.at) else None for shaping in shapings]
        sts = [NONE if row is None else piece.counts[row - 1] for piece, row in zip(of.pieces, at, strict=True)]
        place = alike(NONE if row is None else row for row in at)
        rows.append((ordinal(number + 1), f"{of.row} {place}", f"{alike(sts)} sts"))
    return PatternTable(("shaping", f"in {of.row}", "after it"), tuple(rows))


def _raglan(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from _start(of)
    part = {name: of.all(lambda piece, name=name: piece.parts[name]) for name in of.one.parts}  # type: ignore[misc]
    lines = of.one.parts["lines"]
    line = f", with a raglan line of {counted(lines, 'st')} before each of the four" if lines else ""
    yield (
        f"Mark, from the beginning of the round: {part['back']} sts for the back, {part['sleeve']} for a sleeve, {part['front']} "
        f"for the front, {part['sleeve']} for the other sleeve{line}."
    )
    for place, what in (("body", "back and front"), ("sleeves", "each sleeve")):
        yield from _spread(
            f"Increase 1 st at both ends of {what} (4 sts in all)", "", of, [_shaping(piece, place) for piece in of.pieces]
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
        body, sleeves = (_shaping(piece, place) for place in ("body", "sleeves"))
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
        yield PatternTable((f"size {name}" if len(of.names) > 1 else "", "", "", "", ""), tuple(rows))


def _round_yoke(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from _start(of)
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


def _crown(of: PieceInSizes) -> Iterator[str | PatternTable]:
    each = of.all(lambda piece: piece.parts["each_round"])
    rounds = [piece.parts["crown_rounds"] for piece in of.pieces]
    yield f"Round 1: {each} sts in a ring."
    yield f"Rounds 2 to {alike(rounds)}: increase {each} sts, evenly spread, in every round."
    most = max(rounds)
    yield PatternTable(
        ("round", "sts"),
        tuple((f"round {row}", f"{_until(of, row, rounds)} sts") for row in range(1, most + 1)),
    )
    exact = [_shaping(piece, "exact") for piece in of.pieces]
    if any(exact):
        gains = alike(shaping.by if shaping else 0 for shaping in exact)
        yield f"Next round: change by {gains} sts, evenly spread: {of.all(lambda piece: piece.counts[-1])} sts."
    yield f"Work {of.all(lambda piece: piece.parts['tube_rounds'])} rounds even: {of.all(lambda piece: piece.counts[-1])} sts."
    yield f"{of.all(lambda piece: piece.rows)} rounds in all. Fasten off."


def _until(of: PieceInSizes, row: int, last: Sequence[int]) -> str:
    """The stitches of a row in all sizes; a dash for those that have so many rows not."""
    return alike(piece.counts[row - 1] if row <= own else NONE for piece, own in zip(of.pieces, last, strict=True))


def _triangle(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from _start(of)
    more = of.one.shapings[0].by if of.one.shapings else 0
    yield f"Every row from row 2: {counted(more, 'st')} more than the row before."
    yield f"{of.all(lambda piece: piece.rows)} rows in all: {of.all(lambda piece: piece.counts[-1])} sts in the last. Fasten off."


def _edging(of: PieceInSizes) -> Iterator[str | PatternTable]:
    for number, edge in enumerate(of.one.picked):
        rates = {(piece.picked[number].rate, piece.picked[number].over) for piece in of.pieces}
        rate = f", {_rate(edge)}" if len({rate for rate, _ in rates}) == 1 else ""
        stitches = of.all(lambda piece, number=number: piece.picked[number].stitches)  # type: ignore[misc]
        yield f"Pick up {stitches} sts along the {edge.edge} of the {edge.piece}{rate}."
    yield f"Bring them to {of.all(lambda piece: piece.foundation)} sts in the first {of.row}."
    corners = of.one.parts.get("corners")
    if corners:
        by = of.one.parts["corner"]
        turn = (
            f"{by} sts more at each of the {corners} corners"
            if corners > 0
            else f"{by} sts fewer at each of the {-corners} corners"
        )
        yield f"In every round work {turn}."
        yield PatternTable(
            ("round", "sts"),
            tuple(
                (f"round {row}", f"{_until(of, row, [piece.rows for piece in of.pieces])} sts")
                for row in range(1, max(piece.rows for piece in of.pieces) + 1)
            ),
        )
    yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all. Fasten off."


def _rate(edge: PickedUp) -> str:
    """``3 sts to 4 rows``."""
    unit = "row" if edge.along is Direction.ROWS else "st"
    stitches, of = edge.rate
    return f"one in each {unit}" if stitches == of else f"{counted(stitches, 'st')} to {counted(of, unit)}"


def along_words(piece: ShapedPiece) -> str:
    """``the neck of the back and the neck of the front``."""
    return listed([f"the {edge.edge} of the {edge.piece}" for edge in piece.picked])
