"""Whether an offer is what the need asks: a contradiction rejects it, silence is a question, what is left over is said.

Loose belts are no matched set, even if cheaper (common practice, no source; ARPM/RMA IP-20 gives limits within which
the belts of a set must match). A pair where one piece is asked serves; what is left over is said.
"""

import re
from collections.abc import Iterator

from ...basics.asked import Asked
from ...basics.offer import Offer
from ...basics.value import Value
from ..dimensions.size_check import check_size
from ..words.text import unaccented
from .said_of import Stated, Word, asked_by, said_of

COGGED_SECTION = re.compile(r"(?<![A-Z0-9])(?:[ABC]X-?\d{2,3}|[358]VX-?\d{3,4}|XP[ZABC] ?-?\d{3,4})(?![A-Z0-9])")
"""Designations of cogged belts: X after a classical or narrow section (ARPM/RMA IP-20, IP-22), XP (DIN 7753)."""


class AskedCheck(Value, frozen=True, kw_only=True):
    """`failures` contradict what is asked and reject the offer; `unknowns` are to be asked; `notes` are to be known.

    `needed` is the quantity in the offer's own unit: two for one asked pair where the offer is counted by the piece.
    """

    failures: tuple[str, ...] = ()
    unknowns: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    needed: int = 1


def check_asked(asked: Asked, size: str, offer: Offer, quantity: int = 1) -> AskedCheck:
    """Compare what is asked (and `size`, a designation or blank) with everything the offer says.

    `quantity` counts what is asked: pieces, or pairs, sets and kits. A size that can't be compared is no question here:
    the number that ties the offer to our part stands for it.
    """
    said = said_of(offer.description, offer.note, numbers=(offer.supplier_number, offer.maker_number))
    failures: list[str] = []
    unknowns: list[str] = []
    sized = check_size(size, offer.supplier_number, offer.maker_number, offer.description)
    if sized.vetoes:
        failures.append(sized.words)
    for name, want, word in _attributes(asked, said, offer):
        if not want:
            continue
        wrong = _contradiction(name, want, word)
        if wrong:
            failures.append(wrong)
        elif word.value != want:
            unknowns.append(_question(name, want, word))
    shape = _Shape(asked=asked, said=said, offer=offer, quantity=quantity)
    return AskedCheck(
        failures=(*failures, *shape.failures()),
        unknowns=(*unknowns, *shape.unknowns()),
        notes=tuple(shape.notes()),
        needed=shape.needed(),
    )


def _attributes(asked: Asked, said: Stated, offer: Offer) -> Iterator[tuple[str, str, Word]]:
    yield "cord", *_made_of(asked.cord, asked_by(asked.cord).cord, said.cord, offer)
    yield "cover", *_made_of(asked.cover, asked_by(asked.cover).cover, said.cover, offer)
    yield "cogs", asked.cogs, _cogs(said, offer)
    yield "side", asked.side, said.side


def _made_of(asked: str, known: str, word: Word, offer: Offer) -> tuple[str, Word]:
    """(what is asked, what is said). An asked word no list knows is met where the text holds it, else a question."""
    if known or not asked:
        return known, word
    want = unaccented(asked)
    return want, Word(value=want, text=asked) if want in unaccented(offer.description) else Word()


def _cogs(said: Stated, offer: Offer) -> Word:
    if said.cogs.value or said.cogs.doubt:
        return said.cogs
    if "cogged" in said.cogs.denied:
        return Word(value="plain", text=said.cogs.text)
    for text in (offer.supplier_number, offer.maker_number, offer.description):
        found = COGGED_SECTION.search(text.upper())
        if found:
            return Word(value="cogged", text=found[0])
    return said.cogs


def _contradiction(name: str, want: str, word: Word) -> str:
    if word.value and word.value != want:
        return f"{name}: asked is {want}, the offer says '{word.text}'"
    if not word.value and want in word.denied:
        return f"{name}: asked is {want}, the offer says '{word.text}'"
    return ""


def _question(name: str, want: str, word: Word) -> str:
    if word.doubt:
        return f"{name} not clear: ask (asked is {want}; {word.doubt})"
    return f"{name} not stated: ask (asked is {want})"


class _Shape(Value, frozen=True, kw_only=True):
    """One piece, pair, matched set or kit: what is asked against what is offered, and how much must be ordered."""

    asked: Asked
    said: Stated
    offer: Offer
    quantity: int

    @property
    def want(self) -> str:
        """'matched set of 2'."""
        of = f" of {self.asked.pieces}" if self.asked.pieces and self.asked.sold_as in ("matched set", "kit") else ""
        return f"{self.asked.sold_as}{of}"

    @property
    def have(self) -> str:
        """What the offer says it is; 'packs of 2' where only its pack says so; blank: it says nothing."""
        word = self.said.sold_as.value
        if word:
            return f"{word} of {self.said.pieces}" if self.said.pieces and word != "pair" else word
        return ""

    @property
    def counted_by_piece(self) -> bool:
        """Whether the sheet counts single pieces and sells them in packs as large as what is asked."""
        return self.asked.set_of > 1 and self.offer.pack > 1 and self.offer.pack % self.asked.set_of == 0

    def failures(self) -> Iterator[str]:
        """Contradictions."""
        sold, said = self.asked.sold_as, self.said
        if sold == "matched set":
            yield from self._no_matched_set()
        elif sold == "kit" and (said.sold_as.value in ("each", "pair", "matched set") or "kit" in said.sold_as.denied):
            yield f"asked is a {self.want}, the offer says '{said.sold_as.text}': it is no kit"
        elif sold in ("each", "pair") and said.sold_as.value == "kit":
            one = "single piece" if sold == "each" else "pair"
            yield f"asked is a {one}, the offer says '{said.sold_as.text}': a kit is another thing"
        elif sold == "pair" and said.pieces and said.pieces != 2:
            yield f"asked is a pair, offered is a {self.have}"

    def _no_matched_set(self) -> Iterator[str]:
        said, count = self.said, self.asked.pieces
        if "matched set" in said.sold_as.denied or said.sold_as.value == "each":
            text = said.sold_as.text
            yield f"asked is a {self.want}, the offer says '{text}': loose pieces do not make a matched set"
        elif said.sold_as.value == "kit":
            yield f"asked is a {self.want}, the offer says 'kit'"
        elif count and said.pieces and said.pieces != count:
            yield f"asked is a {self.want}, offered is a {self.have}"

    def unknowns(self) -> Iterator[str]:
        """What must be asked because the offer does not say it, or not clearly."""
        sold, word = self.asked.sold_as, self.said.sold_as
        if word.doubt and sold not in ("", word.value):
            yield f"{self.want or 'how it is sold'} not clear: ask ({word.doubt})"
        elif sold == "matched set" and word.value in ("pair", "set"):
            yield f"matched not stated: ask (asked is a {self.want}, offered is a {self.have})"
        elif sold == "matched set" and word.value == sold and self.asked.pieces and not self.said.pieces:
            yield f"how many belts the set holds is not stated: ask (asked are {self.asked.pieces})"
        elif sold in ("pair", "matched set", "kit") and not word.value and not any(self.failures()):
            if not self.counted_by_piece:
                yield f"{self.want} not stated: ask; the price is taken for one {sold}"
            elif sold != "pair":
                yield f"{self.want} not stated: ask (it is sold in packs of {self.offer.pack})"
        elif sold == "each" and self.said.packed > 1 and self.offer.pack != self.said.packed:
            yield f"its text counts {self.said.packed}: ask whether the price is for one or for all"
        elif sold == "kit" and word.value == "set":
            yield f"kit not stated: ask (offered is a {self.have})"

    def notes(self) -> Iterator[str]:
        """What is left over, and loose pieces that make up a pair."""
        left = self.needed() * self._offered - self.quantity * self.asked.set_of if self.asked.sold_as else 0
        if self.asked.sold_as == "each" and self._offered > 1 and left > 0:
            yield f"offered as a {self.have}: {left} piece{'s' if left > 1 else ''} left over"
        if self.asked.sold_as == "pair" and self.needed() > self.quantity and self.said.sold_as.value == "each":
            yield f"{self.needed()} loose pieces make the pair{'s' if self.quantity > 1 else ''}"

    @property
    def _offered(self) -> int:
        """Pieces in one unit of the offer, where its words say more than its pack does."""
        return self.said.pieces if self.said.pieces > 1 and self.offer.pack == 1 else 1

    def needed(self) -> int:
        """The asked quantity in the offer's unit."""
        if self.asked.sold_as == "each":
            return -(-self.quantity // self._offered)
        by_piece = self.counted_by_piece or (self.said.sold_as.value == "each" and self.asked.set_of > 1)
        return self.quantity * self.asked.set_of if by_piece else self.quantity
