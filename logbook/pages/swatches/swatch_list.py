"""The list of swatches: its lines as shown and sorted, and which of them a look-up leaves."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import NamedTuple

from logbook.craft.gauges.over_length import over_length
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.swatches.yarn import YARN_CLASSES, class_words
from logbook.craft.words.dates import date_words, month_words
from logbook.craft.words.hooks import read_hook, show_hook
from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import Notation, notation
from logbook.craft.words.numbers import grouped, show_number
from logbook.errors import UnreadableError
from logbook.pages.gauges.gauge_words import usual_condition
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.browsing import (
    Filters,
    SwatchLine,
    assumptions_of,
    lines_of,
    matching_in_any_order,
    ranks_of,
    swatch_lines,
    swatches_newest_first,
    whole_swatches,
)
from logbook.tasks.word_search import WordSearch

ANY = "any"
STATES = {Condition.WORKED: "unwashed", Condition.WASHED: "washed", Condition.PINNED: "pinned"}
CLASS_CHOICES = (ANY, *(class_words(one.number) for one in YARN_CLASSES))
CONDITION_CHOICES = (ANY, *(condition.words for condition in Condition))


class FindTexts(NamedTuple):
    """What is typed and chosen to look swatches up by; ``yarn_class`` and ``condition`` are among their choices."""

    words: str = ""
    yarn: str = ""
    stitch: str = ""
    hook: str = ""
    yarn_class: str = ANY
    condition: str = ANY


@dataclass(frozen=True, slots=True)
class FoundSwatches:
    """The uids that match, newest first (None: all of them), how many that is in words, and a sentence for each text at fault, by
    its name; such a text asks for nothing. ``ranks`` says how near the words come: those of the least come first. While it is
    ``still_looking``, ``uids`` are those found so far.
    """

    uids: list[str] | None
    count: str
    errors: Mapping[str, str]
    ranks: Mapping[str, int] = field(default_factory=dict)
    still_looking: bool = False


class SwatchList:
    """All swatches of the logbook, newest first: of each the uid is at hand, its line is read when it is to be seen."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.reload()

    def reload(self) -> None:
        """Takes from the logbook again."""
        self.uids = swatches_newest_first(self._session.book)
        self._there: frozenset[str] | None = None
        self._search = WordSearch(self._session.book, self.uids)

    @property
    def count(self) -> int:
        """How many there are."""
        return len(self.uids)

    @property
    def newest(self) -> str | None:
        """The uid of the swatch at the top; None if there is none."""
        return self.uids[0] if self.uids else None

    def __contains__(self, uid: object) -> bool:
        """Whether there is such a swatch."""
        if self._there is None:
            self._there = frozenset(self.uids)
        return uid in self._there

    @property
    def lines(self) -> Sequence[SwatchLine]:
        """All of them as lines."""
        return swatch_lines(self._session.book)

    def lines_of(self, uids: Sequence[str]) -> Sequence[SwatchLine]:
        """The lines of these, in any order."""
        return lines_of(self._session.book, uids) if uids else ()

    def gauges(self, uids: Sequence[str]) -> dict[str, str]:
        """``15.7 sts × 11 rows washed`` of each; "" where nothing was measured."""
        assumed = assumptions_of(self._session.book)
        return {
            swatch.uid: _gauge_words(swatch, assumed, self._session.units)
            for swatch in (whole_swatches(self._session.book, uids) if uids else ())
        }

    def read_on(self) -> bool:
        """Reads some of the texts that are looked in, before anything is asked for; False if all are there."""
        return self._search.read_on()

    def find(self, texts: FindTexts) -> FoundSwatches:
        """What the texts leave of the list."""
        *_, found = self.found(texts)
        return found

    def found(self, texts: FindTexts) -> Iterator[FoundSwatches]:
        """What the texts leave of the list as far as it was looked through, again and again; at last of all of it."""
        filters, errors = filters_of(texts)
        whole = _swatches(self.count)
        if filters == Filters():
            yield FoundSwatches(None, whole, errors)
            return
        rest = replace(filters, words="")
        among = None if rest == Filters() else set(matching_in_any_order(self._session.book, rest))
        uids: list[str] = []
        for number, some in enumerate(self._search.found(filters.words, among), 1):
            uids += some
            if number < self._search.slices:
                yield FoundSwatches(uids, f"{len(uids)} and more of {whole}", errors, still_looking=True)
        yield FoundSwatches(uids, f"{len(uids)} of {whole}", errors, ranks_of(self._session.book, uids, filters.words))


def cells(line: SwatchLine) -> tuple[str, ...]:
    """A line as shown: all in two lines of text, then tag, yarn, stitch pattern, hook, date, colour."""
    hook = "" if line.hook_mm is None else _hook(line.hook_mm, notation())
    own = (line.tag, line.yarn, line.stitch, hook, line.date, line.colour)
    return (two_lines(own), *own[:4], date_words(line.date), line.colour)


def two_lines(own: Sequence[str], gauge: str = "") -> str:
    """``Limewalk Cotton · shell stitch`` over ``LC-02 · 4.5 mm · 15.7 sts × 11 rows washed · Sep 2024``."""
    tag, yarn, stitch, hook, date, _ = own
    second = (tag, hook, gauge, month_words(date))
    return "\n".join(" · ".join(part for part in parts if part) for parts in ((yarn, stitch), second))


def _gauge_words(swatch: Swatch, assumed: Assumptions, units: Units) -> str:
    gauges = gauges_of(swatch, assumed)
    condition = usual_condition(gauges)
    over_mm, _ = over_length(units)
    pitches = {way: gauges[condition, way].pitch_mm for way in Direction if (condition, way) in gauges}
    counts = " × ".join(f"{show_number(round(over_mm / pitch, 1))} {way.short}" for way, pitch in pitches.items())
    return f"{counts} {STATES.get(condition, condition.words)}" if counts else ""


def sort_key(line: SwatchLine, column: int) -> str | float | None:
    """What one of the cells is sorted by; None stands for an empty one."""
    if column == _DATE:
        return line.date or None
    by = (line.yarn, line.tag, line.yarn or None, line.stitch or None, line.hook_mm, None, line.colour or None)[column]
    return name_key(by) if isinstance(by, str) else by


def sort_keys(line: SwatchLine) -> tuple[str | float | None, ...]:
    """What each cell is sorted by."""
    return tuple(sort_key(line, column) for column in range(_DATE + 2))


_DATE = 5
"""The column of the date, which is no name."""


@lru_cache(maxsize=200)
def _hook(mm: float, _: Notation) -> str:
    """Kept by the notation it is written in: there are few hooks and many swatches."""
    return show_hook(mm)


def _swatches(count: int) -> str:
    return "1 swatch" if count == 1 else f"{grouped(count)} swatches"


def filters_of(texts: FindTexts) -> tuple[Filters, dict[str, str]]:
    """What the texts ask for, and a sentence for each at fault, by its name."""
    hook, errors = None, {}
    try:
        hook = read_hook(texts.hook) if texts.hook.strip() else None
    except UnreadableError as error:
        errors["hook"] = str(error)
    filters = Filters(
        words=texts.words.strip(),
        yarn=texts.yarn.strip(),
        stitch=texts.stitch.strip(),
        hook_mm=hook,
        yarn_class=next((one.number for one in YARN_CLASSES if class_words(one.number) == texts.yarn_class), None),
        condition=next((one for one in Condition if one.words == texts.condition), None),
    )
    return filters, errors
