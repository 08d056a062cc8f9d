"""A made piece as it is typed: what was really worked, predicted beside measured."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.swatches.fields import read_date, read_text
from logbook.craft.words.hooks import read_hook, show_hook
from logbook.craft.words.lengths import Units, read_size
from logbook.craft.words.numbers import read_whole
from logbook.errors import UnreadableError
from logbook.pages.drafts import MADE, draft_of
from logbook.pages.pieces.plan_texts import length_text
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.tasks.made_pieces import beside_each_other, delete_made_piece, predicted, save_made_piece
from logbook.tasks.pieces import PieceAnswer

PLAIN = {"name": "name", "size": "size", "date": "date", "worked by": "worked_by", "fits": "fits", "notes": "notes"}
LENGTHS = {
    "predicted width": "predicted_width_mm", "predicted length": "predicted_length_mm",
    "worked width": "worked_width_mm", "worked length": "worked_length_mm",
    "washed width": "washed_width_mm", "washed length": "washed_length_mm",
}  # fmt: skip
_OF = {"of piece": "piece", "of swatch": "swatch"}
"""The uids of what it was made from, which a draft keeps beside the texts."""
COUNTS = {"chain": "chain", "rows": "rows"}


@dataclass(frozen=True, slots=True)
class ReadMade:
    """The made piece as far as it can be read, and a sentence for each text that can't."""

    made: MadePiece
    errors: Mapping[str, str]


class MadeForm:
    """One made piece in hand. ``answer`` is the piece it was begun from just now, whose prediction follows chain and rows."""

    def __init__(self, session: Session, made: MadePiece, answer: PieceAnswer | None = None) -> None:
        self._session, self._made, self._answer = session, made, answer
        self.texts = _texts(made, session.units)
        self._clean = dict(self.texts)

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
        """Takes the text of one field; the prediction follows what was really chained and worked."""
        self.texts[key] = text
        read = self.read()
        if key in COUNTS and self._answer is not None and key not in read.errors:
            foretold = predicted(read.made, self._answer)
            for name in ("predicted width", "predicted length"):
                self.texts[name] = length_text(_rounded(getattr(foretold, LENGTHS[name])), self._session.units)

    def read(self) -> ReadMade:
        """What the texts come to."""
        units, errors = self._session.units, {}
        values: dict[str, Any] = {}
        readers: dict[str, tuple[str, Callable[[str], Any]]] = {
            **{key: (field, lambda text: read_size(text, units, "a length")) for key, field in LENGTHS.items()},
            **{key: (field, lambda text: read_whole(text, "a count", 1)) for key, field in COUNTS.items()},
            "hook": ("hook_mm", read_hook),
            **{key: (field, read_text) for key, field in PLAIN.items()},
            "date": ("date", read_date),
        }
        for key, (field, read) in readers.items():
            text, empty = self.texts[key].strip(), "" if key in PLAIN else None
            try:
                values[field] = read(text) if text else empty
            except UnreadableError as error:
                values[field], errors[key] = empty, str(error)
        if not values["name"] and "name" not in errors:
            errors["name"] = "Name it, for example “Vest for Noémie”."
        return ReadMade(replace(self._made, **values), errors)

    def beside(self) -> str:
        """Predicted beside measured, as far as both are typed."""
        return " ".join(beside_each_other(self.read().made, self._session.units))

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
    return {
        **{key: getattr(made, field) for key, field in PLAIN.items()},
        **{key: length_text(_rounded(getattr(made, field)), units) for key, field in LENGTHS.items()},
        **{key: str(getattr(made, field) or "") for key, field in COUNTS.items()},
        "hook": "" if made.hook_mm is None else show_hook(made.hook_mm),
    }


def _rounded(mm: float | None) -> float | None:
    """To a tenth of a mm: a prediction has no more to say, and the text stays short."""
    return None if mm is None else round(mm, 1)
