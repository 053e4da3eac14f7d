"""The shop's settings at the counter: looked at, changed from a day on, taken back."""

import re
import tomllib
from datetime import date
from decimal import Decimal

import pytest
from flask import Flask
from werkzeug.test import TestResponse

from sourcing.actions.desk import Desk
from sourcing.actions.settings_edit import settings_now
from sourcing.basics.settings import Settings
from sourcing.web.desks import STORE
from tests.documents.html_reader import Page
from tests.web.world import NOW, OWNER, Browser

BANDS = {
    **{"band-1-from_cost": "0", "band-1-multiplier": "2.40", "band-2-from_cost": "", "band-2-multiplier": ""},
    **{"floor_bands": "false", "cap_at_list_price": "true", "margin_floor_percent": "28", "category_bands": ""},
}
DAYS = {"week": ["Mon", "Tue", "Wed", "Thu", "Fri"], "country": "US", "quote_valid_days": "7", "time_zone": ""}


def _settings(app: Flask, on: date | None = None) -> Settings:
    found = settings_now(Desk(store=app.config[STORE], at=NOW, who=OWNER), on)
    assert found
    return found.settings


def look(browser: Browser, page: str, **fields: object) -> TestResponse:
    """Send the form to see what would change."""
    return browser.send(page, page, look="yes", **fields)


def keep(browser: Browser, page: str, **fields: object) -> TestResponse:
    """See what would change, then keep it, as a person does."""
    shown = look(browser, page, **fields)
    assert shown.status_code == 200, shown.text
    hidden = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', shown.text))
    return browser.send_again(hidden, page, keep="yes", **fields)


def test_a_change_is_shown_first_and_then_kept(app: Flask, owner: Browser) -> None:
    """Looking changes nothing; keeping does, and the history has old and new."""
    page, rates = "/shop/change/labour", {"labour_rate": "98", "technician_cost": "34.00", "clerk_cost": "22.00"}
    rates |= {"mileage_rate": "0.725", "rate_per_km": ""}
    shown = look(owner, page, **rates)
    assert "96.00" in shown.text and "Nothing is kept yet" in shown.text
    assert _settings(app).labour_rate == 96
    done = keep(owner, page, **rates)
    assert "The settings are changed" in done.text and _settings(app).labour_rate == 98
    assert "labour, to the customer&#39; 96.00 -&gt; 98" in owner.get("/history?about=shop")


def test_what_was_not_seen_is_not_kept(app: Flask, owner: Browser) -> None:
    """Typed otherwise after it was shown: it is shown again."""
    shown = look(owner, "/shop/change/prices", **BANDS)
    hidden = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', shown.text))
    other = {**BANDS, "band-1-multiplier": "2.60"}
    again = owner.send_again(hidden, "/shop/change/prices", keep="yes", **other)
    assert again.status_code == 409 and "after the change was shown" in again.text
    assert "2.60" in again.text and "Nothing is kept yet" in again.text
    assert len(_settings(app).markup_bands) == 5


def test_a_change_kept_twice_is_one_deed(owner: Browser) -> None:
    """A double click leads to the same page and enters one deed."""
    shown = look(owner, "/shop/change/prices", **BANDS)
    hidden = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', shown.text))
    answers = [owner.send_again(hidden, "/shop/change/prices", keep="yes", **BANDS) for _ in range(2)]
    assert [answer.status_code for answer in answers] == [200, 200]
    assert owner.get("/history?about=shop").count("Price of a part: its cost times") == 1


def test_bands_hold_from_their_day_and_can_be_taken_back(app: Flask, owner: Browser) -> None:
    """Before it the old ones hold; taken back, they hold on."""
    keep(owner, "/shop/change/prices", **BANDS, starts_on="2026-02-01")
    assert len(_settings(app).markup_bands) == 5
    assert [band.multiplier for band in _settings(app, date(2026, 2, 1)).markup_bands] == [Decimal("2.40")]
    assert "From Feb 1, 2026 on others hold" in owner.get("/shop")
    keep(owner, "/shop/change/days", **{**DAYS, "quote_valid_days": "14"}, starts_on="2026-02-01")
    page = "/shop/withdraw/2026-02-01"
    shown, hidden = Page(owner.get(page)).text, owner.hidden(page, page)
    assert "All that was changed from Feb 1, 2026 on goes" in shown and "To take back one change of several" in shown
    for change in ("Price of a part: its cost times", "Days a quote is good for 14"):
        assert change in shown, change
    keep(owner, "/shop/change/days", **{**DAYS, "quote_valid_days": "12"}, starts_on="2026-02-01")
    older = owner.send_again(hidden, page)
    assert older.status_code == 409 and "Greta Lindqvare" in older.text
    assert len(_settings(app, date(2026, 2, 1)).markup_bands) == 1
    done = owner.send(page)
    assert "What held before holds on" in done.text
    assert len(_settings(app, date(2026, 2, 1)).markup_bands) == 5
    assert "took back what held from Feb 1, 2026" in owner.get("/history?about=shop")


def test_an_earlier_change_leaves_later_settings_their_own(app: Flask, owner: Browser) -> None:
    """A later version knows nothing of it, and that is told; a later day keeps what was changed for it before."""
    keep(owner, "/shop/change/days", **{**DAYS, "quote_valid_days": "14"}, starts_on="2026-02-01")
    shown = look(owner, "/shop/change/days", **{**DAYS, "quote_valid_days": "10"})
    assert "know nothing of this change" in shown.text
    keep(owner, "/shop/change/days", **{**DAYS, "country": "CA", "region": "ON"}, starts_on="2026-03-01")
    march = _settings(app, date(2026, 3, 1))
    assert (march.quote_valid_days, march.calendar.country) == (14, "CA")


@pytest.mark.parametrize(
    ("part", "fields", "told"),
    [
        ("prices", {**BANDS, "band-1-multiplier": "0.9"}, "below 1 a part would be sold for less than it costs"),
        ("prices", {**BANDS, "band-1-from_cost": "5"}, "is 5, and nothing is said of parts that cost less"),
        ("prices", {**BANDS, "category_bands": "belts: 20 = 1.5"}, "is 20, and nothing is said of parts that cost"),
        ("prices", {**BANDS, "band-1-multiplier": "much"}, "needs a number"),
        ("prices", {**BANDS, "band-1-multiplier": ""}, "is missing"),
        ("prices", {**BANDS, "category_bands": "belts 1.6"}, "does not have two sides"),
        ("days", {**DAYS, "week": []}, "&#39;Open&#39;"),
        ("days", {**DAYS, "country": "QQ"}, "QQ"),
        ("days", {**DAYS, "quote_valid_days": "soon"}, "&#39;Days a quote is good for&#39; needs a whole number"),
        ("days", {**DAYS, "closed": "Jan 14, 2026"}, "needs a day such as 2026-01-13."),
        ("days", DAYS, "say that already"),
        ("days", {**DAYS, "quote_valid_days": "9", "starts_on": "2026-01-02"}, "would change what was worked out"),
    ],
)
def test_what_can_not_hold_is_refused(
    app: Flask, owner: Browser, part: str, fields: dict[str, object], told: str
) -> None:
    """With the field it is in; nothing is kept."""
    if part == "days":
        fields = {"closed": "2025-12-24\n2025-12-26\n2026-02-20", **fields}
    answer = look(owner, f"/shop/change/{part}", **fields)
    assert answer.status_code == 409 and told in answer.text
    assert "Keep it" not in answer.text


def test_no_day_marked_is_not_taken_for_the_usual_week(owner: Browser) -> None:
    """An empty week is refused, and never filled in silently."""
    assert look(owner, "/shop/change/days", **{**DAYS, "week": []}).status_code == 409


def test_every_form_sent_as_it_is_changes_nothing(owner: Browser) -> None:
    """What a form shows is what holds: sent back untouched, each part says so."""
    for part in ("shop", "prices", "labour", "charges", "days", "papers"):
        page = f"/shop/change/{part}"
        answer = owner.send_again({}, page, look="yes", **fields_of(owner.get(page)))
        assert answer.status_code == 409 and "say that already" in answer.text, (part, answer.text[-3000:])


def fields_of(page: str) -> dict[str, list[str]]:
    """The fields of the one form that changes something, as a browser sends them."""
    forms = [one for one in re.findall(r"<form[^>]*>.*?</form>", page, re.DOTALL) if 'name="once"' in one]
    form = forms[0]
    found: dict[str, list[str]] = {}
    for tag in re.findall(r"<input[^>]*>", form):
        name, value = re.search(r' name="([^"]*)"', tag), re.search(r' value="([^"]*)"', tag)
        ticked = ('type="checkbox"' not in tag and 'type="radio"' not in tag) or " checked" in tag
        if name and value and ticked:
            found.setdefault(name[1], []).append(_plain(value[1]))
    for name, value in re.findall(r'<textarea[^>]* name="([^"]*)"[^>]*>(.*?)</textarea>', form, re.DOTALL):
        found[name] = [_plain(value)]
    for name, options in re.findall(r'<select[^>]* name="([^"]*)"[^>]*>(.*?)</select>', form, re.DOTALL):
        chosen = re.findall(r'<option value="([^"]*)" selected>', options)
        found[name] = chosen or re.findall(r'<option value="([^"]*)"', options)[:1]
    return found


def _plain(text: str) -> str:
    for mark, letter in (("&#10;", "\n"), ("&#39;", "'"), ("&#34;", '"'), ("&lt;", "<"), ("&gt;", ">"), ("&amp;", "&")):
        text = text.replace(mark, letter)
    return text


def test_taxes_fees_and_deposit_are_kept_as_filled_in(app: Flask, owner: Browser) -> None:
    """Blank rows are left out; an entry filled in half is refused."""
    page = "/shop/change/charges"
    fields = fields_of(owner.get(page))
    fields |= {"tax-2-name": ["Local tax"], "tax-2-percent": ["1.25"], "tax-2-starts_on": ["2026-02-01"]}
    fields |= {"tax-2-on": ["parts", "labour"], "deposit_percent": ["50"], "deposit_from": ["20.00"]}
    fields |= {"fee-1-name": ["Old oil"], "fee-1-of": ["document"], "fee-1-charge": ["3.50"]}
    half = look(owner, page, **fields)
    assert half.status_code == 409 and "&#39;Fee: from day&#39; is missing" in half.text
    fields |= {"fee-1-starts_on": ["2026-02-01"], "fee-1-categories": ["oil, grease"]}
    assert keep(owner, page, **fields, sure="yes").status_code == 200
    now_is = _settings(app)
    assert [tax.name for tax in now_is.taxes] == ["Sales tax", "Local tax"] and now_is.taxes[1].on == (
        "parts",
        "labour",
    )
    assert now_is.fee_rules[0].categories == ("oil", "grease") and now_is.deposit and now_is.deposit.percent == 50
    fields = fields_of(owner.get(page)) | {"deposit_percent": [""]}
    keep(owner, page, **fields)
    assert _settings(app).deposit is None


def test_money_stays_while_jobs_are_open(owner: Browser) -> None:
    """As with the file."""
    page = "/shop/change/papers"
    fields = fields_of(owner.get(page)) | {"currency": ["EUR"]}
    answer = keep(owner, page, **fields)
    assert answer.status_code == 409 and "would stand in USD" in answer.text


def test_the_file_of_settings_reads_back_to_the_same(app: Flask, owner: Browser) -> None:
    """Taken along and taken in again it changes nothing."""
    file = owner.client.get("/shop.toml")
    assert file.headers["Content-Disposition"] == 'attachment; filename="shop.toml"'
    assert tomllib.loads(file.text)["currency"] == "USD"
    before = _settings(app)
    upload(owner, "shop.toml", file.text)
    assert _settings(app) == before


def upload(owner: Browser, name: str, content: str) -> TestResponse:
    """Send a file to the page of files."""
    from io import BytesIO

    hidden = owner.hidden("/shop/files", "/shop/files")
    data = {**hidden, "files": (BytesIO(content.encode()), name)}
    return owner.client.post("/shop/files", data=data, content_type="multipart/form-data", follow_redirects=True)


@pytest.mark.parametrize(
    ("name", "content", "told"),
    [
        ("notes.txt", "hello", "not one of the files"),
        ("../../etc/shop.toml.exe", "hello", "not one of the files"),
        ("shop.toml", "currency = ", "shop.toml"),
        ("rates.csv", "currency,into,rate,dated,source\nEUR,USD,-1,2026-01-09,bank", "not a rate"),
    ],
)
def test_files_that_can_not_be_used_are_refused(owner: Browser, name: str, content: str, told: str) -> None:
    """By name and by content; nothing is kept."""
    answer = upload(owner, name, content)
    assert answer.status_code == 409 and told in answer.text


def test_a_path_in_a_name_leads_nowhere(app: Flask, owner: Browser) -> None:
    """Only the last part of the name counts, and it must be one of the four."""
    text = owner.client.get("/shop.toml").text.replace("labour_rate = 96.00", "labour_rate = 97.00")
    assert upload(owner, "/tmp/files/../Shop.TOML", text).status_code == 200
    assert _settings(app).labour_rate == 97


def test_a_figure_far_from_usual_is_asked_about_with_the_last_beside_it(app: Flask, owner: Browser) -> None:
    """A point forgotten would quote every customer a hundred times the cost; what is right is kept all the same."""
    page, slip = "/shop/change/prices", {**BANDS, "band-1-multiplier": "160"}
    assert 'name="sure"' not in owner.get(page)
    asked = look(owner, page, **slip)
    assert asked.status_code == 409 and 'name="sure"' in asked.text and "Nothing is kept yet" not in asked.text
    assert "Price of a part: its cost times" in asked.text and "until now 2.50, 2.00" in asked.text
    assert _settings(app).markup_bands[0].multiplier == Decimal("2.50")
    assert 'value="yes" checked' in look(owner, page, sure="yes", **slip).text
    assert "The settings are changed" in keep(owner, page, sure="yes", **slip).text
    assert _settings(app).markup_bands[0].multiplier == 160
    assert look(owner, page, **{**slip, "margin_floor_percent": "29"}).status_code == 200, "it stood there before"


def test_an_older_window_puts_no_others_change_back_unseen(app: Flask, owner: Browser) -> None:
    """Who changed what is named first, and what was typed stands there; then it is as she says."""
    page, rates = "/shop/change/labour", {"labour_rate": "96.00", "technician_cost": "34.00", "clerk_cost": "23.00"}
    rates |= {"mileage_rate": "0.725", "rate_per_km": ""}
    older = owner.hidden(page, page)
    assert "The settings are changed" in keep(owner, page, **{**rates, "clerk_cost": "22.00", "labour_rate": "99"}).text
    refused = owner.send_again(older, page, look="yes", **rates)
    assert refused.status_code == 409 and "&#39;An hour of labour, to the customer&#39; 96.00 -&gt; 99" in refused.text
    assert 'name="clerk_cost" type="text" autocomplete="off" value="23.00"' in refused.text
    assert _settings(app).labour_rate == 99
    assert "The settings are changed" in keep(owner, page, **rates).text and _settings(app).labour_rate == 96


def test_the_clerk_sees_no_bands_and_no_cost_of_an_hour(owner: Browser, clerk: Browser, technician: Browser) -> None:
    """Neither on the page nor in its source; settings are the owner's to change."""
    page, owners = clerk.get("/shop"), owner.get("/shop")
    for secret in ("2.50", "1.55", "34.00", "22.00", "28 %"):
        assert secret in owners and secret not in page
    assert "96.00" in page and "/shop/change/" not in page
    closed = ("/shop/change/prices", "/shop.toml", "/shop/files", "/shop/begin", "/shop/withdraw/2026-02-01")
    assert [clerk.status(one) for one in closed] == [403] * len(closed)
    assert [technician.status(one) for one in ("/shop", "/rates", "/terms", *closed)] == [403] * (3 + len(closed))
