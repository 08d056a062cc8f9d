"""The window on a stage of its own, and the camera before it."""

import gc
import math
import shutil
import subprocess
import tempfile
import time
import tkinter as tk
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from logbook.book.logbook import open_logbook
from logbook.book.pictures import folder_of
from logbook.settings import Settings, WindowPlace
from logbook.window.dialog import Dialog
from logbook.window.main_window import MainWindow
from logbook.window.scrolled import Scrolled
from tests.pictures import everything
from tests.support.fits import screen_faults
from tests.support.screen import settle
from tests.support.whole_window import dialogs

EVERYTHING_OPEN = (
    *("swatches.filters", "swatches.yarn", "swatches.pattern", "swatches.conditions", "swatches.more"),
    *("swatches.body", "swatches.ways", "swatches.sure", "swatches.changes"),
    *("pieces.body", "pieces.edgings", "pieces.lines", "pieces.ways"),
    *("garments.own", "garments.joins", "garments.names", "garments.more"),
)
COMES_UP_S = 8.0
MOST_STEPS = 7
MENU_IN = 120
"""Pixels from the left edge of the window to a menu."""
DRAWN_S = 0.1
"""Until the window manager has drawn a frame."""
Scene = Callable[["Stage"], None]


def is_help(window: tk.Toplevel) -> bool:
    return isinstance(window, Dialog) and not window.modal and bool(window.winfo_viewable())


class Stage:
    """One window on a fresh sample, and the camera."""

    def __init__(self, window: MainWindow, name: Callable[[str], Path]) -> None:
        self.window, self.root, self._name = window, window.root, name
        self.missed: list[str] = []
        self.faults: dict[str, list[str]] = {}

    @property
    def page(self):  # type: ignore[no-untyped-def]  # pages are of several kinds
        return self.window.page_in_hand()

    def shoot(self, name: str) -> None:
        """A picture of the screen as it is."""
        settle(self.root)
        time.sleep(DRAWN_S)
        self.root.update()
        self.faults[self._name(name).stem] = [fault for one in (self.root, *dialogs(self.root)) for fault in screen_faults(one)]
        subprocess.run(["import", "-window", "root", str(self._name(name))], check=True)

    def shoot_down(self, name: str) -> None:
        """Pictures of the page in hand from the top to the end, in even steps of all that scrolls in it."""
        self.shoot(name)
        scrolled = [one.canvas for one in everything(self.page.frame) if isinstance(one, Scrolled)]
        screens = max(1 / (canvas.yview()[1] - canvas.yview()[0]) for canvas in scrolled)
        steps = min(math.ceil(screens - 1), MOST_STEPS)
        for step in range(1, steps + 1):
            for canvas in scrolled:
                canvas.yview_moveto(step / steps * (1 - canvas.yview()[1] + canvas.yview()[0]))
            self.shoot(f"{name}, {step} down")

    def menu(self, name: str, menu: tk.Menu, beside: tk.Misc | None = None) -> None:
        """A picture of a menu that is open below ``beside``, or at the top of the window."""
        place = beside or self.root
        below = place.winfo_height() if beside is not None else 0
        menu.post(place.winfo_rootx() + MENU_IN * (beside is None), place.winfo_rooty() + below)
        self.shoot(name)
        menu.unpost()

    def dialog(self, name: str, opens: Callable[[], object], prepare: Callable[[tk.Toplevel], object] | None = None) -> None:
        """A picture of the dialog that ``opens`` brings up, which is then left by Escape."""
        over = tk.BooleanVar(self.root, False)
        end = time.monotonic() + COMES_UP_S

        def look() -> None:
            # Others are on their way, or out; the help holds nothing.
            up = [one for one in dialogs(self.root) if one.grab_current() is one or is_help(one)]
            if not up and time.monotonic() < end:
                self.root.after(50, look)
                return
            if up:
                if prepare is not None:
                    prepare(up[-1])
                self.shoot(name)
                for one in reversed(dialogs(self.root)):
                    place = one.focus_lastfor() or one
                    place.focus_force()  # keys go to where the keyboard is
                    place.update()
                    place.event_generate("<Escape>")
            else:
                self.missed.append(str(self._name(name)))
            over.set(True)

        self.root.after(100, look)
        opens()
        if not over.get():
            self.root.wait_variable(over)
        while dialogs(self.root) and time.monotonic() < end:
            self.root.update()
        gc.collect()  # in the thread of the window, not when a worker of the next happens to collect


@contextmanager
def a_stage(sample: Path, folder: Path, size: int, palette: str, opened: tuple[str, ...]) -> Iterator[Stage]:
    """A window on a copy of the sample, these sections open; it is closed in the end, whatever is typed in it."""
    root = tk.Tk()
    width, height = root.winfo_screenwidth(), root.winfo_screenheight()
    place = WindowPlace(width, height, 0, 0, True)
    settings = Settings(text_size=size, palette=palette, opened=opened, place=place)
    window = MainWindow(root, settings)
    copy = Path(shutil.copy(sample, Path(tempfile.mkdtemp()) / "sample.logbook"))
    shutil.copytree(folder_of(sample), folder_of(copy))
    window.show(open_logbook(copy), is_sample=True)
    root.deiconify()
    settle(root)
    root.event_generate("<Motion>", warp=True, x=width, y=height)  # out of the way: what is under the pointer looks otherwise
    settle(root)
    yield Stage(window, lambda name: folder / f"{name} {size} {palette}.png")
    window.close_down()
