"""Texts of pages with values in them: what is put into a translated sentence is made harmless as everywhere else.

Jinja's own way formats the values without the environment's `finalize`, so a mark that turns the reading direction
would get past it inside a sentence.
"""

from collections.abc import Callable
from typing import Any

from flask import Flask
from jinja2 import Environment, pass_context
from jinja2.runtime import Context
from markupsafe import Markup

from .words import _, several


def install(app: Flask, finalize: Callable[[object], object]) -> None:
    """Give the templates `gettext` and `ngettext` for `_("...")` and trans blocks."""

    def filled(message: str, values: dict[str, Any]) -> Markup:
        return Markup(message) % {name: finalize(value) for name, value in values.items()}

    @pass_context
    def gettext(_context: Context, message: str, **values: Any) -> Markup:
        return filled(_(message), values)

    @pass_context
    def ngettext(_context: Context, one: str, many: str, num: int, **values: Any) -> Markup:
        return filled(several(one, many, num), {"num": num, **values})

    made: Environment = app.jinja_env
    made.add_extension("jinja2.ext.i18n")
    made.install_gettext_callables(_, several, newstyle=True)  # type: ignore[attr-defined]
    made.globals.update(gettext=gettext, ngettext=ngettext)
