"""``logbook picture``: a picture file taken in with a swatch or a made piece."""

import argparse
from pathlib import Path

from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common
from logbook.tasks.pictures import add_to_made_piece, add_to_swatch


def fill_picture(parser: Parser) -> None:
    """The options of ``picture``."""
    add_common(parser)
    parser.add_argument(
        "file", type=Path, metavar="FILE", help="a JPEG, PNG or GIF file; the copy in the logbook leaves out where it was taken"
    )
    shows = parser.add_mutually_exclusive_group(required=True)
    shows.add_argument("--swatch", metavar="TAG", help="the swatch in the picture")
    shows.add_argument("--made", metavar="NAME", help="the made piece in the picture")
    parser.set_defaults(run=_picture)


def _picture(arguments: argparse.Namespace) -> int:
    with book_of(arguments) as book:
        if arguments.swatch is not None:
            name, shown = add_to_swatch(book, arguments.swatch, arguments.file), f"swatch {arguments.swatch}"
        else:
            name, shown = add_to_made_piece(book, arguments.made, arguments.file), f"“{arguments.made}”"
    if arguments.json:
        print_json({"picture": name})
    else:
        print_text(f"{arguments.file.name} was added to {shown}.")
    return 0
