"""The kinds of problem of cells that say how large a piece is in its package."""

from .problem_kind import ProblemKind, kind

UNIT = "write the unit into the header, such as Package length (in), and take the file in again"

PACKAGE_KINDS: dict[str, ProblemKind] = {
    "length-unreadable": kind(
        "Length unreadable",
        "'{found}' is no length",
        "correct the cell and take the file in again, or ask the supplier",
    ),
    "length-unclear": kind(
        "Length unclear",
        "'{found}' can be read two ways, and no other cell of the column shows the decimal mark",
        "write the length with two decimals and take the file in again",
    ),
    "length-unit-unknown": kind(
        "Unit of the length unknown",
        "neither '{found}' nor the header says whether it is in cm, mm, m, inches or feet",
        UNIT,
    ),
    "dimensions-unreadable": kind(
        "Package dimensions unreadable",
        "'{found}' is no length, width and height",
        "write all three with their unit, such as 30 x 20 x 4 cm, and take the file in again",
    ),
    "package-of-several": kind(
        "Package of several pieces",
        "'{found}' is the size of a package of {pack}, and not of one piece",
        "give the size of one piece, or ask the supplier",
    ),
}
