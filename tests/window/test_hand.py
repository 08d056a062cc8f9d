"""The window under a real pointer and real keys, with a window manager: every drop-down, menu, button, row and dialog of it.

What the hand does is done outside the program, which runs as a user starts it; what is shown it tells by itself.
"""

from itertools import product

import pytest

from tests.support.by_hand import (
    WAYS_OUT,
    choose_in_every_drop_down,
    click_outside,
    drop_what_is_typed,
    escape,
    open_every_drop_down_and_every_menu,
    press_every_button,
    turn_the_wheel_over_everything,
    use_every_list,
)
from tests.support.user import User

PAGES = (1, 2, 3)
PARTS_OF_PAGE = ("Single pieces", "Garments")
"""What leads to another part of a page is tried in ``test_hand_garments.py``."""


@pytest.mark.long
@pytest.mark.parametrize("page", PAGES)
def test_everything_on_a_page(user: User, page: int) -> None:
    user.page(page)
    turn_the_wheel_over_everything(user)
    assert use_every_list(user)
    user.page(page)
    drop_downs, menus = open_every_drop_down_and_every_menu(user)
    assert drop_downs >= 2
    assert menus >= 3 * 8
    drop_what_is_typed(user)
    pressed = press_every_button(user, PARTS_OF_PAGE)
    assert {"New", "Same again", "Revert", "Save", "Delete"} <= pressed


DIALOGS: tuple[tuple[int, tuple[str, ...]], ...] = (
    (1, ("Logbook", "New…")),
    (1, ("Logbook", "Open…")),
    (1, ("Logbook", "Import a sheet…")),
    (1, ("Logbook", "Export to a sheet…")),
    (1, ("Logbook", "Save a copy…")),
    (1, ("Logbook", "Backups…")),
    (1, ("Logbook", "Assumptions…")),
    (1, ("Edit", "Changes of this record…")),
    (2, ("Edit", "Changes of this record…")),
    (1, ("Help", "A first walk through")),
    (1, ("Help", "Written rows")),
    (1, ("Help", "Keys")),
    (1, ("Help", "About this program")),
    (1, ("ctrl+b",)),
    (1, ("ctrl+j",)),
    (2, ("ctrl+j",)),
    (2, ("ctrl+b",)),
    (2, ("ctrl+m",)),
)
"""A page, and the entries of the menu, or the keys, that lead to the dialog."""


@pytest.mark.long
def test_each_dialog_is_left_in_each_way(user: User) -> None:
    for leave, (page, labels) in product(WAYS_OUT, DIALOGS):
        if leave is click_outside and labels[0] == "Help" and labels[1] != "About this program":
            continue  # these stay open beside the work
        user.page(page)
        if "+" in labels[0]:
            user.hand.key(labels[0])
        else:
            user.choose(*labels)
        shown = user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[-1].path), " ".join(labels))
        if leave is escape:
            choose_in_every_drop_down(user, shown.dialogs[-1].path)
        leave(user, shown)
        user.program.until(lambda now: not now.dialogs and now.focus, f"the end of {labels[-1]}")
        user.nothing_unexpected()


def test_help_stays_open_beside_the_work(user: User) -> None:
    find = user.program.look().of_kind("TEntry")[0]
    left, top, _, height = find.box
    for number, entry in enumerate(("A first walk through", "Written rows", "Keys"), start=1):
        user.choose("Help", entry)
        shown = user.program.until(lambda now: len(now.dialogs) == number, entry)  # noqa: B023
        assert left + 10 < shown.dialogs[-1].box[0]
        user.hand.click(left + 10, top + height // 2)
        user.program.until(lambda now: now.focus == find.path, f"the keyboard in the page beneath {entry}")
    user.hand.type("shell")
    user.program.until(lambda now: any(w.text == "shell" for w in now.of_kind("TEntry")), "the typed text")
    user.hand.key("F1")
    user.program.until(lambda now: now.focus.startswith(".!dialog"), "the walk through again")
    assert len(user.program.look().dialogs) == 3
    user.hand.key("Escape")
    user.program.until(lambda now: len(now.dialogs) == 2, "its end")


def test_return_after_delete_and_alt_with_a_letter(user: User) -> None:
    """Return deletes no more; the letter marks the text, to be typed over."""
    listed = [row["row"] for row in user.program.look().of_kind("Treeview")[0].more["rows"]]
    delete = user.program.look().button("Delete")
    assert delete is not None
    user.click(delete)
    user.program.until(lambda now: "deleted" in " ".join(w.text for w in now.of_kind("TLabel")), "the deletion")
    user.press("Return", "Return", "space")
    left = {row["row"] for row in user.program.look().of_kind("Treeview")[0].more["rows"]}
    assert len(set(listed) - left) == 1
    assert user.field("Yarn").text
    user.press("alt+y")
    user.hand.type("river sand")
    user.program.until(lambda _: user.field("Yarn").text == "river sand", "the typed text alone")


def test_sizes_and_leaving_with_something_typed(user: User) -> None:
    user.press("alt+y")
    user.hand.type("river sand")
    user.program.until(lambda _: user.field("Yarn").text == "river sand", "the typed text")
    x, y, width, _ = next(w for w in user.program.look().widgets if w.kind == "Menu").box
    user.hand.click(x + width // 2, y - 9, times=2)
    for width, height in ((800, 500), (1920, 1080), (1000, 700)):
        user.hand.resize_active(width, height)
        user.program.until(lambda now: abs(now.widgets[0].box[2] - width) < 40, f"{width} wide")  # noqa: B023
    user.hand.key("alt+F4")
    user.program.until(lambda now: now.dialogs, "the question")
    user.hand.key("Escape")
    user.program.until(lambda now: not now.dialogs, "staying")
    assert user.field("Yarn").text == "river sand"
    user.hand.key("alt+F4")
    user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "the question")
    user.hand.key("alt+s")
    assert user.program.until_ended() == 0
