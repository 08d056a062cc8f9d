"""A picture of every page and dialog in every text size and palette, to be looked at one by one before a release:
``python -m tests.every_picture FOLDER [WIDTHxHEIGHT …] [PART-OF-A-NAME …]`` (wants Xvfb,
the window manager openbox and ImageMagick).

The pictures are called after what they show, as ``swatches 150 dark.png``; one at which a dialog did not come up is named at the
end. They are made on the sample, on a screen of 1366×768 or of each size named, zoomed, with the frames and titles that a window
manager gives. Parts are those of the names of ``SCENES``.
"""

import gc
import math
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import tkinter as tk
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from itertools import product
from pathlib import Path

from logbook.book.logbook import Logbook, open_logbook
from logbook.book.pictures import folder_of
from logbook.pages.own_sheet_page import OwnSheetPage
from logbook.pages.patterns.pattern_texts import SENTENCE
from logbook.pages.pieces.shaping import KINDS
from logbook.pages.proofread_text import TROUBLE
from logbook.settings import Settings, WindowPlace
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.importing import plan_import
from logbook.tasks.keeping import DamagedError, ReplacedError, back_up, new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.merging import merge
from logbook.tasks.own_sheets import pasted_sheets
from logbook.tasks.sampling import new_sample
from logbook.window.background import Report
from logbook.window.dialog import Dialog
from logbook.window.garments.follow_view import VIEWS
from logbook.window.import_dialog import show_plan
from logbook.window.main_window import MainWindow
from logbook.window.merge_dialog import ask_whose
from logbook.window.own_sheet_dialog import ask_columns
from logbook.window.progress import run_with_progress
from logbook.window.scrolled import Scrolled
from tests.pictures import everything, find, patterns, pieces
from tests.support.display import SIZE, own_display
from tests.support.screen import settle, type_text
from tests.support.whole_window import dialogs

SIZES = (100, 150, 200)
PALETTES = ("light", "dark")
SHEETS = Path(__file__).resolve().parent.parent / "sample_data"
EVERYTHING_OPEN = (
    *("swatches.filters", "swatches.yarn", "swatches.pattern", "swatches.conditions", "swatches.more"),
    *("swatches.body", "swatches.ways", "swatches.sure", "swatches.changes"),
    *("pieces.body", "pieces.edgings", "pieces.lines", "pieces.ways"),
)
COMES_UP_S = 8.0
MOST_STEPS = 7
DRAWN_S = 0.1
"""Until the window manager has drawn a frame."""
Scene = Callable[["Stage"], None]


def swatches(stage: "Stage") -> None:
    """The worked example in hand, its chain for 46 cm."""
    stage.window.tabs.select(0)
    stage.page.first_focus()
    settle(stage.root)
    find(stage.root, "2024-09-21")
    stage.page.panes.bring(2)
    type_text(stage.page.chain.width.input, "46")


def is_help(window: tk.Toplevel) -> bool:
    return isinstance(window, Dialog) and not window.modal and bool(window.winfo_viewable())


class Stage:
    """One window on a fresh sample, and the camera."""

    def __init__(self, window: MainWindow, name: Callable[[str], Path]) -> None:
        self.window, self.root, self._name = window, window.root, name
        self.missed: list[str] = []

    @property
    def page(self):  # type: ignore[no-untyped-def]  # pages are of several kinds
        return self.window.page_in_hand()

    def shoot(self, name: str) -> None:
        """A picture of the screen as it is."""
        settle(self.root)
        time.sleep(DRAWN_S)
        self.root.update()
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


def pages(stage: Stage) -> None:
    """What is seen without a dialog."""
    swatches(stage)
    stage.shoot("swatches")
    stage.page.editor._scrolled.canvas.yview_moveto(1)
    stage.page.chain._scrolled.canvas.yview_moveto(1)
    stage.shoot("swatches, scrolled down")
    stage.page.new()
    stage.page.chain._scrolled.canvas.yview_moveto(0)
    type_text(stage.page.editor.fields["hook mm"].input, "thick")
    stage.page.save()
    stage.shoot("swatches, what stands in the way")
    stage.page.revert()
    pieces(stage.root, stage.window)
    stage.shoot_down("pieces")
    stage.page.new()
    stage.page.editor.fields["width"].text = "wide"
    stage.page.save()
    stage.shoot("pieces, what stands in the way")
    stage.page.revert()
    patterns(stage.root, stage.window)
    stage.shoot_down("patterns")
    stage.page.new()
    stage.page.editor.fields[SENTENCE].text = "multiple of six"
    stage.page.editor.fields["rows_text"].text = "Row 1: Sc in 2nd ch from hook, *quux in next ch; rep from * to end. Turn."
    stage.page.save()
    stage.shoot("patterns, what stands in the way")
    stage.page.revert()


def garments(stage: Stage) -> None:
    """A garment as a whole, one of its pieces, and each view of them."""
    stage.window.tabs.select(1)
    settle(stage.root)
    page = stage.window.made_page(1)
    page.show("garments")  # type: ignore[attr-defined]
    settle(stage.root)
    part = page.part
    stage.shoot("garments")
    part.find.table.walk(1)  # type: ignore[attr-defined]
    stage.shoot("garments, a piece")
    part.panes.bring(2)
    for view in VIEWS[1:]:
        part.follow.views.buttons[view].invoke()  # type: ignore[attr-defined]
        settle(stage.root)
        stage.shoot(f"garments, {view}")


def names(stage: Stage) -> None:
    """The lists of names."""
    swatches(stage)
    stage.dialog("yarns", stage.page.yarns)
    patterns(stage.root, stage.window)
    stage.dialog("stitch patterns by name", stage.page.names)


def dialogs_of_swatches(stage: Stage) -> None:
    """Those of the first page, and those of any."""
    swatches(stage)
    page = stage.page
    for count in (2, 4):
        page.find.clear()
        page.find.table.select(page.find.table.shown[:count])
        stage.dialog(f"compare {count}", page.gauges.compare)
    page.find.clear()
    stage.dialog("nearest gauge", page.gauges.nearest)
    stage.dialog("which hook", page.gauges.which_hook, lambda up: type_text(up.focus_lastfor(), "2.5 repeats in 10 cm"))
    page.find.table.walk(-10_000)
    stage.dialog("which hook, one tried", page.gauges.which_hook)
    stage.dialog("changes of a record", stage.window.menu._undo.history)
    page.editor.fields["yarn"].text = "Something else"
    stage.dialog("not saved", page.settle)
    page.revert()


def dialogs_of_pieces(stage: Stage) -> None:
    """Those of the second page."""
    pieces(stage.root, stage.window)
    page = stage.page
    for kind in KINDS:

        def shape(dialog: tk.Toplevel, kind: str = kind) -> None:
            dialog.kind.text = kind  # type: ignore[attr-defined]
            dialog.fields["end"].text = "81"  # type: ignore[attr-defined]

        stage.dialog(f"shaping {kind}", page.files.shape, shape)
    stage.dialog("body chart", page.sizes.choose_chart)
    stage.dialog("body chart, scrolled down", page.sizes.choose_chart, to_the_end)
    stage.dialog("made piece", page.sizes.log_made)
    stage.dialog("made piece, scrolled down", page.sizes.log_made, to_the_end)


def to_the_end(dialog: tk.Toplevel) -> None:
    """Scrolls what scrolls in it."""
    for one in everything(dialog):
        if isinstance(one, Scrolled):
            one.canvas.yview_moveto(1)
        elif isinstance(one, tk.Text):
            one.yview_moveto(1)


def dialogs_of_the_menu(stage: Stage) -> None:
    """What the menus bring up."""
    books, root, look = stage.window.menu.books, stage.root, stage.window.look
    session = stage.window.session
    assert session is not None
    back_up(session.book)
    stage.dialog("assumptions", books.assumptions)
    stage.dialog("backups", books.backups)
    stage.dialog("help", books.help)
    stage.dialog("help, at the end", books.help, to_the_end)
    stage.dialog("help, rows", books.rows_help)
    stage.dialog("help, rows, at the end", books.rows_help, to_the_end)
    stage.dialog("keys", books.keys)
    stage.dialog("about", books.about)
    with new_book(Path(tempfile.mkdtemp()) / "new.logbook", keep_backups=False) as new:
        plans = {"swatches": plan_import(new, SHEETS / "swatches.csv")}
    for name, sheet in {"nothing new": "swatches", "faulty": "faulty"}.items():
        plans[name] = plan_import(session.book, SHEETS / f"{sheet}.csv")
    for name, plan in plans.items():
        stage.dialog(f"import {name}", lambda plan=plan: show_plan(root, look, plan))  # type: ignore[misc]
    stage.dialog("unexpected", lambda: root.report_callback_exception(ValueError, ValueError("x"), None))

    def slow(report: Report) -> None:
        for step in range(400):
            report(400 + step, 1000)
            time.sleep(0.005)

    stage.dialog("progress", lambda: run_with_progress(root, look, "Writing sheet.xlsx …", slow, lambda _: None, lambda _: None))
    gone = ReplacedError("sample.logbook was moved or replaced by another file while it was open: nothing was written.")
    stage.dialog("replaced", lambda: stage.window.watch.deal_with(gone))
    damaged = DamagedError("database disk image is malformed", "sample.logbook")
    stage.dialog("damaged", lambda: stage.window.watch.deal_with(damaged))


SHEET_OF_THEIR_OWN = """Wolle\tMuster\tNadel\tMaschen auf 10 cm\tFarbe\tWetter
Rook Wool\tmoss\t4,5\t16\tgrey\train
Rook Wool\tshell\t5\t15\tgreen\tsun
"""


def dialogs_of_others(stage: Stage) -> None:
    """What others bring: a sheet in their own words, another logbook, testers, a text to be proofread."""
    root, look, session = stage.root, stage.window.look, stage.window.session
    assert session is not None
    sheet = OwnSheetPage("what was copied", pasted_sheets(SHEET_OF_THEIR_OWN), {})
    stage.dialog("mapping of a sheet", lambda: ask_columns(root, look, sheet))
    other = Path(shutil.copy(session.book.path, Path(tempfile.mkdtemp()) / "other.logbook"))
    colour_all(session.book, "grey")
    with open_logbook(other) as theirs:
        colour_all(theirs, "moss green")
    questions = merge(session.book, other, {}).questions
    stage.dialog("merge", lambda: ask_whose(root, look, other.name, questions))
    pieces(root, stage.window)
    stage.dialog("testers", stage.page.testers.open)
    stage.dialog("proofreading a run", stage.page.sizes.files.proofread)
    stage.window.tabs.select(1)
    page = stage.window.made_page(1)
    page.show("garments")  # type: ignore[attr-defined]
    settle(root)
    page.part.panes.bring(2)
    page.part.follow.views.buttons["Pattern"].invoke()  # type: ignore[attr-defined]
    settle(root)
    text = page.part.follow.pattern.text  # type: ignore[attr-defined]
    wrong = re.sub(r"\d+", lambda found: str(int(found[0]) + 1) if int(found[0]) % 7 == 0 else found[0], text)

    def paste(up: tk.Toplevel) -> None:
        area = next(one for one in everything(up) if isinstance(one, tk.Text))
        area.insert("1.0", wrong)
        until = time.monotonic() + COMES_UP_S
        while not area.tag_ranges(TROUBLE) and time.monotonic() < until:  # it is read beside the window
            root.update()
            time.sleep(0.02)

    stage.dialog("proofreading a garment", page.part.files.proofread, paste)


def colour_all(book: Logbook, colour: str) -> None:
    """The same colour in three swatches."""
    for line in swatch_lines(book)[:3]:
        swatch = swatch_in_hand(book, line.uid)
        assert swatch is not None
        save_swatch(book, replace(swatch, colour=colour))


def empty(stage: Stage) -> None:
    """A logbook in which nothing is yet."""
    stage.window.show(new_book(Path(tempfile.mkdtemp()) / "new.logbook", keep_backups=False))
    for number, name in enumerate(("swatches", "pieces", "patterns")):
        stage.window.tabs.select(number)
        stage.shoot(f"{name}, empty")


SCENES: tuple[Scene, ...] = (
    *(pages, garments, names, dialogs_of_swatches, dialogs_of_pieces, dialogs_of_the_menu, dialogs_of_others, empty),
)


def main(folder: Path, words: list[str]) -> None:
    """Takes the pictures whose scene's name holds one of the words, or all, on each screen that is named."""
    folder.mkdir(parents=True, exist_ok=True)
    gc.disable()  # a worker that happened to collect what is left of a window would reach for Tk from its thread
    missed: list[str] = []
    screens = [word for word in words if re.fullmatch(r"\d+x\d+", word)] or ["{}x{}".format(*SIZE)]
    parts = [word for word in words if word not in screens]
    with tempfile.TemporaryDirectory() as home:
        os.environ["LOGBOOK_HOME"] = home
        (Path(home) / "sample").mkdir()
        with new_sample(Path(home) / "sample") as book:
            sample = book.path
        for screen in screens:
            size = tuple(map(int, screen.split("x")))
            place = folder if len(screens) == 1 else folder / screen
            place.mkdir(exist_ok=True)
            missed += on_screen(sample, place, (size[0], size[1]), parts)
    print("\n".join(["Not taken:", *missed]) if missed else f"All pictures are in {folder}.")


def on_screen(sample: Path, folder: Path, screen: tuple[int, int], parts: list[str]) -> list[str]:
    """Takes them on a screen of that size; what was missed."""
    missed: list[str] = []
    with own_display(size=screen):
        manager = subprocess.Popen(["openbox"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        try:
            for size, palette, scene in product(SIZES, PALETTES, SCENES):
                if not parts or any(part in scene.__name__ for part in parts):
                    missed += played(scene, sample, folder, size, palette)
                    gc.collect()
        finally:
            manager.terminate()
            manager.wait()
    return missed


def played(scene: Scene, sample: Path, folder: Path, size: int, palette: str) -> list[str]:
    """Takes the pictures of one scene; what was missed."""
    with a_stage(sample, folder, size, palette) as stage:
        scene(stage)
        return stage.missed


@contextmanager
def a_stage(sample: Path, folder: Path, size: int, palette: str) -> Iterator[Stage]:
    """A window on a copy of the sample; it is closed in the end, whatever is typed in it."""
    root = tk.Tk()
    width, height = root.winfo_screenwidth(), root.winfo_screenheight()
    place = WindowPlace(width, height, 0, 0, True)
    settings = Settings(text_size=size, palette=palette, opened=EVERYTHING_OPEN, place=place)
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


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
