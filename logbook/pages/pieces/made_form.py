"""A made piece as it is typed: what was really worked, predicted beside measured."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from logbook.craft.pieces.made_fields import MADE_FIELDS, shown_text, typed_value
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.swatches.fields import LogField
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import listed
from logbook.craft.words.lengths import Units
from logbook.pages.dates import typed_date
from logbook.pages.drafts import MADE, draft_of
from logbook.pages.pieces.plan_texts import length_text
from logbook.pages.session import Session
from logbook.pages.text_reader import TextReader
from logbook.tasks.browsing import assumptions_of, swatch_in_hand
from logbook.tasks.drafts import Draft
from logbook.tasks.made_pieces import delete_made_piece, predicted, save_made_piece
from logbook.tasks.made_words import beside_each_other, own_gauge, what_it_teaches
from logbook.tasks.pieces import PieceAnswer

FIELDS = {field.name.removesuffix(" cm"): field for field in MADE_FIELDS}
"""The fields of the form, by the name of their text."""
LENGTHS = frozenset(key for key, field in FIELDS.items() if field.in_cm)
_PREDICTED = ("predicted width", "predicted length", "predicted grams", "predicted hours", "predicted growth")
_OF_ITS_SIZE = {
    "name": "Name", "chain": "Chained", "rows": "Rows worked", "predicted width": "Width by the swatch",
    "predicted length": "Length by the swatch", "predicted grams": "Yarn planned", "predicted hours": "Hours planned",
    "predicted growth": "Growth in wear",
}  # fmt: skip
"""What goes by the size of the piece, and what its fields are called."""
_OF = {"of piece": "piece", "of swatch": "swatch"}
"""The uids of what it was made from, which a draft keeps beside the texts."""


@dataclass(frozen=True, slots=True)
class ReadMade:
    """The made piece as far as it can be read, and a sentence for each text that can't."""

    made: MadePiece
    errors: Mapping[str, str]


Begun = tuple[MadePiece, PieceAnswer]
"""A made piece as it is begun in a size, and what was worked out of that size."""


class MadeForm:
    """One made piece in hand. ``answer`` is the piece it was begun from just now, whose prediction follows chain and rows;
    ``in_size`` begins it in the size of that name (None: there is none), for when another is typed.
    """

    def __init__(
        self,
        session: Session,
        made: MadePiece,
        answer: PieceAnswer | None = None,
        in_size: Callable[[str], Begun | None] = lambda size: None,
    ) -> None:
        self._session, self._made, self._answer, self._in_size = session, made, answer, in_size
        self._size, self._of_size = made.size, ""
        self._of: Swatch | None = None
        self._assumed = assumptions_of(session.book)
        self.texts = _texts(made, session.units)
        self._clean = dict(self.texts)
        self._given = dict(self.texts)

    @property
    def is_saved(self) -> bool:
        """Whether the logbook holds it already."""
        return bool(self._made.uid)

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""
        return self.texts != self._clean

    def draft(self) -> Draft | None:
        """What is to be kept of it while it is typed."""
        of = {key: getattr(self._made, attribute) for key, attribute in _OF.items()}
        typed, opened = {**of, **self.texts}, {**of, **self._clean}
        return draft_of(MADE, self._made.uid, self._made.name, self._session.units.value, typed, opened)

    def take_up(self, texts: Mapping[str, str]) -> None:
        """Types these texts."""
        self.texts |= {key: text for key, text in texts.items() if key in self.texts}
        of: dict[str, Any] = {_OF[key]: text for key, text in texts.items() if key in _OF}
        self._made = replace(self._made, **of)

    def type_in(self, key: str, text: str) -> None:
        """Takes the text of one field; the prediction follows what was really chained and worked, and all of it the size."""
        self.texts[key] = text
        if key in _OF_ITS_SIZE:
            self._of_size = ""
        if key == "size":
            self._take_size(text.strip())
        if key in ("chain", "rows", "size") and self._answer is not None:
            read = self.read()
            if not {"chain", "rows"} & read.errors.keys():
                foretold = predicted(read.made, self._answer)
                self._give({name: _text(FIELDS[name], foretold, self._session.units) for name in _PREDICTED})

    def _take_size(self, size: str) -> None:
        begun = self._in_size(size)
        if begun is None:
            known = not size or not self._size
            self._of_size = "" if known else f"The piece has no size {size}: the numbers stay those of {self._size}."
            return
        made, self._answer = begun
        self._size = size
        texts = _texts(made, self._session.units)
        self._give({key: texts[key] for key in _OF_ITS_SIZE})
        stays = [f"{words} {self.texts[key]}" for key, words in _OF_ITS_SIZE.items() if self.texts[key] != self._given[key]]
        self._of_size = f"Size {size}; what you typed yourself stays: {listed(stays)}." if stays else ""

    def _give(self, texts: Mapping[str, str]) -> None:
        """Puts these texts in the place of those given before; what was typed by hand stays."""
        self.texts |= {key: text for key, text in texts.items() if self.texts[key] == self._given[key]}
        self._given |= texts

    def read(self) -> ReadMade:
        """What the texts come to."""
        units = self._session.units
        reader = TextReader({**self.texts, "date": typed_date(self.texts["date"])})
        values = {
            field.attribute: reader.value(key, partial(typed_value, field, units=units), field.empty)
            for key, field in FIELDS.items()
        }
        errors = reader.errors
        if not values["name"] and "name" not in errors:
            errors["name"] = "Name it, for example “Vest for Noémie”."
        return ReadMade(replace(self._made, **values), errors)

    def errors(self) -> Mapping[str, str]:
        """A sentence for each text that can't be read, and for a name that is missing."""
        return self.read().errors

    def beside(self) -> str:
        """Planned beside measured and used, and its own gauge beside the swatch's, as far as they are typed."""
        made = self.read().made
        swatch = self._swatch()
        said = own_gauge(made, swatch, self._assumed, self._session.units) if swatch is not None else []
        first = [self._of_size] if self._of_size else []
        return "\n".join([*first, *beside_each_other(made, self._session.units), *said])

    def taught(self) -> str:
        """What is counted into which pieces, now that it is saved."""
        return " ".join(what_it_teaches(self._session.book, self._made))

    @property
    def pictures(self) -> tuple[str, ...]:
        """The names of its pictures."""
        return picture_names(self.texts["pictures"])

    def _swatch(self) -> Swatch | None:
        if self._of is None and self._made.swatch:
            self._of = swatch_in_hand(self._session.book, self._made.swatch)
        return self._of

    def save(self) -> Mapping[str, str]:
        """Saves it; what stands in the way comes back, a sentence a field. Raises RefusedError for what is no field's fault.

        What is typed while it waits makes ``is_dirty``.
        """
        read, before = self.read(), dict(self.texts)
        if not read.errors:
            uid = self._session.write(lambda: save_made_piece(self._session.book, read.made))
            self._made, self._clean = replace(read.made, uid=uid), before
        return read.errors

    def delete(self) -> None:
        """Takes it out of the logbook."""
        self._session.write(lambda: delete_made_piece(self._session.book, self._made))


def _texts(made: MadePiece, units: Units) -> dict[str, str]:
    return {key: _text(field, made, units) for key, field in FIELDS.items()}


def _text(field: LogField, made: MadePiece, units: Units) -> str:
    """The text of one field; a prediction is given to a tenth of a mm, a gram and a minute: it has no more to say."""
    value = getattr(made, field.attribute)
    if field.in_cm:
        return length_text(None if value is None else round(value, 1), units)
    if field.name in _PREDICTED and value is not None:
        value = max(round(value), 1)
    return shown_text(field, value)
