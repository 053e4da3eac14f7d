"""The counter's words can be translated: every text of a page is a gettext message (English is the message itself).

Catalogues are `translations/<language>/LC_MESSAGES/counter.po` with its .mo, made with Babel; none is shipped yet.
"""

from functools import cache
from pathlib import Path

from babel.support import NullTranslations, Translations
from flask import g, has_request_context, request

FOLDER = Path(__file__).with_name("translations")
DOMAIN = "counter"


def languages() -> list[str]:
    """English, and every language there is a catalogue for."""
    return ["en", *sorted(one.parent.parent.name for one in FOLDER.glob(f"*/LC_MESSAGES/{DOMAIN}.mo"))]


def language() -> str:
    """The language of this page: the first the visitor's browser asks for that there is, else English."""
    if not has_request_context():
        return "en"
    if "language" not in g:
        g.language = request.accept_languages.best_match(languages(), default="en") or "en"
    return str(g.language)


@cache
def catalogue(code: str) -> NullTranslations:
    """The catalogue of a language."""
    return Translations.load(FOLDER, [code], DOMAIN)


def _(message: str) -> str:
    """The message in the language of the page."""
    return str(catalogue(language()).ugettext(message))


def later(message: str) -> str:
    """Mark a message that a page translates when it shows it; it stands in a table until then."""
    return message


def several(one: str, many: str, count: int) -> str:
    """The message for one or for several."""
    return str(catalogue(language()).ungettext(one, many, count))
