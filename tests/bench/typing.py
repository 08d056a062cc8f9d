"""What follows a keystroke, in ms of processor time: ``python -m tests.bench.typing``. Printed, never asserted.

Ten written rows proven anew, a row of sixty phrases, and thirty sizes of a piece worked out with what would part them, a
garment of seven pieces in one of its nine sizes; the median of twenty tries each.
"""

import itertools
import os
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from logbook.craft.rows.proof import prove
from logbook.pages.garments.garment_card import GarmentMaker
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.pieces.piece_card import PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.pieces.run_card import RunMaker
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.sampling import new_sample
from tests.support.sample_sheets import written_rows

TRIES = 20


def main() -> None:
    """Prints all."""
    first, *repeated = written_rows()["shell stitch"].splitlines()
    rows = "\n".join(line.split(":", 1)[-1].strip() for line in (first, *(repeated[:2] * 5))[:10])
    print(f"ten written rows    {median(lambda: prove(rows, suggest=False)):6.1f} ms")
    first_row = "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, "
    phrases = ", ".join(f"{'dc' if number % 2 else 'sc'} in next {number % 5 + 1} sts" for number in range(60))
    for name, row in (("fixed", phrases), ("repeated", f"*{phrases}; rep from * to last 3 sts, sc in last 3 sts")):
        print(f"60 phrases, {name:8} {median(lambda row=row: prove(first_row + row, suggest=False)):5.1f} ms")
    with tempfile.TemporaryDirectory() as folder:
        os.environ["LOGBOOK_HOME"] = folder
        with new_sample(Path(folder)) as book:
            session = Session(book, Settings())
            form = PieceForm(session)
            form.show(next(one.uid for one in planned_pieces(book) if one.name == "Usher's vest"))
            maker = RunMaker(session, PieceMaker(session))
            widths = itertools.count()

            def type_sizes() -> None:
                ease = next(widths)  # another each time, or nothing would be worked out anew
                form.type_in("sizes", "\n".join(f"{number};{700 + 25 * number + ease} mm" for number in range(30)))
                shown = maker.card(form.read(), form.sizes(), form.swatch_uid(), "", None)
                assert len(shown.rows) == 30, shown

            print(f"thirty sizes        {median(type_sizes):6.1f} ms")
            print(f"a garment           {median(typed_garment(session)):6.1f} ms")


def typed_garment(session: Session) -> Callable[[], object]:
    """Types another length of the back of a cardigan of seven pieces, of which one of nine sizes is shown."""
    form, maker = GarmentForm(session), GarmentMaker(session)
    form.begin("cardigan", "WM-01")
    for number in (5, 6, 7):
        form.add_piece()
        form.type_in(f"piece {number}: width", "(bust + ease) / 2")
        form.type_in(f"piece {number}: length", "length of back")
    form.piece = 1
    lengths = itertools.count(500)

    def type_length() -> None:
        form.type_in("piece 1: length", f"{next(lengths)} mm")
        card = maker.card(form, "M")
        assert card.garment is not None
        assert len(card.garment.pieces) == 7

    return type_length


def median(action: Callable[[], object]) -> float:
    """Processor time of ``action`` in ms."""
    times = []
    for _ in range(TRIES):
        begun = time.process_time()
        action()
        times.append(time.process_time() - begun)
    return statistics.median(times) * 1000


if __name__ == "__main__":
    main()
