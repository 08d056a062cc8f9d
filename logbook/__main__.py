"""``python -m logbook``: the same as the command ``logbook``."""

import sys

from logbook.commands.main import main

if __name__ == "__main__":
    sys.exit(main())
