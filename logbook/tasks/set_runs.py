"""A run that is set: its numbers stay as published, whatever is measured later."""

from dataclasses import replace
from datetime import date

from logbook.book import pieces as kept
from logbook.book.logbook import Logbook
from logbook.book.trouble import NewerError
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.sizes.published_run import PublishedRun, UnknownNumberError, published_run, run_of, run_text
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.size_runs import RunAnswer, lines_of


def set_run(book: Logbook, piece: PlannedPiece, answer: RunAnswer, terms: Terms) -> PlannedPiece:
    """Keeps the run of a saved piece as published today, with the readings it came from; the piece with it is returned."""
    return _put(book, f"mark {piece.name} as published", with_set_run(piece, answer, terms, date.today().isoformat()))


def with_set_run(piece: PlannedPiece, answer: RunAnswer, terms: Terms, day: str) -> PlannedPiece:
    """The piece with its run as published on that day (ISO)."""
    run = published_run(day, answer.basis.swatch, answer.run.sizes, lines_of(answer, terms))
    return replace(piece, published=run_text(run))


def unset_run(book: Logbook, piece: PlannedPiece) -> PlannedPiece:
    """Forgets what was published; undo brings it back."""
    return _put(book, f"unmark {piece.name} as published", replace(piece, published=None))


def published(piece: PlannedPiece) -> PublishedRun | None:
    """The run as it was set; None if it was not. Raises RefusedError if what is kept can't be read."""
    if piece.published is None:
        return None
    try:
        return run_of(piece.published)
    except UnknownNumberError as error:
        raise NewerError(f"The published sizes of “{piece.name}”", str(error)) from error
    except (ValueError, TypeError, LookupError) as error:
        raise RefusedError(
            f"The published sizes of “{piece.name}” can't be read: restore a backup, or mark them as published again."
        ) from error


def _put(book: Logbook, label: str, piece: PlannedPiece) -> PlannedPiece:
    with book.writing(label) as writing:
        kept.put_piece(writing, piece)
    return piece
