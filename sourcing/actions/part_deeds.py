"""A part of ours, added, changed and taken out one by one: by a page or a command, by the rules of the table's rows."""

from sqlalchemy import Connection

from ..basics.equivalence import OurPart
from ..basics.our_part import KeptPart, OpenedPart, PartTold, part_changes
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..matching.equivalences.graph import graph_of
from ..matching.equivalences.number_book import bearers_of
from ..matching.equivalences.number_cells import damage_of
from ..matching.equivalences.table_rows import part_of
from ..storage.equivalence import our_parts
from ..storage.part_rows import correct_part, drop_part, keep_part, what_names
from .desk import Desk
from .equivalences import table_around
from .part_size import size_read
from .part_touches import touched_by

ADD, CHANGE, TAKE_OUT = "add part", "change part", "take part out"
"""The deeds, about 'part CODE'."""
LONGEST_CODE = 60
"""Characters of a code: it stands on every paper and in every address."""


def add_part(desk: Desk, told: PartTold) -> KeptPart:
    """Keep a new part. Refuses what a row of the worksheet 'parts' is refused for, and a code that is another part's.

    The same code in other case or punctuation is the same code.
    """
    new = _part(told)
    with desk.writing(ADD) as pen:
        _refuse_known(pen.connection, new.code)
        keep_part(pen.connection, new)
        pen.note(subject_of(new.code), ", ".join(one for one in (new.name, new.size and f"size {new.size}") if one))
    return KeptPart(part=new, size=size_read(new))


def look_at_change(desk: Desk, told: PartTold) -> KeptPart:
    """What changing the part with that code would change, and what another size would do to its offers."""
    with desk.store.reading() as connection:
        return _change(connection, desk, told)


def change_part(desk: Desk, told: PartTold) -> KeptPart:
    """Change what is said of the part with that code; the code itself stays. Refuses where nothing changes."""
    with desk.writing(CHANGE) as pen:
        change = _change(pen.connection, desk, told)
        correct_part(pen.connection, change.part)
        pen.note(subject_of(change.part.code), "; ".join(change.changes))
    return change


def take_part_out(desk: Desk, code: str) -> OurPart:
    """Take a part out that nothing names. Refuses where a statement, a job or an answer does, or ever did."""
    with desk.writing(TAKE_OUT) as pen:
        part = _ours(pen.connection, code)
        named = what_names(pen.connection, part.code)
        if named:
            raise refused("part-in-use", found=part.code, why=f"{' and '.join(named)} names it")
        drop_part(pen.connection, part.code)
        pen.note(subject_of(part.code), part.name)
    return part


def opened_part(desk: Desk, code: str) -> OpenedPart:
    """The part as it stands. Refuses a code no part of ours has."""
    with desk.store.reading() as connection:
        part = _ours(connection, code)
        return OpenedPart(part=part, size=size_read(part), named_by=what_names(connection, part.code))


def _change(connection: Connection, desk: Desk, told: PartTold) -> KeptPart:
    before = _ours(connection, told.code)
    now = _part(told, before.code)
    changes = part_changes(before, now)
    if not changes:
        raise refused("part-unchanged", found=before.code)
    touched = touched_by(connection, desk.at.date(), before, now)
    return KeptPart(part=now, size=size_read(now), before=before, changes=changes, touched=touched)


def _part(told: PartTold, code: str = "") -> OurPart:
    """The part by the rules of a row of the worksheet. `code`: as it is kept, where it is not new."""
    row = {name.replace("_", " "): str(getattr(told, name)).strip() for name in PartTold.__struct_fields__}
    row["code"] = code or row["code"]
    if not number_key(row["code"]):
        raise refused("part-code-missing")
    if len(row["code"]) > LONGEST_CODE:
        raise refused("part-code-too-long", found=f"{row['code'][:20]}...", most=LONGEST_CODE)
    if not code and (why := damage_of(row["code"])):
        raise refused("part-code-damaged", found=row["code"], why=why)
    return part_of(row, 0)


def _refuse_known(connection: Connection, code: str) -> None:
    key = number_key(code)
    same = next((one for one in our_parts(connection) if number_key(one.code) == key), None)
    if same:
        raise refused("part-there-already", found=code, ours=same.code, name=same.name or "without a name")
    others = bearers_of(graph_of(table_around(connection, code))).get(key)
    if others:
        raise refused("part-number-of-another", found=code, ours=" and ".join(sorted(others)))


def _ours(connection: Connection, code: str) -> OurPart:
    key = number_key(code)
    found = next((one for one in our_parts(connection) if number_key(one.code) == key), None)
    if found is None:
        raise refused("our-part-unknown", found=code)
    return found


def subject_of(code: str) -> str:
    """What deeds about the part with that code are about."""
    return f"part {code}"
