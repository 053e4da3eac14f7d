"""What the counter asks about a sheet before it keeps it, and what the answers do."""

import re

import pytest
from flask import Flask

from sourcing.actions import sheet_sent
from sourcing.actions.sheet_list import sheets_of
from sourcing.web.desks import desk
from tests.web.sheets_world import PLAIN, drop, held, page_of, settle
from tests.web.world import Browser

UNCLEAR = b"Part No,Description,Price,Remark\n" + b"".join(b"ZQ-%d,Shoe,%d.50,x\n" % (at, at + 3) for at in range(9))
NO_PRICE = b"Part No,Description,Quux\n" + b"".join(b"ZQ-%d,Skid shoe,%d.50\n" % (at, at + 3) for at in range(9))
TWICE = b"Part No,Net,Net\n" + b"".join(b"ZQ-%d,%d.50,%d.75\n" % (at, at + 3, at + 4) for at in range(9))
NAME = "stonegarth-2026-01-14.csv"


def test_an_unclear_price_is_asked_with_its_values_and_never_guessed(app: Flask, clerk: Browser) -> None:
    """Nothing is marked beforehand, and rows of the sheet stand beside."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    page = clerk.get(sent)
    assert "could be the net price or the list price" in page and "--column" not in page
    assert "<code>3.50</code>" in page and '<th scope="row">2</th>' in page
    assert " checked" not in page
    assert clerk.client.get("/sheets/7").status_code == 409


def test_the_answer_keeps_the_sheet_and_is_remembered(app: Flask, clerk: Browser) -> None:
    """The next sheet of the supplier is not asked about."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    clerk.send(sent, **{"said-0": "net price"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent) and not held(app)
    again = UNCLEAR.replace(b"ZQ-1,", b"ZX-1,")
    assert "Sheet 8" in page_of(clerk, drop(app, clerk, again, "stonegarth-2026-01-15.csv"))
    with app.test_request_context():
        _, remembered = sheets_of(desk("test"), "stonegarth")
    assert ("Price", "net price") in [(one.header, one.field) for one in remembered]
    assert "<dt>Price</dt><dd>net price</dd>" in clerk.get("/sheets/of/stonegarth")


def test_a_sheet_without_any_price_is_asked_about_and_says_so_afterwards(app: Flask, clerk: Browser) -> None:
    """The one price column is the list price: what that means is said before it is kept, and stands on its page."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    clerk.send(sent, **{"said-0": "list price"})
    settle(app)
    page = clerk.get(sent)
    assert "o row of &#39;stonegarth-2026-01-14.csv&#39; has a net price" in page
    assert "No prices in it" in page and "--" not in re.sub(r"<[^>]*>", "", page)
    assert clerk.client.get("/sheets/7").status_code == 409
    clerk.send(sent)
    settle(app)
    assert "No row of it has a net price" in page_of(clerk, sent)
    assert "No row of it has a net price" not in clerk.get("/sheets/6")


def test_prices_taken_out_while_looking_over_are_asked_about_again(app: Flask, clerk: Browser) -> None:
    """To have looked at the columns is no word about their prices."""
    page_of(clerk, drop(app, clerk, PLAIN, NAME))
    sent = drop(app, clerk, PLAIN.replace(b"ZQ-1,", b"ZX-1,"), "stonegarth-2026-01-15.csv", look="yes")
    page = clerk.get(sent)
    assert "No prices in it" not in page
    names = re.findall(r'<label for="(other-\d+)">C: Net', page)
    clerk.send(sent, **dict.fromkeys(names, "not used"))
    settle(app)
    assert "No prices in it" in clerk.get(sent)


def test_a_sheet_whose_prices_are_found_after_all_is_kept_with_them(app: Flask, clerk: Browser) -> None:
    """The question is answered by naming the column; nothing more is asked."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    clerk.send(sent, **{"said-0": "list price"})
    settle(app)
    (name,) = re.findall(r'<label for="(other-\d+)">C: Price', clerk.get(sent))
    clerk.send(sent, **{name: "net price"})
    settle(app)
    assert "No row of it has a net price" not in page_of(clerk, sent)


def test_a_question_left_open_is_refused_and_what_was_said_comes_back(app: Flask, clerk: Browser) -> None:
    """Silence is no answer."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    answer = clerk.send(sent, **{"other-4": "note"})
    assert answer.status_code == 409 and "Nothing is chosen for &#39;Price&#39;" in answer.text
    answer = clerk.send(sent, **{"said-0": "another", "other-0": "pricey"})
    assert answer.status_code == 409 and "pricey" in answer.text
    assert re.search(r'id="other-0"[^>]* value="pricey"', answer.text)


def test_another_meaning_can_be_typed(app: Flask, clerk: Browser) -> None:
    """In any case and with blanks; a scanner or a list of words does the same."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    clerk.send(sent, **{"said-0": "another", "other-0": "  Net  Price "})
    settle(app)
    page = page_of(clerk, sent)
    assert "<td>net price</td><td>" in page


def test_a_price_from_so_many_pieces(app: Flask, clerk: Browser) -> None:
    """The quantity is kept with the column, and only a net price can have one."""
    sent = drop(app, clerk, UNCLEAR, NAME)
    answer = clerk.send(sent, **{"said-0": "list price", "pieces-0": "10"})
    assert answer.status_code == 409 and "only a net price can have" in answer.text
    clerk.send(sent, **{"said-0": "net price", "pieces-0": "10"})
    settle(app)
    assert "<td>net price from 10</td>" in page_of(clerk, sent)


def test_a_column_nobody_knows_can_be_named(app: Flask, clerk: Browser) -> None:
    """All columns are open, and one must be named."""
    sent = drop(app, clerk, NO_PRICE, NAME)
    page = clerk.get(sent)
    assert "Which column is it?" in page or "Quux" in page
    names = re.findall(r'<label for="(other-\d+)">C: Quux|name="(said-\d+)"', page)
    field = next(first or second for first, second in names)
    clerk.send(sent, **{field: "net price"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_two_columns_of_one_name_are_told_apart_by_letter(app: Flask, clerk: Browser) -> None:
    """Saying 'not used' of one leaves the other."""
    sent = drop(app, clerk, TWICE, NAME)
    page = clerk.get(sent)
    assert "Column B" in page and "Column C" in page
    clerk.send(sent, **{"said-0": "not used", "said-1": "net price"})
    settle(app)
    page = page_of(clerk, sent)
    assert re.search(r">C</th><td>Net</td><td>net price</td>", page)


def test_an_answer_to_an_older_question_is_not_taken(app: Flask, clerk: Browser, owner: Browser) -> None:
    """Somebody else has answered meanwhile, and what is asked now is another thing."""
    two = UNCLEAR.replace(b"Remark", b"Cost").replace(b",x", b",9.10")
    sent = drop(app, clerk, two, "prices.csv", supplier="stonegarth")
    old = clerk.hidden(sent, sent)
    owner.send(sent, **{"said-0": "net price", "dated": "2026-01-14"})
    settle(app)
    answer = clerk.send_again(old, sent, **{"said-0": "list price"})
    assert "Somebody has answered for this sheet already" in answer.text or "Sheet 7" in answer.text
    page = owner.get("/sheets/of/stonegarth")
    assert "<dd>list price</dd>" not in page


def test_a_line_that_speaks_of_the_prices_is_asked_once(app: Flask, clerk: Browser) -> None:
    """It can be said not to matter."""
    sheet = b"All prices less 10%\n\nPart No,Description,Net\n" + b"".join(
        b"Z-%d,Shoe,4.%d0\n" % (a, a) for a in range(9)
    )
    sent = drop(app, clerk, sheet, NAME)
    page = clerk.get(sent)
    assert "All prices less 10%" in page and "it names a discount" in page
    clerk.send(sent, **{"said-0": "not used"})
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_parts_of_ours_stand_first_among_the_changes_with_their_open_jobs(app: Flask, clerk: Browser) -> None:
    """A dearer bearing that a job waits for is what the clerk must see."""
    from sourcing.documents.shipped_files import demo_folder

    text = (demo_folder() / "stonegarth" / "prices-2026-01-05.csv").read_text(encoding="utf-8")
    line = next(one for one in text.splitlines() if one.startswith("NW-41388"))
    dearer = re.sub(r"(\d+)\.(\d\d)", lambda found: f"{int(found[1]) + 7}.{found[2]}", line)
    page_of(clerk, drop(app, clerk, text.replace(line, dearer).encode(), NAME))
    page = clerk.get("/sheets/7/changes")
    assert page.index("Parts of ours") < page.index(">Rose")
    assert "our BELT-AUGER" in page and "2026-0004" in page


REFERENCES = b"QX,Ref,Zed,Words,Net\n" + b"".join(
    b"QX-%d,%s,NW-%d,Skid shoe,%d.50\n" % (at, (b"NORROWBY", b"OSTREVIK")[at % 2], at, at + 3) for at in range(9)
)
"""Its 'Ref' is the maker's name, though the header may be a number's."""


def test_a_column_of_names_is_not_taken_for_numbers_without_a_question(app: Flask, clerk: Browser) -> None:
    """Every offer would be ordered as 'NORROWBY'. Said once, the sheet is kept with the numbers told."""
    sent = drop(app, clerk, REFERENCES, NAME)
    page = clerk.get(sent)
    assert "words without figures, and only 2 of the 9 looked at differ" in page
    places = dict(re.findall(r'<label for="other-(\d+)">[A-Z]: (\w+)', page))
    at = {header: f"other-{place}" for place, header in places.items()}
    clerk.send(
        sent, **{"said-0": "another", "other-0": "maker", at["QX"]: "supplier number", at["Zed"]: "maker number"}
    )
    settle(app)
    kept = page_of(clerk, sent)
    assert all(f"<td>{meaning}</td>" in kept for meaning in ("supplier number", "maker", "maker number", "net price"))


def test_who_wants_to_sees_the_columns_first_and_changes_one(app: Flask, clerk: Browser) -> None:
    """Nothing would have been asked of this sheet; nothing is kept before it was looked over."""
    sent = drop(app, clerk, PLAIN, NAME, look="yes")
    page = clerk.get(sent)
    assert "Nothing is asked" in page and "Keep it so" in page and clerk.status("/sheets/7") == 409
    assert "as it is read: net price" in page
    (place,) = re.findall(r'<label for="other-(\d+)">D: List', page)
    clerk.send(sent, **{f"other-{place}": "not used"})
    settle(app)
    kept = page_of(clerk, sent)
    assert "Sheet 7" in kept and "<td>list price</td>" not in kept and "<td>net price</td>" in kept


def test_a_sheet_read_wrongly_is_taken_out_to_be_read_otherwise(app: Flask, clerk: Browser) -> None:
    """The page for dropping it again has the supplier chosen and the tick set."""
    drop(app, clerk, PLAIN, NAME)
    page = clerk.send("/sheets/7/take-out", again="yes")
    assert page.request.path == "/sheets" and 'name="look" value="yes" checked' in page.text
    assert '<option value="stonegarth" selected>' in page.text
    assert 'name="look" value="yes" checked' not in clerk.get("/sheets")


def test_a_sheet_much_shorter_than_the_one_before_is_not_kept_unseen(
    app: Flask, clerk: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Four rows would stand for 831; who says that it is all he sells has it kept."""
    monkeypatch.setattr(sheet_sent, "FEW", 5)
    few = b"\n".join(PLAIN.split(b"\n")[:5])
    sent = drop(app, clerk, few, NAME)
    page = clerk.get(sent)
    assert "Is it the whole sheet?" in page and "has 4 offers" in page and "now has 831" in page
    assert clerk.status("/sheets/7") == 409
    clerk.send(sent)
    settle(app)
    assert "Sheet 7" in page_of(clerk, sent)


def test_a_file_kept_as_another_suppliers_is_not_kept_unseen(app: Flask, clerk: Browser) -> None:
    """A slip in the list of suppliers would give one the prices of another."""
    assert "Sheet 7 of Stonegarth" in page_of(clerk, drop(app, clerk, PLAIN, NAME))
    sent = drop(app, clerk, PLAIN, NAME.replace("stonegarth", "pellbrook"))
    page = clerk.get(sent)
    assert "Is it his sheet?" in page and "to the letter the file that is kept as sheet 7 of stonegarth" in page
    assert clerk.status("/sheets/8") == 409
    clerk.send(sent)
    settle(app)
    assert "Sheet 8 of Pellbrook" in page_of(clerk, sent)
