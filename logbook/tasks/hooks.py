"""Which hook gives which gauge with a yarn and a stitch, from the swatches that tried some."""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.search import Filters, matching
from logbook.book.swatches import swatches
from logbook.craft.gauges.which_hook import HookLine, HookTrial, hook_line, hook_notes, hook_trials
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class HookAnswer:
    """The line through the trials, how many stitches a repeat has, the swatch the others are like, and what to know."""

    like: Swatch
    line: HookLine
    multiple: int
    notes: tuple[str, ...]


def hooks_for(book: Logbook, filters: Filters, condition: Condition = Condition.WASHED) -> HookAnswer:
    """The hooks for the yarn and stitch that ``filters`` find.

    Of swatches that can't be put on one line (another yarn, stitch or hand) the largest group is taken, and the notes say so.
    Raises RefusedError if none is found or only one hook was tried.
    """
    with book.reading() as connection:
        found = swatches(connection, matching(connection, filters))
        assumed = kept_assumptions(connection)
    if not found:
        raise RefusedError("No swatch of that yarn and stitch was found: look at their names with find.")
    groups = _groups(found, condition, assumed)
    like, trials = max(groups, key=lambda group: (len({trial.hook_mm for trial in group[1]}), len(group[1])))
    line = hook_line(trials)
    notes = list(hook_notes(line))
    if len(groups) > 1:
        notes.insert(0, f"These are the swatches in {_named(like)}; {_others(len(found) - len(trials))} left out.")
    return HookAnswer(like, line, (like.pattern.multiple if like.pattern else None) or 1, tuple(notes))


def _groups(found: Sequence[Swatch], condition: Condition, assumed: Assumptions) -> list[tuple[Swatch, tuple[HookTrial, ...]]]:
    groups: list[tuple[Swatch, tuple[HookTrial, ...]]] = []
    grouped: set[str] = set()
    for swatch in found:
        if swatch.tag not in grouped:
            trials = hook_trials(swatch, found, condition, assumed)
            grouped.update(trial.tag for trial in trials)
            groups.append((swatch, trials))
    return groups


def _named(swatch: Swatch) -> str:
    parts = [swatch.yarn.name if swatch.yarn else "", swatch.pattern.name if swatch.pattern else ""]
    named = ", ".join(part for part in parts if part)
    return f"{named}, worked by {swatch.worked_by}" if swatch.worked_by else named


def _others(count: int) -> str:
    return "1 swatch of another yarn, stitch or maker is" if count == 1 else f"{count} of another yarn, stitch or maker are"
