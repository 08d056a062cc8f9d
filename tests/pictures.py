"""Makes the pictures that README and help show: ``python -m tests.pictures`` (wants Xvfb and ImageMagick).

Every page is shown on the sample at 1366×768, 100 % text, light, with something in hand.
"""

import os
import subprocess
import tempfile
import time
import tkinter as tk
from collections.abc import Callable
from pathlib import Path

from logbook.settings import Settings
from logbook.tasks.sampling import new_sample
from logbook.window.main_window import MainWindow
from tests.support.display import SIZE, own_display
from tests.support.screen import press, settle, type_text

FOLDER = Path(__file__).resolve().parent.parent / "logbook" / "help"
SMALL = 640
CHART_S = 2.5
MENU = 28
"""Pixels the menu adds to what Tk calls the height of a window."""


def main() -> None:
    """Makes every picture anew."""
    with own_display(), tempfile.TemporaryDirectory() as folder:
        os.environ["LOGBOOK_HOME"] = folder
        make(Path(folder))


def make(folder: Path) -> None:
    """Goes through the pages and takes a picture of each."""
    root = tk.Tk()
    window = MainWindow(root, Settings())
    window.show(new_sample(folder), is_sample=True)
    root.geometry(f"{SIZE[0]}x{SIZE[1] - MENU}+0+0")
    root.deiconify()
    settle(root)
    for name, prepare in SCENES.items():
        prepare(root, window)
        settle(root)
        take(root, FOLDER / f"{name}.png")
    window.close_down()


def take(root: tk.Tk, target: Path) -> None:
    """A picture of the screen in few colours, which halves its size; and a small one for the help, which can't shrink it well."""
    root.update()
    few = ["-colors", "96"]
    subprocess.run(["import", "-window", "root", *few, f"png8:{target}"], check=True)
    small = target.with_name(f"{target.stem}-small.png")
    subprocess.run(["convert", str(target), "-resize", f"{SMALL}x", *few, f"png8:{small}"], check=True)


def swatches(root: tk.Tk, window: MainWindow) -> None:
    """The worked example: its chain for 46 cm."""
    window.tabs.select(0)
    settle(root)
    find(root, "2024-09-21")
    for widget in everything(root):
        if isinstance(widget, tk.Entry) and "width" in str(getattr(widget.master, "label", tk.Label).cget("text")).casefold():
            type_text(widget, "46")
            break


def patterns(root: tk.Tk, window: MainWindow) -> None:
    """The shell stitch and what it means."""
    window.tabs.select(len(window.tabs.tabs()) - 1)
    settle(root)
    find(root, "shell")
    until = time.monotonic() + CHART_S
    while time.monotonic() < until:  # its chart is drawn beside the window
        root.update()
        time.sleep(0.02)


def pieces(root: tk.Tk, window: MainWindow) -> None:
    """The finished garment and what follows of it."""
    window.tabs.select(1)
    settle(root)
    find(root, "usher")


def find(root: tk.Tk, words: str) -> None:
    """Types into the find field, where the keyboard is, and takes the first that is found."""
    type_text(focused(root), words)
    press(focused(root), "<Down>")
    settle(root)


def focused(root: tk.Tk) -> tk.Misc:
    """Where the keyboard is."""
    found = root.focus_get()
    assert found is not None
    return found


def everything(place: tk.Misc) -> list[tk.Misc]:
    """Every widget in ``place``, in reading order."""
    return [found for child in place.winfo_children() for found in (child, *everything(child))]


SCENES: dict[str, Callable[[tk.Tk, MainWindow], None]] = {"swatches": swatches, "pieces": pieces, "patterns": patterns}

if __name__ == "__main__":
    main()
