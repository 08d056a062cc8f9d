"""Where an error nobody expected is written down: the lines of the program that led to it, never the maker's data."""

from datetime import datetime
from pathlib import Path

from logbook.errors import RefusedError
from logbook.settings import data_folder

LOG = "errors.log"
LARGEST_LOG = 1_000_000


def error_log() -> Path:
    """The file such errors are added to; where the user has no folder of their own it lies among the temporary ones."""
    try:
        return data_folder() / LOG
    except RefusedError:
        import tempfile

        return Path(tempfile.mkdtemp(prefix="logbook-")) / LOG


def write_down(error: BaseException, log: Path) -> str:
    """Adds the whereabouts of ``error`` to ``log`` and says in one sentence where they are; the log starts anew past 1 MB."""
    import platform  # these two are slow to import, and mostly there is no error

    head = f"{datetime.now().isoformat(' ', 'seconds')}, Python {platform.python_version()}, {platform.system()}\n"
    try:
        log.parent.mkdir(parents=True, exist_ok=True)
        mode = "a" if not log.exists() or log.stat().st_size < LARGEST_LOG else "w"
        with log.open(mode, encoding="utf-8") as file:
            file.write(f"{head}{whereabouts(error)}\n")
    except OSError as problem:
        return f"The details could not be written to {log}: {problem.strerror}. It was: {type(error).__name__}."
    return f"Where it happened is written down in {log}."


def whereabouts(error: BaseException) -> str:
    """The lines that led to ``error`` and to those it came from, without any message, in which the maker's data could be."""
    import traceback

    parts = []
    link: BaseException | None = error
    while link is not None:
        lines = "".join(traceback.format_tb(link.__traceback__))
        parts.append(f"{lines}{type(link).__module__}.{type(link).__qualname__}\n")
        link = link.__cause__ or (None if link.__suppress_context__ else link.__context__)
    return "which led to:\n".join(reversed(parts))
