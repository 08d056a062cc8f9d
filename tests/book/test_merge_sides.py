"""What two logbooks that are brought together know of a record."""

import pytest

from logbook.book.merge_sides import Step, last_alike


@pytest.mark.parametrize(("edited", "deleted"), [("a", "b"), ("b", "a")])
def test_after_merging_both_ways_the_merged_state_is_the_last_alike_whatever_the_uids(edited: str, deleted: str) -> None:
    begun, edit, gone = Step("0", {"colour": ""}), Step(edited, {"colour": "x"}), Step(deleted, None)
    ours = [begun, edit, gone, Step("back", edit.after), Step("deleted since", None)]
    theirs = [begun, gone, edit]
    assert last_alike(ours, theirs) == last_alike(theirs, ours) == (True, edit.after)
