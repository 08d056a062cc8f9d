"""A garment's numbers as the cells of tables: its pieces, the rows of one piece, all sizes."""

from collections.abc import Sequence

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.plan import GarmentJoin
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.together import yarn_of_piece
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.numbers import grouped
from logbook.pages.garments.garment_card import NOT_YET, GarmentCard, GarmentMaker
from logbook.tasks.garment_words import GarmentProblem
from logbook.tasks.note_words import in_all_sizes
from logbook.tasks.written.making_up import misfit_words

NONE = "–"
PIECE_HEADINGS = ("Piece", "Chain", "Stitches", "Rows", "End width", "±", "Length", "Yarn")


def piece_rows(card: GarmentCard, units: Units) -> list[tuple[str, ...]]:
    """A row for each piece in the size shown."""
    garment, answer = card.garment, card.answer
    if garment is None or answer is None:
        return []
    rows = []
    for piece in garment.pieces:
        yarn = yarn_of_piece(piece, answer.cloths[piece.name], garment.joins)
        alike = f" × {piece.planned.alike}" if piece.planned.alike > 1 else ""
        rows.append((piece.name + alike, *_cells(piece, units), NONE if yarn is None else f"{yarn.grams:.0f} g"))
    return rows


def row_heading(card: GarmentCard) -> str:
    """What the rows of the piece chosen are called."""
    return "Round" if card.chosen is not None and card.chosen.in_round else "Row"


def row_rows(card: GarmentCard, units: Units) -> tuple[str, list[tuple[str, ...]]]:
    """What is shown, and every row of the piece chosen with its count; nothing while there are no numbers yet."""
    piece = card.chosen
    if piece is None:
        return "" if card.headline == NOT_YET else "Choose a piece in the list to see its rows here, each with its count.", []
    rows: list[tuple[str, ...]] = [
        ("chain" if piece.chain else "0", str(piece.foundation), "", show_length(piece.widths[0], units))
    ]
    before = piece.foundation
    for number, count in enumerate(piece.counts, 1):
        change = f"{count - before:+d}".replace("-", "−") if count != before else ""
        rows.append((str(number), str(count), change, show_length(piece.widths[number], units)))
        before = count
    return f"Every {row_heading(card).lower()} of the {piece.name}", rows


def size_rows(
    card: GarmentCard, maker: GarmentMaker, units: Units
) -> tuple[tuple[str, ...], list[tuple[str, ...]], Sequence[str]]:
    """Headings and a row for each size, of the piece chosen or of the whole; then what is wrong, said once with its sizes."""
    done = maker.in_sizes()
    sentences = [f"✕ {sentence}" for sentence in _told(done)]
    rows: list[tuple[str, ...]] = []
    if card.chosen is not None:
        for garment, _ in done:
            piece = next((one for one in garment.pieces if one.name == card.chosen.name), None)
            rows.append((garment.name, *(_cells(piece, units) if piece is not None else (NONE,) * 6)))
        return ("Size", *PIECE_HEADINGS[1:-1]), rows, sentences
    for garment, said in done:
        grams = sum(of.needed.grams for of in garment.yarn)
        balls = [of.needed.balls for of in garment.yarn]
        rows.append(
            (
                garment.name,
                f"{grouped(grams)} g" if garment.yarn else NONE,
                NONE if not balls or None in balls else str(sum(ball or 0 for ball in balls)),
                NONE if garment.hours is None else grouped(garment.hours),
                NONE if garment.cost is None else f"{grouped(garment.cost[0], 2)} {garment.cost[1]}".strip(),
                f"✕ {len(said)}" if said else "fits" if garment.joins else NONE,
            )
        )
    return ("Size", "Yarn", "Balls", "Hours", "Cost", "Joins"), rows, sentences


def _told(done: Sequence[tuple[GarmentInSize, Sequence[GarmentProblem]]]) -> tuple[str, ...]:
    """What is wrong, each with the sizes it is so in; a join that has other figures in each size is told without them."""
    of_join: dict[GarmentJoin, set[str]] = {}
    for problem in (problem for _, said in done for problem in said):
        if problem.join is not None:
            of_join.setdefault(problem.join, set()).add(problem.sentence)

    def words(garment: GarmentInSize, problem: GarmentProblem) -> str:
        if problem.join is None or len(of_join[problem.join]) == 1:
            return problem.sentence
        return f"{misfit_words(garment, problem.join)}; “Drawing” says by how much."

    return in_all_sizes([(garment.name, [words(garment, problem) for problem in said]) for garment, said in done])


def _cells(piece: ShapedPiece, units: Units) -> tuple[str, ...]:
    """Chain, stitches, rows, width, give or take, length."""
    first, last = piece.levels[0].stitches, piece.levels[-1]
    counts = str(last.stitches) if first in (last.stitches, 0) else f"{first} → {last.stitches}"
    sure = NONE if piece.give_or_take_mm is None else show_length(piece.give_or_take_mm, units)
    chain = NONE if piece.chain is None else str(piece.chain)
    length = show_length(piece.rows * piece.row_mm, units)
    return (chain, counts, str(piece.rows), show_length(last.width_mm, units), sure, length)
