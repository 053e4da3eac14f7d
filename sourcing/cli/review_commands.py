"""Commands of judging what is alike: candidates, judge, judged, and the rules about suppliers' numbers."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import progress, show, write

if TYPE_CHECKING:
    from ..actions.desk import Desk
    from ..basics.judgement import Answer
    from ..basics.number_rule import NumberRule

SupplierArgument = Annotated[str, typer.Argument(metavar="SUPPLIER", help="Only this supplier's. Left out: all.")]
Words = Annotated[str, typer.Option("--words", help="Why, in words; they stay with it.")]

MOST_IN_FILE = 5000
"""Rows of a workbook to fill in: more than anybody answers in a day, and written in seconds."""

rules = typer.Typer(
    name="number-rules",
    help="What suppliers put before or after every part number: proposed by their sheets, confirmed by you.",
    rich_markup_mode=None,
    invoke_without_command=True,
)


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("candidates")(candidates)
    app.command("judge")(judge)
    app.command("judged")(judged)
    app.add_typer(rules)


def candidates(
    supplier: SupplierArgument = "",
    again: Annotated[bool, typer.Option("--again", help="Look through every newest sheet anew.")] = False,
    most: Annotated[int, typer.Option("--most", min=1, help="How many rows are shown.")] = 10,
    at_least: Annotated[str, typer.Option("--at-least", help="Only candidates with this score or more.")] = "0",
    xlsx: Annotated[
        Path | None,
        typer.Option("--xlsx", help="Write all that waits to this workbook, to fill in its column 'answer'."),
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Find rows of the newest sheets that may be one of our parts, and list what waits for a person."""
    from ..actions.candidates import find_candidates
    from ..actions.review_queue import review_queue
    from ..documents.review import looked_through_text, queue_text, queue_xlsx

    at_desk, least = desk(database, at, who), _score(at_least)
    with progress() as tell:
        done = find_candidates(at_desk, supplier, again, tell)
    queue = review_queue(at_desk, supplier, most, least)
    text = queue_text(queue)
    if xlsx:
        every = review_queue(at_desk, supplier, MOST_IN_FILE, least)
        write(xlsx, queue_xlsx(every))
        what = "all that waits" if every.rows <= MOST_IN_FILE else f"the {MOST_IN_FILE:,} rows worth most"
        text += f"\nWrote {what} to {xlsx}; fill in 'answer' and say 'sourcing judge --file {xlsx}'."
    show(queue, f"{looked_through_text(done)}\n{text}" if done else text, json)


def judge(
    candidate: Annotated[int | None, typer.Argument(help="Number of the candidate.")] = None,
    answer: Annotated[str, typer.Argument(help="yes or no.")] = "",
    fitted: Annotated[bool, typer.Option("--fitted", help="The shop has fitted it and it served.")] = False,
    words: Words = "",
    take_back: Annotated[bool, typer.Option("--take-back", help="Take the answer back; --words says why.")] = False,
    file: Annotated[Path | None, typer.Option("--file", help="A filled-in workbook of 'candidates --xlsx'.")] = None,
    supplier: Annotated[str, typer.Option("--supplier", help="Whose candidates to accept by their score.")] = "",
    all_above: Annotated[
        str, typer.Option("--all-above", help="Accept all with this score or more and nothing against, as unchecked.")
    ] = "",
    accept: Annotated[
        int | None, typer.Option("--accept", help="How many that were, as shown before. Left out: only show them.")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Say whether a candidate is the part, take that back, or answer many: from a file, or by score."""
    ways = (candidate is not None, file is not None, bool(all_above))
    if sum(ways) != 1:
        raise typer.BadParameter("name a candidate, or --file, or --supplier with --all-above")
    at_desk = desk(database, at, who)
    if file is not None:
        _judge_file(at_desk, file, json)
    elif all_above:
        if not supplier:
            raise typer.BadParameter("name the supplier with --supplier")
        if fitted:
            raise typer.BadParameter("fitted is said of one part at a time or in a file, not by score")
        _by_score(at_desk, supplier, all_above, accept, json)
    else:
        _judge_one(at_desk, candidate or 0, (answer, fitted, take_back), words, json)


def judged(
    supplier: SupplierArgument = "",
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """List every answer to a candidate, those taken back among them."""
    from ..actions.review import all_judgements
    from ..documents.review import judgements_text

    found = all_judgements(desk(database, None, ""), supplier)
    show(found, judgements_text(found), json)


@rules.callback()
def number_rules(context: typer.Context, database: Database = DEFAULT_DATABASE, json: Json = False) -> None:
    """List the rules, and what the newest sheets suggest."""
    if context.invoked_subcommand is None:
        from ..actions.number_rules import number_rules as found_rules
        from ..documents.review import number_rules_text

        found = found_rules(desk(database, None, ""))
        show(found, number_rules_text(found), json)


@rules.command("confirm")
def confirm(
    supplier: Annotated[str, typer.Argument(help="Whose numbers they are.")],
    prefix: Annotated[str, typer.Option("--prefix", help="What stands before every number, with its dash.")] = "",
    suffix: Annotated[str, typer.Option("--suffix", help="What stands after every number, with its dash.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Let a rule hold: numbers of the supplier are looked up without what he adds."""
    from ..actions.number_rules import confirm_number_rule
    from ..documents.review import rule_changed_text

    kept = confirm_number_rule(desk(database, at, who), _rule(supplier, prefix, suffix))
    show(kept, rule_changed_text(kept), json)


@rules.command("withdraw")
def withdraw(
    number: Annotated[int, typer.Argument(help="Number of the rule.")],
    words: Words,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Let a rule hold no more. It is not deleted."""
    from ..actions.number_rules import withdraw_number_rule
    from ..documents.review import rule_changed_text

    kept = withdraw_number_rule(desk(database, at, who), number, words)
    show(kept, rule_changed_text(kept), json)


def _rule(supplier: str, prefix: str, suffix: str) -> NumberRule:
    from ..basics.number_rule import NumberRule

    if bool(prefix) == bool(suffix):
        raise typer.BadParameter("say either --prefix or --suffix")
    return NumberRule(supplier=supplier, kind="prefix" if prefix else "suffix", text=prefix or suffix)


def _judge_file(at_desk: Desk, file: Path, json: bool) -> None:
    from ..actions.review_file import judge_file
    from ..documents.review import judged_file_text

    done = judge_file(at_desk, file)
    show(done, judged_file_text(done), json)
    if done.problems:
        raise typer.Exit(1)


def _by_score(at_desk: Desk, supplier: str, least: str, accept: int | None, json: bool) -> None:
    from ..actions.review import accept_by_score
    from ..documents.review import by_score_text

    found = accept_by_score(at_desk, supplier, _score(least), accept)
    show(found, by_score_text(found), json)


def _score(text: str) -> Decimal:
    from ..basics.problem import refused

    try:
        score = Decimal(text)
    except InvalidOperation:
        raise refused("score-not-between", found=text) from None
    if not score.is_finite():
        raise refused("score-not-between", found=text)
    return score


def _judge_one(at_desk: Desk, candidate: int, said: tuple[str, bool, bool], words: str, json: bool) -> None:
    from ..actions.review import judge, take_back
    from ..documents.review import answer_text

    answer, fitted, back = said
    if back:
        done = take_back(at_desk, candidate, words)
    else:
        done = judge(at_desk, candidate, _answer(answer, fitted), "fitted" if fitted else "unchecked", words)
    show(done, answer_text(done), json)


def _answer(text: str, fitted: bool) -> Answer:
    word = text.casefold()
    if word == "yes":
        return "yes"
    if word == "no" and not fitted:
        return "no"
    raise typer.BadParameter("say yes or no; --fitted goes with yes")
