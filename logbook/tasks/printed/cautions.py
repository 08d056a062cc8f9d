"""What is to be minded of a piece, as its printed pages say it: its fibre, and that it is for a child."""

from collections.abc import Iterable

from logbook.craft.sizes.body_chart import is_childs_size, speaks_of_a_child
from logbook.tasks.fibre_words import fibre_cautions
from logbook.tasks.note_words import CHILDREN_CAUTION


def cautions(fibre: str, names: Iterable[str], notes: str) -> tuple[str, ...]:
    """``names`` are those of the piece and its sizes, ``notes`` the maker's own; none where nothing is to be minded."""
    childs = speaks_of_a_child(notes) or any(is_childs_size(name) for name in names)
    return (*((CHILDREN_CAUTION,) if childs else ()), *fibre_cautions(fibre))
