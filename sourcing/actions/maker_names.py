"""Other names of makers: what suppliers write on their sheets for the maker the shop knows."""

from ..basics.equivalence import MakerAlias
from ..basics.part_number import OURS, maker_key
from ..basics.problem import refused
from ..storage.equivalence import maker_aliases, put_aliases
from .desk import Desk


def maker_names(desk: Desk) -> tuple[MakerAlias, ...]:
    """Every other name that is kept, in the order they were put."""
    with desk.store.reading() as connection:
        return maker_aliases(connection)


def add_maker_name(desk: Desk, alias: str, maker: str) -> MakerAlias:
    """Let `alias` stand for `maker`. Refuses a name that stands for another maker, and chains of names."""
    new = MakerAlias(alias=alias.strip(), maker=maker.strip())
    for name in (new.alias, new.maker):
        if not maker_key(name) or name == OURS:
            raise refused("maker-name-blank", found=name)
    if maker_key(new.alias) == maker_key(new.maker):
        raise refused("maker-name-same", found=new.alias, maker=new.maker)
    with desk.writing("name maker") as pen:
        there = maker_aliases(pen.connection)
        _refuse_tangle(there, new)
        rest = [one for one in there if maker_key(one.alias) != maker_key(new.alias)]
        put_aliases(pen.connection, (*rest, new))
        pen.note("makers", f"'{new.alias}' on a sheet is {new.maker}")
        return new


def remove_maker_name(desk: Desk, alias: str) -> MakerAlias:
    """Let the name stand for nobody else any more. The deed stays in the ledger."""
    with desk.writing("take maker's name away") as pen:
        there = maker_aliases(pen.connection)
        found = next((one for one in there if maker_key(one.alias) == maker_key(alias)), None)
        if found is None:
            raise refused("no-such-alias", found=alias)
        put_aliases(pen.connection, tuple(one for one in there if one != found))
        pen.note("makers", f"'{found.alias}' on a sheet is {found.maker} no longer")
        return found


def _refuse_tangle(there: tuple[MakerAlias, ...], new: MakerAlias) -> None:
    """One name stands for one maker, and a name that stands for another is no maker."""
    by_key = {maker_key(one.alias): one for one in there}
    same = by_key.get(maker_key(new.alias))
    if same and maker_key(same.maker) != maker_key(new.maker):
        raise refused("alias-of-another", found=same.alias, maker=same.maker)
    above = by_key.get(maker_key(new.maker))
    if above:
        raise refused("alias-of-alias", found=above.alias, maker=above.maker)
    below = [one.alias for one in there if maker_key(one.maker) == maker_key(new.alias)]
    if below:
        raise refused("maker-has-aliases", found=new.alias, aliases=", ".join(below))
