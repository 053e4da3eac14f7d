"""Revisions listed and compared, and printed again to the letter whatever changed since."""

import hashlib
from pathlib import Path

import pytest
from sqlalchemy import text

from sourcing.actions.answers import record
from sourcing.actions.quotes import reprint, write_quote
from sourcing.actions.revisions import revisions
from sourcing.actions.setup import set_up
from sourcing.basics.problem import Refused
from sourcing.basics.quote import Answered
from sourcing.documents import quote_paper
from tests.actions.answered_shop import BELT, FOUND, MONDAY, STONEGARTH, at, change, paper, quoted, said, torn_down
from tests.builders import usd
from tests.journeys.small_shop import SHOP, desk_at, sheet


def test_revisions_are_listed_with_maker_hash_and_totals(tmp_path: Path) -> None:
    """Oldest first."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    found = revisions(at(tmp_path), number)
    assert [(row.revision, row.made_by, row.agreed) for row in found.rows] == [
        (1, "Oona Brandeth", usd("278.48")),
        (2, "Piet Halloway-Rusk", usd("278.48")),
    ]
    assert [row.sha256 for row in found.rows] == [reprint(at(tmp_path), number, one).sha256 for one in (1, 2)]


def test_the_last_two_are_compared_unless_others_are_named(tmp_path: Path) -> None:
    """Three new lines and their freight; backwards they are gone."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    found = revisions(at(tmp_path), number)
    assert found.compared == (1, 2)
    new = [words for words in found.differences if words.endswith("is new")]
    assert [words[:6] for words in new] == ["line A", "line B", "line C", "line D"]
    back = revisions(at(tmp_path), number, 2, 1)
    assert sum(words.endswith("is gone") for words in back.differences) == 4
    assert revisions(at(tmp_path), number, 2, 2).differences == ()
    with pytest.raises(Refused, match="has no quote of revision 5"):
        revisions(at(tmp_path), number, 1, 5)


def test_the_only_revision_is_compared_with_nothing(tmp_path: Path) -> None:
    """And not said to be the same as anything."""
    found = revisions(at(tmp_path), quoted(tmp_path))
    assert (found.compared, found.differences, len(found.rows)) == (None, (), 1)


def test_supplier_and_cost_stay_with_the_owner(tmp_path: Path) -> None:
    """The keepers' cost rises by 0.10: the customer's price too, the supplier's figures only for her."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    sheet(at(tmp_path), tmp_path, "stonegarth", "2026-03-04", [STONEGARTH[0].replace("6.40", "6.50"), *STONEGARTH[1:]])
    write_quote(at(tmp_path), number, paper)
    told = " ".join(revisions(at(tmp_path), number).differences)
    assert "line A (Keepers): the price each now 13.00 USD, before 12.80 USD (0.20 USD more)" in told
    assert "cost" not in told and "tonegarth" not in told and "6.50" not in told
    owners = revisions(at(tmp_path), number, owner=True).differences
    assert any("unit cost now 6.50 USD, before 6.40 USD" in words for words in owners)


def test_a_revision_is_printed_again_byte_for_byte_whatever_changed_since(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """New settings, a new sheet, a new template: the old paper and its hash stay."""
    number = quoted(tmp_path)
    first = write_quote(at(tmp_path), number, quote_paper.quote_html).frozen
    before = reprint(at(tmp_path), number, first.quote.revision)
    (tmp_path / "shop.toml").write_text(SHOP.replace("96.00", "120.00").replace("percent = 7", "percent = 9"))
    set_up(at(tmp_path), tmp_path)
    sheet(at(tmp_path), tmp_path, "pellbrook", "2026-03-04", ["CV-B880K,Corrivane,Belt B88,129.00,80.00,2,In stock"])
    monkeypatch.setattr(quote_paper, "render", lambda *_words, **_more: "another template altogether")
    second = write_quote(at(tmp_path), number, quote_paper.quote_html)
    assert second.is_new and "another template" in second.frozen.paper
    again = reprint(at(tmp_path), number, first.quote.revision)
    assert again == before == first
    assert again.paper.encode() == first.paper.encode()
    assert hashlib.sha256(again.paper.encode()).hexdigest() == again.sha256


def test_a_paper_that_was_touched_is_refused_everywhere(tmp_path: Path) -> None:
    """One byte is enough."""
    number = quoted(tmp_path)
    with at(tmp_path).store.writing() as connection:
        connection.execute(text("UPDATE quote_revisions SET paper = paper || ' '"))
    for look in (lambda: revisions(at(tmp_path), number), lambda: reprint(at(tmp_path), number, 1)):
        with pytest.raises(Refused, match="no longer what was sent"):
            look()


def test_a_new_revision_says_what_was_answered_and_an_answer_alone_makes_none(tmp_path: Path) -> None:
    """Yes to the belt on revision 1 stands on revision 2 of that day; answers to that are no reason for a third."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed", how="in person"))
    noon = MONDAY.replace(hour=11)
    change(tmp_path, number, BELT + FOUND, noon)
    desk = desk_at(tmp_path, noon)
    told = {line.label: line.answered for line in reprint(desk, number, 2).quote.lines}
    yes = Answered(answer="approved", who="Maud Tilbrook", how="in person", on=MONDAY.date())
    assert told == {"1": yes, "2": yes, "A": None, "B": None, "C": None, "D": None}
    record(desk, number, said("A", "D", no=("C",)))
    assert not write_quote(desk, number, paper).is_new


def test_a_yes_to_an_earlier_day_is_asked_again_where_the_parts_come_later(tmp_path: Path) -> None:
    """Quoted anew on Wednesday the belt comes on the 9th, and the yes was for the 5th: the boxes stay."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed", how="in person"))
    torn_down(tmp_path, number)
    again = reprint(at(tmp_path), number, 2).quote
    assert [line.answered for line in again.lines] == [None] * 6
