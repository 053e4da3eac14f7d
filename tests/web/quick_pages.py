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
    """Let what an address rule comes to be made once: a counter has some 150 of them."""
    make, kept = Rule.compile, dict[tuple[object, ...], dict[str, Any]]()
    names = ("_parts", "_trace", "_converters", "arguments", "_build", "_build_unknown")

    def once(rule: Rule) -> None:
        key = (rule.rule, rule.endpoint, str(rule.defaults), rule.merge_slashes, rule.subdomain, rule.host)
        if key not in kept:
            make(rule)
            kept[key] = {name: vars(rule)[name] for name in names}
        vars(rule).update(kept[key])
        for builds in ("_build", "_build_unknown"):
            vars(rule)[builds] = kept[key][builds].__func__.__get__(rule, None)

    Rule.compile = once  # type: ignore[method-assign, assignment]
