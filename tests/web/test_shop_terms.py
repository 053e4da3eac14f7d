"""Suppliers' terms at the counter: looked at, changed from a day on, taken back, a new supplier, files of them."""

from datetime import time
from io import BytesIO

import pytest
from flask import Flask
from werkzeug.test import TestResponse

from sourcing.actions.desk import Desk
from sourcing.actions.terms import STATED, suppliers_terms
from sourcing.actions.terms_labels import LABELS
from sourcing.basics.terms import CUT_OFF_NOT_KNOWN, Terms
from sourcing.web.desks import STORE
from tests.web.test_shop import fields_of, keep, look
from tests.web.world import CLERK, NOW, Browser

CHANGE = "/terms/of/stonegarth/change"
SUPPLIERS = ("stonegarth", "kesselried", "larkmoor", "pellbrook", "tavishollow")


def _terms(app: Flask, supplier: str = "stonegarth") -> Terms:
    found = suppliers_terms(Desk(store=app.config[STORE], at=NOW, who=CLERK), supplier).holds
    assert found
    return found


def test_what_is_not_known_stands_beside_what_holds(clerk: Browser) -> None:
    """In the list and on the supplier's page, with what follows."""
    assert "whether goods go back" in clerk.get("/terms")
    page = clerk.get("/terms/of/kesselried")
    assert "€24.00" in page and "Not known" in page and "days on the road" not in page
    assert "5 to 8 working days" in page


@pytest.mark.parametrize("supplier", SUPPLIERS)
def test_a_form_sent_as_it_is_changes_nothing(clerk: Browser, supplier: str) -> None:
    """What the form shows is what holds."""
    page = f"/terms/of/{supplier}/change"
    answer = clerk.send_again({}, page, look="yes", **fields_of(clerk.get(page)))
    assert answer.status_code == 409 and "say that already" in answer.text


def test_a_change_is_shown_first_kept_and_taken_back(app: Flask, clerk: Browser) -> None:
    """From a day on; the deed carries who did it."""
    fields = fields_of(clerk.get(CHANGE)) | {"minimum_order": ["30.00"], "cut_off": ["14:30"]}
    fields |= {"starts_on": ["2026-02-01"], "calendar.closed": ["2026-12-24, 2026-12-26"]}
    shown = look(clerk, CHANGE, **fields)
    assert "minimum_order" in shown.text and "Nothing is kept yet" in shown.text
    assert "From Feb 1, 2026 on" not in clerk.get("/terms/of/stonegarth")
    done = keep(clerk, CHANGE, **fields)
    assert "are changed" in done.text and "Take it back" in done.text
    page = clerk.get("/terms/of/stonegarth?on=2026-02-01")
    assert "$30.00" in page and "14:30" in page and f"{CLERK}: from Feb 1, 2026 on" in page
    assert _terms(app).minimum_order == 25
    withdraw = "/terms/of/stonegarth/withdraw?starts_on=2026-02-01"
    assert clerk.send(withdraw, starts_on="2026-02-01").status_code == 409, "a reason is needed"
    assert "taken back" in clerk.send(withdraw, starts_on="2026-02-01", why="a slip").text
    assert "$30.00" not in clerk.get("/terms/of/stonegarth?on=2026-02-01").split("Versions")[0]


def test_an_amount_far_from_usual_is_asked_about(app: Flask, clerk: Browser) -> None:
    """With what stood there until now; said to be right, it is shown and kept as any other."""
    fields = fields_of(clerk.get(CHANGE)) | {"freight.charge": ["1495"]}
    asked = look(clerk, CHANGE, **fields)
    assert asked.status_code == 409 and 'name="sure"' in asked.text
    assert "until now 14.95" in asked.text and "Charge an order or a parcel" in asked.text
    assert "are changed" in keep(clerk, CHANGE, sure="yes", **fields).text
    kept = _terms(app).freight
    assert kept and kept.charge == 1495


def test_a_file_of_terms_with_an_amount_far_off_is_asked_about(clerk: Browser) -> None:
    """The file is chosen again with the tick; nothing of it is kept before."""
    text = clerk.get("/suppliers.toml").replace("charge = 14.95", "charge = 1495").encode()

    def send(**more: str) -> TestResponse:
        data = {**clerk.hidden("/terms/take-in", "/terms/take-in"), "past": "a slip", **more}
        data |= {"file": (BytesIO(text), "terms.toml")}  # type: ignore[dict-item]
        kind = "multipart/form-data"
        return clerk.client.post("/terms/take-in", data=data, content_type=kind, follow_redirects=True)

    asked = send()
    assert asked.status_code == 409 and "until now 14.95" in asked.text and "Choose the same files again" in asked.text
    assert "1495" not in clerk.get("/suppliers.toml")
    assert send(sure="yes").status_code == 200 and "1495" in clerk.get("/suppliers.toml")


def test_a_new_suppliers_amounts_are_asked_about(clerk: Browser) -> None:
    """Nothing stood there: an hour of labour is the measure."""
    new = {"supplier": "ashgrove", "name": "Ashgrove Trade Parts", "currency": "USD", "handling": "450"}
    new |= {"cut_off": "14:00", "dispatch_days": "0", "transit_days": "1, 2", "entry_fee": "0"}
    asked = clerk.send("/terms/new", **new)
    assert asked.status_code == 409 and "where an hour of labour is" in asked.text and 'name="sure"' in asked.text
    assert "Ashgrove Trade Parts is there" in clerk.send("/terms/new", sure="yes", **new).text


def test_freight_changes_with_its_rule(app: Flask, clerk: Browser) -> None:
    """Steps are typed a line each; a field that does not belong to the rule is refused; without a rule: not known."""
    fields = fields_of(clerk.get(CHANGE)) | {"freight.rule": ["by order value"], "freight.bands": ["0 = 12\n150 = 20"]}
    wrong = look(clerk, CHANGE, **fields)
    assert wrong.status_code == 409 and "does not belong to &#39;by the value of the order&#39;" in wrong.text
    keep(clerk, CHANGE, **{**fields, "freight.charge": [""]})
    freight = _terms(app).freight
    assert freight and [f"{one.from_value} {one.charge}" for one in freight.bands] == ["0 12", "150 20"]
    fields = fields_of(clerk.get(CHANGE))
    assert fields["freight.bands"] == ["0 = 12\n150 = 20"]
    keep(clerk, CHANGE, **{**fields, "freight.rule": [""]})
    assert _terms(app).freight is None
    assert "can't be ranked" in clerk.get("/terms/of/stonegarth")
    assert look(clerk, CHANGE, **{**fields_of(clerk.get(CHANGE)), "freight.charge": ["5"]}).status_code == 409


def test_fields_beside_the_usual_ones_are_typed_as_in_the_file(app: Flask, clerk: Browser) -> None:
    """An unknown one is told."""
    fields = fields_of(clerk.get(CHANGE))
    assert look(clerk, CHANGE, **{**fields, "more": ["payment_per_cent = 2"]}).status_code == 409
    assert look(clerk, CHANGE, **{**fields, "more": ["two per cent"]}).status_code == 409
    keep(clerk, CHANGE, **{**fields, "more": ["payment_percent = 2"]})
    assert _terms(app).payment_percent == 2


def test_days_that_are_over_are_changed_for_a_reason_only(app: Flask, clerk: Browser) -> None:
    """What was worked out since then changes with them."""
    fields = fields_of(clerk.get(CHANGE)) | {"minimum_order": ["30.00"], "starts_on": ["2026-01-02"]}
    refused = look(clerk, CHANGE, **fields)
    assert refused.status_code == 409 and "would change what was worked out" in refused.text
    keep(clerk, CHANGE, **{**fields, "past": ["the sheet said so all along"]})
    assert _terms(app).minimum_order == 30


def test_a_new_supplier_begins_with_nothing_made_up(app: Flask, clerk: Browser) -> None:
    """Not known is what was not said, and stands on the next page; a short name is taken once, however written."""
    words = {"supplier": "drovemoor", "name": "Drovemoor Supply", "currency": "USD", "starts_on": "2026-01-15"}
    unsaid = clerk.send("/terms/new", **words)
    assert unsaid.status_code == 409 and "Working days on the road" in unsaid.text
    words |= {"cut_off": "14:30", "dispatch_days": "0", "transit_days": "2, 3", "handling": "0", "entry_fee": "1.50"}
    for field in ("dispatch_days", "transit_days", "handling", "entry_fee"):
        assert f"said of: {STATED[field]};" in clerk.send("/terms/new", **{**words, field: " "}).text
    assert "drovemoor" not in clerk.get("/terms")
    done = clerk.send("/terms/new", **words)
    assert "Drovemoor Supply is there" in done.text and "$1.50" in done.text
    assert "<strong>Freight</strong>: none of his offers can be ranked" in done.text
    assert "<strong>Until when an order leaves" not in done.text and "days on the road</strong>" not in done.text
    assert _terms(app, "drovemoor").freight is None
    assert _terms(app, "drovemoor").cut_off == time(14, 30)
    assert clerk.send("/terms/new", **{**words, "supplier": "Drovemoor"}).status_code == 409
    for short in ("", "a/b", "Brack Well", "..\\x", "a?b", "a_b", "b.", "-b", "\u00e5b", "a'b"):
        answer = clerk.send("/terms/new", **{**words, "supplier": short, "name": "X"})
        assert answer.status_code == 409 and ("be a short name" in answer.text) == bool(short)
    assert clerk.send("/terms/new", **{**words, "supplier": "Brack-Well-2"}).status_code == 200
    assert clerk.send("/terms/new", **{**words, "supplier": "other", "currency": "dollars"}).status_code == 409


def test_a_cut_off_nobody_knows_is_never_made_up(app: Flask, clerk: Browser) -> None:
    """It is told with what follows, no order counts on its own day, and the form shows it blank."""
    words = {"supplier": "drovemoor", "name": "Drovemoor Supply", "currency": "USD", "cut_off": ""}
    words |= {"dispatch_days": "0", "transit_days": "2, 3", "handling": "0", "entry_fee": "0"}
    done = clerk.send("/terms/new", **words)
    assert "<strong>Until when an order leaves the same day</strong>: every order is taken to be too late" in done.text
    assert _terms(app, "drovemoor").cut_off == CUT_OFF_NOT_KNOWN and "00:00" not in done.text
    page = "/terms/of/drovemoor/change"
    fields = fields_of(clerk.get(page))
    assert fields["cut_off"] == [""]
    assert "say that already" in look(clerk, page, **fields).text
    keep(clerk, page, **{**fields, "cut_off": ["13:00"]})
    assert _terms(app, "drovemoor").cut_off == time(13)
    keep(clerk, page, **{**fields_of(clerk.get(page)), "cut_off": [""]})
    assert _terms(app, "drovemoor").cut_off == CUT_OFF_NOT_KNOWN


def test_files_of_terms_come_and_go(app: Flask, clerk: Browser) -> None:
    """The file taken along changes nothing taken in again; an entry with a later day does."""
    file = clerk.get("/suppliers.toml")
    page = "/terms/take-in"

    def send(text: str) -> str:
        data = {**clerk.hidden(page, page), "file": (BytesIO(text.encode()), "mine.toml")}
        answer = clerk.client.post(page, data=data, content_type="multipart/form-data", follow_redirects=True)
        return answer.text

    assert "Nothing changed" in send(file)
    later = file.replace("starts_on = 2025-10-01", "starts_on = 2026-02-01").replace("= 25.00", "= 35.00")
    assert "Stonegarth Trade Parts from Feb 1, 2026 on" in send(later)
    assert "o [[supplier]]" in send("currency = 'USD'") and "No file was chosen" in send("")
    assert clerk.get("/terms.csv?on=2026-02-01").count("35.00 USD") == 1
    assert clerk.client.get("/terms.xlsx").data[:2] == b"PK"


def test_terms_are_no_business_of_the_technician(technician: Browser) -> None:
    """They are what the shop pays."""
    pages = ("/terms", "/terms/of/stonegarth", CHANGE, "/terms/new", "/suppliers.toml", "/terms.csv", "/terms.xlsx")
    assert [technician.status(page) for page in pages] == [403] * len(pages)


def test_a_supplier_that_is_not_there_is_told(clerk: Browser) -> None:
    """With those that are."""
    answer = clerk.client.get("/terms/of/nobody")
    assert answer.status_code == 409 and "stonegarth" in answer.text


def test_what_is_wrong_is_told_by_the_words_of_the_form(clerk: Browser) -> None:
    """And as it is typed there, not as a file has it."""
    fields = fields_of(clerk.get(CHANGE)) | {"handling": ["much"], "cut_off": ["noon"]}
    page = look(clerk, CHANGE, **fields).text
    assert (
        "&#39;Handling an order&#39; needs a number" in page
        and "in the form" not in page
        and "such as 13:00" in page
        and "13:00:00" not in page
    )


def test_the_words_for_what_is_wrong_are_those_of_the_form(clerk: Browser) -> None:
    """A label changed on the page alone would send its reader looking for it."""
    page = clerk.get(CHANGE)
    assert [words for words in LABELS.values() if words not in page] == []
    assert [words for words in STATED.values() if words not in clerk.get("/terms/new")] == []


def test_a_tax_at_the_border_is_filled_in(app: Flask, clerk: Browser) -> None:
    """Where it is not known the page says which field is for it; on nothing it is refused; taken out it is gone."""
    page = "/terms/of/kesselried/change"
    assert "write &#39;Tax at the border that the shop can&#39;t get back&#39; if" in clerk.get("/terms/of/kesselried")
    fields = fields_of(clerk.get(page)) | {"tax.name": ["Entry tax"], "tax.percent": ["7"]}
    nothing = look(clerk, page, **{**fields, "tax.on": []})
    assert nothing.status_code == 409 and "names nothing the tax is due on" in nothing.text
    shown = look(clerk, page, **fields)
    assert '<th scope="row">That tax is due on</th><td>not set</td><td>goods, freight, duty</td>' in shown.text
    keep(clerk, page, **fields)
    tax = _terms(app, "kesselried").tax
    assert tax and tax.percent == 7 and tax.on == ("goods", "freight", "duty")
    keep(clerk, page, **{**fields_of(clerk.get(page)), "tax.on": ["goods"]})
    tax = _terms(app, "kesselried").tax
    assert tax and tax.on == ("goods",)
    half = look(clerk, page, **{**fields_of(clerk.get(page)), "tax.name": [""]})
    assert half.status_code == 409 and "That tax, its name" in half.text
    keep(clerk, page, **{**fields_of(clerk.get(page)), "tax.name": [""], "tax.percent": [""]})
    assert _terms(app, "kesselried").tax is None
