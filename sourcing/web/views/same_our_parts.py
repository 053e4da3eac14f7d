"""Parts of our own: one added, changed or taken out, each by a page of the equivalence table."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.part_deeds import add_part, change_part, look_at_change, opened_part, take_part_out
from ...basics.our_part import KeptPart, PartTold, told_of
from ...basics.part_number import number_key
from ...documents.our_part import size_words, touched_words
from ..desks import desk
from ..forms import deed, mind, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _
from .look_first import ahead, kept, mark_of


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the table."""
    both = ["GET", "POST"]
    blueprint.add_url_rule("/same-parts/our-parts/add", "add_part_page", add_part_page, methods=both)
    blueprint.add_url_rule("/same-parts/our-parts/change", "change_part_page", change_part_page, methods=both)
    blueprint.add_url_rule("/same-parts/our-parts/take-out", "take_part_out_page", take_part_out_page, methods=both)


@open_to(*WITH_COSTS)
def add_part_page() -> ResponseReturnValue:
    """Add a part of ours; a number somebody looked for in vain stands in the form."""
    if request.method == "POST" and (gone := deed(_add)):
        return gone
    return show("same/part_add.html", told=told_of_address(), number=_asked("number"))


@open_to(*WITH_COSTS)
def change_part_page() -> ResponseReturnValue:
    """What another size would do is shown first, and the change kept when it was seen."""
    if gone := kept(_look, _change):
        return gone
    looked = ahead(_look)
    opened = opened_part(desk(), _asked("code"))
    return show(
        "same/part_change.html",
        opened=opened,
        told=told_of_address() if len(request.args) > 1 else told_of(opened.part),
        reads=size_words(opened.size),
        looked=looked,
        would=_told(looked) if looked else (),
        mark=mark_of(looked),
    )


@open_to(*WITH_COSTS)
def take_part_out_page() -> ResponseReturnValue:
    """Take a part out that nothing names."""
    if request.method == "POST" and (gone := deed(_take_out)):
        return gone
    return show("same/part_out.html", opened=opened_part(desk(), _asked("code")))


def told_of_address() -> PartTold:
    """The part as the address has it: to be added, or to be so again."""
    return PartTold(**{name: _asked(name) for name in PartTold.__struct_fields__})


def _typed() -> PartTold:
    typed = {name: text(name) for name in PartTold.__struct_fields__}
    return PartTold(**(typed | ({"code": _asked("code")} if _asked("code") and not text("code") else {})))


def _add() -> str:
    done = add_part(desk(), _typed())
    code, number = done.part.code, text("number")
    tell(
        _("%(code)s is a part of ours now. Say next under which number it is sold.") % {"code": code},
        undo=url_for("same.take_part_out_page", code=code),
    )
    for words in (size_words(done.size), done.size.doubt):
        if words:
            mind(f"{words}.")
    right = number if number_key(number) != number_key(code) else ""
    return url_for("same.add_page", left=code, left_whose="ours", right=right or None)


def _look() -> KeptPart:
    return look_at_change(desk(), _typed())


def _change() -> str:
    done = change_part(desk(), _typed())
    before = told_of(done.before) if done.before else None
    back = {name: getattr(before, name) for name in PartTold.__struct_fields__} if before else {}
    undo = url_for("same.change_part_page", **back)
    tell(_("%(code)s is changed.") % {"code": done.part.code}, undo=undo)
    return url_for("same.number_page", number=done.part.code)


def _told(looked: KeptPart) -> tuple[str, ...]:
    """What the change would do, a sentence each."""
    told = (*looked.changes, size_words(looked.size), looked.size.doubt, *touched_words(looked.touched))
    return tuple(one for one in told if one)


def _take_out() -> str:
    gone = take_part_out(desk(), _asked("code"))
    told = told_of(gone)
    again = {name: getattr(told, name) or None for name in PartTold.__struct_fields__}
    tell(
        _("%(code)s is no part of ours any more.") % {"code": gone.code},
        undo=url_for("same.add_part_page", **again),
    )
    return url_for("same.table_page")


def _asked(name: str) -> str:
    return request.args.get(name, "").strip()
