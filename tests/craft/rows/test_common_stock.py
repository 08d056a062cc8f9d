"""The common stock is proven with the figures that its writer worked out; its altered twins are caught in the row that fails."""

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof, RowCount
from tests.craft.rows.common_stock import COMMON_STOCK, Stock


def counted(row: RowCount) -> str:
    spaces = f"/{row.spaces}" if row.spaces.per_repeat or row.spaces.constant else ""
    return f"{row.stitches}{spaces}"


def figures(proof: Proof) -> tuple[object, ...]:
    return proof.multiple, proof.chain_constant, proof.smallest, proof.leads_back_to, ", ".join(map(counted, proof.rows))


@pytest.mark.parametrize("name", COMMON_STOCK)
def test_a_pattern_of_the_common_stock_is_proven(name: str) -> None:
    stock: Stock = COMMON_STOCK[name]
    proof = prove(stock.rows)
    assert proof.problems == ()
    assert proof.proven
    assert figures(proof) == (stock.multiple, stock.constant, stock.smallest, stock.back, stock.counts)


@pytest.mark.parametrize("name", COMMON_STOCK)
def test_its_altered_twin_is_caught_in_the_row_that_fails(name: str) -> None:
    stock: Stock = COMMON_STOCK[name]
    was, instead = stock.spoil
    assert was in stock.rows
    proof = prove(stock.rows.replace(was, instead, 1))
    assert not proof.proven
    assert proof.problems[0].row == stock.caught_in


def test_the_stock_is_as_wide_as_it_should_be() -> None:
    assert len(COMMON_STOCK) >= 30
    assert sum(name.startswith("UK") for name in COMMON_STOCK) >= 5
    assert sum("Rnd 1" in stock.rows for stock in COMMON_STOCK.values()) >= 5
