"""What an edited table changes: rows find their statements, and nothing comes back or goes away in silence."""

from datetime import datetime

from sourcing.actions.table_compare import NOT_IN_FILE, Rule, compare_tables
from sourcing.basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Statement
from sourcing.basics.statement_history import Happening, KeptStatement, StatementEvent
from sourcing.basics.table_change import TableChanges
from sourcing.basics.value import changed
from tests.builders import number, statement

AT = datetime(2026, 1, 12, 9, 30)
BELT = number("NW-40388", "Norrowby")
SAME = changed(statement(BELT, "same part", number("CV 4036", "Corrivane"), "supplier"), number=1)
NEVER = changed(statement(BELT, "must not", number("4L360"), "fitted"), number=2)
KIT = changed(statement(number("K1"), "kit contains", number("B2")), count=3, number=3)
TABLE = (SAME, NEVER, KIT)
EMPTY = EquivalenceTable(parts=(), statements=())
IMPORT = Rule(file="edited.xlsx")
SHOPS = Rule(file="equivalence.xlsx", why_gone=NOT_IN_FILE, is_the_shops=True)


def kept(*statements: Statement) -> list[KeptStatement]:
    """Statements that count."""
    return [KeptStatement(statement=one) for one in statements]


def gone(one: Statement, reason: str, what: Happening = "withdrawn") -> KeptStatement:
    """A statement that was withdrawn for that reason."""
    file = "equivalence.xlsx" if reason == NOT_IN_FILE else ""
    event = StatementEvent(statement=one.number or 0, at=AT, who="Greta Lindqvare", what=what, reason=reason, file=file)
    return KeptStatement(statement=one, withdrawn=True, events=(event,))


def told(there: list[KeptStatement], *rows: Statement, rule: Rule = IMPORT) -> TableChanges:
    """What a file with those rows would change."""
    placed = tuple(changed(one, row=at) for at, one in enumerate(rows, 2))
    return compare_tables(there, EMPTY, EquivalenceTable(parts=(), statements=placed), rule)[0]


def unnumbered(*statements: Statement) -> list[Statement]:
    """As a file says them that knows no numbers of ours."""
    return [changed(one, number=None) for one in statements]


def test_the_same_table_changes_nothing_with_numbers_or_without() -> None:
    for rows in (TABLE, unnumbered(*TABLE), reversed(TABLE)):
        found = told(kept(*TABLE), *rows)
        assert found.is_nothing and found.unchanged == 3 and not found.problems and not found.missing


def test_a_row_finds_its_statement_by_number_and_says_what_differs() -> None:
    found = told(kept(*TABLE), changed(SAME, standing="fitted", condition="new spring"), NEVER, KIT)
    (one,) = found.changed
    assert (one.before, one.now.number) == (SAME, 1)
    assert one.words == ("condition: '' becomes 'new spring'", "standing: 'supplier' becomes 'fitted'")
    assert found.unchanged == 2 and not found.added


def test_a_row_without_number_finds_its_statement_where_numbers_source_and_conditions_agree() -> None:
    found = told(kept(*TABLE), *unnumbered(changed(SAME, standing="fitted"), NEVER, KIT))
    assert [one.now.number for one in found.changed] == [1] and not found.added and not found.missing


def test_another_source_or_another_machine_is_another_statement() -> None:
    for other in (changed(SAME, source="their letter"), changed(SAME, machine="NW-826"), changed(SAME, serial_to="9")):
        found = told(kept(*TABLE), *unnumbered(*TABLE, other))
        assert [one.number for one in found.added] == [None] and found.unchanged == 3


def test_the_same_line_twice_is_two_statements() -> None:
    twin = changed(SAME, number=9)
    assert told(kept(SAME, twin), *unnumbered(SAME, twin)).unchanged == 2
    assert len(told(kept(SAME), *unnumbered(SAME, twin)).added) == 1


def test_a_statement_found_by_its_number_is_not_found_once_more() -> None:
    twin = changed(SAME, number=None)
    for rows in ((SAME, twin), (twin, SAME)):
        found = told(kept(SAME), *rows)
        assert found.unchanged == 1 and len(found.added) == 1


def test_other_numbers_under_an_old_statements_number_replace_it() -> None:
    found = told(kept(*TABLE), changed(SAME, right=number("CV 4037", "Corrivane")), NEVER, KIT)
    (one,) = found.replaced
    assert one.words == ("right number: 'Corrivane CV 4036' becomes 'Corrivane CV 4037'",)
    assert not found.changed
    spelled = told(kept(*TABLE), changed(SAME, right=number("CV-4036", "CORRIVANE")), NEVER, KIT)
    assert len(spelled.changed) == 1 and not spelled.replaced  # the same number, otherwise printed


def test_what_is_missing_stays_unless_a_reason_is_given() -> None:
    found = told(kept(*TABLE), SAME)
    assert found.missing == (NEVER, KIT) and not found.withdrawn and found.is_nothing
    rule = Rule(file="edited.xlsx", why_gone="never fitted")
    withdrawn = told(kept(*TABLE), SAME, rule=rule)
    assert withdrawn.withdrawn == (NEVER, KIT) and not withdrawn.missing
    assert withdrawn.why_withdrawn == "never fitted"


def test_numbers_that_are_wrong_are_told_with_their_row_and_never_withdraw_anything() -> None:
    rule = Rule(file="edited.xlsx", why_gone="never fitted")
    found = told(kept(*TABLE), SAME, changed(NEVER, number=8), changed(KIT, number=1), rule=rule)
    assert [(one.code, one.place.row if one.place else None) for one in found.problems] == [
        ("no-such-statement", 3),
        ("statement-number-twice", 4),
    ]
    assert not found.changed and not found.added and found.unchanged == 1


def test_what_a_person_withdrew_does_not_come_back_with_an_old_file() -> None:
    there = [*kept(SAME, KIT), gone(NEVER, "it fits after all")]
    for rule in (IMPORT, SHOPS):
        for rows in (TABLE, unnumbered(*TABLE)):
            found = told(there, *rows, rule=rule)
            assert found.stay_withdrawn == (NEVER,) and not found.restored and not found.added
    replaced = [*kept(SAME, KIT), gone(NEVER, "by statement 7", "replaced")]
    assert told(replaced, *unnumbered(*TABLE), rule=SHOPS).stay_withdrawn == (NEVER,)


def test_what_only_the_shops_own_table_had_dropped_comes_back_with_it() -> None:
    there = [*kept(SAME, KIT), gone(NEVER, NOT_IN_FILE)]
    assert [one.number for one in told(there, *unnumbered(*TABLE), rule=SHOPS).restored] == [2]
    assert told(there, *unnumbered(*TABLE)).stay_withdrawn == (NEVER,)
    before_history = [*kept(SAME, KIT), KeptStatement(statement=NEVER, withdrawn=True)]
    assert [one.number for one in told(before_history, *unnumbered(*TABLE), rule=SHOPS).restored] == [2]


def test_a_withdrawn_claim_does_not_come_back_with_another_standing() -> None:
    """Trusted more at the desk, then withdrawn there: the file's older word is the same claim."""
    there = [*kept(KIT), gone(changed(SAME, standing="fitted"), "slips")]
    swapped = changed(SAME, left=SAME.right, right=SAME.left)
    for row in (SAME, swapped):
        for rule in (IMPORT, SHOPS):
            found = told(there, *unnumbered(KIT, row), rule=rule)
            assert [one.number for one in found.stay_withdrawn] == [1] and not found.added


def test_numbers_of_the_same_part_swapped_are_the_same_claim() -> None:
    found = told(kept(*TABLE), *unnumbered(changed(SAME, left=SAME.right, right=SAME.left), NEVER, KIT))
    assert [one.now.number for one in found.changed] == [1] and not found.added and not found.replaced
    ban = changed(NEVER, left=NEVER.right, right=NEVER.left)  # a ban holds one way
    assert len(told(kept(*TABLE), *unnumbered(SAME, ban, KIT)).added) == 1


def test_what_was_changed_at_the_desk_is_not_turned_back_by_the_shops_own_table() -> None:
    """Neither trusted more nor less again, until the file says what the desk says."""

    def event(what: Happening, file: str) -> StatementEvent:
        return StatementEvent(statement=1, at=AT, who="Greta Lindqvare", what=what, file=file)

    lowered = changed(SAME, standing="unchecked")
    stated = event("stated", "equivalence.xlsx")
    at_desk = KeptStatement(statement=lowered, events=(stated, event("standing changed", "")))
    found = told([at_desk], *unnumbered(SAME), rule=SHOPS)
    assert [(one.now.standing, one.before) for one in found.stay_changed] == [("supplier", lowered)]
    assert not found.changed and found.unchanged == 1
    assert told([at_desk], *unnumbered(lowered), rule=SHOPS).is_nothing
    by_file = KeptStatement(statement=lowered, events=(stated, event("standing changed", "equivalence.xlsx")))
    assert len(told([by_file], *unnumbered(SAME), rule=SHOPS).changed) == 1
    assert len(told([at_desk], SAME).changed) == 1  # a file taken in on purpose


def test_the_shops_own_table_withdraws_only_what_came_from_it() -> None:
    """A statement made at the desk, such as a must-not after a failure, was never in the file."""
    there = kept(changed(SAME, row=2), changed(KIT, row=3), NEVER)
    found = told(there, *unnumbered(SAME), rule=SHOPS)
    assert [one.number for one in found.withdrawn] == [3]
    assert [one.number for one in found.missing] == [2]


def test_a_blank_doubt_in_the_file_answers_no_doubt() -> None:
    doubted = changed(SAME, doubt="slips when wet")
    for rows in ((SAME,), unnumbered(SAME), unnumbered(changed(SAME, standing="fitted"))):
        found = told(kept(doubted), *rows)
        assert found.doubts_stay == (doubted,)
        assert all(one.now.doubt == "slips when wet" for one in found.changed)
    new = told(kept(SAME), changed(SAME, doubt="slips when wet"))
    assert new.changed[0].words == ("doubt: '' becomes 'slips when wet'",)


def test_parts_and_makers_names_are_added_and_changed_and_never_lost_by_an_import() -> None:
    belt, keeper, new = (OurPart(code=code, name=code.lower()) for code in ("BELT", "KEEPER", "NEW"))
    before = EquivalenceTable(parts=(belt, keeper), statements=(), aliases=(MakerAlias(alias="NW", maker="Norrowby"),))
    wet = changed(belt, note="wet")
    names = (MakerAlias(alias="nw", maker="Norrowby Inc."), MakerAlias(alias="CV", maker="Corrivane"))
    file = EquivalenceTable(parts=(wet, new), statements=(), aliases=names)
    found, _ = compare_tables([], before, file, IMPORT)
    assert (found.parts_added, found.parts_changed, found.parts_missing) == ((new,), (wet,), (keeper,))
    assert (found.aliases_changed, found.aliases_added, found.parts_gone) == ((names[0],), (names[1],), ())
    shops, _ = compare_tables([], before, file, SHOPS)
    assert (shops.parts_gone, shops.parts_missing) == ((keeper,), ())


def test_one_name_for_two_makers_is_a_problem() -> None:
    names = (MakerAlias(alias="NW", maker="Norrowby"), MakerAlias(alias="n.w.", maker="Narrowby"))
    found, _ = compare_tables([], EMPTY, EquivalenceTable(parts=(), statements=(), aliases=names), IMPORT)
    assert [one.code for one in found.problems] == ["alias-of-another"]
