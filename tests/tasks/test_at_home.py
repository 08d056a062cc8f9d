"""What is usual where the user lives: by what the system says of it, and as chosen in the settings."""

import locale
from dataclasses import replace

import pytest

from logbook.craft.words.notation import COMMA, PLAIN, POINT, notation
from logbook.settings import Settings, save_settings
from logbook.tasks import at_home
from logbook.tasks.at_home import as_at_home, decimal_mark, month_first, name_key, notation_of, sort_as_at_home


@pytest.mark.parametrize(
    ("said", "mark"),
    [
        ("de_DE.UTF-8", COMMA), ("de", COMMA), ("de_CH.UTF-8", POINT), ("fr_FR@euro", COMMA), ("sv_SE", COMMA), ("pt-BR", COMMA),
        ("es_ES.UTF-8", COMMA), ("es_MX.UTF-8", POINT), ("en_US.UTF-8", POINT), ("en_GB", POINT), ("en_DK.UTF-8", COMMA),
        ("ja_JP.UTF-8", POINT), ("C", POINT), ("C.UTF-8", POINT), ("POSIX", POINT), ("German_Germany.1252", COMMA),
        ("German_Switzerland.1252", POINT), ("English_United States.1252", POINT),
    ],
)  # fmt: skip
def test_the_decimal_mark_goes_by_language_and_country(said: str, mark: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LC_NUMERIC", said)
    assert decimal_mark() == mark


def test_what_holds_for_everything_goes_before_what_holds_for_numbers(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LC_NUMERIC", "de_DE.UTF-8")
    monkeypatch.setenv("LANG", "en_GB.UTF-8")
    assert decimal_mark() == COMMA
    monkeypatch.setenv("LC_ALL", "en_GB.UTF-8")
    assert decimal_mark() == POINT


def test_the_month_comes_first_in_few_places(monkeypatch: pytest.MonkeyPatch) -> None:
    for said, first in (("en_US.UTF-8", True), ("English_United States.1252", True), ("en_GB.UTF-8", False), ("C", None)):
        monkeypatch.setenv("LC_TIME", said)
        assert month_first() is first


def test_what_is_chosen_goes_before_the_system(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LC_NUMERIC", "de_DE.UTF-8")
    assert [notation_of(replace(Settings(), numbers=one)).mark for one in ("system", "point", "comma")] == [COMMA, POINT, COMMA]


def test_what_a_command_writes_to_print_goes_by_the_kept_settings() -> None:
    save_settings(Settings(numbers="comma"))
    with as_at_home():
        assert notation().mark == COMMA
    assert notation() == PLAIN


def test_without_a_folder_of_the_users_there_are_no_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("LOGBOOK_HOME", "HOME", "XDG_CONFIG_HOME"):
        monkeypatch.setenv(name, "")
    with as_at_home():
        assert notation() == PLAIN


NAMES = ["Zephyr", "Ärla", "aran", "Åska", "Zéta", "ösa", "Brume", "éclair"]


def test_names_sort_without_accents_where_the_system_has_no_order_of_its_own() -> None:
    assert sorted(NAMES, key=name_key) == ["aran", "Ärla", "Åska", "Brume", "éclair", "ösa", "Zephyr", "Zéta"]
    assert sorted(["b", "B", "a", "Ä", "ä"], key=name_key)[0] == "a"


@pytest.mark.parametrize(
    ("said", "order"),
    [
        ("sv_SE.UTF-8", ["aran", "Brume", "éclair", "Zephyr", "Zéta", "Åska", "Ärla", "ösa"]),
        ("de_DE.UTF-8", ["aran", "Ärla", "Åska", "Brume", "éclair", "ösa", "Zephyr", "Zéta"]),
    ],
)
def test_names_sort_as_in_the_users_language(said: str, order: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    before = locale.setlocale(locale.LC_COLLATE)
    monkeypatch.setenv("LC_COLLATE", said)
    try:
        sort_as_at_home()
        if locale.setlocale(locale.LC_COLLATE) != said:
            pytest.skip(f"{said} is not on this machine")
        assert sorted(NAMES, key=name_key) == order
    finally:
        locale.setlocale(locale.LC_COLLATE, before)
        monkeypatch.setattr(at_home, "_collated", False)


def test_a_language_that_the_machine_lacks_leaves_the_plain_order(monkeypatch: pytest.MonkeyPatch) -> None:
    before = locale.setlocale(locale.LC_COLLATE)
    monkeypatch.setenv("LC_COLLATE", "xx_XX.UTF-8")
    try:
        sort_as_at_home()
        assert sorted(["b", "Ä", "a"], key=name_key) == ["a", "Ä", "b"]
    finally:
        locale.setlocale(locale.LC_COLLATE, before)
