"""Starts the program out of its folder, and with it nothing else of what lies there.

The starter of the folder sets LD_LIBRARY_PATH, which is read once, when a process begins. A browser or a viewer that the program
opens is to go by the system's libraries, not by those of the folder.
"""

import os
import sys

from logbook.commands.main import main

before = os.environ.pop("LD_LIBRARY_PATH_ORIG", None)
os.environ.pop("LD_LIBRARY_PATH", None)
if before is not None:
    os.environ["LD_LIBRARY_PATH"] = before

sys.exit(main())
