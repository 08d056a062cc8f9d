"""The argument parser: no abbreviations, no usage text with an error, values that begin with a minus read."""

import argparse
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, NoReturn, TypeVar

from logbook.craft.words.lengths import Units
from logbook.errors import LogbookError, UsageError


def _no_choice(found: re.Match[str]) -> str:
    option, text, names = found[1], found[2], found[3].replace("'", "")
    if option == "COMMAND":
        return f"“{text}” is not a command: the commands are {names}"
    return f"{option} is one of {names}, not “{text}”"


_SAID: tuple[tuple[re.Pattern[str], str | Callable[[re.Match[str]], str]], ...] = (
    (re.compile(r"\Aargument (\S+): expected (?:one|at least one) argument\Z"), r"\1 needs a value"),
    (re.compile(r"\Aargument (\S+): not allowed with argument (\S+)\Z"), r"\1 does not go with \2: leave one of them out"),
    (re.compile(r"\Aargument (\S+): invalid choice: '?(.*?)'?(?:, maybe you meant \S+)? \(choose from (.*)\)\Z"), _no_choice),
    (re.compile(r"\Athe following arguments are required: (.*)\Z"), r"this is missing: \1"),
    (re.compile(r"\Aone of the arguments (\S+) (\S+) is required\Z"), r"give \1 or \2"),
    (re.compile(r"\Aargument (?=\S+: )"), ""),
)
"""What argparse says, and what is said instead."""


class Parser(argparse.ArgumentParser):
    """An ArgumentParser that raises UsageError instead of printing its usage and leaving.

    ``fill`` adds the options of a command, and is called when they are first needed.
    """

    def __init__(self, *, fill: "Callable[[Parser], object] | None" = None, **settings: Any) -> None:
        super().__init__(allow_abbrev=False, add_help=False, **settings)
        self.add_argument("-h", "--help", action="help", help="show this help")
        self._positionals.title = "arguments"
        self._fill = fill

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        """As ArgumentParser's."""
        fill, self._fill = self._fill, None
        if fill is not None:
            fill(self)
        return super().parse_known_args(args, namespace)

    def error(self, message: str) -> NoReturn:
        """Raises UsageError with the message on one line, in our words where argparse has its own."""
        said = " ".join(message.split())
        for theirs, ours in _SAID:
            said = theirs.sub(ours, said)
        raise UsageError(said)

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
