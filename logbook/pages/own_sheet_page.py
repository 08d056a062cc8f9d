"""What the page for a sheet in the maker's own words decides: what each column is taken as, and what comes of it."""

from abc import ABC, abstractmethod
from collections.abc import Mapping, Sequence

from logbook.craft.words.counting import counted
from logbook.errors import LogbookError
from logbook.tasks.own_sheets import (
    CHOICES,
    Over,
    OwnSheet,
    OwnTable,
    RawSheet,
    SheetChoices,
    SheetProblem,
    found_table,
    own_table,
    read_over,
)

NOT_TAKEN = "not used"
ROWS_SHOWN = 6
TROUBLES_SHOWN = 3
_LONGEST = 40


class SheetPage(ABC):
    """One sheet (of ``sheets``, of the file or clipboard ``name``) being looked at, and what its columns are taken as.

    ``remembered`` is what was chosen before for sheets with these headings, by ``signature``.
    """

    choices_there: tuple[str, ...] = ()
    """What a column may be taken as."""
    rest_goes_to = ""
    """What several columns may be taken as together, those that are left among them."""

    def __init__(self, name: str, sheets: Sequence[RawSheet], remembered: Mapping[str, Mapping[str, str]]) -> None:
        self.name, self._sheets, self._remembered = name, sheets, remembered
        self.over, self.trouble = "", ""
        self._over: Over | None = None
        self._chosen: dict[str, str] = {}
        self.take_sheet(None)

    @property
    @abstractmethod
    def table(self) -> OwnTable:
        """The table that was found."""

    @property
    @abstractmethod
    def choices(self) -> tuple[str, ...]:
        """What each column is taken as ("": not)."""

    @abstractmethod
    def outcome(self) -> str:
        """What would come of it, and the first of what can't be read."""

    @abstractmethod
    def left(self) -> str:
        """What is not taken."""

    @abstractmethod
    def _look_at(self, table: OwnTable) -> None:
        """Takes a table with the guess of its columns."""

    @abstractmethod
    def _take(self, kept: Mapping[str, str]) -> None:
        """Takes its columns with these choices by heading."""

    @property
    def options(self) -> tuple[str, ...]:
        """What can be chosen for a column."""
        return (NOT_TAKEN, *self.choices_there)

    @property
    def sheet_names(self) -> tuple[str, ...]:
        """The sheets to choose from."""
        return tuple(sheet.name for sheet in self._sheets)

    @property
    def signature(self) -> str:
        """The headings, by which what was chosen is remembered."""
        return "|".join(_key(heading) for heading in self.table.headings)

    @property
    def columns(self) -> list[tuple[str, str, list[str]]]:
        """Of each column its heading, what it is taken as, and what stands in its first rows."""
        rows = self.table.rows[:ROWS_SHOWN]
        return [
            (
                heading,
                choice or NOT_TAKEN,
                [_short(row.cells[place]) if place < len(row.cells) else "" for row in rows],
            )
            for place, (heading, choice) in enumerate(zip(self.table.headings, self.choices, strict=True))
        ]

    def take_sheet(self, name: str | None) -> None:
        """Looks at one sheet of the workbook, or the one most like what is looked for. Raises RefusedError without a table."""
        self._look_at(found_table(self.name, [sheet for sheet in self._sheets if name in (None, sheet.name)]))
        self._chosen = dict(self._remembered.get(self.signature, {}))
        self._work_out()

    def choose(self, place: int, choice: str) -> None:
        """Takes a column as what the maker says; another that was taken as that is not taken any more."""
        headings = self.table.headings
        if choice not in (NOT_TAKEN, self.rest_goes_to):
            for other, own in enumerate(self.choices):
                if own == choice and other != place:
                    self._chosen[_key(headings[other])] = ""
        self._chosen[_key(headings[place])] = "" if choice == NOT_TAKEN else choice
        self._work_out()

    def say_over(self, typed: str) -> None:
        """The width that counts are over, as typed; ``trouble`` says so if it can't be read."""
        self.over, self.trouble = typed, ""
        try:
            self._over = read_over(typed) if typed.strip() else None
        except LogbookError as error:
            self._over, self.trouble = None, str(error)
        self._work_out()

    def sentence(self) -> str:
        """Where the table stands."""
        table = self.table
        return (
            f"The headings are in row {table.heading_row} of “{table.sheet}”, with {counted(len(table.rows), 'row')} beneath. "
            "Under each heading is what its column was recognised as: choose another where that is wrong."
        )

    def to_remember(self) -> dict[str, str]:
        """What was chosen, by heading."""
        return {_key(h): choice for h, choice in zip(self.table.headings, self.choices, strict=True) if h}

    def _work_out(self) -> None:
        chosen = {heading: choice for heading, choice in self._chosen.items() if choice == "" or choice in self.choices_there}
        there = {_key(heading) for heading in self.table.headings}
        self._take({heading: choice for heading, choice in chosen.items() if heading in there})

    def _outcome(self, good: int, what: str, problems: Sequence[SheetProblem]) -> str:
        bad = len({problem.row for problem in problems})
        said = f"{counted(good, what)} can be read" + (f", {counted(bad, 'row')} can't:" if bad else ".")
        troubles = [f"Row {p.row}, {p.column}: {p.says}" if p.column else p.says for p in problems[:TROUBLES_SHOWN]]
        if len(problems) > TROUBLES_SHOWN:
            troubles.append(f"and {len(problems) - TROUBLES_SHOWN} more, all listed in the next step.")
        return "\n".join([said, *troubles])


class OwnSheetPage(SheetPage):
    """A sheet of swatches."""

    choices_there = CHOICES
    rest_goes_to = "notes"
    own: OwnSheet

    @property
    def table(self) -> OwnTable:
        return self.own.table

    @property
    def choices(self) -> tuple[str, ...]:
        return self.own.choices

    def rest_to_notes(self) -> None:
        """Takes every column that is left into the notes."""
        for heading, choice in zip(self.table.headings, self.choices, strict=True):
            if heading and not choice:
                self._chosen[_key(heading)] = "notes"
        self._work_out()

    def outcome(self) -> str:
        return self._outcome(len(self.own.swatches.good), "swatch", self.own.swatches.problems)

    def left(self) -> str:
        columns = [f"“{_short(heading)}”" for heading in self.own.rows.not_taken]
        said = [f"Not used: {', '.join(columns)}."] if columns else []
        rows = [str(row) for row, _ in self.own.rows.aside]
        if rows:
            shown = ", ".join(rows[:10]) + (" …" if len(rows) > 10 else "")
            said.append(f"Skipped, as there is no swatch in them: row{'s' if len(rows) > 1 else ''} {shown}.")
        return " ".join(said)

    def _look_at(self, table: OwnTable) -> None:
        self.own = own_table(table, SheetChoices(over=self._over))

    def _take(self, kept: Mapping[str, str]) -> None:
        self.own = own_table(self.own.table, SheetChoices(kept, over=self._over))


def _key(heading: str) -> str:
    return " ".join(heading.casefold().split())


def _short(cell: object) -> str:
    text = "" if cell is None else " ".join(str(int(cell) if isinstance(cell, float) and cell.is_integer() else cell).split())
    return text if len(text) <= _LONGEST else text[: _LONGEST - 1] + "…"


def remembering(
    before: Mapping[str, Mapping[str, str]], signature: str, chosen: Mapping[str, str], most: int
) -> dict[str, dict[str, str]]:
    """The choices remembered, with these as the latest; the oldest are forgotten."""
    others = {key: dict(value) for key, value in before.items() if key != signature}
    kept: Sequence[str] = list(others)[-(most - 1) :]
    return {key: others[key] for key in kept} | {signature: dict(chosen)}
