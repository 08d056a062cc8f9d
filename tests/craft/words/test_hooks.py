import pytest

from logbook.craft.words.hooks import HOOKS, hook_names, read_hook, show_hook
from logbook.errors import UnreadableError


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("4.5", 4.5),
        ("4,5 mm", 4.5),
        ("4.5MM", 4.5),
        ("4 1/2 mm", 4.5),
        ("3.125", 3.125),
        ("G", 4.0),
        ("g-6", 4.0),
        ("G6", 4.0),
        ("G/6", 4.0),
        ("H-8", 5.0),
        ("k 10.5", 6.5),
        ("K-10½", 6.5),
        ("K-10 1/2", 6.5),
        ("M/N-13", 9.0),
        ("P-16", 11.5),
        ("S", 19.0),
        ("7", 7.0),  # a bare number is mm, never a size
    ],
)
def test_hooks_as_they_are_typed(text: str, mm: float) -> None:
    assert read_hook(text) == mm


@pytest.mark.parametrize("text", ["", "0", "41", "-4", "P", "G-7", "size 4", "four", "4.5 cm"])
def test_what_is_no_hook_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError, match=r"is not a hook: type its size in mm, for example 4\.5"):
        read_hook(text)


def test_every_hook_of_the_table_reads_back() -> None:
    for hook in HOOKS:
        assert read_hook(show_hook(hook.mm)) == hook.mm
        if "-" in hook.us:
            assert read_hook(hook.us) == hook.mm


def test_names_beside_the_size() -> None:
    assert hook_names(4.0) == "US G-6, UK 8"
    assert hook_names(2.0) == "UK 14"
    assert hook_names(3.75) == "US F-5"
    assert hook_names(12.0) == hook_names(4.2) == ""
    assert (show_hook(4.5), show_hook(5.0), show_hook(3.125)) == ("4.5 mm", "5 mm", "3.125 mm")
