"""Taking the sizes of a run from a body chart, which may be edited and kept."""

from dataclasses import dataclass

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.body_chart import MEASURES, End, chart_of_text, is_childs_size
from logbook.craft.sizes.size_run import sizes_of_chart
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import read_length
from logbook.errors import LogbookError
from logbook.pages.drafts import CHARTS, draft_of
from logbook.pages.pieces.chart_table import table_of, text_of
from logbook.pages.pieces.plan_texts import taken_unit
from logbook.pages.session import Session
from logbook.tasks.body_charts import BUILT_IN, chart_texts, delete_chart, save_chart
from logbook.tasks.drafts import Draft
from logbook.tasks.note_words import CHILDREN_CAUTION

ENDS = {"the middle": End.MIDDLE, "the low end": End.LOW, "the high end": End.HIGH}
ROUND = ("bust", "waist", "hip")
"""The measures that a garment may go round."""
assert set(ROUND) <= set(MEASURES)


@dataclass(frozen=True, slots=True)
class Chosen:
    """The sizes that the texts come to; empty with a sentence in ``error`` where they can't be read. ``says`` goes with them."""

    plans: tuple[SizePlan, ...]
    error: str = ""
    says: str = ""


class ChartChoice:
    """The charts of the logbook, each as a text of lines in cm; ``typed`` is the name and the text of the one in hand."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.texts = chart_texts(session.book)
        self.typed = (self.names[0], self.texts[self.names[0]])

    @property
    def is_dirty(self) -> bool:
        """Whether the chart in hand is typed and not saved."""
        name, text = self.typed
        return (bool(name.strip()) or bool(text.strip())) and _as_typed(self.texts.get(name, "")) != _as_typed(text)

    def draft(self) -> Draft | None:
        """What is to be kept of it while it is typed."""
        if not self.is_dirty:
            return None
        (name, text), there = self.typed, self.texts.get(self.typed[0], "")
        opened = {"name": name if there else "", "table": _as_typed(there)}
        return draft_of(CHARTS, name if there else "", name, self._session.units.value, {"name": name, "table": text}, opened)

    def kept(self, name: str) -> dict[str, str] | None:
        """The texts of a draft's chart as the logbook has it; None if it has none of that name."""
        return {"name": name, "table": _as_typed(self.texts[name])} if name in self.texts else None

    @property
    def names(self) -> tuple[str, ...]:
        """The charts there are."""
        return tuple(self.texts)

    @property
    def waits(self) -> bool:
        """Whether a chart is being saved, which waits for another program."""
        return self._session.waiting

    def sizes(self, text: str, end: str, measure: str, deeper: str) -> Chosen:
        """What the chart as typed comes to; ``deeper``: how much deeper than the chart's the armholes are ("": no armholes)."""
        try:
            chart = chart_of_text("", text)
            more = read_length(deeper, self._session.units, "a depth") if deeper.strip() else None
            plans = sizes_of_chart(chart, ENDS[end], measure, more)
        except LogbookError as error:
            return Chosen((), str(error))
        children = any(is_childs_size(plan.name) for plan in plans)
        return Chosen(plans, says=f"{counted(len(plans), 'size')}. {CHILDREN_CAUTION if children else ''}".strip())

    def taken_unit(self, deeper: str) -> str:
        """The unit that a depth typed without one is read in; "" where there is nothing to say."""
        return taken_unit(deeper, self._session.units)

    def save(self, name: str, text: str) -> str:
        """Keeps the chart under its name and says so. Raises a LogbookError, in one sentence, if it can't be."""
        self._session.write(lambda: save_chart(self._session.book, name.strip(), text))
        self.texts = chart_texts(self._session.book)
        self.typed = (name.strip(), text)
        return f"The body chart “{name.strip()}” is saved."

    def delete(self, name: str) -> str:
        """Takes a chart out, or a built-in one back to what it was, and says so."""
        self._session.write(lambda: delete_chart(self._session.book, name))
        self.texts = chart_texts(self._session.book)
        return f"The body chart “{name}” is {'as it first was' if name in BUILT_IN else 'deleted'}. Undo brings yours back."


def _as_typed(text: str) -> str:
    """A chart's text as the table has it."""
    return text_of(*table_of(text)) if text.strip() else ""
