"""What a page of records wants of its parts: the form of the record in hand, its widgets, and the list."""

from collections.abc import Mapping
from typing import Any, Protocol

from logbook.tasks.drafts import Draft
from logbook.window.table import Table


class Form(Protocol):
    """The form of one record in hand, without its widgets; ``saved`` is the record as the logbook has it, None for a new one."""

    @property
    def saved(self) -> Any:
        """The saved record."""

    @property
    def uid(self) -> str:
        """Its uid, "" for a new one."""

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""

    @property
    def texts(self) -> Mapping[str, str]:
        """What stands in its fields."""

    @property
    def opened(self) -> Mapping[str, str]:
        """What stood there when the record was taken in hand."""

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of a draft's record as the logbook has it; of a new one, of the record that goes by its name. None: none."""

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> None:
        """Takes a draft's record in hand, or a new one where there is none, with these texts typed."""

    def show(self, uid: str) -> bool:
        """Takes a saved record in hand; False if it is not there any more."""

    def new(self) -> None:
        """Takes an empty one in hand."""

    def same_again(self) -> None:
        """Takes one like it in hand."""

    def revert(self) -> None:
        """Goes back to what is saved."""

    def save(self) -> Mapping[str, str]:
        """Saves; what stands in the way comes back, a sentence a field. Raises RefusedError for what is no field's fault."""

    def changed_elsewhere(self) -> bool:
        """Whether the logbook has it otherwise now."""


class FormShown(Protocol):
    """The form's widgets."""

    def show(self) -> None:
        """Shows the record in hand anew."""

    def show_errors(self, errors: Mapping[str, str]) -> None:
        """Says what stands in the way of saving, and goes to the first."""

    def start(self) -> None:
        """Puts the keyboard into the first field."""


class ListShown(Protocol):
    """The list's widgets."""

    @property
    def table(self) -> Table:
        """Its table."""

    def start(self) -> None:
        """Puts the keyboard into the find field."""
