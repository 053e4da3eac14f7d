"""A yes covers the terms of return it was given under, and freight is not taken for labour of the same title."""

from sourcing.basics.value import changed
from sourcing.quoting.answer_notes import answer_notes
from sourcing.quoting.approvals import last_words, record_answers
from sourcing.quoting.carry_over import line_now
from tests.builders import usd
from tests.quoting.answered_quotes import GIVEN, quote


def test_other_terms_of_return_are_a_new_question() -> None:
    """She approved a part that could go back. The same terms as then, or better ones, ask nothing."""
    first = quote()
    special = changed(first, revision=2, lines=tuple(changed(one, special_order=True) for one in first.lines))
    stricter = tuple(changed(one, return_words=("It can't go back.",)) for one in special.lines)
    kept = record_answers(first, ["A"], ["B"], GIVEN)
    last = last_words(special, kept, {1: first})
    assert last["A"][1] == "the terms on which it can go back are not what they were then"
    assert last["B"][1] == ""
    (note,) = answer_notes(special, last, {1: first, 2: special})
    assert note.startswith("line A waits: Maud Tilbrook approved it on 2026-03-04")
    again = [changed(one, revision=2) for one in kept]
    third = changed(special, revision=3, lines=stricter)
    for newest, old, why in ((third, special, True), (special, special, False), (first, special, False)):
        assert bool(last_words(newest, again, {2: old})["A"][1]) == why


def test_freight_and_labour_of_one_title_are_two_things() -> None:
    first = quote()
    freight = changed(first.lines[0], part="", quantity=0, parts_price=usd("0.00"), freight_price=usd("14.95"))
    labour = changed(freight, freight_price=usd("0.00"), labour_price=usd("14.95"))
    billed, carried = (changed(first, lines=(one,)) for one in (freight, labour))
    assert line_now(billed, billed, freight) == freight
    assert line_now(carried, billed, freight) is None
