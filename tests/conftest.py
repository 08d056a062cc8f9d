"""What every test gets: the user's folders in a place of its own, and a screen that may not be missing."""

import gc
import os
import shutil
from collections.abc import Generator
from pathlib import Path

import pytest
from hypothesis import settings

# No deadline: a busy machine is no bug.
settings.register_profile("logbook", deadline=None)
settings.load_profile("logbook")

pytest_plugins = ["tests.support.screen"]


@pytest.fixture(autouse=True)
def users_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Settings, backups and the error log of the test's own; the user's are never touched."""
    home = tmp_path / "users folder"
    monkeypatch.setenv("LOGBOOK_HOME", str(home))
    return home


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Without an Xvfb for each worker the window tests share a screen, and so one worker: there is one keyboard."""
    if shutil.which("Xvfb") is None:
        for item in items:
            if "screen" in getattr(item, "fixturenames", ()):
                item.add_marker(pytest.mark.xdist_group("screen"))


def pytest_collection_finish() -> None:
    """What is there by now stays: the window tests collect garbage after each window, and need not look through it again."""
    gc.collect()
    gc.freeze()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """On a build machine (``CI`` is set) a window test that is skipped has failed: nobody would notice otherwise."""
    report = yield
    if report.skipped and os.environ.get("CI") and "screen" in getattr(item, "fixturenames", ()):
        report.outcome = "failed"
        report.longrepr = f"A window test was skipped on a build machine: {report.longrepr}"
    return report
