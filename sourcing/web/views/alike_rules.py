"""What suppliers put around every number: proposed by their sheets, confirmed or withdrawn by a person."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.look_alikes import suppliers_with_sheets
from ...actions.number_rules import confirm_number_rule, rules_at_hand, withdraw_number_rule
from ...basics.number_rule import NumberRule
from ...basics.problem import refused
from ...basics.typed import one_word
from ...documents.review import rule_words
from ..desks import desk
from ..forms import deed, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _

PLACES = ("prefix", "suffix")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of look-alikes."""
    blueprint.add_url_rule("/look-alikes/number-rules", "rules_page", rules_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/look-alikes/number-rules/<int:rule>", "rule_page", rule_page, methods=["GET", "POST"])


@open_to(*WITH_COSTS)
def rules_page() -> ResponseReturnValue:
    """The rules that hold, what is proposed, and a form for one of a person's own."""
    if request.method == "POST" and (gone := deed(_confirm)):
        return gone
    found, left = rules_at_hand(desk(), request.args.get("supplier", ""))
    words = [(one, rule_words(one)) for one in found.kept]
    suppliers = suppliers_with_sheets(desk())
    return show("alike/rules.html", found=found, words=words, left=left, suppliers=suppliers)


@open_to(*WITH_COSTS)
def rule_page(rule: int) -> ResponseReturnValue:
    """Withdraw a rule, for a reason."""
    if request.method == "POST" and (gone := deed(lambda: _withdraw(rule))):
        return gone
    kept = [one for one in rules_at_hand(desk())[0].kept if one.number == rule]
    if not kept:
        raise refused("no-such-number-rule", found=rule)
    return show("alike/rule.html", rule=kept[0], words=rule_words(kept[0]))


def _confirm() -> str:
    kind = one_word(text("kind") or "prefix", "place", PLACES)
    rule = NumberRule(supplier=text("supplier"), kind="prefix" if kind == "prefix" else "suffix", text=text("text"))
    kept = confirm_number_rule(desk(), rule)
    tell(
        _("Numbers are looked up without it from now on. What waits was found before: look through the sheets again."),
        undo=url_for("alike.rule_page", rule=kept.number),
    )
    return url_for("alike.rules_page")


def _withdraw(rule: int) -> str:
    withdraw_number_rule(desk(), rule, text("words"))
    tell(_("The rule holds no more. What waits was found before: look through the sheets again."))
    return url_for("alike.rules_page")
