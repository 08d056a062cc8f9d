"""Whatever stands where the logbook should be: every command says one sentence, ends as promised, and changes not a byte."""

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing
from functools import partial
from pathlib import Path

import pytest

from logbook.book.logbook import open_logbook
from logbook.book.pictures import folder_of
from logbook.book.schema import STEPS
from logbook.tasks import keeping
from logbook.tasks.keeping import back_up, backup_folder, open_book, usual_logbook
from tests.support.children import as_nobody, as_nobody_only
from tests.support.command_line import done, run, sentence_of
from tests.support.sheets import LEAST, write_sheet

COMMANDS = {
    "chain": ["chain", "--swatch", "LC-02", "--width", "46"],
    "piece": ["piece", "--swatch", "LC-02", "--width", "46"],
    "sizes": ["sizes", "--swatch", "LC-02", "--chart", "women"],
    "find": ["find", "ivory"],
    "nearest": ["nearest", "--stitches", "16"],
    "compare": ["compare", "LC-02", "LC-06"],
    "hooks": ["hooks", "--yarn", "limewalk", "--stitch", "shell"],
    "import": ["import", "{folder}/sheet.csv"],
    "export": ["export", "{folder}/out.csv"],
    "check": ["check"],
    "check deep": ["check", "--deep"],
    "backup": ["backup"],
    "restore": ["restore", "{book}", "--to", "{folder}/restored.logbook"],
}
READS = [name for name in COMMANDS if name not in ("import", "restore")]


def arguments(command: str, book: Path) -> list[str]:
    said = [word.format(book=book, folder=book.parent) for word in COMMANDS[command]]
    return said if command == "restore" else [*said, "--book", str(book)]


@pytest.fixture
def book(wardrobe: Path) -> Path:
    """A sound logbook with a sheet beside it."""
    write_sheet(wardrobe.parent / "sheet.csv", {"tag": "Z-1", **LEAST})
    return wardrobe


def state_of(folder: Path) -> dict[str, bytes | None]:
    """Every file and folder and what is in it."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() and not path.is_symlink() else None
        for path in folder.rglob("*")
    }


def written_over(book: Path, offset: int, data: bytes) -> None:
    with book.open("r+b") as file:
        file.seek(offset)
        file.write(data)


def other_program(book: Path) -> None:
    book.unlink()
    with closing(sqlite3.connect(book)) as connection:
        connection.execute("CREATE TABLE recipe (name)")


def records_broken(book: Path) -> None:
    with closing(sqlite3.connect(book, isolation_level=None)) as connection:
        connection.execute("DELETE FROM yarn WHERE name LIKE 'L%'")


def pages_broken(book: Path) -> None:
    written_over(book, 3 * 4096, b"\xff" * 4096)


def a_folder(book: Path) -> None:
    book.unlink()
    book.mkdir()


STATES: dict[str, tuple[Callable[[Path], object], str]] = {
    "not there": (Path.unlink, "There is no logbook"),
    "empty": (lambda book: book.write_bytes(b""), "empty (0 bytes)"),
    "cut short in its first page": (lambda book: os.truncate(book, 60), "its length is not what it says"),
    "cut short at a page": (lambda book: os.truncate(book, 4096), "its length is not what it says"),
    "cut short by a byte": (lambda book: os.truncate(book, book.stat().st_size - 1), "its length is not what it says"),
    "not SQLite": (lambda book: book.write_text("Dear Noémie,\n" * 99), "some other kind of file"),
    "another program's": (other_program, "another program's file"),
    "a newer schema": (lambda book: written_over(book, 60, (len(STEPS) + 1).to_bytes(4, "big")), "newer"),
    "a folder": (a_folder, "a folder"),
}
DAMAGED_INSIDE = {"pages": pages_broken, "records": records_broken}


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("state", STATES)
def test_what_is_no_sound_logbook(state: str, command: str, book: Path) -> None:
    make, said = STATES[state]
    make(book)
    before = state_of(book.parent)
    ran = run(*arguments(command, book))
    assert (ran.code, ran.out) == (1, "")
    sentence = sentence_of(ran)
    assert said in sentence
    assert book.name in sentence
    as_json = run(*arguments(command, book), "--json")
    assert (as_json.code, as_json.err) == (1, ran.err)
    if command.startswith("check"):  # the one command that has something to say then
        assert as_json.json == {"ok": False, "swatches": None, "problems": [sentence]}
    else:
        assert as_json.out == ""
    assert state_of(book.parent) == before
    assert not backup_folder().exists()


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("inside", DAMAGED_INSIDE)
def test_damage_that_opening_does_not_look_for(inside: str, command: str, book: Path) -> None:
    """Who copies the whole logbook or checks it, and who would write after a backup, finds it; others where they read it."""
    DAMAGED_INSIDE[inside](book)
    before = state_of(book.parent)
    ran = run(*arguments(command, book))
    assert ran.code in ((1,) if command in ("check", "check deep", "backup", "restore", "import") else (0, 1))
    if ran.code:
        assert ("is damaged" in sentence_of(ran)) or command == "hooks"  # which misses the yarn
        assert ran.out == ""
        assert state_of(book.parent) == before
    assert not list(backup_folder().rglob("*.logbook"))


@pytest.mark.parametrize("command", [name for name in COMMANDS if name != "restore"])
def test_the_usual_one_is_not_made_by_accident(command: str, book: Path) -> None:
    said = [word.format(book=book, folder=book.parent) for word in COMMANDS[command]]
    before = state_of(book.parent)
    ran = run(*said)
    assert (ran.code, ran.out) == (1, "")
    assert str(usual_logbook()) in sentence_of(ran)
    assert state_of(book.parent) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_the_choice_of_a_logbook_may_stand_before_the_command(command: str, book: Path) -> None:
    if command == "restore":
        pytest.skip("restore chooses none")
    said = [word.format(book=book, folder=book.parent) for word in COMMANDS[command]]
    done("--book", book, *said)


class TestInUse:
    """Another program holds the logbook."""

    @pytest.fixture(autouse=True)
    def _impatient(self, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(keeping, "open_logbook", partial(open_logbook, patience=0.01))

    @pytest.fixture
    def writer(self, book: Path) -> Iterator[sqlite3.Connection]:
        with closing(sqlite3.connect(book, isolation_level=None)) as connection:
            yield connection

    @pytest.mark.parametrize("command", READS)
    def test_being_written_it_is_read_all_the_same(self, command: str, book: Path, writer: sqlite3.Connection) -> None:
        writer.execute("BEGIN IMMEDIATE")
        done(*arguments(command, book))

    def test_being_written_it_can_not_be_written_too(self, book: Path, writer: sqlite3.Connection) -> None:
        writer.execute("BEGIN IMMEDIATE")
        before = book.read_bytes()
        ran = run(*arguments("import", book))
        assert ran.code == 1
        assert "being written by another window or program" in sentence_of(ran)
        writer.execute("ROLLBACK")
        assert book.read_bytes() == before

    @pytest.mark.parametrize("command", [name for name in COMMANDS if name != "restore"])
    def test_held_alone_every_command_says_so(self, command: str, book: Path, writer: sqlite3.Connection) -> None:
        writer.execute("BEGIN EXCLUSIVE")
        ran = run(*arguments(command, book))
        assert ran.code == 1
        assert "being written by another window or program" in sentence_of(ran)
        assert not (book.parent / "out.csv").exists()


@pytest.fixture
def public(sample_logbook: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A logbook and a sheet in a folder that other users can get at, with a place of their own for backups and output."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        os.chmod(folder, 0o755)
        (folder / "mine").mkdir()
        os.chmod(folder / "mine", 0o777)
        monkeypatch.setenv("LOGBOOK_HOME", str(folder / "mine" / "home"))
        (folder / "theirs").mkdir()
        path = Path(shutil.copy(sample_logbook, folder / "theirs"))
        shutil.copytree(folder_of(sample_logbook), folder_of(path))
        write_sheet(folder / "theirs" / "sheet.csv", {"tag": "Z-1", **LEAST})
        yield path
        os.chmod(folder / "theirs", 0o755)


def read_only_file(book: Path) -> None:
    os.chmod(book, 0o444)
    os.chmod(book.parent, 0o777)


def read_only_folder(book: Path) -> None:
    os.chmod(book, 0o666)
    os.chmod(book.parent, 0o555)


@as_nobody_only
@pytest.mark.parametrize("protect", [read_only_file, read_only_folder])
def test_what_may_only_be_read_is_read(protect: Callable[[Path], None], public: Path) -> None:
    protect(public)
    before = state_of(public.parent)

    def work() -> None:
        own = public.parents[1] / "mine"
        for command in set(READS) - {"export"}:
            done(*arguments(command, public))
        done("export", own / "out.csv", "--book", public)
        done("restore", public, "--to", own / "restored.logbook")
        kept = len(list(backup_folder().rglob("*.logbook")))
        ran = run(*arguments("import", public))
        assert (ran.code, ran.out) == (1, "")
        assert "can't be written to here" in sentence_of(ran)
        assert len(list(backup_folder().rglob("*.logbook"))) == kept

    as_nobody(work)
    assert state_of(public.parent) == before


@as_nobody_only
@pytest.mark.parametrize("command", COMMANDS)
def test_what_may_not_be_read(command: str, public: Path) -> None:
    os.chmod(public, 0o200)

    def work() -> None:
        ran = run(*arguments(command, public))
        assert (ran.code, ran.out) == (1, "")
        assert public.name in sentence_of(ran)

    as_nobody(work)


@as_nobody_only
def test_nothing_is_imported_without_its_backup(public: Path) -> None:
    os.chmod(public, 0o666)
    os.chmod(public.parent, 0o777)
    os.chmod(public.parents[1] / "mine", 0o555)
    before = public.read_bytes()

    def work() -> None:
        ran = run(*arguments("import", public))
        assert (ran.code, ran.out) == (1, "")
        assert "nothing was written, since no backup could be made" in sentence_of(ran)

    as_nobody(work)
    assert public.read_bytes() == before


def test_a_backup_of_a_damaged_one_can_be_restored(book: Path, tmp_path: Path) -> None:
    with open_book(book) as opened:
        backup = back_up(opened)
    everything = done("find", "--json", "--book", book)
    pages_broken(book)
    done("restore", backup, "--to", tmp_path / "again.logbook")
    assert done("find", "--json", "--book", tmp_path / "again.logbook") == everything
