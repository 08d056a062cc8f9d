"""The page of stitch patterns: the list, the one in hand as it is typed, and what follows from it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from logbook.craft.rows.report import Proof
from logbook.craft.swatches.readings import Counted
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.pages.patterns.form import SENTENCE, FormReading, read_back, read_form, texts_of, typed, with_sentence
from logbook.pages.patterns.meaning import Meaning, meaning_of
from logbook.pages.patterns.message import Message
from logbook.pages.patterns.proving import ToProve
from logbook.pages.patterns.rows_card import CHAIN_FIGURES, PROVING, ROW_FIGURES, RowsCard, contradictions, figures, rows_card
from logbook.pages.patterns.wording import in_short
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE, typed_since
from logbook.tasks.browsing import SwatchLine, matching_patterns, pattern_list, pattern_uses, swatches_of_pattern
from logbook.tasks.drafts import Draft
from logbook.tasks.stitch_patterns import delete_pattern, save_pattern, tags_read_in

TAGS_NAMED = 4
NEW = "New stitch pattern"
FROM_ROWS = ((SENTENCE, *CHAIN_FIGURES), ROW_FIGURES)
"""The fields that proven rows fill in, in groups: all of a group, or none where the user has said some of it."""


@dataclass(frozen=True, slots=True)
class PatternLine:
    """A stitch pattern as a line of the list: its multiple in short, and how many swatches use it."""

    uid: str
    name: str
    multiple: int | None
    in_short: str
    swatches: int


class StitchPatterns:
    """The pattern in hand is ``saved`` as the logbook has it (no uid: a new one), and ``texts`` as the form shows it."""

    def __init__(self, session: Session) -> None:
        self.session = session
        self._filled: set[str] = set()
        self._proven: tuple[tuple[str, str], ToProve, Proof] | None = None
        self.saved = StitchPattern()
        self.texts = texts_of(self.saved)
        self.reload()
        session.on_records(lambda _: self.reload())

    def reload(self) -> None:
        """Reads the logbook again, after others have changed it. What is typed and not saved stays."""
        self._patterns = {pattern.uid: pattern for pattern in pattern_list(self.session.book)}
        self._uses = pattern_uses(self.session.book)
        now = self._patterns.get(self.saved.uid)
        if not self.unsaved:
            self._take(now or StitchPattern())
        elif now is None:
            self.saved = StitchPattern()

    @property
    def lines(self) -> list[PatternLine]:
        """All patterns in the order of their names, great and small letters alike."""
        patterns = sorted(self._patterns.values(), key=lambda pattern: pattern.name.casefold())
        return [PatternLine(p.uid, p.name, p.multiple, in_short(p), self._uses.get(p.uid, 0)) for p in patterns]

    def matching(self, words: str) -> list[str]:
        """The uids of the patterns in which all the words are found."""
        return matching_patterns(self._patterns.values(), words)

    def number_found(self, words: str) -> str:
        """``7 stitch patterns``, or while something is looked for ``2 of 7 stitch patterns``."""
        all_of_them = f"{len(self._patterns)} stitch pattern{'s' * (len(self._patterns) != 1)}"
        return f"{len(self.matching(words))} of {all_of_them}" if words.strip() else all_of_them

    @property
    def unsaved(self) -> bool:
        """Whether the form holds something the logbook does not."""
        opened = self.opened
        return any(text.strip() != opened[key].strip() for key, text in self.texts.items())

    @property
    def opened(self) -> Mapping[str, str]:
        """The texts of the pattern in hand as it was when it was taken in hand."""
        return texts_of(self.saved)

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the draft's pattern, or of a new one's namesake, as the logbook has it; None: there is none."""
        if draft.is_new:
            named = (one for one in self._patterns.values() if one.name == draft.typed.get("name", "").strip())
            found = next(named, None)
        else:
            found = self._patterns.get(draft.record)
        return texts_of(found) if found is not None else None

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> None:
        """Takes the draft's pattern in hand, or a new one where there is none, with these texts typed."""
        self.take(draft.record)
        self.texts |= {key: text for key, text in texts.items() if key in self.texts}

    def changed_elsewhere(self) -> bool:
        """Whether the logbook holds the pattern in hand otherwise now than when it was taken in hand."""
        return bool(self.saved.uid) and self._patterns.get(self.saved.uid) != self.saved

    @property
    def title(self) -> str:
        """What stands above the form."""
        name = self.saved.name or NEW
        return f"{name} · not saved" if self.unsaved else name

    def take(self, uid: str) -> None:
        """Takes the pattern with that uid in hand, a new one if there is none; what was typed before is gone."""
        self._take(self._patterns.get(uid, StitchPattern()))

    def type(self, key: str, text: str) -> None:
        """``text`` stands in the field ``key`` now; what follows from it follows."""
        if self.texts[key] == text:
            return
        self.texts = typed(self.texts, key, text)
        for group in FROM_ROWS:
            if key in group:
                self._filled.difference_update(group)
        if key in ("rows_text", "terms"):
            self._fill_from_rows()

    def reading(self) -> FormReading:
        """The pattern as typed, with a sentence for each field that is wrong."""
        reading = read_form(self.texts, self.saved.uid)
        name = reading.pattern.name
        if any(other.name == name and other.uid != self.saved.uid for other in self._patterns.values()):
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
        return swatches_of_pattern(self.session.book, self.saved.uid) if self.saved.uid else []

    def messages(self) -> dict[str, Message]:
        """What is to be said under the fields."""
        reading = self.reading()
        found = {key: Message(text, "hint") for key, text in _hints(reading).items()}
        if back := read_back(self.texts):
            found[SENTENCE] = Message(back, "hint")
        said = contradictions(self._proof(), reading.pattern)
        found |= {key: Message(text, "warning") for key, text in said.items()}
        found |= {key: Message(text, "warning") for key, text in self._gauges_changed(reading.pattern).items()}
        return found | {key: Message(text, "error") for key, text in reading.problems.items()}

    def save(self) -> str:
        """Saves the pattern as typed and says so; what is typed while it waits stays, not saved.

        Raises RefusedError, in one sentence, if it can't be saved as it is.
        """
        reading, before = self.reading(), dict(self.texts)
        if reading.problems:
            raise RefusedError(next(iter(reading.problems.values())))
        changed = self._gauges_changed(reading.pattern).values()
        uid = self.session.write(lambda: save_pattern(self.session.book, reading.pattern))
        since = typed_since(before, self.texts)
        self._take(replace(reading.pattern, uid=uid))
        self.texts |= since
        self.session.records_changed(self)
        said = ("Saved.", *(text.replace("Saving this changes", "This has changed") for text in changed))
        return " ".join((*said, MEANWHILE) if since else said)

    def revert(self) -> None:
        """Shows the pattern as the logbook has it."""
        self.take(self.saved.uid)

    def delete(self) -> str:
        """Deletes the pattern in hand, takes the next one, and says so. Raises RefusedError while swatches use it."""
        gone, uids = self.saved, [line.uid for line in self.lines]
        self.session.write(lambda: delete_pattern(self.session.book, gone))
        place = uids.index(gone.uid)
        following = [*uids[place + 1 :], *reversed(uids[:place]), ""]
        if not self.unsaved:  # else it was typed while this waited, and stays as a new one
            self.take(following[0])
        self.session.records_changed(self)
        return f"Deleted “{gone.name}”; undo brings it back."

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
            self._fill_from_rows()

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

    def _fill_from_rows(self) -> None:
        """Proven rows fill in what the user has not said; what they filled in before goes when they are proven no more."""
        found = figures(self._proof())
        empty = texts_of(StitchPattern())
        for group in FROM_ROWS:
            if all(key in self._filled or self.texts[key] == empty[key] for key in group):
                self.texts |= {key: found.get(key, empty[key]) for key in group}
                self._filled |= set(group)
        if SENTENCE in self._filled:
            self.texts = with_sentence(self.texts)

    def _gauges_changed(self, now: StitchPattern) -> dict[str, str]:
        """By field, the swatches whose gauge would be another if ``now`` were saved, because they were read in repeats."""
        found = {}
        for key, counted in (("multiple", Counted.REPEATS), ("rows_in_repeat", Counted.ROW_REPEATS)):
            if self.saved.uid and getattr(now, key) != getattr(self.saved, key):
                tags = tags_read_in(self.session.book, self.saved, counted)
                if tags:
                    found[key] = f"Saving this changes the gauge of {_named(tags)}, read in {counted}."
        return found

    def _take(self, pattern: StitchPattern) -> None:
        self.saved = pattern
        self.texts = texts_of(pattern)
        self._filled.clear()


def _hints(reading: FormReading) -> dict[str, str]:
    pattern = reading.pattern
    if pattern.extra_chains is None and pattern.first_stitch is not None and not reading.problems:
        return {"extra_chains": f"Extra chains: {pattern.extra()}, as the first stitch says."}
    return {}


def _named(tags: list[str]) -> str:
    more = len(tags) - TAGS_NAMED
    return ", ".join(tags[:TAGS_NAMED]) + (f" and {more} more" if more > 0 else "")
