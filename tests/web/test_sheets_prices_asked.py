"""What the counter asks of the prices of a sheet: per package, worked out from the list price, of a day."""

import re
from html import unescape

from flask import Flask

from tests.web.sheets_world import drop, page_of, settle
from tests.web.world import Browser

NAME = "stonegarth-2026-01-14.csv"
PACKAGES = b"Part No,Description,Pkg Qty,Pkg Price\n" + b"".join(b"ZQ-%d,Pin,10,%d.90\n" % (n, n + 3) for n in range(9))
LESS = b"Part No,Description,Preis,Rabatt %\n" + b"".join(b"ZQ-%d,Shoe,%d.50,40\n" % (n, n + 3) for n in range(9))


def words_of(page: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", page)).split())


def test_a_price_of_a_package_is_asked_in_words_and_its_answer_is_said_on_the_sheet(app: Flask, clerk: Browser) -> None:
    sent = drop(app, clerk, PACKAGES, NAME)
    clerk.send(sent, **{"said-0": "net price"})
    settle(app)
    page = words_of(clerk.get(sent))
    assert "names a package, beside 'Pkg Qty', which counts the pieces in one" in page
    assert "What the prices of a column are for" in page and "A line" not in page and "--column" not in page
    assert "a whole package: the price of one piece is a part of it" in page and "one piece" in page
    clerk.send(sent, **{"said-0": "price basis"})
    settle(app)
    assert "prices of column 'Pkg Price' are read as per pack, as a person has said" in words_of(page_of(clerk, sent))


def test_net_prices_worked_out_from_now_on_are_told_truly(app: Flask, clerk: Browser) -> None:
    """The sheet before had a net price column. The person has called the price a list price: that is enough."""
    sent = drop(app, clerk, LESS, NAME)
    clerk.send(sent, **{"said-0": "list price"})
    settle(app)
    page = words_of(page_of(clerk, sent))
    assert "no column known to hold them" not in page and "Sheet 7" in page


def test_a_clear_list_price_less_a_discount_is_asked_about_under_its_own_header(app: Flask, clerk: Browser) -> None:
    sent = drop(app, clerk, LESS.replace(b"Preis", b"Listenpreis"), NAME)
    page = words_of(clerk.get(sent))
    assert "worked out from the list price in 'Listenpreis' and the discount in 'Rabatt %'" in page
    assert "Column C Listenpreis" in page and "no column known to hold them" not in page
    clerk.send(sent, **{"said-0": "list price"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_a_price_of_a_later_day_is_said_in_the_sheets_notes(app: Flask, clerk: Browser) -> None:
    rows = b"".join(b"ZQ-%d,Shoe,%d.50\n" % (n, n + 3) for n in range(9))
    sent = drop(app, clerk, b"Part No,Description,Net price valid from 2026-02-01\n" + rows, NAME)
    assert "holds prices from Feb 1, 2026 on, and the sheet is of Jan 14, 2026" in words_of(clerk.get(sent))
    clerk.send(sent, **{"said-0": "net price"})
    settle(app)
    assert "before that day they are not what the supplier asks" in words_of(page_of(clerk, sent))


def test_a_column_that_holds_numbers_of_our_table_is_asked_about(app: Flask, clerk: Browser) -> None:
    rows = b"".join(b"ZQ-%d,Shoe,%s,%d.50\n" % (n, b"NW-40388" if n == 1 else b"", n + 3) for n in range(9))
    sent = drop(app, clerk, b"Part No,Description,Quux,Net\n" + rows, NAME)
    page = words_of(clerk.get(sent))
    assert "1 of its values is in the table of same parts, such as NW-40388" in page
    assert "maker number: the maker's own" in page
    clerk.send(sent, **{"said-0": "maker number"})
    settle(app)
    assert "Quux maker number confirmed" in page_of_words(clerk, sent)


def page_of_words(clerk: Browser, sent: str) -> str:
    return words_of(page_of(clerk, sent))


def test_a_sheet_none_of_whose_rows_is_ours_says_so(app: Flask, clerk: Browser) -> None:
    rows = b"".join(b"ZQ-%d,Shoe,%d.50\n" % (n, n + 3) for n in range(9))
    page = page_of_words(clerk, drop(app, clerk, b"Part No,Description,Net\n" + rows, NAME))
    assert "No row of it is a part of ours by number and table" in page


def test_two_currencies_in_columns_are_answered_by_leaving_one_out(app: Flask, clerk: Browser) -> None:
    """Nothing on the page says that it can't be answered here: the answer is taken."""
    rows = b"".join(b"ZQ-%d,Shoe,%d.50,%d.10\n" % (n, n + 3, n + 2) for n in range(9))
    sent = drop(app, clerk, b"Part No,Description,Net CAD,Net USD\n" + rows, NAME)
    page = words_of(clerk.get(sent))
    assert "can't be answered here" not in page
    assert "more than one currency: CAD in 'Net CAD', USD in 'Net USD'; leave out the price columns" in page
    clerk.send(sent, **{"said-0": "not used", "said-1": "net price"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_two_currencies_of_prices_nothing_else_is_asked_of_need_an_answer_too(app: Flask, clerk: Browser) -> None:
    rows = b"".join(b"ZQ-%d,Shoe,%d.50,%d.10\n" % (n, n + 3, n + 9) for n in range(9))
    sent = drop(app, clerk, b"Part No,Description,Net USD,List CAD\n" + rows, NAME)
    page = clerk.get(sent)
    assert "CAD in 'List CAD', USD in 'Net USD'" in words_of(page) and "<details open>" in page
    assert clerk.client.post(sent, data=clerk.hidden(sent, sent)).status_code == 409
    clerk.send(sent, **{"other-3": "not used"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_no_page_has_the_notation_of_a_command(app: Flask, clerk: Browser) -> None:
    """Of two net prices one is likely not used: that is said in words."""
    rows = b"".join(b"ZQ-%d,%d.50,%d.40\n" % (n, n + 3, n + 2) for n in range(9))
    page = words_of(clerk.get(drop(app, clerk, b"Part No,Dealer Net,Your Net\n" + rows, NAME)))
    assert "Perhaps: 'not used' for 'Dealer Net'." in page and "=" not in page


def test_a_discount_can_be_chosen_and_beside_a_net_price_is_asked_again(app: Flask, clerk: Browser) -> None:
    """The very word that is proposed is a choice; said beside a net price, it is not kept as if it had come off."""
    rows = "".join(f"ZQ-{n};Shoe;{n + 3},50;30;10\n" for n in range(9))
    sent = drop(app, clerk, f"Código;Descripción;Precio neto;Dto. 1 %;Dto. 2 %\n{rows}".encode(), NAME)
    for at in ("0", "1"):
        assert re.search(rf'name="said-{at}" value="discount"', clerk.get(sent))
    clerk.send(sent, **{"said-0": "discount", "said-1": "discount"})
    settle(app)
    page = words_of(clerk.get(sent))
    assert "'Dto. 1 %' is a discount and 'Precio neto' a net price" in page and "'Dto. 2 %' is a discount" in page
    clerk.send(sent, **{"said-0": "not used", "said-1": "not used"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)
