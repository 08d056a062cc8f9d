"""The lines of a text, numbered from 1, with where each begins."""

from bisect import bisect_right
from collections.abc import Iterator


class TextLines:
    """A text's lines, without their ends. Which line a place is in is found by halving: texts may be long."""

    def __init__(self, text: str) -> None:
        self._lines = text.split("\n")
        self._starts = [0]
        for line in self._lines[:-1]:
            self._starts.append(self._starts[-1] + len(line) + 1)

    def __iter__(self) -> Iterator[tuple[int, str]]:
        """Where each line begins, and the line."""
        return zip(self._starts, self._lines, strict=True)

    def __getitem__(self, line: int) -> str:
        return self._lines[line - 1]

    def start(self, line: int) -> int:
        """Where a line begins."""
        return self._starts[line - 1]

    def of(self, at: int) -> int:
        """The line that holds the letter at that place (from 0)."""
        return bisect_right(self._starts, at)
