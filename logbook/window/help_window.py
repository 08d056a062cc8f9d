"""Help: the pages to read with their pictures, the keys, and what the program is."""

import re
import tkinter as tk
from importlib import resources
from tkinter import ttk

from logbook import __version__
from logbook.window.dialog import Dialog
from logbook.window.keys import accelerator
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.table import Column, Row, Table

KEYS: tuple[tuple[str, str], ...] = (
    ("Tab, Shift+Tab", "next field, previous field"),
    ("Alt and an underlined letter", "go to that field, press that button"),
    ("Mod-1", "the page Swatches"),
    ("Mod-2", "the page Pieces"),
    ("Mod-3", "the page Stitch patterns"),
    ("Mod-f", "find"),
    ("Escape", "clear the find field, close a dialog"),
    ("Mod-n", "new record"),
    ("Mod-g", "a new record like the one shown"),
    ("Mod-s", "save"),
    ("Mod-r", "back to what was saved"),
    ("Mod-d", "delete the record shown"),
    ("Mod-z", "undo, also after reopening"),
    ("Mod-Shift-z", "redo"),
    ("PgUp, PgDn", "in a form: scroll"),
    ("Mod-k", "swatches: compare those selected"),
    ("Mod-b", "swatches: nearest gauge; pieces: sizes from a body chart"),
    ("Mod-j", "swatches: which hook; pieces: shaping"),
    ("Mod-p", "pieces: print the page of the one shown"),
    ("Mod-Shift-p", "pieces: print all sizes"),
    ("Mod-l", "swatches: copy the gauge line; pieces: copy the lines"),
    ("Mod-t", "swatches: print tags; pieces: mark as published"),
    ("Mod-m", "pieces: log what was made"),
    ("Mod-Shift-m", "pieces: testers of the pattern"),
    ("Mod-h", "changes of the record shown"),
    ("Mod-c", "in a list: copy the rows as a table"),
    ("Home, End, PgUp, PgDn", "in a list: move; with Shift: select"),
    ("Mod-o", "open a logbook"),
    ("Mod-i", "import a sheet"),
    ("Mod-Shift-v", "paste rows copied in a spreadsheet, with their headings"),
    ("Mod-v", "at Add a picture: paste a copied picture file, or its path"),
    ("Mod-e", "export to a sheet"),
    ("Mod-plus", "larger text"),
    ("Mod-minus", "smaller text"),
    ("F3, Shift+F3", "when proofreading: next problem, previous problem"),
    ("F1", "the walk through"),
)

_PICTURE = re.compile(r"!\[(?P<alt>[^]]*)\]\((?P<file>[\w.-]+)\)\Z")
_INLINE = re.compile(r"(\*\*[^*]+\*\*|\*[^*]+\*|`[^`]+`)")


WALK, ROWS = "walk.md", "rows.md"
BULLET = "•  "
KEYS_TITLE = "Keys"


def show_help(parent: tk.Misc, look: Look, name: str = WALK) -> None:
    """Shows a page of the help in a window of its own that can stay open; its first line is the title."""
    text = resources.files("logbook.help").joinpath(name).read_text("utf-8")
    title = text.partition("\n")[0].lstrip("# ")
    if _is_open(parent, title):
        return
    dialog = Dialog(parent, look, title, lambda: dialog.close(), modal=False)
    page = tk.Text(dialog.inside, wrap="word", width=82, height=26, cursor="arrow", takefocus=True, font="TkTextFont")
    bar = ttk.Scrollbar(dialog.inside, command=page.yview, takefocus=False)
    page.configure(yscrollcommand=bar.set, padx=look.pixels(4), pady=look.pixels(3), spacing1=look.pixels(2))
    page.grid(row=0, column=0, sticky="nsew")
    bar.grid(row=0, column=1, sticky="ns")
    dialog.inside.rowconfigure(0, weight=1)
    _fill(page, look, text)
    page.configure(state="disabled")
    dialog.add_button("&Close", dialog.close, accent=True)
    dialog.open(page)


def show_keys(parent: tk.Misc, look: Look) -> None:
    """Lists the keys."""
    if _is_open(parent, KEYS_TITLE):
        return
    dialog = Dialog(parent, look, KEYS_TITLE, lambda: dialog.close(), modal=False)
    table = Table(dialog.inside, look, (Column("key", "Key", 24), Column("does", "What it does", 50, grow=True)))
    rows = [(_shown(parent, key), does) for key, does in KEYS]
    table.set_rows(Row(key, (key, does), (key, does)) for key, does in rows)
    table.tree.configure(height=len(KEYS))
    dialog.inside.rowconfigure(0, weight=1)
    look.grid(table, row=0, column=0, sticky="nsew")
    dialog.add_button("&Close", dialog.close, accent=True)
    dialog.open(table.tree)


def _is_open(parent: tk.Misc, title: str) -> bool:
    """Whether a page of the help is there already; then it comes to the front."""
    for one in parent.winfo_children():
        if isinstance(one, Dialog) and not one.modal and one.title() == title:
            one.lift()
            one.focus_force()
            return True
    return False


def show_about(parent: tk.Misc, look: Look) -> None:
    """Says what the program is and what it is not."""
    tell(
        parent,
        look,
        f"Swatch and gauge logbook {__version__}: it keeps your swatches and turns them into the numbers of a garment.",
        "It works offline and keeps everything in one file of yours. This window shows nothing to screen readers, which its "
        "toolkit does not support yet: the command line, the workbooks and the printed pages are the way round.",
    )


def _shown(widget: tk.Misc, keys: str) -> str:
    return accelerator(widget, keys) if "Mod" in keys else keys


def _fill(page: tk.Text, look: Look, text: str) -> None:
    """Headings, lists, pictures and emphasis: as much of Markdown as our own help uses."""
    page.tag_configure("h1", font="TitleFont")
    page.tag_configure("h2", font="TkHeadingFont", spacing1=look.pixels(6))
    page.tag_configure("strong", font="TkHeadingFont")
    page.tag_configure("typed", font="TkFixedFont")
    item = look.pixels(2)
    page.tag_configure("item", lmargin1=item, lmargin2=item + look.base.measure(BULLET), spacing1=look.pixels(1))
    page.pictures = []  # type: ignore[attr-defined]  # Tk drops a picture nobody holds
    for line in filter(None, text.splitlines()):
        picture = _PICTURE.match(line)
        if picture:
            _show_picture(page, look, picture["file"], picture["alt"])
        elif line.startswith("#"):
            marks, _, words = line.partition(" ")
            page.insert("end", words + "\n", f"h{len(marks)}")
        else:
            item = line.startswith("- ")
            _insert(page, (BULLET + line[2:] if item else line) + "\n", ("item",) if item else ())


def _insert(page: tk.Text, line: str, tags: tuple[str, ...]) -> None:
    for part in _INLINE.split(line):
        if part.startswith("**"):
            page.insert("end", part[2:-2], (*tags, "strong"))
        elif part.startswith("*") and part.endswith("*") and len(part) > 2:
            page.insert("end", part[1:-1], (*tags, "strong"))
        elif part.startswith("`"):
            page.insert("end", part[1:-1], (*tags, "typed"))
        else:
            page.insert("end", part, tags)


def _show_picture(page: tk.Text, look: Look, name: str, words: str) -> None:
    found = resources.files("logbook.help").joinpath(name)
    if not found.is_file():
        return
    picture = tk.PhotoImage(master=page, data=found.read_bytes())
    shrink = max(1, -(-picture.width() // max(1, 82 * look.letter)))
    small = picture.subsample(shrink) if shrink > 1 else picture
    page.pictures.append(small)  # type: ignore[attr-defined]
    page.image_create("end", image=small, padx=look.pixels(1))
    page.insert("end", f"\n{words}\n", ("item",))
