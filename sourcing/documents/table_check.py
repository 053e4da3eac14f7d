"""What a check of the equivalence table found, as text: each kind with its findings and the statements involved."""

from collections.abc import Sequence
from itertools import groupby

from ..basics.statement_history import KeptStatement
from ..basics.table_finding import FINDING_KINDS, Finding
from .equivalences import history_text, statement_words
from .plain_text import count, document, wrapped

MOST = 20
"""Findings shown of each kind; `--json` has all of them."""


def added_text(kept: KeptStatement, found: Sequence[Finding] | None) -> str:
    """A statement that was just added, and what there is to look at now. None: that was not looked for."""
    text = history_text(kept)
    if found is None:
        return document(
            [text, *wrapped("Too much hangs together with it to look at it at once: 'sourcing table check'.")]
        )
    return document([text, "", *_findings(found)]) if found else text


def check_text(found: Sequence[Finding]) -> str:
    """By kind, what may send a wrong part first; statements with their numbers."""
    return document(_findings(found) if found else ["Nothing in the table contradicts itself."])


def _findings(found: Sequence[Finding]) -> list[str]:
    lines = wrapped(f"To look at: {count(len(found), 'finding')}")
    ordered = sorted(found, key=lambda one: FINDING_KINDS.index(one.kind))
    for kind, some in groupby(ordered, key=lambda one: one.kind):
        findings = list(some)
        lines += ["", *wrapped(f"{kind.capitalize()}: {len(findings):,}")]
        lines += [line for one in findings[:MOST] for line in _finding(one)]
        lines += [f"  and {len(findings) - MOST:,} more"] if len(findings) > MOST else []
    return lines


def _finding(one: Finding) -> list[str]:
    lines = wrapped(one.words, 2)
    lines += [line for said in one.statements for line in wrapped(statement_words(said), 6)]
    return lines + ([f"      and {one.more:,} more statements"] if one.more else [])
