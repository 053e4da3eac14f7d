"""Suppliers' terms as text: the list, one supplier's versions in words, what was changed; and as a file to edit."""

from collections.abc import Iterable, Sequence
from datetime import timedelta

from ..basics.problem import Problem
from ..basics.terms import Terms
from ..basics.terms_view import SupplierTerms, TermsChange
from ..basics.toml_text import stated, toml_text
from ..basics.value import Value
from .plain_text import count, document, shown, table, wrapped
from .terms_words import terms_words

HEAD = """# What holds with each supplier: one [[supplier]] entry for each, as written out on {on}.
# Money is in the supplier's currency, but for freight of returns and old parts, which is in the shop's.
# Fields left out are not set. 'sourcing terms --file' takes the file in again; where terms change, give the entry the
# 'starts_on' from which they hold: what held before stays for the days before.
"""


def terms_list_text(found: Sequence[SupplierTerms]) -> str:
    """Every supplier with what holds on the day, on a line or two."""
    if not found:
        return "There are no suppliers yet: 'sourcing setup' or 'sourcing terms --file' takes them in.\n"
    rows = [("Supplier", "Holds from", "Freight", "Minimum order", "Not known")]
    for one in found:
        holds = one.holds
        words = terms_words(holds) if holds else {}
        none = "none" if holds else ""
        rows.append(
            (
                f"{one.supplier}, {one.name}",
                str(holds.starts_on) if holds else f"only from {one.versions[0].starts_on}",
                words.get("Freight", ""),
                words.get("Minimum order", none),
                "; ".join(what.what for what in one.not_known),
            )
        )
    return document(
        [f"Terms on {found[0].on}:", "", *table(rows, (22, 12, 22, 14, 26)), "", "One of them: sourcing terms SUPPLIER"]
    )


def supplier_terms_text(found: SupplierTerms) -> str:
    """One supplier: what holds on the day in words, what is not known, every version and what it changed."""
    holds = found.holds
    lines = [f"{found.name} ({found.supplier}) on {found.on}"]
    if holds is None:
        lines.append(f"No terms hold yet: the first begin on {found.versions[0].starts_on}.")
    else:
        lines += ["", f"Since {holds.starts_on}, in {holds.currency}:"]
        lines += [
            line for name, words in terms_words(holds).items() for line in wrapped(_sentence(f"{name}: {words}"), 2)
        ]
        lines += _open(found)
    return document([*lines, "", *_versions(found), *_deeds(found)])


def _open(found: SupplierTerms) -> list[str]:
    if not found.not_known:
        return ["", "Nothing is left open."]
    told = [wrapped(f"{one.what}: {one.follows}.", 2) for one in found.not_known]
    return ["", "Not known, and what follows:", *(line for lines in told for line in lines)]


def _versions(found: SupplierTerms) -> list[str]:
    """Every version, from when till when, and what it says otherwise than the one before."""
    lines = ["Versions:"]
    for at, one in enumerate(found.versions):
        after = found.versions[at + 1 : at + 2]
        till = f" to {after[0].starts_on - timedelta(days=1)}" if after else " on"
        lines.append(f"  from {one.starts_on}{till}{': holds' if one is found.holds else ''}")
        if at:
            lines += [line for words in differences(found.versions[at - 1], one) for line in wrapped(words, 4)]
    return lines


def _deeds(found: SupplierTerms) -> list[str]:
    if not found.deeds:
        return []
    lines = [line for one in found.deeds for line in wrapped(f"{one.at:%Y-%m-%d %H:%M} {one.who}: {one.detail}", 2)]
    return ["", "Changed by hand:", *lines]


def differences(before: Terms, after: Terms) -> list[str]:
    """What changed between two versions, in words: 'Minimum order: was 25.00 USD; ..., now 30.00 USD; ...'."""
    old, new = ({"Name": one.name, "Currency": one.currency, **terms_words(one)} for one in (before, after))
    names = [name for name in dict.fromkeys([*old, *new]) if old.get(name) != new.get(name)]
    return [_sentence(f"{name}: was {old.get(name, 'not set')}; is {new.get(name, 'not set')}") for name in names]


def _sentence(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."


def terms_change_text(done: Sequence[TermsChange]) -> str:
    """What was changed, old and new."""
    if not done:
        return "Nothing changed: all of it is kept already.\n"
    return document(line for one in done for line in _change(one))


def _change(one: TermsChange) -> Iterable[str]:
    if one.terms is None:
        yield f"{one.name}: the terms from {one.starts_on} on are withdrawn; no others hold then."
        return
    if one.before is None:
        yield f"{one.name}: terms from {one.starts_on} on are kept."
    elif one.terms.starts_on < one.starts_on:
        yield f"{one.name}: the terms from {one.starts_on} on are withdrawn; those from {one.terms.starts_on} hold on."
    else:
        yield f"{one.name}, from {one.starts_on} on:"
    if one.before is not None:
        yield from (line for change in one.changes for line in wrapped(change.words(), 2))
    yield from (line for problem in one.told for line in wrapped(f"Mind: {problem.sentence()}", 2))


def warnings_text(warnings: Sequence[Problem]) -> str:
    """What to mind after a set-up, each on a line of its own; blank where nothing is."""
    return "".join(f"\nMind: {shown(one.sentence())}" for one in warnings)


def terms_toml(found: Sequence[SupplierTerms]) -> str:
    """The terms that hold on the day as a file to edit, which reads back to the same values."""
    entries = [_entry(one.holds) for one in found if one.holds]
    return "\n".join([HEAD.format(on=found[0].on if found else "no day"), *entries])


def written_text(found: Sequence[SupplierTerms], file: str) -> str:
    """What was written."""
    held = sum(one.holds is not None for one in found)
    return f"Wrote the terms of {count(held, 'supplier')} to {file}.\n"


def _entry(terms: Terms) -> str:
    """One [[supplier]]: plain fields first, then a table for each part that has fields of its own."""
    fields = stated(terms)
    plain = [f"{name} = {toml_text(one)}" for name, one in fields.items() if not isinstance(one, Value)]
    tables = [
        "\n".join(["", f"[supplier.{name}]", *(f"{key} = {toml_text(each)}" for key, each in stated(one).items())])
        for name, one in fields.items()
        if isinstance(one, Value)
    ]
    return "\n".join(["[[supplier]]", *plain, *tables, ""])
