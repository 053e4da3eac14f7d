"""The figures behind a price that rose and a day that slipped, each worked out by hand beside it.

What the alarms, the ways out and their ends are is told in the journeys of the two days; here stand the figures under
them that these do not look at: parts with freight, tax, what is absorbed, margins as quoted, the record of her word.
"""

from datetime import date
from decimal import Decimal
from pathlib import Path

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record, standing
from sourcing.actions.compare import compare
from sourcing.actions.decide import decide
from sourcing.actions.history import history
from sourcing.actions.margins import margins
from sourcing.actions.orders import all_orders
from sourcing.actions.promises import open_promises
from sourcing.actions.quotes import reprint, write_quote
from sourcing.basics.margin import Margin
from sourcing.basics.quote import Quote
from sourcing.storage.after_quote import decisions
from tests.builders import usd
from tests.journeys.small_shop import desk_at
from tests.journeys.test_backorder_slips import AGREED, ordered, slipped
from tests.journeys.test_price_rises_after_yes import THURSDAY, approved, earned, risen
from tests.journeys.test_worked_days import paper, yes
from tests.journeys.test_worked_waits import SLIPPED


def parts_with_freight(quote: Quote) -> tuple[object, object, object]:
    """Taxable sum, its tax, and the total."""
    (tax,) = quote.agreed_total.taxes
    return tax.taxable, tax.amount, quote.agreed_total.total


def figures(margin: Margin) -> tuple[object, object, object, Decimal | None]:
    """Price, cost, what is earned, and that in per cent of the price."""
    return margin.price, margin.cost, margin.earned, margin.margin_percent


def test_as_approved(tmp_path: Path) -> None:
    """126.90 x 1.40 = 177.66, with freight 192.61, 7 % 13.48; at the door 141.85, so 50.76 is 26.35 %."""
    desk, number = approved(tmp_path)
    quote = reprint(desk, number, None).quote
    assert (quote.lines[0].unit_price, quote.valid_to) == (usd("177.66"), date(2026, 3, 16))
    assert parts_with_freight(quote) == (usd("192.61"), usd("13.48"), usd("357.29"))
    quoted = dict(margins(desk, number)[0].parts)["quoted"]
    assert figures(quoted) == (usd("192.61"), usd("141.85"), usd("50.76"), Decimal("26.35"))


def test_what_is_absorbed_when_the_price_is_held(tmp_path: Path) -> None:
    """50.76 - 38.07 = 12.69, what the belt rose by; the margin of the old cost is never shown as today's."""
    desk, number = risen(tmp_path)
    (alarm,) = alarms(desk, number)
    assert figures(alarm.margin_as_approved) == (usd("192.61"), usd("141.85"), usd("50.76"), Decimal("26.35"))
    hold, _, switch = alarm.ways
    assert hold.margin is not None and switch.margin is not None
    assert figures(hold.margin) == (usd("192.61"), usd("154.54"), usd("38.07"), Decimal("19.77"))
    assert figures(switch.margin) == (usd("192.61"), usd("140.95"), usd("51.66"), Decimal("26.82"))
    assert alarm.margin_as_approved.earned - hold.margin.earned == usd("12.69")


def test_what_is_asked_anew(tmp_path: Path) -> None:
    """139.59 x 1.40 = 195.43, with freight 210.38, 7 % 14.73, in all 376.31: 19.02 more, 5.32 % of 357.29."""
    desk, number = risen(tmp_path)
    (alarm,) = alarms(desk, number)
    _, ask, _ = alarm.ways
    assert (ask.unit_price, earned(ask)[0], ask.extra) == (usd("195.43"), usd("55.84"), usd("19.02"))
    assert ask.margin is not None and (ask.margin.price, ask.margin.cost) == (usd("210.38"), usd("154.54"))
    decide(desk, number, "1", "ask")
    new = write_quote(desk, number, paper).frozen.quote
    assert parts_with_freight(new) == (usd("210.38"), usd("14.73"), usd("376.31"))


def test_no_way_changes_the_paper_she_has(tmp_path: Path) -> None:
    """Neither price nor number moves by a decision: revision 1 says what it said, and so does what is approved."""
    for way in ("hold", "ask", "switch"):
        folder = tmp_path / way
        folder.mkdir()
        desk, number = risen(folder)
        before = reprint(desk, number, 1)
        decide(desk, number, "1", way)
        assert reprint(desk_at(folder, THURSDAY), number, None) == before
        assert standing(desk, number).approved.total == usd("357.29")


def test_what_was_ordered_as_quoted(tmp_path: Path) -> None:
    """139.00 x 1.40 = 194.60 and 15.80 x 2.00 = 31.60 make 226.20; at the door 154.80, so 71.40 is 31.56 %."""
    desk, number, order = ordered(tmp_path)
    lines = {line.label: line.parts_price for line in reprint(desk, number, None).quote.lines}
    assert lines == {"1": usd("194.60"), "2": usd("31.60")}
    assert figures(dict(margins(desk, number)[0].parts)["quoted"]) == (
        usd("226.20"), usd("154.80"), usd("71.40"), Decimal("31.56"),
    )  # fmt: skip
    assert [one.number for one in all_orders(desk, number)] == [order]


def test_the_suppliers_later_word_counts_for_the_order(tmp_path: Path) -> None:
    """His sheet of 1 March said two in stock; since he confirmed otherwise what is open and the alarm say 1 April."""
    desk, number, _ = slipped(tmp_path)
    (parts,) = [one for one in open_promises(desk, number) if one.kind == "parts here"]
    assert parts.due == date(2026, 4, 1)
    (alarm,) = alarms(desk)
    assert alarm.ways[0].latest == date(2026, 4, 1)
    (found,) = [one for one in compare(desk, "BELT", 1, None).ranked if one.priced.offer.supplier == "pellbrook"]
    assert (found.priced.landed.total, found.priced.arrival.latest) == (usd("154.20"), date(2026, 3, 12))


def test_her_yes_to_the_new_day_is_recorded_like_an_add_on(tmp_path: Path) -> None:
    """Who, how, which number, when, who took it down, and the day it covers; in the ledger too."""
    desk, number, _ = slipped(tmp_path)
    decide(desk, number, "1", "switch", "sooner", AGREED)
    with desk.store.reading() as connection:
        (kept,) = decisions(connection, number)
    assert (kept.agreed_by, kept.agreed_how, kept.agreed_contact) == ("Maud Tilbrook", "telephone", "555-0142")
    assert (kept.at, kept.who, kept.latest) == (SLIPPED, "Oona Brandeth", date(2026, 3, 12))
    (deed,) = [one for one in history(desk, number) if one.deed == "decide" and "switch" in one.detail]
    assert "Maud Tilbrook said yes by telephone" in deed.detail
    new = write_quote(desk, number, paper, date(2026, 3, 12)).frozen.quote
    record(desk, number, yes("agreed"))
    assert (new.arrives, standing(desk, number).words()["1"]) == ((date(2026, 3, 12), date(2026, 3, 12)), "approved")
