"""The quote as a message for a telephone: short, whole, harmless, and nothing of the owner's side in it."""

import pytest

from sourcing.basics.quote import DepositAsked
from sourcing.basics.settings import Shop
from sourcing.basics.value import changed
from sourcing.documents.quote_message import LONGEST, quote_message
from tests.documents.quote_values import exempt_quote, long_quote, one_line_quote, rich_quote
from tests.documents.values import HOSTILE, OWNERS_WORDS, QUOTE, bare_quote, hostile_quote, usd


def test_a_usual_quote_with_three_extras_is_short_and_whole() -> None:
    message = quote_message(QUOTE)
    assert len(message) < 480
    assert message.splitlines() == [
        "Wickenby Yard Machine Repair: quote 2026-0001, revision 2.",
        "Work you asked for: $314.47 with tax.",
        "Extra work we found, each your choice:",
        "A Replace both belt keepers: $59.99",
        "B Replace the idler bearing: $72.70",
        "C Replace the scraper bar: $107.28",
        "With all of it: $554.45.",
        "Valid to Jan 19, 2026. Part numbers, terms and cautions: see the paper.",
        "Please answer yes or no to the work you asked for and to each letter. No answer is not a yes.",
    ]


def test_what_fits_is_said_and_what_does_not_is_left_out_in_order() -> None:
    """The machine goes first, then the day of arrival."""
    assert "Machine: walk-behind" in quote_message(one_line_quote())
    exempt = quote_message(exempt_quote())
    assert "Machine:" not in exempt and "Parts expected: between Jan 15, 2026 and Jan 16, 2026." in exempt
    assert "Parts expected" not in quote_message(QUOTE)


def test_a_long_message_loses_no_line_no_amount_and_no_deposit() -> None:
    long = changed(
        long_quote(), deposit=DepositAsked(agreed=usd("40.00"), everything=usd("90.00"), rule="half of the parts")
    )
    message = quote_message(long)
    assert len(message) > LONGEST
    for price in long.add_on_prices:
        line = long.line(price.label)
        assert line and f"\n{price.label} {line.title}: ${price.price.amount:.2f}\n" in message
    for words in ("$40.00", "$90.00", "$314.47", "$554.45", "Valid to Jan 19, 2026", "No answer is not a yes"):
        assert words in message


def test_a_quote_without_extras_asks_for_one_answer() -> None:
    message = quote_message(bare_quote())
    assert "letter" not in message and "Extra" not in message and "with tax" not in message
    assert "yes or no to the work you asked for." in message


def test_an_extra_ordered_specially_is_marked() -> None:
    special = tuple(changed(one, special_order=True) for one in QUOTE.lines)
    assert "A Replace both belt keepers: $59.99, ordered specially" in quote_message(changed(QUOTE, lines=special))


def test_no_character_makes_the_message_dear() -> None:
    """A no-break blank, which many locales put into amounts, is not in the GSM 7 bit alphabet (3GPP TS 23.038)."""
    message = quote_message(changed(QUOTE, locale="sv_SE", shop=Shop(name="Wickenby\N{NO-BREAK SPACE}Repair")))
    assert "314,47 US$" in message and message.isascii()


def test_a_forged_line_or_a_terminal_code_does_not_pass() -> None:
    lines = quote_message(hostile_quote()).splitlines()
    assert not any(line.startswith("Total 0.00") for line in lines)
    assert not any(character in line for line in lines for character in "\u202e\x1b\xa0")
    assert "\n" in HOSTILE


@pytest.mark.parametrize("words", (*OWNERS_WORDS, "own words"))
def test_nothing_of_the_owners_side(words: str) -> None:
    assert words.casefold() not in (quote_message(QUOTE) + quote_message(rich_quote())).casefold()
