"""The one list of the page of pieces, in which garments and single pieces stand: what its two parts share."""

from collections.abc import Callable

from logbook.pages.garments.garment_list import GarmentList
from logbook.pages.session import Session


class OneList:
    """The ``lines``, and what the page does that holds both parts; a part by itself has none of that.

    ``opened`` shows the line of that key on the part it is of (False: the user stays where they are). ``begin_single`` and
    ``begin_garment`` begin a new one. ``garments_shown`` brings that part to the front.
    """

    def __init__(self, session: Session) -> None:
        self.lines = GarmentList(session)
        self.opened: Callable[[str], bool] = lambda key: False
        self.begin_single: Callable[[], object] | None = None
        self.begin_garment: Callable[[], object] | None = None
        self.garments_shown: Callable[[], object] = lambda: None
