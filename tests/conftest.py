"""What every test gets: the user's folders in a place of its own, and a screen that may not be missing."""

import gc
import itertools
import os
import shutil
import sys
import tempfile
from collections.abc import Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from logbook.craft.words.notation import PLAIN, written_in
from tests.support.folders import QUICK

# No deadline: a busy machine is no bug.
settings.register_profile("logbook", deadline=None)
settings.load_profile("logbook")

tempfile.tempdir = QUICK

pytest_plugins = ["tests.support.screen", "tests.support.hand", "tests.support.user"]


NUMBERS = itertools.count()
MADE_ONCE = (
    "tests/sheets/test_recalculation.py",
    "tests/sheets/test_published_beside.py",
    "tests/bench/test_accuracy.py",
    "tests/tasks/written/test_text_follows.py",
    "tests/tasks/test_garment_publishing.py",
    "tests/pages/test_notation_kept.py",
)
"""Files whose tests share what takes long to make."""


@pytest.fixture(autouse=True)
def users_folder(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Settings, backups and the error log of the test's own, made when wanted; the user's are never touched."""
    home = tmp_path_factory.getbasetemp() / "users folders" / str(next(NUMBERS))
    monkeypatch.setenv("LOGBOOK_HOME", str(home))
    return home


@pytest.fixture(autouse=True)
def at_home_nowhere(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Numbers, dates and names are as where the system does not say where it is, whatever the machine's locale."""
    if everything := os.environ.get("LC_ALL"):
        monkeypatch.delenv("LC_ALL")
        monkeypatch.setenv("LC_CTYPE", everything)
    for category in ("LC_NUMERIC", "LC_TIME", "LC_COLLATE"):
        monkeypatch.setenv(category, "C")
    with written_in(PLAIN):
        yield


def pytest_configure(config: pytest.Config) -> None:
    """Where nothing may be compiled beside the source, it is compiled in pytest's own folder: not by every process anew."""
    if sys.dont_write_bytecode and getattr(config, "cache", None) is not None:
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        sys.dont_write_bytecode = False
        os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = str(config.cache.mkdir("compiled"))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The long ones first, so that at the end no process works on alone."""
    items.sort(key=lambda item: item.get_closest_marker("long") is None)


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers() -> int:
    """One process more than there are processors: each now and then waits for a disk, a program or the screen."""
    return (os.cpu_count() or 1) + 1


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Each test goes to whoever is free, but those of a group to one process.

    What is made once for a file of them took long to make. Without an Xvfb for each process the window tests share a screen, and
    there is one keyboard. (The marks of pytest-xdist 3.8 for groups have no effect with pytest 9.2.)
    """
    from xdist.scheduler import LoadScopeScheduling

    groups = {file: file for file in MADE_ONCE}
    if shutil.which("Xvfb") is None:
        groups |= {"tests/window/": "screen", "tests/test_window_harness.py": "screen"}

    class InGroups(LoadScopeScheduling):
        def _split_scope(self, nodeid: str) -> str:
            return next((group for start, group in groups.items() if nodeid.startswith(start)), nodeid)

    return InGroups(config, log)


def pytest_collection_finish() -> None:
    """What is there by now stays: the window tests collect garbage after each window, and need not look through it again."""
    gc.collect()
    gc.freeze()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """On a build machine (``CI`` is set) a window test that is skipped has failed: nobody would notice otherwise."""
    report = yield
    if report.skipped and os.environ.get("CI") and {"screen", "real_hand"} & set(getattr(item, "fixturenames", ())):
        report.outcome = "failed"
        report.longrepr = f"A window test was skipped on a build machine: {report.longrepr}"
    return report
