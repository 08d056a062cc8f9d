"""The sheet "Hooks": for each yarn and stitch with at least three swatches, which hook gave which gauge, as table and chart."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.gauges.which_hook import HookGauge, HookLine, HookTrial, hook_line, hook_notes, hook_trials
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.hooks import hook_names
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import PERCENT, TENTHS, CellLook, Content, Role
from logbook.sheets.charts import Axes, Series, scatter

NAME = "Hooks"
FEWEST = 3
MOST_GROUPS = 40
"""Yarns and stitches shown, those with most swatches first."""
_WIDTHS = (11, 15, 12, 12, 12, 14, 3, 12, 12, 12, 12, 12)
_CHART_ROWS, _ON_A_PAGE = 18, 3


@dataclass(frozen=True, slots=True)
class HookGroup:
    """The swatches of one yarn and stitch, by the line through them."""

    name: str
    line: HookLine


def write_hooks(book: BookWriter, found: Sequence[HookGroup]) -> None:
    """The whole sheet; nothing where no yarn and stitch was tried with two hooks and three swatches."""
    groups = sorted(found, key=lambda group: (-len(group.line.trials), group.name))
    sheet = book.sheet(NAME, _WIDTHS)
    sheet.head("Hooks", "Which hook gives which gauge: each yarn and stitch with three swatches or more, washed and laid flat.")
    if not groups:
        sheet.paragraph("Work three swatches of one yarn and stitch with at least two hooks: then they are listed here.")
    if len(groups) > MOST_GROUPS:
        sheet.paragraph(f"Shown are the {MOST_GROUPS} yarns and stitches with most swatches, of {len(groups)}.")
    for place, group in enumerate(groups[:MOST_GROUPS]):
        if place and place % _ON_A_PAGE == 0:
            sheet.new_page()
        _write(sheet, group)


def hook_groups(swatches: Iterable[Swatch], assumptions: Assumptions) -> Iterator[HookGroup]:
    """What the swatches of a yarn, which must be together, say of hooks."""
    alike: dict[tuple[object, ...], list[Swatch]] = defaultdict(list)
    for swatch in swatches:
        if swatch.yarn is not None and swatch.pattern is not None:
            hand = swatch.worked_by.strip().casefold()
            alike[swatch.yarn.uid, swatch.pattern.uid, hand, swatch.strands or 1, swatch.worked or "flat"].append(swatch)
    for members in alike.values():
        if len(members) >= FEWEST and len({swatch.hook_mm for swatch in members}) > 1:
            trials = hook_trials(members[0], members[1:], Condition.WASHED, assumptions)
            if len(trials) >= FEWEST and len({trial.hook_mm for trial in trials}) > 1:
                yield HookGroup(_named(members[0]), hook_line(trials))


def _named(swatch: Swatch) -> str:
    parts = [swatch.yarn.name if swatch.yarn else "", swatch.pattern.name if swatch.pattern else ""]
    if swatch.worked_by:
        parts.append(f"worked by {swatch.worked_by}")
    if (swatch.strands or 1) > 1:
        parts.append(f"{swatch.strands} strands")
    if swatch.worked == "round":
        parts.append("in the round")
    return ", ".join(part for part in parts if part)


def _write(sheet: SheetWriter, group: HookGroup) -> None:
    first = sheet.row + 1
    sheet.add((group.name, *[""] * (len(_WIDTHS) - 1)), CellLook(Role.SECTION), height=21)
    heading = CellLook(Role.HEADING, right=True, wraps=True)
    sheet.add(("hook mm", "swatch", "mm per stitch", "stitches in 10 cm", "give or take", ""), heading, height=32)
    looks = [CellLook(numbers="0.0##", right=True), CellLook(right=True), *_GAUGE, CellLook(right=True)]
    trials = sheet.row + 1
    for trial in group.line.trials:
        sheet.add((trial.hook_mm, trial.tag, *_gauge(trial.pitch_mm, trial.give_or_take), ""), looks)
    measured = (trials, sheet.row)
    sheet.add(("hook mm", "", "mm per stitch", "stitches in 10 cm", "give or take", ""), heading, height=32)
    reckoned = sheet.row + 1
    for gauge in _near(group.line):
        if gauge.known:
            said: tuple[Content, ...] = (*_gauge(gauge.pitch_mm, gauge.give_or_take), "tried" if gauge.tried else "worked out")
        else:
            said = (None, None, None, "not known")
        sheet.add((gauge.hook_mm, hook_names(gauge.hook_mm).replace(", ", " · "), *said), looks)
    line = (reckoned, sheet.row)
    for note in hook_notes(group.line):
        sheet.paragraph(note, columns=6)
    _chart(sheet, first, measured, line, group.line.trials)
    sheet.skip(max(1, first + _CHART_ROWS - sheet.row))


_GAUGE = (CellLook(numbers="0.00", right=True), CellLook(numbers=TENTHS, right=True), CellLook(numbers=PERCENT, right=True))


def _gauge(pitch_mm: float, give_or_take: float) -> tuple[float, float, float]:
    return pitch_mm, 100 / pitch_mm, give_or_take


def _near(line: HookLine) -> list[HookGauge]:
    """The hooks of the table that are known, and one more each way."""
    table = line.table()
    known = [place for place, gauge in enumerate(table) if gauge.known]
    return list(table[max(0, known[0] - 1) : known[-1] + 2]) if known else [g for g in table if g.tried]


def _chart(sheet: SheetWriter, row: int, measured: tuple[int, int], line: tuple[int, int], trials: Sequence[HookTrial]) -> None:
    hooks = [trial.hook_mm for trial in trials]
    pitches = [trial.pitch_mm for trial in trials]
    axes = Axes(
        "hook, mm",
        "mm per stitch",
        (max(0, int(min(hooks)) - 1), int(max(hooks)) + 2),
        (int(min(pitches)), int(max(pitches)) + 2),
    )
    series = (Series("swatches", 1, 3, *measured, line=False), Series("the line through them", 1, 3, *line, line=True))
    sheet.raw.add_chart(scatter(sheet.raw, "", axes, series, (12.5, 8.5)), f"H{row + 1}")
