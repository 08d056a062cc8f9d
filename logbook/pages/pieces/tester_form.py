"""Those who try the pattern in hand: their list, the one in the form, what their measures say, and sheets of answers."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from logbook.craft.pieces.made_fields import kept_readings
from logbook.craft.sizes.tester import TESTER_FIELDS, Tester, TesterState
from logbook.craft.swatches.fields import LogField
from logbook.craft.words.lengths import Units, show_length
from logbook.errors import RefusedError
from logbook.pages.drafts import TESTERS, draft_of
from logbook.pages.pieces.plan_texts import length_text
from logbook.pages.pieces.tester_sheet_page import TesterSheetPage
from logbook.pages.session import Session
from logbook.pages.text_reader import TextReader
from logbook.pages.typed_since import typed_since
from logbook.tasks.drafts import Draft
from logbook.tasks.own_sheets import RawSheet
from logbook.tasks.testers import (
    Pattern,
    delete_tester,
    off_sentences,
    save_round_sheet,
    save_testers,
    taken_together,
    testers_of,
    trial_of,
)

FIELDS = {field.name.removesuffix(" cm"): field for field in TESTER_FIELDS}
"""The fields of the form, by the name of their text."""
STATES = tuple(state.value for state in TesterState)
HEADINGS = ("Name", "Size", "State", "Width", "Length", "Gauge")
_OF = "of"


class TesterForm:
    """The testers of ``of``; ``tester`` is the one in the form, whose ``texts`` are changed through ``type_in`` alone."""

    def __init__(self, session: Session, of: Pattern) -> None:
        self._session, self.of = session, of
        self.testers: dict[str, Tester] = {}
        self.tester = Tester()
        self.texts: dict[str, str] = {}
        self._clean: dict[str, str] = {}
        self.sizes: tuple[str, ...] = ()
        self.parts: tuple[str, ...] = ()
        try:
            trial = trial_of(session.book, of)
            self.sizes, self.parts = trial.sizes, trial.parts
        except RefusedError as error:
            self.trouble = str(error)
        else:
            self.trouble = ""
        self.reload()
        self.show(next(iter(self.testers), ""))

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""
        return self.texts != self._clean

    @property
    def title(self) -> str:
        """What it is about."""
        return f"Testers of “{self.of.name}”"

    def reload(self) -> None:
        """Takes them from the logbook again."""
        self.testers = {tester.uid: tester for tester in testers_of(self._session.book, self.of)}

    def show(self, uid: str) -> None:
        """Takes one in the form; "" for a new one."""
        self.tester = self.testers.get(uid, Tester())
        self.texts = {key: _text(field, self.tester, self._session.units) for key, field in FIELDS.items()}
        self._clean = dict(self.texts)

    def type_in(self, key: str, text: str) -> None:
        """Takes the text of one field."""
        self.texts[key] = text

    def errors(self) -> Mapping[str, str]:
        """A sentence for each text that can't be read, and for a name that is missing; with nothing typed none."""
        return self._read()[1] if self.is_dirty else {}

    def save(self) -> Mapping[str, str]:
        """Saves the one in the form; what stands in the way comes back, a sentence a field. Raises RefusedError.

        What is typed while it waits makes ``is_dirty``.
        """
        (tester, errors), before = self._read(), dict(self.texts)
        if not errors:
            known = set(self.testers)
            self._session.write(lambda: save_testers(self._session.book, self.of, [tester]))
            self.reload()
            since = typed_since(before, self.texts)
            self.show(tester.uid or next(uid for uid in self.testers if uid not in known))
            self.texts |= since
        return errors

    def delete(self) -> None:
        """Takes the one in the form out."""
        if self.tester.uid:
            self._session.write(lambda: delete_tester(self._session.book, self.of, self.tester))
        self.reload()
        self.show(next(iter(self.testers), ""))

    def sentences(self) -> Sequence[str]:
        """Which size is off beyond what gauge explains."""
        if self.trouble:
            return (self.trouble,)
        return off_sentences(self._session.book, self.of, list(self.testers.values()))

    def lines(self) -> Sequence[tuple[str, tuple[str, ...]]]:
        """Each tester's uid with the cells of the list."""
        units = self._session.units
        return [(uid, _cells(tester, units)) for uid, tester in self.testers.items()]

    def sheet_page(self, name: str, sheets: Sequence[RawSheet]) -> TesterSheetPage:
        """A sheet of answers, to say what its columns are. Raises RefusedError without a table."""
        return TesterSheetPage(name, sheets, self._session.settings.sheets)

    def take_in(self, page: TesterSheetPage) -> str:
        """Takes the answers in, in one step of undo, and says what came of it. Raises RefusedError; then nothing is written."""
        coming = list(page.rows.good.values())
        if not coming:
            return "There are no testers in that sheet."
        together = taken_together(list(self.testers.values()), coming)
        new = sum(not tester.uid for tester in together)
        self._session.write(lambda: save_testers(self._session.book, self.of, together))
        self.reload()
        self.show(next(iter(self.testers), ""))
        return f"{new} added, {len(together) - new} updated. Edit → Undo takes it back."

    def save_sheet(self, target: Path) -> None:
        """Writes the sheet to send round. Raises RefusedError."""
        save_round_sheet(self._session.book, self.of, target)

    def draft(self) -> Draft | None:
        """What is to be kept of it while it is typed."""
        of = {_OF: self.of.uid}
        typed, opened = {**of, **self.texts}, {**of, **self._clean}
        return draft_of(TESTERS, self.tester.uid, self.tester.name, self._session.units.value, typed, opened)

    def take_up(self, uid: str, texts: Mapping[str, str]) -> None:
        """Takes one in the form with these texts typed."""
        self.show(uid)
        self.texts |= {key: text for key, text in texts.items() if key in self.texts}

    def _read(self) -> tuple[Tester, dict[str, str]]:
        reader, units = TextReader(self.texts), self._session.units
        values = {
            field.attribute: reader.value(key, partial(_value, field, units=units), field.empty) for key, field in FIELDS.items()
        }
        errors = reader.errors
        if not values["name"] and "name" not in errors:
            errors["name"] = "Give a name or initials."
        return replace(self.tester, **values), errors


def tested_pattern(draft: Draft) -> str:
    """The uid of what a draft's tester tries."""
    return draft.typed.get(_OF, "")


def _value(field: LogField, text: str, units: Units) -> Any:
    if field.attribute == "readings" and text.strip():
        return kept_readings(text.strip(), units)
    if field.attribute == "state" and not text.strip():
        return TesterState.ASKED.value
    return field.typed(text, units)


def _text(field: LogField, tester: Tester, units: Units) -> str:
    value = getattr(tester, field.attribute)
    return length_text(value, units) if field.in_cm else field.in_form(value)


def _cells(tester: Tester, units: Units) -> tuple[str, ...]:
    width, length = ("–" if mm is None else show_length(mm, units) for mm in (tester.width_mm, tester.length_mm))
    return (tester.name, tester.size, tester.state, width, length, tester.readings)
