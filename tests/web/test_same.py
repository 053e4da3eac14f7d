"""The equivalence table at the counter: read by all, changed by clerk and owner, always with a reason."""

import io
import re
import zipfile

import openpyxl
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.statement_deeds import statement_history
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, Browser

TABLE = "/same-parts"
SAID = f"{TABLE}/statements/5"
"""'Norrowby NW-40388 is the same part as Dunmarrow DM-77120', by a supplier's list."""

NEW = {
    "left_whose": "ours",
    "left_number": "belt-auger",
    "relation": "must not",
    "right_number": "ZZ-100",
    "right_maker": "Corrivane",
    "standing": "maker",
    "source": "service letter 26-01",
}


def _desk(app: Flask) -> Desk:
    return Desk(store=app.config[STORE], at=NOW, who=CLERK)


def test_a_number_leads_straight_to_what_it_is_tied_to(technician: Browser) -> None:
    """As a scanner types it, with other blanks and case; words narrow the list of our parts."""
    gone = technician.client.get(f"{TABLE}?for=ov20417")
    assert gone.status_code == 303 and gone.location == f"{TABLE}/number?number=ov20417"
    listed = technician.get(f"{TABLE}?for=drive+BELT")
    assert "BELT-AUGER" in listed and "BRG-IDLER" not in listed
    assert "No statement names this number" in technician.get(f"{TABLE}?for=QQ-0")


def test_the_page_of_a_number_says_in_words_what_is_drawn(technician: Browser) -> None:
    """Every number of the family with its statements; the drawing is an image of its own."""
    page = technician.get(f"{TABLE}/number?number=NW-40388")
    for number in ("BELT-AUGER", "NW-41388", "CV-B36K", "OV 20 417", "DM-77120"):
        assert number in page
    assert "counts as supplier" in page and "Larkmoor&#39;s cross list" in page and "Nov 18, 2025" in page
    drawn = technician.client.get(f"{TABLE}/drawing.svg?number=NW-40388")
    assert drawn.content_type.startswith("image/svg+xml") and "DM-77120" in drawn.text
    assert f"{TABLE}/drawing.svg?number=NW-40388" in page


def test_the_way_between_two_numbers_is_told_each_way(technician: Browser) -> None:
    """Superseded by goes forward only."""
    page = technician.get(f"{TABLE}/number?number=NW-40388&to=NW-41388")
    assert "NW-41388 (Norrowby) may serve where NW-40388 (Norrowby) is asked for" in page
    assert "No statement says that NW-40388 may serve where NW-41388 is asked for" in page


def test_a_must_not_is_told_before_all(app: Flask, clerk: Browser) -> None:
    """On the way between, and in the family."""
    added = clerk.send(f"{TABLE}/add", **NEW)
    assert added.status_code == 200 and "The statement is kept" in added.text
    page = clerk.get(f"{TABLE}/number?number=BELT-AUGER&to=ZZ-100")
    assert "ZZ-100 (Corrivane) must not serve where BELT-AUGER (our part) is asked for" in page
    assert "It must not serve for our part BELT-AUGER" in clerk.get(f"{TABLE}/number?number=ZZ-100")


def test_a_number_in_no_statement_is_told_with_what_looks_like_it(clerk: Browser) -> None:
    """None of it is taken instead."""
    answer = clerk.client.get(f"{TABLE}/number?number=NW-4O388")
    assert answer.status_code == 409 and "NW-40388" in answer.text and "is not in the table" in answer.text


def test_a_machine_leaves_statements_aside_and_a_serial_needs_one(clerk: Browser) -> None:
    """The serial number alone means nothing."""
    assert "For the machine NW-826" in clerk.get(f"{TABLE}/number?number=NW-40388&machine=NW-826&serial=1001")
    assert clerk.status(f"{TABLE}/number?number=NW-40388&serial=1001") == 409


def test_a_statement_is_withdrawn_with_a_reason_and_restored(app: Flask, clerk: Browser) -> None:
    """Without a reason nothing is done; the history keeps both."""
    refused = clerk.send(SAID, f"{SAID}/change", what="withdraw", reason="  ")
    assert refused.status_code == 409 and not statement_history(_desk(app), 5).withdrawn
    assert "say why in words" in refused.text and "--reason" not in refused.text
    gone = clerk.send(SAID, f"{SAID}/change", what="withdraw", reason="wrong list")
    assert "It counts no more" in gone.text and "Take it back" in gone.text
    assert "DM-77120" not in clerk.get(f"{TABLE}/number?number=NW-40388").split("withdrawn")[0]
    assert "One that was withdrawn" in clerk.get(f"{TABLE}/number?number=NW-40388")
    only = clerk.client.get(f"{TABLE}/number?number=DM-77120")
    assert only.status_code == 409 and f'href="{SAID}"' in only.text
    back = clerk.send(SAID, f"{SAID}/change", what="restore", reason="right after all")
    assert "It counts again" in back.text and "wrong list" in back.text and "right after all" in back.text


def test_a_statement_is_doubted_and_answered_with_another_standing(app: Flask, clerk: Browser) -> None:
    """Doubted, it counts as unchecked; the answer may say how far it is trusted from now on."""
    assert "the ribs differ" not in clerk.get(f"{TABLE}/check")
    doubted = clerk.send(SAID, f"{SAID}/change", what="doubt", reason="the ribs differ")
    assert "the ribs differ" in doubted.text and "Answer the doubt" in doubted.text
    assert statement_history(_desk(app), 5).statement.counts_as == "unchecked"
    assert "the ribs differ" in clerk.get(f"{TABLE}/check")
    clerk.send(SAID, f"{SAID}/change", what="answer", reason="measured", standing="fitted")
    assert statement_history(_desk(app), 5).statement.counts_as == "fitted"


def test_another_standing_can_be_taken_back(app: Flask, clerk: Browser) -> None:
    """The way back has the old standing filled in."""
    page = clerk.send(SAID, f"{SAID}/change", what="standing", standing="maker", reason="in his list").text
    assert f'href="{SAID}?standing=supplier#change"' in page
    assert re.search(r'value="supplier" checked', clerk.get(f"{SAID}?standing=supplier"))
    assert clerk.send(SAID, f"{SAID}/change", what="standing", standing="maker", reason="again").status_code == 409


def test_what_was_typed_comes_back_when_a_statement_is_refused(app: Flask, clerk: Browser) -> None:
    """A source that is missing; then one that is there already."""
    refused = clerk.send(f"{TABLE}/add", **{**NEW, "source": " "})
    assert refused.status_code == 409 and 'value="ZZ-100"' in refused.text
    clerk.send(f"{TABLE}/add", **NEW)
    again = clerk.send(f"{TABLE}/add", **NEW)
    assert again.status_code == 409 and "service letter 26-01" in again.text


def test_a_statement_sent_twice_is_kept_once(app: Flask, clerk: Browser) -> None:
    """A double click leads to the same statement."""
    hidden = clerk.hidden(f"{TABLE}/add", f"{TABLE}/add")
    pages = [clerk.send_again(hidden, f"{TABLE}/add", **NEW).request.path for _ in range(2)]
    assert pages[0] == pages[1] and pages[0].startswith(f"{TABLE}/statements/")


def test_a_statement_that_contradicts_the_table_says_so_at_once(clerk: Browser) -> None:
    """A number tied to another part of ours."""
    page = clerk.send(
        f"{TABLE}/add", **{**NEW, "relation": "same part", "right_number": "BRG-IDLER", "right_whose": "ours"}
    ).text
    assert "Two of our parts tied together" in page and "BELT-AUGER" in page


def test_names_of_makers_are_kept_and_taken_away(clerk: Browser) -> None:
    """What was taken away can be kept again from where it is told."""
    to = f"{TABLE}/makers/name"
    assert (
        "&#39;Norrowbie&#39; is Norrowby" in clerk.send(f"{TABLE}/makers", to, name="Norrowbie", maker="Norrowby").text
    )
    assert clerk.send(f"{TABLE}/makers", to, name="Norrowbie", maker="Corrivane").status_code == 409
    gone = clerk.send(f"{TABLE}/makers", f"{TABLE}/makers/take-away").text
    assert "/same-parts/makers?name=Norrowbie&amp;maker=Norrowby" in gone


def _edited(clerk: Browser, **cells: str) -> bytes:
    book = openpyxl.load_workbook(io.BytesIO(clerk.client.get(f"{TABLE}/table.xlsx").data))
    for cell, value in cells.items():
        book["statements"][cell] = value
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _column(clerk: Browser, name: str) -> str:
    book = openpyxl.load_workbook(io.BytesIO(clerk.client.get(f"{TABLE}/table.xlsx").data))
    return next(cell.column_letter for cell in book["statements"][1] if cell.value == name)


def test_an_edited_table_is_shown_before_it_is_taken_in(app: Flask, clerk: Browser) -> None:
    """Nothing is changed by looking; agreed to, it is; an address of before shows it is done."""
    sent = _edited(clerk, **{f"{_column(clerk, 'standing')}6": "maker"})
    looked = clerk.send(f"{TABLE}/take-in", files=(io.BytesIO(sent), "table.xlsx"))
    assert "1 changed" in looked.text and "Nothing is changed yet" in looked.text
    number = int(re.search(r"<li>(\d+) ", looked.text).group(1))  # type: ignore[union-attr]
    assert statement_history(_desk(app), number).statement.standing != "maker"
    where = looked.request.full_path.rstrip("?")
    done = clerk.send(where)
    assert done.status_code == 200 and "1 changed" in done.text
    assert statement_history(_desk(app), number).statement.standing == "maker"
    assert clerk.status(where) == 409


def test_a_table_that_changed_since_it_was_shown_is_shown_again(app: Flask, clerk: Browser) -> None:
    """Somebody else changes the same statement between looking and agreeing."""
    sent = _edited(clerk, **{f"{_column(clerk, 'standing')}6": "maker"})
    looked = clerk.send(f"{TABLE}/take-in", files=(io.BytesIO(sent), "table.xlsx"))
    where = looked.request.full_path.rstrip("?")
    number = int(re.search(r"<li>(\d+) ", looked.text).group(1))  # type: ignore[union-attr]
    hidden = clerk.hidden(where, where)
    page = f"{TABLE}/statements/{number}"
    clerk.send(page, f"{page}/change", what="doubt", reason="not sure")
    assert clerk.send_again(hidden, where).status_code == 409
    assert statement_history(_desk(app), number).statement.standing != "maker"


def test_rows_that_can_not_be_used_stop_the_file_unless_left_out(app: Flask, clerk: Browser) -> None:
    """They are told first; with them left out the others are taken."""
    standing = _column(clerk, "standing")
    sent = _edited(clerk, **{f"{standing}6": "maker", f"{standing}5": "surely"})
    looked = clerk.send(f"{TABLE}/take-in", files=(io.BytesIO(sent), "table.xlsx"))
    where = looked.request.full_path.rstrip("?")
    assert "surely" in looked.text and clerk.send(where).status_code == 409
    assert clerk.send(f"{where}?keep_good=yes").status_code == 200


def test_what_is_no_table_is_refused(clerk: Browser) -> None:
    """Another kind of file, none at all, and files nobody holds."""
    assert clerk.send(f"{TABLE}/take-in", files=(io.BytesIO(b"%PDF-1.7"), "table.xlsx")).status_code == 409
    assert clerk.send(f"{TABLE}/take-in").status_code == 409
    assert clerk.status(f"{TABLE}/take-in/nothing") == 409


def test_the_csv_files_come_as_one_and_go_back_as_three(clerk: Browser) -> None:
    """Unpacked and sent as they are, they change nothing."""
    packed = zipfile.ZipFile(io.BytesIO(clerk.client.get(f"{TABLE}/table.zip").data))
    files = [(io.BytesIO(packed.read(name)), name) for name in packed.namelist()]
    assert sorted(packed.namelist()) == ["makers.csv", "parts.csv", "statements.csv"]
    looked = clerk.send(f"{TABLE}/take-in", files=files)
    assert "The file changes nothing" in looked.text


def test_the_technician_reads_and_can_not_change(app: Flask, technician: Browser) -> None:
    """No form stands on her pages, and what the forms lead to is closed."""
    for page in (TABLE, f"{TABLE}/number?number=NW-40388", SAID, f"{TABLE}/makers", f"{TABLE}/check"):
        body = technician.get(page).split("<main")[1].split("</main>")[0]
        assert 'method="post"' not in body and "Add a statement" not in body
    for page in (f"{TABLE}/add", f"{SAID}/change", f"{TABLE}/makers/name", f"{TABLE}/take-in"):
        assert technician.status(page) == 403
    assert technician.status(f"{TABLE}/table.xlsx") == 200


def test_an_unknown_statement_is_told(clerk: Browser) -> None:
    """A number the table does not have; one that is none."""
    assert clerk.status(f"{TABLE}/statements/99999") == 409
    assert clerk.status(f"{TABLE}/statements?statement=five") == 409
    assert "Statement 5" in clerk.get(f"{TABLE}/statements?statement=5")
