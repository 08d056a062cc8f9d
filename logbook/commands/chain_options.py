"""The options that say a gauge and what is wanted of it; ``chain`` and ``piece`` share them."""

import argparse
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from typing import Any

from logbook.commands.parser import Parser, reading_with
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.known_stitches import form_with, stitch_named
from logbook.craft.swatches.readings import Reading, read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import NO_EASE, read_ease, read_length, read_size
from logbook.craft.words.numbers import read_whole
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError, UnreadableError, UsageError

SEAM_HELP = "width each joined edge takes"


def not_negative(text: str) -> float:
    """A length of 0 or more. Raises UnreadableError."""
    length = read_length(text)
    if length < 0:
        raise UnreadableError(f"“{text}” is below 0: type 0 or more.")
    return length


def readings(direction: Direction | None, what: str) -> dict[str, Any]:
    """The settings of an option that takes ``what``, in ``direction``, and may be given again.

    None: stitches, or stitches and rows counted together.
    """
    read = reading_with(_stitches_and_rows if direction is None else lambda text: read_readings(text, direction))
    return {"metavar": "READING", "action": "append", "default": [], "type": read, "help": f"{what}; may be repeated"}


def _stitches_and_rows(text: str) -> tuple[Reading, ...]:
    found = read_readings(text)
    both = any(reading.counted.direction is Direction.STITCHES for reading in found)
    return found if both else read_readings(text, Direction.STITCHES)


def gauges_of(arguments: argparse.Namespace) -> tuple[tuple[Reading, ...], tuple[Reading, ...]]:
    """The readings of stitches said by hand, and those of rows: of ``--rows-gauge``, else those that ``--gauge`` has as well."""
    said = all_of(arguments.gauge)
    rows = tuple(reading for reading in said if reading.counted.direction is Direction.ROWS)
    stitches = tuple(reading for reading in said if reading.counted.direction is Direction.STITCHES)
    return stitches, all_of(arguments.rows_gauge) or rows


def hand_gauges(arguments: argparse.Namespace) -> tuple[tuple[Reading, ...], tuple[Reading, ...]]:
    """As ``gauges_of``. Raises UsageError if rows are to make the width and none were measured."""
    stitches, rows = gauges_of(arguments)
    if arguments.sideways and not rows:
        raise UsageError("--sideways needs --rows-gauge, for example --rows-gauge “22 rows = 15 cm”")
    return stitches, rows


def add_gauge_options(parser: Parser) -> None:
    """A gauge by hand, or a logged swatch."""
    gauge = parser.add_argument_group("the gauge, typed here or from a logged swatch")
    gauge.add_argument("--swatch", metavar="TAG", help="a swatch of the logbook")
    gauge.add_argument("--gauge", **readings(None, "a reading such as “4 repeats = 15.1 cm” or “16 x 20”"))
    gauge.add_argument("--multiple", metavar="M", type=count("a multiple", 1), help="stitches in a repeat")
    gauge.add_argument("--plus", metavar="B", type=count("a plus", 0), help="base stitches besides whole repeats (0)")
    gauge.add_argument(
        "--extra-chains", metavar="T", type=count("a number of extra chains", 0), help="chains besides the base stitches"
    )
    gauge.add_argument(
        "--first-stitch",
        metavar="J",
        type=count("a chain", 1),
        help="the chain from the hook the first stitch is worked into, such as 3",
    )
    gauge.add_argument(
        "--cover",
        metavar="V",
        type=count("a number of chains", 0),
        help="what the skipped chains count as, in stitches: 0 for nothing, 1 for a stitch",
    )
    gauge.add_argument("--stitch", metavar="NAME", help="the stitch the rows begin with, such as hdc: it brings its extra chains")
    gauge.add_argument("--terms", choices=("us", "uk"), help="the terms of --stitch (us)")
    gauge.add_argument("--rows-gauge", **readings(Direction.ROWS, "a reading of rows, such as “22 rows = 15 cm”"))


def add_target_options(parser: Parser, seam: Callable[[str], Any] = not_negative, seam_help: str = SEAM_HELP) -> None:
    """What is wanted. ``seam`` reads the text of ``--seam``."""
    target = parser.add_argument_group("what is wanted")
    size = reading_with(read_size)
    target.add_argument("--width", metavar="LEN", type=size, help="the finished width")
    target.add_argument("--body", metavar="LEN", type=size, help="body measure, instead of the width")
    target.add_argument("--ease", metavar="EASE", type=reading_with(read_ease), help="ease, such as 5 cm, -5 cm or “-6 %%”")
    target.add_argument("--panels", metavar="N", type=count("a number of panels", 1), help="equal panels round the body (2)")
    target.add_argument("--seam", metavar="LEN", type=reading_with(seam), help=seam_help)
    target.add_argument("--edging", metavar="LEN", type=reading_with(not_negative), help="edging at each side")
    target.add_argument("--round", action="store_true", help="worked in the round: the width is all the way round")
    target.add_argument(
        "--round-plus", metavar="B", type=count("a plus", 0), help="base stitches besides whole repeats in the round"
    )
    target.add_argument("--joined-after-row-1", action="store_true", help="row 1 worked flat, then joined")
    target.add_argument("--foundation-stitches", action="store_true", help="foundation stitches: chain and row 1 in one")
    choose = target.add_mutually_exclusive_group()
    choose.add_argument("--at-least", action="store_true", help="not narrower than asked")
    choose.add_argument("--at-most", action="store_true", help="not wider than asked")
    parity = target.add_mutually_exclusive_group()
    parity.add_argument("--odd", action="store_true", help="an odd count of plain stitches (sideways: of rows)")
    parity.add_argument("--even", action="store_true", help="an even count")
    target.add_argument("--sideways", action="store_true", help="the chain runs along the length, rows make the width")
    target.add_argument("--length", metavar="LEN", type=size, help="the finished length")


def hand_pattern(arguments: argparse.Namespace) -> StitchPattern | None:
    """The stitch pattern said by hand; None if a logged swatch is asked for. Raises UsageError if it is neither or both."""
    names = ("gauge", "rows_gauge", "multiple", "plus")
    begins = first_stitch_of(arguments)
    if arguments.swatch is not None:
        refuse(arguments, names, "gives the gauge by hand, --swatch takes it from the logbook: leave one of them out")
        return None
    if not arguments.gauge:
        raise UsageError("give the gauge: --gauge “4 repeats = 15.1 cm”, or --swatch TAG of a logged swatch")
    if arguments.multiple is None and any(r.counted.whole_repeats for r in gauges_of(arguments)[0]):
        raise UsageError("--gauge is in repeats: give the stitches in a repeat with --multiple")
    return replace(begins, multiple=arguments.multiple or 1, plus=arguments.plus or 0)


def _require_cover(said: StitchPattern) -> None:
    """What is skipped may well be a stitch: that changes the chain, so it is not taken as nothing."""
    if said.first_stitch is not None and said.extra() is None:
        raise UsageError(
            f"--first-stitch {said.first_stitch} needs --cover: say what the skipped chains count as "
            "(0: nothing, 1: a stitch), or name the stitch with --stitch"
        )


def first_stitch_of(arguments: argparse.Namespace) -> StitchPattern:
    """What the options say of the turning chain, and no more. Raises UsageError where they contradict."""
    said = StitchPattern(extra_chains=arguments.extra_chains, first_stitch=arguments.first_stitch, skip_cover=arguments.cover)
    if arguments.stitch is None:
        refuse(arguments, ("terms",), "goes with --stitch")
    try:
        said.extra()
        if arguments.stitch is None:
            _require_cover(said)
            return said
        stitch, terms = stitch_named(arguments.stitch, Terms(arguments.terms.upper()) if arguments.terms else None)
        form = form_with(stitch, said.extra_chains, said.first_stitch, said.skip_cover)
    except LogbookError as error:
        raise UsageError(str(error)) from error
    if form is None:
        usual = stitch.usual
        raise UsageError(
            f"--stitch {arguments.stitch} takes {usual.extra} extra chains, the first stitch in chain {usual.into}: "
            "leave out --stitch to say something else"
        )
    return StitchPattern(extra_chains=form.extra, first_stitch=form.into, skip_cover=form.cover, terms=terms.value)


def require_together(arguments: argparse.Namespace, *, with_width: Sequence[str] = (), instead: str = "") -> None:
    """Raises UsageError unless width or body is said, and if an option is given that would not be heeded or needs another.

    ``with_width``: what goes with ``--width`` too though it otherwise goes with ``--body``. ``instead``: the option that is
    given instead of both.
    """
    if instead:
        refuse(
            arguments,
            ("width", "body", "ease", "panels", "seam", "sideways"),
            f"does not go with {instead}: leave one of them out",
        )
    elif (arguments.width is None) == (arguments.body is None):
        raise UsageError("give either --width, or --body with --ease" + ("" if arguments.width is None else ", not both"))
    if arguments.width is not None:
        only_body = [name for name in ("ease", "panels", "seam") if name not in with_width]
        refuse(arguments, only_body, "goes with --body, not with --width")
    if arguments.round:
        refuse(arguments, ("sideways",), "goes with a flat piece, not with --round")
        refuse(arguments, ("panels", "seam", "edging"), "goes with a flat piece: in the round there are no sides")
    else:
        refuse(arguments, ("round_plus", "joined_after_row_1"), "goes with --round")
    if arguments.sideways and arguments.length is None:
        raise UsageError("--sideways needs --length: the chain runs along it")


def target_plan(arguments: argparse.Namespace) -> PiecePlan:
    """The plan that the options of ``add_target_options`` speak of; of a sideways piece odd and even are said of its rows."""
    seam, parity = arguments.seam, parity_of(arguments)
    return PiecePlan(
        width_mm=arguments.width,
        body_mm=arguments.body,
        ease=arguments.ease or NO_EASE,
        panels=arguments.panels or 2,
        seam=seam if isinstance(seam, str) else "",
        seam_mm=seam if isinstance(seam, float) else None,
        length_mm=arguments.length,
        sideways=arguments.sideways,
        in_round=arguments.round,
        round_plus=arguments.round_plus or 0,
        joined_after_row_1=arguments.joined_after_row_1,
        foundation_stitches=arguments.foundation_stitches,
        side_edging_mm=arguments.edging or 0.0,
        stitch_parity=Parity.ANY if arguments.sideways else parity,
        row_parity=parity if arguments.sideways else Parity.ANY,
        width_choose=choose_of(arguments),
    )


def refuse(arguments: argparse.Namespace, names: Sequence[str], why: str) -> None:
    """Raises UsageError if one of these options is given."""
    for name in names:
        if given(getattr(arguments, name)):
            raise UsageError(f"--{name.replace('_', '-')} {why}")


def given(value: Any) -> bool:
    """Whether an option with this value stands on the command line; 0 does."""
    return not (value is None or value is False or value == [])


def parity_of(arguments: argparse.Namespace) -> Parity:
    """``--odd`` or ``--even``."""
    return Parity.ODD if arguments.odd else Parity.EVEN if arguments.even else Parity.ANY


def choose_of(arguments: argparse.Namespace) -> Choose:
    """``--at-least`` or ``--at-most``."""
    return Choose.AT_LEAST if arguments.at_least else Choose.AT_MOST if arguments.at_most else Choose.NEAREST


def all_of(groups: Iterable[tuple[Reading, ...]]) -> tuple[Reading, ...]:
    """The readings of an option given more than once."""
    return tuple(reading for group in groups for reading in group)


def count(what: str, least: int) -> Callable[[str], int]:
    """A type for whole numbers from ``least``."""
    return reading_with(lambda text: read_whole(text, what, least))
