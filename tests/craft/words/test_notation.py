"""The decimal mark and the order of a date's parts go with the reader, for as long as was said and for no one else."""

import threading
from contextvars import copy_context

import pytest

from logbook.craft.words.lengths import Units, show_difference, show_length
from logbook.craft.words.notation import COMMA, PLAIN, Notation, notation, written_in
from logbook.craft.words.numbers import fixed, grouped, in_mark, show_change, show_number
from logbook.errors import UnreadableError

WITH_COMMA = Notation(COMMA)


def test_numbers_have_the_readers_mark_while_it_lasts() -> None:
    with written_in(WITH_COMMA):
        assert [show_number(v) for v in (2.5, 4.0, -2.25, 1000.5)] == ["2,5", "4", "−2,25", "1000,5"]
        assert [fixed(v, 1) for v in (4.0, -0.04, -2.25)] == ["4,0", "0,0", "−2,2"]
        assert [show_length(465), show_difference(-5.0), show_change(0.0249)] == ["46,5 cm", "−0,5 cm", "+2,5 %"]
        assert show_length(465, Units.INCHES) == "18 1/4 in"
    assert (show_number(2.5), show_length(465)) == ("2.5", "46.5 cm")


def test_thousands_stand_apart_by_no_point_where_the_comma_is_decimal() -> None:
    assert (grouped(12_300), grouped(1234.5, 2), grouped(999)) == ("12,300", "1,234.50", "999")
    with written_in(WITH_COMMA):
        assert (grouped(12_300), grouped(1234.5, 2), grouped(999)) == ("12\u00a0300", "1\u00a0234,50", "999")


def test_it_ends_with_an_error_too() -> None:
    with pytest.raises(UnreadableError), written_in(WITH_COMMA):
        raise UnreadableError("")
    assert notation() is PLAIN


def test_a_thread_writes_so_if_it_is_given_the_context() -> None:
    said: list[str] = []
    with written_in(WITH_COMMA):
        context = copy_context()
    for run in (lambda: said.append(in_mark("4.5")), lambda: context.run(lambda: said.append(in_mark("4.5")))):
        thread = threading.Thread(target=run)
        thread.start()
        thread.join()
    assert said == ["4.5", "4,5"]
