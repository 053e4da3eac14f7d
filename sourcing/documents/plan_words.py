"""What a plan was asked and how sure it is, in words that paper, workbook and terminal share."""

from ..basics.plan import Plan, PlanWishes
from .plain_text import count


def sure_words(plan: Plan) -> str:
    """Whether anything could be better, and by how much at most."""
    soonest = plan.wishes.objective == "date"
    if plan.proven:
        return "proven the soonest, and the least of these" if soonest else "proven to be the least"
    if plan.bound is None:
        return f"the best found, not proven to be the {'soonest' if soonest else 'least'}"
    gap = f"{plan.gap_percent:f} %"
    return f"not proven to be the least: no plan can count less than {plan.bound}, so at most {gap} could be saved"


def objective_words(plan: Plan) -> str:
    """What was made least; blank for the landed total alone, which is the rule."""
    wishes = plan.wishes
    if wishes.objective == "date":
        return "Made soonest first, and the cheapest at the door of the soonest"
    if wishes.objective != "cost and days":
        return ""
    waiting = f": {plan.waiting} for this plan's, in no total" if plan.waiting is not None else ""
    day = f"{wishes.value_per_day} {plan.total.currency}"
    return f"Made least: cost at the door and {day} for each day of waiting{waiting}"


def wishes_words(wishes: PlanWishes) -> tuple[str, ...]:
    """What else was asked of the plan, one text a wish; those that were not made are left out."""
    most = wishes.most_suppliers
    said = (
        f"all of it here by {wishes.need_by}" if wishes.need_by else "",
        f"from at most {count(most, 'supplier')}" if most is not None else "",
        "only what is in stock" if wishes.in_stock_only else "",
        "only trusted standings (fitted, maker)" if wishes.trusted_only else "",
        {
            "whatever pays": "",
            "cheaper break": "more than needed only where a price break makes the line cheaper",
            "never": "never more than needs, packs and minimums call for",
        }[wishes.more_than_needed],
        f"{wishes.surplus_credit_percent} % of surplus counted as got back" if wishes.surplus_credit_percent else "",
        "old parts do not go back, so core charges are cost" if wishes.cores_lost else "",
    )
    return tuple(one for one in said if one)


def counted_words(plan: Plan) -> str:
    """What the wishes count, where that is not the landed total: with credit for surplus and lost cores."""
    if plan.counted == plan.total or not plan.orders:
        return ""
    wishes = plan.wishes
    why = (
        "surplus credited" if wishes.surplus_credit_percent else "",
        "core charges as cost" if wishes.cores_lost else "",
    )
    return f"Counted with {', '.join(one for one in why if one) or 'what was asked'}: {plan.counted}"


def unfilled_words(plan: Plan) -> str:
    """That the orders are not for all that is needed: it stands before their sum, lest that be taken for the whole."""
    missing = len(plan.unfilled)
    return (
        f"Not all is filled: {missing} of {count(len(plan.needs), 'need')} {'is' if missing == 1 else 'are'} left out "
        "of the orders below, see 'Not filled'"
    )


def head_words(plan: Plan) -> list[str]:
    """The first lines of a plan, one text a sentence."""
    if not plan.orders:
        return ["No orders: none of the needs can be filled."]
    by = f", all of it here by {plan.latest}" if plan.latest else ", the last day is not known"
    unknown = any(order.landed.missing for order in plan.orders)
    least = "at least " if unknown else ""
    head = f"{count(len(plan.orders), 'order')}: {least}{plan.total} at the door, {sure_words(plan)}{by}"
    asked = wishes_words(plan.wishes)
    core = plan.core_charge
    return [
        *([unfilled_words(plan)] if plan.unfilled else []),
        head,
        *([counted_words(plan)] if counted_words(plan) else []),
        *([words] if (words := objective_words(plan)) else []),
        *([f"Asked: {'; '.join(asked)}"] if asked else []),
        *([f"Core charges beside it: {core}, back when the old parts are returned"] if core.amount else []),
    ]


def back_words(plan: Plan) -> list[str]:
    """What holds if goods go back, and for old parts: each sentence once an order, with the lines it is about."""
    told = []
    for order in plan.orders:
        lines: dict[str, list[str]] = {}
        for item in order.landed.items:
            for words in item.beside.words:
                lines.setdefault(words, []).append(item.item.need)
        for words, labels in lines.items():
            which = f"line{'s' if len(set(labels)) > 1 else ''} {', '.join(dict.fromkeys(labels))}"
            told.append(f"{order.landed.supplier_name}, {which}: {words}")
    return told
