"""``logbook merge`` as it is used."""

import shutil
from dataclasses import replace
from pathlib import Path

from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import save_swatch
from tests.support.command_line import done, done_json, refused, run
from tests.support.garments import garment_book, uid_of


def coloured(path: Path, colour: str) -> None:
    with open_book(path) as book:
        swatch = swatch_in_hand(book, uid_of(book, "H1"))
        assert swatch is not None
        save_swatch(book, replace(swatch, colour=colour))


def test_both_ways_of_deciding(tmp_path: Path) -> None:
    ours, theirs = tmp_path / "ours.logbook", tmp_path / "theirs.logbook"
    garment_book(ours).close()
    shutil.copy(ours, theirs)
    coloured(ours, "blue")
    coloured(theirs, "red")
    asked = run("merge", theirs, "--book", ours, "--json")
    assert asked.code == 1
    assert asked.json["conflicts"] == [{"record": "swatch H1", "field": "colour", "ours": "blue", "theirs": "red"}]
    assert "1 difference to decide" in asked.err
    merged = done_json("merge", theirs, "--book", ours, "--prefer", "theirs")
    assert (merged["added"], merged["changed"], merged["deleted"]) == (0, 1, 0)
    assert "0 added, 0 changed, 0 deleted" in done("merge", theirs, "--book", ours)


def test_what_it_can_not_do(tmp_path: Path) -> None:
    ours = tmp_path / "ours.logbook"
    garment_book(ours).close()
    assert "is the logbook that is open" in refused(1, "merge", ours, "--book", ours)
    assert "There is no logbook" in refused(1, "merge", tmp_path / "no.logbook", "--book", ours)
