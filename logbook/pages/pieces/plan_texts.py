"""A piece's plan as the texts of its form, and the plan that typed texts say.

Choices and ticks are texts too: a choice is one of the words of its table, a tick is ``TICKED`` or "".
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from logbook.craft.pieces.measures import OF_A_PIECE
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.pieces.seams import SEAMS
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.fields import exact, read_text
from logbook.craft.words.lengths import MM_PER_INCH, NO_EASE, Ease, Units, read_ease, read_length, read_size
from logbook.craft.words.numbers import in_mark, read_number, read_positive, read_whole
from logbook.errors import UnreadableError
from logbook.pages.text_reader import TextReader

Texts = Mapping[str, str]
_BARE = re.compile(r"[-−]?\s*\d[\d.,/ ¼½¾⅛⅜⅝⅞]*")
"""A number, or one and a fraction, without a unit."""
TICKED = "yes"
BOTTOM_UP, SIDEWAYS, IN_ROUND = "from the bottom up", "sideways", "in the round"
WORKED = (BOTTOM_UP, SIDEWAYS, IN_ROUND)
NO_SEAM = "not given"
SEAM_NAMES = (NO_SEAM, *(seam.name for seam in SEAMS))
NO_EDGES, AS_NEEDED = "none", "as needed"
EDGES = (NO_EDGES, AS_NEEDED, *(str(number) for number in range(1, 9)))
CHOOSE = {"nearest": Choose.NEAREST, "at least": Choose.AT_LEAST, "at most": Choose.AT_MOST}
PARITY = {"odd or even": Parity.ANY, "odd": Parity.ODD, "even": Parity.EVEN}
LAST_ROW = {"either side": Parity.ANY, "right side": Parity.ODD, "wrong side": Parity.EVEN}
FINISH = {condition.words: condition for condition in (Condition.WASHED, Condition.PINNED)}

SIZES = {measure.name: measure.field for measure in OF_A_PIECE}
"""Lengths that are more than 0 or not there, by the field of the plan they are."""
EXTRAS = {
    "side edging": "side_edging_mm", "top edging": "top_edging_mm", "bottom edging": "bottom_edging_mm",
    "shoulder seam": "shoulder_seam_mm",
}  # fmt: skip
"""Lengths of 0 or more."""
TICKS = {
    "foundation chain": "foundation_chain", "snap": "snap", "any row": "any_row", "half repeats": "half_repeats",
    "foundation stitches": "foundation_stitches", "joined": "joined_after_row_1",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class ReadPlan:
    """The plan, or None while something is ``missing`` (a sentence) or wrong (``errors``, a sentence a text)."""

    plan: PiecePlan | None
    condition: Condition
    missing: str
    errors: Mapping[str, str]


def texts_of(piece: PlannedPiece, units: Units, tag: str = "", edge_tag: str = "") -> dict[str, str]:
    """The texts that say ``piece``: read again they give the same. The swatches stand there by their tags."""
    plan = piece.plan
    return {
        "name": piece.name,
        "swatch": tag,
        "edge swatch": edge_tag,
        "worked": SIDEWAYS if plan.sideways else IN_ROUND if plan.in_round else BOTTOM_UP,
        **{key: length_text(getattr(plan, field), units) for key, field in SIZES.items()},
        **{key: length_text(getattr(plan, field) or None, units) for key, field in EXTRAS.items()},
        **{key: TICKED if getattr(plan, field) else "" for key, field in TICKS.items()},
        "ease": ease_text(plan.ease, units),
        "panels": "" if plan.panels == 2 else str(plan.panels),
        "seam": plan.seam or NO_SEAM,
        "seam takes": length_text(plan.seam_mm, units),
        "round plus": str(plan.round_plus or ""),
        "edge stitches": AS_NEEDED if plan.edge_stitches is None else str(plan.edge_stitches or NO_EDGES),
        "width choose": _word(CHOOSE, plan.width_choose),
        "length choose": _word(CHOOSE, plan.length_choose),
        "stitch parity": _word(PARITY, plan.stitch_parity),
        "last row": _word(LAST_ROW, plan.row_parity),
        "row heights": " : ".join(in_mark(exact(share)) for share in plan.row_shares),
        "other costs": "" if plan.other_costs is None else in_mark(exact(plan.other_costs)),
        "finish": piece.condition.words,
        "notes": piece.notes,
    }


def read_plan(texts: Texts, units: Units) -> ReadPlan:
    """Reads the texts; lengths without a unit are in ``units``. A body measure that is typed stands before the width."""
    reader = _Reader(texts, units)
    worked, body = texts["worked"], texts["body"].strip()
    in_round = worked == IN_ROUND
    values = {field: reader.size(key) for key, field in SIZES.items() if not (key == "width" and body)}
    values |= {field: reader.extra(key) for key, field in EXTRAS.items()}
    values |= {field: texts[key] == TICKED for key, field in TICKS.items()}
    values |= {
        "name": reader.read("name", read_text, ""),
        "sideways": worked == SIDEWAYS,
        "in_round": in_round,
        "ease": reader.read("ease", lambda text: read_ease(text, units), NO_EASE),
        "panels": reader.whole("panels", "a number of panels", 1, 2),
        "seam": "" if texts["seam"] == NO_SEAM else texts["seam"],
        "seam_mm": reader.read("seam takes", lambda text: read_extra(text, units), None),
        "round_plus": reader.whole("round plus", "a plus", 0, 0),
        "edge_stitches": _edges(texts["edge stitches"]),
        "width_choose": CHOOSE[texts["width choose"]],
        "length_choose": CHOOSE[texts["length choose"]],
        "stitch_parity": PARITY[texts["stitch parity"]],
        "row_parity": LAST_ROW[texts["last row"]],
        "row_shares": reader.read("row heights", _shares, ()),
        "other_costs": reader.read("other costs", lambda text: read_positive(text, "an amount of money"), None),
    }
    reader.read("notes", read_text, "")  # for what can't be kept of them
    missing = _missing(texts)
    plan = None if missing or reader.errors else PiecePlan(**values)
    return ReadPlan(plan, FINISH[texts["finish"]], missing, reader.errors)


class _Reader(TextReader):
    """Lengths without a unit are in ``units``."""

    def __init__(self, texts: Texts, units: Units) -> None:
        super().__init__(texts)
        self._units = units

    def size(self, key: str) -> Any:
        return self.read(key, lambda text: read_size(text, self._units, "a length"), None)

    def extra(self, key: str) -> Any:
        return self.read(key, lambda text: read_extra(text, self._units), 0.0)

    def whole(self, key: str, what: str, least: int, empty: int) -> Any:
        return self.read(key, lambda text: read_whole(text, what, least, 10_000), empty)


def _missing(texts: Texts) -> str:
    if not texts["swatch"].strip():
        return "Choose the swatch it is worked from: type its tag, or words such as its stitch and yarn."
    if not any(texts.get(key, "").strip() for key in ("body", "width", "sizes")):
        return "Type the finished width, for example 46, or the measure round the body."
    if texts["worked"] == SIDEWAYS and not texts["length"].strip():
        return "Type the finished length too: worked sideways, the chain runs along it."
    return ""


def read_extra(text: str, units: Units) -> float:
    """A typed length of 0 or more. Raises UnreadableError."""
    length = read_length(text, units)
    if length < 0:
        raise UnreadableError(f"“{text.strip()}” is below 0: type 0 or more.")
    return length


def _edges(text: str) -> int | None:
    return None if text == AS_NEEDED else 0 if text == NO_EDGES else int(text)


def _shares(text: str) -> tuple[float, ...]:
    shares = tuple(float(read_number(part, "the heights of rows, like 1 : 2 : 2")) for part in text.split(":"))
    if min(shares) <= 0:
        raise UnreadableError(f"“{text}” must be heights above 0: type them like 1 : 2 : 2.")
    return shares


def length_text(mm: float | None, units: Units) -> str:
    """A length as it is typed; "" for None. Exact, in the units of the user where that is a plain figure, else in cm."""
    if mm is None:
        return ""
    eighths = mm / float(MM_PER_INCH) * 16
    if units is Units.INCHES and abs(eighths - round(eighths)) < 1e-9:
        return f"{in_mark(exact(round(eighths) / 16))} in"
    return f"{in_mark(exact(round(mm / 10, 9)))} cm"


def with_unit(text: str, units: Units) -> str:
    """A typed length with the unit it is read in; what has one, is empty or can't be read stays as it is."""
    unit = taken_unit(text, units)
    return f"{text.strip()} {unit}" if unit else text


def taken_unit(text: str, units: Units) -> str:
    """The unit that a typed length without one is read in; "" for what has one, is empty or can't be read."""
    plain = text.strip()
    if not plain or not _BARE.fullmatch(plain):
        return ""
    try:
        read_length(plain.lstrip("-−"), units)
    except UnreadableError:
        return ""
    return units.value


def ease_text(ease: Ease, units: Units) -> str:
    """An ease as it is typed; "" for none."""
    if ease.share:
        return f"{in_mark(exact(round(ease.share * 100, 9)))} %"
    return length_text(ease.mm, units) if ease.mm else ""


def _word(words: Mapping[str, Any], value: Any) -> str:
    return next(word for word, meant in words.items() if meant is value)
