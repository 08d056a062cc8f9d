import threading
import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.background import Background, Cancelled, Report
from logbook.window.look import Look
from logbook.window.progress import run_with_progress
from tests.support.screen import press, wait_until


class Heard:
    def __init__(self) -> None:
        self.results: list[object] = []
        self.errors: list[Exception] = []
        self.progress: list[tuple[int, int]] = []
        self.threads: set[int] = set()

    def done(self, result: object) -> None:
        self.threads.add(threading.get_ident())
        self.results.append(result)

    def failed(self, error: Exception) -> None:
        self.threads.add(threading.get_ident())
        self.errors.append(error)

    def went_on(self, done: int, total: int) -> None:
        self.progress.append((done, total))


@pytest.fixture
def heard() -> Heard:
    return Heard()


def test_the_result_comes_in_the_windows_thread(root: tk.Tk, heard: Heard) -> None:
    halfway = threading.Event()
    threads = []

    def work(report: Report) -> str:
        threads.append(threading.get_ident())
        report(1, 2)
        assert halfway.wait(5)
        return "written"

    Background(root, work, heard.done, heard.failed, heard.went_on)
    wait_until(root, lambda: heard.progress)
    assert heard.progress == [(1, 2)]
    halfway.set()
    wait_until(root, lambda: heard.results)
    assert heard.results == ["written"]
    assert heard.errors == []
    assert heard.threads == {threading.get_ident()}
    assert threads != [threading.get_ident()]


def test_an_exception_is_delivered_and_not_swallowed(root: tk.Tk, heard: Heard) -> None:
    def work(report: Report) -> None:
        raise OSError("disk full")

    Background(root, work, heard.done, heard.failed, heard.went_on)
    wait_until(root, lambda: heard.errors)
    assert [str(e) for e in heard.errors] == ["disk full"]
    assert heard.results == []


def endless(report: Report) -> None:
    number = 0
    while True:
        report(number, 0)
        number += 1
        threading.Event().wait(0.001)


def test_cancelled_work_tidies_up_at_its_next_report(root: tk.Tk, heard: Heard) -> None:
    tidy = []

    def work(report: Report) -> None:
        try:
            endless(report)
        finally:
            tidy.append(True)

    task = Background(root, work, heard.done, heard.failed, heard.went_on)
    wait_until(root, lambda: heard.progress)
    task.cancel()
    wait_until(root, lambda: heard.errors)
    assert isinstance(heard.errors[0], Cancelled)
    assert tidy == [True]


def test_work_ends_with_the_window_it_was_for(root: tk.Tk, heard: Heard) -> None:
    owner = ttk.Frame(root)
    Background(owner, endless, heard.done, heard.failed, heard.went_on)
    wait_until(root, lambda: heard.progress)
    owner.destroy()
    wait_until(root, lambda: threading.active_count() == 1)
    assert heard.results == heard.errors == []


def dialogs(root: tk.Tk) -> list[tk.Toplevel]:
    return [child for child in root.winfo_children() if isinstance(child, tk.Toplevel)]


def texts(place: tk.Misc) -> list[str]:
    own = [str(place["text"])] if isinstance(place, ttk.Label | ttk.Button) else []
    return own + [text for child in place.winfo_children() for text in texts(child)]


def test_the_dialog_counts_and_goes_when_the_work_is_done(root: tk.Tk, look: Look, heard: Heard) -> None:
    halfway = threading.Event()

    def work(report: Report) -> int:
        report(1200, 10_000)
        assert halfway.wait(5)
        return 7

    run_with_progress(root, look, "Writing the workbook …", work, heard.done, heard.failed)
    wait_until(root, lambda: "1,200 of 10,000" in texts(root))
    assert "Writing the workbook …" in texts(root)
    halfway.set()
    wait_until(root, lambda: heard.results)
    assert dialogs(root) == []


def test_escape_cancels_the_work_and_tells_neither(root: tk.Tk, look: Look, heard: Heard) -> None:
    run_with_progress(root, look, "Writing …", endless, heard.done, heard.failed)
    wait_until(root, lambda: any("0" in text or "1" in text for text in texts(root)))
    press(dialogs(root)[0], "<Escape>")
    wait_until(root, lambda: not dialogs(root))
    assert heard.results == heard.errors == []
