"""What is seen of the pages without a dialog."""

import tempfile
from pathlib import Path

from logbook.pages.patterns.pattern_texts import SENTENCE
from logbook.tasks.keeping import new_book
from logbook.window.garments.follow_view import VIEWS
from tests.every_picture.stage import Scene, Stage
from tests.pictures import find, patterns, pieces
from tests.support.screen import settle, type_text


def swatches(stage: Stage) -> None:
    """The worked example in hand, its chain for 46 cm."""
    stage.window.page_at(0)
    settle(stage.root)
    stage.page.first_focus()
    settle(stage.root)
    find(stage.root, "2024-09-21")
    stage.page.panes.bring(2)
    type_text(stage.page.chain.width.input, "46")


def shown_swatches(stage: Stage) -> None:
    """The first page, from its top to its end and with something that can't be saved."""
    swatches(stage)
    stage.shoot("swatches")
    stage.page.editor._scrolled.canvas.yview_moveto(1)
    stage.page.chain._scrolled.canvas.yview_moveto(1)
    stage.shoot("swatches, scrolled down")
    stage.page.new()
    stage.page.chain._scrolled.canvas.yview_moveto(0)
    type_text(stage.page.editor.fields["hook mm"].input, "thick")
    not_saved(stage, "swatches")


def not_saved(stage: Stage, name: str) -> None:
    """What can't be saved, tried, and then let go."""
    stage.page.save()
    stage.shoot(f"{name}, what stands in the way")
    stage.page.revert()


def shown_pieces(stage: Stage) -> None:
    """The same of single pieces."""
    pieces(stage.root, stage.window)
    stage.shoot_down("pieces")
    stage.page.new()
    stage.page.editor.fields["width"].text = "wide"
    not_saved(stage, "pieces")


def shown_patterns(stage: Stage) -> None:
    """The same of stitch patterns."""
    patterns(stage.root, stage.window)
    stage.shoot_down("patterns")
    stage.page.new()
    stage.page.editor.fields[SENTENCE].text = "multiple of six"
    stage.page.editor.fields["rows_text"].text = "Row 1: Sc in 2nd ch from hook, *quux in next ch; rep from * to end. Turn."
    not_saved(stage, "patterns")


def as_begun(stage: Stage) -> None:
    """Each page as a user first sees it, every section folded."""
    for number, name in enumerate(("swatches", "pieces", "patterns")):
        stage.window.tabs.select(number)
        settle(stage.root)
        stage.shoot(f"{name}, folded")
    garments_part(stage)
    stage.shoot("garments, folded")


def garments_part(stage: Stage):  # type: ignore[no-untyped-def]  # a part of a page of several
    """The garments, brought to the front."""
    stage.window.tabs.select(1)
    settle(stage.root)
    page = stage.window.made_page(1)
    page.show("garments")  # type: ignore[attr-defined]
    settle(stage.root)
    return page.part


def garments(stage: Stage) -> None:
    """A garment as a whole, one of its pieces, and each view of them."""
    part = garments_part(stage)
    stage.shoot("garments")
    part.editor.card._scrolled.canvas.yview_moveto(1)
    stage.shoot("garments, scrolled down")
    part.panes.bring(2)
    stage.shoot("garments, Drawing of all")
    part.find.table.walk(1)
    part.panes.bring(2)
    stage.shoot("garments, Drawing of a piece")
    for view in VIEWS[1:]:
        part.follow.views.buttons[view].invoke()
        part.panes.bring(2)
        settle(stage.root)
        stage.shoot(f"garments, {view}")
    part.panes.bring(0)
    stage.shoot("garments, a piece")


def garments_at_fault(stage: Stage) -> None:
    """A piece that does not fit, one that can't be worked out, and one that can't be saved."""
    part = garments_part(stage)
    cardigan = next(uid for uid, plan in part.form.garments.items() if "cardigan" in plan.name)
    part.open_line(f"{cardigan}/1")
    settle(stage.root)
    part.editor.fields["width"].text = "(bust + ease) / 2 + 7 cm"
    part.panes.bring(2)
    stage.shoot("garments, what does not fit")
    part.follow.views.buttons["Numbers"].invoke()
    stage.shoot("garments, Numbers of what does not fit")
    part.follow.views.buttons["Drawing"].invoke()
    part.editor.fields["width"].text = "bust + eeze"
    stage.shoot("garments, what is not known")
    part.panes.bring(0)
    not_saved(stage, "garments")


LONG = "Grandmother Wilhelmina's seaside holiday cardigan with the far too many buttonholes, second try in cotton"


def long_names(stage: Stage) -> None:
    """Records whose names are longer than their places."""
    for number, name, key in ((0, "swatches", "yarn"), (1, "pieces", "name"), (2, "patterns", "name")):
        stage.window.page_at(number)
        stage.page.first_focus()
        settle(stage.root)
        page = stage.page.part
        form = page.editor.fields
        form[key].text = LONG
        if number == 0:
            form["stitch pattern"].text = LONG
            form["tag"].text = LONG.replace(" ", "-")[:60]
            form["colour"].text = form["dye lot"].text = LONG
        page.save()
        stage.shoot(f"{name}, a long name")
        page.panes.bring(2)
        stage.shoot(f"{name}, what follows from a long name")
    part = garments_part(stage)
    cardigan = next(uid for uid, plan in part.form.garments.items() if "cardigan" in plan.name)
    part.open_line(cardigan)
    settle(stage.root)
    part.editor.fields["name"].text = LONG
    part.save()
    part.open_line(f"{cardigan}/1")
    settle(stage.root)
    part.editor.fields["name"].text = LONG
    part.save()
    stage.shoot("garments, a long name")
    part.panes.bring(2)
    for view in VIEWS:
        part.follow.views.buttons[view].invoke()
        part.panes.bring(2)
        settle(stage.root)
        stage.shoot(f"garments, {view} of a long name")


def empty(stage: Stage) -> None:
    """A logbook in which nothing is yet, and what the first words typed into it make."""
    stage.window.show(new_book(Path(tempfile.mkdtemp()) / "new.logbook", keep_backups=False))
    for number, name in enumerate(("swatches", "pieces", "patterns")):
        stage.window.tabs.select(number)
        stage.shoot(f"{name}, empty")
    garments_part(stage)
    stage.shoot("garments, empty")
    stage.window.tabs.select(0)
    settle(stage.root)
    stage.page.panes.bring(2)
    stage.shoot("swatches, a chain to begin with")


FOLDED: tuple[Scene, ...] = (as_begun,)
"""Scenes in which no section is open."""
SCENES: tuple[Scene, ...] = (
    *(as_begun, shown_swatches, shown_pieces, shown_patterns, garments, garments_at_fault, long_names, empty),
)
