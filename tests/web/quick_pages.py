"""Pages and their addresses are compiled once in a run: every test has a counter of its own, which would do it anew."""

from typing import Any

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from werkzeug.routing import Rule


class CompiledOnce(BytecodeCache):
    """What a page was compiled to, by its name and its text."""

    def __init__(self) -> None:
        self._kept: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill it from what is kept; the bucket itself looks whether the text is still the same."""
        if code := self._kept.get(bucket.key):
            bucket.bytecode_from_string(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep it."""
        self._kept[bucket.key] = bucket.bytecode_to_string()


def addresses_built_once() -> None:
    """Let what builds an address of a rule be made once for each rule: a counter has some 150 of them."""
    make, kept = Rule._compile_builder, dict[tuple[object, ...], Any]()

    def once(rule: Rule, append_unknown: bool = True) -> Any:
        key = (rule.rule, rule.endpoint, str(rule.defaults), append_unknown)
        if key not in kept:
            kept[key] = make(rule, append_unknown)
        return kept[key]

    Rule._compile_builder = once  # type: ignore[method-assign, assignment]
