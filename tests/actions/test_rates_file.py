"""The rate table: every row that can't be used is told at once, and one day has one rate."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.rates_file import read_rates
from sourcing.basics.problem import Refused

HEAD = "currency,into,rate,dated,source\n"


def test_rates_are_read_exactly(tmp_path: Path) -> None:
    """The same row twice counts once; blank rows are passed over."""
    path = tmp_path / "rates.csv"
    path.write_text(f"{HEAD}EUR,USD,1.0850,2026-01-09,bank\n,,,,\nEUR,USD,1.085,2026-01-09,bank\n")
    (one,) = read_rates(path)
    assert (one.currency, one.into, one.rate, one.dated) == ("EUR", "USD", Decimal("1.085"), date(2026, 1, 9))


def test_every_wrong_row_is_told_with_its_place(tmp_path: Path) -> None:
    rows = [
        "EUR,USD,1.08,,bank",
        "EUR,USD,0,2026-01-09,bank",
        "EUR,USD,-1.08,2026-01-09,bank",
        "EUR,USD,1;08,2026-01-09,bank",
        "EUR,USD,NaN,2026-01-09,bank",
        "EUX,USD,1.08,2026-01-09,bank",
        "EUR,EUR,1.00,2026-01-09,bank",
        "EUR,USD,1.08,2026-01-09,bank",
        "EUR,USD,1.09,2026-01-09,another bank",
    ]
    path = tmp_path / "rates.csv"
    path.write_text(HEAD + "\n".join(rows) + "\n")
    with pytest.raises(Refused) as refusal:
        read_rates(path)
    told = [(one.code, one.place.row if one.place else None) for one in refusal.value.problems]
    not_understood = [("rates-row", row) for row in (2, 3, 4, 5, 6)]
    assert told == [*not_understood, ("unknown-currency", 7), ("rates-row", 8), ("rate-doubled", 10)]
    assert "1 EUR is 1.09 USD on 2026-01-09 here, and 1.08 in row 9" in str(refusal.value)
