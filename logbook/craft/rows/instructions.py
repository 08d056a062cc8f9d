"""What a written row tells the hand to do, as values. Every one knows where in the text it stands."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """From ``start`` up to ``end`` in the text, counted in characters."""

    start: int
    end: int


NOWHERE = Span(0, 0)


@dataclass(frozen=True, slots=True)
class Wanted:
    """A kind of place that is looked for in the row below.

    ``kind``: ``st`` any stitch, ``ch`` a chain, ``sp`` a space (``size`` chains wide; 0: any), ``gap`` between two groups or
    stitches, ``group`` stitches made in one place (``name``; ``size`` stitches, 0: any), else a stitch's US abbreviation.
    ``part`` of a group: "" the place it is worked into, ``centre``, ``sp`` (``size`` then is the space's), ``whole``, or a
    number counted among its stitches of ``inner`` kind (−1: the last). ``either``: any of these, whichever comes next.
    """

    kind: str
    size: int = 0
    name: str = ""
    part: str | int = ""
    inner: str = "st"
    either: tuple["Wanted", ...] = ()


ANY_STITCH = Wanted("st")


@dataclass(frozen=True, slots=True)
class FromHook:
    """The j-th chain from the hook."""

    chain: int


@dataclass(frozen=True, slots=True)
class Next:
    """The next ``count`` places of a kind, one after another."""

    wanted: Wanted
    count: int = 1


@dataclass(frozen=True, slots=True)
class First:
    """The first place of the row below."""

    wanted: Wanted


@dataclass(frozen=True, slots=True)
class Last:
    """The last ``count`` places of the row below."""

    wanted: Wanted
    count: int = 1


@dataclass(frozen=True, slots=True)
class Same:
    """The place last worked into."""

    wanted: Wanted | None = None


@dataclass(frozen=True, slots=True)
class Skipped:
    """The places skipped last, behind the hand, ``count`` of them: crossed stitches, cables."""

    wanted: Wanted
    count: int = 1


@dataclass(frozen=True, slots=True)
class TurningChain:
    """The turning chain at the end of the row below: its top, its ``chain``-th chain, or its space."""

    chain: int = 0
    space: bool = False


@dataclass(frozen=True, slots=True)
class Ring:
    """The ring that the first round is worked into."""


Target = FromHook | Next | First | Last | Same | Skipped | TurningChain | Ring


@dataclass(frozen=True, slots=True)
class Made:
    """What is made in one place: US abbreviations and ``ch`` in order, and the name if it has one (shell, V-stitch)."""

    items: tuple[str, ...]
    name: str = ""


NEW_YARN = "new yarn"
"""The name of a slip stitch that joins new yarn where the row begins: the place is not worked yet."""


@dataclass(frozen=True, slots=True)
class Work:
    """Make ``made`` in each place of ``into``; or, ``together``, one stitch over all of them."""

    made: Made
    into: Target
    span: Span
    together: bool = False

    @property
    def place_kind(self) -> str:
        """The kind of place that it goes into; "" if its words name none."""
        wanted: Wanted | None = getattr(self.into, "wanted", None)
        return wanted.kind if wanted else ""


@dataclass(frozen=True, slots=True)
class Chain:
    """Make so many chains."""

    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class Skip:
    """Pass over ``count`` places, from the start of the row or from the next place on."""

    wanted: Wanted
    count: int
    span: Span
    first: bool = False
    if_left: bool = False  # as far as so many are left


@dataclass(frozen=True, slots=True)
class Times:
    """So many times in all. ``or_else``: the other way to count them, if the words can be read both ways."""

    count: int
    or_else: int = 0


@dataclass(frozen=True, slots=True)
class ToEnd:
    """As long as it fits, leaving what comes after it its places."""


@dataclass(frozen=True, slots=True)
class ToLast:
    """Until exactly so many places of a kind are left."""

    count: int
    wanted: Wanted


@dataclass(frozen=True, slots=True)
class ToNext:
    """Until the next place is of a kind."""

    wanted: Wanted


@dataclass(frozen=True, slots=True)
class ToTurningChain:
    """Until only the turning chain is left."""


Until = Times | ToEnd | ToLast | ToNext | ToTurningChain


@dataclass(frozen=True, slots=True)
class Repeat:
    """Do ``body`` again and again."""

    body: tuple["Instruction", ...]
    until: Until
    span: Span


@dataclass(frozen=True, slots=True)
class Either:
    """Whichever of these the next place is for: ``sc in each sc and 2 sc in each ch-2 sp``. All go into a next place."""

    works: tuple[Work, ...]
    span: Span

    @property
    def wanted(self) -> Wanted:
        return Wanted("either", either=tuple(work.into.wanted for work in self.works if isinstance(work.into, Next)))


@dataclass(frozen=True, slots=True)
class OtherSide:
    """Go on along the other side of the foundation chain."""

    span: Span


Instruction = Work | Chain | Skip | Repeat | Either | OtherSide


def works_of(items: Iterable[Instruction]) -> Iterator[Work]:
    """Everything that is worked, in repeats too."""
    for item in items:
        if isinstance(item, Repeat):
            yield from works_of(item.body)
        elif isinstance(item, Either):
            yield from item.works
        elif isinstance(item, Work):
            yield item


@dataclass(frozen=True, slots=True)
class Counts:
    """What a turning chain, or the chains skipped at the hook, stand for: a stitch ("": none) and ``chains`` after it.

    ``over``: how many foundation chains lie under those chains. ``height``: chains in the stitch's own height. ``at_base``: the
    stitch that is skipped next is the one under them.
    """

    stitch: str = ""
    chains: int = 0
    over: int = 0
    height: int = 0
    at_base: bool = False


NOTHING = Counts()


@dataclass(frozen=True, slots=True)
class Opening:
    """The chains at the beginning of a row, or those skipped at the hook, and what they may stand for.

    One option: the text (``said``) or the next stitch tells it. Several: nothing does; rows with the same chains share a ``key``.
    ``settled``: the first option is taken if it fits, the others only if it does not.
    """

    chains: int
    options: tuple[Counts, ...]
    key: str
    span: Span
    at_hook: bool = False
    said: bool = False
    settled: bool = False


@dataclass(frozen=True, slots=True)
class PrintedCount:
    """A count that the row's text gives at its end: one number a size. ``beside_groups``: groups are counted by themselves, and
    their stitches not among these (``11 V-sts and 2 dc``). ``exact``: raised ones are counted by themselves (``20 fpdc, 21 dc``).
    """

    numbers: tuple[int, ...]
    wanted: Wanted
    span: Span
    beside_groups: bool = False
    exact: bool = False


@dataclass(frozen=True, slots=True)
class WrittenRow:
    """One row as written. ``begins_with``: the moves (slip stitches, places skipped before yarn is joined) before its opening
    chains; ``body``: all that follows.
    """

    number: int
    name: str
    span: Span
    in_round: bool = False
    begins_with: tuple["Work | Skip", ...] = ()
    opening: Opening | None = None
    body: tuple[Instruction, ...] = ()
    turn_before: bool = False
    turn_after: bool = False
    joined: bool = False
    leaves_rest: bool = False
    leaves: int = 0  # so many stitches, if the text says how many it leaves
    counts: tuple[PrintedCount, ...] = ()
    in_ring: bool = False  # worked into no row below: into a ring or making its own foundation
    and_onto: tuple[int, ...] = ()  # rows whose unworked rests it goes on over, behind the row below
    onto: int = 0  # the row whose unworked rest it is worked onto, where that is not the row below
    own_chain: int = 0  # chains that row 1 of corner-to-corner blocks is worked on


@dataclass(frozen=True, slots=True)
class Fault:
    """Something in the text that is not understood or contradicts itself, and where."""

    row: int
    says: str
    span: Span


@dataclass(frozen=True, slots=True)
class StatedMultiple:
    """What the text says before its rows: the multiple, and a plus of base stitches or the chain constant."""

    multiple: int
    plus: int | None
    chain_constant: int | None
    span: Span


@dataclass(frozen=True, slots=True)
class WrittenPattern:
    """All rows of a text. ``chain_sizes``: starting chains that it states, one a size. ``notes``: what is set aside as no work;
    ``unsure``: those of them, from the first row on, that could be work all the same. ``on_edge``: yarn is joined to an edge
    before row 1.

    ``sizes``: how many there are, if the rows themselves differ from size to size.

    ``repeat_from``, ``repeat_to``: the rows it says to repeat. ``chains_count``: whether it says that chains count as stitches.
    """

    rows: tuple[WrittenRow, ...]
    faults: tuple[Fault, ...] = ()
    chain_sizes: PrintedCount | None = None
    repeat_from: int | None = None
    repeat_to: int | None = None
    repeat_span: Span = NOWHERE
    chains_count: bool | None = None
    stated: StatedMultiple | None = None
    notes: tuple[Span, ...] = ()
    sizes: int = 1
    unsure: tuple[Span, ...] = ()
    on_edge: bool = False
