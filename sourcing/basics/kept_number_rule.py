"""Number rules of suppliers as the shop keeps them: who confirmed one on what grounds, who withdrew it and why."""

from datetime import datetime

from .number_rule import NumberRule
from .value import Value


class KeptNumberRule(Value, frozen=True, kw_only=True):
    """`number` is what a person names it by. `grounds` is what she was shown. Blank `withdrawn_at`: it holds."""

    number: int
    rule: NumberRule
    grounds: str
    confirmed_at: datetime
    confirmed_by: str
    withdrawn_at: datetime | None = None
    withdrawn_by: str = ""
    withdrawn_why: str = ""

    @property
    def holds(self) -> bool:
        """Whether nobody has withdrawn it."""
        return self.withdrawn_at is None


class ProposedRule(Value, frozen=True, kw_only=True):
    """A rule that a sheet suggests, with the counts that speak for it in words. Nothing is done before a yes."""

    rule: NumberRule
    words: str


class NumberRules(Value, frozen=True, kw_only=True):
    """Every rule there ever was, and what the newest sheets suggest beside those that hold."""

    kept: tuple[KeptNumberRule, ...]
    proposed: tuple[ProposedRule, ...]
