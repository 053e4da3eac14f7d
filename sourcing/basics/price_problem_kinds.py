"""The kinds of problem met when a price is worked out and a paper is made."""

from .problem_kind import ProblemKind, kind

PRICE_KINDS: dict[str, ProblemKind] = {
    "band-cliff": kind(
        "Dearer part sells for less",
        "shop.toml: {found}",
        "let the band start higher, or set floor_bands = true",
    ),
    "no-pdf": kind(
        "No PDF here",
        "a PDF can't be made on this machine ({found})",
        "install the extra with pip install 'parts-sourcing[pdf]', or open the HTML paper in a browser and print it",
    ),
}
