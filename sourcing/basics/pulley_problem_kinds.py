"""The kinds of problem met when a belt's length is worked out from two pulleys."""

from .problem_kind import ProblemKind, kind

PULLEY_KINDS: dict[str, ProblemKind] = {
    "pulley-not-positive": kind(
        "Diameter or length not above zero",
        "{what} is given as {found}",
        "measure again and give a figure above zero",
    ),
    "pulleys-overlap": kind(
        "Pulleys overlap",
        "a centre distance of {found} is less than half the sum of the diameters ({least}): the pulleys would overlap",
        "measure the centre distance from shaft to shaft and try again",
    ),
    "belt-too-short": kind(
        "Belt too short for the pulleys",
        "a belt of {found} does not reach round the pulleys: with them touching it needs {least}",
        "check the diameters, the length and whether both are of the same kind (inside, datum, outside)",
    ),
    "centres-or-length": kind(
        "Centre distance or length",
        "one of centre distance and belt length must be given, the other is worked out",
        "fill in one of the two and leave the other blank",
    ),
}
