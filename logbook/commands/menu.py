"""``--add-to-menu`` and ``--remove-from-menu``."""

from logbook.commands.output import print_text
from logbook.tasks.desktop_menu import NAME, add_to_menu, remove_from_menu, started_with
from logbook.tasks.keeping import SUFFIX


def add() -> int:
    """Says what was written."""
    written = add_to_menu(started_with())
    print_text(f"“{NAME}” is in the menu, and a double click on a {SUFFIX} file opens it. Written:")
    for path in written:
        print_text(f"  {path}")
    return 0


def remove() -> int:
    """Says what was removed."""
    removed = remove_from_menu()
    print_text(f"“{NAME}” is out of the menu. Removed:" if removed else f"“{NAME}” was not in the menu.")
    for path in removed:
        print_text(f"  {path}")
    return 0
