"""The form of a stitch pattern: what is typed into its fields, what it means, and what is wrong with it.

The texts of a form stand under the names of a StitchPattern's attributes, and under ``sentence`` what a stitch dictionary
says of the chain. Sentence and numbers follow each other: whichever is typed leads.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from typing import Any

from logbook.craft.swatches.chain_words import chain_read_back, read_chain_words
from logbook.craft.swatches.fields import FIELDS, Owner
from logbook.craft.swatches.stitch_pattern import ChainStatement, StitchPattern, extra_chains
from logbook.craft.words.counting import ordinal
from logbook.errors import LogbookError, RefusedError, UnreadableError
from logbook.pages.patterns.wording import NOT_SAID, cover_words, read_cover, read_ordinal, statement
from logbook.pages.text_reader import TextReader

Texts = Mapping[str, str]

SENTENCE = "sentence"
KEYS = (SENTENCE, *(field.name for field in fields(StitchPattern) if field.name != "uid"))
TERMS = (NOT_SAID, "US", "UK")

_OF_LOG = {field.attribute: field.value for field in FIELDS if field.owner is Owner.PATTERN}
_TEXT = next(field.value for field in FIELDS if field.name == "notes")


def _or_none(read: Callable[[str], Any]) -> Callable[[str], Any]:
    return lambda text: read(text.strip()) if text.strip() else None


_READ: dict[str, Callable[[str], Any]] = _OF_LOG | {
    "name": lambda text: _TEXT(text.strip()),
    "first_stitch": _or_none(read_ordinal),
    "skip_cover": _or_none(read_cover),
    "terms": lambda text: "" if text == NOT_SAID else _OF_LOG["terms"](text),
    "notes": _TEXT,
}


@dataclass(frozen=True, slots=True)
class FormReading:
    """The pattern of the fields that can be read, and a sentence under each key that has something wrong."""

    pattern: StitchPattern
    problems: Mapping[str, str]


def texts_of(pattern: StitchPattern) -> dict[str, str]:
    """The texts that show a pattern."""
    shown = {key: "" if (value := getattr(pattern, key)) is None else str(value) for key in KEYS if key != SENTENCE}
    return shown | {
        SENTENCE: statement(pattern),
        "first_stitch": "" if pattern.first_stitch is None else ordinal(pattern.first_stitch),
        "skip_cover": cover_words(pattern.skip_cover),
        "terms": pattern.terms or NOT_SAID,
    }


def typed(texts: Texts, key: str, text: str) -> dict[str, str]:
    """The texts after ``text`` was typed under ``key``: those that follow from it follow."""
    after = dict(texts) | {key: text}
    if key == SENTENCE:
        after |= _said_before(texts)
        return after | (_numbers_said(after) or {"multiple": "", "plus": ""})
    if key in ("multiple", "plus"):
        return after | _sentence_of(after)
    if key in ("extra_chains", "first_stitch", "skip_cover"):
        return after | (_numbers_said(after) if _constant_of(after) else _sentence_of(after))
    return after


def read_form(texts: Texts, uid: str = "") -> FormReading:
    """Reads every field."""
    reader, empty = TextReader(texts), StitchPattern()
    values = {key: reader.value(key, read, getattr(empty, key)) for key, read in _READ.items()}
    problems = reader.errors
    pattern = StitchPattern(uid=uid, **values)
    for key, problem in _contradictions(texts, pattern).items():
        problems.setdefault(key, problem)
    return FormReading(pattern, problems)


def read_back(texts: Texts) -> str:
    """What the sentence comes to with the extra chains as they are known; "" while it can't be read."""
    try:
        said = read_chain_words(texts[SENTENCE])
    except UnreadableError:
        return ""
    extra = _extra_of(texts)
    plus = said.plus
    if said.chain_constant is not None and extra is not None:
        plus = _plus_of(said.chain_constant, extra, said.multiple)
    return chain_read_back(said.multiple, plus, extra, said.chain_constant)


def with_sentence(texts: Texts) -> dict[str, str]:
    """The texts with the sentence that their numbers make."""
    return dict(texts) | _sentence_of(texts)


def with_first_stitch(texts: Texts, first: Texts, *, words: bool) -> dict[str, str]:
    """The texts with what is said of the first stitch, and the numbers that follow; with ``words`` the sentence says it too."""
    after = {**texts, **first}
    if _constant_of(after):
        return after | _numbers_said(after)
    return after | _sentence_of(after) if words and read_back(after) else after


def asks_first_stitch(texts: Texts) -> bool:
    """Whether the sentence counts the turning chain in, and nothing says which stitch the rows begin with."""
    return _constant_of(texts) is not None and _extra_of(texts) is None


def _contradictions(texts: Texts, pattern: StitchPattern) -> dict[str, str]:
    found = {}
    if texts[SENTENCE].strip():
        try:
            read_chain_words(texts[SENTENCE])
        except UnreadableError as error:
            found[SENTENCE] = str(error)
        if asks_first_stitch(texts):
            found[SENTENCE] = (
                "The turning chain is counted in here: choose which stitch the rows begin with, or type which chain from "
                "the hook its first stitch goes into."
            )
    try:
        pattern.extra()
    except RefusedError as error:
        found[_blamed(pattern)] = str(error)
    if pattern.half_plus is not None and (pattern.multiple or 0) % 2:
        found["half_plus"] = f"A multiple of {pattern.multiple} has no half repeat. Leave this empty."
    return found


def _blamed(pattern: StitchPattern) -> str:
    """The field under which a contradiction of the extra chains is said."""
    if pattern.first_stitch is None:
        return "first_stitch"
    if pattern.first_stitch - 1 < (pattern.skip_cover or 0):
        return "skip_cover"
    return "extra_chains"


def _said_before(texts: Texts) -> dict[str, str]:
    """The texts without what only the sentence says beyond multiple and plus: another sentence takes that along."""
    try:
        said = read_chain_words(texts[SENTENCE])
    except UnreadableError:
        return {}
    shown = {"extra_chains": said.extra_chains, "first_stitch": said.first_stitch}
    return {key: "" for key, value in shown.items() if value is not None and _READ[key](texts[key]) == value}


def _numbers_said(texts: Texts) -> dict[str, str]:
    """What the sentence says, as texts of the number fields; nothing while it cannot be read."""
    try:
        said = read_chain_words(texts[SENTENCE])
    except UnreadableError:
        return {}
    found = {"multiple": str(said.multiple)}
    if said.first_stitch is not None:
        found["first_stitch"] = str(said.first_stitch)
        texts = {**texts, **found}
    if said.chain_constant is None:
        found["plus"] = str(said.plus)
        return found if said.extra_chains is None else found | {"extra_chains": str(said.extra_chains)}
    extra = _extra_of(texts)
    return found | {"plus": "" if extra is None else str(_plus_of(said.chain_constant, extra, said.multiple))}


def _plus_of(constant: int, extra: int, multiple: int) -> int:
    """The plus b of a chain constant b + t; below nought it takes a repeat more."""
    plus = constant - extra
    return plus if plus >= 0 else plus % multiple


def _constant_of(texts: Texts) -> ChainStatement | None:
    """The sentence, if it counts the extra chains in."""
    try:
        said = read_chain_words(texts[SENTENCE])
    except UnreadableError:
        return None
    return said if said.chain_constant is not None else None


def _extra_of(texts: Texts) -> int | None:
    """The extra chains as the fields say; None while they do not, or disagree."""
    try:
        return extra_chains(*(_READ[key](texts[key]) for key in ("extra_chains", "first_stitch", "skip_cover")))
    except LogbookError:
        return None


def _sentence_of(texts: Texts) -> dict[str, str]:
    """The sentence the number fields make; as it is while they cannot be read."""
    try:
        keys = ("multiple", "plus", "extra_chains", "first_stitch", "skip_cover")
        return {SENTENCE: statement(StitchPattern(**{key: _READ[key](texts[key]) for key in keys}))}
    except UnreadableError:
        return {}
