"""Stitches that the pattern itself describes, by the names it gives them."""

from dataclasses import dataclass, field

from logbook.craft.rows.instructions import Instruction, Made, Next

NO_PLACE = "no place"
"""The name of what is made into no place of the row below."""


@dataclass(slots=True)
class OwnStitches:
    """``made``: name → what is made in one place; ``placed``: name → the space that its description puts it in; ``steps``:
    name → what is done one after another; ``ways``: words → name.
    """

    made: dict[str, Made] = field(default_factory=dict)
    placed: dict[str, Next] = field(default_factory=dict)
    steps: dict[str, tuple[Instruction, ...]] = field(default_factory=dict)
    ways: dict[tuple[str, ...], str] = field(default_factory=dict)
