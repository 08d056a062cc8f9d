"""What is typed and not saved, on the disk: private, whole, in the hands of one window, and offered only when that is dead."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from logbook.book import drafts
from logbook.book.drafts import NEW, Draft, DraftFile, left_behind

ONE = Draft("swatches", NEW, "", "cm", {"yarn": "Rook Wool", "notes": "½ \ud83d"}, {"yarn": "", "notes": ""})
OTHER = Draft("pieces", "a uid", "Vest", "in", {"width": '18"'}, {"width": '17"'})


def dead_window(folder: Path, *typed: Draft) -> None:
    """As one that was killed leaves it."""
    file = DraftFile(folder)
    file.keep(typed)
    file.close(leave=True)


def test_what_was_kept_last_is_left_behind(tmp_path: Path) -> None:
    file = DraftFile(tmp_path / "drafts")
    file.keep([ONE])
    file.keep([ONE, OTHER])
    file.close(leave=True)
    (left,), unreadable = left_behind(tmp_path / "drafts")
    assert left.drafts == [ONE, OTHER]
    assert not unreadable
    left.let_go()


def test_it_is_for_the_users_eyes_alone(tmp_path: Path) -> None:
    folder = tmp_path / "state" / "drafts"
    file = DraftFile(folder)
    file.keep([ONE])
    assert {path.stat().st_mode & 0o777 for path in folder.iterdir()} == {0o600}
    assert {path.stat().st_mode & 0o777 for path in (folder, folder.parent)} == {0o700}
    file.close()


def test_it_is_plain_json(tmp_path: Path) -> None:
    dead_window(tmp_path, OTHER)
    (path,) = tmp_path.glob("*.json")
    (said,) = json.loads(path.read_text())["drafts"]
    fields = {"width": {"typed": '18"', "opened": '17"'}}
    assert said == {"page": "pieces", "record": "a uid", "name": "Vest", "units": "in", "fields": fields}


def test_nothing_typed_leaves_nothing(tmp_path: Path) -> None:
    file = DraftFile(tmp_path / "drafts")
    file.keep([])
    assert not (tmp_path / "drafts").exists()
    file.keep([ONE])
    file.keep([])
    assert not list((tmp_path / "drafts").iterdir())
    file.keep([ONE])
    file.close()
    assert not list((tmp_path / "drafts").iterdir())


def test_a_living_window_keeps_its_own_and_a_killed_one_does_not(tmp_path: Path) -> None:
    words = f"from pathlib import Path\nfrom logbook.book.drafts import *\nd = DraftFile(Path({str(tmp_path)!r}))\n"
    words += "d.keep([Draft('swatches', NEW, '', 'cm', {'yarn': 'x'}, {'yarn': ''})])\nprint(1, flush=True)\ninput()"
    with subprocess.Popen([sys.executable, "-c", words], stdin=subprocess.PIPE, stdout=subprocess.PIPE) as window:
        assert window.stdout is not None
        window.stdout.readline()
        assert left_behind(tmp_path) == ([], [])
        window.kill()
        window.wait()
        (left,), _ = left_behind(tmp_path)
        assert left.drafts[0].typed == {"yarn": "x"}
        assert left_behind(tmp_path) == ([], []), "two windows that start together would both offer it"
        left.let_go()


def test_what_is_taken_up_is_dropped_and_the_rest_waits(tmp_path: Path) -> None:
    dead_window(tmp_path, ONE, OTHER)
    (left,), _ = left_behind(tmp_path)
    left.drop(left.drafts[0])
    left.let_go()
    (left,), _ = left_behind(tmp_path)
    assert left.drafts == [OTHER]
    left.drop(left.drafts[0])
    left.let_go()
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    "content", [b"", b"{", b"[]", b'{"version": 2, "drafts": []}', b'{"version": 1, "drafts": [{"fields": {"a": 1}}]}', b"\xff"]
)
def test_what_can_not_be_read_is_named_and_stays(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "a.json").write_bytes(content)
    dead_window(tmp_path, ONE)
    (left,), unreadable = left_behind(tmp_path)
    assert left.drafts == [ONE]
    assert unreadable == [tmp_path / "a.json"]
    assert (tmp_path / "a.json").read_bytes() == content
    left.let_go()


def test_a_disk_that_takes_no_more_leaves_what_was_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = DraftFile(tmp_path)
    file.keep([ONE])

    def full(path: Path, content: bytes) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(drafts, "write_in_place", full)
        with pytest.raises(OSError, match="No space"):
            file.keep([OTHER])
    file.close(leave=True)
    (left,), _ = left_behind(tmp_path)
    assert left.drafts == [ONE]
    left.let_go()
