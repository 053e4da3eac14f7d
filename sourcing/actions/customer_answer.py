"""Take down what a customer answers on her page: by the same rules as an answer told to the shop, signed, once.

What the rules refuse is told in words for her: no command, no cost, and nobody else's name or words.
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.person import CustomerLink, Signature
from ..basics.problem import Refused, problem, refused
from ..basics.quote import Quote
from ..basics.value import Value
from ..quoting.choices import choice_total, is_reconsidered, with_freight_along
from ..storage.links import add_signature, change_link
from .answers import Spoken, keep_answers
from .customer_links import OpenedLink, opened
from .desk import Desk
from .drawn_signature import drawn_signature
from .link_answers import PAGE, contact_of
from .link_given import is_noted, note_given

MOST_WORDS = 2_000
MOST_NAME = 100

FOR_HER = {
    "not-entitled": "link-name-unknown",
    "no-answer": "link-nothing-answered",
    "answered-otherwise": "link-answered-otherwise",
    "ordered-already": "link-line-ordered",
    "freight-not-answered": "link-freight-needed",
    "freight-for-nothing": "link-freight-for-nothing",
    "freight-alone": "link-freight-for-nothing",
    "condition-without-yes": "link-condition-without-yes",
    "billed-no-answer": "link-job-billed",
}
"""By the rule that refuses: the words for the customer. What is not here is told as 'not taken'."""

ABOUT_LINES = frozenset(("link-line-ordered", "link-freight-needed", "link-freight-for-nothing"))
"""Words for her that say which line they are about, or which lines."""


class Answer(Value, frozen=True, kw_only=True):
    """What was sent: labels, the name typed, conditions of the yes, other words, the drawing as browsers send it."""

    yes: tuple[str, ...] = ()
    no: tuple[str, ...] = ()
    name: str
    conditions: str = ""
    words: str = ""
    drawing: str = ""


def total_with(link: OpenedLink, yes: tuple[str, ...]) -> Money:
    """What it comes to with tax if these lines are approved, with all that is approved already."""
    return choice_total(link.frozen.quote, yes, link.holding)


def answer(desk: Desk, secret: str, said: Answer) -> CustomerLink:
    """Keep the answers and how they were signed, and close the link to further ones: all of it or nothing.

    Refuses what `open_link` refuses, a second answer, who may not answer, and what the rules of answers refuse.
    """
    drawing = _checked(said)
    with desk.writing("answer") as pen:
        here = opened(pen.connection, secret, desk.at)
        link = here.link
        if link.answered_at is not None:
            raise refused("link-answered")
        with _in_her_words(said):
            keep_answers(pen, link.job, _spoken(here, said))
        name = " ".join(said.name.split())
        add_signature(
            pen.connection,
            Signature(link=link.link, job=link.job, revision=link.revision, at=desk.at, name=name, drawing=drawing),
        )
        if not is_noted(pen.connection, link):
            note_given(pen, link, link.made_by, "answered")
        change_link(pen.connection, link.link, answered_at=desk.at)
        return link


def _checked(said: Answer) -> bytes:
    """The drawing made anew. Refuses what can be told without looking at the quote."""
    if not said.name.split():
        raise refused("link-name-missing")
    boxes = ("Your name", said.name, MOST_NAME), ("Conditions, if any", said.conditions, MOST_WORDS)
    for box, text, most in (*boxes, ("Anything else", said.words, MOST_WORDS)):
        if len(text) > most:
            raise refused("words-too-long", count=len(text), most=most, found=box)
    return drawn_signature(said.drawing)


def _spoken(here: OpenedLink, said: Answer) -> Spoken:
    quote = here.frozen.quote
    yes, no = with_freight_along(quote, said.yes, said.no, here.holding)
    return Spoken(
        yes=yes,
        no=no,
        who=" ".join(said.name.split()),
        how=PAGE,
        contact=contact_of(here.link),
        words=said.words.strip(),
        revision=here.link.revision,
        instead=_asked_anew(quote, yes, no, here.holding),
        conditions=said.conditions,
    )


def _asked_anew(quote: Quote, yes: tuple[str, ...], no: tuple[str, ...], holding: Mapping[str, Approval]) -> bool:
    """Whether every answer contrary to one that holds is to a line that this paper asks about once more."""
    contrary = [
        label
        for labels, word in ((yes, "approved"), (no, "declined"))
        for label in labels
        if label in holding and holding[label].answer != word
    ]
    return bool(contrary) and all(is_reconsidered(quote, label, holding) for label in contrary)


@contextmanager
def _in_her_words(said: Answer) -> Iterator[None]:
    try:
        yield
    except Refused as refusal:
        kinds = {FOR_HER.get(one.code, "link-not-taken"): one.found for one in reversed(refusal.problems)}
        name = " ".join(said.name.split())
        told = [problem(kind, found=found if kind in ABOUT_LINES else name) for kind, found in reversed(kinds.items())]
        raise Refused(*told) from None
