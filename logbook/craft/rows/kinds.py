"""Which stitch an increase or decrease is of, when its phrase does not say."""

from dataclasses import replace

from logbook.craft.rows.instructions import Instruction, Repeat, Work, works_of
from logbook.craft.rows.places import plain

WHOLE_STITCH = "stitch?"  # stands for it until the whole row is read


def with_kind(items: list[Instruction], kind_below: str) -> list[Instruction]:
    """Increases and decreases told which stitch they are of: the one named before them in the row, else the one after."""
    named = [kind for item in items for kind in _kinds(item) if WHOLE_STITCH not in kind]
    return _told(items, named[0] if named else kind_below)[0]


def prevailing_kind(items: list[Instruction]) -> str:
    """The first stitch that the row makes, "sc" if none."""
    return next((plain(kind) for item in items for kind in _kinds(item)), "sc")


def _kinds(item: Instruction) -> list[str]:
    return [kind for work in works_of((item,)) for kind in work.made.items if kind not in ("ch", "sl st", "picot")]


def _told(items: list[Instruction], kind: str) -> tuple[list[Instruction], str]:
    told: list[Instruction] = []
    for item in items:
        if isinstance(item, Repeat):
            body, kind = _told(list(item.body), kind)
            told.append(replace(item, body=tuple(body)))
        elif isinstance(item, Work):
            made = replace(item.made, items=tuple(each.replace(WHOLE_STITCH, kind) for each in item.made.items))
            told.append(replace(item, made=made))
            kind = next((each for each in _kinds(told[-1]) if "tog" not in each), kind)
        else:
            told.append(item)
    return told, kind
