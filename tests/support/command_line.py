"""The command line, run in this process."""

import io
import json
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from logbook.commands.main import main


@dataclass(frozen=True, slots=True)
class Ran:
    """How a command ended: its exit code and what it wrote."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """The one value on standard output."""
        return json.loads(self.out)


def run(*arguments: str | Path) -> Ran:
    """Runs ``logbook`` with these arguments."""
    with redirect_stdout(io.StringIO()) as out, redirect_stderr(io.StringIO()) as err:
        code = main([str(argument) for argument in arguments])
    return Ran(code, out.getvalue(), err.getvalue())


def done(*arguments: str | Path) -> str:
    """Runs a command that goes well, without a word on standard error, and returns what it wrote."""
    ran = run(*arguments)
    assert (ran.code, ran.err) == (0, ""), ran
    return ran.out


def done_json(*arguments: str | Path) -> Any:
    """The value that a command answers with ``--json``."""
    return json.loads(done(*arguments, "--json"))


def refused(code: int, *arguments: str | Path) -> str:
    """Runs a command that must end with ``code``, and returns its one sentence, which is all it writes."""
    ran = run(*arguments)
    assert (ran.code, ran.out) == (code, ""), ran
    return sentence_of(ran)


def sentence_of(ran: Ran) -> str:
    """The one line on standard error: a sentence, without usage text, traceback or the program's own wonder."""
    lines = ran.err.splitlines()
    assert len(lines) == 1, ran
    sentence = lines[0].removeprefix("logbook: ")
    assert sentence != lines[0], ran
    assert not any(word in sentence.lower() for word in ("usage:", "traceback", "did not expect")), ran
    return sentence
