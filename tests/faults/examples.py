"""Harnesses that go through random examples: the same ones each time, and asked for from the command line."""

import argparse
from collections.abc import Callable, Sequence
from contextlib import AbstractContextManager
from typing import Any

from hypothesis import Phase, settings


def same_each_time(examples: int, *, shrink: bool, **more: Any) -> settings:
    """So many examples; if one fails, with ``shrink`` a shorter one is looked for."""
    phases = [Phase.generate, *([Phase.shrink] if shrink else [])]
    return settings(max_examples=examples, derandomize=True, database=None, deadline=None, phases=phases, **more)


def command(
    run: Callable[[int, int], object],
    weakened: Callable[[str], AbstractContextManager[None]],
    says: str | None,
    usual: tuple[int, int],
    weaknesses: Sequence[str],
    went_well: str,
) -> int:
    """The command line of such a harness: runs so many ``examples`` of so many ``steps``, and says it if all went well; raises
    what did not. ``usual``: both, if nothing is asked for.
    """
    parser = argparse.ArgumentParser(description=says, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--examples", type=int, default=usual[0])
    parser.add_argument("--steps", type=int, default=usual[1])
    parser.add_argument("--weakness", choices=["", *weaknesses], default="")
    chosen = parser.parse_args()
    with weakened(chosen.weakness):
        run(chosen.examples, chosen.steps)
    print(went_well.format(examples=chosen.examples, steps=chosen.steps))
    return 0
