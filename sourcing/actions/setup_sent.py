"""Set the shop up from files sent to the counter, as `set_up` does from a folder of the shop's computer."""

import tempfile
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from ..basics.problem import refused
from ..basics.terms_view import TermsChange
from .desk import Desk
from .setup import FILES, SetUp, set_up
from .terms import take_terms

TERMS_FILE = "suppliers.toml"


def set_up_sent(desk: Desk, files: Mapping[str, bytes], keep_good: bool = False, sure: bool = False) -> SetUp:
    """Keep the files, told apart by their names, or none of them. Refuses a file of another name."""
    if not files:
        raise refused("no-file-chosen")
    with tempfile.TemporaryDirectory(prefix="sourcing-setup-") as folder:
        for name, content in files.items():
            (Path(folder) / _known(name)).write_bytes(content)
        return set_up(desk, Path(folder), keep_good, sure)


def take_terms_sent(desk: Desk, content: bytes, past: str = "", sure: bool = False) -> tuple[TermsChange, ...]:
    """Keep the entries of a file of suppliers' terms, as `take_terms` does."""
    if not content:
        raise refused("no-file-chosen")
    with tempfile.TemporaryDirectory(prefix="sourcing-terms-") as folder:
        path = Path(folder) / TERMS_FILE
        path.write_bytes(content)
        return take_terms(desk, path, past, sure)


def _known(name: str) -> str:
    """The file of the four it is by its name, whatever folder and case the browser sent; never a path."""
    last = PurePosixPath(name.replace("\\", "/")).name.casefold()
    if last not in FILES:
        raise refused("set-up-file-unknown", found=last[:60], known=", ".join(FILES))
    return last
