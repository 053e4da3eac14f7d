"""A form is one deed however often it is sent: double clicks, the back button, a network that fell away."""

from collections.abc import Callable
from datetime import timedelta

from ..basics.problem import refused
from ..storage.people import begin_form, forget_form, forget_forms_before, form_done
from .desk import Desk

KEPT_FOR = timedelta(days=30)


def once(desk: Desk, form: str, deed: Callable[[], str]) -> str:
    """Do the deed of a form unless it was done; the page it led to, also for whoever sends the same form again.

    `form` is the random name its page was given. Where the deed is refused or fails the form may be sent again. Refuses
    while the first sending is still being done, or was cut off so that nobody knows: look before sending again.
    """
    with desk.store.writing() as connection:
        shown = begin_form(connection, form, desk.who, desk.at)
        if shown is None:
            forget_forms_before(connection, desk.at - KEPT_FOR)
    if shown:
        return shown
    if shown == "":
        raise refused("form-in-hand")
    try:
        page = deed()
    except BaseException:
        with desk.store.writing() as connection:
            forget_form(connection, form)
        raise
    with desk.store.writing() as connection:
        form_done(connection, form, page)
    return page
