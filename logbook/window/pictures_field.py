"""The pictures of a record, small and in a row, as a field of its form; its text names them."""

import threading
import tkinter as tk
from functools import partial
from pathlib import Path
from queue import SimpleQueue
from tkinter import ttk

from logbook.errors import RefusedError
from logbook.pages.picture_shelf import NOT_COPIED, PictureShelf, copied_files
from logbook.window.background import Background, Cancelled, Report
from logbook.window.dialog import Dialog
from logbook.window.field import LabelledField
from logbook.window.file_dialogs import ask_what_to_open
from logbook.window.flow import Flow
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.picture_images import Drawn, draw, known_small, shown, small
from logbook.window.styles import styled

KINDS = [("Pictures", "*.jpg *.jpeg *.JPG *.JPEG *.png *.PNG *.gif *.GIF"), ("All files", "*")]
LETTERS = 9
"""How high and wide a small picture is, in letters."""
OF_SCREEN = 0.8
_LARGE = "large"
_ONE_AT_A_TIME = threading.Lock()
"""Who goes quickly through many records waits for no more than one picture that is not wanted any more."""


class PicturesField(LabelledField):
    """Return or a click shows one large, Delete takes it off; *Add a picture…* takes a file in, and pasting does one that was
    copied, or whose path was. Small ones are drawn beside the window."""

    several_lines = True

    def __init__(self, parent: tk.Misc, look: Look, label: str, shelf: PictureShelf, *, label_width: int = 0) -> None:
        super().__init__(parent, look, label, label_width)
        self._shelf = shelf
        self.row = Flow(self, look)
        self.add_button = ttk.Button(self.row, text="Add a picture…", command=self.add, style=styled(parent, "TButton"))
        self.add_button.bind("<<Paste>>", lambda _: self.paste())
        self.buttons: dict[str, ttk.Button] = {}
        self.images: dict[str, tk.PhotoImage] = {}
        self.variable.trace_add("write", lambda *_: self._follow())
        self.bind("<Destroy>", lambda _: self.images.clear(), add="+")  # in the window's own thread, as Tk wants it
        self.arrange(self.row, grow=True, focus=self.add_button)
        self._follow()

    def add(self) -> None:
        """Asks for a file and takes it in."""
        chosen = ask_what_to_open(parent=self.winfo_toplevel(), title="Add a picture", filetypes=KINDS)
        if chosen:
            self.take(Path(chosen))

    def paste(self) -> None:
        """Takes the files in that were copied, or whose paths were; what is none is told."""
        try:
            copied = self.clipboard_get()
        except tk.TclError:
            copied = ""
        files = copied_files(copied)
        if not files:
            tell(self.winfo_toplevel(), self.look, NOT_COPIED)
        for file in files:
            self.take(file)

    def take(self, source: Path) -> None:
        """Takes a file in; a refusal is told."""
        try:
            self.text = self._shelf.add(self.text, source)
        except RefusedError as error:
            tell(self.winfo_toplevel(), self.look, str(error))

    def _follow(self) -> None:
        """A button for each picture that the text names."""
        names = self._shelf.names(self.text)
        if list(self.buttons) == list(names) and self.row.things:
            return
        self.row.clear()
        for button in self.buttons.values():
            button.destroy()
        self.buttons = {}
        self.images.clear()
        for number, name in enumerate(names, start=1):
            button = ttk.Button(self.row, text=f"Picture {number}", command=partial(self._show_large, name))
            button.bind("<<Paste>>", lambda _: self.paste())
            button.bind("<Delete>", lambda _, name=name: self._take_off(name))  # type: ignore[misc]
            button.bind("<Return>", lambda _, name=name: self._show_large(name))  # type: ignore[misc]
            for press in ("<Button-3>", "<Control-Button-1>"):
                button.bind(press, partial(self._menu, name))
            self.buttons[name] = button
            self.row.add(button)
        self.row.add(self.add_button)
        self.add_button.lift()  # last for Tab too
        side = LETTERS * self.look.letter
        known = {name: image for name in names if (image := known_small(self, name, side)) is not None}
        for name, image in known.items():
            self._show_small(name, image)
        if waiting := [name for name in names if name not in known]:
            self._draw_beside(waiting, side)

    def _draw_beside(self, names: list[str], side: int) -> None:
        """Reads and draws them in a thread, which ends when the first one's button goes: another record is shown then."""
        drawn: SimpleQueue[tuple[str, Drawn | RefusedError]] = SimpleQueue()

        def work(report: Report) -> None:
            with _ONE_AT_A_TIME:
                for number, name in enumerate(names):
                    report(number, len(names))
                    drawn.put((name, self._drawn(name, side)))

        def take(*_: object) -> None:
            while not drawn.empty():
                self._take_drawn(*drawn.get())

        Background(self.buttons[names[0]], work, take, _unless_cancelled, take)

    def _drawn(self, name: str, side: int) -> Drawn | RefusedError:
        try:
            return draw(self._shelf.content(name), side, side)
        except RefusedError as error:
            return error

    def _take_drawn(self, name: str, drawn: Drawn | RefusedError) -> None:
        try:
            if isinstance(drawn, RefusedError):
                raise drawn
            self._show_small(name, small(self, name, drawn))
        except RefusedError as error:
            button = self.buttons[name]
            button.configure(text=f"{button.cget('text')}: {_short(str(error))}")

    def _show_small(self, name: str, image: tk.PhotoImage) -> None:
        self.buttons[name].configure(image=image)
        self.images[name] = image

    def _show_large(self, name: str) -> None:
        window = self.winfo_toplevel()
        width, height = (int(size * OF_SCREEN) for size in (window.winfo_screenwidth(), window.winfo_screenheight()))
        try:
            image = shown(window, self._shelf.content(name), width, height - 4 * self.look.base.metrics("linespace"))
        except RefusedError as refused:
            self._in_viewer(name, refused)
            return
        dialog = Dialog(window, self.look, "Picture", lambda: dialog.close())
        self.images[_LARGE] = image
        ttk.Label(dialog.inside, image=image).grid(row=0, column=0)
        dialog.bind("<Destroy>", lambda _: self.images.pop(_LARGE, None), add="+")
        dialog.add_button("&Remove it", partial(self._take_off_and_close, name, dialog))
        dialog.open(dialog.add_button("Close", dialog.close))

    def _in_viewer(self, name: str, refused: RefusedError) -> None:
        import webbrowser

        try:
            file = self._shelf.file(name)
        except RefusedError:
            tell(self.winfo_toplevel(), self.look, str(refused))
            return
        if not webbrowser.open(file.as_uri()):
            tell(self.winfo_toplevel(), self.look, f"No viewer could be opened. The picture is {file}.")
        else:  # whether the viewer shows it can't be known
            self.show_message(f"Sent to the system's viewer. If it does not show there, open {file}", "hint")

    def _take_off_and_close(self, name: str, dialog: Dialog) -> None:
        dialog.close()
        self._take_off(name)

    def _take_off(self, name: str) -> None:
        self.text = self._shelf.take_off(self.text, name)
        self.add_button.focus_set()

    def _menu(self, name: str, event: "tk.Event[tk.Misc]") -> None:
        menu = tk.Menu(self, tearoff=False)
        menu.add_command(label="Show large", underline=0, command=partial(self._show_large, name))
        menu.add_command(label="Remove it", underline=0, accelerator="Delete", command=partial(self._take_off, name))
        menu.tk_popup(event.x_root, event.y_root)


def _unless_cancelled(error: Exception) -> None:
    if not isinstance(error, Cancelled):
        raise error


def _short(sentence: str) -> str:
    """``The picture is missing: it should …`` as ``missing``."""
    for word in ("missing", "damaged", "viewer"):
        if word in sentence:
            return "opens in a viewer" if word == "viewer" else word
    return "can't be shown"
