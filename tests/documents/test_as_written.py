"""Days and amounts inside sentences, as a page writes them; numbers that only look like days stay as they are."""

import pytest

from sourcing.documents.as_written import as_written


@pytest.mark.parametrize(
    ("sentence", "written"),
    [
        ("leaves 2026-01-23 to 2026-01-27", "leaves Jan 23, 2026 to Jan 27, 2026"),
        ("approved was by 2026-01-16, now 2026-01-20", "approved was by Jan 16, 2026, now Jan 20, 2026"),
        ("4 days sooner: 2026-01-16 instead", "4 days sooner: Jan 16, 2026 instead"),
        ("2025-12-24, 2025-12-26, 2026-02-20", "Dec 24, 2025, Dec 26, 2025, Feb 20, 2026"),
        ("2026-01-13 10:15  Oona Brandeth: stated", "Jan 13, 2026, 10:15 AM  Oona Brandeth: stated"),
        ("22.97 USD cheaper, 1099.00 EUR in all", "$22.97 cheaper, €1,099.00 in all"),
        ("it is -4.50 USD now", "it is -$4.50 now"),
    ],
)
def test_a_sentence_reads_like_the_page_around_it(sentence: str, written: str) -> None:
    """Common spaces as the Unicode CLDR has them in en_US are told apart from ours by nobody."""
    assert as_written(sentence, "en_US").replace("\u202f", " ") == written


def test_another_country_has_its_own_way() -> None:
    """Day before month, comma before the cents."""
    assert as_written("on 2026-01-16 for 1099.00 EUR", "de_DE").replace("\xa0", " ") == "on 16.01.2026 for 1.099,00 €"


@pytest.mark.parametrize(
    "sentence",
    [
        "Norrowby 2005-10-12 is held back",
        "the number 2005-10-12 is borne by two parts",
        "NW-1 is superseded by 2005-10-12",
        "'2026-01-16' is not a day",
        "prices-2026-01-05.csv, row 65",
        "on 2026-13-45",
        "2005-10-12",
        "it needs a day such as 2026-01-13",
        "job 2026-0001, order PO-2026-0001",
        "1.8500 USD each, 5 USD, 1.00 ABC, 3 500 OEM",
    ],
)
def test_what_is_no_day_and_no_amount_stays(sentence: str) -> None:
    """A part number that looks like a day, what somebody typed, a file, a price with more decimals than money has."""
    assert as_written(sentence, "en_US") == sentence
