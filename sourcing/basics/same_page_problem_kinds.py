"""Kinds of problem met on the pages of the equivalence table."""

from .problem_kind import ProblemKind, kind

SAME_PAGE_KINDS: dict[str, ProblemKind] = {
    "table-not-held": kind(
        "No longer held",
        "the files of the table are not held any more",
        "choose them once more; nothing was changed",
    ),
    "table-changed-meanwhile": kind(
        "Not what was shown",
        "the table or what is asked of the file changed since you looked at it",
        "look through it again, it is shown as it stands now, and agree once more",
    ),
    "serial-without-machine": kind(
        "Which machine",
        "serial number {found} stands without a machine",
        "name the machine's model too: a serial number means something only within one model",
    ),
}
