"""Add one statement to the table, as a person types it."""

from datetime import date

from sqlalchemy import Connection

from ..basics.equivalence import Statement
from ..basics.part_number import OURS, PartNumber, number_key
from ..basics.problem import refused
from ..basics.statement_history import KeptStatement, Signed
from ..basics.table_finding import Finding
from ..basics.value import Value, changed
from ..matching.equivalences.makers import Makers
from ..matching.equivalences.number_cells import cell_text, damage_of
from ..matching.equivalences.table_rows import statement_of
from ..storage.equivalence import maker_aliases, our_parts
from ..storage.statements import kept_statement, state
from .desk import Desk
from .statement_deeds import refuse_doubled
from .statement_look import found_of, refuse_round_kit

OURS_SAID = "ours"


class Told(Value, frozen=True, kw_only=True):
    """A statement in the words it was typed in. Numbers are 'maker:number'; 'ours:CODE' is our own part.

    `stated_on`, `stated_by`: left out, it is said today by who does this.
    """

    left: str
    relation: str
    right: str
    source: str
    standing: str = "unchecked"
    condition: str = ""
    machine: str = ""
    serial_from: str = ""
    serial_to: str = ""
    count: int = 1
    stated_on: date | None = None
    stated_by: str = ""


class AddedStatement(KeptStatement, frozen=True, kw_only=True):
    """The statement as kept, and what it does to the table; None: too much hangs together to look at it now."""

    findings: tuple[Finding, ...] | None = ()


def add_statement(desk: Desk, told: Told) -> AddedStatement:
    """Keep it. Refuses what a row of the table is refused for, and one that is there already or was withdrawn.

    Refuses a day to come, and a kit that would contain itself; what else the check finds about it is told.
    """
    new = _statement(desk, told)
    with desk.writing("add statement") as pen:
        new = _checked(pen.connection, new)
        refuse_doubled(pen.connection, new)
        refuse_round_kit(pen.connection, new)
        signed = Signed(at=desk.at, who=desk.who)
        (number,) = state(pen.connection, [new], signed, ["at the desk"])
        pen.note(f"statement {number}", str(new))
        kept = kept_statement(pen.connection, number)
        return AddedStatement(
            statement=kept.statement, events=kept.events, findings=found_of(pen.connection, kept.statement)
        )


def _statement(desk: Desk, told: Told) -> Statement:
    """The statement by the rules of the table's rows; what is wrong is said of options, for there are no cells here."""
    if not told.source.strip():
        raise refused("source-blank")
    if told.stated_on and told.stated_on > desk.at.date():
        raise refused("stated-in-the-future", found=told.stated_on, today=desk.at.date())
    (left_maker, left), (right_maker, right) = _number(told.left), _number(told.right)
    _refuse_numbers(left=left, right=right)
    cells = {
        "left maker": left_maker,
        "left number": left,
        "relation": told.relation,
        "right maker": right_maker,
        "right number": right,
        "condition": told.condition,
        "machine": told.machine,
        "serial from": told.serial_from,
        "serial to": told.serial_to,
        "standing": told.standing,
        "source": told.source,
        "count": str(told.count),
        "stated on": (told.stated_on or desk.at.date()).isoformat(),
        "stated by": told.stated_by or desk.who,
    }
    row = {column: cell_text(column, cell) for column, cell in cells.items()}
    return changed(statement_of(row, 0), row=None)


def _refuse_numbers(left: str, right: str) -> None:
    """As the cells of a row are refused; what is wrong is said of numbers, for there are no columns here."""
    for which, number in (("the first", left.strip()), ("the second", right.strip())):
        if not number:
            raise refused("statement-number-missing", which=which)
        if why := damage_of(number):
            raise refused("number-looks-damaged", found=number, why=why)


def _number(text: str) -> tuple[str, str]:
    maker, sign, number = text.partition(":")
    if not sign:
        raise refused("number-without-maker", found=text)
    maker = maker.strip()
    return (OURS if maker.casefold() == OURS_SAID else maker), number


def _checked(connection: Connection, statement: Statement) -> Statement:
    """With our codes as the parts print them. Refuses a code that is none, and a statement about itself."""
    codes = {number_key(part.code): part.code for part in our_parts(connection)}

    def as_printed(number: PartNumber) -> PartNumber:
        if number.maker != OURS:
            return number
        if number.key not in codes:
            raise refused("our-part-unknown", found=number.printed)
        return changed(number, printed=codes[number.key])

    made = changed(statement, left=as_printed(statement.left), right=as_printed(statement.right))
    makers = Makers(maker_aliases(connection))
    if makers.node(made.left) == makers.node(made.right):
        raise refused("statement-about-itself", found=str(made.left))
    return made
