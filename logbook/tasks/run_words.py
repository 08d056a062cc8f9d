"""The numbers of a size run as they are shown."""

from collections.abc import Iterator

from logbook.craft.sizes.published_run import MARKS, PublishedRun, changes_since
from logbook.craft.sizes.run_numbers import NUMBERS, NumberKind, SizeFigures, figures_of
from logbook.craft.words.lengths import Units, show_difference, show_length
from logbook.craft.words.numbers import show_number
from logbook.tasks.size_runs import RunAnswer

_CHANGES = {name: name for name in ("chain", "edge stitches", "rows", "width", "length")} | {
    mark: at for mark, (at, _) in MARKS.items()
}


def shown(figures: SizeFigures, name: str, units: Units, missing: str = "–") -> str:
    """One number by its name in ``NUMBERS``: ``68``, ``42.6 cm``, ``+6.8 cm``, ``208 g``."""
    value = figures.get(name)
    if value is None or isinstance(value, str):
        return missing if value is None else value
    match NUMBERS[name].kind:
        case NumberKind.LENGTH:
            return show_length(value, units)
        case NumberKind.DIFFERENCE:
            return show_difference(value, units)
        case NumberKind.GRAMS:
            return f"{value:.0f} g"
        case _:
            return show_number(value)


Change = tuple[str, str, str, str]
"""The size, what of it, as published, and today."""
NO_LONGER, NEW_SIZE = "removed", "new size"


def changes_today(run: PublishedRun, answer: RunAnswer, units: Units) -> tuple[Change, ...]:
    """What of a published run would be otherwise today, as shown; nothing of it is changed."""
    pairs = changes_since(run.sizes, [figures_of(size) for size in answer.run.sizes])
    return tuple(change for old, new in pairs for change in _changes(old, new, units))


def _changes(old: SizeFigures, new: SizeFigures, units: Units) -> Iterator[Change]:
    if not (old and new):
        chains = [shown(figures, "chain", units, "") for figures in (old, new)]
        yield str((old or new)["size"]), "chain", chains[0] or NEW_SIZE, chains[1] or NO_LONGER
        return
    for what, name in _CHANGES.items():
        was, now = (shown(figures, name, units, "none") for figures in (old, new))
        if was != now:
            yield str(old["size"]), what, was, now
