"""The written rows of a pattern, proven while they are typed: counts, figures for the form, contradictions, trouble."""

from dataclasses import dataclass

from logbook.craft.rows.report import Linear, Proof, RowCount
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted, ordinal
from logbook.errors import RefusedError
from logbook.pages.patterns.message import Message
from logbook.pages.patterns.wording import cover_words

FIRST_STITCH = ("extra_chains", "first_stitch", "skip_cover")
CHAIN_FIGURES = ("multiple", "plus", *FIRST_STITCH)
ROW_FIGURES = ("set_up_rows", "rows_in_repeat", "closing_rows")
TROUBLES_NAMED = 3


@dataclass(frozen=True, slots=True)
class CountBeside:
    """A row's count, to stand beside the place in the text where the row begins; ``name`` is the row's."""

    start: int
    name: str
    count: str


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to what the text leaves open: ``words`` to be written at ``place`` in it, behind a blank."""

    words: str
    place: int


@dataclass(frozen=True, slots=True)
class RowsCard:
    """What is shown with the written rows; ``marks`` are the stretches (start, end) of the text that there is trouble with.

    ``choices`` are the answers to the first question that the text leaves open; ``notes`` the stretches set aside as no work.
    """

    counts: tuple[CountBeside, ...]
    marks: tuple[tuple[int, int], ...]
    message: Message | None
    choices: tuple[Choice, ...] = ()
    notes: tuple[tuple[int, int], ...] = ()


PROVING = RowsCard((), (), Message("The rows are being checked …", "hint"))
"""While the proof of long rows is to come."""


def rows_card(proof: Proof, pattern: StitchPattern) -> RowsCard:
    """Counts in repeats as ``pattern`` counts them."""
    told = (*proof.rows, *proof.beyond)
    counts = tuple(CountBeside(row.span.start, row.name, _count(row, proof, pattern)) for row in told)
    marks = tuple((problem.span.start, problem.span.end) for problem in proof.problems)
    asked = next((problem for problem in proof.problems if problem.choices), None)
    choices = () if asked is None else tuple(Choice(words, asked.span.end) for words in asked.choices)
    notes = tuple((note.start, note.end) for note in proof.notes)
    return RowsCard(counts, marks, _message(proof, pattern), choices, notes)


def figures(proof: Proof) -> dict[str, str]:
    """The texts of the form that proven rows give; none while they are not proven."""
    if not proof.proven:
        return {}
    found = {key: getattr(proof, key) for key in CHAIN_FIGURES} | row_figures(proof)
    texts = {key: str(number) for key, number in found.items() if number is not None}
    if proof.first_stitch is not None:
        texts |= {"first_stitch": ordinal(proof.first_stitch), "skip_cover": cover_words(proof.skip_cover)}
    return texts


def contradictions(proof: Proof, pattern: StitchPattern) -> dict[str, str]:
    """By field, where proven rows say something else of the chain than ``pattern`` does."""
    if not proof.proven or proof.multiple is None or proof.chain_constant is None or pattern.multiple is None:
        return {}
    m, c = proof.multiple, proof.chain_constant
    on = "any number of" if m == 1 else f"a multiple of {m}" + (f" plus {c}" if c else "")
    if pattern.multiple % m:
        return {"multiple": f"The rows fit on {on} chains, not on a multiple of {pattern.multiple}."}
    extra = _extra(pattern) if pattern.first_stitch is not None else pattern.extra_chains or 0
    if extra is None:
        return {}
    if proof.first_stitch is not None and extra != proof.extra_chains:
        takes = counted(proof.extra_chains or 0, "extra chain")
        none_given = pattern.extra_chains is None and pattern.first_stitch is None
        return {"extra_chains": f"Row 1 as written takes {takes}{'; none is given' if none_given else f', not {extra}'}."}
    plus = pattern.plus or 0
    if (plus + extra - c) % m:
        return {"plus": f"The rows fit on {on} chains; a plus of {plus} and {extra} extra make {plus + extra}."}
    return {}


def _extra(pattern: StitchPattern) -> int | None:
    try:
        return pattern.extra()
    except RefusedError:
        return None


def row_figures(proof: Proof) -> dict[str, int]:
    """Set-up rows and rows in a repeat, if the last row leads back to one of the others."""
    numbers = [row.row for row in proof.rows]
    if proof.leads_back_to not in numbers:
        return {}
    first = numbers.index(proof.leads_back_to)
    return {"set_up_rows": first, "rows_in_repeat": len(numbers) - first}


def _count(row: RowCount, proof: Proof, pattern: StitchPattern) -> str:
    stitches, spaces = (_in_repeats(linear, proof, pattern) for linear in (row.stitches, row.spaces))
    count = f"{stitches} st" if str(stitches) == "1" else f"{stitches} sts"
    return count if str(spaces) == "0" else f"{count}, {spaces} sp"


def _in_repeats(linear: Linear, proof: Proof, pattern: StitchPattern) -> Linear:
    """On the page k is the pattern's own number of repeats, where it agrees with the rows."""
    extra = _extra(pattern)
    if pattern.multiple is None or pattern.plus is None or extra is None or contradictions(proof, pattern):
        return proof.counted(linear)
    return proof.counted(linear, pattern.multiple, pattern.plus + extra)


def _message(proof: Proof, pattern: StitchPattern) -> Message | None:
    if not pattern.rows_text.strip():
        return None
    if proof.problems:
        told = [f"{problem.says} {problem.suggestion}".strip() for problem in proof.problems[:TROUBLES_NAMED]]
        more = len(proof.problems) - TROUBLES_NAMED
        return Message("\n".join(told + ([f"And {more} more."] if more > 0 else [])), "warning")
    if not proof.rows:
        return Message("No row is found here: begin one with “Row 1:”.", "hint")
    return Message(" ".join([_fit(proof, pattern), *proof.statements]), "good")


def _fit(proof: Proof, pattern: StitchPattern) -> str:
    if proof.multiple is None:
        fit = "Every row fits onto the one below."
    elif proof.multiple == 1:
        k = proof.k_counts if (pattern.multiple or 1) == 1 else "the repeats"
        fit = f"Every row fits on any number of chains, from {proof.smallest} on; k counts {k}."
    else:
        constant = f" plus {proof.chain_constant}" if proof.chain_constant else ""
        chains = f"a multiple of {proof.multiple}{constant} chains, from {proof.smallest} on"
        fit = f"Every row fits on {chains}; k counts {proof.k_counts}."
    back = f" The last row leads back to row {proof.leads_back_to}." if proof.leads_back_to is not None else ""
    return fit + back
