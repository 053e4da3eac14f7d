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
    "exempt-without-words": kind(
        "Free of tax without words",
        "{name} is marked as free of tax, but exempt_because is blank",
        "write in the job file what the customer's certificate says, or take tax_exempt out",
    ),
    "pinned-offer-gone": kind(
        "Decided offer gone",
        "line {label} of job {job} is to come from {supplier} under {found}, as decided, but it can't be had now: {why}",
        "take another decision with 'sourcing decide {job} {label}'",
    ),
}
