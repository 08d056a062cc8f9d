"""The arithmetic of the trade and the records it works on. Pure: no file, clock, locale, window."""
