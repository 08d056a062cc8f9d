"""The argument parser: no abbreviations, no usage text with an error, values that begin with a minus read."""

import argparse
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, NoReturn, TypeVar

from logbook.craft.words.lengths import Units
from logbook.errors import LogbookError, UsageError


class Parser(argparse.ArgumentParser):
    """An ArgumentParser that raises UsageError instead of printing its usage and leaving.

    ``fill`` adds the options of a command, and is called when they are first needed.
    """

    def __init__(self, *, fill: "Callable[[Parser], object] | None" = None, **settings: Any) -> None:
        super().__init__(allow_abbrev=False, **settings)
        self._fill = fill

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        """As ArgumentParser's."""
        fill, self._fill = self._fill, None
        if fill is not None:
            fill(self)
        return super().parse_known_args(args, namespace)

    def error(self, message: str) -> NoReturn:
        """Raises UsageError with the message on one line."""
        raise UsageError(" ".join(message.split()))

    def parse_words_anywhere(self, arguments: Sequence[str]) -> argparse.Namespace:
        """Parses ``arguments``; the words of a command that takes any number of them may stand between its options too."""
        parsed: argparse.Namespace
        parsed, rest = self.parse_known_args(arguments)
        if unknown := [argument for argument in rest if "words" not in parsed or argument.startswith("--")]:
            self.error(f"not understood: {' '.join(unknown)} (--help lists what there is)")
        if rest:
            parsed.words = [*parsed.words, *rest]
        return parsed


_OPTION = re.compile(r"--[a-z0-9-]+")


def joined_minus_values(arguments: Sequence[str]) -> list[str]:
    """``--ease -5cm`` as ``--ease=-5cm``: our options begin with two minuses, so what begins with one is a value (but ``-h``)."""
    joined: list[str] = []
    for argument in arguments:
        if joined and _OPTION.fullmatch(joined[-1]) and re.match(r"-[^-]", argument) and argument != "-h":
            joined[-1] += f"={argument}"
        else:
            joined.append(argument)
    return joined


T = TypeVar("T")


def reading_with(read: Callable[[str], T]) -> Callable[[str], T]:
    """A type for ``add_argument`` that says our own sentence."""

    def typed(text: str) -> T:
        try:
            return read(text)
        except LogbookError as error:
            raise argparse.ArgumentTypeError(str(error)) from error

    return typed


def add_common(parser: Parser, *, book: bool = True, lengths: bool = False) -> None:
    """The options many commands share."""
    parser.add_argument("--json", action="store_true", help="answer as one JSON value, lengths in mm")
    if book:
        parser.add_argument("--book", type=Path, metavar="FILE", default=argparse.SUPPRESS, help="the logbook to use")
    if lengths:
        parser.add_argument("--inches", action="store_true", help="answer in inches instead of cm")


def units_of(arguments: argparse.Namespace) -> Units:
    """The units the answer is wanted in."""
    return Units.INCHES if arguments.inches else Units.CM
