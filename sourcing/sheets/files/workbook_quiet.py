"""Keeps quiet what the compiled reader writes to the error output before its failure arrives as a sentence."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock

ERROR_OUTPUT = 2
ONE_AT_A_TIME = Lock()


@contextmanager
def quiet() -> Iterator[None]:
    """Nothing is written to the error output meanwhile; where there is none, nothing is changed."""
    with ONE_AT_A_TIME:
        try:
            kept = os.dup(ERROR_OUTPUT)
        except OSError:
            yield
            return
        try:
            nowhere = os.open(os.devnull, os.O_WRONLY)
            os.dup2(nowhere, ERROR_OUTPUT)
            os.close(nowhere)
            yield
        finally:
            os.dup2(kept, ERROR_OUTPUT)
            os.close(kept)
