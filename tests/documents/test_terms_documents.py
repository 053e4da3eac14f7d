"""Terms in words and as a file: no field is left without words, and the file reads back to the same values."""

import tomllib
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import msgspec
import pytest

from sourcing.actions.terms_file import read_terms
from sourcing.basics.deed import Deed
from sourcing.basics.freight import Freight
from sourcing.basics.terms import Calendar, Returns, Terms
from sourcing.basics.terms_view import NotKnown, SupplierTerms, TermsChange, changed_fields
from sourcing.basics.value import Value, changed
from sourcing.documents.freight_words import freight_words
from sourcing.documents.terms import differences, supplier_terms_text, terms_change_text, terms_list_text, terms_toml
from sourcing.documents.terms_words import terms_words
from tests.builders import flat, terms
from tests.full_terms import FREIGHTS, FULL

DAY = date(2026, 1, 13)


def of(*versions: Terms, on: date = DAY) -> SupplierTerms:
    """One supplier as he is looked at."""
    return SupplierTerms(supplier=versions[0].supplier, name=versions[-1].name, on=on, versions=versions)


def read(tmp_path: Path, *found: SupplierTerms) -> tuple[Terms, ...]:
    """What the written file reads back to."""
    path = tmp_path / "terms.toml"
    path.write_text(terms_toml(found), encoding="utf-8")
    return read_terms(path)


@pytest.mark.parametrize("freight", FREIGHTS, ids=lambda freight: freight.rule)
def test_a_written_file_reads_back_to_the_same_values(tmp_path: Path, freight: Freight) -> None:
    one, plain = changed(FULL, freight=freight), terms()
    assert read(tmp_path, of(one), of(plain)) == (one, plain)


def test_this_test_knows_every_field() -> None:
    """A field added to the terms and not to FULL would not be tried."""
    for value, least in ((FULL, terms()), (FULL.calendar, Calendar()), (FULL.return_terms, terms().return_terms)):
        names = [field.name for field in msgspec.structs.fields(value)]
        assert [name for name in names if getattr(value, name) == getattr(least, name)] == []
    assert FULL.tax and FULL.cash_discount
    for part in (FULL.entry_fees[0], FULL.duty_rates[0], FULL.tax, FULL.core_return, FULL.split):
        assert all(getattr(part, field.name) != field.default for field in msgspec.structs.fields(part))


def test_the_file_is_as_a_person_would_write_it() -> None:
    """Decimals as they stood, days without quotes, parts with fields of their own as tables."""
    text = terms_toml([of(FULL)])
    for line in ("minimum_order = 25.00", "starts_on = 2026-01-05", "cut_off = 13:30:00", "[supplier.calendar]"):
        assert f"\n{line}\n" in text
    assert '\n[supplier.freight]\nrule = "flat"\ncharge = 14.95\n' in text
    assert tomllib.loads(text)["supplier"][0]["transit_days"] == [5, 8]


def test_only_what_holds_on_the_day_is_written(tmp_path: Path) -> None:
    later = changed(FULL, starts_on=date(2026, 2, 1), handling=Decimal(9))
    assert read(tmp_path, of(FULL, later)) == (FULL,)
    assert read(tmp_path, of(FULL, later, on=date(2026, 2, 1))) == (later,)


@pytest.mark.parametrize("field", [one.name for one in msgspec.structs.fields(Terms)])
def test_a_change_of_any_field_is_told_in_words(field: str) -> None:
    """Else a person would see two versions and no difference."""
    if field in ("supplier", "starts_on"):
        return
    plain = terms()
    if field == "small_order_fee":
        plain = changed(plain, minimum_order=Decimal(25))
    if field == "duty_on":
        plain = changed(plain, duty_percent=Decimal(3))
    told = differences(plain, changed(plain, **{field: getattr(FULL, field)}))
    assert len(told) == (2 if field == "currency" else 1) and told[0].count("was ") and told[0].count("; is ")


@pytest.mark.parametrize("part", ["calendar", "cash_discount", "tax", "split", "return_terms", "core_return"])
def test_a_change_inside_a_part_is_told_in_words(part: str) -> None:
    """Each field of it by itself, taken back to its default."""
    value: Value = getattr(FULL, part)
    for field in msgspec.structs.fields(value):
        if field.required or (part, field.name) == ("split", "sends"):
            continue
        other = changed(FULL, **{part: changed(value, **{field.name: field.default})})
        assert len(differences(FULL, other)) == 1, field.name


def test_every_field_of_freight_has_words() -> None:
    """Each field taken out of a rule that has it changes the words."""
    for freight in FREIGHTS:
        for field in msgspec.structs.fields(freight):
            value = getattr(freight, field.name)
            if field.required or value == field.default or field.default is msgspec.NODEFAULT:
                continue
            other = changed(freight, **{field.name: field.default})
            assert freight_words(freight, "EUR") != freight_words(other, "EUR"), (freight.rule, field.name)


def test_freight_in_words() -> None:
    words = [freight_words(one, "EUR") for one in FREIGHTS]
    assert words[0] == (
        "14.95 EUR an order; 18.50 EUR an order for oversize, or longer than 120 cm (not where the sheet says "
        "nothing); such goods do not count towards free freight; nothing from 200.00 EUR of goods on"
    )
    assert words[3] == "1.20 EUR for each kg, at least 7.00 EUR, at most 45 EUR"
    assert words[9] == "said only when asked, between 8 and 25.00 EUR"


def test_freight_not_known_is_never_nothing() -> None:
    assert terms_words(terms(freight=None))["Freight"] == "not known"


def test_returns_in_words() -> None:
    whole = "goods go back, restocking 15 %, 8.00 of freight in the shop's currency, within 14 days"
    assert terms_words(FULL)["Returns"] == whole
    assert terms_words(terms(return_terms=Returns(returnable=False)))["Returns"] == "goods do not go back"
    assert "Returns" not in terms_words(changed(FULL, return_terms=Returns()))


def test_one_supplier_in_words() -> None:
    """What holds, what is open and what follows, the versions with their days, what persons did."""
    before = terms(minimum_order=Decimal("25.00"), prices_hold_days=30)
    after = changed(before, starts_on=date(2026, 2, 1), minimum_order=Decimal("30.00"), freight=flat("12.00", "200.00"))
    found = changed(
        of(before, after),
        not_known=(NotKnown(what="whether goods go back", follows="it is asked before ordering"),),
        deeds=(Deed(at=datetime(2026, 1, 13, 10), who="Oona", deed="x", subject="y", detail="a\x1b[31m letter"),),
    )
    text = supplier_terms_text(found)
    for line in (
        "Since 2025-01-01, in USD:",
        "  Minimum order: 25.00 USD; an order below it is refused.",
        "  whether goods go back: it is asked before ordering.",
        "  from 2025-01-01 to 2026-01-31: holds",
        "  from 2026-02-01 on",
        "    Freight: was 10.00 USD an order; is 12.00 USD an order; nothing from 200.00 USD of goods on.",
        "  2026-01-13 10:00 Oona: a\N{REPLACEMENT CHARACTER}[31m letter",
    ):
        assert f"\n{line}\n" in f"\n{text}"
    early = supplier_terms_text(changed(found, on=date(2024, 1, 1)))
    assert "No terms hold yet: the first begin on 2025-01-01." in early


def test_the_list_says_what_is_not_known() -> None:
    gravest = NotKnown(what="freight", follows="no rank", keeps_from_ranking=True)
    found = changed(of(terms(freight=None)), not_known=(gravest, NotKnown(what="returns", follows="it is asked")))
    assert "none freight; returns" in " ".join(terms_list_text([found]).split())
    assert "only from 2025-01-01" in " ".join(terms_list_text([of(terms(), on=date(2024, 1, 1))]).split())
    assert "There are no suppliers yet" in terms_list_text([])


def test_a_change_is_told_old_and_new() -> None:
    before, after = terms(), changed(terms(), starts_on=DAY, handling=Decimal("2.00"))
    done = TermsChange(
        supplier="larkmoor",
        name="Larkmoor",
        starts_on=DAY,
        before=before,
        terms=after,
        changes=changed_fields(before, after),
    )
    assert terms_change_text([done]) == "Larkmoor, from 2026-01-13 on:\n  handling 0 -> 2.00\n"
    back = changed(done, before=after, terms=before, changes=changed_fields(after, before))
    assert terms_change_text([back]).startswith("Larkmoor: the terms from 2026-01-13 on are withdrawn; those from 2025")
    assert "no others hold then" in terms_change_text([changed(back, terms=None)])
    assert terms_change_text([]) == "Nothing changed: all of it is kept already.\n"


def test_the_same_amount_written_otherwise_is_no_change() -> None:
    assert changed_fields(terms(handling=Decimal("2")), terms(handling=Decimal("2.00"))) == ()
