"""What a stitch pattern means."""

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.pages.patterns.meaning import ChainLine, meaning_of

SHELLS = StitchPattern(multiple=6, plus=1, first_stitch=2, skip_cover=0, set_up_rows=1, rows_in_repeat=2, closing_rows=1)


def test_chains_for_one_to_twelve_repeats() -> None:
    meaning = meaning_of(SHELLS, {})
    assert meaning.chain_rule == "Chain a multiple of 6 plus 2"
    assert meaning.chains[0] == ChainLine("1", 7, 8, 6)
    assert meaning.chains[-1] == ChainLine("12", 73, 74, 72)
    assert len(meaning.chains) == 12
    assert "chain 1 more" in " ".join(meaning.chain_notes)


def test_half_repeats_stand_between_and_have_no_ring() -> None:
    lines = meaning_of(StitchPattern(multiple=6, plus=1, extra_chains=1, half_plus=2), {}).chains
    assert lines[:3] == (ChainLine("1", 7, 8, 6), ChainLine("1½", 11, 12, None), ChainLine("2", 13, 14, 12))
    assert lines[-1].repeats == "12"


def test_rows() -> None:
    meaning = meaning_of(SHELLS, {})
    assert meaning.row_rule == "A multiple of 2 rows plus 2"
    assert meaning.row_notes[0] == "1 set-up row, then 2 rows repeated, then 1 closing row."
    assert meaning.row_notes[1] == "After 1 to 12 repeats: 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26 rows."


def test_plain_stitches_and_single_rows_are_said_without_a_multiple_of_1() -> None:
    plain = meaning_of(StitchPattern(multiple=1, plus=0, extra_chains=2, set_up_rows=1, rows_in_repeat=1), {})
    assert plain.chain_rule == "Chain 2 more than the stitches you want"
    assert plain.row_rule == "Any number of rows, 2 or more"
    bare = meaning_of(StitchPattern(multiple=1, extra_chains=0, rows_in_repeat=1), {})
    assert bare.chain_rule == "Chain as many as the stitches you want"
    assert bare.row_rule == "Any number of rows"


def test_nothing_stale_is_shown_while_something_is_missing_or_wrong() -> None:
    empty = meaning_of(StitchPattern(), {})
    assert (empty.chain_rule, empty.chains, empty.row_rule) == ("—", (), "—")
    assert "multiple" in empty.chain_notes[0]
    wrong = meaning_of(SHELLS, {"plus": "not a number", "closing_rows": "not a number"})
    assert (wrong.chain_rule, wrong.chains, wrong.row_rule) == ("—", (), "—")
    assert meaning_of(SHELLS, {"name": "taken"}).chain_rule != "—"


def test_what_is_taken_for_granted_is_said() -> None:
    assert "No extra chains are given" in " ".join(meaning_of(StitchPattern(multiple=6, plus=1), {}).chain_notes)
    assert "No plus is given" in " ".join(meaning_of(StitchPattern(multiple=6, extra_chains=1), {}).chain_notes)
    assert meaning_of(StitchPattern(multiple=6, plus=1, first_stitch=4), {}).chain_notes[0].startswith("Type what the chains")
