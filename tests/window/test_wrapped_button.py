import pytest

from logbook.window.wrapped_button import broken


@pytest.mark.parametrize(
    ("room", "lines"),
    [
        (95, ["one two three"]),
        (120, ["one two three"]),
        (94, ["one two", "three"]),
        (59, ["one", "two", "three"]),
        (5, ["one", "two", "three"]),
    ],
)
def test_lines_end_where_the_next_word_would_reach_beyond_the_room(room: int, lines: list[str]) -> None:
    assert broken("one two three", [30, 30, 25], 5, room) == "\n".join(lines)
