"""The errors a user is meant to read: one sentence that says what is wrong and what to do."""


class LogbookError(Exception):
    """Base of all errors that are shown to the user as they stand."""


class UnreadableError(LogbookError):
    """Typed text that cannot be read; the message names the text and gives an example that can."""


class RefusedError(LogbookError):
    """Readable, but the logbook, the sheet or the arithmetic cannot do it."""


class UsageError(Exception):
    """The arguments of a command alone are wrong; the message is one line."""
