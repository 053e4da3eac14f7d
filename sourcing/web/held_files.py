"""Files sent to the counter and held until something is done with them: under random names, in a folder of our own.

The name a browser gave a file is never part of a path. The folder is made when it is needed and goes when the counter
ends.
"""

import atexit
import secrets
import shutil
import tempfile
from functools import cached_property
from pathlib import Path

from werkzeug.datastructures import FileStorage


class HeldFiles:
    """A private folder; each file has a random name that says nothing of what is in it."""

    @cached_property
    def folder(self) -> Path:
        """Where they are; only this user of the computer can look in."""
        path = Path(tempfile.mkdtemp(prefix="sourcing-held-"))
        atexit.register(shutil.rmtree, path, ignore_errors=True)
        return path

    def hold(self, sent: FileStorage) -> Path:
        """Keep what was sent."""
        path = self.folder / secrets.token_hex(16)
        sent.save(path)
        return path

    def release(self, path: Path) -> None:
        """Let a file go; also one that is gone already."""
        path.unlink(missing_ok=True)
