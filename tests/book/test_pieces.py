"""Planned and made pieces in the file."""

import json
from collections.abc import Iterator
from dataclasses import fields, replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.book.logbook import Logbook
from logbook.book.pieces import (
    made_pieces,
    matching_pieces,
    planned_pieces,
    put_made_piece,
    put_piece,
    remove_made_piece,
    remove_piece,
)
from logbook.book.plan_text import KEPT, plan_of, plan_text
from logbook.book.swatches import remove_swatch, swatch_of_tag
from logbook.book.thorough_check import check_records
from logbook.book.trouble import DamagedError, NewerError, as_damage
from logbook.book.undo import redo, undo
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError
from tests.support.books import held, small_book

PLAN = PiecePlan(
    name="Chorus vest",
    body_mm=940.0,
    ease=Ease(mm=-20.0, share=0.01),
    seam="mattress stitch",
    edge_stitches=None,
    row_parity=Parity.EVEN,
    length_choose=Choose.AT_LEAST,
    row_shares=(1.0, 1.5),
    head_mm=None,
)
SIZES = (
    SizePlan(name="S", body_mm=835.0, ease=Ease(share=-0.05), neck_mm=250.0),
    SizePlan(name="M", body_mm=940.0, hip_mm=990.0),
)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 2) as made:
        yield made


def swatch_uid(book: Logbook, tag: str) -> str:
    return swatch_of_tag(book.connection, tag).uid


def planned(book: Logbook, **values: object) -> PlannedPiece:
    """A piece of S-01, edged as S-02."""
    own = {
        "plan": PLAN,
        "swatch": swatch_uid(book, "S-01"),
        "edge_swatch": swatch_uid(book, "S-02"),
        "condition": Condition.PINNED,
        "notes": "two of them",
        "sizes": SIZES,
    }
    return PlannedPiece(**(own | values))  # type: ignore[arg-type]


def saved(book: Logbook, piece: PlannedPiece) -> PlannedPiece:
    with book.writing("save") as writing:
        uid = put_piece(writing, piece)
    return planned_pieces(book.connection)[uid]


def test_a_piece_comes_back_as_it_was_saved(book: Logbook) -> None:
    piece = planned(book)
    kept = saved(book, piece)
    assert replace(kept, uid="", sizes=tuple(replace(size, uid="") for size in kept.sizes)) == piece
    again = replace(kept, plan=replace(kept.plan, name="Vest"), edge_swatch="", sizes=kept.sizes[:1], published='{"run": []}')
    assert saved(book, again) == again
    assert check_records(book.connection) == 2


def test_undo_takes_a_piece_with_its_sizes_back_and_redo_brings_it_again(book: Logbook) -> None:
    before = held(book)
    saved(book, planned(book))
    after = held(book)
    undo(book)
    assert held(book) == before
    redo(book)
    assert held(book) == after


def test_a_swatch_that_a_piece_needs_stays(book: Logbook) -> None:
    piece = saved(book, planned(book))
    for tag in ("S-01", "S-02"):
        with pytest.raises(RefusedError, match=r"Pieces are worked out from it \(Chorus vest\)"), book.writing("x") as writing:
            remove_swatch(writing, swatch_uid(book, tag))
    with book.writing("let go") as writing:
        remove_piece(writing, piece.uid)
        remove_swatch(writing, swatch_uid(book, "S-01"))
    assert planned_pieces(book.connection) == {}


def test_what_can_not_be_kept_is_refused(book: Logbook) -> None:
    saved(book, planned(book))
    for piece, says in (
        (planned(book), "another piece called “Chorus vest”"),
        (planned(book, plan=replace(PLAN, name=" ")), "needs a name"),
        (planned(book, plan=replace(PLAN, name="b"), swatch=""), "needs a swatch"),
        (planned(book, plan=replace(PLAN, name="b"), swatch="gone"), "swatch it comes from is not in the logbook any more"),
        (planned(book, plan=replace(PLAN, name="b"), edge_swatch="gone"), "not in the logbook any more"),
        (planned(book, plan=replace(PLAN, name="b", width_mm=float("inf"))), "must be finite"),
    ):
        before = held(book)
        with pytest.raises(RefusedError, match=says):
            saved(book, piece)
        assert held(book) == before


def test_a_made_piece_comes_back_and_holds_its_plan(book: Logbook) -> None:
    piece = saved(book, planned(book))
    made = MadePiece(
        name="Nora's vest", piece=piece.uid, swatch=piece.swatch, size="M", date="2026-03-01", chain=74, rows=62, hook_mm=4.5,
        predicted_width_mm=518.0, worked_width_mm=530.0, washed_width_mm=521.0, fits="well", notes="longer next time",
    )  # fmt: skip
    with book.writing("made") as writing:
        uid = put_made_piece(writing, made)
        put_made_piece(writing, MadePiece(name="Bag", date="2026-04-01"))
    assert list(made_pieces(book.connection).values())[1] == replace(made, uid=uid)
    with pytest.raises(RefusedError, match=r"has been made \(Nora's vest\)"), book.writing("x") as writing:
        remove_piece(writing, piece.uid)
    with book.writing("unmade") as writing:
        remove_made_piece(writing, uid)
        remove_piece(writing, piece.uid)
    assert [one.name for one in made_pieces(book.connection).values()] == ["Bag"]
    for bad in (MadePiece(), MadePiece(name="x", piece="gone"), MadePiece(name="x", swatch="gone")):
        with pytest.raises(RefusedError), book.writing("x") as writing:
            put_made_piece(writing, bad)


def test_finding_looks_at_names_sizes_notes_and_the_swatch(book: Logbook) -> None:
    piece = saved(book, planned(book))
    with book.writing("made") as writing:
        made = put_made_piece(writing, MadePiece(name="Nora's vest", piece=piece.uid, fits="snug", swatch=piece.swatch))
    for words, found in (
        ("", [piece.uid, made]),
        ("VEST", [piece.uid, made]),
        ("chorus two", [piece.uid]),
        ("etang", [piece.uid, made]),
        ("snug", [made]),
        ("s-01 nora", [made]),
        ("hat", []),
    ):
        assert matching_pieces(book.connection, words) == found, words


numbers = st.floats(0.001, 1e5)
plans = st.builds(
    PiecePlan,
    name=st.just("x"),
    width_mm=st.none() | numbers,
    ease=st.builds(Ease, numbers, numbers),
    panels=st.integers(1, 9),
    sideways=st.booleans(),
    edge_stitches=st.none() | st.integers(0, 9),
    stitch_parity=st.sampled_from(Parity),
    width_choose=st.sampled_from(Choose),
    row_shares=st.lists(numbers, max_size=3).map(tuple),
    seam=st.text(max_size=5),
)


@given(plans)
def test_every_plan_reads_back_equal(plan: PiecePlan) -> None:
    assert plan_of("x", plan_text(plan)) == plan


def test_all_of_a_plan_but_its_name_is_kept() -> None:
    assert set(KEPT.values()) == {field.name for field in fields(PiecePlan)} - {"name"}


def test_a_plan_older_than_a_measure_has_it_as_a_new_plan_does() -> None:
    kept = json.loads(plan_text(PLAN))
    del kept["slit_mm"]
    assert plan_of("Chorus vest", json.dumps(kept)) == PLAN


@pytest.mark.parametrize(
    "text", ["", "[]", '{"width": 3}', '{"width_mm": "3"}', '{"width_mm": NaN}', '{"panels": true}', '{"ease": 3}', '{"seam": 1}']
)
def test_a_damaged_plan_is_said_to_be_damaged(text: str) -> None:
    with pytest.raises(DamagedError, match="The plan of “x”"):
        plan_of("x", text)


def test_a_wish_of_a_newer_version_is_said_to_be_one() -> None:
    """What only is misspelt is damage."""
    kept = json.loads(plan_text(PLAN))
    with pytest.raises(NewerError, match=r"made by a newer version of this program \(it says “waist_mm”\)"):
        plan_of("x", json.dumps(kept | {"waist_mm": 700.0}))
    del kept["hip_mm"]
    with pytest.raises(DamagedError, match="it says “hap_mm”"):
        plan_of("x", json.dumps(kept | {"hap_mm": 700.0}))


def test_a_slip_of_this_program_is_not_called_damage() -> None:
    for slip in (TypeError("a slip"), KeyError("a slip")):
        with pytest.raises(type(slip)), as_damage("A reading"):
            raise slip
