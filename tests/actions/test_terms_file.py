"""A file of terms is told everything that is wrong with it at once, each with file, row, entry and field."""

from pathlib import Path

import pytest

from sourcing.actions.terms_file import read_terms
from sourcing.basics.problem import Refused
from tests.actions.terms_shop import SUPPLIERS

GOOD = SUPPLIERS


def refusal(tmp_path: Path, text: str) -> list[str]:
    """The sentences a file of that text is refused with."""
    path = tmp_path / "suppliers.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(Refused) as refused:
        read_terms(path)
    return str(refused.value).splitlines()


def test_a_good_file_is_read_in_its_order(tmp_path: Path) -> None:
    (tmp_path / "suppliers.toml").write_text(GOOD)
    assert [one.supplier for one in read_terms(tmp_path / "suppliers.toml")] == ["stonegarth", "pellbrook", "larkmoor"]


def test_every_entry_tells_all_that_is_wrong_with_it(tmp_path: Path) -> None:
    """Kinds, missing and unknown fields, contradictions, holidays and clocks: in three entries, in one go."""
    text = GOOD.replace(
        "transit_days = [2, 2]", 'transit_days = [5, 2]\nhandling = true\ncalendar = { country = "XX" }'
    )
    text = text.replace("small_order_fee = 5.00", 'small_order_fee = -5\ntime_zone = "Berlin"\nfee = 3')
    text = text.replace('name = "Larkmoor Wholesale"\n', "")
    told = refusal(tmp_path, text)
    wanted = [
        ("row 1: entry 1 (stonegarth), 'handling' needs a number, not true or false",),
        ("row 1: entry 1 (stonegarth), 'transit_days' has the larger number first (5, 2)",),
        ("row 1: no public holidays are known for 'XX'",),
        ("entry 2 (pellbrook), 'fee' is an unknown field",),
        ("entry 2 (pellbrook), 'small_order_fee' is -5",),
        ("'Berlin' of 'pellbrook'", "Europe/Berlin"),
        ("entry 3 (larkmoor), 'name' is missing",),
    ]
    assert len(told) == len(wanted)
    for words in wanted:
        assert [one for one in told if all(word in one for word in words)], words
    assert all(one.startswith("suppliers.toml, row ") for one in told)


def test_the_row_is_that_of_the_entry(tmp_path: Path) -> None:
    (told,) = refusal(tmp_path, GOOD.replace('currency = "USD"\ncut_off = 15', 'currency = "USX"\ncut_off = 15'))
    row = GOOD.splitlines().index('supplier = "pellbrook"')  # the line after its [[supplier]], counted from 0
    assert told.startswith(f"suppliers.toml, row {row}: entry 2 (pellbrook), 'currency' is 'USX'")


def test_the_same_supplier_and_day_twice(tmp_path: Path) -> None:
    (told,) = refusal(tmp_path, GOOD.replace('"pellbrook"', '"stonegarth"'))
    assert "entry 2 (stonegarth) is of the same supplier and day as entry 1 (stonegarth)" in told


def test_one_supplier_written_in_two_ways(tmp_path: Path) -> None:
    """His sheets stand in one folder, so one of the two would never be used."""
    (told,) = refusal(tmp_path, GOOD.replace('"pellbrook"', '"Stonegarth"'))
    assert "entry 2 (Stonegarth) is of 'Stonegarth', and entry 1 (stonegarth) is of 'stonegarth'" in told


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "it has no [[supplier]]"),
        ("[[suplier]]\nname = 'x'\n", "it has no [[supplier]]"),
        ("supplier = 3\n", "it has no [[supplier]]"),
        ("[[supplier]\n", "can't be used"),
        (GOOD.replace("14.95", "nan"), "'nan' is no number"),
        (GOOD.replace("14.95", "1e9999999999999999999"), "is no number"),
        (GOOD.replace("charge = 14.95", 'charge = "NaN"'), "'freight.charge' is NaN, and that is no number"),
        ("handling = 5\n" + GOOD, "'handling' stands outside of any entry"),
        (GOOD.replace('rule = "flat"', 'rule = "flatt"', 1), "'freight.rule' is 'flatt', and not one of: flat,"),
        (GOOD.replace("free_from", "free_form", 1), "perhaps 'free_from' is meant"),
        (GOOD.replace("14:00:00", "'25:00:00'"), "'cut_off' needs a time such as 13:00:00"),
        (GOOD.replace("starts_on = 2025-01-01", "starts_on = 20250101", 1), "'starts_on' needs a day such as"),
    ],
)
def test_what_can_not_be_used_is_told(tmp_path: Path, text: str, said: str) -> None:
    (told,) = refusal(tmp_path, text)
    assert said in told
