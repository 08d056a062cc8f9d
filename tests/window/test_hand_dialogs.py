"""Dialogs under a real hand that want something at hand: another logbook, a sheet of the maker's own, testers, pictures."""

import shutil
from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import product
from pathlib import Path

import pytest

from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import save_swatch
from tests.support.by_hand import (
    GARMENT,
    WAYS_OUT,
    choose_by_click,
    choose_in_every_drop_down,
    click_line,
    click_outside,
    escape,
    use_every_list,
)
from tests.support.garments import uid_of
from tests.support.hand import RIGHT, WHEEL_DOWN
from tests.support.shown import Shown, Widget
from tests.support.user import User

OWN_SHEET = "Wolle;Muster;Nadel;Maschen auf 10 cm;Farbe\nRook Wool;moss;4,5;16;grey\nRook Wool;shell;5;15;green\n"
Way = Callable[[User], object]


def choose(*labels: str) -> Way:
    return lambda user: user.choose(*labels)


def keys(page: int, *names: str) -> Way:
    def go(user: User) -> None:
        user.page(page)
        user.hand.key(*names)

    return go


def with_file(name: str, *labels: str) -> Way:
    """A dialog that comes once a file was chosen."""

    def go(user: User) -> None:
        user.choose(*labels)
        user.give_path(user.program.home / name)

    return go


def of_garments(then: Way) -> Way:
    def go(user: User) -> None:
        if not any("garmenteditor" in w.path for w in user.program.look().widgets):
            user.page(2)
            click_line(user, GARMENT)
        then(user)

    return go


def picture(user: User) -> None:
    """The first of the swatch in hand, which stands under its notes."""
    shown = user.page(1)
    if (fold := next((w for w in shown.of_kind("TButton") if w.text == "▸ Washing, weight, notes"), None)) is not None:
        user.click(fold)
        user.program.still()
    scroll_down(user, "formview")
    user.click(pictures(user.program.until(pictures, "a picture"))[0])


def pictures(shown: Shown) -> list[Widget]:
    return [w for w in shown.of_kind("TButton") if w.text.startswith("Picture ")]


def press(user: User, text: str) -> Shown:
    button = user.program.until(lambda now: (found := now.button(text)) and not found.off, text).button(text)
    assert button is not None
    return user.click(button)


def says(shown: Shown, text: str) -> bool:
    return any(text in w.text for w in shown.of_kind("TLabel"))


DIALOGS: Mapping[str, Way] = {
    "compare": keys(1, "ctrl+k"),
    "yarns": choose("Logbook", "Yarns…"),
    "stitch patterns": choose("Stitch pattern", "Rename or merge…"),
    "testers": keys(2, "ctrl+shift+m"),
    "own sheet": with_file("own.csv", "Logbook", "Import a sheet…"),
    "merge": with_file("other.logbook", "Logbook", "Merge another logbook…"),
    "picture": picture,
    "new garment": of_garments(lambda user: user.hand.key("ctrl+n")),
    "another yarn": of_garments(choose("Piece", "The same in another yarn…")),
    "proofread": of_garments(choose("Piece", "Proofread a text…")),
}


@pytest.fixture
def furnished(user: User) -> User:
    """A user with files at hand: a sheet of their own, and a logbook that has two swatches otherwise."""
    home = user.program.home
    (home / "own.csv").write_text(OWN_SHEET, "utf-8")
    (sample,) = home.glob("logbook-sample-*/*.logbook")
    other = Path(shutil.copy(sample, home / "other.logbook"))
    for path, colour in ((other, "red"), (sample, "blue")):
        with open_book(path) as book:
            for tag in ("LC-01", "LC-02"):
                swatch = swatch_in_hand(book, uid_of(book, tag))
                assert swatch is not None
                save_swatch(book, replace(swatch, colour=colour))
    return user


def opened(user: User, name: str) -> Shown:
    DIALOGS[name](user)

    def is_there(now: Shown) -> bool:
        path = now.dialogs[-1].path if now.dialogs else ""
        return bool(path) and "progress" not in path and now.focus.startswith(f"{path}.")

    return user.program.until(is_there, f"the dialog {name}")


@pytest.mark.long
def test_each_is_used_and_left_in_each_way(furnished: User) -> None:
    user = furnished
    lists = boxes = 0
    for name, leave in product(DIALOGS, WAYS_OUT):
        if leave is click_outside and name == "proofread":
            continue  # it stays open beside the work
        shown = opened(user, name)
        window = shown.dialogs[-1].path
        if leave is escape:
            lists += use_every_list(user, window)
            boxes += choose_in_every_drop_down(user, window)
            shown = user.program.look()
        leave(user, shown)
        user.program.until(lambda now: not now.dialogs and now.focus, f"the end of {name}")
        user.nothing_unexpected()
    assert lists >= 4 * 2
    assert boxes >= 10


@pytest.mark.long
def test_what_their_buttons_do(furnished: User) -> None:
    user = furnished
    take_in_the_own_sheet(user)
    join_two_yarns(user)
    merge_the_other_logbook(user)
    keep_a_tester(user)
    put_a_picture_to_a_made_piece(user)


def take_in_the_own_sheet(user: User) -> None:
    opened(user, "own sheet")
    press(user, "Go on")
    shown = user.program.until(lambda now: now.button("Import 2 swatches"), "what would come of it")
    assert use_every_list(user, shown.dialogs[-1].path) == 2
    press(user, "Import 2 swatches")
    user.program.until(lambda now: not now.dialogs and says(now, "Imported own.csv: 2 swatches added"), "both in the list")


def join_two_yarns(user: User) -> None:
    shown = opened(user, "yarns")
    table = shown.of_kind("Treeview")[-1]
    count = len(table.more["rows"])
    user.click(tuple(table.more["rows"][1]["at"]))
    box = next(w for w in user.program.look().within(shown.dialogs[-1].path) if w.kind == "TCombobox")
    choose_by_click(user, box.path)
    press(user, "Merge")
    user.program.until(lambda now: says(now, "merged"), "the yarns as one")
    user.all_closed()
    assert count > 2


def merge_the_other_logbook(user: User) -> None:
    opened(user, "merge")
    press(user, "Use the other’s")
    press(user, "Keep what is here")
    press(user, "Merge")
    user.program.until(lambda now: not now.dialogs and says(now, "Merged other.logbook"), "both as one")


def keep_a_tester(user: User) -> None:
    """Who is typed and saved stands in the list; what is typed for another is asked for."""
    shown = opened(user, "testers")
    window = shown.dialogs[-1].path
    user.click(user.field("Name or initials"))
    user.hand.type("A. B.")
    press(user, "Save")
    user.program.until(lambda now: any(t.more["rows"] for t in now.within(window) if t.kind == "Treeview"), "who is saved")
    assert use_every_list(user, window) == 1
    press(user, "New")
    user.hand.type("C. D.")
    user.program.until(lambda _: user.field("Name or initials").text == "C. D.", "another")
    user.hand.key("Escape")
    user.program.until(lambda now: len(now.dialogs) == 2, "the question")
    press(user, "Discard")
    user.program.until(lambda now: not now.dialogs and now.focus, "its end")


def scroll_down(user: User, part: str) -> None:
    """The form in the part of the window with this in its path."""
    shown = user.program.still()
    form = next(w for w in shown.of_kind("Canvas") if part in w.path and ".!scrolled." in w.path)
    user.hand.wheel(form.box[0] + 3, form.box[1] + 3, WHEEL_DOWN, 30)


def take_entry(user: User, label: str) -> None:
    (menu,) = user.program.until(lambda now: now.menus, "the menu").menus
    user.hand.click(*next(entry["at"] for entry in menu.more["entries"] if entry["label"] == label))


def put_a_picture_to_a_made_piece(user: User) -> None:
    """A double click opens it; the picture is shown large, and taken off by the right button and by a key."""
    source = next(user.program.home.glob("logbook-sample-*/*.pictures/*.png"))
    shown = user.page(2)
    made = next(w for w in shown.of_kind("Treeview") if "madeview" in w.path)
    user.hand.click(*made.more["rows"][-1]["at"], times=2)
    shown = user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "the made piece")
    window = shown.dialogs[0].path
    for take_off in ("menu", "Delete"):
        scroll_down(user, window)
        press(user, "Add a picture…")
        user.give_path(source)
        button = user.program.until(lambda now: len(pictures(now)) == 1, "the picture")
        if take_off == "menu":
            user.click(pictures(button)[0], RIGHT)
            take_entry(user, "Remove it")
        else:
            user.click(pictures(button)[0])
            user.program.until(lambda now: len(now.dialogs) == 2, "the picture, large")
            user.all_closed(window)
            user.hand.key("Delete")
        shown = user.program.until(lambda now: not pictures(now), "no picture")
    escape(user, shown)
    user.program.until(lambda now: not now.dialogs, "its end")
