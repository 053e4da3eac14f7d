"""The Jinja2 environment of the papers: everything escaped, nothing undefined passes, text from outside harmless."""

from datetime import date, datetime
from decimal import Decimal
from functools import cache

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from .amounts import date_text, decimal_text, money_text, percent_text
from .plain_text import shown
from .shipped_files import template_folder


def render(template: str, **values: object) -> str:
    """The template filled in. A missing value or field is a bug and raises jinja2.UndefinedError."""
    return environment().get_template(template).render(**values)


@cache
def environment() -> Environment:
    """The environment: `autoescape` for every template whatever its name, filters money, date, number, percent."""
    made = Environment(
        loader=FileSystemLoader(template_folder()),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_harmless,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters.update(money=money_text, date=date_text, number=decimal_text, percent=percent_text)
    return made


def _harmless(value: object) -> object:
    """Direction and control marks made visible in every text put into a page; escaping itself is Jinja's."""
    if isinstance(value, Markup):
        return value
    if isinstance(value, str):
        return shown(value)
    if isinstance(value, (int, Decimal, date, datetime)):
        return value
    if isinstance(value, StrictUndefined):
        return value
    raise TypeError(f"a template may print text, whole numbers, Decimals and dates, not {type(value).__name__}")
