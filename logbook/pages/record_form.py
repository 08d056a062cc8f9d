"""What the forms share that hold one record in hand, new or saved, as the texts of its fields."""

from abc import ABC, abstractmethod
from collections.abc import Mapping
from typing import Generic, Protocol, TypeVar

from logbook.tasks.drafts import Draft


class _HasUid(Protocol):
    @property
    def uid(self) -> str:
        """Its uid."""


Record = TypeVar("Record", bound=_HasUid)


class RecordForm(ABC, Generic[Record]):
    """``saved`` is the record as the logbook has it (None: a new one), ``texts`` what is typed, through ``type_in`` alone."""

    saved: Record | None = None
    texts: dict[str, str]
    _clean: Mapping[str, str]

    @property
    @abstractmethod
    def name(self) -> str:
        """What is in hand, in words: of a new one that it is new."""

    @abstractmethod
    def show(self, uid: str) -> bool:
        """Takes a saved record in hand; False if it is not there any more."""

    @abstractmethod
    def new(self) -> None:
        """Takes an empty one in hand."""

    @property
    def uid(self) -> str:
        """The uid of the record in hand, "" for a new one."""
        return self.saved.uid if self.saved is not None else ""

    @property
    def title(self) -> str:
        """What stands over the form."""
        return f"{self.name} · not saved" if self.is_dirty else self.name

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""
        return any(text.strip() != self._clean[key].strip() for key, text in self.texts.items())

    @property
    def opened(self) -> Mapping[str, str]:
        """The texts as they were when it was taken in hand."""
        return self._clean

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> None:
        """Takes the draft's record in hand, or a new one where there is none, with these texts typed."""
        if draft.is_new or not self.show(draft.record):
            self.new()
        self.texts |= {key: text for key, text in texts.items() if key in self.texts}

    def revert(self) -> None:
        """Goes back to what is saved, or for a new record to an empty form."""
        if self.saved is None or not self.show(self.uid):
            self.new()
