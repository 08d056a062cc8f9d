"""The list of yarns, or of stitch patterns: one of them renamed, merged into another, or deleted where no swatch uses it."""

from collections.abc import Callable

from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.browsing import folded
from logbook.tasks.known_names import Named, NameOf, delete_unused, known_by_name, merge, rename, what_merging_does

SENTENCES = {
    NameOf.YARN: "A new name holds for all swatches of a yarn. Merging two yarns gives all their swatches to one of them.",
    NameOf.PATTERN: "A new name holds for all swatches of a stitch pattern. Merging two gives all their swatches to one of them.",
}


class KnownNames:
    """Those of a ``kind``; what was done comes back as a sentence, what can't be is raised as a RefusedError."""

    def __init__(self, session: Session, kind: NameOf) -> None:
        self._session, self.kind = session, kind
        self.reload()

    def reload(self) -> None:
        """Takes from the logbook again."""
        self.known: dict[str, Named] = known_by_name(self._session.book, self.kind)

    @property
    def why_not(self) -> str:
        """Why nothing can be changed; "" if it can."""
        return self._session.why_not_writable

    @property
    def waits(self) -> bool:
        """Whether a step is waiting for another program."""
        return self._session.waiting

    def name(self, uid: str) -> str:
        """The name of one of them; "" if it is not there."""
        return self.known[uid].record.name if uid in self.known else ""

    def uid(self, name: str) -> str:
        """The uid of that name, upper case and accents aside; "" if there is none."""
        exact = [uid for uid, one in self.known.items() if one.record.name == name.strip()]
        alike = [uid for uid, one in self.known.items() if folded(one.record.name) == folded(name.strip())]
        return next(iter([*exact, *alike]), "")

    def others(self, uid: str) -> list[str]:
        """The names of the others."""
        return [one.record.name for other, one in self.known.items() if other != uid]

    def matching(self, words: str) -> list[str]:
        """The uids of those in whose name every word is found."""
        wanted = folded(words).split()
        return [uid for uid, one in self.known.items() if all(word in folded(one.record.name) for word in wanted)]

    def can_go(self, uid: str) -> bool:
        """Whether no swatch uses it."""
        return uid in self.known and not self.known[uid].swatches

    def says(self, uid: str, into: str) -> str:
        """What merging into the one of the name ``into`` would do, or why it can't be; with none named what can be done."""
        if not into.strip():
            return SENTENCES[self.kind]
        target = self.uid(into)
        if not target:
            return f"There is no {self.kind.value} “{into.strip()}”: choose one from the list."
        try:
            return what_merging_does(self._session.book, self.kind, uid, target)
        except RefusedError as error:
            return f"✕ {error}"

    def rename(self, uid: str, name: str) -> str:
        """Gives it another name."""
        before = self.name(uid)
        self._write(lambda: rename(self._session.book, self.kind, uid, name.strip()))
        return f"“{before}” is called “{name.strip()}” now. Undo takes it back."

    def merge(self, uid: str, into: str) -> str:
        """Gives all its swatches to the one of the name ``into``."""
        target, before = self.uid(into), self.name(uid)
        if not target:
            raise RefusedError(self.says(uid, into) if into.strip() else f"Choose the {self.kind.value} to merge it into.")
        moved: list[int] = []
        self._write(lambda: moved.append(merge(self._session.book, self.kind, uid, target)))
        return f"“{before}” is merged into “{self.name(target)}”: {counted(moved[0], 'swatch')} moved. Undo takes it back."

    def delete(self, uid: str) -> str:
        """Takes it out of the logbook."""
        before = self.name(uid)
        self._write(lambda: delete_unused(self._session.book, self.kind, uid))
        return f"“{before}” is deleted. Undo brings it back."

    def _write(self, action: Callable[[], object]) -> None:
        self._session.write(action)
        self.reload()
        self._session.records_changed(self)
