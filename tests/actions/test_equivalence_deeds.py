"""What a person does with statements and makers' names: kept with who, when and why, refused in one sentence."""

from datetime import date, datetime
from pathlib import Path

import pytest

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.history import history
from sourcing.actions.maker_names import add_maker_name, maker_names, remove_maker_name
from sourcing.actions.statement_add import Told, add_statement
from sourcing.actions.statement_deeds import (
    answer_doubt,
    doubt_statement,
    restore_statement,
    set_standing,
    statement_history,
    withdraw_statement,
)
from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.equivalence import equivalence_table, put_parts

AT = datetime(2026, 1, 12, 9, 30)
SAME = Told(left="ours:belt auger", relation="same part", right="Norrowby:NW-40388", source="parts list")


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk at a table with one part and no statement."""
    made = open_desk(str(tmp_path / "shop.db"), AT, "Greta Lindqvare")
    with made.store.writing() as connection:
        put_parts(connection, [OurPart(code="BELT-AUGER", name="Auger drive belt")])
    return made


def table(desk: Desk) -> EquivalenceTable:
    """The table as it counts now."""
    with desk.store.reading() as connection:
        return equivalence_table(connection)


def code_of(error: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of refusal."""
    return error.value.problems[0].code


def test_a_statement_added_is_unchecked_and_signed_unless_told_otherwise(desk: Desk) -> None:
    kept = add_statement(desk, SAME)
    (one,) = table(desk).statements
    assert str(one) == "BELT-AUGER is the same part as Norrowby NW-40388 (unchecked: parts list)"
    assert (one.number, one.stated_by, one.stated_on, one.row) == (1, "Greta Lindqvare", AT.date(), None)
    assert [(event.what, event.who, event.at) for event in kept.events] == [("stated", "Greta Lindqvare", AT)]
    assert [entry.subject for entry in history(desk, None)] == ["statement 1"]


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"right": "NW-40388"}, "number-without-maker"),
        ({"right": "Norrowby: - "}, "blank-number"),
        ({"right": "Norrowby:1.23E+11"}, "number-looks-damaged"),
        ({"right": "Norrowby: "}, "statement-number-missing"),
        ({"left": "ours:BELT-AUGUR"}, "our-part-unknown"),
        ({"right": "ours:Belt auger"}, "statement-about-itself"),
        ({"relation": "like"}, "unknown-word"),
        ({"standing": "sure"}, "unknown-word"),
        ({"source": " "}, "source-blank"),
        ({"stated_on": date(2027, 1, 1)}, "stated-in-the-future"),
        ({"count": 2}, "count-without-kit"),
        ({"machine": "NW-826", "serial_from": "0800", "serial_to": "0700"}, "serials-backwards"),
    ],
)
def test_what_a_row_of_the_table_is_refused_for_is_refused_at_the_desk(
    desk: Desk, fields: dict[str, object], code: str
) -> None:
    with pytest.raises(Refused) as error:
        add_statement(desk, changed(SAME, **fields))
    assert code_of(error) == code
    assert table(desk).statements == () and history(desk, None) == ()


def test_a_number_tied_to_itself_under_another_name_of_its_maker_is_refused(desk: Desk) -> None:
    add_maker_name(desk, "NWB", "Norrowby")
    with pytest.raises(Refused) as error:
        add_statement(desk, changed(SAME, left="nwb:NW 40388"))
    assert code_of(error) == "statement-about-itself"


def test_what_is_there_or_was_withdrawn_is_not_added_again(desk: Desk) -> None:
    add_statement(desk, SAME)
    with pytest.raises(Refused, match="statement 1 says the same"):
        add_statement(desk, SAME)
    withdraw_statement(desk, 1, "slipped off on job 2026-0004")
    with pytest.raises(Refused, match="was withdrawn: slipped off on job 2026-0004"):
        add_statement(desk, SAME)
    assert add_statement(desk, changed(SAME, source="another list")).statement.number == 2


def test_a_doubted_statement_counts_as_unchecked_until_the_doubt_is_answered(desk: Desk) -> None:
    add_statement(desk, changed(SAME, standing="fitted"))
    doubt_statement(desk, 1, "loose when hot")
    kept = doubt_statement(changed_who(desk, "Piet Halloway-Rusk"), 1, "squeals")
    assert kept.statement.doubt == "loose when hot; squeals"
    assert (kept.statement.standing, kept.statement.counts_as) == ("fitted", "unchecked")
    answered = answer_doubt(desk, 1, "idler spring was broken")
    assert (answered.statement.doubt, answered.statement.counts_as) == ("", "fitted")
    assert [(one.what, one.reason, one.who.split()[0]) for one in answered.events] == [
        ("stated", "at the desk", "Greta"),
        ("doubted", "loose when hot", "Greta"),
        ("doubted", "squeals", "Piet"),
        ("doubt answered", "idler spring was broken", "Greta"),
    ]
    with pytest.raises(Refused, match="nobody doubts statement 1"):
        answer_doubt(desk, 1, "again")


def changed_who(desk: Desk, who: str) -> Desk:
    """Somebody else at the same desk."""
    return Desk(store=desk.store, at=desk.at, who=who)


def test_standing_changes_with_a_reason_and_what_it_was_is_kept(desk: Desk) -> None:
    add_statement(desk, SAME)
    kept = set_standing(desk, 1, "fitted", "fitted on job 2026-0007, served")
    assert kept.statement.counts_as == "fitted"
    last = kept.events[-1]
    assert (last.what, last.reason) == ("standing changed", "unchecked to fitted: fitted on job 2026-0007, served")
    assert last.was is not None and last.was.standing == "unchecked"
    with pytest.raises(Refused, match="has the standing 'fitted' already"):
        set_standing(desk, 1, "fitted", "again")
    doubt_statement(desk, 1, "squeals")
    answered = answer_doubt(desk, 1, "only the maker says so", "maker")
    assert [event.what for event in answered.events[-2:]] == ["doubt answered", "standing changed"]
    assert (answered.statement.standing, answered.statement.doubt) == ("maker", "")


def test_withdrawn_counts_no_more_and_restored_counts_again(desk: Desk) -> None:
    add_statement(desk, SAME)
    assert withdraw_statement(desk, 1, "too wide").withdrawn
    assert table(desk).statements == ()
    for deed in (doubt_statement, withdraw_statement):
        with pytest.raises(Refused, match="statement 1 is withdrawn"):
            deed(desk, 1, "x")
    assert not restore_statement(desk, 1, "measured again").withdrawn
    assert len(table(desk).statements) == 1
    with pytest.raises(Refused, match="statement 1 is not withdrawn"):
        restore_statement(desk, 1, "x")
    assert [event.what for event in statement_history(desk, 1).events] == ["stated", "withdrawn", "restored"]
    assert [entry.deed for entry in history(desk, "statement 1")] == [
        *("add statement", "withdraw statement", "restore statement"),
    ]


@pytest.mark.parametrize("deed", [doubt_statement, answer_doubt, withdraw_statement, restore_statement])
def test_every_deed_wants_a_reason_and_a_number_that_is_there(desk: Desk, deed: object) -> None:
    assert callable(deed)
    add_statement(desk, SAME)
    with pytest.raises(Refused) as error:
        deed(desk, 1, "  ")
    assert code_of(error) == "reason-blank"
    with pytest.raises(Refused) as error:
        deed(desk, 2, "why not")
    assert code_of(error) == "no-such-statement"
    assert len(history(desk, None)) == 1


def test_makers_names_are_kept_and_taken_away_and_both_are_in_the_ledger(desk: Desk) -> None:
    add_maker_name(desk, "NWB", "Norrowby")
    add_maker_name(desk, "Cv. Corp", "Corrivane")
    add_maker_name(desk, "nwb", "Norrowby")  # the same name, written otherwise
    assert [(one.alias, one.maker) for one in maker_names(desk)] == [("Cv. Corp", "Corrivane"), ("nwb", "Norrowby")]
    remove_maker_name(desk, "N.W.B.")
    assert [one.alias for one in maker_names(desk)] == ["Cv. Corp"]
    assert [entry.detail for entry in history(desk, "makers")][-1] == "'nwb' on a sheet is Norrowby no longer"


@pytest.mark.parametrize(
    ("alias", "maker", "code"),
    [
        ("NWB", "Ostrevik", "alias-of-another"),
        ("Norrowby", "Ostrevik", "maker-has-aliases"),
        ("NB", "nwb", "alias-of-alias"),
        ("Norrowby", "NORROWBY", "maker-name-same"),
        (" - ", "Norrowby", "maker-name-blank"),
        ("NB", "(ours)", "maker-name-blank"),
    ],
)
def test_names_that_would_tangle_are_refused(desk: Desk, alias: str, maker: str, code: str) -> None:
    add_maker_name(desk, "NWB", "Norrowby")
    with pytest.raises(Refused) as error:
        add_maker_name(desk, alias, maker)
    assert code_of(error) == code
    with pytest.raises(Refused, match="'ZZ' is not kept"):
        remove_maker_name(desk, "ZZ")


def test_what_a_new_statement_does_to_the_table_is_told_at_once(desk: Desk) -> None:
    """A must-not against what stands, the same on another source; a statement that harms nothing says nothing."""
    first = add_statement(desk, SAME)
    assert first.findings == ()
    again = add_statement(desk, changed(SAME, source="another list"))
    assert [(one.kind, [said.number for said in one.statements]) for one in again.findings or ()] == [
        ("said before", [1])
    ]
    ban = add_statement(desk, changed(SAME, relation="must not", source="job 2026-0003"))
    assert [one.kind for one in ban.findings or ()] == ["same part and must not"]
    other = add_statement(desk, changed(SAME, relation="must not", left="Norrowby:NW-9", source="job 2026-0003"))
    assert other.findings == ()


def test_what_hangs_together_with_too_much_is_not_looked_at(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sourcing.matching.equivalences.around.MOST_TIES", -1)
    assert add_statement(desk, SAME).findings is None


def test_a_kit_does_not_come_to_contain_itself(desk: Desk) -> None:
    """Neither by kits in kits nor under another number of it; nothing is kept of the try."""
    kit = Told(left="Norrowby:K-1", relation="kit contains", right="Norrowby:K-2", source="parts list")
    add_statement(desk, kit)
    add_statement(desk, Told(left="Norrowby:K-1", relation="same part", right="Corrivane:CK-1", source="cross list"))
    for right in ("Norrowby:K-1", "Corrivane:CK-1"):
        with pytest.raises(Refused, match="come to contain itself") as error:
            add_statement(desk, changed(kit, left="Norrowby:K-2", right=right))
        assert code_of(error) == "kit-contains-itself"
    with pytest.raises(Refused, match="come to contain itself"):
        add_statement(desk, changed(kit, right="Corrivane:CK-1"))
    assert len(table(desk).statements) == 2
