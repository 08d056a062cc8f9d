"""The history of a garment in words."""

from dataclasses import replace
from pathlib import Path

from logbook.craft.garments.plan import Garment
from logbook.craft.garments.templates import template
from logbook.tasks.garment_publishing import publish
from logbook.tasks.garments import garments, save_garment, work_out
from logbook.tasks.undoing import history, undo
from tests.support.garments import garment_book


def test_each_field_of_a_plan_has_its_line(tmp_path: Path) -> None:
    with garment_book(tmp_path / "a.logbook") as book:
        plan = replace(template("cardigan", "H1"), name="Quay")
        uid = save_garment(book, Garment(plan=plan))
        back = replace(plan.pieces[0], swatch="H2", measures={**plan.pieces[0].measures, "length": "60 cm"})
        save_garment(book, Garment(uid=uid, plan=replace(plan, pieces=(back, *plan.pieces[1:]), joins=plan.joins[:1])))
        newest = {(line.field, line.before, line.after) for line in history(book, uid) if line.action == "change Quay"}
        assert {("back: length", "58 cm", "60 cm"), ("back: swatch", "H1", "H2")} <= newest
        assert any(field == "joins" and after == "shoulder of front – shoulder of back" for field, _, after in newest)
        publish(book, garments(book)[0], work_out(plan, book), "2026-03-01")
        assert ("published", "", "1 Mar 2026") in {(line.field, line.before, line.after) for line in history(book, uid)}
        undo(book)
        assert garments(book)[0].published is None
        undo(book)
        assert garments(book)[0].plan == plan
