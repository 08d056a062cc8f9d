"""The form of the piece in hand: its texts as they are typed, the swatches they name, and saving them."""

from collections.abc import Mapping
from dataclasses import replace

from logbook.craft.pieces.fit import ADULT_HEAD_MM
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.words.lengths import Units
from logbook.pages.pieces.plan_texts import ReadPlan, read_plan, texts_of
from logbook.pages.pieces.size_texts import ReadSizes, read_sizes, sizes_text
from logbook.pages.record_form import RecordForm
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_choice import SwatchChoice
from logbook.pages.typed_since import typed_since
from logbook.tasks.drafts import Draft
from logbook.tasks.pieces import copy_of, planned_pieces, save_piece

NEW = PlannedPiece(plan=PiecePlan(head_mm=ADULT_HEAD_MM))


class PieceForm(RecordForm[PlannedPiece]):
    """One piece in hand, new or saved. ``texts`` are changed through ``type_in`` alone."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.saved: PlannedPiece | None = None
        self._start = NEW
        self._swatches = SwatchChoice(session)
        self.refresh()
        self.new()

    def refresh(self) -> None:
        """Takes pieces and swatches from the logbook again; what is typed stays."""
        self._pieces = {piece.uid: piece for piece in planned_pieces(self._session.book)}
        self._swatches.refresh()

    @property
    def name(self) -> str:
        """As it is saved, or ``New piece``."""
        return self.saved.name if self.saved else "New piece"

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the draft's piece, or of a new one's namesake, as the logbook has it; None: there is none."""
        if draft.is_new:
            named = (piece for piece in self._pieces.values() if piece.name == draft.typed.get("name", "").strip())
            found = next(named, None)
        else:
            found = self._pieces.get(draft.record)
        return self._texts_of(found, Units(draft.units)) if found is not None else None

    def type_in(self, key: str, text: str) -> None:
        """Takes the text of one field as it stands now."""
        self.texts[key] = text

    def read(self) -> ReadPlan:
        """The plan as it stands typed."""
        read = read_plan(self.texts, self._session.units)
        wrong = {key: no for key in ("swatch", "edge swatch") if (no := self._swatches.unknown(self.texts[key]))}
        return replace(read, plan=None if wrong else read.plan, errors={**wrong, **read.errors}) if wrong else read

    def sizes(self) -> ReadSizes:
        """The sizes of its run as they stand typed."""
        return read_sizes(self.texts["sizes"], self._session.units)

    def swatch_uid(self, key: str = "swatch") -> str:
        """The uid of the swatch typed by its tag or by words, "" for none that is known."""
        return self._swatches.uid(self.texts[key])

    def swatch_tag(self, key: str = "swatch") -> str:
        """The tag of the swatch typed, or the text where it is none that is known."""
        return self._swatches.tag(self.texts[key])

    def swatch_words(self, key: str = "swatch") -> str:
        """What the swatch typed is worked of: ``shell stitch, Limewalk Cotton, 4.5 mm``."""
        return self._swatches.words(self.texts[key])

    def swatch_hook(self) -> float | None:
        """The hook of the swatch typed, in mm."""
        line = self._swatches.line(self.texts["swatch"])
        return line.hook_mm if line else None

    def offered(self, text: str) -> list[str]:
        """Swatches in which all the words are found, newest first, each with its tag before the rest."""
        return self._swatches.offered(text)

    def show(self, uid: str) -> bool:
        """Takes a saved piece in hand; False if it is not there any more."""
        found = self._pieces.get(uid)
        if found is not None:
            self._take(found, found)
        return found is not None

    def new(self) -> None:
        """Takes an empty piece in hand."""
        self._take(None, NEW)

    def same_again(self) -> None:
        """Takes a copy of the saved piece in hand, under a free name and not saved yet."""
        if self.saved is not None:
            copy = copy_of(self.saved, (piece.name for piece in self._pieces.values()))
            self._take(None, copy)
            self._clean = dict.fromkeys(self.texts, "")

    def save(self) -> Mapping[str, str]:
        """Saves what is typed; then it is the piece in hand. What stands in the way comes back, a sentence a field.

        Raises RefusedError for what is no field's fault; nothing is lost then. What is typed while it waits stays, not saved.
        """
        read, sizes, before = self.read(), self.sizes(), dict(self.texts)
        errors = {**self._lacking(read), **read.errors, **({"sizes": next(iter(sizes.errors.values()))} if sizes.errors else {})}
        if errors or read.plan is None:
            return errors
        piece = replace(
            self._start,
            uid=self.uid,
            plan=read.plan,
            swatch=self.swatch_uid(),
            edge_swatch=self.swatch_uid("edge swatch"),
            condition=read.condition,
            notes=self.texts["notes"].strip(),
            sizes=sizes.plans,
        )
        uid = self._session.write(lambda: save_piece(self._session.book, piece))
        since = typed_since(before, self.texts)
        self.refresh()
        self.show(uid)
        self.texts |= since
        return {}

    def changed_elsewhere(self) -> bool:
        """Whether the logbook holds this piece otherwise now than when it was taken in hand; after ``refresh``."""
        return self.saved is not None and self._pieces.get(self.uid) != self.saved

    def units_changed(self) -> None:
        """Other units: what is not touched is shown in them."""
        if not self.is_dirty:
            self._take(self.saved, self._start)

    def _take(self, saved: PlannedPiece | None, shown: PlannedPiece) -> None:
        self.saved, self._start = saved, shown
        self.texts = self._texts_of(shown, self._session.units)
        self._clean = dict(self.texts)

    def _texts_of(self, piece: PlannedPiece, units: Units) -> dict[str, str]:
        tags = [self._swatches.named(uid) for uid in (piece.swatch, piece.edge_swatch)]
        return {**texts_of(piece, units, *tags), "sizes": sizes_text(piece.sizes, units)}

    def _lacking(self, read: ReadPlan) -> dict[str, str]:
        lacking = {}
        name = self.texts["name"].strip()
        if not name:
            lacking["name"] = "Name the piece, for example “Vest, back and front”."
        if any(piece.name == name and uid != self.uid for uid, piece in self._pieces.items()):
            lacking["name"] = f"There is another piece called “{name}”: choose another name."
        if read.missing and not self.texts["swatch"].strip():
            lacking["swatch"] = read.missing
        elif read.missing:
            lacking["length" if self.texts["width"].strip() or self.texts["body"].strip() else "width"] = read.missing
        return lacking
