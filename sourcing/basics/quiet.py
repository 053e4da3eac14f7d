"""Keeps quiet what compiled code writes to an output of its own accord, past Python."""

import ctypes
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock

OUTPUT, ERROR_OUTPUT = 1, 2
ONE_AT_A_TIME = Lock()


@contextmanager
def quiet(output: int = ERROR_OUTPUT) -> Iterator[None]:
    """Nothing is written to that output meanwhile; where there is none, nothing is changed."""
    with ONE_AT_A_TIME:
        try:
            kept = os.dup(output)
        except OSError:
            yield
            return
        try:
            nowhere = os.open(os.devnull, os.O_WRONLY)
            os.dup2(nowhere, output)
            os.close(nowhere)
            yield
        finally:
            _write_out()
            os.dup2(kept, output)
            os.close(kept)


def _write_out() -> None:
    """What the C library still holds back goes where it belongs, or it would come out later."""
    try:
        library = ctypes.CDLL("ucrtbase" if sys.platform == "win32" else None)
        library.fflush(None)
    except (OSError, AttributeError):  # no such library here: then nothing is known to be held back by it
        return
