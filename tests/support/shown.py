"""The program under a hand: started as a user starts it, and what it shows, as it tells by itself."""

import json
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import tests
from tests.support.telling import LATER, LOOK

TOP = Path(tests.__path__[0]).parent
PATIENCE_S = 20.0
"""For a machine that is busy with other things."""


class Widget(NamedTuple):
    """``box`` is what of it can be seen: left, top, width, height on the screen; ``more`` what else its kind has to tell."""

    path: str
    kind: str
    box: tuple[int, int, int, int]
    more: dict[str, Any]

    @property
    def text(self) -> str:
        return str(self.more.get("text", ""))

    @property
    def off(self) -> bool:
        return bool(self.more.get("off"))

    @property
    def middle(self) -> tuple[int, int]:
        x, y, width, height = self.box
        return x + width // 2, y + height // 2


class Shown(NamedTuple):
    """All that is shown at one moment; ``saved`` are the records said to be saved since the last look, as typed.

    ``lies`` is what it says wrongly of whether the record in hand is saved, ``focus_lies`` what the place of the keyboard lies
    in, if that was asked for. ``closings``: how often the window manager has asked the main window to close.
    """

    widgets: Sequence[Widget]
    focus: str
    focus_lies: str
    grab: str
    title: str
    closings: int
    saved: Sequence[dict[str, Any]]
    lies: str

    def of_kind(self, *kinds: str) -> list[Widget]:
        return [widget for widget in self.widgets if widget.kind in kinds]

    def at(self, path: str) -> Widget | None:
        return next((widget for widget in self.widgets if widget.path == path), None)

    def within(self, path: str) -> list[Widget]:
        return [widget for widget in self.widgets if widget.path.startswith("." if path == "." else f"{path}.")]

    @property
    def dialogs(self) -> list[Widget]:
        """Windows above the main one, the newest last; lists of drop-downs and menus are none."""
        return [w for w in self.of_kind("Toplevel", "TkFDialog") if w.path != "." and not w.path.endswith(".popdown")]

    @property
    def lists(self) -> list[Widget]:
        """The lists of drop-downs that are open."""
        return [w for w in self.of_kind("Listbox") if ".popdown." in w.path]

    @property
    def menus(self) -> list[Widget]:
        """The menus that are open; the bar is none."""
        return [w for w in self.of_kind("Menu") if w.box[3] > 1 and w is not self.bar]

    @property
    def bar(self) -> Widget | None:
        """The bar of the menus."""
        return next((w for w in self.of_kind("Menu") if w.path.count(".") == 1 and w.path.startswith(".#")), None)

    def button(self, text: str) -> Widget | None:
        """The button with this text, the newest first."""
        found = [w for w in self.of_kind("TButton", "TMenubutton") if w.text == text]
        return found[-1] if found else None


class Program:
    """The program in a process and folders of its own; ``home`` keeps what it writes, so that it can be started again there."""

    def __init__(self, display: str, home: Path, *arguments: str, weakness: str = "") -> None:
        self.home = home
        home.mkdir(parents=True, exist_ok=True)
        self._channel, theirs = socket.socketpair()
        self._channel.settimeout(PATIENCE_S)
        env = os.environ | {"DISPLAY": display, "HOME": str(home), "LOGBOOK_HOME": str(home / "kept"), "TMPDIR": str(home)}
        env |= {"PYTHONPATH": str(TOP), "BROWSER": "true", "PYTHONWARNINGS": "ignore"}
        planted = ["--weakness", weakness] if weakness else []
        self.output = home.with_name(f"{home.name}-output.txt")  # beside it: a hand at random saves over what it sees
        with self.output.open("ab") as output:
            command = [sys.executable, "-m", "tests.support.watched", str(theirs.fileno()), *planted, *arguments]
            self._process = subprocess.Popen(command, env=env, cwd=home, stdout=output, stderr=output, pass_fds=[theirs.fileno()])
        theirs.close()
        self._answers = self._channel.makefile()
        self._dumped = ""

    @property
    def ended(self) -> int | None:
        """Its exit code; None while it runs."""
        return self._process.poll()

    def look(self, request: bytes = LOOK) -> Shown:
        """What is shown once all that was done before has been dealt with, or LATER. Raises EOFError if the program is gone."""
        try:
            self._channel.sendall(request)
            line = self._answers.readline()
        except (BrokenPipeError, ConnectionResetError):
            line = ""
        if not line:
            self._process.wait(PATIENCE_S)
            raise EOFError
        told = json.loads(line)
        widgets = [Widget(w.pop("path"), w.pop("kind"), tuple(w.pop("box")), w) for w in told.pop("widgets")]
        return Shown(widgets, **told)

    def until(self, condition: Callable[[Shown], object], what: str = "", within_s: float = PATIENCE_S) -> Shown:
        """Looks until the condition holds; fails if it does not in time."""
        deadline = time.monotonic() + within_s
        shown = self.look()
        while not condition(shown):
            assert time.monotonic() < deadline, f"{what or 'it'} did not come; shown: {summary(shown)}"
            shown = self.look(LATER)
        return shown

    def at_rest(self) -> Shown:
        """What is shown when the page is whole and changes no more."""
        self.until(ready, "the page")
        while not ready(now := self.still()):
            pass
        return now

    def still(self) -> Shown:
        """What is shown when two looks see the same."""
        shown = self.look()
        while (now := self.look()).widgets != shown.widgets:
            shown = now
        return now

    def until_ended(self, within_s: float = PATIENCE_S) -> int:
        """Its exit code, when it has ended by itself."""
        return self._process.wait(within_s)

    def unexpected(self) -> str:
        """What it wrote down as unexpected, and what it said on the terminal."""
        log = self.home / "kept" / "errors.log"
        logged = log.read_text("utf-8", "replace") if log.exists() else ""
        return (logged + self.output.read_text("utf-8", "replace")).replace(self._dumped, "")

    def signal(self, number: int) -> None:
        """Sends it a signal."""
        self._process.send_signal(number)

    def busy_with(self) -> str:
        """What a program that answers no more wrote down, and the lines that it runs, the innermost first."""
        before = len(self.unexpected())
        self.signal(signal.SIGUSR1)
        deadline = time.monotonic() + PATIENCE_S
        while "run_module_as_main" not in (said := self.unexpected())[before:] and time.monotonic() < deadline:
            time.sleep(0.05)
        self._dumped = said[before:]
        return said

    def end(self) -> None:
        """Ends it, however it stands."""
        if self._process.poll() is None:
            self._process.kill()
        self._process.wait()
        self._answers.close()
        self._channel.close()


def summary(shown: Shown) -> str:
    """In a few lines, for a test that failed."""
    lines = [f"{w.kind} {w.path} {w.box} {w.text[:60]}" for w in shown.widgets if w.kind not in ("TFrame", "Frame")]
    return f"keyboard in {shown.focus or 'none'}, held by {shown.grab or 'none'}\n" + "\n".join(lines)[-3000:]


def ready(shown: Shown) -> bool:
    """The page in hand is whole: its list, its form and what follows."""
    parts = len(shown.of_kind("Canvas")) + any(w.text.startswith("◂ ") or w.text.endswith(" ▸") for w in shown.of_kind("TButton"))
    whole = shown.of_kind("TCombobox") and parts > 1
    return bool(whole) and shown.button("Save") is not None and shown.focus not in ("", ".")


def rows(widgets: Sequence[Widget]) -> Iterator[dict[str, Any]]:
    for widget in widgets:
        yield from widget.more.get("rows", ())
