"""The command line as a whole: which command, and what goes with none or with any."""

import pytest

from logbook.commands.line import COMMANDS, build_parser
from logbook.tasks import keeping
from logbook.tasks.error_log import error_log
from tests.support.command_line import refused, run


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (["chian"], "chian"),
        (["--boook=a.logbook"], "--boook"),
        (["--boo=a.logbook", "find"], "--boo"),
        (["--book"], "--book"),
        (["--json"], "--json"),
        (["--sample", "find"], "--sample"),
        (["--sample", "--book", "a.logbook"], "--sample"),
    ],
    ids=" ".join,
)
def test_arguments_that_are_wrong_alone(arguments: list[str], named: str) -> None:
    assert named in refused(2, *arguments)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["chain", "--width"], "--width needs a value"),
        (["chain", "--terms", "fr"], "--terms is one of us, uk, not “fr”"),
        (["chain", "--at-least", "--at-most"], "--at-most does not go with --at-least: leave one of them out"),
        (["restore", "a.logbook"], "this is missing: --to"),
        (["picture", "a.png"], "give --swatch or --made"),
        (["export", "a.txt"], "TARGET: “a.txt” must end in .xlsx or .csv: name it so."),
    ],
)
def test_what_is_wrong_with_arguments_is_said_in_plain_words(arguments: list[str], says: str) -> None:
    assert refused(2, *arguments) == says


def test_every_command_says_what_it_is_for() -> None:
    for command in COMMANDS:
        assert f"\n    {command} " in build_parser().format_help()
        with pytest.raises(SystemExit) as left:
            run(command, "--help")
        assert left.value.code == 0


def test_what_nobody_expected_is_said_in_a_line_and_written_down(monkeypatch: pytest.MonkeyPatch) -> None:
    data = "ivory " * 3

    def fail(*_: object, **__: object) -> None:
        raise ZeroDivisionError(data)

    monkeypatch.setattr(keeping, "open_logbook", fail)
    ran = run("find")
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.count("\n") == 1
    assert str(error_log()) in ran.err
    assert data not in ran.err + error_log().read_text("utf-8")
    assert "ZeroDivisionError" in error_log().read_text("utf-8")


def test_stopped_by_the_user(monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(keeping, "open_logbook", stop)
    assert refused(1, "find") == "Stopped; what was not finished was not written."
