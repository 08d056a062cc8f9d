"""How far the finished width lies from what was reckoned, by the way the gauge was taken: ``python -m tests.bench.accuracy``.

The model, and what is assumed in it:

- *Fabric.* A repeat is 5 to 70 mm wide once washed (from one plain stitch to wide lace, even on a log scale). The pitch differs
  from place to place by σ, drawn anew for each swatch from what the program assumes before measuring (2 %, four degrees of
  freedom). Each reading is taken at a place of its own.
- *Tape and count.* The tape lies anyhow and both its ends are read to the nearest mm. A count begins at a stitch's edge, in
  10 cm, and is read to the nearest quarter; by the pocket rule to the nearest half. A span is about 15 cm of whole repeats,
  two at least.
- *Washing.* A yarn changes by a normal 4 % (so most yarns within 8 % either way); a swatch of it takes that washing with a
  deviation of its own, normal with a spread drawn around 1.5 % with four degrees of freedom, one spread a yarn. For borrowed
  washing three other swatches of the yarn were measured by three spans as worked and by three washed.
- *Drift.* The piece made afterwards has the swatch's true washed pitch times exp(d): d = 0 (off), normal with a deviation drawn
  around 2 % with four degrees of freedom (from its prior), or normal with 3 %.
- *Miss.* The width told for the chain nearest to 46 cm, against what that chain makes: |made/told − 1|. That a width falls
  between two repeats is known beforehand and no miss. Inside: the miss is within the stated give or take, with drift off that
  of the swatch alone, else that of a whole piece. The pocket rule states none.

- *Hands.* A hand makes pieces whose swatches are known exactly: ln(made/swatch) is its lean (0, 2, 5 or −5 %) plus a normal
  deviation of 2 % each. After 0, 2, 5 or 10 of them the next one is told, with what those taught and with the lean not
  counted in; the miss is |made/told − 1|, and inside if within a whole piece's part of the give or take.

The pocket rule counts once in 10 cm and multiplies; on the unwashed swatch, or on the washed one. Everything else is reckoned by
the program's own functions. With the same seed every run gives the same table.
"""

import argparse
import math
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from random import Random

from logbook.craft.gauges.drift import drift_of
from logbook.craft.gauges.washing import finished_gauge
from logbook.craft.pieces.options import Pitch
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from tests.support.simulation import count, from_prior, span, variation

TARGET_MM = 460.0
ASSUMED = Assumptions()
DRIFT = drift_of(ASSUMED)
YARN = Yarn(uid="yarn", name="yarn")
POCKET = "pocket rule"
POCKET_WASHED = "pocket rule after washing"
ONE_COUNT, ONE_SPAN, THREE_SPANS, FIVE_SPANS = "one count", "one span", "three spans", "five spans"
BORROWED = "washing borrowed"
METHODS = (POCKET, POCKET_WASHED, ONE_COUNT, ONE_SPAN, THREE_SPANS, FIVE_SPANS, BORROWED)
LEANS = (0.0, 0.02, 0.05, -0.05)
PIECES = (0, 2, 5, 10)
SPREAD = 0.02
UNCOUNTED = Assumptions(count_lean=False)
DRIFTS = ("no drift", "drift from its prior", "drift of 3 %")


@dataclass(frozen=True, slots=True)
class Told:
    """What a way of taking the gauge says: width of a repeat, and the relative give or take of swatch and of a whole piece."""

    repeat_mm: float
    swatch_alone: float | None = None
    whole_piece: float | None = None


@dataclass(frozen=True, slots=True)
class Score:
    """Over all swatches: median and 95th percentile of the miss, and the share inside of those that state a give or take."""

    median: float
    most: float
    inside: float | None


@dataclass(frozen=True, slots=True)
class Cloth:
    """One swatch as it truly is, in mm a repeat."""

    worked_mm: float
    washed_mm: float
    sigma: float

    def spans(self, pitch_mm: float, places: int, rng: Random) -> list[Reading]:
        return [span(max(2, round(150 / pitch_mm)), pitch_mm, self.sigma, rng) for _ in range(places)]


def score_methods(swatches: int, seed: int) -> Mapping[tuple[str, str], Score]:
    """The score of each method with each drift, over so many simulated swatches."""
    rng = Random(seed)
    misses: dict[tuple[str, str], list[tuple[float, float | None]]] = defaultdict(list)
    for _ in range(swatches):
        change, spread = rng.gauss(0, 0.04), from_prior(0.015, rng)
        cloth = _cloth(change, spread, rng)
        lenders = [_cloth(change, spread, rng) for _ in range(3)]
        drifts = (0.0, from_prior(0.02, rng) * rng.gauss(0, 1), 0.03 * rng.gauss(0, 1))
        for method, told in _told(cloth, lenders, rng).items():
            for name, drift in zip(DRIFTS, drifts, strict=True):
                miss = abs(cloth.washed_mm * math.exp(drift) / told.repeat_mm - 1)
                misses[method, name].append((miss, told.swatch_alone if name == DRIFTS[0] else told.whole_piece))
    return {key: _score(pairs) for key, pairs in misses.items()}


def _cloth(change: float, spread: float, rng: Random) -> Cloth:
    washed = math.exp(rng.uniform(math.log(5), math.log(70)))
    return Cloth(washed / math.exp(change + spread * rng.gauss(0, 1)), washed, variation(rng))


def _told(cloth: Cloth, lenders: list[Cloth], rng: Random) -> dict[str, Told]:
    worked, washed, sigma = cloth.worked_mm, cloth.washed_mm, cloth.sigma
    lent = [
        _swatch(f"lender {place}", one.spans(one.worked_mm, 3, rng), one.spans(one.washed_mm, 3, rng))
        for place, one in enumerate(lenders)
    ]
    return {
        POCKET: Told(count(100, worked, sigma, rng, step=0.5).unit_mm),
        POCKET_WASHED: Told(count(100, washed, sigma, rng, step=0.5).unit_mm),
        ONE_COUNT: _by_program(_swatch("in hand", [], [count(100, washed, sigma, rng)])),
        ONE_SPAN: _by_program(_swatch("in hand", [], cloth.spans(washed, 1, rng))),
        THREE_SPANS: _by_program(_swatch("in hand", [], cloth.spans(washed, 3, rng))),
        FIVE_SPANS: _by_program(_swatch("in hand", [], cloth.spans(washed, 5, rng))),
        BORROWED: _by_program(_swatch("in hand", cloth.spans(worked, 3, rng), []), lent),
    }


def _swatch(uid: str, worked: list[Reading], washed: list[Reading]) -> Swatch:
    taken = [TakenReading(Condition.WORKED, one) for one in worked] + [TakenReading(Condition.WASHED, one) for one in washed]
    return Swatch(uid=uid, tag=uid, yarn=YARN, readings=tuple(taken))


def _by_program(swatch: Swatch, others: list[Swatch] | None = None) -> Told:
    """The recommended chain's width and give or take, as the program says them."""
    finished = finished_gauge(swatch, Direction.STITCHES, others or [], ASSUMED)
    width = Pitch(mm=finished.pitch_mm, gauge_give_or_take=finished.give_or_take, drift_give_or_take=DRIFT.give_or_take)
    best = next(option for option in starting_chains(TARGET_MM, width, ChainRule()) if option.recommended)
    if best.gauge_give_or_take_mm is None or best.give_or_take_mm is None:
        return Told(best.mm / best.count)
    return Told(best.mm / best.count, best.gauge_give_or_take_mm / best.mm, best.give_or_take_mm / best.mm)


def _score(pairs: list[tuple[float, float | None]]) -> Score:
    misses = sorted(miss for miss, _ in pairs)
    inside = [miss <= stated for miss, stated in pairs if stated is not None]
    return Score(
        median=misses[len(misses) // 2],
        most=misses[math.ceil(len(misses) * 0.95) - 1],
        inside=sum(inside) / len(inside) if inside else None,
    )


def score_hands(hands: int, seed: int) -> Mapping[tuple[float, int, bool], Score]:
    """The score of the piece after so many, of hands with each lean; the lean counted in or not."""
    rng = Random(seed)
    misses: dict[tuple[float, int, bool], list[tuple[float, float | None]]] = defaultdict(list)
    for _ in range(hands):
        for lean in LEANS:
            strayed = [math.exp(lean + SPREAD * rng.gauss(0, 1)) for _ in range(max(PIECES) + 1)]
            for pieces in PIECES:
                made = [(1.0, one) for one in strayed[:pieces]]
                for counted, assumed in ((True, ASSUMED), (False, UNCOUNTED)):
                    drift = drift_of(assumed, made)
                    misses[lean, pieces, counted].append((abs(strayed[-1] / drift.factor - 1), drift.give_or_take))
    return {key: _score(pairs) for key, pairs in misses.items()}


def _cell(score: Score) -> str:
    inside = "–" if score.inside is None else f"{score.inside:.1%}".replace("%", " %")
    return f"{score.median * 100:.1f} % · {score.most * 100:.1f} % · {inside}"


def table(scores: Mapping[tuple[str, str], Score]) -> str:
    """A table, a method a row: median miss · 95th percentile · share inside."""
    rows = [("median miss · 95th percentile · inside", *DRIFTS), ("---", *("---",) * len(DRIFTS))]
    rows += [(method, *(_cell(scores[method, drift]) for drift in DRIFTS)) for method in METHODS]
    return "\n".join(f"| {' | '.join(row)} |" for row in rows)


def hands_table(scores: Mapping[tuple[float, int, bool], Score]) -> str:
    """A table, a lean and a number of pieces a row."""
    rows = [("hand", "pieces before", "lean counted in", "not counted in"), ("---",) * 4]
    for lean in LEANS:
        name = f"leans by {lean * 100:+.0f} %".replace("-", "−") if lean else "does not lean"
        rows += [(name, str(pieces), *(_cell(scores[lean, pieces, counted]) for counted in (True, False))) for pieces in PIECES]
    return "\n".join(f"| {' | '.join(row)} |" for row in rows)


def main() -> None:
    """Prints the tables."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.accuracy", description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--swatches", type=int, default=20_000, help="how many to simulate (20000)")
    parser.add_argument("--seed", type=int, default=1, help="where chance begins (1)")
    arguments = parser.parse_args()
    print(f"{arguments.swatches} swatches, seed {arguments.seed}\n")
    print(table(score_methods(arguments.swatches, arguments.seed)))
    print("\n" + hands_table(score_hands(arguments.swatches, arguments.seed)))


if __name__ == "__main__":
    main()
