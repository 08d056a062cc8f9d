"""Whether the recording file layer can be put under this Python's SQLite."""

import os

import pytest

from tests.faults.disk import library


def _reachable() -> bool:
    try:
        return bool(library().sqlite3_vfs_find(None))
    except (OSError, AttributeError):
        return False


# On a build machine (CI is set) it must be there: a harness that is skipped shows nothing.
needs_the_shim = pytest.mark.skipif(
    not _reachable() and not os.environ.get("CI"), reason="this Python has its SQLite built in, out of reach of ctypes"
)
