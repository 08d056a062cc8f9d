"""The program as a user starts it, in a process of its own, that tells what it shows when asked.

python -m tests.support.watched CHANNEL [--weakness NAME] ARGUMENTS OF THE PROGRAM

CHANNEL is the number of a socket: each line read from it is answered, once all that the X server had for the program by then
is dealt with, by a line of JSON. Nothing is done to any widget.
"""

import faulthandler
import json
import os
import signal
import socket
import sys
import tkinter as tk
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from logbook.commands import main as command_line
from logbook.pages.garments.garment_texts import piece_key
from logbook.pages.session import Session
from logbook.window import main as start
from logbook.window import unexpected
from logbook.window.choices import ChoiceField
from logbook.window.main_window import MainWindow
from logbook.window.pieces.both import PiecesAndGarments
from tests.support.kept_texts import kept_texts
from tests.support.telling import LATER, THOROUGHLY
from tests.support.weaknesses import WEAKNESSES

Box = tuple[int, int, int, int]
MOMENT_MS = 20
"""Who waits for something asks so often: without any pause the program would do little but answer."""
STEP = 6
"""Pixels between the places where a widget is asked what is there."""

IN_SIGHT = r"""
proc in_sight {path {left 0} {top 0} {right 0} {bottom 0}} {
    set kind [winfo class $path]
    set own [expr {$kind eq "Menu" || [winfo toplevel $path] eq $path}]
    set told {}
    if {($own || $right > $left) && [winfo ismapped $path]} {
        set x [winfo rootx $path]; set y [winfo rooty $path]
        set width [winfo width $path]; set height [winfo height $path]
        if {$own} {
            set left $x; set top $y; set right [expr {$x + $width}]; set bottom [expr {$y + $height}]
        } else {
            set left [expr {max($x, $left)}]; set right [expr {min($x + $width, $right)}]
            set top [expr {max($y, $top)}]; set bottom [expr {min($y + $height, $bottom)}]
        }
    } else {
        set right $left
    }
    if {$right > $left && $bottom > $top} {
        set text {}
        switch -- $kind {
            TButton - TLabel - TCheckbutton - TRadiobutton - TMenubutton - Button - Label - Checkbutton - Radiobutton {
                set text [$path cget -text]
            }
            TEntry - TCombobox - TSpinbox - Entry { set text [$path get] }
            Text { set text [$path get 1.0 end-1c] }
        }
        set off [expr {[string match {T[A-Z]*} $kind] && [$path instate disabled]}]
        set told [list $path $kind $text $off $x $y $width $height $left $top [expr {$right - $left}] [expr {$bottom - $top}]]
    } else {
        set right $left
    }
    foreach child [winfo children $path] {
        lappend told {*}[in_sight $child $left $top $right $bottom]
    }
    return $told
}
"""
"""What is in sight at ``path`` and in it: class, text, whether it is off, where it lies, and the part of that in sight; a window
of its own also where what it belongs to is out of sight. In Tcl: there are hundreds of widgets, a hand looks a thousand times."""


class Teller:
    """Answers on the channel what the window shows."""

    def __init__(self, window: MainWindow, channel: socket.socket) -> None:
        self._window, self._root, self._channel = window, window.root, channel
        self.saved: list[dict[str, Any]] = []
        self._call: Callable[..., Any] = self._root.tk.call
        self._root.tk.eval(IN_SIGHT)
        close = self._call("wm", "protocol", ".", "WM_DELETE_WINDOW")
        self._root.tk.eval(f"set closings 0; wm protocol . WM_DELETE_WINDOW {{incr closings; {close}}}")
        self._stay_at_home()
        self._root.tk.createfilehandler(channel, tk.READABLE, lambda *_: self._asked())
        window_say = window.say

        def say(sentence: str) -> None:
            for part in parts(window):
                if part.says_saved(sentence):
                    told = {"kind": part.kind, "uid": part.uid, "texts": dict(part.texts)}
                    ways = {"units": window.settings.units, "numbers": window.settings.numbers}
                    self.saved.append(told | {"ways": ways, "book": str(window.session.book.path)})  # type: ignore[union-attr]
            window_say(sentence)

        write_down = unexpected.write_down

        def write_all_down(error: BaseException, log: Path) -> str:
            print(f"{type(error).__name__}: {error}", file=sys.stderr, flush=True)  # nothing of a maker's is in it here
            return write_down(error, log)

        unexpected.write_down = write_all_down  # type: ignore[attr-defined]
        window.say = say  # type: ignore[method-assign]

    def _stay_at_home(self) -> None:
        """No dialog for files leads out of the folder of the test."""
        self._call("namespace", "eval", "::tk::dialog::file", "")
        home = os.path.realpath(os.environ["HOME"])
        name = "::tk::dialog::file::__tk_filedialog(selectPath)"

        def led(*_: str) -> None:
            if not os.path.realpath(self._root.tk.globalgetvar(name)).startswith(home):
                self._root.tk.globalsetvar(name, home)

        self._root.tk.createcommand("stay_at_home", led)
        self._call("trace", "add", "variable", name, "write", "stay_at_home")

    def _asked(self) -> None:
        request = self._channel.recv(1)
        if not request:
            os._exit(1)  # who watched is gone: nobody would end it, and its channel would be read for ever
        if request == LATER:
            self._root.after(MOMENT_MS, self._answer_when_quiet)
        else:
            self._answer_when_quiet(request == THOROUGHLY)

    def _answer_when_quiet(self, thoroughly: bool = False) -> None:
        self._when_quiet(lambda: self._when_quiet(lambda: self._answer(thoroughly)))

    def _when_quiet(self, then: Callable[[], None]) -> None:
        self._root.winfo_pointerxy()  # asks the X server, so that all it had for us is here
        self._root.after_idle(lambda: self._root.after(0, then))

    def _answer(self, thoroughly: bool) -> None:
        saved, self.saved = self.saved, []
        focus = str(self._call("focus"))
        shown = {
            "widgets": list(self._widgets()),
            "focus": focus,
            "focus_lies": self._lies_in(focus) if thoroughly else "",
            "grab": str(self._call("grab", "current", ".")),
            "title": str(self._call("wm", "title", ".")),
            "closings": int(self._root.tk.getvar("closings")),
            "saved": saved,
            "lies": self._lies() if thoroughly else "",
        }
        self._channel.sendall(json.dumps(shown).encode("utf-8", "replace") + b"\n")

    def _lies_in(self, path: str) -> str:
        """Why what is at ``path`` may not be seen: it and what it lies in, from within, each with its box."""
        told = []
        while path:
            mapped = "" if self._call("winfo", "ismapped", path) else "unmapped "
            told.append(f"{mapped}{self._call('winfo', 'class', path)} {self._call('winfo', 'geometry', path)}")
            path = "" if path == "." else str(self._call("winfo", "parent", path))
        return ", in ".join(told)

    def _lies(self) -> str:
        page = self._window.page_in_hand()
        return Part(page).untrue(self._window) if page is not None else ""

    def _widgets(self) -> Iterator[dict[str, Any]]:
        """All that is in sight, each before what is in it."""
        told = self._root.tk.splitlist(self._call("in_sight", "."))
        for path, kind, text, off, *place in zip(*[iter(told)] * 12, strict=True):
            box = tuple(int(n) for n in place)
            widget = {"path": str(path), "kind": str(kind), "text": str(text), "off": bool(off), "box": box[4:]}
            yield widget | self._more(str(path), str(kind), box[:4])

    def _more(self, path: str, kind: str, box: Box) -> dict[str, Any]:
        call, more = self._call, dict[str, Any]()
        if kind == "Menu":
            more["entries"] = list(self._entries(path, box))
        elif kind == "Treeview":
            more["rows"] = list(self._rows(path, box))
            more["headings"] = list(self._along(path, box, lambda x: call(path, "identify", "column", x, 5), "heading"))
        elif kind == "Listbox":
            more["rows"] = list(self._list_rows(path, box))
        elif kind == "TNotebook":
            more["tabs"] = list(self._along(path, box, lambda x: call(path, "index", f"@{x},10")))
        if kind in ("Canvas", "Treeview", "Text", "Listbox"):
            more["view"] = [float(share) for share in call(path, "yview")]
        return more

    def _entries(self, path: str, box: Box) -> Iterator[dict[str, Any]]:
        call = self._call
        last = call(path, "index", "end")
        across = str(call(path, "cget", "-type")) == "menubar"
        for index in range(0 if str(last) in ("none", "") else int(last) + 1):
            kind = str(call(path, "type", index))
            if kind in ("separator", "tearoff"):
                continue
            at = int(call(path, "xposition" if across else "yposition", index))
            place = (box[0] + at + 6, box[1] + box[3] // 2) if across else (box[0] + 12, box[1] + at + 6)
            label, state = (str(call(path, "entrycget", index, option)) for option in ("-label", "-state"))
            yield {"label": label, "off": state == "disabled", "at": place, "kind": kind}

    def _rows(self, path: str, box: Box) -> Iterator[dict[str, Any]]:
        before = ""
        for y in range(0, box[3], STEP):
            row = str(self._call(path, "identify", "row", 5, y))
            if row and row != before:
                before = row
                found = self._root.tk.splitlist(self._call(path, "bbox", row))
                if found:
                    left, top, _, height = (int(n) for n in found)
                    yield {"row": row, "at": (box[0] + max(left, 0) + 40, box[1] + top + height // 2)}

    def _list_rows(self, path: str, box: Box) -> Iterator[dict[str, Any]]:
        for index in range(int(self._call(path, "size"))):
            found = self._root.tk.splitlist(self._call(path, "bbox", index))
            if found and int(found[1]) + int(found[3]) // 2 < box[3]:
                at = (box[0] + 12, box[1] + int(found[1]) + int(found[3]) // 2)
                yield {"row": str(self._call(path, "get", index)), "at": at}

    def _along(self, path: str, box: Box, what: Callable[[int], Any], region: str = "") -> Iterator[dict[str, Any]]:
        """What lies side by side in the first line of a widget: each with a place in its middle."""
        found: dict[str, list[int]] = {}
        for x in range(3, box[2], STEP):
            if not region or str(self._call(path, "identify", "region", x, 5)) == region:
                try:
                    name = str(what(x))
                except tk.TclError:
                    continue
                if name:
                    found.setdefault(name, []).append(x)
        for name, places in found.items():
            yield {"name": name, "at": (box[0] + places[len(places) // 2], box[1] + 10)}


class Part:
    """A page, or a part of one, with the record in hand: alike for every kind."""

    def __init__(self, page: Any) -> None:
        self._page = page
        self.kind = page.kind
        form = self._form = page._form
        self.uid: str = form.saved.uid if form.saved is not None else ""
        self.texts: Mapping[str, str] = form.texts

    def says_saved(self, sentence: str) -> bool:
        """Whether this sentence says that all that is typed is saved."""
        return bool(self.uid) and sentence == self._page._saved_words()

    @property
    def title(self) -> str:
        """What stands over the form, and beside that."""
        page = self._page
        form = page.editor.card if self.kind == "garment" else page.editor
        return f"{form._title.cget('text')} {form._beside.cget('text')}"

    @property
    def shown(self) -> Mapping[str, str]:
        """What is to be seen of the texts. A choice stands in words for what the form has."""
        page = self._page
        fields = page.editor.fields
        of_piece = self.kind == "garment" and self._form.piece
        texts = {key: field.text for key, field in fields.items() if not isinstance(field, ChoiceField)}
        return {piece_key(self._form.piece, key) if of_piece else key: text for key, text in texts.items()}

    def untrue(self, window: MainWindow) -> str:
        """What it says wrongly of whether its record is saved; "" if it says what the logbook has."""
        kept = kept_texts(_fresh(window), self.kind, self.uid) if self.uid else None
        if kept is None:
            return ""
        here = {**self.texts, **self.shown}  # what is folded away is told by the form alone
        other = {key for key in here.keys() | kept.keys() if here.get(key, "").strip() != kept.get(key, "").strip()}
        title = self.title
        return "" if ("not saved" in title) == bool(other) else f"{title!r}, but other than the logbook has it: {sorted(other)}"


def _fresh(window: MainWindow) -> Session:
    """A session that nobody is told of."""
    assert window.session is not None
    book = window.session.book
    before_writing = book.before_writing
    session = Session(book, window.settings)
    book.before_writing = before_writing
    return session


def parts(window: MainWindow) -> Iterator[Part]:
    """All that were looked at yet."""
    for page in window.pages:
        for part in page._parts.values() if isinstance(page, PiecesAndGarments) else [page]:
            yield Part(part)


def main(arguments: list[str]) -> int:
    faulthandler.register(signal.SIGUSR1)
    channel = socket.socket(fileno=int(arguments.pop(0)))
    if arguments[:1] == ["--weakness"]:
        WEAKNESSES[arguments[1]]()
        del arguments[:2]

    class Watched(MainWindow):
        def __init__(self, *given: Any) -> None:
            super().__init__(*given)
            self.teller = Teller(self, channel)

    start.MainWindow = Watched  # type: ignore[misc]
    return command_line.main(arguments)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
