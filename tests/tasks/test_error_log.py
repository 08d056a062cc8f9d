from pathlib import Path

from logbook.tasks.error_log import LARGEST_LOG, error_log, whereabouts, write_down


def test_whereabouts_stop_at_a_cause_that_was_hidden() -> None:
    error = KeyError("x")
    error.__context__, error.__suppress_context__ = ValueError("y"), True
    assert whereabouts(error) == "builtins.KeyError\n"


def test_the_log_starts_anew_when_it_has_grown_large(users_folder: Path) -> None:
    log = error_log()
    assert log.parent == users_folder
    write_down(KeyError("x"), log)
    write_down(KeyError("x"), log)
    assert log.read_text("utf-8").count("KeyError") == 2
    log.write_text("x" * LARGEST_LOG, "utf-8")
    write_down(KeyError("x"), log)
    assert log.stat().st_size < 1000
