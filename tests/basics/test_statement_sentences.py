"""A statement as a sentence: nobody can mistake its direction, and a condition reads as one."""

import pytest

from sourcing.basics.equivalence import Relation, only_words
from sourcing.basics.value import changed
from tests.builders import number, statement

A, B = number("NW-1", "Norrowby"), number("DM-2", "Dunmarrow")


@pytest.mark.parametrize(
    ("relation", "words"),
    [
        ("same part", "Norrowby NW-1 is the same part as Dunmarrow DM-2"),
        ("superseded by", "Norrowby NW-1 is superseded by Dunmarrow DM-2"),
        ("substitute", "Dunmarrow DM-2 may serve for Norrowby NW-1"),
        ("kit contains", "Norrowby NW-1 contains 10 x Dunmarrow DM-2"),
        ("must not", "Dunmarrow DM-2 must not serve for Norrowby NW-1"),
    ],
)
def test_each_relation_is_a_sentence(relation: Relation, words: str) -> None:
    count = 10 if relation == "kit contains" else 1
    assert str(changed(statement(A, relation, B), count=count)) == f"{words} (fitted: a test)"


@pytest.mark.parametrize(
    ("condition", "words"),
    [
        ("with the smaller idler", "only with the smaller idler"),
        ("only with the smaller idler", "only with the smaller idler"),
        ("Only when dry", "only when dry"),
        ("the deck is old", "only if the deck is old"),
        ("only", "only if only"),
        ("machine NW-826 serial 201 to any", "only for machine NW-826 serial 201 to any"),
    ],
)
def test_a_condition_says_only_once(condition: str, words: str) -> None:
    assert only_words(condition) == words


def test_a_must_not_under_a_condition_forbids_no_more_than_that() -> None:
    """'Only' there would allow what is forbidden elsewhere."""
    said = str(statement(A, "must not", B, condition="only with the smaller idler"))
    assert said == "Dunmarrow DM-2 must not serve for Norrowby NW-1 with the smaller idler (fitted: a test)"
    served = str(statement(A, "substitute", B, condition="the deck is old"))
    assert served == "Dunmarrow DM-2 may serve for Norrowby NW-1, only if the deck is old (fitted: a test)"
