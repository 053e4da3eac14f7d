"""Markup bands, taxes and fees of the settings in words, for pages, papers and the history alike."""

from collections.abc import Sequence

from .settings import FeeRule, MarkupBand, Tax


def bands_words(bands: Sequence[MarkupBand]) -> str:
    """'from 0.00: cost x 2.50; from 5.00: cost x 2.00'."""
    return "; ".join(f"from {one.from_cost}: cost x {one.multiplier}" for one in bands)


def tax_words(tax: Tax) -> str:
    """'6.5 % of parts, freight, from 2025-01-01 on'."""
    return f"{tax.percent} % of {', '.join(tax.on) or 'nothing'}, from {tax.starts_on} on"


def fee_words(rule: FeeRule, money: str) -> str:
    """'3.50 USD once on a paper, from 2026-01-01 on'; `money` blank: the figure alone."""
    money = f" {money}" if money else ""
    what = f"{rule.charge}{money}" if rule.of in ("document", "piece") else f"{rule.percent} %"
    which = f", for {', '.join(rule.categories)} only" if rule.categories else ""
    most = f", at most {rule.most}{money}" if rule.most is not None else ""
    each = {"document": "once on a paper", "piece": "for each piece"}.get(rule.of, f"of {rule.of}")
    return f"{what} {each}{which}{most}, from {rule.starts_on} on"
