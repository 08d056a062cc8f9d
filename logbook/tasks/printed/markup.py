"""What every printed page is made of: no script, no outside link; all text escaped."""

from collections.abc import Iterable, Sequence
from html import escape


def page(title: str, style: str, parts: Iterable[str]) -> str:
    """The whole HTML file; ``title`` is plain text, ``parts`` are HTML, and empty ones are left out."""
    head = f'<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title>'
    body = [part for part in parts if part]
    return "\n".join([head, f"<style>{style}</style></head><body>", *body, "</body></html>\n"])


def listed(sentences: Iterable[str]) -> str:
    """A list with a dot before each."""
    return "<ul>" + "".join(f"<li>{escape(sentence)}</li>" for sentence in sentences) + "</ul>"


def table(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table under its headings."""
    head = "".join(f"<th>{escape(cell)}</th>" for cell in headings)
    body = "".join("<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def inline(svg: str) -> str:
    """A picture without the line that makes it a file of its own."""
    return svg.partition("?>\n")[2] or svg
