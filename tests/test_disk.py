import errno
import os
from pathlib import Path

import pytest

from logbook.disk import sync_folder


def failing(number: int, monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """From now on nothing can be synced; the list fills with the handles that were tried."""
    tried: list[int] = []

    def fail(handle: int) -> None:
        tried.append(handle)
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", fail)
    return tried


@pytest.mark.parametrize("number", [errno.EINVAL, errno.ENOTSUP])
def test_a_drive_that_never_syncs_folders_is_taken_as_it_is(number: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    tried = failing(number, monkeypatch)
    sync_folder(tmp_path)
    assert len(tried) == 1


def test_a_sync_that_should_have_worked_is_not_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    tried = failing(errno.EIO, monkeypatch)
    with pytest.raises(OSError, match=os.strerror(errno.EIO)):
        sync_folder(tmp_path)
    with pytest.raises(OSError, match=os.strerror(errno.EBADF)):  # the handle was closed again
        os.fstat(tried[0])
