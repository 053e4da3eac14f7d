"""A deposit that only the sheet's words speak of, in the ranking: minded openly, and in no figure."""

from flask import Flask

from tests.web.sheets_world import drop, page_of
from tests.web.test_sheets_prices_asked import NAME, words_of
from tests.web.world import Browser


def test_a_deposit_only_in_words_is_minded_in_the_ranking(app: Flask, clerk: Browser) -> None:
    """Said openly once, where the offers are compared: it is in no figure there."""
    row = b'NW-40388,Norrowby,"Belt, auger drive, B36 aramid, wrapped (core charge $85.00)",46.00\n'
    rows = b"".join(b"ZQ-%d,Norrowby,Shoe,%d.50\n" % (n, n + 3) for n in range(9))
    page_of(clerk, drop(app, clerk, b"Part No,Maker,Description,Net\n" + row + rows, NAME))
    page = words_of(clerk.get("/find?number=NW-40388"))
    assert page.count("speak of a deposit ('core charge $85.00') that is not counted") == 1
    assert "Mind: Its words on the sheet speak of a deposit" in page
