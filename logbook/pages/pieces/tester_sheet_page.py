"""A sheet of testers' answers being looked at: what each column is taken as, and what comes of it."""

from collections.abc import Mapping

from logbook.pages.own_sheet_page import SheetPage
from logbook.tasks.own_sheets import OwnTable
from logbook.tasks.testers import TESTER_CHOICES, TesterRows, tester_guesses, testers_in


class TesterSheetPage(SheetPage):
    """The page of columns, of testers instead of swatches."""

    choices_there = TESTER_CHOICES
    rest_goes_to = "said"
    _table: OwnTable
    _choices: tuple[str, ...] = ()
    rows: TesterRows

    @property
    def table(self) -> OwnTable:
        return self._table

    @property
    def choices(self) -> tuple[str, ...]:
        return self._choices

    def outcome(self) -> str:
        return self._outcome(len(self.rows.good), "tester", self.rows.problems)

    def left(self) -> str:
        beside = zip(self._table.headings, self._choices, strict=True)
        columns = [f"“{heading}”" for heading, choice in beside if heading and not choice]
        return f"Not used: {', '.join(columns)}." if columns else ""

    def _look_at(self, table: OwnTable) -> None:
        self._table = table
        self._take({})

    def _take(self, kept: Mapping[str, str]) -> None:
        guessed = tester_guesses(self._table)
        headings = (" ".join(heading.casefold().split()) for heading in self._table.headings)
        self._choices = tuple(kept.get(heading, guess) for heading, guess in zip(headings, guessed, strict=True))
        self.rows = testers_in(self._table, self._choices, self._over)
