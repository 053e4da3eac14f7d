"""Machine and serial numbers: what fits the bench carries no warning, what contradicts it is not followed."""

import pytest

from sourcing.basics.equivalence import Bench, Statement
from sourcing.matching.equivalences.bench import fits
from sourcing.matching.equivalences.graph import families
from tests.builders import number, statement

from .tables import about, ours, table

OWN = number("10", "Norrowby")


def said(machine: str = "NW-826", first: str = "", last: str = "", condition: str = "") -> Statement:
    """Our part is that number on a machine."""
    return about(
        statement(ours(), "same part", OWN, condition=condition), machine=machine, serial_from=first, serial_to=last
    )


# Spans are inclusive at both ends: common practice, no source.
@pytest.mark.parametrize(
    ("first", "last", "serial", "answer"),
    [
        ("1000", "1999", "1000", "holds"),
        ("1000", "1999", "1999", "holds"),
        ("1000", "1999", "2000", "contradicts"),
        ("1000", "1999", "999", "contradicts"),
        ("1000", "", "10000", "holds"),
        ("", "1999", "0001999", "holds"),
        ("AB0100", "AB0200", "ab-150", "holds"),
        ("AB0100", "AB0200", "AC0150", "open"),
        ("AB0100", "AB0200", "150", "open"),
        ("1A500", "1A900", "2A100", "open"),
        ("1A500", "2A100", "1A999", "open"),
        ("1000", "1999", "", "open"),
        ("1999", "1000", "1500", "open"),
        ("", "", "", "holds"),
        ("XA", "XC", "XB", "open"),
    ],
)
def test_serial_numbers(first: str, last: str, serial: str, answer: str) -> None:
    """Compared as numbers where all before the last run of figures agrees; what can't be compared stays open."""
    assert fits(said(first=first, last=last), Bench(machine="NW 826", serial=serial)) == answer


def test_one_end_that_contradicts_is_enough() -> None:
    """The other end can't be compared."""
    assert fits(said(first="1000", last="AB200"), Bench(machine="NW826", serial="999")) == "contradicts"
    assert fits(said(first="1000", last="AB200"), Bench(machine="NW826", serial="1001")) == "open"


def test_serial_numbers_of_no_machine_stay_open() -> None:
    """They mean something within one model only."""
    assert fits(said(machine="", first="1", last="2"), Bench(machine="NW826", serial="9")) == "open"


def test_without_a_bench_the_condition_is_a_warning() -> None:
    """As every condition."""
    family = families(table(said(first="1000", last="1999", condition="idler moved")))["BELT"]
    assert family.paths[OWN.node].conditions == ("idler moved; machine NW-826 serial 1000 to 1999",)


def test_what_fits_the_bench_is_settled_and_words_stay() -> None:
    """The machine is answered, the words are not."""
    graph = families(table(said(first="1000", condition="idler moved"))).graph
    fits_it = graph.family("BELT", Bench(machine="NW-826", serial="1500"))
    assert fits_it.paths[OWN.node].conditions == ("idler moved",)
    no_serial = graph.family("BELT", Bench(machine="NW-826"))
    assert no_serial.paths[OWN.node].conditions == ("idler moved; machine NW-826 serial 1000 to any",)


def test_what_contradicts_the_bench_is_not_followed_and_says_why() -> None:
    """Another model, or a serial number outside."""
    graph = families(table(said(last="1999"))).graph
    for bench in (Bench(machine="NW-724"), Bench(machine="NW-826", serial="2000")):
        family = graph.family("BELT", bench)
        assert OWN.node not in family.paths
        ((left_aside, why),) = family.not_followed
        assert left_aside == said(last="1999") and bench.machine in why and "NW-826 serial any to 1999" in why


def test_a_settled_condition_no_longer_counts_against_a_path() -> None:
    """With the machine known the shorter way under its condition is as good as one that always holds."""
    other = number("20", "Ostrevik")
    graph = families(table(said(), statement(ours(), "same part", other), statement(other, "same part", OWN))).graph
    assert len(graph.family("BELT").paths[OWN.node].links) == 2
    assert len(graph.family("BELT", Bench(machine="NW-826")).paths[OWN.node].links) == 1
