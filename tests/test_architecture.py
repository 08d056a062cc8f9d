"""The lay of the folders is the architecture: who may import whom, read off the source by ``ast``."""

import ast
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "logbook"

MAY_IMPORT = {
    "craft": {"craft"},
    "book": {"book", "craft", "disk"},
    "sheets": {"sheets", "craft", "disk"},
    "tasks": {"tasks", "sheets", "book", "craft", "disk"},
    "pages": {"pages", "tasks", "craft"},
    "window": {"window", "pages", "tasks", "craft"},
    "commands": {"commands", "tasks", "craft"},
}
EVERYONE_MAY = {"errors", "__version__"}
NO_WINDOW = {"tkinter", "argparse", "threading", "queue"}
FILES = {"sqlite3", "openpyxl", "csv", "pathlib", "os", "io", "shutil", "tempfile"}
PURE = NO_WINDOW | FILES | {"time", "datetime", "locale", "random"}
FORBIDDEN = {
    "craft": PURE,
    "book": NO_WINDOW,
    "sheets": NO_WINDOW | {"sqlite3"},
    "tasks": NO_WINDOW,
    "pages": {"tkinter", "argparse", "sqlite3", "openpyxl"},
    "window": {"argparse", "sqlite3", "openpyxl"},
    "commands": {"tkinter", "sqlite3", "openpyxl", "threading"},
}
# The one door from the command line to the window, imported only when no command was given.
DOORS = {("commands/main.py", "logbook.window.main")}


def modules() -> Iterator[Path]:
    return PACKAGE.rglob("*.py")


@cache
def imports(path: Path) -> tuple[str, ...]:
    return tuple(_imports(path))


def _imports(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative imports hide the architecture"
            yield node.module or ""
            if node.module == "logbook":
                yield from (f"logbook.{alias.name}" for alias in node.names)


@pytest.mark.parametrize("folder", sorted(MAY_IMPORT))
def test_each_folder_imports_only_what_lies_beneath_it(folder: str) -> None:
    for path in (PACKAGE / folder).rglob("*.py"):
        name = path.relative_to(PACKAGE).as_posix()
        for imported in imports(path):
            parts = imported.split(".")
            if parts[0] != "logbook":
                assert parts[0] not in FORBIDDEN[folder], f"{name} imports {imported}"
            elif len(parts) > 1 and (name, imported) not in DOORS:
                ours = parts[1]
                allowed = MAY_IMPORT[folder] | EVERYONE_MAY
                if folder in {"pages", "window", "commands", "tasks"}:
                    allowed = allowed | {"settings", "sample"}
                assert ours in allowed, f"{name} imports {imported}"


def test_each_room_of_the_arithmetic_imports_only_those_before_it() -> None:
    rooms = ("words", "drawing", "swatches", "gauges", "rows", "pieces", "sizes", "garments", "proofreading")
    assert {p.name for p in (PACKAGE / "craft").iterdir() if p.is_dir() and p.name != "__pycache__"} == set(rooms)
    for place, room in enumerate(rooms):
        for path in (PACKAGE / "craft" / room).rglob("*.py"):
            for imported in imports(path):
                if imported.startswith("logbook.craft."):
                    assert imported.split(".")[2] in rooms[: place + 1], f"{path.relative_to(PACKAGE)} imports {imported}"


def test_no_file_needs_one_that_needs_it() -> None:
    """No circles, neither of what is imported late nor of what only the types want."""
    names = {".".join(path.relative_to(ROOT).with_suffix("").parts): path for path in PACKAGE.rglob("*.py")}
    needs = {name: {one for one in imports(path) if one in names} for name, path in names.items()}
    while free := [name for name, found in needs.items() if not found & needs.keys()]:
        for name in free:
            del needs[name]
    assert not needs, {name: found & needs.keys() for name, found in needs.items()}


def test_every_package_is_installed() -> None:
    listed = set(tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["setuptools"]["packages"])
    found = {".".join(p.parent.relative_to(ROOT).parts) for p in PACKAGE.rglob("__init__.py")}
    assert listed == found | {"logbook.sample_data"}


def test_the_top_level_holds_what_it_should() -> None:
    entries = {p.name for p in ROOT.iterdir() if not p.name.startswith(".") and not p.name.endswith(".egg-info")}
    entries -= {"build", "dist"}
    assert entries == {"README.md", "DEVELOPERS.md", "pyproject.toml", "logbook", "tests", "sample_data"}


def test_the_start_of_the_window_imports_only_what_it_shows() -> None:
    """The pages behind the first, the dialogs, the sheets, the command line and the reckoning come when they are wanted."""
    start = "import sys, logbook.commands.main, logbook.window.main, logbook.window.swatches.page; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", start], cwd=ROOT, check=True, capture_output=True, text=True)
    imported = done.stdout.split()
    assert "logbook.window.main_window" in imported
    later = ("argparse", "openpyxl", "logbook.tasks.chain", "logbook.tasks.sampling", "logbook.sheets", "logbook.window.pieces")
    later += ("logbook.window.patterns", "logbook.window.book_actions", "logbook.window.background", "logbook.craft.rows")
    later += ("logbook.craft.pieces", "logbook.craft.garments", "logbook.craft.sizes")
    assert not [name for name in imported if name.startswith(later)]
