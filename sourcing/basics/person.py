"""A person of the shop as the counter knows her, the customer's link, photos, and what a form did already."""

from datetime import datetime
from typing import Literal

from .value import Value

Role = Literal["technician", "clerk", "owner"]
"""Technician: never a cost or a margin. Clerk: costs too. Owner: margins, settings and people too."""


class Person(Value, frozen=True, kw_only=True):
    """Somebody who may log in. Her name signs the deeds. `let_go` None: she may still log in."""

    person: int
    name: str
    role: Role
    since: datetime
    let_go: datetime | None = None


class CustomerLink(Value, frozen=True, kw_only=True):
    """A link by which the customer reads one revision and answers it once. The secret in it is never kept.

    `until` is the last moment it opens. `answered_at`: it shows what was answered and takes no more answers.
    """

    link: int
    job: str
    revision: int
    made_at: datetime
    made_by: str
    until: datetime
    revoked_at: datetime | None = None
    revoked_by: str = ""
    answered_at: datetime | None = None


class Signature(Value, frozen=True, kw_only=True):
    """How an answer on the customer's page was signed: the name typed, and the drawing as PNG where one was drawn."""

    link: int
    job: str
    revision: int
    at: datetime
    name: str
    drawing: bytes = b""


class Photo(Value, frozen=True, kw_only=True):
    """A photo of a job, made anew from what was sent so that nothing but the picture is in it. `name` as lines cite it.

    `label`: of which line of the job it is; blank: of the job. `taken_out_at`: it is shown no more.
    """

    photo: int
    job: str
    label: str
    caption: str
    at: datetime
    who: str
    width: int
    height: int
    taken_out_at: datetime | None = None

    @property
    def name(self) -> str:
        """What lines of the job call it."""
        return f"photo {self.photo}"
