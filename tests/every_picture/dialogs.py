"""What comes up above the pages."""

import re
import shutil
import tempfile
import time
import tkinter as tk
from dataclasses import replace
from pathlib import Path

from logbook.book.logbook import Logbook, open_logbook
from logbook.pages.drafts import Offer, draft_of
from logbook.pages.own_sheet_page import OwnSheetPage
from logbook.pages.pieces.shaping import KINDS
from logbook.pages.proofread_text import TROUBLE
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.importing import plan_import
from logbook.tasks.keeping import DamagedError, NoBackupError, ReplacedError, back_up, new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.merging import merge
from logbook.tasks.own_sheets import pasted_sheets
from logbook.window.background import Report
from logbook.window.changed_elsewhere import may_save
from logbook.window.draft_dialog import offer_draft
from logbook.window.import_dialog import show_plan
from logbook.window.merge_dialog import ask_whose
from logbook.window.message import tell
from logbook.window.no_backup import offer_other_folder
from logbook.window.own_sheet_dialog import ask_columns
from logbook.window.pictures_field import PicturesField
from logbook.window.progress import run_with_progress
from logbook.window.scrolled import Scrolled
from tests.every_picture.pages import garments_part, swatches
from tests.every_picture.stage import COMES_UP_S, Scene, Stage
from tests.pictures import everything, patterns, pieces
from tests.support.screen import settle, type_text

SHEETS = Path(__file__).resolve().parents[2] / "sample_data"


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
    part = garments_part(stage)
    part.panes.bring(2)
    part.follow.views.buttons["Pattern"].invoke()
    settle(root)
    text = part.follow.pattern.text
    wrong = re.sub(r"\d+", lambda found: str(int(found[0]) + 1) if int(found[0]) % 7 == 0 else found[0], text)

    def paste(up: tk.Toplevel) -> None:
        area = next(one for one in everything(up) if isinstance(one, tk.Text))
        area.insert("1.0", wrong)
        until = time.monotonic() + COMES_UP_S
        while not area.tag_ranges(TROUBLE) and time.monotonic() < until:  # it is read beside the window
            root.update()
            time.sleep(0.02)

    stage.dialog("proofreading a garment", part.files.proofread, paste)


def dialogs_of_garments(stage: Stage) -> None:
    """Those of a garment."""
    part = garments_part(stage)
    stage.dialog("new garment", part.new)
    stage.dialog("another yarn", part.files.other_yarn, lambda up: type_text(up.focus_lastfor(), "HC-01"))
    part.editor.fields["name"].text = "Something else"
    stage.dialog("garment not saved", part.settle)
    part.revert()


def dialogs_of_troubles(stage: Stage) -> None:
    """What is asked and told when something went wrong or was left behind."""
    swatches(stage)
    root, look, session = stage.root, stage.window.look, stage.window.session
    assert session is not None
    page = stage.page
    typed = {**page.form.texts, "yarn": "Limewalk Cotton, the other shade", "notes": "Washed twice. " * 12, "hook mm": "5"}
    draft = draft_of(page.drafts_as, page.form.uid, "LC-02", session.units.value, typed, page.form.texts)
    assert draft is not None
    stage.dialog("unsaved work", lambda: offer_draft(root, look, Offer(draft, page.form.texts)))
    no_backup = NoBackupError("No backup could be made in /media/stick/backups: the folder is not there.")
    stage.dialog("no backup", lambda: offer_other_folder(stage.window, no_backup))
    stage.dialog("changed elsewhere", lambda: may_save(page.frame, look, session, lambda: True, "This swatch"))
    problems = "\n".join(f"Swatch LC-{number:02}: its readings do not add up to its gauge." for number in range(1, 9))
    stage.dialog("problems found", lambda: tell(root, look, "The logbook has problems:", problems))
    pictures = next((one for one in everything(root) if isinstance(one, PicturesField)), None)
    if pictures is not None:
        pictures.take(next((SHEETS / "swatches.pictures").iterdir()))
        stage.dialog("a picture", lambda: pictures._show_large(next(iter(pictures.buttons))))
    page.revert()


def colour_all(book: Logbook, colour: str) -> None:
    """The same colour in three swatches."""
    for line in swatch_lines(book)[:3]:
        swatch = swatch_in_hand(book, line.uid)
        assert swatch is not None
        save_swatch(book, replace(swatch, colour=colour))


SCENES: tuple[Scene, ...] = (
    *(names, dialogs_of_swatches, dialogs_of_pieces, dialogs_of_garments),
    *(dialogs_of_the_menu, dialogs_of_others, dialogs_of_troubles),
)
