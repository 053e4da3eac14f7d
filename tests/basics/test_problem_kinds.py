"""Every kind of problem is used, and every code that is used exists with the facts its wording asks for."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

from sourcing.basics.problem_kinds import KINDS

SOURCE = Path(__file__).parents[2] / "sourcing"


def _calls() -> Iterator[tuple[str, set[str], bool]]:
    """(code, facts named, whether facts are also passed by **) of every refused(...) and problem(...)."""
    for file in SOURCE.rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            name = getattr(node.func, "id", "") if isinstance(node, ast.Call) else ""
            if isinstance(node, ast.Call) and name in ("refused", "problem") and node.args:
                first = node.args[0]
                if isinstance(first, ast.Constant):
                    facts = {word.arg for word in node.keywords if word.arg}
                    yield str(first.value), facts, any(word.arg is None for word in node.keywords)


def test_codes_and_facts_fit() -> None:
    """A message with a missing fact would be a crash in the user's face."""
    seen = list(_calls())
    assert len(seen) > 30
    for code, facts, more in seen:
        assert code in KINDS, code
        texts = KINDS[code].what + KINDS[code].remedy
        asked = {field for _, field, _, _ in Formatter().parse(texts) if field}
        assert asked <= facts or more, (code, asked - facts)


def test_every_kind_is_used() -> None:
    """A wording nobody can meet is dead text."""
    everything = "".join(file.read_text(encoding="utf-8") for file in SOURCE.rglob("*.py") if "_kinds" not in file.name)
    unused = [code for code in KINDS if f'"{code}"' not in everything]
    assert not unused


def test_sentences_read_as_sentences() -> None:
    """What, then what to do; no full stop inside, no capital at the start of the remedy."""
    for code, kind in KINDS.items():
        assert kind.title and kind.what and kind.remedy, code
        assert not kind.what.endswith(".") and not kind.remedy.endswith("."), code
        assert not re.match(r"[A-Z][a-z]", kind.remedy), code


def test_no_code_is_given_twice() -> None:
    """The later one would take the other's place, and the other's refusals would be faults."""
    codes: list[str] = []
    for file in sorted((SOURCE / "basics").glob("*problem_kinds.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            for key, value in zip(node.keys, node.values, strict=True) if isinstance(node, ast.Dict) else ():
                if isinstance(key, ast.Constant) and isinstance(value, ast.Call):
                    codes.append(str(key.value))
    assert {code for code in codes if codes.count(code) > 1} == set()
    assert set(KINDS) == set(codes)
