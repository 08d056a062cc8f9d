"""Makes a logbook of the schema this very program writes, with all it holds beside it, to keep for every later version's tests.

python -m tests.support.released tests/book/released/N     (once for each released schema N, before the next step is written)
"""

import csv
import hashlib
import io
import json
import shutil
import sys
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.tables import RECORDS
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.sizes.body_chart import chart_text
from logbook.craft.sizes.tester import Tester
from logbook.craft.sizes.trade_charts import WOMEN
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Ease
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.body_charts import delete_chart, save_chart
from logbook.tasks.browsing import pattern_list, save_assumptions, swatch_in_hand
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.made_pieces import delete_made_piece, made_from, save_made_piece
from logbook.tasks.pieces import basis_of, delete_piece, made_pieces, planned_pieces, save_piece
from logbook.tasks.set_runs import set_run, unset_run
from logbook.tasks.size_runs import work_out_run
from logbook.tasks.stitch_patterns import save_pattern
from logbook.tasks.testers import save_testers
from logbook.tasks.undoing import redo, undo
from tests.support.books import taken

LINEN = Yarn(name="Strandgut linen", fibre="linen", yarn_class=2, ball_grams=50.0, ball_metres=160.5)
WOOL = Yarn(name="Ölandsull", fibre="wool", yarn_class=4)
FANS = StitchPattern(
    name="Fans", multiple=6, plus=1, first_stitch=2, skip_cover=0, set_up_rows=1, rows_in_repeat=2, closing_rows=0, terms="US"
)
PLAIN = StitchPattern(name="Single crochet", multiple=1, extra_chains=1, rows_in_repeat=1)

USED: dict[str, Any] = {
    "grams_used": 263.5, "minutes": 1215.0, "yarn_used": LINEN.name, "washed_readings": "4 repeats = 15.3 cm; 20 rows = 13.6 cm",
    "wear": "2026-09-01: 50 x 57.5 cm, 3 washes, softer", "pictures": f"{'0a' * 32}.png",
}  # fmt: skip


def swatch(tag: str, **values: Any) -> Swatch:
    """A swatch of the fans in linen, if nothing else is said."""
    readings = taken("4 repeats = 15.5 cm; 22 rows = 15 cm", Condition.WORKED)
    readings += taken("4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm; 20 rows = 13.5 cm")
    usual = {
        "tag": tag, "date": "2026-04-30", "yarn": LINEN, "pattern": FANS, "colour": "sand", "hook_mm": 3.5, "worked": "flat",
        "swatch_grams": 21.3, "swatch_stitches": 25.0, "swatch_rows": 24.0, "readings": readings,
    }  # fmt: skip
    return Swatch(**(usual | values))


def _swatches(book: Logbook) -> str:
    """Logged, edited, deleted, imported."""
    uid = save_swatch(book, swatch("LF-01", notes="first of the shelf; “quotes”, ½ and\na second line"))
    gone = save_swatch(book, swatch("LF-02", hook_mm=4.0, yarn=WOOL, pattern=PLAIN, readings=taken("18 sts = 11.5 cm")))
    one = swatch_in_hand(book, uid)
    assert one is not None
    more = taken("3 repeats = 12.4 cm; 20 rows = 13 cm", Condition.SIDEWAYS) + taken("22 rows = 15.6 cm", Condition.HUNG)
    save_swatch(book, replace(one, readings=one.readings + more, hung_grams=101.7, hung_clip_mm=75.0, way_of_washing="by hand"))
    fans = next(one for one in pattern_list(book) if one.name == FANS.name)
    save_pattern(book, replace(fans, half_plus=1, rows_text="Row 1: sc in 2nd ch from hook, sc in each ch across, turn."))
    delete_swatches(book, [gone])
    sheet = book.path.with_name("sheet.csv")
    rows = (
        ("tag", "yarn", "stitch pattern", "multiple", "extra chains", "hook mm", "stitches washed", "notes"),
        ("MC-01", WOOL.name, PLAIN.name, "1", "1", "5", "16 sts = 11.4 cm", "=1+1"),
        ("MC-02", WOOL.name, PLAIN.name, "1", "1", "5.5", "16 sts = 12.1 cm", "🧶"),
    )
    text = io.StringIO()
    csv.writer(text).writerows(rows)
    sheet.write_text(text.getvalue(), "utf-8")
    _, result = import_into(book, sheet)
    assert result is not None
    assert result.added == 2
    return uid


def _pieces(book: Logbook, uid: str) -> None:
    """Planned, set, made, and some of it taken back."""
    plan = PiecePlan(
        name="Ferry vest", body_mm=900.0, ease=Ease(50.0, 0.0), length_mm=560.0, seam_mm=5.0, armhole_mm=200.0, neck_mm=180.0,
        upper_arm_mm=280.0, row_shares=(1.0, 1.5),
    )  # fmt: skip
    sizes = (SizePlan(name="S", body_mm=860.0), SizePlan(name="M", body_mm=940.0, ease=Ease(60.0, 0.02), length_mm=570.0))
    save_piece(book, PlannedPiece(plan=plan, swatch=uid, edge_swatch=uid, notes="from the pier", sizes=sizes))
    save_piece(book, PlannedPiece(plan=PiecePlan(name="Scarf", width_mm=300.0, sideways=True, length_mm=1500.0), swatch=uid))
    vest = next(piece for piece in planned_pieces(book) if piece.name == "Ferry vest")
    basis = basis_of(book, vest.swatch)
    answer = work_out_run(basis, vest.plan, vest.sizes)
    vest = set_run(book, vest, answer, Terms.US)
    unset_run(book, vest)
    undo(book)
    begun = made_from(vest, answer.piece(answer.run.sizes[1]), "M", basis.swatch.hook_mm)
    save_made_piece(book, replace(begun, date="2026-06-14", washed_width_mm=498.0, washed_length_mm=571.0, fits="well", **USED))
    save_made_piece(book, MadePiece(name="Cushion", date="20260531", chain=74, washed_width_mm=465.25, notes="a date as typed"))
    cushion = next(one for one in made_pieces(book) if one.name == "Cushion")
    delete_made_piece(book, cushion)
    undo(book)
    save_testers(book, vest, [Tester(name="Ida", size="M", readings="20 sts = 12.7 cm", width_mm=505.0, said="“Lovely”")])
    delete_piece(book, next(piece for piece in planned_pieces(book) if piece.name == "Scarf"))
    undo(book)
    redo(book)


def _charts(book: Logbook, uid: str) -> None:
    """Charts and assumptions; the last two actions are left undone."""
    save_chart(book, "Ours", "\n".join(chart_text(WOMEN).splitlines()[:4]))
    save_chart(book, "Not kept", chart_text(WOMEN))
    delete_chart(book, "Not kept")
    save_assumptions(book, Assumptions(drift=0.031, most_edge_stitches=6))
    one = swatch_in_hand(book, uid)
    assert one is not None
    save_swatch(book, replace(one, colour="rust"))
    save_swatch(book, replace(one, colour="teal", readings=one.readings[1:]))
    undo(book)
    undo(book)


def rows_of(book: Logbook, columns: dict[str, Sequence[str]]) -> dict[str, list[list[Any]]]:
    """Every record as a row of those columns."""
    with book.reading() as connection:
        return {
            table: [list(row) for row in connection.execute(f"SELECT uid, {', '.join(names)} FROM {table} ORDER BY uid")]
            for table, names in columns.items()
        }


def digest_of(rows: dict[str, list[list[Any]]]) -> str:
    """A short sign of all the rows."""
    return hashlib.sha256(json.dumps(rows, ensure_ascii=False, sort_keys=True).encode()).hexdigest()[:16]


def turned_to_the_end(turn: Any, book: Logbook, columns: dict[str, Sequence[str]]) -> Iterator[str]:
    """Undoes or does again whatever there is; the sign of the state after each step."""
    try:
        while True:
            turn(book)
            yield digest_of(rows_of(book, columns))
    except RefusedError as error:
        if "nothing to" not in str(error):
            raise


@contextmanager
def _folder() -> Iterator[Path]:
    with tempfile.TemporaryDirectory() as name:
        yield Path(name)


def main(arguments: Sequence[str]) -> int:
    """Makes the logbook, its export, and the list of its states."""
    place = Path(arguments[0])
    place.mkdir(parents=True, exist_ok=True)
    with _folder() as folder:
        path = folder / "shelf.logbook"
        with new_logbook(path) as book:
            uid = _swatches(book)
            _pieces(book, uid)
            _charts(book, uid)
        shutil.copyfile(path, place / "shelf.logbook")
        with open_logbook(path) as book:
            export(book, place / "shelf.csv")
            columns = {table: list(names) for table, names in RECORDS.items()}
            now = rows_of(book, columns)
            held = {
                "columns": columns,
                "now": now,
                "redone": list(turned_to_the_end(redo, book, columns)),
                "undone": list(turned_to_the_end(undo, book, columns)),
            }
    text = json.dumps(held, ensure_ascii=False, indent=1)
    (place / "shelf.json").write_text(text + "\n", "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
