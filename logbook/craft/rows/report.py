"""What came of proving rows: formulas in the number of repeats, and what is wrong, in a maker's words."""

from dataclasses import dataclass

from logbook.craft.rows.instructions import Span
from logbook.craft.words.terms import Terms

NOT_UNDERSTOOD, ASKED, DOES_NOT_FIT, CLAIM = "not understood", "asked", "does not fit", "claim"


@dataclass(frozen=True, slots=True)
class Linear:
    """``per_repeat``·k + ``constant``: a count at every width, with k = (starting chain − chain constant) / multiple."""

    per_repeat: int
    constant: int

    def at(self, repeats: int) -> int:
        return self.per_repeat * repeats + self.constant

    def __str__(self) -> str:
        if not self.per_repeat:
            return str(self.constant)
        times = "k" if self.per_repeat == 1 else f"{self.per_repeat}k"
        if not self.constant:
            return times
        return f"{times} {'+' if self.constant > 0 else '−'} {abs(self.constant)}"


@dataclass(frozen=True, slots=True)
class RowCount:
    """One row that fits: ``row`` its number, ``name`` as the text calls it, ``span`` its place in the text.

    ``stitches``: a turning chain that counts is one; chains are none. ``spaces``: chains side by side are one space.
    """

    row: int
    name: str
    span: Span
    stitches: Linear
    spaces: Linear


@dataclass(frozen=True, slots=True)
class RowProblem:
    """Something that keeps the rows from being proven, and where in the text it stands.

    ``suggestion``: the nearest change that would fix it, "" if none was found. ``kind``: what sort of trouble it is.
    ``choices``: where the text leaves something open, the words that would say it, to stand behind ``span``.
    """

    row: int
    says: str
    span: Span
    suggestion: str = ""
    kind: str = DOES_NOT_FIT
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Proof:
    """All that the rows say of themselves.

    With k repeats the starting chain is C = ``multiple``·k + ``chain_constant``; all rows fit for every such C from
    ``smallest`` on. None: the rows are for one width, or were worked into a ring, or no row fits. The base stitches are C −
    ``extra_chains`` = ``multiple``·k + ``plus`` (both up to a whole multiple), the first stitch goes into chain
    ``first_stitch`` from the hook, and what was skipped there lies over ``skip_cover`` base chains; None where row 1 is not
    worked from the hook. If there are problems, these are the figures of the rows before the trouble.

    ``remarks``: what is worth saying of a row and stops nothing. ``notes``: lines and phrases set aside as no work. ``sizes``: a
    proof for each size, if the rows differ from size to size; the rest then is the first size's, with the problems of all.
    ``beyond``: the rows above one that is not understood, at the one width whose count that row prints.

    ``leads_back_to``: the row that comes after the last one when the pattern repeats. ``statements``: what is no trouble, but
    worth knowing. ``terms``: those the text was read in.
    """

    terms: Terms
    multiple: int | None = None
    chain_constant: int | None = None
    smallest: int | None = None
    plus: int | None = None
    extra_chains: int | None = None
    first_stitch: int | None = None
    skip_cover: int | None = None
    rows: tuple[RowCount, ...] = ()
    leads_back_to: int | None = None
    problems: tuple[RowProblem, ...] = ()
    statements: tuple[str, ...] = ()
    remarks: tuple[RowProblem, ...] = ()
    notes: tuple[Span, ...] = ()
    sizes: tuple["Proof", ...] = ()
    beyond: tuple[RowCount, ...] = ()

    @property
    def proven(self) -> bool:
        """Whether every row is understood and fits at every width from the smallest on."""
        return bool(self.rows) and not self.problems

    @property
    def own_constant(self) -> int | None:
        """b + t: what the chain has beside whole repeats of base stitches; None where row 1 is not worked from chains."""
        return None if self.plus is None or self.extra_chains is None else self.plus + self.extra_chains

    def counted(self, count: Linear, multiple: int | None = None, constant: int | None = None) -> Linear:
        """``count`` with k as the number of repeats, C = ``multiple``·k + ``constant`` (the rows' own if not given), as a maker
        counts them; as it is where these are not those of the rows.
        """
        multiple, constant = multiple or self.multiple, self.own_constant if constant is None else constant
        if self.multiple is None or multiple is None or self.chain_constant is None or constant is None:
            return count
        if multiple % self.multiple or (constant - self.chain_constant) % self.multiple:
            return count
        shift = (constant - self.chain_constant) // self.multiple
        return Linear(count.per_repeat * (multiple // self.multiple), count.constant + count.per_repeat * shift)

    @property
    def k_counts(self) -> str:
        """What the k of ``counted`` counts, in words."""
        if self.multiple != 1:
            return "the repeats"
        return "the chains" if self.own_constant is None else "the base stitches"
