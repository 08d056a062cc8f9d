"""Running a function as a user without rights: root ignores file modes, so a child process changes its user first."""

import os
import sys
import traceback
from collections.abc import Callable

import pytest

as_nobody_only = pytest.mark.skipif(os.name != "posix", reason="users and file modes as on Unix")


def as_nobody(work: Callable[[], None]) -> None:
    """Runs ``work`` in a forked child as a user other than root and fails if it raises."""
    child = os.fork()
    if child == 0:
        code = 1
        try:
            if os.getuid() == 0:
                os.setgroups([])
                os.setgid(65534)
                os.setuid(65534)
            work()
            code = 0
        except BaseException:
            traceback.print_exc(file=sys.__stderr__)
        finally:
            os._exit(code)
    assert os.waitpid(child, 0)[1] == 0, "the child failed: see its traceback on standard error"
