"""Taking sheets in: what is planned, what is written, and that it is one step."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook import sample
from logbook.book import swatches as stored
from logbook.book.swatches import put_swatch, swatches, yarns
from logbook.book.undo import redo, undo
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError
from logbook.tasks.exporting import export
from logbook.tasks.importing import carry_out, import_into, import_into_new, plan_import
from logbook.tasks.keeping import Logbook, backups_of, new_book, open_book
from logbook.tasks.logging_swatches import kept_pattern, kept_yarn
from tests.support.books import held
from tests.support.sheets import LEAST, read_rows, write_sheet
from tests.support.swatches import awkward_swatches

PATTERN = {"stitch pattern": "shell stitch", "multiple": "6", "plus": "1", "extra chains": "1"}
FULL = {**LEAST, **PATTERN, "fibre": "wool", "ball grams": "50", "colour": "ivory", "date": "2026-05-31", "notes": "firm"}


def take_in(book: Logbook, tmp_path: Path, *rows: dict[str, str]) -> tuple[int, int]:
    plan, result = import_into(book, write_sheet(tmp_path / "sheet.csv", *rows))
    assert result is not None, plan.problems
    return result.added, result.changed


def problems(book: Logbook | None, tmp_path: Path, *rows: dict[str, str]) -> list[tuple[int, str]]:
    plan = plan_import(book, write_sheet(tmp_path / "sheet.csv", *rows))
    assert all(problem.says.endswith(".") and problem.expected for problem in plan.problems)
    return [(problem.row, problem.column) for problem in plan.problems]


def all_of(book: Logbook) -> dict[str, Swatch]:
    with book.reading() as connection:
        return {swatch.tag: swatch for swatch in swatches(connection)}


def log_awkward_ones(book: Logbook) -> None:
    """Logs every awkward swatch, in one action to be quick."""
    with book.writing("log awkward ones") as writing:
        for one in awkward_swatches():
            yarn = one.yarn and kept_yarn(writing, one.yarn)
            put_swatch(writing, replace(one, yarn=yarn, pattern=one.pattern and kept_pattern(writing, one.pattern)))


class TestRoundTrip:
    @pytest.mark.parametrize("ending", ["csv", "xlsx"])
    def test_every_column_comes_back_cell_by_cell(self, book: Logbook, ending: str, tmp_path: Path) -> None:
        log_awkward_ones(book)
        first, second = tmp_path / f"first.{ending}", tmp_path / f"second.{ending}"
        export(book, first)
        plan, result = import_into_new(tmp_path / "other.logbook", first)
        assert plan.problems == ()
        assert result is not None
        with open_book(tmp_path / "other.logbook") as other:
            export(other, second)
            export(other, tmp_path / "as.csv")
        export(book, tmp_path / "from.csv")
        assert (tmp_path / "as.csv").read_bytes() == (tmp_path / "from.csv").read_bytes()
        if ending == "csv":
            assert first.read_bytes() == second.read_bytes()
        rows = read_rows(tmp_path / "as.csv")
        assert len(rows) == len(awkward_swatches())
        assert all(any(row[column] for row in rows) for column in rows[0])

    @pytest.mark.parametrize("ending", ["csv", "xlsx"])
    def test_taken_in_where_it_came_from_it_changes_nothing(self, book: Logbook, ending: str, tmp_path: Path) -> None:
        log_awkward_ones(book)
        export(book, tmp_path / f"out.{ending}")
        before = held(book)
        plan, result = import_into(book, tmp_path / f"out.{ending}")
        assert (plan.added, plan.changed, plan.problems) == ((), (), ())
        assert result is not None
        assert held(book) == before
        assert undo(book).label == "log awkward ones"


class TestEdits:
    def test_a_known_uid_is_an_edit(self, book: Logbook, tmp_path: Path) -> None:
        assert take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **FULL}) == (1, 0)
        edit = {"uid": "u1", "tag": "A-9", **FULL, "colour": "", "hook mm": "5"}
        plan = plan_import(book, write_sheet(tmp_path / "sheet.csv", edit))
        assert plan.added == ()
        assert [(one.row, one.swatch.tag, one.is_new, set(one.changes)) for one in plan.changed] == [
            (2, "A-9", False, {"tag", "colour", "hook mm"})
        ]
        carry_out(book, plan)
        (swatch,) = all_of(book).values()
        assert (swatch.uid, swatch.tag, swatch.colour, swatch.hook_mm) == ("u1", "A-9", "", 5.0)

    def test_an_unknown_uid_is_kept_and_none_is_a_new_swatch(self, book: Logbook, tmp_path: Path) -> None:
        assert take_in(book, tmp_path, {"uid": "from elsewhere", "tag": "A-1", **LEAST}, {"tag": "A-2", **LEAST}) == (2, 0)
        found = all_of(book)
        assert found["A-1"].uid == "from elsewhere"
        assert len(found["A-2"].uid) == 36

    def test_columns_that_are_missing_keep_what_is_there(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **FULL})
        before = all_of(book)["A-1"]
        assert take_in(book, tmp_path, {"uid": "u1", "colour": "rust"}) == (0, 1)
        after = all_of(book)["A-1"]
        assert (before.colour, after.colour) == ("ivory", "rust")
        assert {name for name in Swatch.__dataclass_fields__ if getattr(before, name) != getattr(after, name)} == {"colour"}

    def test_an_empty_cell_of_a_reading_takes_it_away(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **LEAST, "rows washed": "22 rows = 15 cm"})
        assert take_in(book, tmp_path, {"uid": "u1", "rows washed": "", "stitches as worked": "20 sts = 11 cm"}) == (0, 1)
        conditions = [taken.condition for taken in all_of(book)["A-1"].readings]
        assert sorted(conditions) == [Condition.WASHED, Condition.WORKED]

    def test_an_empty_tag_keeps_the_tag(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **LEAST})
        assert take_in(book, tmp_path, {"uid": "u1", "tag": "", "colour": "rust"}) == (0, 1)
        assert all_of(book)["A-1"].colour == "rust"

    def test_to_another_yarn_takes_that_yarns_details(self, book: Logbook, tmp_path: Path) -> None:
        other = {"tag": "B-1", **LEAST, "yarn": "Scree", "fibre": "cotton", "ball grams": "100"}
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **FULL}, other)
        assert take_in(book, tmp_path, {"uid": "u1", "yarn": "Scree"}) == (0, 1)
        found = all_of(book)
        assert found["A-1"].yarn == found["B-1"].yarn
        assert take_in(book, tmp_path, {"uid": "u1", "yarn": "Unheard of"}) == (0, 1)
        yarn = all_of(book)["A-1"].yarn
        assert yarn is not None
        assert (yarn.name, yarn.fibre, yarn.ball_grams) == ("Unheard of", "", None)

    @pytest.mark.parametrize(
        ("edit", "column"),
        [
            ({"hook mm": ""}, "hook mm"),
            ({"yarn": ""}, "yarn"),
            ({"stitches washed": ""}, "stitches as worked"),
        ],
    )
    def test_what_must_be_said_can_not_be_taken_away(
        self, book: Logbook, tmp_path: Path, edit: dict[str, str], column: str
    ) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **LEAST})
        assert problems(book, tmp_path, {"uid": "u1", "tag": "A-1", **edit}) == [(2, column)]

    def test_an_unknown_uid_must_say_what_a_new_swatch_must(self, book: Logbook, tmp_path: Path) -> None:
        wanted = [(2, "yarn"), (2, "hook mm"), (2, "stitches as worked")]
        assert problems(book, tmp_path, {"uid": "u1", "tag": "A-1", "colour": "rust"}) == wanted


class TestYarnsAndPatterns:
    def test_known_by_name_and_kept_once(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **FULL}, {"tag": "A-2", **FULL})
        take_in(book, tmp_path, {"tag": "A-3", **LEAST})
        with book.reading() as connection:
            (yarn,) = yarns(connection).values()
        assert (yarn.name, yarn.fibre, yarn.ball_grams) == ("Harbour", "wool", 50.0)
        assert {swatch.yarn for swatch in all_of(book).values()} == {yarn}

    def test_blanks_of_the_logbook_are_filled(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **LEAST})
        take_in(book, tmp_path, {"tag": "A-2", **FULL})
        yarn = all_of(book)["A-1"].yarn
        assert yarn is not None
        assert yarn.ball_grams == 50.0

    @pytest.mark.parametrize(
        ("said", "column"),
        [
            ({"ball grams": "100"}, "ball grams"),
            ({"fibre": "cotton"}, "fibre"),
            ({"multiple": "5"}, "multiple"),
            ({"plus": "0"}, "plus"),
        ],
    )
    def test_what_contradicts_the_logbook_is_a_problem(
        self, book: Logbook, tmp_path: Path, said: dict[str, str], column: str
    ) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **FULL})
        before = held(book)
        assert problems(book, tmp_path, {"tag": "A-2", **FULL, **said}) == [(2, column)]
        assert held(book) == before

    def test_chains_that_do_not_agree_with_the_logbooks(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **FULL})
        clash = {
            "tag": "A-2",
            **LEAST,
            "stitch pattern": "shell stitch",
            "first stitch in chain": "4",
            "skipped chains cover": "0",
        }
        assert problems(book, tmp_path, clash) == [(2, "extra chains")]


class TestTags:
    def test_one_that_another_swatch_has_is_a_problem(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **LEAST}, {"uid": "u2", "tag": "A-2", **LEAST})
        assert problems(book, tmp_path, {"tag": "A-1", **LEAST}) == [(2, "tag")]
        assert problems(book, tmp_path, {"uid": "u1", "tag": "A-2"}) == [(2, "tag")]
        assert problems(None, tmp_path, {"tag": "A-1", **LEAST}) == []

    def test_rows_without_one_are_offered_free_ones(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "S-01", **LEAST})
        take_in(book, tmp_path, LEAST, {"tag": "S-02", **LEAST}, LEAST)
        assert sorted(all_of(book)) == ["S-01", "S-02", "S-03", "S-04"]


class TestOneStep:
    def test_undone_and_done_again_in_one(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **FULL})
        before = held(book)
        new = {"uid": "u3", "tag": "B-1", **LEAST, "yarn": "Scree"}
        assert take_in(book, tmp_path, {"uid": "u1", "tag": "A-9", **LEAST, "colour": "rust"}, new) == (1, 1)
        after = held(book)
        assert undo(book).label == "import sheet.csv"
        assert held(book) == before
        redo(book)
        assert held(book) == after

    def test_cancelled_midway_nothing_stays(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **LEAST})
        before = held(book)
        plan = plan_import(book, write_sheet(tmp_path / "sheet.csv", *({"tag": f"B-{n}", **FULL} for n in range(5))))

        class Cancelled(Exception):
            pass

        seen = []

        def progress(done: int, total: int) -> None:
            seen.append((done, total))
            if done == 3:
                raise Cancelled

        with pytest.raises(Cancelled):
            carry_out(book, plan, progress=progress)
        assert seen == [(0, 5), (1, 5), (2, 5), (3, 5)]
        assert held(book) == before
        assert carry_out(book, plan).added == 5

    def test_a_backup_is_made_before_each(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **LEAST})
        take_in(book, tmp_path, {"tag": "A-2", **LEAST})
        assert [one.swatches for one in backups_of(book)] == [1, 0]
        take_in(book, tmp_path, {"tag": "A-3", **LEAST})
        assert [one.swatches for one in backups_of(book)] == [2, 1, 0]

    def test_a_sheet_that_says_nothing_new_makes_none(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **LEAST})
        kept = len(backups_of(book))
        assert take_in(book, tmp_path, {"uid": "u1", "tag": "A-1"}) == (0, 0)
        assert len(backups_of(book)) == kept

    def test_a_new_logbook_that_fails_is_not_left(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        def fail(*_: Any) -> None:
            raise RefusedError("The disk is full.")

        monkeypatch.setattr("logbook.book.swatches.put_new_swatch", fail)
        with pytest.raises(RefusedError, match="disk is full"):
            import_into_new(tmp_path / "new.logbook", write_sheet(tmp_path / "sheet.csv", {"tag": "A-1", **LEAST}))
        assert [path.name for path in tmp_path.iterdir() if path.is_file()] == ["sheet.csv"]


class TestProblems:
    def test_refused_unless_the_good_rows_alone_are_wanted(self, book: Logbook, tmp_path: Path) -> None:
        sheet = write_sheet(tmp_path / "sheet.csv", {"tag": "A-1", **LEAST}, {"tag": "A-2"})
        plan = plan_import(book, sheet)
        with pytest.raises(RefusedError, match=r"sheet\.csv has problems \(3\)"):
            carry_out(book, plan)
        assert import_into(book, sheet) == (plan, None)
        assert all_of(book) == {}
        assert carry_out(book, plan, good_rows_only=True).added == 1
        assert list(all_of(book)) == ["A-1"]

    def test_in_the_order_of_rows_whoever_found_them(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"tag": "A-1", **LEAST})
        rows = ({"tag": "A-1", **LEAST}, {"tag": "B-1", **LEAST, "hook mm": "thin"}, {"tag": "A-1 ", **LEAST, "colour": "x"})
        assert [row for row, _ in problems(book, tmp_path, *rows)] == [2, 3, 4]

    def test_a_logbook_changed_since_the_plan_is_looked_at_again(self, book: Logbook, tmp_path: Path) -> None:
        take_in(book, tmp_path, {"uid": "u1", "tag": "A-1", **FULL})
        plan = plan_import(book, write_sheet(tmp_path / "edit.csv", {"uid": "u1", "notes": "soft"}))
        take_in(book, tmp_path, {"uid": "u1", "colour": "rust"})
        before = held(book)
        with pytest.raises(RefusedError, match=r"changed while edit\.csv was looked at"):
            carry_out(book, plan)
        assert held(book) == before

    def test_the_open_logbook_is_no_sheet(self, book: Logbook) -> None:
        with pytest.raises(RefusedError, match="is the logbook that is open"):
            plan_import(book, book.path)


WORDS = st.text(st.sampled_from("ab é'=\n"), min_size=1, max_size=4).filter(lambda text: text.strip() == text)
ROWS = st.lists(
    st.fixed_dictionaries({"tag": st.sampled_from(["", "S-01", "S-02", "A-1", "A-2"]), "colour": WORDS, "notes": WORDS}),
    max_size=5,
)


@settings(max_examples=12)
@given(ROWS)
def test_a_plan_without_problems_can_be_carried_out_and_says_nothing_more_after(
    tmp_path_factory: pytest.TempPathFactory, rows: list[dict[str, str]]
) -> None:
    folder = tmp_path_factory.mktemp("any")
    sheet = write_sheet(folder / "sheet.csv", {"tag": "A-0", **LEAST}, *({**LEAST, **row} for row in rows))
    with new_book(folder / "any.logbook", keep_backups=False) as book:
        plan = plan_import(book, sheet)
        tags = [row["tag"] for row in rows if row["tag"]]
        assert bool(plan.problems) == (len(set(tags)) < len(tags))
        carry_out(book, plan, good_rows_only=True)
        assert len(all_of(book)) == len(plan.added)
        export(book, folder / "out.csv")
        again = plan_import(book, folder / "out.csv")
        assert (again.added, again.changed, again.problems) == ((), (), ())


def test_a_new_logbook_has_its_name_only_when_all_is_in_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Killed before, there is nothing of that name, and the same command can be given again."""
    sheet = write_sheet(tmp_path / "sheet.csv", {"tag": "A-1", **LEAST}, {"tag": "A-2", **LEAST})
    there: list[bool] = []
    real = stored.put_new_swatch

    def watched(*args: Any) -> None:
        there.append((tmp_path / "new.logbook").exists())
        real(*args)

    monkeypatch.setattr(stored, "put_new_swatch", watched)
    import_into_new(tmp_path / "new.logbook", sheet)
    assert there == [False, False]
    with open_book(tmp_path / "new.logbook") as book:
        assert sorted(one.tag for one in swatches(book.connection)) == ["A-1", "A-2"]
        assert undo(book).label == "import sheet.csv"
        assert swatches(book.connection) == []


class StoppedError(Exception):
    pass


@pytest.mark.parametrize("at", ["rows of the file", "rows looked at", "rows compared"])
def test_reading_tells_how_far_it_is_and_can_be_stopped(book: Logbook, tmp_path: Path, at: str) -> None:
    sheet = write_sheet(tmp_path / "many.csv", *({**LEAST, "tag": f"M-{number}"} for number in range(250)))
    told: list[tuple[int, int]] = []

    def stop(done: int, total: int) -> None:
        told.append((done, total))
        if at == "rows of the file" or (total and at == "rows looked at") or told.count((0, 250)) == 2:
            raise StoppedError

    with pytest.raises(StoppedError):
        plan_import(book, sheet, progress=stop)
    assert (told[-1][1] == 0) is (at == "rows of the file")
    assert all_of(book) == {}


def test_progress_is_heard_of_a_workbook_too(tmp_path: Path) -> None:
    source = tmp_path / "from.logbook"
    import_into_new(source, sample.folder() / sample.SWATCHES)
    with open_book(source) as book:
        export(book, tmp_path / "log.xlsx")
    told: list[tuple[int, int]] = []
    plan = plan_import(None, tmp_path / "log.xlsx", progress=lambda done, total: told.append((done, total)))
    assert (0, 0) in told
    assert told[-1] == (len(plan.added), len(plan.added))
