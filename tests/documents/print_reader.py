"""What of a paper's page is printed: its words in order, without what only a screen or a screen reader is given."""

import re
import unicodedata

from tests.documents.html_reader import Page

NOT_PRINTED = frozenset(("hidden", "screen-only"))
BLANK = re.compile(r"\s+")
FIGURE = re.compile(r"\d[\d.,]*\d|\d")


class Printed(Page):
    """The page's words apart from its title and from elements of the classes that print hides."""

    def __init__(self, html: str) -> None:
        self.outside: list[bool] = []
        super().__init__(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Remember whether what opens here is outside the printed page."""
        deep = len(self.open)
        super().handle_starttag(tag, attrs)
        if len(self.open) > deep:
            classes = (dict(attrs).get("class") or "").split()
            self.outside.append(tag == "title" or not NOT_PRINTED.isdisjoint(classes))

    def handle_endtag(self, tag: str) -> None:
        """Out of the element again."""
        super().handle_endtag(tag)
        self.outside.pop()

    def handle_data(self, data: str) -> None:
        """Words that are printed."""
        if not any(self.outside):
            super().handle_data(data)


def printed(text: str) -> str:
    """The text without bullets and page numbers, which a page's source has not."""
    text = re.sub(r"Page \d+ of \d+\s*$", "", text, flags=re.M)
    return unicodedata.normalize("NFKC", text).replace("•", "")


def letters(text: str) -> str:
    """The same without blanks: line ends fall elsewhere in a PDF, and nothing else may."""
    return BLANK.sub("", printed(text))
