"""Work that waits until nobody types."""

import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.at_rest import AtRest
from tests.support.screen import wait_until


class Work:
    """Three steps on a frame, and what was done of them."""

    def __init__(self, root: tk.Tk) -> None:
        self.frame = ttk.Frame(root)
        self.did: list[str] = []
        self.rest = AtRest(self.frame, self.step, lambda: self.did.append("done"), after_ms=5)

    def step(self) -> bool:
        self.did.append("step")
        return self.did.count("step") < 3


@pytest.fixture
def work(root: tk.Tk) -> Work:
    return Work(root)


def test_it_is_done_once_however_often_it_was_asked_for(root: tk.Tk, work: Work) -> None:
    waiting = root.tk.call("after", "info")
    for _ in range(3):
        work.rest.soon()
    assert work.did == []
    work.rest.now()
    wait_until(root, lambda: "done" in work.did)
    assert work.did == ["step", "step", "step", "done"]
    assert root.tk.call("after", "info") == waiting


def test_nothing_is_left_waiting_once_its_widget_is_gone(root: tk.Tk, work: Work) -> None:
    waiting = root.tk.call("after", "info")
    work.rest.soon()
    work.rest.now()
    ttk.Frame(work.frame).destroy()
    assert root.tk.call("after", "info") != waiting
    work.frame.destroy()
    assert root.tk.call("after", "info") == waiting
    assert work.did == ["step"]
