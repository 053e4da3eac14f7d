"""Terms and settings are refused in the words of the forms in which they are filled in, not by a file's field names."""

import re
from html import unescape

import pytest

from sourcing.actions.form_words import in_form_words
from sourcing.actions.settings_labels import CHOICES
from sourcing.actions.settings_labels import LABELS as SETTINGS
from sourcing.actions.terms_labels import LABELS as TERMS
from sourcing.actions.terms_labels import NAMED, RULES, in_the_form
from sourcing.basics.terms_view import field_changes
from sourcing.basics.value import changed
from sourcing.web.views.terms_change import MARKED
from tests.basics.test_field_changes import USUAL_TERMS
from tests.full_terms import FREIGHTS, FULL
from tests.web.test_counter_words import refused_words
from tests.web.test_shop import fields_of, keep, look
from tests.web.world import TAKEN_IN, Browser


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("'freight.bands.2.charge' is 3", "'By value of the order' is 3"),
        ("'freight.charge or weight_bands' is missing", "'Charge an order or a parcel or By weight, up to' is missing"),
        ("more than 'most' (5)", "more than 'At most' (5)"),
        ("write duty_percent, 0 if none is due", "write 'Duty, per cent', 0 if none is due"),
        ("[{ from_value = 0, charge = 12 }, { from_value = 150, charge = 20 }]", "[0 = 12, 150 = 20]"),
        ("'noon' needs a time of example.org", "'noon' needs a time of example.org"),
        ("duty_rates has two", "duty_rates has two"),
    ],
)
def test_names_of_a_file_are_put_as_the_form_has_them(text: str, told: str) -> None:
    """Wherever they stand; what no label is for stays, and so does what a person typed."""
    assert in_form_words(text, TERMS) == told


def test_terms_are_refused_in_the_words_of_their_form(clerk: Browser) -> None:
    """Labels of the form, the rules of freight as it says them, steps as it has them; no name of a file's field."""
    page = "/terms/of/stonegarth/change"
    fields = fields_of(clerk.get(page))
    past = {"minimum_order": ["30.00"], "starts_on": ["2026-01-02"], "order_discounts": ["500 = 3"]}
    told = refused_words(look(clerk, page, **{**fields, **past}))
    assert "'Minimum order' 25.00 -> 30.00" in told and "not set -> 500 = 3)" in told
    assert "say why a day that is over is changed" in told
    wrong = look(clerk, page, **{**fields, "freight.rule": ["by weight"], "freight.bands": ["0 = 12"]})
    assert "<details open>" in wrong.text, "the field that is missing stands behind it"
    told = refused_words(wrong)
    assert "'By weight, up to' is missing, and 'by the weight of the order' needs it" in told
    told = refused_words(look(clerk, page, **{**fields, "minimum_order": [""], "small_order_fee": ["4"]}))
    assert "'Fee for an order below it' is given, but there is no 'Minimum order' below which it is due" in told
    assert "; say why." in refused_words(clerk.send("/terms/of/stonegarth/withdraw", starts_on="2025-10-01"))
    rule = {"freight.rule": ["by order value"], "freight.bands": ["0 = 12"], "freight.charge": [""]}
    shown = look(clerk, page, **{**fields, "minimum_order": ["30.00"], **rule}).text
    assert '<th scope="row">Minimum order</th>' in shown
    assert "<td>so much an order</td><td>by the value of the order</td>" in shown


def test_the_rules_of_freight_are_those_of_the_form(clerk: Browser) -> None:
    """A rule called otherwise on the page would not be found there."""
    page = clerk.get("/terms/of/stonegarth/change")
    assert [words for words in RULES.values() if f">{words}</option>" not in page] == []


CHARGES = {"tax-1-percent": "much", "fee-1-name": "Old oil", "supplies_percent": "much", "supplies_most": "much"}
CHARGES |= {"deposit_percent": "much", "tolerance_percent": "much", "tolerance_amount": "much"}


@pytest.mark.parametrize(
    ("part", "wrong", "told"),
    [
        ("charges", CHARGES, "'Fee: from day' is missing"),
        ("charges", {"fee-1-name": "Oil", "fee-1-of": "weight", "fee-1-charge": "x"}, "'Fee: reckoned' is 'weight'"),
        ("prices", {"category_bands": "belts: x = 1.6", "endings": "y"}, "'Other bands for a category: cost'"),
        ("prices", {"floor_bands": "?", "cap_at_list_price": "?"}, "'May a dearer part sell for less"),
        ("labour", {"mileage_rate": "x", "rate_per_km": "x", "clerk_cost": "x"}, "'A mile driven' needs a number"),
        ("days", {"quote_valid_days": "soon"}, "'Days a quote is good for' needs a whole number"),
        ("papers", {"paper_size": "A0", "cautions_dated": "soon"}, "'Paper' is 'A0'"),
        (
            "labour",
            {"labour_rate": "99", "starts_on": "2026-01-02"},
            "'An hour of labour, to the customer' 96.00 -> 99",
        ),
        (
            "prices",
            {"band-1-multiplier": "2.6", "starts_on": "2026-01-02"},
            "'Price of a part: its cost times' from 0.00: cost x 2.50; from 5.00: cost x 2.00",
        ),
    ],
)
def test_settings_are_refused_in_the_words_of_their_forms(
    owner: Browser, part: str, wrong: dict[str, str], told: str
) -> None:
    """All that is wrong, each by the label of its field."""
    page = f"/shop/change/{part}"
    assert told in refused_words(look(owner, page, **{**fields_of(owner.get(page)), **wrong}))


def test_labels_of_settings_are_those_of_the_forms(owner: Browser) -> None:
    """Every part of a label stands on a page: 'Fee: from day' in the rows of fees. One changed there alone is found."""
    parts = ("shop", "prices", "labour", "charges", "days", "papers")
    pages = " ".join(owner.get(f"/shop/change/{part}") for part in parts).replace("&#39;", "'").casefold()
    begin = owner.get("/shop/begin").casefold()
    for words in SETTINGS.values():
        assert all(one.casefold() in pages + begin for one in words.split(": ")), words


def test_bands_to_try_are_refused_in_the_words_of_their_page(owner: Browser) -> None:
    """A line for each: from this cost = cost times."""
    told = refused_words(owner.client.get("/what-if", query_string={"bands": "0 = 0.9\n20 = 1.5\n20 = 1.4"}))
    assert "band 1, 'cost times', is 0.9: below 1" in told and "band 3, 'from this cost', is 20 a second time" in told
    assert "write a line for each band" in told
    told = refused_words(owner.client.get("/what-if", query_string={"bands": "5 = 2"}))
    assert "band 1, 'from this cost', is 5, and nothing is said of parts that cost less" in told


def test_a_job_is_refused_in_the_words_of_its_form(clerk: Browser) -> None:
    """The tick and what it asks for."""
    page = f"/jobs/{TAKEN_IN}/facts"
    told = refused_words(clerk.send(page, name="Maud", machine_description="thrower", tax_exempt="1"))
    assert "'What the certificate says' is blank, but 'The customer pays no tax' is true" in told
    told = refused_words(
        clerk.send(page, name="", machine_description="thrower", fee_name_0="Oil", fee_amount_0="1.234")
    )
    assert "'Customer' is blank" in told and "'Amount of fee 1' is 1.234" in told


def test_entries_that_would_change_are_shown_as_the_pages_have_them(owner: Browser) -> None:
    """A tax or a fee in the words of the settings, a choice as the form says it; none where none was."""
    page = "/shop/change/charges"
    fee = {"fee-1-name": "Belts", "fee-1-of": "piece", "fee-1-charge": "1.5", "fee-1-starts_on": "2026-02-01"}
    other = {"tax-1-percent": "7", "freight_to_customer": "billed", **fee}
    told = rows(look(owner, page, **{**fields_of(owner.get(page)), **other}).text)
    assert told["Tax"] == (
        "Sales tax, 6.5 % of parts, freight, from Jan 1, 2025 on",
        "Sales tax, 7 % of parts, freight, from Jan 1, 2025 on",
    )
    assert told["Fee"] == ("none", "Belts, 1.5 for each piece, from Feb 1, 2026 on")
    assert told["Freight of parts"] == ("comes out of the markup", "on a line of its own, at cost")


def test_what_is_usual_is_shown_as_what_it_is(owner: Browser) -> None:
    """Not as if nothing had been set."""
    page = "/shop/change/days"
    closed = {"quote_valid_days": "3", "closed": "2026-01-14"}
    told = rows(look(owner, page, **{**fields_of(owner.get(page)), **closed}).text)
    assert told["Days a quote is good for"] == ("7", "3")
    assert told["Also closed on"] == ("on Dec 24, 2025, Dec 26, 2025, Feb 20, 2026", "on Jan 14, 2026")
    page = "/shop/change/prices"
    told = rows(look(owner, page, **{**fields_of(owner.get(page)), "cap_at_list_price": "false"}).text)
    assert told["Above the list price on the supplier's sheet"] == ("never", "prices may be")


def test_the_choices_of_settings_are_those_of_the_forms(owner: Browser) -> None:
    pages = owner.get("/shop/change/charges") + owner.get("/shop/change/prices")
    assert [words for each in CHOICES.values() for words in each.values() if words not in pages] == []


OTHERWISE = {
    **{"name": "Another name", "address": "14 Lane\nTown", "minimum_order": "31.00", "small_order_fee": "4.10"},
    **{"handling": "1.10", "discount_percent": "2.5", "order_discounts": "100 = 2\n500 = 5", "duty_percent": "3"},
    **{"cash_discount.percent": "2.1", "cash_discount.within_days": "9", "entry_fee": "3.10", "cut_off": "12:00"},
    **{"order_days": "Tue, Wed", "dispatch_days": "2", "transit_days": "1, 5", "calendar.week": "Mon, Tue, Sat"},
    **{"calendar.country": "CA", "calendar.region": "ON", "prices_hold_days": "31", "returns": "As he says."},
    **{"return_terms.returnable": "true", "return_terms.restocking_percent": "16", "return_terms.freight": "8.10"},
    **{"return_terms.within_days": "15", "core_return.within_days": "61", "core_return.freight": "12.10"},
    **{"freight.rule": "by order value", "freight.charge": "", "freight.bands": "0 = 16.00\n250 = 12"},
    **{"freight.free_from": "900", "tax.name": "Entry tax", "tax.percent": "7", "tax.on": "goods, freight"},
}
"""Fields of the form otherwise than a supplier has them whose cut-off is not known."""

SAID = {"true": "yes", "": "not set", **RULES}


def test_what_is_shown_is_what_is_kept(clerk: Browser) -> None:
    """Every field of terms: the table that is agreed to against what the form holds afterwards."""
    page = "/terms/of/larkmoor/change"
    keep(clerk, page, **{**fields_of(clerk.get(page)), "cut_off": [""]})
    many = {name: text.split(", ") for name, text in OTHERWISE.items() if name in MARKED}
    before = fields_of(clerk.get(page))
    fields: dict[str, object] = {**before, **OTHERWISE, **many}
    told = rows(look(clerk, page, **fields).text)
    keep(clerk, page, **fields)
    held = fields_of(clerk.get(page))
    assert told["Ordered by this time it leaves the same day"] == ("not known", "12:00")
    assert [name for name in OTHERWISE if before.get(name) == held[name]] == ["return_terms.returnable"]
    for name in OTHERWISE:
        kept = ", ".join(held[name]).replace("\n", ", ")
        assert held[name] == many.get(name, [OTHERWISE[name]]), name
        assert before.get(name) == held[name] or told[TERMS[name]][1] == SAID.get(kept, kept), name


def rows(page: str) -> dict[str, tuple[str, str]]:
    """What the table of changes shows: by field, until now and then."""
    found = re.findall(r'<tr><th scope="row">(.*?)</th><td>(.*?)</td><td>(.*?)</td></tr>', page)
    return {unescape(name): (unescape(before), unescape(after)) for name, before, after in found}


def test_the_history_has_the_words_of_the_forms(owner: Browser, clerk: Browser) -> None:
    """Settings and terms that were changed; the ledger itself keeps the names of a file."""
    page = "/shop/change/charges"
    keep(owner, page, **{**fields_of(owner.get(page)), "tax-1-percent": "7", "freight_to_customer": "billed"})
    told = unescape(owner.get("/history?about=shop"))
    assert "'Tax' Sales tax, 6.5 % of parts, freight, from Jan 1, 2025 on -> Sales tax, 7 % of" in told
    assert "'Freight of parts' comes out of the markup -> on a line of its own, at cost" in told
    page = "/terms/of/stonegarth/change"
    other = {"freight.rule": "by order value", "freight.bands": "0 = 12\n150 = 20", "freight.charge": ""}
    keep(clerk, page, **{**fields_of(clerk.get(page)), **other, "more": "payment_percent = 2"})
    for told in (owner.get("/history?about=supplier+stonegarth"), clerk.get("/terms/of/stonegarth")):
        told = unescape(told)
        assert "'How freight is charged' so much an order -> by the value of the order" in told
        assert "'By value of the order' not set -> 0 = 12, 150 = 20" in told
        assert "'Payment fee, per cent' 0 -> 2" in told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('from 2026-01-13 on; returns "a; b -> c" -> not set; name "x" -> "y"', "a; b -> c"),
        ('tax [{ name = "a", on = ["b"] }] -> not set', "name a, on b"),
        ("he said name and cut_off", "he said name and 'Ordered by this time it leaves the same day'"),
        ("cut_off 13:00:00 -> not known (why)", "13:00 -> not known (why)"),
        ('name "x', 'name "x'),
    ],
)
def test_changes_are_found_in_what_was_done(text: str, told: str) -> None:
    """Texts in quotes and lists stand whole; what is no change stays."""
    assert told in in_the_form(text)


def test_fields_without_a_place_on_the_form_have_a_name_too() -> None:
    """Every field of terms."""
    fields = {one.field for other in FREIGHTS for one in field_changes(USUAL_TERMS, changed(FULL, freight=other))}
    assert [field for field in fields if field not in NAMED and field != "currency"] == []
