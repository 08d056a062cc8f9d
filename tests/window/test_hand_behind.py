"""What lies behind a dialog, under a real hand: it neither takes the keyboard nor closes."""

from tests.support.shown import Shown
from tests.support.user import User


def open_nearest(user: User) -> Shown:
    user.hand.key("ctrl+b")
    return user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "the dialog")


def title_of_main(user: User) -> tuple[int, int, int]:
    """Left, right and height of the middle of its title."""
    bar = user.program.look().bar
    assert bar is not None
    x, y, width, _ = bar.box
    return x, x + width, y - 9


def test_the_title_of_the_window_behind_a_dialog(user: User) -> None:
    """The dialog keeps the keyboard, and stays where the window behind is to be closed."""
    shown = open_nearest(user)
    dialog = shown.dialogs[0].path
    left, right, y = title_of_main(user)
    user.click((left + 60, y))
    user.program.until(lambda now: now.focus == shown.focus, "the keyboard back")
    user.hand.type("50")
    user.program.until(lambda now: any(w.text == "50" for w in now.within(dialog)), "what is typed in the dialog")
    user.hand.click(right - 10, y)
    user.program.until(lambda now: now.closings == 1, "the wish to close it")
    user.program.until(lambda now: now.dialogs and now.focus.startswith(dialog), "the dialog still there")
    user.hand.key("Escape")
    user.program.until(lambda now: not now.dialogs and now.focus, "its end")


def test_the_dialog_that_asked_for_a_file_waits_for_it(user: User) -> None:
    """Closing it under the dialog for files would take that away while it is answered."""
    user.choose("Logbook", "Backups…")
    shown = user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "the dialog")
    below = shown.dialogs[0]
    backup = shown.button("Back up now")
    assert backup is not None
    user.click(backup)
    shown = user.program.until(
        lambda now: any(t.more["rows"] for t in now.within(below.path) if t.kind == "Treeview"), "a backup"
    )
    restore = shown.button("Restore under a new name…")
    assert restore is not None
    user.click(restore)
    user.program.until(lambda now: any(w.kind == "TkFDialog" for w in now.dialogs), "the dialog for files")
    x, y, _, _ = below.box
    user.click((x + 30, y - 9))
    user.hand.key("alt+F4")
    shown = user.program.until(lambda now: not any(w.kind == "TkFDialog" for w in now.dialogs), "the end of that for files")
    assert [w.path for w in shown.dialogs] == [below.path]
    user.all_closed()


def test_dialogs_that_open_while_the_window_manager_holds_the_pointer(user: User) -> None:
    """The second would take turns with the first in waiting for it, and the program do nothing else."""
    shown = user.page(2)
    user.click(next(tree for tree in shown.of_kind("Treeview") if tree.more["rows"]).more["rows"][-1]["at"])
    user.program.at_rest()
    left, _, y = title_of_main(user)
    user.hand.press(left + 200, y)
    user.hand.key("ctrl+m")
    shown = user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "what was made")
    below = shown.dialogs[0].path
    user.hand.type("12")
    user.hand.key("Escape")
    shown = user.program.until(lambda now: len(now.dialogs) == 2, "the question")
    user.hand.let_go()
    user.program.until(lambda now: now.grab == shown.dialogs[1].path, "the question holding the pointer")
    user.hand.key("Escape")
    user.program.until(lambda now: [w.path for w in now.dialogs] == [below] and now.grab == below, "what was made again")


def test_a_list_of_a_page_that_is_left(user: User) -> None:
    """In a hurry: the next page comes before the list of a drop-down of this one is seen, and the keyboard is not left there."""
    for page in (2, 1, 2, 1):
        shown = user.program.at_rest()
        x, y, width, height = next(w for w in shown.of_kind("TCombobox") if w.box[0] > 400).box
        user.hand.click_and_key(x + width - height // 2, y + height // 2, f"ctrl+{page}")
        shown = user.program.look()
        if shown.lists:
            user.hand.key("Escape")
        user.program.until(lambda now: not now.lists and now.at(now.focus), "the keyboard where it is seen")
