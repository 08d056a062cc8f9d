"""The whole window on a fresh sample, and hands that type into it and answer what it asks."""

import shutil
import time
import tkinter as tk
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

from logbook.book.logbook import open_logbook
from logbook.book.pictures import folder_of
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.browsing import swatch_lines
from logbook.tasks.sampling import new_sample
from logbook.window import main_window
from logbook.window.main_window import MainWindow
from tests.support.screen import press, wait_until

TYPED = "river sand"
STANDS_S = 20.0
"""Longer than any dialog is waited for."""


@pytest.fixture(scope="session")
def sample_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample, made once; a test works on a copy of it."""
    with new_sample(tmp_path_factory.mktemp("sample")) as book:
        return book.path


@pytest.fixture
def window(root: tk.Tk, sample_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[MainWindow]:
    """The window on a fresh sample; errors in callbacks go to the harness and fail the test."""
    monkeypatch.setattr(main_window, "report_unexpected", lambda *_: None)
    shown = MainWindow(root, Settings(opened=("swatches.more", "pieces.notes")))
    shown.show(open_logbook(with_pictures(sample_file, tmp_path)), is_sample=True)
    root.update()
    yield shown
    shown.watch.end()
    if shown.session is not None:
        shown.session.book.close()


def with_pictures(book: Path, folder: Path) -> Path:
    """A copy of the logbook in the folder, with the pictures that lie beside it."""
    copy = Path(shutil.copy(book, folder))
    shutil.copytree(folder_of(book), folder_of(copy))
    return copy


def session_of(window: MainWindow) -> Session:
    assert window.session is not None
    return window.session


def said(window: MainWindow) -> str:
    """The line at the foot of the window."""
    return str(window._said.cget("text"))


def tags(window: MainWindow) -> set[str]:
    return {line.tag for line in swatch_lines(session_of(window).book)}


def dialogs(place: tk.Misc) -> list[tk.Toplevel]:
    """Every dialog above ``place`` and above dialogs."""
    found = []
    for child in place.children.values():
        found += [child] if isinstance(child, tk.Toplevel) else []
        found += dialogs(child)
    return found


def words_of(place: tk.Misc) -> str:
    """All that labels and buttons in ``place`` say."""
    own = str(place.cget("text")) if "text" in (place.keys() or ()) else ""
    return " ".join(filter(None, [own, *(words_of(child) for child in place.winfo_children())]))


class Answers:
    """Presses a key in each dialog that comes up, in order, and keeps what it said: ``("restore", "<Alt-r>")``, say.

    A dialog that stays is taken away after a time: the test fails, and does not wait for ever.
    """

    def __init__(self, window: MainWindow, *keys: str) -> None:
        self._root, self._left, self.heard = window.root, list(keys), list[str]()
        self._answered: set[str] = set()
        self._seen: dict[str, float] = {}
        self._look()

    @property
    def all_given(self) -> bool:
        return not self._left

    def _look(self) -> None:
        new = [shown for shown in dialogs(self._root) if str(shown) not in self._answered and shown.grab_current() is shown]
        if new and self._left:
            self._answered.add(str(new[0]))
            self.heard.append(words_of(new[0]))
            place = new[0].focus_lastfor() or new[0]
            place.focus_force()
            place.update()
            place.event_generate(self._left.pop(0))
        for shown in dialogs(self._root):
            if time.monotonic() - self._seen.setdefault(str(shown), time.monotonic()) > STANDS_S:
                shown.destroy()
        self._root.after(5 if self._left else 200, self._look)


def type_into(window: MainWindow, page: int, key: str, text: str = TYPED) -> tk.Misc:
    """Shows that page and types ``text`` at the end of its field ``key``, as a keyboard would; gives the field's input."""
    press(window.root, f"<Control-Key-{page + 1}>")
    field = form_of(window).fields[key]
    press(field.input, "<End>")
    for letter in text:
        field.input.event_generate({" ": "<space>", ",": "<comma>", "=": "<equal>"}.get(letter, f"<Key-{letter}>"))
    window.root.update()
    return field.input


def form_of(window: MainWindow):  # type: ignore[no-untyped-def]  # each page's form is of its own kind, all have ``fields``
    page = window.page_in_hand()
    return getattr(page, "editor", None) or page.form  # type: ignore[union-attr]


def text_in(window: MainWindow, key: str) -> str:
    """What stands in a field of the page shown."""
    return str(form_of(window).fields[key].text)


def refusal(window: MainWindow) -> str:
    """The sentence beside the buttons of the page shown."""
    return str(window.page_in_hand().row.refusal.cget("text"))  # type: ignore[union-attr]


def chosen_file(monkeypatch: pytest.MonkeyPatch, *paths: Path | str) -> list[Path | str]:
    """The next file dialogs are answered with these paths ("" cancels); what is left over can be looked at."""
    left: list[Path | str] = list(paths)

    def choose(**_: object) -> str:
        return str(left.pop(0))

    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", choose)
    monkeypatch.setattr("tkinter.filedialog.askopenfilename", choose)
    return left


def until_all_is_quiet(window: MainWindow, answers: Answers | None = None) -> None:
    """Until every dialog is gone."""
    wait_until(window.root, lambda: not dialogs(window.root) and (answers is None or answers.all_given))


PAGE_FIELDS: Sequence[tuple[int, str]] = ((0, "yarn"), (1, "name"), (2, "name"))
"""Each page by number, with a field of it that takes any text."""
