"""The form of the swatch in hand: its texts as they are typed, what they mean, and saving them."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import date

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.fields import Owner
from logbook.craft.swatches.known_stitches import stitch_named
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.dates import date_words
from logbook.craft.words.hooks import hook_names
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import in_mark
from logbook.craft.words.terms import Terms
from logbook.errors import UnreadableError
from logbook.pages.dates import typed_date
from logbook.pages.record_form import RecordForm
from logbook.pages.session import Session
from logbook.pages.swatches.chain_text import CHAIN, follows, read_back
from logbook.pages.swatches.form_texts import EMPTY, PLAIN, Texts, Typed, read_texts, readings_key, texts_of
from logbook.pages.typed_since import typed_since
from logbook.tasks.browsing import assumptions_of, owner_of_tag, swatch_in_hand
from logbook.tasks.drafts import Draft
from logbook.tasks.fibre_words import fibre_cautions
from logbook.tasks.logging_swatches import known_in, offered_tag, save_swatch, written_before

NAMES = {"yarn": Owner.YARN, "stitch pattern": Owner.PATTERN}
DETAILS = {key: [name for name, f in PLAIN.items() if f.owner is owner and name != key] for key, owner in NAMES.items()}
"""The fields that belong to a yarn or a stitch pattern, beside its name."""
OF_ONE_SWATCH = (
    "tag",
    "date",
    "swatch grams",
    "swatch stitches",
    "swatch rows",
    "minutes",
    "notes",
    "hung grams",
    "hung clip cm",
    "pictures",
)
"""What the next swatch of the same kind does not share."""


class SwatchForm(RecordForm[Swatch]):
    """One swatch in hand, new or logged: take it by ``new`` or ``show``. ``texts`` are changed through ``type_in`` alone."""

    def __init__(self, session: Session, today: Callable[[], str] = lambda: date.today().isoformat()) -> None:
        self._session, self._today = session, today
        self.saved: Swatch | None = None
        self.texts: dict[str, str] = dict(EMPTY)
        self._clean = self.texts
        self._typed: Typed | None = None
        self.refresh()

    def refresh(self) -> None:
        """Takes from the logbook again what is offered and assumed; what is typed stays."""
        self.known = known_in(self._session.book)
        self._written: dict[str, tuple[str, ...]] = {}
        self.assumptions = assumptions_of(self._session.book)
        self._typed = None

    @property
    def name(self) -> str:
        """``Swatch HC-01`` as it is logged, or ``New swatch``."""
        return f"Swatch {self.saved.tag}" if self.saved else "New swatch"

    @property
    def units(self) -> Units:
        """In which lengths are shown."""
        return self._session.units

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the draft's swatch, or of a new one's namesake, as the logbook has it; None: there is none."""
        uid = owner_of_tag(self._session.book, draft.typed.get("tag", "").strip()) if draft.is_new else draft.record
        found = swatch_in_hand(self._session.book, uid) if uid else None
        return texts_of(found) if found is not None else None

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> None:
        """Takes the draft's swatch in hand, or a new one where there is none, with these texts typed."""
        super().take_up(draft, texts)
        self._typed = None

    def type_in(self, key: str, text: str) -> dict[str, str]:
        """Takes the text of one field as it stands now, and returns other texts that come with it: those of a known yarn."""
        before = self.texts[key]
        self.texts[key] = text
        self._typed = None
        if key == "terms":
            return self._with_chain(self._bring_terms(before, text))
        if key in NAMES:
            return self._with_chain(self._bring_details(key, before.strip(), text.strip()))
        changed = follows({**self.texts, key: before}, key, text)
        self.texts |= changed
        return changed

    def suggested(self, key: str) -> Iterable[str]:
        """What was written before in the text ``key`` of any swatch."""
        if key in NAMES:
            return self.known.yarns if key == "yarn" else self.known.patterns
        if key not in self._written:
            self._written[key] = written_before(self._session.book, key.replace(" ", "_"))
        return self._written[key]

    def typed(self) -> Typed:
        """The swatch as it stands typed, its yarn and stitch pattern those of the logbook where their names are known."""
        if self._typed is None:
            texts = {**self.texts, "date": typed_date(self.texts["date"])}
            said = read_texts(texts, self.uid, self._session.units)
            yarn, pattern = said.swatch.yarn, said.swatch.pattern
            if yarn is not None and (known_yarn := self.known.yarns.get(yarn.name)):
                yarn = replace(yarn, uid=known_yarn.uid)
            if pattern is not None and (known := self.known.patterns.get(pattern.name)):
                kept = {name: getattr(known, name) for name in ("uid", "half_plus", "rows_text", "notes")}
                pattern = replace(pattern, **kept)
            self._typed = replace(said, swatch=replace(said.swatch, yarn=yarn, pattern=pattern))
        return self._typed

    def show(self, uid: str) -> bool:
        """Takes a logged swatch in hand; False if it is not there any more."""
        found = swatch_in_hand(self._session.book, uid)
        if found is not None:
            self._take(found, texts_of(found))
        return found is not None

    def new(self) -> None:
        """Takes an empty swatch in hand, with a tag and today's date offered."""
        like = self.saved.tag if self.saved else ""
        self._take(None, {**EMPTY, "tag": offered_tag(self._session.book, like), "date": date_words(self._today())})

    def same_again(self) -> None:
        """Takes a new swatch in hand that shares yarn, stitch, hook and hands with this one, but no measurement."""
        shared = {key: text for key, text in self.texts.items() if key in PLAIN and key not in OF_ONE_SWATCH}
        self.new()
        self._take(None, self.texts | shared)

    def save(self) -> dict[str, str]:
        """Saves what is typed; then it is the swatch in hand. What stands in the way comes back, a sentence a field.

        Raises RefusedError for what is no field's fault; nothing is lost then. What is typed while it waits stays, not saved.
        """
        typed, before = self.typed(), dict(self.texts)
        errors = {**_missing(typed), **typed.errors}
        if owner_of_tag(self._session.book, typed.swatch.tag) not in (None, self.uid):
            errors["tag"] = f"Another swatch has the tag “{typed.swatch.tag}”: choose another."
        if not errors:
            swatch = typed.swatch
            if not swatch.tag:
                swatch = replace(swatch, tag=offered_tag(self._session.book))
            uid = self._session.write(lambda: save_swatch(self._session.book, swatch))
            since = typed_since(before, self.texts)
            self.saved = replace(swatch, uid=uid)
            self.refresh()
            self.show(self.saved.uid)
            self.texts |= since
        return errors

    def changed_elsewhere(self) -> bool:
        """Whether the logbook holds this swatch otherwise now than when it was taken in hand."""
        return self.saved is not None and swatch_in_hand(self._session.book, self.uid) != self.saved

    def hook_letter(self) -> str:
        """``US G-6, UK 8`` beside the hook; "" where it has no name."""
        hook = self.typed().swatch.hook_mm
        return hook_names(hook) if hook else ""

    def hints(self) -> dict[str, str]:
        """What is to be said under the names of yarn and stitch pattern."""
        swatch = self.typed().swatch
        return {
            "yarn": self._named("yarn", ""),
            CHAIN: read_back(self.texts),
            "fibre": " ".join(fibre_cautions(self.texts["fibre"])),
            "stitch pattern": self._named("stitch pattern", missing_multiple(swatch.pattern) if swatch.pattern else ""),
        }

    def warnings(self) -> dict[str, str]:
        """Where the chain, once something is typed, contradicts the written rows of the stitch pattern."""
        pattern = self.typed().swatch.pattern
        if pattern is None or not pattern.rows_text or not self.is_dirty:
            return {}
        from logbook.pages.swatches.chain_of_rows import contradiction

        said = contradiction(pattern)
        return {CHAIN: said} if said else {}

    def _take(self, saved: Swatch | None, texts: dict[str, str]) -> None:
        self.saved, self.texts, self._clean, self._typed = saved, texts, dict(texts), None

    def _bring_details(self, key: str, before: str, now: str) -> dict[str, str]:
        """The details follow the name: those of a known one come with it and leave with it, those typed by hand stay."""
        if before == now:
            return {}
        return self._follow(self._details(key, before, self.texts["terms"]), self._details(key, now), DETAILS[key])

    def _bring_terms(self, before: str, now: str) -> dict[str, str]:
        """In other terms the name of a basic stitch is another stitch's: its details follow."""
        name = self.texts["stitch pattern"].strip()
        if name in self.known.patterns or before == now:
            return {}
        old, new = (texts_of(Swatch(pattern=self._basic(name, terms))) for terms in (before, now))
        return self._follow(old, new, [detail for detail in DETAILS["stitch pattern"] if detail != "terms"])

    def _with_chain(self, changed: dict[str, str]) -> dict[str, str]:
        """Numbers that came with a name say the chain in words too."""
        if "multiple" in changed or "plus" in changed or "extra chains" in changed:
            following = (
                follows(self.texts | {CHAIN: ""}, "multiple", self.texts["multiple"]) if self.texts["multiple"] else {CHAIN: ""}
            )
            self.texts[CHAIN] = following.get(CHAIN, "")
            return changed | {CHAIN: self.texts[CHAIN]}
        return changed

    def _follow(self, old: Texts, new: Texts, names: Iterable[str]) -> dict[str, str]:
        changed = {name: new[name] for name in names if self.texts[name] == old[name] != new[name]}
        self.texts.update(changed)
        return changed

    def _details(self, key: str, name: str, terms: str = "") -> dict[str, str]:
        """The texts of the details of a known yarn or pattern; empty ones for an unknown name."""
        if key == "yarn":
            return texts_of(Swatch(yarn=self.known.yarns.get(name)))
        known = self.known.patterns.get(name)
        if known is not None and known.rows_text and known.multiple is None:
            from logbook.pages.swatches.chain_of_rows import with_chain  # proving is slow to import, and seldom wanted

            known = with_chain(known)
        return texts_of(Swatch(pattern=known or self._basic(name, terms)))

    def _basic(self, name: str, terms: str = "") -> StitchPattern | None:
        """The fabric of a basic stitch that is known by that name: in ``terms``, else in those of the settings or the others."""
        for tried in (Terms(terms),) if terms in tuple(Terms) else (self._session.terms, None):
            try:
                stitch, spoken = stitch_named(name, tried)
            except UnreadableError:
                continue
            return stitch.pattern(spoken)
        return None

    def _named(self, key: str, words: str) -> str:
        """What to say of the name typed for a yarn or a stitch pattern: ``words`` of it, or what saving would do to it."""
        name = self.texts[key].strip()
        if not name:
            return ""
        if name not in (self.known.yarns if key == "yarn" else self.known.patterns):
            return f"New {key}: saving adds it to the logbook. {words}".strip()
        kept = self._details(key, name)
        changed = [detail for detail in DETAILS[key] if self.texts[detail].strip() != kept[detail]]
        return f"Saving changes this {key} for all its swatches: {', '.join(changed)}." if changed else words


def missing_multiple(pattern: StitchPattern) -> str:
    """Where no multiple is said, where to say it; "" where it is said."""
    return "" if pattern.multiple is not None else "Set its multiple below, as the pattern gives it."


def _missing(typed: Typed) -> dict[str, str]:
    """What a swatch cannot be logged without, unless something is typed there that can't be read."""
    swatch, missing = typed.swatch, {}
    if swatch.yarn is None and swatch.pattern is None:
        missing["yarn"] = "Type the yarn or the stitch pattern."
    if swatch.hook_mm is None:
        missing["hook mm"] = f"Type the hook size in mm, for example {in_mark('4.5')}."
    if not swatch.readings:
        missing[readings_key(Condition.WORKED)] = f"Add one reading, for example “4 repeats = {in_mark('15.1')} cm”."
    return missing
