"""Sizes that hold: files, functions, arguments; and a docstring wherever a reader needs one."""

import ast
import statistics
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.layout.test_imports import PACKAGE, STEPS, folder_of, modules

TESTS = PACKAGE.parent / "tests"
DOCUMENTED = ("basics", "actions", *STEPS)

Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(file: Path) -> Iterator[Function]:
    """Every function and method of a module."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, Function):
            yield node


def body_lines(function: Function) -> int:
    """Lines of the body, without the docstring."""
    body = function.body[1:] if ast.get_docstring(function) is not None else function.body
    if not body:
        return 0
    return (body[-1].end_lineno or 0) - body[0].lineno + 1


@pytest.mark.parametrize("file", [*modules(), *TESTS.rglob("*.py")], ids=lambda file: file.name)
def test_files_are_short(file: Path) -> None:
    """At most 300 lines."""
    assert len(file.read_text(encoding="utf-8").splitlines()) <= 300


def test_functions_are_short() -> None:
    """A body of at most 40 lines, 8 in the middle."""
    sizes = {f"{file.name}:{one.name}": body_lines(one) for file in modules() for one in functions(file)}
    assert not {name: size for name, size in sizes.items() if size > 40}
    assert statistics.median(sizes.values()) <= 8


def test_arguments_are_few() -> None:
    """At most six outside the command line, not counting self."""
    for file in modules():
        if folder_of(file) == "cli":
            continue
        for one in functions(file):
            names = [arg.arg for arg in (*one.args.posonlyargs, *one.args.args, *one.args.kwonlyargs)]
            assert len([name for name in names if name not in ("self", "cls")]) <= 6, f"{file.name}:{one.name}"


def _public(body: list[ast.stmt]) -> Iterator[ast.FunctionDef | ast.ClassDef]:
    """Functions, classes and methods others can call; what is nested in a function is nobody else's."""
    for node in body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from _public(node.body)


@pytest.mark.parametrize("file", modules(), ids=lambda file: str(file.relative_to(PACKAGE)))
def test_docstrings_stand_where_they_must(file: Path) -> None:
    """Every module; every public function, class and method of basics, steps and actions."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    assert ast.get_docstring(tree), file
    if folder_of(file) not in DOCUMENTED:
        return
    for node in _public(tree.body):
        assert ast.get_docstring(node), f"{file.name}:{node.name}"


def test_no_binary_floats_in_money() -> None:
    """float( appears nowhere in the package but where a comment says why it computes nothing."""
    for file in modules():
        for number, text in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            if "float(" in text and 'float("inf")' not in text:
                assert "only to" in text, f"{file.name}:{number}"
