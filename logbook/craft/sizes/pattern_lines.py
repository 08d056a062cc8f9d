"""The lines of a written pattern that come out of a size run: materials, gauge, finished measurements, chains, rows, marks,
the written rows of the stitch pattern with their counts.

All sizes stand in one line, smallest first and the others in brackets; a number that all sizes share stands once. Lengths are
printed in both cm (to 0.5) and inches (to 1/4).
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from logbook.craft.gauges.gauge_line import gauge_line
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.rows.in_sizes import rows_in_sizes
from logbook.craft.sizes.run_numbers import NUMBERS
from logbook.craft.sizes.size_run import SizeNumbers
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import yarn_words
from logbook.craft.words.counting import counted, ordinal, plural
from logbook.craft.words.hooks import hook_wanted, show_hook
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import show_number, show_percent
from logbook.craft.words.printed_sizes import alike, body_lengths, printed_length, sized
from logbook.craft.words.terms import Terms, gauge_word


@dataclass(frozen=True, slots=True)
class PatternPart:
    """One part of the text: its heading and its lines."""

    heading: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenSizes:
    """What is written down: the sizes worked out of ``plan`` from ``swatch``, whose gauges are ``gauges``."""

    plan: PiecePlan
    sizes: Sequence[SizeNumbers]
    swatch: Swatch
    gauges: PieceGauges
    terms: Terms = Terms.US

    @property
    def pieces(self) -> tuple[PieceNumbers, ...]:
        """The piece of each size."""
        return tuple(size.piece for size in self.sizes)

    def every(self, name: str) -> list[Any]:
        """A number of ``NUMBERS`` in every size; empty unless all have it."""
        found = [NUMBERS[name].of(size) for size in self.sizes]
        return [] if None in found else found

    @property
    def assumptions(self) -> Assumptions:
        """Those the sizes were worked out with."""
        return self.gauges.assumptions


def pattern_parts(written: WrittenSizes) -> tuple[PatternPart, ...]:
    """The parts, in the order a pattern has them; a part with nothing to say is left out."""
    parts = (
        PatternPart("Sizes", tuple(_size_lines(written))),
        PatternPart("Materials", tuple(_materials(written))),
        PatternPart(gauge_word(written.terms).capitalize(), (_gauge(written),)),
        PatternPart(f"Finished measurements, {_state(written)}", tuple(_measurements(written))),
        PatternPart(_heading(written.plan), tuple(_work(written))),
        PatternPart(_rows_heading(written), tuple(_written_rows(written))),
        PatternPart("While it is on the hook", tuple(_before_washing(written))),
    )
    return tuple(part for part in parts if part.lines)


def pattern_text(written: WrittenSizes) -> str:
    """All parts as plain text, the name of the piece first."""
    parts = ["\n".join((part.heading, *part.lines)) for part in pattern_parts(written)]
    return "\n\n".join([written.plan.name, *parts] if written.plan.name else parts) + "\n"


def _size_lines(written: WrittenSizes) -> Iterator[str]:
    yield sized(size.name for size in written.sizes)
    yield f"To fit a body of {body_lengths(size.body_mm for size in written.sizes)}"


def _materials(written: WrittenSizes) -> Iterator[str]:
    swatch, yarn = written.swatch, written.swatch.yarn
    if yarn is not None:
        about = yarn_words(yarn)
        yield (f"{yarn.name} ({about})" if about else yarn.name) + _yarn_wanted(written)
    if swatch.hook_mm is not None:
        yield hook_wanted(swatch.hook_mm, written.terms)
    if swatch.foundation_hook_mm is not None:
        yield f"{show_hook(swatch.foundation_hook_mm)} hook for the foundation chain"


def _yarn_wanted(written: WrittenSizes) -> str:
    """The reserve is in what is to be bought: balls where the ball is known, else grams."""
    needs = [piece.yarn for piece in written.pieces if piece.yarn is not None]
    if len(needs) < len(written.pieces):
        return ""
    held = "" if (written.swatch.strands or 1) == 1 else f", {written.swatch.strands} strands held together"
    reserve = written.assumptions.reserve
    in_reserve = f", with {show_percent(reserve)} in reserve" if reserve else ""
    balls = [need.balls for need in needs if need.balls is not None]
    if len(balls) == len(needs):
        return f": {alike(balls)} {'ball' if set(balls) == {1} else 'balls'}{in_reserve}{held}"
    return f": {alike(round(need.grams * (1 + reserve)) for need in needs)} g{in_reserve}{held}"


def _gauge(written: WrittenSizes) -> str:
    """From the state that the numbers were worked out of: as finished, or as worked where washing is borrowed or unknown."""
    condition = written.gauges.condition
    if not written.swatch.readings_of(condition, Direction.STITCHES):
        condition = Condition.WORKED
    line = gauge_line(written.swatch, condition, written.assumptions, written.terms)
    return line.split(": ", 1)[1]


def _state(written: WrittenSizes) -> str:
    words = {Condition.WORKED: "before washing", Condition.PINNED: "washed and pinned out"}
    return words.get(written.gauges.stitches.condition, "washed and laid flat")


def _measurements(written: WrittenSizes) -> Iterator[str]:
    for words, name in (
        ("All round", "all round"), ("Width of a panel", "width"), ("Length", "length"), ("Armhole depth", "armhole"),
        ("Neck width", "neck"), ("Side slit", "slit"),
    ):  # fmt: skip
        lengths = [] if name == "width" and written.plan.in_round else written.every(name)
        if lengths:
            yield f"{words}: {_lengths(lengths)}"


def _heading(plan: PiecePlan) -> str:
    if plan.in_round:
        return "Body, worked in the round"
    how = "worked sideways" if plan.sideways else "worked from the bottom up"
    return f"Panel, {how}" if plan.panels == 1 else f"Panels, {plan.panels} alike, {how}"


def _work(written: WrittenSizes) -> Iterator[str]:
    yield from _chain_lines(written)
    yield from _row_lines(written)
    yield from _mark_lines(written)


def _chain_lines(written: WrittenSizes) -> Iterator[str]:
    plan, pieces, pattern = written.plan, written.pieces, written.gauges.pattern
    if plan.foundation_stitches:
        yield f"Make {alike(piece.chain for piece in pieces)} foundation stitches."
    else:
        yield f"Ch {alike(piece.chain for piece in pieces)}."
    if plan.in_round and not plan.joined_after_row_1:
        yield "Join into a ring, taking care not to twist the chain."
    edged = any(piece.edge_stitches for piece in pieces)
    if pattern.first_stitch is not None and not edged and not plan.foundation_stitches and not plan.in_round:
        cover = _cover(pattern.first_stitch - 1, pattern.skip_cover, written.terms)
        yield f"The first stitch goes into the {ordinal(pattern.first_stitch)} chain from the hook{cover}."
    stitches = f"{alike(piece.stitches for piece in pieces)} base stitches"
    multiple = pattern.multiple or 1
    if multiple > 1:
        repeats = alike(show_number(piece.repeats) for piece in pieces)
        plus = plan.round_plus if plan.in_round else pattern.plus or 0
        stitches += f": {repeats} repeats of {multiple}" + (f" and {plus} more" if plus else "")
        if edged:
            edges = {piece.edge_stitches for piece in pieces}
            what = "stitch" if edges == {1} else "stitches"
            stitches += f", and {alike(piece.edge_stitches for piece in pieces)} plain edge {what} at each side"
    yield f"{stitches}."


def _cover(skipped: int, skip_cover: int | None, terms: Terms) -> str:
    if skip_cover is None or not skipped:
        return ""
    word = "missed" if terms is Terms.UK else "skipped"
    what, count, do = ("chain", "counts", "does") if skipped == 1 else ("chains", "count", "do")
    if not skip_cover:
        return f"; the {word} {what} {do} not count as a stitch"
    return f"; the {word} {what} {count} as a stitch" + (f" and {skip_cover - 1} ch" if skip_cover > 1 else "")


def _row_lines(written: WrittenSizes) -> Iterator[str]:
    pieces, first = written.pieces, written.pieces[0]
    rows = written.every("rows")
    if not rows:
        return
    one = "round" if written.plan.in_round else "row"
    unit = plural(one)
    line = f"Work {alike(rows)} {unit}"
    in_group = written.gauges.pattern.rows_in_repeat or 1
    if in_group > 1 and not written.plan.any_row:
        steps = [counted(first.set_up, f"set-up {one}")] if first.set_up else []
        groups = [piece.groups for piece in pieces if piece.groups is not None]
        steps.append(f"the {in_group} {unit} of the repeat {alike(groups)} times")
        if first.closing:
            steps.append(counted(first.closing, f"closing {one}"))
        line += f": {', '.join(steps)}"
    yield f"{line}."
    sides = {piece.last_row_is_right_side for piece in pieces}
    if len(sides) == 1 and not written.plan.in_round:
        yield f"The last row is a {'right' if sides == {True} else 'wrong'}-side row."


def _mark_lines(written: WrittenSizes) -> Iterator[str]:
    plan = written.plan
    up, across = ("stitch", "row") if plan.sideways else ("row", "stitch")
    if plan.in_round and up == "row":
        up = "round"
    for name in ("slit", "armhole"):
        places = written.every(f"{name} at")
        if places:
            place = "after stitch" if plan.sideways else f"at the end of {up}"
            yield f"Place a marker {place} {alike(places)} for the {'side slit' if name == 'slit' else name}."
    shoulders, necks = written.every("shoulder units"), written.every("neck units")
    if shoulders:
        units = "rows" if across == "row" else "stitches"
        yield (f"Shoulders of {alike(shoulders)} {units} on each side; the middle {alike(necks)} are the neck.")


def _rows_heading(written: WrittenSizes) -> str:
    pattern = written.gauges.pattern
    foreign = f", in {pattern.terms} terms" if pattern.terms not in ("", written.terms) else ""
    return f"Rows of {pattern.name}{foreign}"


def rows_are_of(plan: PiecePlan, pattern: StitchPattern) -> bool:
    """Whether the pattern's written rows help with this piece: rounds for a flat piece, or rows for a round one, would not, nor
    a row 1 worked into chains where there are foundation stitches."""
    in_rounds = re.search(r"\b(?:rnd|round) *1\b", pattern.rows_text, re.IGNORECASE) is not None
    return not plan.foundation_stitches and in_rounds == plan.in_round


def _written_rows(written: WrittenSizes) -> Iterator[str]:
    """As the pattern has them."""
    plan, pattern = written.plan, written.gauges.pattern
    if not rows_are_of(plan, pattern):
        return
    base = [piece.stitches - 2 * piece.edge_stitches for piece in written.pieces]
    rows = rows_in_sizes(pattern.rows_text, Terms(pattern.terms) if pattern.terms else None, base)
    if rows and any(piece.edge_stitches for piece in written.pieces):
        yield "Work the plain edge stitches as well; they are not in these counts."
    yield from rows


def _before_washing(written: WrittenSizes) -> Iterator[str]:
    for words in ("Width", "Length"):
        before = written.every(f"{words.lower()} before washing")
        if before and _state(written) != "before washing":
            yield f"{words} before washing: {_lengths(before)}"


def _lengths(lengths_mm: Iterable[float]) -> str:
    """``42.5 (46.5, 50.5) cm / 16 3/4 (18 1/4, 20) in``."""
    every = tuple(lengths_mm)
    return " / ".join(f"{alike(printed_length(mm, units) for mm in every)} {units.value}" for units in Units)
