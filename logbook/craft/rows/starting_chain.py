"""The starting chain: what row 1 takes of it beside its base stitches, and whether it is the one that the text states."""

import re
from collections.abc import Iterator
from dataclasses import replace

from logbook.craft.rows.courses import Courses
from logbook.craft.rows.instructions import StatedMultiple
from logbook.craft.rows.laying import opening_counts
from logbook.craft.rows.report import CLAIM, Proof, RowProblem
from logbook.craft.rows.sentences import Speaker

_OF_STITCHES = re.compile(r"\b(?:sts?|stitch(?:es)?)\b", re.IGNORECASE)


def with_chain(proof: Proof, courses: Courses) -> Proof:
    """The plus and the extra chains, from the chain that the first stitch goes into and what those skipped there cover."""
    row = courses.rows[0].row
    opening = row.opening
    if opening is None or not opening.at_hook:
        first, cover, extra = None, None, 0
    else:
        counts = opening_counts(row, courses.ways)
        cover = (1 if counts.stitch else 0) + counts.over
        first, extra = opening.chains + 1, opening.chains - cover
    plus = (courses.smallest - extra) % courses.multiple if courses.multiple else None
    return replace(proof, plus=plus, extra_chains=extra, first_stitch=first, skip_cover=cover)


def misstated(stated: StatedMultiple | None, courses: Courses, speaker: Speaker) -> Iterator[RowProblem]:
    """The multiple that the text states, if the rows have another."""
    multiple = courses.multiple
    if stated is None or not multiple or not courses.rows:
        return
    proof = with_chain(Proof(speaker.terms), courses)
    same = stated.multiple % multiple == 0
    if stated.chain_constant is not None:
        same = same and (stated.chain_constant - courses.smallest) % multiple == 0
    if stated.plus is not None and proof.plus is not None:
        of_chains = not _OF_STITCHES.search(speaker.text, stated.span.start, stated.span.end)  # “multiple of 6 + 2” of either
        plus = (proof.plus, courses.smallest) if of_chains else (proof.plus,)
        same = same and any((stated.plus - each) % multiple == 0 for each in plus)
    if not same:
        in_chains = f"in chains a multiple of {multiple} plus {courses.smallest % multiple}"
        need = f"a multiple of {multiple} plus {proof.plus}, {in_chains}"
        says = f"The text says {speaker.quoted(stated.span)}; its rows need {need}."
        yield RowProblem(courses.rows[0].row.number, says, stated.span, kind=CLAIM)
