"""Files the counter gives out: always to be saved, never shown as live content of the counter."""

from flask import Response, g

from .headers import FILE, paper_policy

KINDS = {
    "csv": "text/csv; charset=utf-8",
    "html": "text/html; charset=utf-8",
    "json": "application/json",
    "pdf": "application/pdf",
    "toml": "application/toml",
    "txt": "text/plain; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "xml": "application/xml",
    "zip": "application/zip",
}


def attachment(content: bytes | str, name: str, kind: str) -> Response:
    """The content as a file to be saved as '<name>.<kind>'. `name` is made of our own words and numbers."""
    assert all(letter.isascii() and (letter.isalnum() or letter in "-_") for letter in name), name
    g.policy = FILE
    answer = Response(content, content_type=KINDS[kind])
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}.{kind}"'
    return answer


def drawing(svg: str) -> Response:
    """An SVG drawing of ours to be shown as an image: it can run nothing and load nothing, and brings its own style."""
    g.policy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; sandbox"
    return Response(svg, content_type="image/svg+xml; charset=utf-8")


def paper(html: str) -> Response:
    """A paper as it was kept, for a frame of one of the counter's pages."""
    g.policy = paper_policy(html)
    return Response(html, content_type="text/html; charset=utf-8")
