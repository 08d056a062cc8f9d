"""The form of the stitch pattern in hand: its texts as they are typed, what follows from them, and saving them."""

from collections.abc import Mapping
from dataclasses import replace

from logbook.craft.rows.report import Proof
from logbook.craft.swatches.readings import Counted
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.terms import Terms
from logbook.pages.patterns.meaning import Meaning, meaning_of
from logbook.pages.patterns.message import Message
from logbook.pages.patterns.pattern_texts import (
    SENTENCE,
    FormReading,
    asks_first_stitch,
    read_back,
    read_form,
    texts_of,
    typed,
    with_first_stitch,
    with_sentence,
)
from logbook.pages.patterns.proving import ToProve
from logbook.pages.patterns.rows_card import (
    CHAIN_FIGURES,
    FIRST_STITCH,
    PROVING,
    ROW_FIGURES,
    RowsCard,
    contradictions,
    figures,
    rows_card,
)
from logbook.pages.record_form import RecordForm
from logbook.pages.session import Session
from logbook.pages.swatches.chain_text import pattern_numbers
from logbook.pages.swatches.first_stitches import FirstStitchChoice, first_stitches
from logbook.pages.typed_since import typed_since
from logbook.tasks.browsing import SwatchLine, pattern_list, swatches_of_pattern
from logbook.tasks.drafts import Draft
from logbook.tasks.pieces import copy_names
from logbook.tasks.stitch_patterns import save_pattern, tags_read_in

TAGS_NAMED = 4
FROM_ROWS = ((SENTENCE, *CHAIN_FIGURES), ROW_FIGURES)
"""The fields that proven rows fill in, in groups: all of a group, or none where the user has said some of it."""


_NO_FIRST_STITCH = {key: texts_of(StitchPattern())[key] for key in FIRST_STITCH}


class PatternForm(RecordForm[StitchPattern]):
    """One stitch pattern in hand, new or saved. ``texts`` are changed through ``type_in`` alone."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.saved: StitchPattern | None = None
        self.texts = texts_of(StitchPattern())
        self._clean = dict(self.texts)
        self._filled: set[str] = set()
        self._proven: tuple[tuple[str, str], ToProve, Proof] | None = None
        self._changed_by_saving: tuple[str, ...] = ()
        self.refresh()

    def refresh(self) -> None:
        """Takes the patterns from the logbook again; what is typed stays, as a new one if the pattern in hand is gone."""
        self._patterns = {pattern.uid: pattern for pattern in pattern_list(self._session.book)}
        if self.saved is not None and self.saved.uid not in self._patterns:
            if self.is_dirty:
                self.saved, self._clean = None, texts_of(StitchPattern())
            else:
                self.new()

    @property
    def name(self) -> str:
        """As it is saved, or ``New stitch pattern``."""
        return self.saved.name if self.saved else "New stitch pattern"

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the draft's pattern, or of a new one's namesake, as the logbook has it; None: there is none."""
        if draft.is_new:
            named = (one for one in self._patterns.values() if one.name == draft.typed.get("name", "").strip())
            found = next(named, None)
        else:
            found = self._patterns.get(draft.record)
        return texts_of(found) if found is not None else None

    def changed_elsewhere(self) -> bool:
        """Whether the logbook holds this pattern otherwise now than when it was taken in hand; after ``refresh``."""
        return self.saved is not None and self._patterns.get(self.uid) != self.saved

    def show(self, uid: str) -> bool:
        """Takes a saved pattern in hand; False if it is not there any more."""
        found = self._patterns.get(uid)
        if found is not None:
            self._take(found, texts_of(found))
        return found is not None

    def new(self) -> None:
        """Takes an empty pattern in hand."""
        self._take(None, texts_of(StitchPattern()))

    def same_again(self) -> None:
        """Takes a copy of the saved pattern in hand, under a free name and not saved yet."""
        if self.saved is not None:
            name = next(copy_names(self.saved.name, (pattern.name for pattern in self._patterns.values())))
            self._take(None, texts_of(replace(self.saved, uid="", name=name)))
            self._clean = texts_of(StitchPattern())

    def type_in(self, key: str, text: str) -> None:
        """``text`` stands in the field ``key`` now; what follows from it follows."""
        if self.texts[key] == text:
            return
        by_rows = self._filled.issuperset(FIRST_STITCH)
        before = self.texts | (_NO_FIRST_STITCH if by_rows and key == SENTENCE else {})
        self.texts = typed(before, key, text)
        for group in FROM_ROWS:
            if key in group:
                self._filled.difference_update(group)
        if by_rows and key in (SENTENCE, "multiple", "plus") and (key != SENTENCE or not self._says_first_stitch):
            self._filled.update(FIRST_STITCH)
        if key in ("rows_text", "terms"):
            self.fill_from_rows()
        elif key == SENTENCE:
            self._fill_first_stitch(words=False)

    def begins(self) -> tuple[FirstStitchChoice, ...]:
        """The stitches that the rows may begin with, where the sentence leaves that open; their texts are for ``type_in``."""
        if not asks_first_stitch(self.texts):
            return ()
        pattern = read_form(self.texts).pattern
        return tuple(one._replace(texts=pattern_numbers(one.texts)) for one in first_stitches(pattern, self._session.terms))

    def reading(self) -> FormReading:
        """The pattern as typed, with a sentence for each field that is wrong."""
        reading = read_form(self.texts, self.uid)
        name = reading.pattern.name
        if any(other.name == name and other.uid != self.uid for other in self._patterns.values()):
            taken = f"There is another stitch pattern called “{name}”: choose another name."
            return FormReading(reading.pattern, {"name": taken, **reading.problems})
        return reading

    def meaning(self) -> Meaning:
        """What the pattern as typed means."""
        reading = self.reading()
        return meaning_of(reading.pattern, reading.problems)

    def rows(self) -> RowsCard:
        """What the written rows come to, as far as it is known: the counts beside them, the trouble."""
        return PROVING if self.proving else rows_card(self._proof(), self.reading().pattern)

    def users(self) -> list[SwatchLine]:
        """The swatches that use the pattern in hand."""
        return swatches_of_pattern(self._session.book, self.uid) if self.uid else []

    def messages(self) -> dict[str, Message]:
        """What is to be said under the fields where nothing is wrong."""
        pattern = (reading := self.reading()).pattern
        found = {key: Message(text, "hint") for key, text in _hints(reading).items()}
        if back := read_back(self.texts):
            found[SENTENCE] = Message(back, "hint")
        warnings = contradictions(self._proof(), pattern) | self._gauges_changed(pattern)
        return found | {key: Message(text, "warning") for key, text in warnings.items()}

    def save(self) -> dict[str, str]:
        """Saves what is typed; then it is the pattern in hand. What stands in the way comes back, a sentence a field.

        Raises RefusedError for what is no field's fault; nothing is lost then. What is typed while it waits stays, not saved.
        """
        reading, before = self.reading(), dict(self.texts)
        errors = dict(reading.problems)
        if not self.texts["name"].strip():
            errors["name"] = "Name the stitch pattern, for example “shell stitch”."
        if errors:
            return errors
        changed = self._gauges_changed(reading.pattern).values()
        uid = self._session.write(lambda: save_pattern(self._session.book, reading.pattern))
        since = typed_since(before, self.texts)
        self.refresh()
        self.show(uid)
        self.texts |= since
        self._changed_by_saving = tuple(text.replace("Saving this changes", "This has changed") for text in changed)
        return {}

    def saved_words(self) -> str:
        """What is said after saving: which gauges are others now too."""
        return " ".join((f"“{self.saved.name if self.saved else ''}” is saved.", *self._changed_by_saving))

    @property
    def to_prove(self) -> ToProve | None:
        """What is still to be proven of the rows as typed, what mends them too; None: nothing. ``proven`` takes the outcome."""
        text, terms = self.texts["rows_text"], self.texts["terms"]
        if (
            self._proven is not None
            and self._proven[0] == (text, terms)
            and (self._proven[1].suggests or not self._proven[2].problems)
        ):
            return None
        return ToProve(text, terms, suggests=self._proven is not None and self._proven[0] == (text, terms))

    def proven(self, wanted: ToProve, proof: Proof) -> None:
        """Takes a proof; one of rows that were typed over meanwhile is put aside."""
        if (self.texts["rows_text"], self.texts["terms"]) == (wanted.text, wanted.terms):
            self._proven = ((wanted.text, wanted.terms), wanted, proof)
            self.fill_from_rows()

    @property
    def proving(self) -> bool:
        """Whether the rows as typed are too long to be proven while the user waits, and are not proven yet."""
        return self._known() is None

    def _known(self) -> Proof | None:
        """The proof of the rows as typed; None while it is to come."""
        text, terms = self.texts["rows_text"], self.texts["terms"]
        if self._proven is None or self._proven[0] != (text, terms):
            wanted = ToProve(text, terms, suggests=False)
            if not wanted.is_quick:
                return None
            self._proven = ((text, terms), wanted, wanted.proof())
        return self._proven[2]

    def _proof(self) -> Proof:
        return self._known() or Proof(Terms.US)

    def fill_from_rows(self) -> None:
        """Proven rows fill in what the user has not said; what they filled in before goes when they are proven no more."""
        found = figures(self._proof())
        empty = texts_of(StitchPattern())
        for group in FROM_ROWS:
            if all(key in self._filled or self.texts[key] == empty[key] for key in group):
                self.texts |= {key: found.get(key, empty[key]) for key in group}
                self._filled |= set(group)
        if SENTENCE in self._filled:
            self.texts = with_sentence(self.texts)
        else:
            self._fill_first_stitch(words=True)

    @property
    def _says_first_stitch(self) -> bool:
        return any(self.texts[key] != text for key, text in _NO_FIRST_STITCH.items())

    def _fill_first_stitch(self, *, words: bool) -> None:
        """Where the user has said how many, and not which stitch the rows begin with, proven rows say that alone."""
        if not self.texts[SENTENCE].strip() or (self._says_first_stitch and not self._filled.issuperset(FIRST_STITCH)):
            return
        found = figures(self._proof())
        first = {key: found.get(key, text) for key, text in _NO_FIRST_STITCH.items()}
        if any(self.texts[key] != text for key, text in first.items()):
            self.texts = with_first_stitch(self.texts, first, words=words)
        self._filled.update(FIRST_STITCH)

    def _gauges_changed(self, now: StitchPattern) -> dict[str, str]:
        """By field, the swatches whose gauge would be another if ``now`` were saved, because they were read in repeats."""
        found = {}
        for key, counted in (("multiple", Counted.REPEATS), ("rows_in_repeat", Counted.ROW_REPEATS)):
            if self.saved is not None and getattr(now, key) != getattr(self.saved, key):
                tags = tags_read_in(self._session.book, self.saved, counted)
                if tags:
                    found[key] = f"Saving this changes the gauge of {_named(tags)}, read in {counted}."
        return found

    def _take(self, saved: StitchPattern | None, texts: dict[str, str]) -> None:
        self.saved, self.texts, self._clean = saved, texts, dict(texts)
        self._filled.clear()


def _hints(reading: FormReading) -> dict[str, str]:
    pattern = reading.pattern
    if pattern.extra_chains is None and pattern.first_stitch is not None and not reading.problems:
        return {"extra_chains": f"Extra chains: {pattern.extra()}, as the first stitch says."}
    return {}


def _named(tags: list[str]) -> str:
    more = len(tags) - TAGS_NAMED
    return ", ".join(tags[:TAGS_NAMED]) + (f" and {more} more" if more > 0 else "")
