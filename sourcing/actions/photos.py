"""Photos of a job: made anew from what a phone sent, so that nothing but the picture is kept.

A phone writes into a photo where it was taken (Exif 2.3, GPS attributes). Only the pixels are taken over, turned
upright as the camera says; a file that is a picture and something else beside it loses the something else.
"""

import io

from PIL import Image, ImageOps, UnidentifiedImageError
from sqlalchemy import Connection

from ..basics.job import Job
from ..basics.person import Photo
from ..basics.problem import refused
from ..basics.value import changed
from ..storage.after_quote import bill_of
from ..storage.jobs import change_job
from ..storage.jobs import job as stored_job
from ..storage.links import add_photo, photo_bytes, photos, take_photos_out
from .desk import Desk
from .needs import keep_line, line_of

FORMATS = ("JPEG", "PNG", "WEBP")
MOST_PIXELS = 60_000_000
"""What phones' cameras make, with room: a larger picture is refused before it is unpacked."""

MOST_BYTES = 30_000_000
SIDE, QUALITY = 1600, 82
"""Longest side in pixels and JPEG quality: a part's number can be read, and a phone loads it in a second."""


def keep_photo(desk: Desk, number: str, label: str, caption: str, sent: bytes) -> Photo:
    """Keep a photo of a job's line (`label` blank: of the job itself); the line cites it by its name.

    Refuses what is no JPEG, PNG or WebP picture, one that is too large, a line the job has not, and a billed job.
    """
    jpeg, size = made_anew(sent)
    with desk.writing("add photo") as pen:
        job = stored_job(pen.connection, number)
        _refuse_billed(pen.connection, number)
        if label:
            line_of(job, label)
        new = Photo(
            photo=0,
            job=number,
            label=label,
            caption=caption.strip()[:200],
            at=desk.at,
            who=desk.who,
            width=size[0],
            height=size[1],
        )
        kept = add_photo(pen.connection, new, jpeg)
        _cite(pen.connection, job, label, kept.name, True)
        pen.note(number, f"{kept.name} added{f' to line {label}' if label else ''}")
        return kept


def take_photo_out(desk: Desk, number: int) -> Photo:
    """Show a photo no more, on the job and on links of the customer."""
    return _shown(desk, number, False)


def put_photo_back(desk: Desk, number: int) -> Photo:
    """Show a photo again that was taken out."""
    return _shown(desk, number, True)


def photos_of(desk: Desk, number: str) -> tuple[Photo, ...]:
    """The photos of a job that are shown, oldest first, each with the label of the line that cites it."""
    with desk.store.reading() as connection:
        cited = {name: label for label, line in stored_job(connection, number).labelled() for name in line.photos}
        shown = (one for one in photos(connection, number) if one.taken_out_at is None)
        return tuple(changed(one, label=cited.get(one.name, "")) for one in shown)


def photo(desk: Desk, number: int) -> bytes | None:
    """The JPEG of a photo that is shown, else None."""
    with desk.store.reading() as connection:
        found = photo_bytes(connection, number)
    return found[1] if found and found[0].taken_out_at is None else None


def made_anew(sent: bytes) -> tuple[bytes, tuple[int, int]]:
    """The picture as a JPEG with nothing else in it, at most SIDE pixels long, and its size. Refuses what is none."""
    if len(sent) > MOST_BYTES:
        raise refused("photo-too-large", found=f"{len(sent) // 1_000_000} MB", most=f"{MOST_BYTES // 1_000_000} MB")
    try:
        with Image.open(io.BytesIO(sent), formats=FORMATS) as opened:
            pixels = opened.width * opened.height
            if pixels > MOST_PIXELS:
                raise refused(
                    "photo-too-large",
                    found=f"{opened.width} x {opened.height} pixels",
                    most=f"{MOST_PIXELS // 1_000_000} million",
                )
            opened.draft("RGB", (SIDE, SIDE))  # a JPEG is unpacked no larger than needed
            upright = ImageOps.exif_transpose(opened).convert("RGB")
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):  # far more than a camera makes
        raise refused("photo-too-large", found="too many pixels", most=f"{MOST_PIXELS // 1_000_000} million") from None
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError):
        raise refused("not-a-photo", found="it is no picture, or not all of it came") from None
    upright.thumbnail((SIDE, SIDE))
    plain = Image.new("RGB", upright.size)
    plain.paste(upright)
    out = io.BytesIO()
    plain.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue(), plain.size


def _shown(desk: Desk, number: int, is_shown: bool) -> Photo:
    with desk.writing("put photo back" if is_shown else "take photo out") as pen:
        found = photo_bytes(pen.connection, number)
        if found is None:
            raise refused("no-such-photo", job="", found=number)
        one = found[0]
        _refuse_billed(pen.connection, one.job)
        take_photos_out(pen.connection, [number], None if is_shown else desk.at)
        job = stored_job(pen.connection, one.job)
        if one.label in dict(job.labelled()) or not one.label:
            _cite(pen.connection, job, one.label, one.name, is_shown)
        pen.note(one.job, f"{one.name} {'shown again' if is_shown else 'taken out'}")
        return changed(one, taken_out_at=None if is_shown else desk.at)


def _cite(connection: Connection, job: Job, label: str, name: str, is_shown: bool) -> None:
    """The line of that label names the photo, or no longer; of a blank label nothing does."""
    for of, line in job.labelled():
        others = tuple(photo for photo in line.photos if photo != name)
        wanted = (*others, name) if is_shown and of == label else others
        if wanted != line.photos:
            keep_line(connection, job, of, changed(line, photos=wanted))
            return
    change_job(connection, job)


def _refuse_billed(connection: Connection, number: str) -> None:
    if bill_of(connection, number) is not None:
        raise refused("billed-stays", job=number, found="its photos stay as they are")
