"""What past jobs would have been priced at by other markup bands, held by list price, floor and ending as they were."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path

from ..basics.collecting import without_collecting
from ..basics.margin import WhatIf
from ..basics.margin_facts import BehindFacts, JobFacts, QuotedLine
from ..basics.money import Money
from ..basics.problem import refused
from ..basics.settings import CategoryBands, MarkupBand, Settings
from ..basics.settings_checks import settings_contradictions
from ..basics.typed import amount
from ..basics.value import Value, changed
from ..margins.job_lines import job_lines
from ..margins.line import LineFigures
from ..margins.what_if import Repriced
from ..margins.what_if import what_if as added_up
from ..quoting.bands import band_for, bands_for
from ..quoting.pricing import unit_price
from ..storage.margin_rows import ListPrice, every_settings, list_prices
from ..storage.shop import settings_on
from .desk import Desk
from .files import made, read_tables, read_text
from .margin_loading import Loaded, load, settings_of
from .margin_months import Months


class OtherBands(Value, frozen=True, kw_only=True):
    """Bands to try instead of the shop's. `category_bands` None: those of the shop stay as they are."""

    markup_bands: tuple[MarkupBand, ...]
    category_bands: tuple[CategoryBands, ...] | None = None


def bands_from(path: Path) -> OtherBands:
    """The bands of a file written as shop.toml is; whatever else stands in it is passed over. Refuses one without."""
    tables = read_tables(read_text(path), path.name)
    wanted = {name: tables[name] for name in ("markup_bands", "category_bands") if name in tables}
    if "markup_bands" not in wanted:
        raise refused("no-bands")
    return made(wanted, OtherBands, path.name)


def bands_of_lines(text: str) -> OtherBands:
    """The bands typed a line for each, '50 = 1.60': from this cost the price is the cost times that. Refuses others."""
    pairs = [line.partition("=") for line in text.splitlines() if line.strip()]
    for left, sign, right in pairs:
        if not sign:
            raise refused("sides-of-a-line", found=f"{left}{right}"[:60], example="50 = 1.60")
    made = [MarkupBand(from_cost=amount(left.strip()), multiplier=amount(right.strip())) for left, _, right in pairs]
    return OtherBands(markup_bands=tuple(sorted(made, key=lambda band: band.from_cost)))


def what_if(desk: Desk, bands: OtherBands, within: Months | None = None) -> WhatIf:
    """Approved lines of all jobs priced by these bands at the costs they were quoted on; `within`: of those months.

    Each is priced by the settings of its quote's day with only the bands changed. A line whose own settings do not give
    its price again (it was held, or the list price of its sheet is gone) keeps its price and is counted apart. Refuses
    bands that can't hold.
    """
    if not bands.markup_bands:
        raise refused("no-bands")
    with without_collecting(), desk.store.reading() as connection:
        _check(settings_on(connection, desk.at.date()), bands)
        loaded = load(connection, within.answered if within else None, desk.at.date())
        told = [(facts, line) for facts in loaded.jobs for line in _with_cost(facts, within)]
        behind = [line.behind for _, line in told if line.behind]
        listed = list_prices(connection, {(one.sheet, one.supplier_number) for one in behind})
        days = _Days(settings=tuple(every_settings(connection)), bands=bands)
    figures = {(line.job, line.label): line for facts in loaded.jobs for line in job_lines(facts, loaded.book)}
    found = [_repriced(facts, line, (loaded, days, figures), listed) for facts, line in told]
    priced = [one for one in found if one is not None]
    return added_up(priced, len(found) - len(priced), _in_words(bands), loaded.currency)


def _with_cost(facts: JobFacts, within: Months | None) -> list[QuotedLine]:
    lines = [line for line in facts.quote.lines if line.part and line.label in facts.approved and line.behind]
    return [line for line in lines if within is None or within.has(f"{facts.approved[line.label]:%Y-%m}")]


class _Days(Value, frozen=True, kw_only=True):
    """The shop's settings by day, and the bands to try instead."""

    settings: tuple[tuple[date, Settings], ...]
    bands: OtherBands

    def both(self, day: date) -> tuple[Settings, Settings]:
        """The settings of a day, and the same with the other bands."""
        as_was = settings_of(self.settings, day)
        return as_was, _with(as_was, self.bands)


def _with(settings: Settings, bands: OtherBands) -> Settings:
    categories = settings.category_bands if bands.category_bands is None else bands.category_bands
    return changed(settings, markup_bands=bands.markup_bands, category_bands=categories)


def _repriced(
    facts: JobFacts,
    line: QuotedLine,
    of: tuple[Loaded, _Days, Mapping[tuple[str, str], LineFigures]],
    listed: Mapping[tuple[int, str], ListPrice],
) -> Repriced | None:
    (loaded, days, figures), behind = of, line.behind
    assert behind is not None
    job, currency = facts.quote.job, loaded.currency
    as_was, other = days.both(facts.quote.made_at.date())
    cost = Money(amount=Decimal(behind.unit_cost.amount), currency=currency)
    list_price = _list_price(behind, listed, currency)
    if unit_price(cost, list_price, as_was, line.category).each.amount != Decimal(line.unit_price.amount):
        return None
    after = unit_price(cost, list_price, other, line.category)
    mine = figures[job, line.label]
    band = band_for(bands_for(other, line.category), cost.amount)
    now = Money(amount=Decimal(line.parts_price.amount), currency=currency)
    more = (after.each * line.quantity - now).minor()
    own = line.category if bands_for(other, line.category) is not other.markup_bands else ""
    return Repriced(
        job=job,
        band=f"{own + ' ' if own else ''}from {band.from_cost}, cost x {band.multiplier}",
        band_order=(own, band.from_cost),
        cost=mine.cost,
        before=mine.price + mine.freight_share,
        after=mine.price + mine.freight_share + more,
        capped=after.before_cap != after.each,
        floor_percent=loaded.rules[job].floor_percent,
        freight=mine.freight_share,
        freight_cost=-mine.freight_apart.quoted,
    )


def _list_price(behind: BehindFacts, listed: Mapping[tuple[int, str], ListPrice], currency: str) -> Money | None:
    found = listed.get((behind.sheet, behind.supplier_number))
    if found is None or found.currency != currency:
        return None
    return Money(amount=found.each, currency=currency)


def _check(settings: Settings, bands: OtherBands) -> None:
    for one in (bands.markup_bands, *(of.bands for of in bands.category_bands or ())):
        if list(one) != sorted(one, key=lambda band: band.from_cost):
            raise refused("bands-contradict", found="they are not in rising order of from_cost")
    tried = ("markup_bands",) if bands.category_bands is None else ("markup_bands", "category_bands")
    wrong = [one for one in settings_contradictions(_with(settings, bands)) if one.field.startswith(tried)]
    if wrong:
        raise refused("bands-contradict", found="; ".join(f"{one.field} {one.found}" for one in wrong))


def _in_words(bands: OtherBands) -> str:
    return ", ".join(f"from {one.from_cost} x {one.multiplier}" for one in bands.markup_bands)
