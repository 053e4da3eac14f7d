"""The shop's settings as a file a person edits: read, and everything that can't hold told with its place."""

from collections.abc import Callable, Iterator
from pathlib import Path

from ..basics.contradiction import Contradiction
from ..basics.locales import known_locale
from ..basics.problem import Place, Problem, Refused, problem
from ..basics.settings import Settings
from ..basics.settings_checks import settings_contradictions
from ..basics.value import changed
from ..landed_cost.date_checks import check_shop_dates
from .files import read_toml

TOLD_BY_FIELD = "week-without-days"
"""The kind of problem about days that the checks field by field have told already."""


def read_settings(path: Path) -> Settings:
    """The settings of a file such as shop.toml. Refuses with all that can't hold."""
    settings = read_toml(path, Settings)
    problems = settings_problems(settings, Place(file=path.name))
    if problems:
        raise Refused(*problems)
    return settings


def settings_problems(
    settings: Settings, place: Place | None = None, named: Callable[[str], str] = str
) -> list[Problem]:
    """All that can't hold in the settings; `place` is the file they stand in, if they stand in one.

    `named` gives what a field is called where it was filled in.
    """
    problems = [
        problem("entry-contradicts", place=place, entry="", field=named(one.field), found=one.found)
        for one in (*settings_contradictions(settings), *_of_locale(settings))
    ]
    return problems + [changed(one, place=place) for one in check_shop_dates(settings) if one.code != TOLD_BY_FIELD]


def _of_locale(settings: Settings) -> Iterator[Contradiction]:
    """A name nobody knows would stop every page and paper that shows a day or an amount."""
    if known_locale(settings.locale) is None:
        found = f"is '{settings.locale}', which is no language and country we know; write one such as en_US or en_GB"
        yield Contradiction(field="locale", found=found)
