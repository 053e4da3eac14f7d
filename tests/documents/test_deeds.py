"""Every deed the ledger may hold has words of its own on a page."""

import re
from pathlib import Path

import sourcing
from sourcing.documents.deeds import DONE, done_words

ACTIONS = Path(sourcing.__file__).parent / "actions"


def test_no_deed_is_shown_by_its_name_in_the_ledger() -> None:
    """Names as they stand where a deed is begun: in place, or as a constant of the module."""
    names = set[str]()
    for path in ACTIONS.glob("*.py"):
        text = path.read_text(encoding="utf-8")
        begun = set(re.findall(r"\.writing\(([^)]+)\)", text))
        names |= {name for one in begun for name in re.findall(r'"([^"]+)"', one)}
        for constant in begun & set(re.findall(r"^([A-Z_]+)\b", text, re.M)):
            names |= set(re.findall(rf'^{constant} = "([^"]+)"', text, re.M))
    assert len(names) > 50 and names <= set(DONE), names - set(DONE)


def test_what_is_no_known_deed_keeps_its_name() -> None:
    """Of a database that a later version of the program wrote in."""
    assert done_words("make link") == "link made" and done_words("sing") == "sing"
