"""What is typed about a wanted width, read into the plan of a starting chain."""

from collections.abc import Callable
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Reading, read_readings
from logbook.craft.words.lengths import NO_EASE, Units, read_ease, read_size
from logbook.craft.words.numbers import read_whole
from logbook.craft.words.typed_counts import TypedCount, read_count
from logbook.errors import RefusedError, UnreadableError
from logbook.pages.pieces.plan_texts import FINISH, PARITY, TICKED, ReadPlan, read_extra
from logbook.pages.text_reader import TextReader

if TYPE_CHECKING:
    from logbook.tasks.chain import Theirs

CHOOSE = {"nearest to it": Choose.NEAREST, "at least that": Choose.AT_LEAST, "at most that": Choose.AT_MOST}


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainTexts:
    """What is typed, chosen and ticked. ``choose``, ``parity`` and ``finish`` are keys of CHOOSE, PARITY and FINISH.

    A chain that is typed stands before all else: what it makes is asked. Then another pattern's gauge with a count, then a body
    measure stand before the width.
    """

    width: str = ""
    chain: str = ""
    their_gauge: str = ""
    their_count: str = ""
    body: str = ""
    ease: str = ""
    panels: str = ""
    seam: str = ""
    edging: str = ""
    round_plus: str = ""
    length: str = ""
    in_round: bool = False
    joined_after_row_1: bool = False
    foundation_stitches: bool = False
    half_repeats: bool = False
    sideways: bool = False
    choose: str = "nearest to it"
    parity: str = "odd or even"
    finish: str = Condition.WASHED.words

    def as_typed(self) -> dict[str, str]:
        """Every one as a text; what is ticked is ``TICKED``, else ""."""
        return {key: (TICKED if value else "") if isinstance(value, bool) else value for key, value in asdict(self).items()}

    @property
    def from_body(self) -> bool:
        """Whether the width comes from a body measure."""
        return bool(self.body.strip()) and not self.from_theirs and not self.from_chain

    @property
    def from_chain(self) -> bool:
        """Whether a chain is given, and its width asked for."""
        return bool(self.chain.strip())

    @property
    def from_theirs(self) -> bool:
        """Whether the width comes from another pattern's gauge."""
        return bool(self.their_gauge.strip() or self.their_count.strip()) and not self.from_chain

    @property
    def width_follows(self) -> bool:
        """Whether the width comes of something else that is typed."""
        return self.from_chain or self.from_theirs or self.from_body


@dataclass(frozen=True, slots=True)
class ReadChainPlan(ReadPlan):
    """A plan, with the ``chain`` whose width is asked for, or another pattern's gauge and count, which give it."""

    chain: TypedCount | None = None
    theirs: "Theirs | None" = None


def read_chain(texts: ChainTexts, units: Units) -> ReadChainPlan:
    """Reads the texts; lengths without a unit are in ``units``."""
    readers: dict[str, Callable[[str], Any]] = {
        "width": lambda text: read_size(text, units),
        "chain": lambda text: read_count(text, "a chain"),
        "their_gauge": lambda text: _their_gauge(text, units),
        "their_count": lambda text: read_count(text, "a count"),
        "body": lambda text: read_size(text, units, "a body measure"),
        "ease": lambda text: read_ease(text, units),
        "panels": lambda text: read_whole(text, "a number of panels", 1, 100),
        "seam": lambda text: read_extra(text, units),
        "edging": lambda text: read_extra(text, units),
        "round_plus": lambda text: read_whole(text, "a plus", 0, 10_000),
        "length": lambda text: read_size(text, units, "a length"),
    }
    reader = TextReader({name: getattr(texts, name) for name in _asked(texts)})
    found = {name: reader.read(name, readers[name]) for name in reader.texts}
    errors = reader.errors
    if texts.in_round and texts.sideways:
        errors["sideways"] = "A piece worked sideways is flat: untick one of “in the round” and “sideways”."
    if texts.from_chain and texts.sideways:
        errors["chain"] = "Worked sideways the chain makes the length: clear the chain, or untick “sideways”."
    missing, theirs = _missing(texts), None
    if found.get("their_gauge") and found.get("their_count"):
        from logbook.tasks.chain import Theirs

        theirs = Theirs(found["their_gauge"], found["their_count"])
    plan = None if errors or missing else _plan(texts, found)
    return ReadChainPlan(plan, FINISH[texts.finish], missing, errors, found.get("chain"), theirs)


def _their_gauge(text: str, units: Units) -> Reading:
    """Readings of one thing, as one. Raises UnreadableError."""
    from logbook.tasks.chain import their_gauge  # not before it is wanted

    try:
        return their_gauge(read_readings(text, Direction.STITCHES, units))
    except RefusedError as error:
        raise UnreadableError(str(error)) from error


def _asked(texts: ChainTexts) -> list[str]:
    """The texts that count: those of the way that is chosen."""
    if texts.from_chain:
        return ["chain", "edging"] + ["round_plus"] * texts.in_round
    wanted = ["their_gauge", "their_count"] if texts.from_theirs else ["body", "ease"] if texts.from_body else ["width"]
    names = ["edging", *wanted]
    names += ["panels", "seam"] if texts.from_body and not texts.in_round else []
    return names + ["round_plus"] * texts.in_round + ["length"] * texts.sideways


def _missing(texts: ChainTexts) -> str:
    if texts.from_theirs and not texts.their_gauge.strip():
        return "Type their gauge too, for example 20 sts = 10 cm."
    if texts.from_theirs and not texts.their_count.strip():
        return "Type how many stitches their piece has, for example 90, or its chain, ch 92."
    if not texts.width_follows and not texts.width.strip():
        return "Type the finished width, for example 46, or a number of chains."
    if texts.sideways and not texts.length.strip():
        return "Type the finished length too: worked sideways, the chain runs along it."
    return ""


def _plan(texts: ChainTexts, found: dict[str, Any]) -> PiecePlan:
    parity = PARITY[texts.parity]
    return PiecePlan(
        width_mm=found.get("width"),
        body_mm=found.get("body"),
        ease=found.get("ease") or NO_EASE,
        panels=found.get("panels") or 2,
        seam_mm=found.get("seam"),
        side_edging_mm=found.get("edging") or 0.0,
        length_mm=found.get("length"),
        sideways=texts.sideways,
        in_round=texts.in_round,
        round_plus=found.get("round_plus") or 0,
        joined_after_row_1=texts.in_round and texts.joined_after_row_1,
        foundation_stitches=texts.foundation_stitches,
        half_repeats=texts.half_repeats,
        stitch_parity=Parity.ANY if texts.sideways else parity,
        row_parity=parity if texts.sideways else Parity.ANY,
        width_choose=CHOOSE[texts.choose],
    )


def width_from_body(plan: PiecePlan) -> float | None:
    """The width in mm that a body measure comes to; None where the width was typed, or nothing would be left."""
    if plan.body_mm is None:
        return None
    try:
        return plan.target_width(0.0)
    except RefusedError:
        return None
