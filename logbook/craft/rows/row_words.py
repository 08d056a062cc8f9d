"""What one row's words say, as far as they were understood."""

from dataclasses import dataclass, field

from logbook.craft.rows.chain_sayings import SaidToCount
from logbook.craft.rows.instructions import Instruction, PrintedCount, Span
from logbook.craft.rows.lines import TextPart


@dataclass(slots=True)
class RowWords:
    """What one row's words say, as far as they were understood."""

    items: list[Instruction] = field(default_factory=list)
    said: dict[int, SaidToCount] = field(default_factory=dict)  # start of the chains it stands beside → what they count as
    counts: tuple[PrintedCount, ...] = ()
    turn_before: bool = False
    turn_after: bool | None = None
    joined_at: int | None = None  # how many instructions come before it joins
    joins_to: str = ""  # "chain" or "stitch": what the round is joined to, if said
    in_ring: bool = False  # the row makes its own foundation
    notes: list[Span] = field(default_factory=list)
    unsure: list[Span] = field(default_factory=list)  # those of the notes that could tell something to do all the same
    and_onto: tuple[int, ...] = ()  # rows whose unworked rests it goes on over
    onto: int = 0  # the row whose unworked rest it takes up; −1: the last that left some
    own_chain: int = 0  # chains that row 1 of blocks is worked on
    leaves_rest: bool = False
    leaves: int = 0  # so many stitches, if said
    faults: list[tuple[str, Span]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class ReadRow:
    """One row's words, read by themselves."""

    part: TextPart
    number: int
    words: RowWords
