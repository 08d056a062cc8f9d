"""Making the name of a file that was written durable."""

import errno
import os
from pathlib import Path


def sync_folder(folder: Path) -> None:
    """Brings the names in the folder to the disk, where that can be done: on Windows folders can't be opened (names are durable
    there by themselves), and some network drives can't sync them. Raises OSError if it should have worked and did not.
    """
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in (errno.EINVAL, errno.ENOTSUP):
            raise
    finally:
        os.close(handle)
