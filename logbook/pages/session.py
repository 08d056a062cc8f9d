"""What all pages share: the open logbook, the user's settings, and word of what has changed."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TypeVar

from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.settings import Settings
from logbook.tasks.keeping import DamagedError, InUseError, Logbook, WrittenOverError

Result = TypeVar("Result")
PATIENCE = 10
"""How many pauses of a tenth of a second are taken, each after a try that stood still for as long."""


class ChangedElsewhereError(RefusedError):
    """Another window or program has written since the user last saw what is there."""


@dataclass(slots=True)
class Session:
    """One open logbook in one window. Pages subscribe to be told when records or settings have changed, and by whom.

    ``say`` shows a sentence at the foot of the window, ``open_sample`` shows the sample instead of this logbook. ``damage`` says
    what was found wrong with the logbook while it was open; from then on nothing is written to it.
    """

    book: Logbook
    settings: Settings
    is_sample: bool = False
    say: Callable[[str], None] = lambda sentence: None
    pause: Callable[[], None] | None = None
    open_sample: Callable[[], None] | None = None
    damage: str = ""
    writes: int = 0
    waiting: bool = False
    _version_shown: int = 0
    _on_records: list[Callable[[object], None]] = field(default_factory=list)
    _on_settings: list[Callable[[], None]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._take(self.book)

    @property
    def units(self) -> Units:
        """What lengths are shown in, and read in where no unit is typed."""
        return Units(self.settings.units)

    @property
    def terms(self) -> Terms:
        """The terms stitches are named in."""
        return Terms(self.settings.terms.upper())

    @property
    def why_not_writable(self) -> str:
        """Why nothing can be changed in this logbook, and what to do; "" if it can."""
        if self.book.read_only:
            name = self.book.path.name
            return f"{name} can't be written to here, so editing is off: Logbook → Save a copy lets you go on elsewhere."
        return self.damage

    def write(self, action: Callable[[], Result]) -> Result:
        """Runs an action that writes; while another program holds the file it tries again for about two seconds.

        ``pause`` waits a moment without freezing the window. Raises what the action raises, InUseError when patience is over,
        and ChangedElsewhereError, after telling every page, if another window has written since the user last saw what is there.
        """
        if self.why_not_writable:
            raise RefusedError(self.why_not_writable)
        if self.waiting:
            raise RefusedError("The last step is still waiting for another program: wait until it is done.")
        try:
            done = self._tried_for_a_while(action)
        except ChangedElsewhereError:
            self.notice_others()
            raise
        except (DamagedError, WrittenOverError) as error:
            self.damage = str(error)
            raise
        self.writes += 1
        return done

    def _tried_for_a_while(self, action: Callable[[], Result]) -> Result:
        for _ in range(PATIENCE if self.pause is not None else 0):
            try:
                return action()
            except InUseError:
                self.say(f"Another program is writing to {self.book.path.name}: waiting for it …")
                self._wait()
                self.say("")
        return action()

    def _wait(self) -> None:
        assert self.pause is not None
        self.waiting = True
        try:
            self.pause()
        finally:
            self.waiting = False

    def notice_others(self) -> bool:
        """Whether another window or program has written since the last look; then every page is told.

        Raises ReplacedError if the file is not the one that was opened.
        """
        with self.book.reading():
            version = self.book.data_version()
        if version == self._version_shown:
            return False
        self.say("Another window has changed this logbook: it is shown here as it is now.")
        self.records_changed(None)
        self._version_shown = version
        return True

    def go_on_with(self, book: Logbook) -> None:
        """Another file takes the place of the logbook, a copy or a backup of it: what is typed on the pages stays."""
        self.book.close()
        self.book, self.damage, self.is_sample = book, "", False
        self._take(book)
        self.records_changed(None)

    def _take(self, book: Logbook) -> None:
        """From now on the user has before them what is in this logbook."""
        self._version_shown = book.data_version()
        book.before_writing = self._require_shown

    def _require_shown(self) -> None:
        """Raises ChangedElsewhereError if the logbook is otherwise by now than what the user has before them."""
        if self.book.data_version() != self._version_shown:
            raise ChangedElsewhereError(
                f"Another window has changed {self.book.path.name} meanwhile, so nothing was written: look at what is there now, "
                "then try again."
            )

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
