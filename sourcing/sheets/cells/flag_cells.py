"""Yes-or-no cells in five languages."""

from collections.abc import Sequence
from decimal import Decimal

from ..worksheet import Cell
from .cell import Bad, parse_column, says_no_longer_available, shown_of, word_set, words_of

YES = word_set("y,yes,x,true,t,1,ja,j,✓,✔,☑,oui,sí,si,wahr,vrai,verdadero,waar,on")
NO = word_set("n,no,false,f,0,nein,non,nee,-,--,–,—,✗,✘,☐,falsch,faux,falso,onwaar,off,none,keine")
AVAILABLE = word_set(
    "active,aktiv,actif,activo,actief,current,available,in production,n/a,ok,lieferbar,verfügbar,disponible,leverbaar,"
    "new,neu,nouveau,nuevo,nieuw"
)
"""Words of a status column for a part that is still sold."""
GONE = word_set("disc,disc.,d/c,inactive,inaktiv,inactif,inactivo,inactief,gone,retired,phased out,nicht lieferbar")
NAMED = word_set(
    "oversize,oversized,os,o/s,haz,hazmat,hazardous,dg,dangerous goods,gefahrgut,sperrgut,sperrig,hors gabarit,"
    "encombrant,dangereux,matière dangereuse,voluminoso,peligroso,mercancía peligrosa,gevaarlijk,volumineus"
)
"""Words that fill a cell of the column they name: 'HAZ' under 'Hazardous' is a yes."""


def parse_flags(cells: Sequence[Cell]) -> list[bool | Bad | None]:
    """Yes or no; blank and 'n/a' are None, not stated."""
    return parse_column(cells, _flag)


def _flag(cell: Cell) -> bool | Bad | None:
    words = plain_flag(cell)
    if words in ("", "n/a", "?"):
        return None
    if words in YES or words in NAMED:
        return True
    return False if words in NO else Bad("yes-or-no-unreadable", found=shown_of(cell))


def parse_yes(cell: Cell) -> bool | Bad:
    """Yes or no of a 'no longer available' or status column: 'discontinued' is yes, 'active' is no. Blank is no."""
    words = plain_flag(cell)
    if words in YES or words in GONE or says_no_longer_available(cell):
        return True
    return (
        False if not words or words in NO or words in AVAILABLE else Bad("yes-or-no-unreadable", found=shown_of(cell))
    )


def plain_flag(cell: Cell) -> str:
    """The cell's words for comparing; a workbook's 1.0 and 0.0 are 1 and 0."""
    return str(int(cell)) if isinstance(cell, Decimal) and cell in (0, 1) else words_of(cell)
