"""A piece's plan as the JSON text it is kept as, and back."""

import json
from collections.abc import Callable, Mapping
from dataclasses import asdict, fields
from typing import Any

from logbook.book.trouble import NewerError, as_damage
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError


def plan_text(plan: PiecePlan) -> str:
    """The text of all but the name. Raises RefusedError for a number that is not finite."""
    values = asdict(plan)
    try:
        kept = {name: values[field] for name, field in KEPT.items()}
        return json.dumps(kept, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    except ValueError as error:
        raise RefusedError(f"The measures of “{plan.name}” must be finite numbers.") from error


def plan_of(name: str, text: str) -> PiecePlan:
    """The plan again; what is not in the text, being younger than it, is as a new plan has it.

    Raises DamagedError, or NewerError if it says all that this version knows of a plan and more.
    """
    what = f"The plan of “{name}”"
    with as_damage(what):
        values = _of(dict)(json.loads(text, parse_constant=_no_number))
        if unknown := [kept for kept in values if kept not in KEPT]:
            if values.keys() >= KEPT.keys():
                raise NewerError(what, unknown[0])
            raise ValueError(f"it says “{unknown[0][:40]}”")
        return PiecePlan(name=name, **{KEPT[kept]: _READ[KEPT[kept]](value) for kept, value in values.items()})


KEPT = {
    name: name
    for name in (
        "width_mm", "body_mm", "ease", "panels", "seam", "seam_mm", "shoulder_seam_mm", "length_mm", "sideways", "in_round",
        "round_plus", "joined_after_row_1", "foundation_stitches", "foundation_chain", "half_repeats", "side_edging_mm",
        "top_edging_mm", "bottom_edging_mm", "edge_stitches", "stitch_parity", "row_parity", "width_choose", "length_choose",
        "any_row", "row_shares", "armhole_mm", "neck_mm", "slit_mm", "snap", "head_mm", "upper_arm_mm", "hip_mm",
        "other_costs",
    )
}  # fmt: skip
"""What stands in the file, by name, and the field of the plan that it is: a field may get another name, what is kept may not."""


def _no_number(text: str) -> float:
    raise ValueError(f"{text} is no number")


def _number(value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError(f"{value!r} is no number")
    return float(value)


def _of(kind: type) -> Callable[[Any], Any]:
    def read(value: Any) -> Any:
        if type(value) is not kind:
            raise ValueError(f"{value!r} is no {kind.__name__}")
        return value

    return read


def _or_none(read: Callable[[Any], Any]) -> Callable[[Any], Any]:
    return lambda value: None if value is None else read(value)


def _ease(value: Any) -> Ease:
    if _of(dict)(value).keys() != {"mm", "share"}:
        raise ValueError(f"{value!r} is no ease")
    return Ease(_number(value["mm"]), _number(value["share"]))


_KINDS: Mapping[Any, Callable[[Any], Any]] = {
    float: _number,
    float | None: _or_none(_number),
    int: _of(int),
    int | None: _or_none(_of(int)),
    bool: _of(bool),
    str: _of(str),
    Ease: _ease,
    Parity: Parity,
    Choose: Choose,
    tuple[float, ...]: lambda value: tuple(_number(part) for part in _of(list)(value)),
}
_READ = {field.name: _KINDS[field.type] for field in fields(PiecePlan) if field.name != "name"}
