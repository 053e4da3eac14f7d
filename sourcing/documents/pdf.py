"""PDF from a paper's HTML, by the library plutoprint (an extra: it is large, and some machines have no wheel of it).

The PDF is the page as it prints: the same words, nothing more. Nothing is fetched, no script runs, and the same page
gives the same bytes on the same machine: no day of making stands in the file. The fonts are the machine's own. The
PDF carries no structure for screen readers; the HTML does. The library lays out blocks, floats, tables and flexible
boxes, but no CSS grid: a paper that is to look the same must do without.
"""

import io
from functools import cache
from typing import TYPE_CHECKING, Literal

from ..basics.problem import Refused, refused

if TYPE_CHECKING:
    from plutoprint import Book

PaperSize = Literal["letter", "A4"]


def check_pdf_can_be_made() -> None:
    """Refuse with 'no-pdf' where the library is not installed or does not load: to be asked before a deed is done."""
    try:
        import plutoprint  # noqa: F401  # only to see whether it loads
    except (ImportError, OSError) as trouble:
        raise _no_pdf(trouble) from None


@cache
def makes_pdf() -> bool:
    """Whether a PDF can be made here: nobody should be offered one that can't."""
    try:
        check_pdf_can_be_made()
    except Refused:
        return False
    return True


def pdf_bytes(html: str, paper: PaperSize, title: str) -> bytes:
    """The page as a PDF on letter or A4, with that title. A size in the page's own style sheet goes before `paper`.

    Refuses with 'no-pdf' where the library is not installed, does not load, or can't make the file.
    """
    check_pdf_can_be_made()
    import plutoprint

    try:
        book = plutoprint.Book(
            plutoprint.PAGE_SIZE_LETTER if paper == "letter" else plutoprint.PAGE_SIZE_A4, plutoprint.PAGE_MARGINS_NONE
        )
        _cut_off(book)
        book.load_html(html)
        book.set_metadata(plutoprint.PDF_METADATA_TITLE, title)
        book.set_metadata(plutoprint.PDF_METADATA_CREATION_DATE, "")
        out = io.BytesIO()
        book.write_to_pdf_stream(out)
    except plutoprint.Error as trouble:
        raise _no_pdf(trouble) from None
    return out.getvalue()


def _cut_off(book: "Book") -> None:
    """Whatever address a page names, the answer is an empty file: no network, no file of this machine."""
    from plutoprint import ResourceData, ResourceFetcher

    class Nothing(ResourceFetcher):
        def fetch_url(self, url: str) -> ResourceData:
            return ResourceData(b"", "text/plain", "utf-8")

    book.custom_resource_fetcher = Nothing()


def _no_pdf(trouble: Exception) -> Refused:
    return refused("no-pdf", found=str(trouble) or type(trouble).__name__)
