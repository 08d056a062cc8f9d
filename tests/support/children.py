"""Running a function in a forked child: as a user without rights (root ignores file modes), or under limits of its own."""

import os
import sys
import traceback
import warnings
from collections.abc import Callable

import pytest

as_nobody_only = pytest.mark.skipif(os.name != "posix", reason="users and file modes as on Unix")


def in_child(work: Callable[[], None]) -> None:
    """Runs ``work`` in a forked child and fails if it raises."""
    with warnings.catch_warnings():
        # Threads of other tests do not live on in the child, and the work here needs none of them.
        warnings.simplefilter("ignore", DeprecationWarning)
        child = os.fork()
    if child == 0:
        code = 1
        try:
            work()
            code = 0
        except BaseException:
            traceback.print_exc(file=sys.__stderr__)
        finally:
            os._exit(code)
    assert os.waitpid(child, 0)[1] == 0, "the child failed: see its traceback on standard error"


def as_nobody(work: Callable[[], None]) -> None:
    """Runs ``work`` in a child as a user other than root."""

    def without_rights() -> None:
        if os.getuid() == 0:
            os.setgroups([])
            os.setgid(65534)
            os.setuid(65534)
        work()

    in_child(without_rights)
