"""A pasted text proofread: what differs is marked in place, and gone through by key."""

import tkinter as tk
from collections.abc import Callable
from functools import partial

from logbook.craft.proofreading.text_lines import TextLines
from logbook.pages.proofread_text import NOTHING_YET, TROUBLE, UNKNOWN, Marked, marked, next_mark
from logbook.tasks.proofreading import Held
from logbook.window.background import Background
from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.text_area import TextArea

PAUSE_MS = 600
"""After the last key, before the text is read again."""
AT = "at"


class ProofreadingDialog:
    """Stays open beside the work. ``held`` is what the text is held against; ``keep`` takes what was typed when it closes."""

    def __init__(self, parent: tk.Misc, look: Look, name: str, held: Held, text: str, keep: Callable[[str], object]) -> None:
        self.look, self._held, self._keep = look, held, keep
        self._marked, self._marked_text = Marked((), NOTHING_YET), ""
        self._lines = TextLines("")
        self._timer = ""
        self.dialog = Dialog(parent, look, f"Proofread a text: {name}", self._close, modal=False)
        inside = self.dialog.inside
        inside.rowconfigure(0, weight=1)
        typed = TextArea(inside, look, width=76, height=18, undo=True)
        typed.grid(row=0, column=0, sticky="nsew")
        self.area = typed.area
        self.here = Sentence(inside, style="Warning.TLabel")
        look.grid(self.here, row=1, column=0, sticky="ew", pady=(1, 0))
        self.whole = Sentence(inside, NOTHING_YET, "Muted.TLabel")
        look.grid(self.whole, row=2, column=0, sticky="ew", pady=(1, 0))
        look.when_changed(self.area, self._follow_look)
        self._bind()
        self.previous = self.dialog.add_button("&Previous", partial(self.go, back=True))
        self.following = self.dialog.add_button("&Next", self.go, accent=True)
        self.dialog.add_button("&Close", self._close)
        self.area.insert("1.0", text)
        self.area.edit_reset()
        self.read()
        self.dialog.open(self.area)

    def _bind(self) -> None:
        area = self.area
        area.bind("<<Modified>>", self._typed)
        area.bind("<ButtonRelease-1>", lambda _: self._say_here(), add="+")
        area.bind("<KeyRelease>", lambda _: self._say_here(), add="+")
        self.dialog.bind("<F3>", lambda _: self.go())
        self.dialog.bind("<Shift-F3>", lambda _: self.go(back=True))

    @property
    def text(self) -> str:
        """What stands there now."""
        return self.area.get("1.0", "end-1c")

    def read(self) -> None:
        """Proofreads what stands there now, and marks it."""
        self._timer = ""
        text = self.text
        self._take(text, marked(text, self._held))

    def _read_beside(self) -> None:
        """The same beside the window, so that no key waits for it."""
        self._timer = ""
        text = self.text
        Background(self.dialog, lambda _: marked(text, self._held), partial(self._take, text), self._failed, lambda *_: None)

    @staticmethod
    def _failed(error: Exception) -> None:
        raise error

    def _take(self, text: str, found: Marked) -> None:
        if text != self.text:
            return  # another reading is on its way
        self._marked, self._marked_text = found, text
        for sort in (TROUBLE, UNKNOWN, AT):
            self.area.tag_remove(sort, "1.0", "end")
        self._lines = TextLines(text)
        for mark in self._marked.marks:
            self.area.tag_add(mark.sort, self._place(mark.start), self._place(mark.end))
        self.whole.configure(text=self._marked.says)
        for button in (self.previous, self.following):
            button.state(["!disabled" if self._marked.troubles else "disabled"])
        self._say_here()

    def go(self, back: bool = False) -> None:
        """To the next trouble behind the cursor, or the one before it."""
        self._stop_timer()
        if self._marked_text != self.text:
            self.read()
        troubles = self._marked.troubles
        found = next_mark([(mark.start, mark.end) for mark in troubles], self._cursor(), back)
        if found is None:
            return
        place = self._place(troubles[found].start)
        self.area.mark_set("insert", place)
        self.area.see(self._place(troubles[found].end))
        self.area.see(place)
        self.area.focus_set()
        self._say_here()

    def _place(self, at: int) -> str:
        """A place of the text as Tk finds it at once: counted through from the beginning, many marks take it seconds."""
        line = self._lines.of(at)
        return f"{line}.{at - self._lines.start(line)}"

    def _cursor(self) -> int:
        return len(self.area.get("1.0", "insert"))

    def _say_here(self) -> None:
        at = self._cursor()
        here = [mark for mark in self._marked.marks if mark.start <= at < mark.end and self._marked_text == self.text]
        self.area.tag_remove(AT, "1.0", "end")
        for mark in here:
            self.area.tag_add(AT, self._place(mark.start), self._place(mark.end))
        self.here.configure(text="\n".join(dict.fromkeys(mark.says for mark in here)))

    def _typed(self, _: object) -> None:
        if self.area.edit_modified():
            self.area.edit_modified(False)
            self._stop_timer()
            self._timer = self.area.after(PAUSE_MS, self._read_beside)

    def _stop_timer(self) -> None:
        if self._timer:
            self.area.after_cancel(self._timer)
        self._timer = ""

    def _follow_look(self) -> None:
        palette = self.look.palette
        self.area.configure(height=max(6, round(1800 / self.look.percent)))
        self.area.tag_configure(UNKNOWN, foreground=palette.muted)
        self.area.tag_configure(TROUBLE, background=palette.error_field, underline=True)
        self.area.tag_configure(AT, background=palette.selection)

    def _close(self) -> None:
        self._stop_timer()
        self._keep(self.text)
        self.dialog.close()
