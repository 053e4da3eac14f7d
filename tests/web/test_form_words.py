"""Terms and settings are refused in the words of the forms in which they are filled in, not by a file's field names."""

import pytest

from sourcing.actions.form_words import in_form_words
from sourcing.actions.settings_labels import LABELS as SETTINGS
from sourcing.actions.terms_labels import LABELS as TERMS
from sourcing.actions.terms_labels import RULES
from tests.web.test_counter_words import refused_words
from tests.web.test_shop import fields_of, look
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
    assert "'Minimum order' 25.00 -> 30.00" in told and "[500 = 3]" in told
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
            "'Price of a part: its cost times' [0.00 = 2.",
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


def test_entries_that_would_change_are_shown_as_the_form_has_them(owner: Browser) -> None:
    """A tax or a fee with the labels of its row."""
    page = "/shop/change/charges"
    shown = look(owner, page, **{**fields_of(owner.get(page)), "tax-1-percent": "7"})
    told = shown.text.replace("&#34;", '"')
    assert '{ Name of the tax = "Sales tax", per cent = 7, due on = ["parts", "freight"], charged from = 2025' in told
