import json
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.settings import (
    RECENT_KEPT,
    Settings,
    WindowPlace,
    data_folder,
    load_settings,
    save_settings,
    settings_folder,
)

FULL = Settings("in", "uk", "dark", 150, WindowPlace(900, 600, -20, 30, True), ("yarn", "notes"), ("/a/b.book", "c\udc80"))


def test_what_is_saved_is_loaded() -> None:
    assert load_settings() == (Settings(), None)
    save_settings(FULL)
    assert load_settings() == (FULL, None)
    save_settings(Settings())
    assert load_settings() == (Settings(), None)
    assert [p.name for p in settings_folder().iterdir()] == ["settings.json"]


def damaged(content: bytes) -> tuple[Settings, str | None]:
    settings_folder().mkdir(parents=True, exist_ok=True)
    (settings_folder() / "settings.json").write_bytes(content)
    return load_settings()


@pytest.mark.parametrize(
    "content", [b"", b"{", b"\xff\xfe\x00", b"[]", b"7", b"[" * 100_000, b" " * 1_100_000 + b"{}", b'{"a": 1e9999'],
)  # fmt: skip
def test_a_damaged_file_gives_the_usual_settings_and_says_so(content: bytes) -> None:
    settings, note = damaged(content)
    assert settings == Settings()
    assert note is not None
    assert str(settings_folder()) in note


def test_a_folder_in_its_place_is_said_too() -> None:
    (settings_folder() / "settings.json").mkdir(parents=True)
    assert load_settings()[0] == Settings()
    assert load_settings()[1]


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("units", "feet"),
        ("units", 7),
        ("terms", ["us"]),
        ("palette", ""),
        ("text_size", 99),
        ("text_size", 201),
        ("text_size", 150.5),
        ("text_size", True),
        ("place", {"width": 900}),
        ("place", {"width": 900, "height": 600, "x": 0, "y": 10**30, "zoomed": False}),
        ("place", {"width": 900, "height": 600, "x": 0, "y": 0, "zoomed": 0}),
        ("opened", "yarn"),
        ("recent", [1]),
    ],
)
def test_a_wrong_value_alone_is_replaced_and_named(name: str, value: object) -> None:
    save_settings(FULL)
    path = settings_folder() / "settings.json"
    content = json.loads(path.read_text("utf-8")) | {name: value}
    settings, note = damaged(json.dumps(content).encode())
    assert settings == replace(FULL, **{name: getattr(Settings(), name)})
    assert note is not None
    assert note.endswith(f"is used for: {name}.")


def test_settings_of_a_later_program_are_passed_over() -> None:
    assert damaged(b'{"units": "in", "sound": "loud"}') == (Settings(units="in"), None)


@settings(max_examples=50)
@given(st.recursive(st.none() | st.booleans() | st.integers() | st.text(), lambda s: st.lists(s) | st.dictionaries(st.text(), s)))
def test_no_value_at_all_stops_the_program(value: object) -> None:
    names = ("units", "terms", "palette", "text_size", "place", "opened", "recent")
    settings, _ = damaged(json.dumps(dict.fromkeys(names, value)).encode())
    assert 100 <= settings.text_size <= 200


def test_a_save_that_fails_leaves_the_old_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    save_settings(FULL)

    def full_disk(_: int) -> None:
        raise OSError("no space")

    monkeypatch.setattr("logbook.settings.os.fsync", full_disk)
    with pytest.raises(OSError, match="no space"):
        save_settings(Settings())
    assert load_settings() == (FULL, None)
    assert [p.name for p in settings_folder().iterdir()] == ["settings.json"]


def test_recent_logbooks_and_open_sections() -> None:
    settings = Settings()
    for path in [f"/book {n}" for n in range(20)] + ["/book 15"]:
        settings = settings.with_recent(path)
    assert settings.recent[:3] == ("/book 15", "/book 19", "/book 18")
    assert len(settings.recent) == RECENT_KEPT
    opened = Settings().with_opened("yarn", True).with_opened("yarn", True).with_opened("notes", True)
    assert opened.opened == ("yarn", "notes")
    assert opened.with_opened("yarn", False).opened == ("notes",)


@pytest.mark.parametrize(
    ("platform", "surroundings", "settings", "data"),
    [
        ("linux", {}, ".config/swatch-gauge-logbook", ".local/share/swatch-gauge-logbook"),
        (
            "linux",
            {"XDG_CONFIG_HOME": "not/absolute"},
            ".config/swatch-gauge-logbook",
            ".local/share/swatch-gauge-logbook",
        ),
        ("darwin", {}, *["Library/Application Support/swatch-gauge-logbook"] * 2),
        ("win32", {}, *["AppData/Roaming/swatch-gauge-logbook"] * 2),
    ],
)
def test_the_users_folders(
    platform: str, surroundings: dict[str, str], settings: str, data: str,
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    for name in ("LOGBOOK_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "APPDATA"):
        monkeypatch.delenv(name, raising=False)
    for name, value in surroundings.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys, "platform", platform)
    monkeypatch.setattr(Path, "home", lambda: tmp_path)
    assert settings_folder() == tmp_path / settings
    assert data_folder() == tmp_path / data


def test_the_platforms_own_word_for_the_folder_counts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("LOGBOOK_HOME")
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "mine"))
    assert data_folder() == tmp_path / "mine" / "swatch-gauge-logbook"
