"""The user's own settings: how the program looks to them, never what a number is. Kept in a small file of their own."""

import json
import os
import sys
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any

from logbook.disk import write_in_place
from logbook.errors import RefusedError

PROGRAM = "swatch-gauge-logbook"
RECENT_KEPT = 8
LARGEST_FILE = 1_000_000
"""Bytes; ours has some hundreds."""


@dataclass(frozen=True, slots=True)
class WindowPlace:
    """Where a window is, in pixels; the size is that of the window while it is not zoomed."""

    width: int
    height: int
    x: int
    y: int
    zoomed: bool


@dataclass(frozen=True, slots=True)
class Settings:
    """``units`` cm or in, ``terms`` us or uk, ``palette`` light, dark or system, ``text_size`` 100 to 200 per cent, ``numbers``
    with a point, a comma or as the system has them.

    ``opened`` names the folded sections that stand open, ``recent`` the logbooks opened last, the latest first.
    ``backups`` is the folder chosen for backups, "" for the usual one; ``sheets`` what the columns of a maker's own sheets were
    taken as, by their headings; ``panes`` where the bars between the panes of a page are, in shares of its width;
    ``remembered`` what was last chosen or typed on a page and is there again at the next start.
    """

    units: str = "cm"
    terms: str = "us"
    palette: str = "system"
    text_size: int = 100
    place: WindowPlace | None = None
    opened: tuple[str, ...] = ()
    recent: tuple[str, ...] = ()
    backups: str = ""
    sheets: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    panes: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    remembered: Mapping[str, str] = field(default_factory=dict)
    numbers: str = "system"

    def with_recent(self, path: str) -> "Settings":
        """``path`` comes first, and is there once."""
        return replace(self, recent=(path, *(p for p in self.recent if p != path))[:RECENT_KEPT])

    def with_remembered(self, name: str, text: str) -> "Settings":
        """``text`` is there again at the next start."""
        return replace(self, remembered={**self.remembered, name: text})

    def with_opened(self, section: str, is_open: bool) -> "Settings":
        others = tuple(name for name in self.opened if name != section)
        return replace(self, opened=(*others, section) if is_open else others)


def settings_folder() -> Path:
    """The user's folder for settings as the platform has it, or ``LOGBOOK_HOME`` if that is set.

    Raises RefusedError if there is neither, as everything that asks for a folder of the user's.
    """
    return _folder("XDG_CONFIG_HOME", ".config")


def data_folder() -> Path:
    """The user's folder for backups and the error log, or ``LOGBOOK_HOME``; it may not exist yet."""
    return _folder("XDG_DATA_HOME", ".local/share")


def desktop_folder() -> Path:
    """The folder in which a Linux desktop looks for what the user's programs say of themselves."""
    return _shared("XDG_DATA_HOME", ".local/share")


def state_folder() -> Path:
    """The user's folder, on this computer alone, for what is typed and not saved, or ``LOGBOOK_HOME``."""
    return _folder("XDG_STATE_HOME", ".local/state", "LOCALAPPDATA", "Local")


def _folder(xdg: str, usual: str, windows: str = "APPDATA", windows_usual: str = "Roaming") -> Path:
    if home := os.environ.get("LOGBOOK_HOME"):
        return Path(home)
    if sys.platform == "win32":
        return Path(os.environ.get(windows) or _home() / "AppData" / windows_usual) / PROGRAM
    if sys.platform == "darwin":
        return _home() / "Library" / "Application Support" / PROGRAM
    return _shared(xdg, usual) / PROGRAM


def _shared(xdg: str, usual: str) -> Path:
    named = Path(os.environ.get(xdg, ""))
    return named if named.is_absolute() else _home() / usual


def _home() -> Path:
    """Raises RefusedError if nothing says where the user's own folder is."""
    try:
        home = Path.home()
    except RuntimeError:
        home = Path()
    if not home.is_absolute():
        raise RefusedError("Nothing says where your own folder is: set HOME to it, or LOGBOOK_HOME to a folder for logbooks.")
    return home


def load_settings() -> tuple[Settings, str | None]:
    """The settings, each value by itself replaced by the usual one if it is unreadable, and a sentence if any was."""
    path = settings_folder() / "settings.json"
    try:
        if path.exists() and not path.is_file():
            raise ValueError("a pipe would be waited for")
        with path.open("rb") as file:
            found = json.loads(file.read(LARGEST_FILE))
    except FileNotFoundError:
        return Settings(), None
    except (OSError, ValueError, RecursionError):
        return Settings(), f"Your settings in {path} could not be read; the usual ones are used."
    if not isinstance(found, dict):
        return Settings(), f"Your settings in {path} could not be read; the usual ones are used."
    good = {name: READERS[name](value) for name, value in found.items() if name in READERS}
    bad = sorted(name for name, value in good.items() if value is None and found[name] is not None)
    note = f"In your settings in {path} the usual value is used for: {', '.join(bad)}." if bad else None
    return Settings(**{name: value for name, value in good.items() if value is not None}), note


def save_settings(settings: Settings) -> None:
    """Writes all or nothing; raises OSError if the folder cannot be written to."""
    folder = settings_folder()
    folder.mkdir(parents=True, exist_ok=True)
    write_in_place(folder / "settings.json", json.dumps(asdict(settings), indent=1).encode())


def _one_of(*words: str) -> Callable[[Any], str | None]:
    return lambda value: value if isinstance(value, str) and value in words else None


def _whole(value: Any, least: int, most: int) -> int | None:
    return value if type(value) is int and least <= value <= most else None


def _texts(value: Any) -> tuple[str, ...] | None:
    return tuple(value) if isinstance(value, list) and all(isinstance(v, str) and _can_be_shown(v) for v in value) else None


def _can_be_shown(text: str) -> bool:
    """A file's name may hold bytes that are no text; other halves of characters are nothing a screen could show."""
    try:
        text.encode("utf-8", "surrogateescape")
    except UnicodeEncodeError:
        return False
    return True


def _sheets(value: Any) -> dict[str, dict[str, str]] | None:
    def texts(one: Any) -> bool:
        return isinstance(one, dict) and all(isinstance(key, str) and isinstance(own, str) for key, own in one.items())

    return (
        dict(value)
        if isinstance(value, dict) and all(isinstance(key, str) and texts(own) for key, own in value.items())
        else None
    )


def _panes(value: Any) -> dict[str, tuple[float, float]] | None:
    def bars(one: Any) -> bool:
        return isinstance(one, list) and len(one) == 2 and all(type(x) is float for x in one) and 0 <= one[0] <= one[1] <= 1

    if not isinstance(value, dict) or not all(bars(one) for one in value.values()):
        return None
    return {key: (one[0], one[1]) for key, one in value.items()}


def _place(value: Any) -> WindowPlace | None:
    if not isinstance(value, dict) or set(value) != {"width", "height", "x", "y", "zoomed"}:
        return None
    sizes = [_whole(value[name], -100_000, 100_000) for name in ("width", "height", "x", "y")]
    width, height, x, y = sizes
    if width is None or height is None or x is None or y is None or type(value["zoomed"]) is not bool:
        return None
    return WindowPlace(width, height, x, y, value["zoomed"])


READERS: dict[str, Callable[[Any], Any]] = {
    "units": _one_of("cm", "in"),
    "terms": _one_of("us", "uk"),
    "palette": _one_of("light", "dark", "system"),
    "text_size": lambda value: _whole(value, 100, 200),
    "place": _place,
    "opened": _texts,
    "recent": _texts,
    "backups": lambda value: value if isinstance(value, str) and (not value or Path(value).is_absolute()) else None,
    "sheets": _sheets,
    "panes": _panes,
    "remembered": lambda value: dict(value) if _sheets({"": value}) is not None else None,
    "numbers": _one_of("point", "comma", "system"),
}
"""For each setting: the value read, or None if it is not one."""
