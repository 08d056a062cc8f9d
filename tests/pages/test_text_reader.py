"""Texts that can't be read are told by their names; what is empty is told from what can't be read."""

from logbook.craft.words.numbers import read_whole
from logbook.pages.text_reader import TextReader


def whole(text: str) -> int:
    return read_whole(text, "a count", 1, 100)


def test_each_that_cannot_be_read_has_a_sentence() -> None:
    reader = TextReader({"a": " 7 ", "b": "seven", "c": " "})
    assert [reader.read(key, whole, 0) for key in "abc"] == [7, 0, 0]
    assert list(reader.errors) == ["b"]
    assert "“seven” is not a count" in reader.errors["b"]


def test_an_empty_text_may_mean_something_to_its_reader() -> None:
    reader = TextReader({"c": " "})
    assert reader.value("c", lambda text: text.strip() or "as usual") == "as usual"
    assert reader.errors == {}
