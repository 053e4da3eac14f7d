"""Photos of a job: taken with the phone, shown, taken out and put back."""

from flask import Blueprint, Response, abort, g, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.job_edit import opened
from ...actions.photos import keep_photo, photo, put_photo_back, take_photo_out
from ...basics.problem import refused
from ..desks import desk
from ..forms import deed, tell, text
from ..guard import EVERYBODY, open_to
from ..headers import FILE
from ..show import show
from ..words import _

blueprint = Blueprint("photos", __name__)


@blueprint.get("/photos/<int:number>.jpg")
@open_to(*EVERYBODY)
def photo_file(number: int) -> ResponseReturnValue:
    """A photo: never anything but a picture to the browser."""
    jpeg = photo(desk(), number)
    if jpeg is None:
        abort(404)
    g.policy = FILE
    return Response(jpeg, content_type="image/jpeg")


@blueprint.route("/jobs/<job>/new-photo", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def new_photo_page(job: str) -> ResponseReturnValue:
    """Add a photo to the job or one of its lines."""
    if request.method == "POST" and (gone := deed(lambda: _keep(job))):
        return gone
    one = opened(desk(), job)[0]
    return show("jobs/new_photo.html", one=one, lines=one.labelled(), label=request.args.get("line", ""))


@blueprint.post("/photos/<int:number>/take-out")
@open_to(*EVERYBODY)
def photo_out(number: int) -> ResponseReturnValue:
    """Show a photo no more; it can be put back."""

    def out() -> str:
        one = take_photo_out(desk(), number)
        tell(_("The photo is taken out."), undo=url_for("photos.back_page", number=number))
        return url_for("jobs.job_page", job=one.job)

    return deed(out) or show("told.html", heading="", sentence="")


@blueprint.route("/photos/<int:number>/put-back", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def back_page(number: int) -> ResponseReturnValue:
    """Put a photo back that was taken out."""

    def back() -> str:
        one = put_photo_back(desk(), number)
        tell(_("The photo is shown again."))
        return url_for("jobs.job_page", job=one.job)

    if request.method == "POST" and (gone := deed(back)):
        return gone
    return show("jobs/photo_back.html", number=number)


def _keep(job: str) -> str:
    sent = request.files.get("photo")
    content = sent.read() if sent else b""
    if not content:
        raise refused("not-a-photo", found=_("no file was sent"))
    keep_photo(desk(), job, text("line"), text("caption"), content)
    tell(_("The photo is kept, without the place where it was taken."))
    return url_for("jobs.job_page", job=job)
