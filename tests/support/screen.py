"""A screen for the window tests, a window on it, and hands that press its keys."""

import gc
import os
import time
import tkinter as tk
import warnings
from collections.abc import Callable, Generator, Iterator
from contextlib import contextmanager
from types import TracebackType

import pytest

from tests.support.display import DPI, own_display, scaled
from tests.support.plain_font import write_font

tk.NoDefaultRoot()

POINTS_AN_INCH = 72
MOMENT_MS = 5
KEYSYMS = {" ": "space", ",": "comma", ".": "period", "/": "slash", '"': "quotedbl", "-": "minus", "=": "equal"} | {
    "¼": "onequarter",
    "½": "onehalf",
    "é": "eacute",
    "%": "percent",
    "_": "underscore",
    "'": "apostrophe",
    "+": "plus",
    "(": "parenleft",
    ")": "parenright",
    ":": "colon",
    ";": "semicolon",
}


@pytest.fixture(scope="session")
def screen(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The display to show windows on, and the font they write with: neither is the user's.

    With ``LOGBOOK_TEST_FONTS=mine`` the machine's fonts are used.
    """
    with own_display(depth=16) as display, pytest.MonkeyPatch.context() as patch:
        if os.environ.get("LOGBOOK_TEST_FONTS") != "mine":
            patch.setenv("FONTCONFIG_FILE", str(write_font(tmp_path_factory.mktemp("font"))))
        try:
            tk.Tk().destroy()
        except tk.TclError as error:
            pytest.skip(f"no screen to show windows on (set DISPLAY or install Xvfb): {error}")
        yield display


@pytest.fixture
def dpi(request: pytest.FixtureRequest) -> int:
    """The dots per inch of the screen; a test on several is parametrized with them, indirectly."""
    return int(getattr(request, "param", DPI))


@pytest.fixture
def root(screen: str, dpi: int) -> Iterator[tk.Tk]:
    """A window on the screen, with the focus; an exception in any of its callbacks fails the test."""
    window = tk.Tk()
    window.tk.call("tk", "scaling", dpi / POINTS_AN_INCH)
    with callback_errors_raised(window):
        window.geometry(f"{scaled(1000)}x{scaled(700)}+0+0")
        window.update()
        wait_until(window, window.winfo_viewable)
        window.focus_force()
        window.update()
        yield window
        window.tk.call("destroy", window)  # all at once: tkinter would take down each widget by itself
    for command in window.tk.splitlist(window.tk.call("info", "commands", "[0-9]*")):
        window.tk.createcommand(command, str)  # what a variable calls is held by Tcl, where no collector looks


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Lets go of a test's window once pytest has: Tcl may not be let go by a thread of a later test that happens to collect."""
    result = yield
    if "root" in getattr(item, "fixturenames", ()):
        with warnings.catch_warnings():  # the sample's folder and those printed from go with the program's end
            warnings.filterwarnings("ignore", "Implicitly cleaning up", ResourceWarning)
            gc.collect()
            gc.freeze()  # what is left stays: the next need not look through it again
    return result


@contextmanager
def callback_errors_raised(window: tk.Tk) -> Iterator[None]:
    """Raises at the end what was raised in callbacks of ``window``, which Tk would only print."""
    errors: list[Exception] = []

    def remember(kind: type[Exception], error: Exception, trace: TracebackType | None) -> None:
        errors.append(error)

    window.report_callback_exception = remember
    yield
    if errors:
        raise ExceptionGroup("in callbacks of the window", errors)


def wait_until(window: tk.Misc, condition: Callable[[], object], seconds: float = 5.0) -> None:
    """Lets the window work until the condition holds; fails if it does not in time."""
    deadline = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < deadline, f"not within {seconds} s"
        window.update()
        if not condition():
            rest_for_an_event(window)


def rest_for_an_event(window: tk.Misc) -> None:
    """Leaves the processor to others until the window has something to do, or a moment has passed."""
    moment = window.tk.createtimerhandler(MOMENT_MS, lambda: None)
    window.tk.dooneevent(0)
    moment.deletetimerhandler()


def settle(window: tk.Misc) -> None:
    """Lets the window take its new shape: asks the display, so that what it has to tell has arrived, and updates."""
    for _ in range(4):
        window.update()
        window.winfo_pointerxy()
    window.update()


def press(widget: tk.Misc, *keys: str) -> None:
    """Presses keys such as ``"<Control-a>"`` where the focus is after it was put on ``widget``."""
    widget.focus_force()
    widget.update()
    for key in keys:
        place = widget.focus_get() or widget
        place.event_generate(key)
        widget.update()


def type_text(widget: tk.Misc, text: str) -> None:
    """Types ``text`` into ``widget``, a key at a time, pressed and released."""
    widget.focus_force()
    widget.update()
    for letter in text:
        keysym = KEYSYMS.get(letter, letter)
        widget.event_generate(f"<KeyPress-{keysym}>")
        widget.event_generate(f"<KeyRelease-{keysym}>")
    widget.update()


def hit(window: tk.Misc, *keys: str) -> None:
    """Presses keys wherever the focus is."""
    for key in keys:
        focused(window).event_generate(key)
        window.update()


def write(window: tk.Misc, text: str) -> None:
    """Types ``text`` wherever the focus is."""
    type_text(focused(window), text)


def focused(window: tk.Misc, seconds: float = 5.0) -> tk.Misc:
    """What has the focus, or gets it back from a dialog that has just gone; fails if nothing does in time."""
    wait_until(window, lambda: window.focus_displayof() is not None, seconds)
    place = window.focus_get()
    assert place is not None
    return place
