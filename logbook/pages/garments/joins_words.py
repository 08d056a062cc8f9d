"""A garment's joins as lines: which edges, both lengths, whether they fit and how to sew them."""

from collections.abc import Sequence
from typing import NamedTuple

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.garment_drawing import join_letters
from logbook.craft.garments.joins import JoinVerdict
from logbook.craft.words.counting import listed
from logbook.craft.words.lengths import Units, show_length
from logbook.tasks.garment_words import rate_words

BETWEEN = " – "
"""Between the two edges of a join."""


class JoinLine(NamedTuple):
    """A join: its letter in the drawing, its words, both lengths, the verdict with the rate of sewing."""

    letter: str
    words: str
    one: str
    other: str
    verdict: str


def join_lines(garment: GarmentInSize, units: Units) -> list[JoinLine]:
    """A line for each join that could be worked out."""
    lines = []
    for letter, join in zip(join_letters(garment), garment.joins, strict=True):
        planned = join.planned
        bad = join.verdict is JoinVerdict.TROUBLE
        verdict = "✕ does not fit" if bad else f"{join.verdict}, {rate_words(join)}"
        words = join_words(planned.of, planned.edge, planned.to, planned.at)
        lines.append(JoinLine(letter, words, show_length(join.a.mm, units), show_length(join.b_mm, units), verdict))
    return lines


def join_words(of: str, edge: str, to: Sequence[str], at: str) -> str:
    """``end of sleeve – armhole of back and front``; the edge once where both are called alike."""
    if edge == at:
        return f"{edge}: {of or '?'}{BETWEEN}{listed(list(to)) if to else '?'}"
    return f"{edge or '?'} of {of or '?'}{BETWEEN}{at or '?'} of {listed(list(to)) if to else '?'}"
