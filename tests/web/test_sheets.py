"""Suppliers' sheets at the counter: dropped, read, kept, looked at, compared, taken out."""

from flask import Flask

from tests.web.sheets_world import PLAIN, drop, held, in_hand, page_of, settle
from tests.web.world import Browser


def test_every_supplier_stands_with_the_sheet_that_counts(clerk: Browser) -> None:
    """With its age and its problems."""
    page = clerk.get("/sheets")
    for name in ("Stonegarth", "Larkmoor", "Pellbrook", "Kesselried", "Tavishollow"):
        assert name in page
    assert "days old" in page


def test_a_dropped_sheet_is_kept_and_its_rows_add_up(app: Flask, clerk: Browser) -> None:
    """Whose it is stands in its name."""
    page = page_of(clerk, drop(app, clerk, PLAIN, "stonegarth-2026-01-14.csv"))
    assert "is kept as sheet 7" in page
    assert "9 rows = 8 offers + 1 headings, totals and notes + 0 rows with a problem" in page


def test_the_same_bytes_again_do_nothing_and_that_is_said(app: Flask, clerk: Browser) -> None:
    """The second time leads to the first sheet."""
    drop(app, clerk, PLAIN, "stonegarth-2026-01-14.csv")
    page = page_of(clerk, drop(app, clerk, PLAIN, "stonegarth-again-2026-01-14.csv"))
    assert "The very same file is there already; nothing was done." in page
    assert "Sheet 7" in page and clerk.status("/sheets/8") != 200


def test_a_form_sent_twice_reads_the_sheet_once(app: Flask, clerk: Browser) -> None:
    """Double click: the second sending leads to the same page."""
    from io import BytesIO

    found, hidden = in_hand(app), clerk.hidden("/sheets", "/sheets")
    places = set()
    for _ in range(2):
        data = {**hidden, "sheets": (BytesIO(PLAIN), "stonegarth-2026-01-14.csv")}
        answer = clerk.client.post("/sheets", data=data, content_type="multipart/form-data")
        places.add(answer.location)
    settle(app)
    assert len(places) == 1 and len(found.sent) == 1


def test_whose_sheet_it_is_gets_asked(app: Flask, clerk: Browser) -> None:
    """And from which day; both at their places, and then it is kept."""
    sent = drop(app, clerk, PLAIN, "prices.csv")
    assert "Whose sheet is it?" in clerk.get(sent)
    clerk.send(sent, supplier="larkmoor")
    settle(app)
    assert "From which day do its prices hold?" in clerk.get(sent)
    clerk.send(sent, dated="2026-01-14")
    settle(app)
    assert "Larkmoor" in page_of(clerk, sent)


def test_nobody_chosen_is_refused_and_nothing_is_read(app: Flask, clerk: Browser) -> None:
    """A blank answer is none."""
    sent = drop(app, clerk, PLAIN, "prices.csv")
    answer = clerk.send(sent, supplier="")
    assert answer.status_code == 409 and "choose the supplier" in answer.text


def test_no_file_is_a_sentence(clerk: Browser) -> None:
    """The button without a file."""
    answer = clerk.send("/sheets")
    assert answer.status_code == 409 and "No file was chosen" in answer.text


def test_what_is_no_sheet_is_told_and_let_go(app: Flask, clerk: Browser) -> None:
    """By its content, whatever its name says."""
    sent = drop(app, clerk, b"\x89PNG\r\n\x1a\n" + bytes(500), "stonegarth-2026-01-14.xlsx")
    page = clerk.get(sent)
    assert "Nothing of it was kept" in page
    assert not held(app)


def test_a_kept_file_is_not_held_any_longer(app: Flask, clerk: Browser) -> None:
    """The store has its rows; the file itself goes."""
    drop(app, clerk, PLAIN, "stonegarth-2026-01-14.csv")
    assert not held(app)


def test_a_file_asked_about_is_held_until_it_is_let_go(app: Flask, clerk: Browser) -> None:
    """Leaving it forgets it."""
    sent = drop(app, clerk, PLAIN, "prices.csv")
    assert len(held(app)) == 1
    clerk.send(sent, to=f"{sent}/let-go")
    assert not held(app) and clerk.status(sent) == 404


def test_taken_out_the_older_sheet_counts_again(app: Flask, clerk: Browser) -> None:
    """The page says so before, and the list after."""
    page_of(clerk, drop(app, clerk, PLAIN, "stonegarth-2026-01-14.csv"))
    assert "counts again in its place" in clerk.get("/sheets/7/take-out")
    answer = clerk.send("/sheets/7/take-out")
    assert "Sheet 7 is taken out" in answer.text
    assert clerk.client.get("/sheets/7").status_code == 409


def test_after_a_restart_the_page_says_what_that_means(clerk: Browser) -> None:
    """A piece of work nobody remembers."""
    answer = clerk.client.get("/sheets/sent/abcdefgh")
    assert answer.status_code == 404 and "nothing of it was kept" in answer.text


def test_the_biggest_rise_stands_first(app: Flask, clerk: Browser) -> None:
    """And new and vanished offers are counted, also in the files."""
    page_of(clerk, drop(app, clerk, PLAIN, "stonegarth-2026-01-13.csv"))
    newer = PLAIN.replace(b"ZQ-1,Skid shoe 1,4.50", b"ZQ-1,Skid shoe 1,5.00").replace(b"8,11.50", b"8,23.00")
    page_of(clerk, drop(app, clerk, newer.replace(b"ZQ-2,", b"ZR-2,"), "stonegarth-2026-01-14.csv"))
    page = clerk.get("/sheets/8/changes")
    settle(app)
    assert page.index("+100.0 %") < page.index("+11.1 %")
    assert "Vanished, on the old sheet only" in page and "Appeared, on the new sheet only" in page
    text = clerk.client.get("/sheets/8/changes.csv").text
    assert "ZR-2" in text
    assert clerk.client.get("/sheets/8/changes.xlsx").data[:2] == b"PK"
    assert "Earlier" not in clerk.get("/sheets/8/changes?only=Rose")


def test_changes_with_a_sheet_of_another_supplier_are_refused(clerk: Browser) -> None:
    """Numbers of two suppliers have nothing to do with each other."""
    numbers = [at for at in range(1, 7) if clerk.client.get(f"/sheets/{at}/changes?against=1").status_code == 409]
    assert len(numbers) >= 4


def test_a_technician_sees_no_sheet(technician: Browser) -> None:
    """They hold what the shop pays."""
    addresses = ["/sheets", "/sheets/1", "/sheets/of/stonegarth", "/sheets/2/changes", "/sheets/2/changes.csv"]
    addresses += ["/sheets/1/problems.csv", "/sheets/1/take-out", "/sheets/sent/abc", "/sheets/work/abc"]
    assert {technician.status(one) for one in addresses} == {403}
