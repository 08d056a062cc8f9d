"""What all pages share: the open logbook, the user's settings, and word of what has changed."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TypeVar

from logbook.craft.lengths import Units
from logbook.craft.terms import Terms
from logbook.settings import Settings
from logbook.tasks.keeping import InUseError, Logbook

Result = TypeVar("Result")
PATIENCE = 20
"""How many pauses of a tenth of a second are taken."""


@dataclass(slots=True)
class Session:
    """One open logbook in one window. Pages subscribe to be told when records or settings have changed, and by whom.

    ``say`` shows a sentence at the foot of the window, ``open_sample`` shows the sample instead of this logbook.
    """

    book: Logbook
    settings: Settings
    is_sample: bool = False
    say: Callable[[str], None] = lambda sentence: None
    pause: Callable[[], None] | None = None
    open_sample: Callable[[], None] | None = None
    _on_records: list[Callable[[object], None]] = field(default_factory=list)
    _on_settings: list[Callable[[], None]] = field(default_factory=list)

    @property
    def units(self) -> Units:
        """What lengths are shown in, and read in where no unit is typed."""
        return Units(self.settings.units)

    @property
    def terms(self) -> Terms:
        """The terms stitches are named in."""
        return Terms(self.settings.terms.upper())

    def write(self, action: Callable[[], Result]) -> Result:
        """Runs an action that writes; while another program holds the file it tries again for about two seconds.

        ``pause`` waits a moment without freezing the window. Raises what the action raises, InUseError when patience is over.
        """
        for _ in range(PATIENCE if self.pause is not None else 0):
            try:
                return action()
            except InUseError:
                assert self.pause is not None
                self.pause()
        return action()

    def on_records(self, told: Callable[[object], None]) -> None:
        """``told`` is called with whoever changed records, each time some have changed."""
        self._on_records.append(told)

    def on_settings(self, told: Callable[[], None]) -> None:
        """``told`` is called each time the settings have changed."""
        self._on_settings.append(told)

    def records_changed(self, by: object) -> None:
        """Tells every page that the logbook holds something else now; ``by`` is the page or menu that did it."""
        for told in self._on_records:
            told(by)

    def change_settings(self, settings: Settings) -> None:
        """Takes new settings and tells every page."""
        self.settings = settings
        for told in self._on_settings:
            told()
