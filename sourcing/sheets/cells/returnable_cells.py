"""Whether a supplier takes a part back: yes, no and the words for it in five languages (common practice, no source)."""

import re
import unicodedata
from collections.abc import Sequence

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of
from .flag_cells import NO, YES, plain_flag

NOT_STATED = word_set(",-,--,–,—,?,n/a,none,keine")
NOT_RETURNABLE = word_set(
    "nr,n/r,ncnr,nc/nr,nc-nr,non-returnable,nonreturnable,non returnable,not returnable,no return,no returns,"
    "non-cancelable non-returnable,non-cancellable non-returnable,final sale,all sales final,"
    "keine rückgabe,keine rücknahme,kein umtausch,nicht rückgabefähig,nicht retournierbar,"
    "vom umtausch ausgeschlossen,non retournable,non repris,ni repris ni échangé,sans retour,pas de retour,"
    "no retornable,sin devolución,sin devoluciones,no se admite devolución,no se admiten devoluciones,"
    "niet retourneerbaar,geen retour,niet retour"
)
RETURNABLE = word_set(
    "returnable,returns ok,return ok,returns accepted,rückgabe möglich,rückgabefähig,retournierbar,retournable,"
    "retour possible,retornable,se admite devolución,retourneerbaar,retour mogelijk"
)
BACK = r"(?:return|retour|repris|r(?:u|ue)ck|umtausch|retorn|devol)"
NOT_BACK = re.compile(
    rf"\bnc ?nr\b|^n ?r$|\b(?:non|not|no|nicht|keine?|sans|pas de|sin|niet|geen)(?: se)?(?: admit\w*)? ?{BACK}\w*"
    r"|\bnon ?cancel\w*|\bvom umtausch ausgeschlossen"
)
"""Headers under which a yes means that the part can't be given back."""


def parse_returnable(cells: Sequence[Cell], header: str) -> list[bool | Bad | None]:
    """Whether the supplier takes the part back. Blank and a dash are None, not stated, and never a no.

    Under a header such as 'NCNR' or 'Non-returnable' yes and no are turned round; under one that speaks of both,
    only words that say it in full are read.
    """
    turned = is_turned_round(header)
    return parse_column(cells, lambda cell: _returnable(cell, turned))


def is_turned_round(header: str) -> bool | None:
    """Whether a yes under the header means that the part can't be given back; None where the header says both."""
    apart = unicodedata.normalize("NFKD", words_of(header))
    plain = "".join(sign for sign in apart if not unicodedata.combining(sign))
    words = " ".join(re.findall(r"[^\W_]+", plain))
    rest = NOT_BACK.sub(" ", words)
    if rest == words:
        return False
    return None if re.search(BACK, rest) else True


def _returnable(cell: Cell, turned: bool | None) -> bool | Bad | None:
    words = plain_flag(cell).strip(" .!*")
    if words in NOT_STATED:
        return None
    if words in NOT_RETURNABLE or words in RETURNABLE:
        return words in RETURNABLE
    if turned is None or words not in YES | NO:
        return Bad("yes-or-no-unreadable", found=shown_of(cell))
    return (words in YES) != turned
