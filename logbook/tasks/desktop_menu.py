"""The program in the menu of a Linux desktop, and the kind of file that a double click opens with it.

By the standards of freedesktop.org: Desktop Entry, Icon Theme, Shared MIME-info, Base Directory. All is in the user's own folder.
"""

import re
import shutil
import subprocess
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

from logbook.craft.drawing.icon import icon_png, icon_svg
from logbook.disk import write_in_place
from logbook.errors import RefusedError
from logbook.settings import PROGRAM, desktop_folder
from logbook.tasks.keeping import SUFFIX

NAME = "Swatch and gauge logbook"
KIND = f"application/x-{PROGRAM}"
PIXELS = (48, 128)
ICONS = "icons/hicolor"
CACHES: tuple[tuple[str, str, str], ...] = (
    ("applications", "*.desktop", "mimeinfo.cache"),
    (
        "mime",
        "packages/*",
        "XMLnamespaces aliases generic-icons globs globs2 icons magic mime.cache subclasses treemagic types version",
    ),
)
"""What the desktop's own tools make of the files beside it, and what nobody needs when none of those is left."""
TOOLS = (("update-desktop-database", "applications"), ("update-mime-database", "mime"))


def add_to_menu(program: Sequence[str]) -> list[Path]:
    """Puts the program in the menu and makes it open logbooks; what was there from it before is replaced. The files written.

    ``program`` are the words that start it. Raises RefusedError if this is no such desktop, or a file can't be written: then none
    of them is left.
    """
    home = _home()
    files = _files(program)
    try:
        for name, content in files.items():
            (home / name).parent.mkdir(parents=True, exist_ok=True)
            write_in_place(home / name, content)
            (home / name).chmod(0o644)
    except OSError as error:
        remove_from_menu()
        raise RefusedError(f"Nothing was added to the menu: {home} can't be written to ({error.strerror}).") from error
    _tell_desktop(home)
    return [home / name for name in files]


def remove_from_menu() -> list[Path]:
    """Takes all of that away again, and the folders that are empty then; logbooks stay. The files removed."""
    home = _home()
    paths = [home / name for name in _files(())]
    there = [path for path in paths if path.exists()]
    for path in there:
        path.unlink()
    _tell_desktop(home)
    for folder, others, caches in CACHES:
        if (home / folder).is_dir() and not any((home / folder).glob(others)):
            for cache in caches.split():
                (home / folder / cache).unlink(missing_ok=True)
    for path in (*paths, home / "mime" / KIND):
        _remove_empty(path.parent, home)
    return there


def started_with() -> list[str]:
    """The words that start the program as it was started now."""
    if getattr(sys, "frozen", False):
        return [sys.executable]
    packed = Path(sys.argv[0])
    if packed.suffix == ".pyz":
        return [sys.executable, str(packed.resolve())]
    return [sys.executable, "-P", "-m", "logbook"]  # -P: not one of that name in whatever folder the desktop starts it in


def exec_line(program: Sequence[str]) -> str:
    """The words as the key Exec of a desktop entry has them (Desktop Entry Specification 1.5, "The Exec key")."""
    return " ".join(_quoted(word) for word in program).replace("\\", "\\\\")


def _quoted(word: str) -> str:
    """As the specification wants it, and only where it must be: the plainest openers take the quotes for part of a name."""
    escaped = re.sub(r'(["`$\\])', r"\\\1", word).replace("%", "%%")
    return escaped if re.fullmatch(r"[\w/.,:@+=%-]+", word) else f'"{escaped}"'


def _home() -> Path:
    if not sys.platform.startswith("linux"):
        raise RefusedError("A menu entry can only be made on a Linux desktop. Elsewhere make a shortcut to the program by hand.")
    return desktop_folder()


def _files(program: Sequence[str]) -> Mapping[str, bytes]:
    """What is written, by its path below the user's data folder."""
    entry = (
        f"[Desktop Entry]\nType=Application\nName={NAME}\nComment=Crochet swatches, their gauges, and the pieces made by them\n"
        f"Exec={exec_line(program)} %f\nIcon={PROGRAM}\nTerminal=false\nCategories=Utility;\n"
        f"MimeType={KIND};\nStartupWMClass=Logbook\n"
    )
    kinds = (
        '<?xml version="1.0" encoding="UTF-8"?>\n<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">\n'
        f'<mime-type type="{KIND}"><comment>Swatch and gauge logbook</comment><icon name="{PROGRAM}"/>'
        f'<glob pattern="*{SUFFIX}"/></mime-type>\n</mime-info>\n'
    )
    icons = {f"{ICONS}/{side}x{side}/apps/{PROGRAM}.png": icon_png(side) for side in PIXELS}
    return {
        f"{ICONS}/scalable/apps/{PROGRAM}.svg": icon_svg().encode(),
        **icons,
        f"mime/packages/{PROGRAM}.xml": kinds.encode(),
        f"applications/{PROGRAM}.desktop": entry.encode(),
    }


def _tell_desktop(home: Path) -> None:
    """Lets the desktop's own tools read the files anew; a desktop without them reads the files themselves."""
    for tool, folder in TOOLS:
        if (found := shutil.which(tool)) and (home / folder).is_dir():
            subprocess.run([found, str(home / folder)], check=False, capture_output=True)


def _remove_empty(folder: Path, top: Path) -> None:
    """Removes the folder and those above it, below ``top``, as long as they are empty."""
    while folder != top and folder.is_dir() and not any(folder.iterdir()):
        folder.rmdir()
        folder = folder.parent
