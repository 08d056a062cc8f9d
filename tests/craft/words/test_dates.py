import pytest

from logbook.craft.words.dates import date_words, month_words
from logbook.craft.words.notation import Notation, written_in


def test_dates_as_the_reader_has_them() -> None:
    assert (date_words("2024-09-21"), month_words("2024-09-21")) == ("21 Sep 2024", "Sep 2024")
    with written_in(Notation(month_first=True)):
        assert (date_words("2024-09-01"), month_words("2024-09-21")) == ("Sep 1, 2024", "Sep 2024")
    assert month_words("21 Sep 2024") == month_words("Sep 21, 2024") == "Sep 2024"


@pytest.mark.parametrize("text", ["", "soon", "2024", "21.9.2024", "2024-13-01"])
def test_what_is_no_date_stays(text: str) -> None:
    assert date_words(text) == month_words(text) == text
