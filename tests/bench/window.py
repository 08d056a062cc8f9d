"""How quick the window is on 10,000 swatches, beside the floor Tk itself sets: ``python -m tests.bench.window``.

Printed are, as the median of several runs in fresh processes, as a user's second start finds the program: from starting Python to
a window that can be used (the find field and a screenful of the list are drawn, and keys are taken), to the form and then the
chain that follow beside them, and to the last row of the list being in, each beside a bare ttk window of as many widgets and rows
that is drawn; and from a key in the find field to the screen being drawn, beside a bare entry and a list that is rearranged.
Starts are told by the clock and in the processor's time, which other work on the machine hardly changes.
Nothing is asserted: a busy machine is slower. Starts an Xvfb for itself; where there is none it wants a display.
"""

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from logbook.book.logbook import new_logbook
from logbook.book.swatches import put_stitch_pattern, put_swatch, put_yarn
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.settings import Settings, WindowPlace, save_settings
from tests.support.display import own_display

SWATCHES = 10_000
RUNS = 9
KEYS = "limewalk"
YARNS = ("Limewalk Cotton", "Harbour Merino", "Owlbarn Alpaca", "Sallowbank Bamboo")

OURS = """
import sys, time, json, tkinter as tk
started = float(sys.argv[2])
from logbook.commands.main import main
from logbook.window.main_window import MainWindow

def everything(place):
    for child in place.winfo_children():
        yield child
        yield from everything(child)

def measured(window, note):
    root = window.root
    root.geometry(f"{root.winfo_screenwidth()}x{root.winfo_screenheight() - 32}+0+0")
    root.deiconify()
    while not (window.page_in_hand() and window.page_in_hand().frame.winfo_viewable()):
        root.tk.dooneevent(0)
    root.update_idletasks()
    usable = time.time() - started, time.process_time()
    page = window.page_in_hand()
    while page._editor is None or not page.editor.winfo_viewable():
        root.tk.dooneevent(0)
    root.update_idletasks()
    form = time.time() - started, time.process_time()
    while page._side is None or not page.chain.winfo_viewable():
        root.tk.dooneevent(0)
    root.update_idletasks()
    chain = time.time() - started, time.process_time()
    while page.find.table.count < page.swatches.count:
        root.tk.dooneevent(0)
    root.update_idletasks()
    rows = time.time() - started, time.process_time()
    kinds = [child.winfo_class() for child in everything(root)]
    root.focus_force()
    root.update()
    window.page_in_hand().first_focus()
    root.update()
    field = root.focus_get()
    times = []
    for letter in sys.argv[3]:
        before = time.perf_counter()
        field.event_generate(f"<Key-{letter}>")
        root.update()
        times.append(time.perf_counter() - before)
    print(json.dumps([usable, kinds, times, form, chain, rows]))
    return 0

MainWindow.work = measured  # in the place of the loop that waits for the user
main([])
"""

BARE = """
import sys, time, json, tkinter as tk
from tkinter import ttk
started = float(sys.argv[2])
kinds = json.loads(sys.argv[1])
root = tk.Tk()
ttk.Style(root).theme_use("clam")
root.geometry(f"{root.winfo_screenwidth()}x{root.winfo_screenheight() - 32}+0+0")
makers = {"TFrame": ttk.Frame, "TLabel": ttk.Label, "TEntry": ttk.Entry, "TButton": ttk.Button, "TCombobox": ttk.Combobox,
          "Treeview": ttk.Treeview, "TScrollbar": ttk.Scrollbar, "Canvas": tk.Canvas,
          "Frame": tk.Frame, "TMenubutton": ttk.Menubutton, "Text": tk.Text, "TNotebook": ttk.Notebook,
          "Panedwindow": tk.PanedWindow, "TSeparator": ttk.Separator}
menus = None
for place, kind in enumerate(kinds):
    if kind == "Menu":
        menus = menus or tk.Menu(root)
        root.configure(menu=menus)
        menus.add_cascade(label="Menu", menu=tk.Menu(menus))
    else:
        makers[kind](root).grid(row=place // 12, column=place % 12)
tree = ttk.Treeview(root, columns=("a", "b", "c"), show="headings")
for number in range(10_000):
    tree.insert("", "end", iid=str(number), values=(number, "yarn", "stitch"))
tree.grid(row=0, column=13)
entry = ttk.Entry(root)
entry.grid(row=1, column=13)
while not entry.winfo_viewable():
    root.tk.dooneevent(0)
root.update_idletasks()
usable = time.time() - started, time.process_time()
root.update()
entry.focus_force()
root.update()
times = []
for n, letter in enumerate(sys.argv[3]):
    before = time.perf_counter()
    entry.event_generate(f"<Key-{letter}>")
    tree.set_children("", *(str(i) for i in range(n, 10_000, 4)))
    root.update()
    times.append(time.perf_counter() - before)
print(json.dumps([usable, times]))
"""


def main() -> None:
    """Makes the logbook, runs both windows and prints the table."""
    with own_display() as display, tempfile.TemporaryDirectory() as folder:
        if not display:
            sys.exit("There is no screen to show windows on: set DISPLAY or install Xvfb.")
        os.environ["LOGBOOK_HOME"] = folder
        keep_bytecode(Path(folder) / "bytecode")
        save_settings(Settings(place=WindowPlace(1366, 736, 0, 0, False)))
        path = Path(folder) / "swatches.logbook"  # the usual logbook, which opens when nothing else is said
        make(path, SWATCHES)
        kinds = run(OURS, str(path))[1]
        pairs = [(run(OURS, str(path)), run(BARE, json.dumps(kinds))) for _ in range(RUNS)]
        ours, bare = [pair[0] for pair in pairs], [pair[1] for pair in pairs]
    most = ", ".join(f"{number} {kind}" for kind, number in Counter(kinds).most_common(5))
    print(f"{SWATCHES:,} swatches, {len(kinds)} widgets ({most} …)")
    print(f"{'':46}{'this program':>14}{'bare ttk':>12}{'ratio':>8}")
    steps = {0: "usable window", 3: "the form beside it", 4: "the chain beside that", 5: "the last row being in"}
    for way, clock in enumerate(("", ", of the processor")):
        for place, words in steps.items():
            show(f"start to {words}{clock}", [one[place][way] for one in ours], [one[0][way] for one in bare])
    for words, chosen in (("median", statistics.median), ("slowest", max)):
        show(f"a key in the find field, {words}", [chosen(one[2]) for one in ours], [chosen(one[1]) for one in bare])


def keep_bytecode(folder: Path) -> None:
    """As on a user's second start: with the bytecode that Python keeps beside the program."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    os.environ["PYTHONPYCACHEPREFIX"] = str(folder)


def make(path: Path, many: int) -> None:
    """A logbook of many swatches, each with three readings."""
    typed = read_readings("4 repeats = 15.1 cm; 3 repeats = 11.5 cm; 9 rows = 8 cm")
    readings = tuple(TakenReading(Condition.WASHED, one) for one in typed)
    with new_logbook(path) as book, book.writing("many swatches") as writing:
        pattern = StitchPattern(name="shell stitch", multiple=6, plus=1, extra_chains=1, rows_in_repeat=2)
        pattern = StitchPattern(uid=put_stitch_pattern(writing, pattern), name=pattern.name, multiple=6)
        yarns = [Yarn(uid=put_yarn(writing, Yarn(name=name)), name=name) for name in YARNS]
        for number in range(many):
            date = f"20{10 + number % 16:02d}-{1 + number % 12:02d}-{1 + number % 28:02d}"
            yarn = yarns[number // 16 % len(yarns)]  # of one year too they differ, so that the form changes from row to row
            tag = f"S-{number:05d}"
            put_swatch(writing, Swatch(tag=tag, date=date, yarn=yarn, pattern=pattern, hook_mm=4.5, readings=readings))


def run(program: str, argument: str) -> list:  # type: ignore[type-arg]
    """One fresh process; what it prints."""
    command = [sys.executable, "-c", program, argument, str(time.time()), KEYS]
    return list(json.loads(subprocess.run(command, check=True, capture_output=True, text=True).stdout))


def show(what: str, ours: list[float], bare: list[float]) -> None:
    """One line of the table, in ms."""
    mine, floor = statistics.median(ours) * 1000, statistics.median(bare) * 1000
    print(f"{what:46}{mine:>11.0f} ms{floor:>9.0f} ms{mine / floor:>8.2f}")


if __name__ == "__main__":
    main()
