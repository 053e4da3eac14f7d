"""The counter's texts that can be translated, as one template of messages; and what in a page can't be.

`python -m tests.web.texts --write` renews sourcing/web/translations/counter.pot.
"""

import io
import re
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import write_po

import sourcing

WEB = Path(sourcing.__file__).parent / "web"
TEMPLATE = WEB / "translations" / "counter.pot"
METHODS = [("**.py", "python"), ("pages/**.html", "jinja2")]
OPTIONS = {"pages/**.html": {"extensions": "jinja2.ext.i18n", "newstyle_gettext": "true", "trimmed": "true"}}
KEYWORDS = {"_": None, "later": None, "gettext": None, "ngettext": (1, 2), "several": (1, 2)}

SHOWN_ATTRIBUTES = ("aria-label", "alt", "title", "placeholder", "content-label")
LETTERS = re.compile(r"[^\W\d_]{2,}")


def messages() -> str:
    """All messages with the files they stand in, as a .pot file without a date: the same texts give the same file."""
    catalog = Catalog(project="parts-sourcing", version="", charset="utf-8", fuzzy=False)
    for file, _line, message, comments, context in extract_from_dir(WEB, METHODS, OPTIONS, KEYWORDS):
        catalog.add(message, locations=[(file, 0)], auto_comments=comments, context=context)
    out = io.BytesIO()
    write_po(out, catalog, omit_header=True, sort_output=True, include_lineno=False, width=0)
    return out.getvalue().decode()


class _Texts(HTMLParser):
    """Text nodes and shown attributes of a template from which everything of Jinja was taken out."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self.silent = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note attributes that are shown or read out."""
        self.silent += tag in ("script", "style")
        self.found += [value for name, value in attrs if name in SHOWN_ATTRIBUTES and value]

    def handle_endtag(self, tag: str) -> None:
        """Scripts and styles are no text."""
        self.silent -= tag in ("script", "style")

    def handle_data(self, data: str) -> None:
        """Note text."""
        if not self.silent:
            self.found.append(data)


def untranslatable(template: str) -> Iterator[str]:
    """Texts of a page's template that stand there as they are: nobody could translate them."""
    bare = re.sub(r"{#.*?#}", "", template, flags=re.DOTALL)
    bare = re.sub(r"{%-?\s*trans\b.*?endtrans\s*-?%}", "", bare, flags=re.DOTALL)
    bare = re.sub(r"{{.*?}}|{%.*?%}", "", bare, flags=re.DOTALL)
    parser = _Texts()
    parser.feed(bare)
    parser.close()
    return (text.strip() for text in parser.found if LETTERS.search(text))


if __name__ == "__main__" and "--write" in sys.argv:
    TEMPLATE.parent.mkdir(exist_ok=True)
    TEMPLATE.write_text(messages(), encoding="utf-8")
