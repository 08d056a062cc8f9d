"""A logbook with the sample in it, for commands to work on."""

import shutil
from pathlib import Path

import pytest

from logbook.book.pictures import folder_of
from logbook.tasks.sampling import new_sample


@pytest.fixture(scope="session")
def sample_logbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample as a logbook, made once; not to be changed."""
    with new_sample(tmp_path_factory.mktemp("sample")) as book:
        return book.path


@pytest.fixture
def wardrobe(sample_logbook: Path, tmp_path: Path) -> Path:
    """A copy of it of the test's own."""
    copy = Path(shutil.copy(sample_logbook, tmp_path / "wardrobe.logbook"))
    shutil.copytree(folder_of(sample_logbook), folder_of(copy))
    return copy
