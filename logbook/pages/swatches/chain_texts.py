"""What is typed about a wanted width, read into the plan of a starting chain."""

from collections.abc import Callable
from dataclasses import asdict, dataclass
from typing import Any

from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import NO_EASE, Units, read_ease, read_size
from logbook.craft.words.numbers import read_whole
from logbook.errors import RefusedError, UnreadableError
from logbook.pages.pieces.plan_texts import FINISH, PARITY, TICKED, ReadPlan, read_extra

CHOOSE = {"nearest to it": Choose.NEAREST, "at least that": Choose.AT_LEAST, "at most that": Choose.AT_MOST}


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainTexts:
    """What is typed, chosen and ticked. ``choose``, ``parity`` and ``finish`` are keys of CHOOSE, PARITY and FINISH.

    A body measure that is typed stands before the width.
    """

    width: str = ""
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
        return bool(self.body.strip())


def read_chain(texts: ChainTexts, units: Units) -> ReadPlan:
    """Reads the texts; lengths without a unit are in ``units``."""
    readers: dict[str, Callable[[str], Any]] = {
        "width": lambda text: read_size(text, units),
        "body": lambda text: read_size(text, units, "a body measure"),
        "ease": lambda text: read_ease(text, units),
        "panels": lambda text: read_whole(text, "a number of panels", 1, 100),
        "seam": lambda text: read_extra(text, units),
        "edging": lambda text: read_extra(text, units),
        "round_plus": lambda text: read_whole(text, "a plus", 0, 10_000),
        "length": lambda text: read_size(text, units, "a length"),
    }
    found: dict[str, Any] = {}
    errors = {}
    for name in _asked(texts):
        text = getattr(texts, name)
        try:
            found[name] = readers[name](text) if text.strip() else None
        except UnreadableError as error:
            errors[name] = str(error)
    if texts.in_round and texts.sideways:
        errors["sideways"] = "A piece worked sideways is flat: untick one of “in the round” and “sideways”."
    missing = _missing(texts)
    return ReadPlan(None if errors or missing else _plan(texts, found), FINISH[texts.finish], missing, errors)


def _asked(texts: ChainTexts) -> list[str]:
    """The texts that count: those of the way that is chosen."""
    names = ["edging", *(["body", "ease"] if texts.from_body else ["width"])]
    names += ["panels", "seam"] if texts.from_body and not texts.in_round else []
    return names + ["round_plus"] * texts.in_round + ["length"] * texts.sideways


def _missing(texts: ChainTexts) -> str:
    if not texts.from_body and not texts.width.strip():
        return "Type the finished width, for example 46."
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
