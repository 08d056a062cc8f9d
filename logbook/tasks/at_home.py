"""What is usual where the user lives, as the system says it: the decimal mark, the order of a date's parts, that of names.

Numbers are written by a table of languages: asking the system would mean to set its locale of numbers for the whole process,
where Tcl reads numbers too. The table is after the Unicode CLDR.
"""

import locale
import os
import re
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache

from logbook.craft.words.notation import COMMA, POINT, Notation, written_in
from logbook.errors import RefusedError
from logbook.settings import Settings, load_settings

_COMMA_LANGUAGES = frozenset((
    "af", "az", "be", "bg", "bs", "ca", "cs", "da", "de", "el", "es", "et", "eu", "fi", "fo", "fr", "fy", "gl", "hr", "hu",
    "hy", "id", "is", "it", "ka", "kk", "kl", "ky", "lb", "lt", "lv", "mk", "nb", "nl", "nn", "no", "oc", "pl", "pt", "ro",
    "ru", "sk", "sl", "sq", "sr", "sv", "tr", "tt", "uk", "uz", "vi",
))  # fmt: skip
_POINT_PLACES = frozenset((
    "de_CH", "de_LI", "it_CH", "es_CU", "es_DO", "es_GT", "es_HN", "es_MX", "es_NI", "es_PA", "es_PE", "es_PR", "es_SV",
    "es_US",
))  # fmt: skip
_COMMA_PLACES = frozenset((
    "en_AT", "en_BE", "en_DE", "en_DK", "en_FI", "en_NL", "en_SE", "en_SI",
))  # fmt: skip
_COUNTRIES = {"United States": "US", "Philippines": "PH", "Switzerland": "CH", "Liechtenstein": "LI", "Mexico": "MX"}
_MONTH_FIRST = ("en_US", "en_PH")


def notation_of(settings: Settings) -> Notation:
    """How numbers and dates are written for the user: as chosen in the settings, else as is usual at home."""
    mark = {"point": POINT, "comma": COMMA}.get(settings.numbers) or decimal_mark()
    return Notation(mark, bool(month_first()))


@contextmanager
def as_at_home() -> Iterator[None]:
    """While this lasts it is written so, by the settings as they are kept: for what a command writes to print."""
    try:
        settings = load_settings()[0]
    except RefusedError:  # nobody's folder: no settings
        settings = Settings()
    with written_in(notation_of(settings)):
        yield


def decimal_mark() -> str:
    """What stands before decimals where the user lives; a point where the system does not say where that is."""
    place = _place("LC_NUMERIC")
    comma = place in _COMMA_PLACES or (place.partition("_")[0] in _COMMA_LANGUAGES and place not in _POINT_PLACES)
    return COMMA if comma else POINT


def month_first() -> bool | None:
    """Whether the month comes first in a date of figures; None where the system does not say where it is."""
    place = _place("LC_TIME")
    return place in _MONTH_FIRST if place else None


def _place(category: str) -> str:
    """``de_AT`` for a category; "" where none is said."""
    names = [os.environ.get(name, "") for name in ("LC_ALL", category, "LANG")]
    said = next((name for name in names if name), "") or (locale.getlocale()[0] or "")
    name = re.split("[.@]", said.replace("-", "_"))[0]
    if name in ("", "C", "POSIX"):
        return ""
    language, _, country = name.partition("_")
    if len(language) > 3:  # German_Germany, as Windows may have it
        language, country = locale.normalize(language)[:2], _COUNTRIES.get(country, "")
    return f"{language.lower()}_{country}" if country else language.lower()


_collated = False


def sort_as_at_home() -> None:
    """From now on ``name_key`` goes by the order of the user's language, where the system has it."""
    global _collated
    name_key.cache_clear()
    try:
        locale.setlocale(locale.LC_COLLATE, "")
        _collated = "" < locale.strxfrm("a") < locale.strxfrm("B") < locale.strxfrm("c")
    except (locale.Error, ValueError, OSError):
        _collated = False


@lru_cache(maxsize=20_000)
def name_key(text: str) -> str:
    """What names are sorted by: upper case aside, letters with accents where the user's language has them."""
    if _collated:
        return locale.strxfrm(text)
    if text.isascii():
        return text.casefold()
    plain = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    return f"{plain}\0{text.casefold()}"
