"""A customer's link: made, kept only as a hash, opened for its one quote, revoked, past its time."""

import base64
from datetime import date, datetime, timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import record, standing
from sourcing.actions.bill import write_bill
from sourcing.actions.customer_answer import Answer, answer
from sourcing.actions.customer_links import (
    job_links,
    make_link,
    new_secret,
    open_link,
    photo_of_link,
    revoke_link,
)
from sourcing.actions.link_given import note_opened
from sourcing.actions.orders import place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.revisions import revisions
from sourcing.basics.person import Photo
from sourcing.basics.problem import Refused
from sourcing.storage.links import add_photo, take_photos_out
from tests.actions.answered_shop import BELT, CALLED, FOUND, at, change, quoted, said
from tests.actions.linked_shop import HER, LATER, PAGE, asked, her, linked, opens, refusal_of, row


def test_secrets_can_not_be_guessed() -> None:
    """256 random bits (OWASP ASVS 4.0.3, 2.6.2 and 3.2.2 ask for 64 and more), never the same twice."""
    some = {new_secret() for _ in range(200)}
    assert len(some) == 200
    assert all(len(base64.urlsafe_b64decode(one + "=")) == 32 for one in some)


def test_the_secret_is_kept_nowhere(tmp_path: Path) -> None:
    """Neither in the database file nor in what lies beside it, also after the answer."""
    number, secret, _ = linked(tmp_path)
    answer(her(tmp_path), secret, Answer(yes=("1",), name=HER, words="thank you"))
    revoke_link(at(tmp_path), number, 1)
    files = [file for file in tmp_path.rglob("*") if file.is_file()]
    content = b"".join(file.read_bytes() for file in files)
    assert b"thank you" in content and secret.encode() not in content


@pytest.mark.parametrize("weak", ["", "short", "x" * 42, "x" * 44, "x" * 42 + "/"])
def test_a_weak_secret_makes_no_link(tmp_path: Path, weak: str) -> None:
    """What a page sends is not trusted."""
    number = asked(tmp_path)
    with pytest.raises(Refused, match="impossible to guess"):
        make_link(at(tmp_path), number, weak)
    assert not job_links(at(tmp_path), number).rows


def test_a_link_is_open_to_the_end_of_the_quotes_last_valid_day(tmp_path: Path) -> None:
    """Or of a day before it; to the minute."""
    _number, secret, link = linked(tmp_path)
    valid_to = open_link(her(tmp_path), secret).frozen.quote.valid_to
    assert link.until == datetime.combine(valid_to, datetime.min.time()).replace(hour=23, minute=59)
    assert opens(tmp_path, secret, link.until) == ""
    assert opens(tmp_path, secret, link.until + timedelta(minutes=1)) == "link-over"


def test_a_shorter_link_ends_on_its_day(tmp_path: Path) -> None:
    """Also for an answer: nothing is kept a minute later."""
    _number, secret, link = linked(tmp_path, CALLED.date())
    assert link.until == datetime(2026, 3, 4, 23, 59)
    over = refusal_of(tmp_path, secret, Answer(yes=("1",), name=HER), link.until + timedelta(minutes=1))
    assert over.problems[0].code == "link-over"


def test_days_that_make_no_sense_are_refused(tmp_path: Path) -> None:
    """Yesterday, and a day past the quote's last."""
    number = asked(tmp_path)
    for day in (date(2026, 3, 3), date(2026, 12, 1)):
        with pytest.raises(Refused, match="open until"):
            make_link(at(tmp_path), number, new_secret(), day)


def test_a_quote_past_its_validity_or_billed_gets_no_link(tmp_path: Path) -> None:
    """In words for the shop."""
    number = asked(tmp_path)
    with pytest.raises(Refused, match="was valid to"):
        make_link(at(tmp_path, datetime(2026, 6, 1, 9, 0)), number, new_secret())
    found = job_links(at(tmp_path, datetime(2026, 6, 1, 9, 0)), number)
    assert found.is_over and not found.is_billed


def test_the_same_form_twice_is_one_link(tmp_path: Path) -> None:
    """A double click shows the same address again; that it reached her is noted when it is opened, and once."""
    number, secret, link = linked(tmp_path)
    assert make_link(at(tmp_path), number, secret) == link
    assert len(job_links(at(tmp_path), number).rows) == 1
    assert not revisions(at(tmp_path), number).rows[-1].given
    for _ in range(2):
        note_opened(her(tmp_path), secret)
    given = revisions(at(tmp_path), number).rows[-1].given
    assert [(one.how, one.sent_to, one.revision) for one in given] == [(PAGE, "link 1", 2)]


def test_an_older_open_link_ends_with_a_new_one_and_an_answered_one_stays(tmp_path: Path) -> None:
    """One question at a time; what was answered can still be read."""
    number, first, _ = linked(tmp_path)
    second = new_secret()
    make_link(at(tmp_path, LATER), number, second)
    assert opens(tmp_path, first) == "link-unknown" and opens(tmp_path, second) == ""
    answer(her(tmp_path), second, Answer(yes=("1",), name=HER))
    third = new_secret()
    make_link(at(tmp_path, LATER), number, third)
    assert opens(tmp_path, second) == "" and opens(tmp_path, third) == ""
    assert [one.standing for one in job_links(at(tmp_path, LATER), number).rows] == ["open", "answered", "revoked"]


def test_unknown_and_revoked_links_are_told_alike(tmp_path: Path) -> None:
    """Word for word: nothing can be learnt by trying."""
    number, secret, _ = linked(tmp_path)
    revoke_link(at(tmp_path), number, 1)
    told = []
    for tried in (secret, new_secret(), "", "../../etc", "x" * 5000, "\u2028"):
        with pytest.raises(Refused) as caught:
            open_link(her(tmp_path), tried)
        told.append(str(caught.value))
    assert len(set(told)) == 1 and number not in told[0]


def test_a_revoked_link_can_not_be_revoked_again_nor_another_jobs(tmp_path: Path) -> None:
    """The list says what there is."""
    number, _secret, link = linked(tmp_path)
    revoke_link(at(tmp_path), number, link.link)
    for job, one in ((number, link.link), (number, 99), ("2026-0099", link.link)):
        with pytest.raises(Refused, match="takes no answers"):
            revoke_link(at(tmp_path), job, one)
    assert row(tmp_path, number).standing == "revoked"


def test_a_newer_revision_closes_the_link(tmp_path: Path) -> None:
    """She is sent to the shop, and reads no figure of either."""
    number, secret, _ = linked(tmp_path)
    change(tmp_path, number, BELT + FOUND.replace("hours = 0.5", "hours = 1.5"), LATER)
    assert opens(tmp_path, secret, LATER) == "link-replaced"
    assert row(tmp_path, number).standing == "to an older revision"
    assert refusal_of(tmp_path, secret, Answer(yes=("1",), name=HER)).problems[0].code == "link-replaced"


def test_a_billed_job_closes_the_link(tmp_path: Path) -> None:
    """No answer can be given any more."""
    number, secret, _ = linked(tmp_path)
    record(at(tmp_path), number, said("1", "2", no=("A", "B", "C", "D")))
    order = place_orders(at(tmp_path), [number]).orders[0].number
    receive(at(tmp_path, LATER), order, Delivery(paper="DN-1", freight=Decimal("9.95")))
    write_bill(at(tmp_path, LATER), number, lambda bill: bill.number)
    assert opens(tmp_path, secret) == "link-job-billed"
    with pytest.raises(Refused, match="is billed"):
        make_link(at(tmp_path, LATER), number, new_secret())


def test_what_is_asked_is_what_waits(tmp_path: Path) -> None:
    """An answer by telephone meanwhile is not asked again, and counts in every total."""
    number, secret, _ = linked(tmp_path)
    assert open_link(her(tmp_path), secret).asked == ("1", "A", "B", "C", "D")
    record(at(tmp_path), number, said("agreed", no=("C",)))
    link = open_link(her(tmp_path), secret)
    assert link.asked == ("A", "B", "D")
    assert link.totals[0] == standing(at(tmp_path), number).approved.total


def test_only_photos_on_the_quote_are_given_out(tmp_path: Path) -> None:
    """Not another of the job, not another job's of the same number in words, not one taken out."""
    number = quoted(tmp_path)
    desk = at(tmp_path)
    with desk.store.writing() as connection:
        shown, hidden, gone = (add_photo(connection, photo(number), f"jpeg {at}".encode()) for at in range(3))
        take_photos_out(connection, [gone.photo], CALLED)
    cited = FOUND.replace("hours = 0.3", f'hours = 0.3\nphotos = ["{shown.name}", "{gone.name}", "photo 77"]')
    change(tmp_path, number, BELT + cited)
    secret = new_secret()
    make_link(desk, number, secret)
    assert [one.photo for one in open_link(her(tmp_path), secret).photos] == [shown.photo]
    assert photo_of_link(her(tmp_path), secret, shown.photo) == b"jpeg 0"
    for other in (hidden.photo, gone.photo, 77, 0, -1):
        assert photo_of_link(her(tmp_path), secret, other) is None
    with pytest.raises(Refused):
        photo_of_link(her(tmp_path), new_secret(), shown.photo)


def photo(job: str) -> Photo:
    """A photo of the job."""
    return Photo(photo=0, job=job, label="A", caption="", at=CALLED, who="Piet", width=4, height=3)
