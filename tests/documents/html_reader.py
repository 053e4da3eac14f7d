"""Reads a page for the tests: tags in balance, headings in order, labels and ids, what it would fetch, its words."""

from html.parser import HTMLParser

VOID = frozenset(("meta", "input", "br", "link", "img", "hr", "base"))


class Page(HTMLParser):
    """A page taken apart. Raises AssertionError where a tag closes what is not open."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.headings: list[tuple[int, str]] = []
        self.words: list[str] = []
        self.css = ""
        self.feed(html)
        self.close()
        assert self.open == [], f"never closed: {self.open}"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note the tag; remember it as open unless it has no end."""
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)
        if tag in ("h1", "h2", "h3", "h4", "h5", "h6"):
            self.headings.append((int(tag[1]), ""))

    def handle_endtag(self, tag: str) -> None:
        """Every end must close what was opened last."""
        assert self.open and self.open[-1] == tag, f"</{tag}> closes {self.open[-1:]}"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        """Words of the page, apart from its style sheet."""
        if self.open[-1:] == ["style"]:
            self.css += data
            return
        self.words.append(data)
        if self.headings and any(tag in ("h1", "h2", "h3") for tag in self.open):
            level, text = self.headings[-1]
            self.headings[-1] = (level, text + data)

    @property
    def text(self) -> str:
        """All words, blanks made one."""
        return " ".join(" ".join(self.words).split())

    def all(self, *tags: str) -> list[dict[str, str]]:
        """Attributes of every element of these tags, in order."""
        return [attributes for tag, attributes in self.tags if tag in tags]
