"""What new terms change against those that are kept, and which later ones know nothing of it."""

from collections.abc import Sequence

from ..basics.problem import Problem, problem
from ..basics.terms import Terms
from ..basics.terms_view import TermsChange, changed_fields


def terms_changes(kept: Sequence[Terms], every: Sequence[Terms], past: str = "") -> tuple[TermsChange, ...]:
    """What each entry changes against those kept and those before it, by day; what changes nothing is left out."""
    there = {(one.supplier, one.starts_on): one for one in kept}
    done = []
    for new in sorted(every, key=lambda one: one.starts_on):
        done.append(terms_change(sorted(there.values(), key=lambda one: one.starts_on), new, past))
        there[new.supplier, new.starts_on] = new
    return tuple(one for one in done if one.changes)


def terms_change(kept: Sequence[Terms], new: Terms, past: str = "") -> TermsChange:
    """What keeping these terms changes against what would hold on their first day without them."""
    mine = [one for one in kept if one.supplier == new.supplier]
    begun = [one for one in mine if one.starts_on <= new.starts_on]
    before = begun[-1] if begun else None
    changes = changed_fields(before, new)
    return TermsChange(
        supplier=new.supplier,
        name=new.name,
        starts_on=new.starts_on,
        before=before,
        terms=new,
        changes=changes,
        past=past.strip(),
        told=tuple(_later(mine, new, {one.field for one in changes})) if before else (),
    )


def _later(mine: Sequence[Terms], new: Terms, fields: set[str]) -> list[Problem]:
    """Versions that begin later and know nothing of the change."""
    told = []
    for one in mine:
        differs = [change.words() for change in changed_fields(new, one) if change.field in fields]
        if one.starts_on > new.starts_on and differs:
            found = "; ".join(differs)
            told.append(problem("later-terms", name=new.name, day=one.starts_on, found=found))
    return told


def change_words(done: TermsChange) -> str:
    """Every field with old and new, on one line."""
    return "; ".join(one.words() for one in done.changes)


def subject(supplier: str) -> str:
    """What deeds about a supplier are entered under."""
    return f"supplier {supplier}"
