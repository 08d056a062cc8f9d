"""A user at the program: a real hand that goes to pages, clicks, presses keys and waits until what it wants is shown."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.support.hand import Hand
from tests.support.shown import Program, Shown, Widget
from tests.support.telling import LATER

LINE_OF_FILES = "__tk_filedialog.contents.f2.ent"
"""Where Tk's dialog for files takes a name."""
FIELDS = ("TEntry", "TCombobox", "Text", "TSpinbox")


class User:
    """A hand on the program, on the page it has chosen."""

    def __init__(self, hand: Hand, program: Program) -> None:
        self.hand, self.program = hand, program
        self.program.at_rest()

    def page(self, number: int) -> Shown:
        self.hand.key(f"ctrl+{number}")
        return self.program.at_rest()

    def press(self, *keys: str) -> Shown:
        self.hand.key(*keys)
        return self.program.look()

    def click(self, place: Widget | tuple[int, int], button: int = 1) -> Shown:
        """A click that is not the second of two on one place; what is shown once the window manager has handed it on."""
        x, y = place.middle if isinstance(place, Widget) else place
        self.hand.move(x - 1, y)
        self.hand.click(x, y, button)
        return self.program.look(LATER)

    def field(self, label: str) -> Widget:
        """The input at the right of, or under, the label with this text."""
        shown = self.program.look()
        found = next(w for w in shown.of_kind("TLabel") if w.text == label)
        return next(w for w in shown.within(found.path.rpartition(".")[0]) if w.kind in FIELDS)

    def all_closed(self, window: str = ".") -> Shown:
        """Escape until neither a menu nor a list is open, nor a dialog above that window, "." being the main one."""

        def alone(now: Shown) -> bool:
            return not (now.menus or now.lists) and (now.dialogs[-1].path if now.dialogs else ".") == window

        shown = self.program.look()
        for _ in range(8):
            if alone(shown):
                return shown
            shown = self.press("Escape")
        return self.program.until(alone, "an end of dialogs")

    def give_path(self, path: Path) -> None:
        """Types a path into the dialog for files that is open, and takes it."""
        shown = self.program.until(lambda now: any(w.path.endswith(LINE_OF_FILES) for w in now.widgets), "a dialog for files")
        line = next(w for w in shown.widgets if w.path.endswith(LINE_OF_FILES))
        self.click(line)
        self.program.until(lambda now: now.focus == line.path, "the keyboard in the line for the name")
        self.hand.key("ctrl+a")
        self.hand.type(str(path))
        self.program.until(lambda now: (line := now.at(now.focus)) and line.text == str(path), "the path")
        self.hand.key("Return")
        self.program.until(lambda now: not any(w.kind == "TkFDialog" for w in now.dialogs), "its end")

    def choose(self, *labels: str) -> Shown:
        """Clicks through the menus of the bar, or the one that is open."""
        shown = self.program.look()
        place = shown.bar
        for label in labels:
            assert place is not None
            entry = next(e for e in place.more["entries"] if e["label"] == label)
            before = {menu.path for menu in shown.menus}
            self.hand.click(*entry["at"])
            if entry["kind"] == "cascade":
                shown = self.program.until(lambda now: {m.path for m in now.menus} - before, label)  # noqa: B023
                place = next(menu for menu in shown.menus if menu.path not in before)
        return self.program.look()

    def nothing_unexpected(self) -> None:
        assert self.program.ended in (None, 0)
        assert self.program.unexpected() == ""


@pytest.fixture
def user(hands_screen: str, tmp_path: Path) -> Iterator[User]:
    """A hand on the sample; what the program did not expect fails the test."""
    program, hand = Program(hands_screen, tmp_path / "home", "--sample"), Hand(hands_screen)
    try:
        made = User(hand, program)
        yield made
        made.nothing_unexpected()
    finally:
        program.end()
        hand.take_away()
