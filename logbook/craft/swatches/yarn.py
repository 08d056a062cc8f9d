"""A yarn, and the trade's public 0–7 scale of thickness classes."""

from dataclasses import dataclass
from typing import NamedTuple

from logbook.craft.words.numbers import show_number
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class Yarn:
    """One yarn as it is bought. ``ball_grams``, ``ball_metres`` and ``ball_price`` (in ``currency``) are those of one ball.

    "" and None: not known.
    """

    uid: str = ""
    name: str = ""
    fibre: str = ""
    yarn_class: int | None = None
    ball_grams: float | None = None
    ball_metres: float | None = None
    ball_price: float | None = None
    currency: str = ""

    @property
    def metres_per_gram(self) -> float | None:
        """How far one gram reaches."""
        if self.ball_grams is None or self.ball_metres is None:
            return None
        return self.ball_metres / self.ball_grams


class YarnClass(NamedTuple):
    """One thickness class: its number, its name, other names in use and the usual hook in mm."""

    number: int
    name: str
    other_names: str
    usual_hook_mm: str


YARN_CLASSES = (
    YarnClass(0, "lace", "2 ply", "1.5–2.25"),
    YarnClass(1, "super fine", "4 ply, sock", "2.25–3.5"),
    YarnClass(2, "fine", "baby, 5 ply", "3.5–4.5"),
    YarnClass(3, "light", "DK, 8 ply", "4.5–5.5"),
    YarnClass(4, "medium", "aran, 10 ply", "5.5–6.5"),
    YarnClass(5, "bulky", "chunky, 12 ply", "6.5–9"),
    YarnClass(6, "super bulky", "super chunky, 14 ply", "9–15"),
    YarnClass(7, "jumbo", "jumbo", "15 and more"),
)


def yarn_words(yarn: Yarn) -> str:
    """``100 % cotton, 50 g = 115 m``: fibre, and what a ball weighs and how long it is; "" where nothing of it is known."""
    ball = f"{show_number(yarn.ball_grams)} g" if yarn.ball_grams is not None else ""
    if ball and yarn.ball_metres is not None:
        ball += f" = {show_number(yarn.ball_metres)} m"
    return ", ".join(word for word in (yarn.fibre, ball) if word)


def class_words(number: int) -> str:
    """``3 light (DK, 8 ply)``. Raises RefusedError for a number that is no class."""
    if not 0 <= number < len(YARN_CLASSES):
        raise RefusedError(f"{number} is not a yarn class: the classes run from 0 (lace) to 7 (jumbo).")
    found = YARN_CLASSES[number]
    return f"{found.number} {found.name} ({found.other_names})"
