"""The whole pattern of a garment, in the order a reader wants it; each part only if there is something to say."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from logbook.craft.garments.all_round import all_round
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import EDGING, ROUND_YOKE, YOKES
from logbook.craft.rows.in_terms import in_terms
from logbook.craft.sizes.body_chart import is_childs_size
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import listed
from logbook.craft.words.numbers import show_number
from logbook.craft.words.printed_sizes import body_lengths, sized
from logbook.craft.words.terms import Terms, gauge_word, translated
from logbook.tasks.fibre_words import fibre_cautions
from logbook.tasks.note_words import CHILDREN_CAUTION
from logbook.tasks.written.abbreviations import abbreviations
from logbook.tasks.written.making_up import does_not_fit, making_up
from logbook.tasks.written.materials import gauge_lines, materials, washing_words
from logbook.tasks.written.parts import Part, PatternTable
from logbook.tasks.written.piece import written_piece
from logbook.tasks.written.practice import practice_piece, proven_rows
from logbook.tasks.written.row_repeat import repeat_line
from logbook.tasks.written.written_garment import WrittenGarment

_EVEN = re.compile(r"\b([Ww]ork|rows?|rounds?|others) even\b")


def whole_pattern(written: WrittenGarment) -> tuple[Part, ...]:
    """All parts. The abbreviations are those that the other parts use."""
    before = (_sizes(written), Part("Finished measurements", tuple(_measurements(written))), materials(written))
    gauge = Part(gauge_word(written.terms).capitalize(), tuple(gauge_lines(written)))
    behind = (
        Part("Notes", tuple(_notes(written))),
        *_stitch_patterns(written),
        *(written_piece(piece) for piece in written.pieces),
        Part(
            "Making up",
            tuple(f"{number}. {step}" for number, step in enumerate(making_up(written.sizes, washing_words(written)), 1)),
        ),
        Part("Care and cautions", tuple(_cautions(written))),
    )
    if written.terms is Terms.UK:
        behind = tuple(_straight(part) for part in behind)
    used = "\n".join(_words((*before, gauge, *behind)))
    words = Part("Abbreviations", (_terms_line(written.terms), *abbreviations(used, written.terms)))
    return tuple(part for part in (*before, gauge, words, *behind) if part.blocks)


def short_version(written: WrittenGarment) -> tuple[str, ...]:
    """For the box under a film: yarn, hook, gauge, the chain of each piece, one line each."""
    lines = [block for block in materials(written).blocks if isinstance(block, str)]
    lines += list(gauge_lines(written))[:-1]
    for piece in written.pieces:
        if piece.one.chain is not None:
            lines.append(f"{piece.one.name}: ch {piece.all(lambda one: one.chain)}")
    patterns = list(dict.fromkeys(swatch.pattern for swatch in written.swatches.values() if swatch.pattern is not None))
    practice = [_in_own_terms(practice_piece(pattern, len(patterns) > 1), pattern, written.terms) for pattern in patterns]
    return (f"Sizes {sized(written.names)}", *lines, *dict.fromkeys(filter(None, practice)))


def _in_own_terms(line: str, pattern: StitchPattern, terms: Terms) -> str:
    return in_terms(line, Terms(pattern.terms or Terms.US), terms).text


def _sizes(written: WrittenGarment) -> Part:
    lines = [f"NOT FINISHED: {said}" for said in does_not_fit(written.sizes)]
    lines += [written.plan.says] if written.plan.says.strip() else []
    if len(written.sizes) > 1:
        lines.append(f"Sizes: {sized(written.names)}. The other sizes are in brackets; a single number is for all sizes.")
    for measure in ("bust", "waist", "hip", "head"):
        body = [size.size.body[measure] for size in written.sizes if measure in size.size.body]
        if len(body) == len(written.sizes):
            lines.append(f"To fit {'the ' if measure == 'head' else ''}{measure}: {body_lengths(body)}.")
    if written.plan.ease.strip():
        lines.append(f"Intended ease: {written.plan.ease}.")
    lines += _finished_bust(written)
    return Part("", tuple(lines))


def _finished_bust(written: WrittenGarment) -> Iterator[str]:
    """All round, where something goes round the body."""
    found = [all_round(written.plan, size) for size in written.sizes]
    around = [one for one in found if one is not None]
    if around and len(around) == len(found):
        closed = ", with the band closed" if any(one.band_mm for one in around) else ""
        yield f"Finished bust{closed}: {written.lengths(one.mm for one in around)}."


def _measurements(written: WrittenGarment) -> Iterator[PatternTable]:
    rows = []
    for piece in written.pieces:
        one = piece.one
        if one.planned.shape == EDGING:
            continue
        around = "all round" if one.in_round else "width"
        first, last = (written.lengths(p.widths[place] for p in piece.pieces) for place in (0, -1))
        if one.planned.shape in YOKES:
            rows += [(f"{one.name}, neck round", first)]
            rows += [(f"{one.name}, body round", written.lengths(p.edges["end"].mm for p in piece.pieces))]
            rows += [(f"{one.name}, upper arm round", written.lengths(p.edges["armhole"].mm for p in piece.pieces))]
        elif one.widths[0] == one.widths[-1] or one.left or one.foundation in (0,):
            widest = written.lengths(max(p.widths) for p in piece.pieces)
            rows.append((f"{one.name}, {around}", widest))
        else:
            rows += [(f"{one.name}, {around} at the start", first), (f"{one.name}, {around} at the end", last)]
        rows.append((f"{one.name}, length", written.lengths(p.rows * p.row_mm for p in piece.pieces)))
        if "armhole" in one.edges and one.edges["armhole"].measure == "armhole":
            rows.append((f"{one.name}, armhole depth", written.lengths(p.edges["armhole"].mm for p in piece.pieces)))
    yield PatternTable(("", sized(written.names)), tuple(rows))


def _notes(written: WrittenGarment) -> Iterator[str]:
    made = [piece.one for piece in written.pieces if piece.one.planned.shape != EDGING]
    begun, on = [piece for piece in made if piece.on is None], [piece for piece in made if piece.on is not None]
    count = sum(piece.planned.alike for piece in begun)
    built = f"Worked in {count} pieces: {_names(begun)}." if count > 1 else f"Worked in one piece: {_names(begun)}."
    if on:
        yield f"{built[:-1]}, with {_names(on)} worked on from it."
    else:
        yield built
    flat = [piece for piece in made if not piece.in_round]
    if flat:
        yield "Row 1 is a right-side row. Turn after every row."
    if any(piece.in_round for piece in made):
        yield (
            "Begin each round with the chains that begin a row, join it with a slip stitch and do not turn, "
            "unless the stitch pattern says otherwise."
        )
    yield from _shaping_words(written)


def _shaping_words(written: WrittenGarment) -> Iterator[str]:
    """How stitches are gained and lost, where they are."""
    by = {shaping.by > 0 for piece in written.pieces for one in piece.pieces for shaping in one.shapings if shaping.at}
    if any(piece.one.planned.shape == ROUND_YOKE for piece in written.pieces):
        by.add(True)
    ways = [words for more, words in ((True, "To increase, work 2 sts into one"), (False, "work 2 sts together")) if more in by]
    if ways:
        said = "; to decrease, ".join(ways) if len(ways) > 1 else ways[0]
        yield f"{said if True in by else f'To decrease, {said}'}."


def _names(pieces: Sequence[ShapedPiece]) -> str:
    """``back and sleeve (× 2)``."""
    return listed([piece.name + (f" (× {piece.planned.alike})" if piece.planned.alike > 1 else "") for piece in pieces])


def _stitch_patterns(written: WrittenGarment) -> Iterator[Part]:
    seen = set()
    for swatch in written.swatches.values():
        pattern = swatch.pattern
        if pattern is None or pattern.name in seen or not pattern.rows_text.strip():
            continue
        seen.add(pattern.name)
        source = Terms(pattern.terms) if pattern.terms else Terms.US
        said = in_terms(pattern.rows_text, source, written.terms)
        lines = list(_chain_words(pattern))
        if said.without:
            lines.append(f"These words have no {written.terms} equivalent and are left as they are: {listed(said.without)}.")
        lines += [line for line in said.text.splitlines() if line.strip()]
        lines += filter(None, [repeat_line(pattern)])
        lines += [] if proven_rows(pattern.rows_text, pattern.terms) else ["These rows have not passed the check yet."]
        yield Part(f"Stitch pattern: {translated(pattern.name, source, written.terms)}", tuple(lines), rows=pattern)


def _chain_words(pattern: StitchPattern) -> Iterator[str]:
    multiple, plus, extra = pattern.multiple or 1, pattern.plus or 0, pattern.extra()
    if multiple > 1:
        more = f" plus {plus}" if plus else ""
        behind = f", and {show_number(extra)} more ch to begin" if extra else ""
        yield f"Multiple of {multiple} sts{more}{behind}."


def _cautions(written: WrittenGarment) -> Iterator[str]:
    fibres = " ".join(cloth.gauges.yarn.fibre for cloth in written.cloths.values())
    yield f"Wash as the swatch was washed{washing_words(written)}, and follow the ball band."
    yield from fibre_cautions(fibres)
    if written.plan.sizes.chart == "children" or is_childs_size(written.plan.name) or any(map(is_childs_size, written.names)):
        yield CHILDREN_CAUTION


def _straight(part: Part) -> Part:
    """In UK terms one works straight, not even, and misses stitches."""
    return replace(part, blocks=tuple(_uk(block) for block in part.blocks))


def _uk(block: str | PatternTable) -> str | PatternTable:
    if isinstance(block, PatternTable):
        return replace(block, rows=tuple(tuple(_EVEN.sub(r"\1 straight", cell) for cell in row) for row in block.rows))
    return _EVEN.sub(r"\1 straight", block).replace("the skipped ch ", "the missed ch ")


def _terms_line(terms: Terms) -> str:
    return f"This pattern uses {terms} terms."


def _words(parts: Sequence[Part]) -> Iterator[str]:
    for part in parts:
        for block in part.blocks:
            if isinstance(block, str):
                yield block
            else:
                yield from (" ".join(row) for row in (block.headings, *block.rows))
