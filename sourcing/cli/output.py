"""Show a result: as text, as JSON, or written to a file whole or not at all."""

from __future__ import annotations

import csv
import io
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path

import typer


def show(value: object, text: str, as_json: bool) -> None:
    """Print the value as JSON or its text."""
    if as_json:
        from ..basics.value import to_json

        typer.echo(to_json(value).decode())
    else:
        typer.echo(text.rstrip("\n"))


def write(path: Path, content: str | bytes) -> None:
    """Write a file beside its final name and move it there, so that nothing half-written is left.

    It is on the disk before it takes the name: a power cut just after leaves the old file or the whole new one.
    """
    from ..basics.problem import refused

    data = content.encode() if isinstance(content, str) else content
    if not path.name:
        raise refused("can-not-write", found=str(path), why="it is a folder")
    part = path.with_name(path.name + ".part")
    try:
        with part.open("wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    except OSError as error:
        with suppress(OSError):  # a name too long can't even be taken away
            part.unlink(missing_ok=True)
        raise refused("can-not-write", found=str(path), why=error.strerror or "the system refused") from None


def check_pdf(path: Path | None) -> None:
    """Where a PDF is wanted, refuse before anything is done if none can be made on this machine."""
    if path:
        from ..documents.pdf import check_pdf_can_be_made

        check_pdf_can_be_made()


def paper_is_in(html: Path, pdf: Path | None = None) -> str:
    """Where the papers of a deed are: 'The paper is in q.html, as PDF in q.pdf.'"""
    return f"The paper is in {html}{f', as PDF in {pdf}' if pdf else ''}."


def tell(text: str) -> None:
    """Words for the shop on the error stream, so that what goes to the customer stands alone on the output."""
    if text:
        typer.echo(text.rstrip("\n"), err=True)


def write_pdf(path: Path, make: Callable[[], bytes], done: str, html: Path) -> None:
    """Write the PDF of a deed that is `done`. Where it fails all the same, the refusal says that the deed stands."""
    from ..basics.problem import Refused, problem

    try:
        write(path, make())
    except Refused as refusal:
        told = problem("pdf-failed-afterwards", done=done, html=html, pdf=path)
        raise Refused(told, *refusal.problems) from None


def show_bytes(pieces: Iterable[bytes]) -> None:
    """Print bytes as they are: what another program reads must not change with the terminal's encoding."""
    out = sys.stdout.buffer
    for piece in pieces:
        out.write(piece)
    out.flush()


def show_csv(rows: Iterable[Sequence[str]]) -> None:
    """Print rows as plain CSV: UTF-8, commas, double quotes where needed.

    A true copy of the supplier's file, for programs: text that begins like a formula is not changed here as it is in
    the papers meant for a spreadsheet.
    """
    show_bytes(_csv_pieces(rows))


def _csv_pieces(rows: Iterable[Sequence[str]]) -> Iterator[bytes]:
    kept = io.StringIO()
    writer = csv.writer(kept, lineterminator="\n")
    for row in rows:
        writer.writerow(row)
        if kept.tell() > 1_000_000:
            yield kept.getvalue().encode("utf-8", "replace")
            kept.seek(0)
            kept.truncate()
    yield kept.getvalue().encode("utf-8", "replace")


@contextmanager
def progress() -> Iterator[Callable[[str], None]]:
    """Where to tell the steps of long work: one line on a terminal's error stream that goes away at the end."""
    stream = sys.stderr
    if not stream.isatty():
        yield lambda _words: None
        return
    widest = 0

    def tell(words: str) -> None:
        nonlocal widest
        line = f"  {words} ..."
        stream.write("\r" + line.ljust(widest))
        stream.flush()
        widest = max(widest, len(line))

    try:
        yield tell
    finally:
        stream.write("\r" + " " * widest + "\r" if widest else "")
        stream.flush()
