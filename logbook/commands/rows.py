"""``logbook rows``: whether written rows add up at every width, and on which starting chains."""

import argparse
from pathlib import Path
from typing import Any

from logbook.commands.answers import table
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with
from logbook.craft.rows.instructions import Span
from logbook.craft.rows.report import Linear, Proof, RowProblem
from logbook.craft.words.counting import counted
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError, UnreadableError, UsageError
from logbook.tasks.written_rows import prove_file, save_chart


def fill_rows(parser: Parser) -> None:
    """Its options."""
    add_common(parser, book=False)
    parser.add_argument("--file", type=Path, metavar="FILE", required=True, help="a text file with the rows of one pattern")
    parser.add_argument("--terms", type=reading_with(_terms), metavar="us|uk", help="the terms the rows are written in")
    parser.add_argument("--svg", type=Path, metavar="OUT", help="draw the rows as a chart of symbols to this file")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Proves the rows. Trouble is told, and then ends with exit code 1."""
    if arguments.book is not None:
        raise UsageError("rows takes no --book: it checks the rows in a file")
    text, proof = prove_file(arguments.file, arguments.terms)
    if arguments.json:
        print_json(_json(proof, text))
    else:
        print_text(_text(proof, text))
    if arguments.svg is not None and proof.rows:
        save_chart(arguments.file, arguments.terms, arguments.svg)
    if proof.problems:
        name = arguments.file.name
        raise RefusedError(f"The rows in “{name}” do not add up: {counted(len(proof.problems), 'problem')}.")
    return 0


def _terms(text: str) -> Terms:
    for terms in Terms:
        if text.casefold() == terms.value.casefold():
            return terms
    raise UnreadableError(f"“{text}” is neither us nor uk.")


def _json(proof: Proof, text: str) -> dict[str, Any]:
    found = {
        "multiple": proof.multiple,
        "chain_constant": proof.chain_constant,
        "smallest": proof.smallest,
        "rows": [
            {
                "row": row.row,
                "stitches_per_repeat": row.stitches.per_repeat,
                "stitches_constant": row.stitches.constant,
                "spaces_per_repeat": row.spaces.per_repeat,
                "spaces_constant": row.spaces.constant,
            }
            for row in proof.rows
        ],
        "leads_back_to": proof.leads_back_to,
        "problems": [_problem(problem) for problem in proof.problems],
        "remarks": [_problem(remark) for remark in proof.remarks] + [_remark(says) for says in proof.statements],
        "notes": [_quoted(text, note) for note in proof.notes],
        "beyond": [{"row": row.row, "stitches": row.stitches.constant, "spaces": row.spaces.constant} for row in proof.beyond],
    }
    return found | ({"sizes": [_json(size, text) for size in proof.sizes]} if proof.sizes else {})


def _problem(problem: RowProblem) -> dict[str, Any]:
    return {"row": problem.row, "says": _said(problem), "kind": problem.kind}


def _remark(says: str) -> dict[str, Any]:
    return {"row": None, "says": says, "kind": "remark"}


def _quoted(text: str, span: Span) -> str:
    return " ".join(text[span.start : span.end].split())


def _said(problem: RowProblem) -> str:
    return f"{problem.says} {problem.suggestion}".strip()


def _text(proof: Proof, text: str) -> str:
    lines = []
    for number, size in enumerate(proof.sizes, 1):
        lines += [f"Size {number} of {len(proof.sizes)}", *_figures(size), ""]
    lines += [] if proof.sizes else _figures(proof)
    said = [*proof.statements, *map(_said, proof.remarks), *map(_said, proof.problems)]
    notes = [f"Set aside as a note: {_quoted(text, note)}" for note in proof.notes]
    return "\n".join([*lines, *said, *notes])


def _figures(proof: Proof) -> list[str]:
    told = (*proof.rows, *proof.beyond)
    counts = [(row.name, proof.counted(row.stitches), proof.counted(row.spaces)) for row in told]
    rows = [(name, _count(stitches, "st", "sts"), _count(spaces, "space", "spaces")) for name, stitches, spaces in counts]
    lines = [table(("", "stitches", "spaces"), rows), ""] if rows else []
    lines += [_chains(proof)] if proof.smallest is not None else []
    if proof.leads_back_to is not None:
        lines.append(f"The last row leads back to row {proof.leads_back_to}.")
    return lines


def _chains(proof: Proof) -> str:
    m, c = proof.multiple, proof.chain_constant
    if m is None:
        return f"Chain {proof.smallest}."
    constant = f" plus {c}" if c else ""
    number = "any number" if m == 1 else f"a multiple of {m}{constant}"
    return f"Chain {number}, at least {proof.smallest}: {_base(proof, m)}; k counts {proof.k_counts}."


def _base(proof: Proof, m: int) -> str:
    extra = counted(proof.extra_chains or 0, "extra chain")
    if m == 1:
        return f"{extra}, all others are base stitches"
    plus = f" plus {proof.plus}" if proof.plus else ""
    return f"a multiple of {m}{plus} base stitches and {extra}"


def _count(count: Linear, one: str, more: str) -> str:
    return "" if str(count) == "0" else f"{count} {one if str(count) == '1' else more}"
