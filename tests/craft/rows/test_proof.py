"""What the rows of a text say of themselves, from one end to the other."""

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Linear
from logbook.craft.words.terms import Terms

SHELLS = (
    "sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end / "
    "ch 3 (counts as dc), 2 dc in same st, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last 6 sts, sk 2 dc, "
    "sc in next dc, sk 2 dc, 3 dc in last sc / "
    "ch 1, sc in first st, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to end"
)


def test_shells_have_multiple_6_and_chain_constant_2() -> None:
    proof = prove(SHELLS)
    assert (proof.multiple, proof.chain_constant, proof.plus, proof.extra_chains, proof.smallest) == (6, 2, 1, 1, 8)
    assert [(row.row, row.stitches, row.spaces) for row in proof.rows] == [(n, Linear(6, 1), Linear(0, 0)) for n in (1, 2, 3)]
    assert proof.leads_back_to == 2
    assert proof.problems == ()


def test_mesh_has_multiple_2_and_chain_constant_0_and_needs_6_chains() -> None:
    proof = prove("dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end")
    assert (proof.multiple, proof.chain_constant, proof.smallest) == (2, 0, 6)
    assert (proof.extra_chains, proof.skip_cover, proof.plus) == (3, 2, 1)
    assert (proof.rows[0].stitches.at(3), proof.rows[0].spaces.at(3)) == (2, 1)


@pytest.mark.parametrize(
    "stated",
    [
        "Multiple of 6 plus 1, add 1 for the base chain.",
        "Multiple of 12 + 1",
        "Multiple of 6 plus 2",  # of chains, as nothing says that it is of stitches
        "Ch a multiple of 6 plus 2.",
        "Foundation chain: multiple of 6 plus 2",
    ],
)
def test_a_stated_multiple_that_the_rows_have_too(stated: str) -> None:
    assert prove(stated + "\n" + SHELLS.replace(" / ", "\n")).proven


@pytest.mark.parametrize("stated", ["Multiple of 6 sts plus 2", "Multiple of 8 plus 1", "Ch a multiple of 6 plus 3"])
def test_a_stated_multiple_that_the_rows_contradict(stated: str) -> None:
    problems = prove(stated + "\n" + SHELLS.replace(" / ", "\n")).problems
    says = f"The text says “{stated}”; its rows need a multiple of 6 plus 1, in chains a multiple of 6 plus 2."
    assert [problem.says for problem in problems] == [says]


@pytest.mark.parametrize(
    ("group", "which", "row", "mended"),
    [
        ("5 dc", 0, 2, "Row 1: “5 dc in next ch” instead of “4 dc in next ch” would fix it."),
        ("2 dc in", 0, 3, "Row 2: “2 dc in same st” instead of “1 dc in same st” would fix it."),
        ("5 dc", 1, 3, "Row 2: “5 dc in next sc” instead of “4 dc in next sc” would fix it."),
        ("3 dc", 0, 3, "Row 2: “3 dc in last sc” instead of “2 dc in last sc” would fix it."),
        ("5 dc", 2, 3, "Row 3: “5 dc in next sc” instead of “4 dc in next sc” would fix it."),
    ],
)
def test_one_dc_less_in_any_group_names_the_row_that_fails_and_what_would_mend_it(
    group: str, which: int, row: int, mended: str
) -> None:
    parts = SHELLS.split(group)
    less = f"{int(group[0]) - 1}{group[1:]}"
    spoilt = group.join(parts[: which + 1]) + less + group.join(parts[which + 1 :])
    proof = prove(spoilt)
    assert [(problem.row, problem.suggestion) for problem in proof.problems] == [(row, mended)]
    problem = proof.problems[0]
    assert spoilt[problem.span.start : problem.span.end].strip()
    assert not proof.proven


def test_without_a_wish_for_suggestions_none_are_looked_for() -> None:
    assert prove(SHELLS.replace("5 dc", "4 dc", 1), suggest=False).problems[0].suggestion == ""


def test_a_row_with_stitches_over_at_every_width_says_how_many() -> None:
    proof = prove("sc in 2nd ch from hook and in each ch across\nch 1, sc in each st to last 2 sts, turn")
    assert [problem.says for problem in proof.problems] == ["Row 2 ends with 2 stitches over at every width."]


def test_a_row_that_fits_only_now_and_then_is_trouble_with_the_multiple_it_would_need() -> None:
    proof = prove(
        "sc in 2nd ch from hook, *sk 2 ch, 3 dc in next ch, sk 2 ch, sc in next ch; rep from * to end\n"
        "ch 1, sc in first st, *sk 1 st, 3 dc in next st, sk 1 st, sc in next 3 sts; rep from * to end"
    )
    assert [problem.row for problem in proof.problems] == [2]
    assert "only at every 3rd repeat" in proof.problems[0].says
    assert "multiple of 18" in proof.problems[0].says


def test_row_1_may_be_plain_and_row_2_set_the_multiple() -> None:
    proof = prove(
        "Row 1: dc in 4th ch from hook and in each ch across\n"
        "Row 2: ch 1, sc in first st, *ch 3, sk 3 sts, sc in next st; rep from * to end"
    )
    assert (proof.multiple, proof.chain_constant, proof.smallest, proof.plus) == (4, 3, 7, 1)
    assert [str(row.stitches) for row in proof.rows] == ["4k + 1", "k + 1"]


def test_shaped_rows_that_never_lead_back_are_a_statement() -> None:
    proof = prove("sc in 2nd ch from hook and in each ch across\nch 1, sc2tog, sc in each st to last 2 sts, sc2tog")
    assert proof.problems == ()
    assert proof.leads_back_to is None
    assert any("shaped" in statement for statement in proof.statements)


def test_an_edging_whose_last_row_takes_no_further_row_is_a_statement() -> None:
    proof = prove(
        "sc in 2nd ch from hook and in each ch across\n"
        "ch 1, sc in first sc, *sk 2 sc, 5 dc in next sc, sk 2 sc, sc in next sc; rep from * to end"
    )
    assert proof.proven
    assert proof.statements == ("Row 2 does not lead back to an earlier row.",)


def test_repeated_rows_that_do_not_lead_back_are_trouble() -> None:
    proof = prove(
        "Row 1: sc in 2nd ch from hook and in each ch across\n"
        "Row 2: ch 1, sc in first sc, *ch 1, sk 1 sc, sc in next sc; rep from * to end\n"
        "Row 3: ch 1, *sc in next sc, sc in next ch-1 sp; rep from * to last sc, sc in last sc\n"
        "Rep Rows 2 and 2."
    )
    assert [problem.row for problem in proof.problems] == [2]
    assert "does not lead back" in proof.problems[0].says


def test_closing_rows_may_follow_the_repeat() -> None:
    proof = prove(
        "Row 1: sc in 2nd ch from hook and in each ch across\nRow 2: ch 1, sc in each st across\n"
        "Row 3: ch 1, *sc in next st, ch 3, sk 1 st; rep from * to last st, sc in last st\nRep Row 2."
    )
    assert proof.proven
    assert proof.leads_back_to == 2


def test_a_pattern_for_one_width_says_so() -> None:
    proof = prove("sc in 2nd ch from hook, sc in next 9 ch\nch 1, sc in next 10 sts")
    assert (proof.multiple, proof.chain_constant, proof.smallest) == (None, None, 11)
    assert "The rows fit at one width only, 11 chains." in proof.statements


@pytest.mark.parametrize(
    ("chain", "times", "stitches", "said"),
    [
        (14, "3 times", 9, False),  # 1 + 3 + 3·3 = 13 chains beside the one to turn: three more
        (11, "3 times", 7, True),  # 1 + 3·3 = 10: three in all
        (14, "3 more times", 9, False),
    ],
)
def test_repeat_n_times_is_n_more_and_n_in_all_where_only_that_fits(chain: int, times: str, stitches: int, said: bool) -> None:
    row = f"Ch {chain}.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next 2 ch; rep from * {times}, turn."
    proof = prove(row)
    assert (proof.proven, proof.smallest) == (True, chain)
    assert proof.rows[0].stitches == Linear(0, stitches)
    assert any("N times in all" in statement for statement in proof.statements) == said


def test_three_more_times_are_never_three_in_all() -> None:
    row = "Ch 11.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next 2 ch; rep from * 3 more times, turn."
    assert not prove(row).proven


def test_beside_one_that_is_three_in_all_what_is_bracketed_keeps_its_number() -> None:
    proof = prove(
        "Ch 15.\nRow 1: Sc in 2nd ch from hook, [sk 1 ch, sc in next ch] 2 times, *ch 1, sk 1 ch, sc in next 2 ch; rep from * 3 times."
    )
    assert proof.proven
    assert proof.rows[0].stitches == Linear(0, 1 + 2 + 6)


def test_where_chains_count_is_one_switch_of_the_pattern() -> None:
    rows = (
        "sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * to end\n"
        "ch 1, sc in first st, *ch 1, sk 1 st, sc in next st; rep from * to last 2 sts, ch 1, sk 1 st, sc in last st"
    )
    assert prove(rows, chains_count=True).proven
    assert prove("Each ch counts as a st.\n" + rows).proven
    unsaid = prove("Chains do not count as sts.\n" + rows)
    assert unsaid.rows[1].stitches != prove(rows, chains_count=True).rows[1].stitches


def test_if_only_counted_chains_fit_the_text_is_asked_to_say_so() -> None:
    rows = (
        "sc in 2nd ch from hook, *ch 1, sk 1 ch, dc in next ch, ch 1, sk 1 ch, sc in next ch; rep from * to end\n"
        "ch 1, sc in first st, *ch 1, sk 1 st, dc in next dc, ch 1, sk 1 st, sc in next sc; rep from * to end"
    )
    proof = prove(rows)
    assert not proof.proven
    assert "Each ch counts as a st." in proof.problems[0].suggestion
    assert prove("Each ch counts as a st.\n" + rows).proven


def test_what_is_passed_over_is_reported() -> None:
    proof = prove(
        "sc in 2nd ch from hook, *ch 3, sk 3 ch, sc in next ch; rep from * to end\n"
        "ch 1, sc in first sc, *3 dc in next ch-3 sp; rep from * to end, sc in last sc"
    )
    assert (proof.proven, proof.remarks) == (True, ())  # "next space" is said everywhere, and passes over stitches
    proof = prove(
        "sc in 2nd ch from hook, *ch 3, sk 3 ch, sc in next ch, ch 1, sk 1 ch, sc in next ch; rep from * to end\n"
        "ch 1, sc in first sc, *3 dc in next ch-3 sp; rep from * to end, sc in last sc"
    )
    assert [(remark.row, remark.says) for remark in proof.remarks] == [
        (2, "Row 2 passes over a space to reach “3 dc in next ch-3 sp”; nothing says to skip it.")
    ]


def test_the_terms_are_those_said_or_proven_or_else_US_which_is_said() -> None:
    assert prove("1 htr into 3rd ch from hook (does not count), 1 htr into each ch to end").terms is Terms.UK
    assert prove("sc in 2nd ch from hook and in each ch across").terms is Terms.US
    unsaid = prove("dc in 4th ch from hook, dc in each ch to end")
    assert unsaid.terms is Terms.US
    assert any("US terms" in statement for statement in unsaid.statements)
    assert prove("dc in 2nd ch from hook, dc in each ch to end", Terms.UK).statements == ()
    assert prove("UK terms\ndc in 2nd ch from hook, dc in each ch to end").terms is Terms.UK


def test_troubles_are_said_in_the_terms_of_the_text() -> None:
    proof = prove("UK terms / 1 dc into 2nd ch from hook, 1 dc into each ch to end / 1 ch, 1 dc into each tr to end")
    assert proof.problems[0].says == "Row 2: “1 dc into each tr to end” lands on a dc, not a tr."


def test_nothing_written_is_no_trouble_and_no_proof() -> None:
    proof = prove(" \n ")
    assert (proof.rows, proof.problems, proof.proven) == ((), (), False)


def test_rows_after_one_that_is_not_understood_are_not_laid() -> None:
    text = (
        "Row 1: sc in 2nd ch from hook and in each ch across\nRow 2: ch 1, sc in each st, frobnicate twice\n"
        "Row 3: ch 1, sc in each st across"
    )
    proof = prove(text)
    assert [row.row for row in proof.rows] == [1]
    assert [(problem.row, text[problem.span.start : problem.span.end]) for problem in proof.problems] == [(2, "frobnicate twice")]
