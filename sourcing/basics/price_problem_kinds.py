"""The kinds of problem met when a price is worked out and a paper is made."""

from .problem_kind import ProblemKind, kind

PRICE_KINDS: dict[str, ProblemKind] = {
    "band-cliff": kind(
        "Dearer part sells for less",
        "shop.toml: {found}",
        "let the band start higher, or set floor_bands = true",
        at_counter="let the band start higher, or say that no dearer part may sell for less than a cheaper one",
        what_at_counter="{found}",
    ),
    "no-pdf": kind(
        "No PDF here",
        "a PDF can't be made on this machine ({found})",
        "leave out --pdf and print the HTML paper from a browser, or install the extra: "
        "pip install '.[pdf]' in this program's folder",
        at_counter="print the page from the browser instead",
    ),
    "pdf-failed-afterwards": kind(
        "PDF failed afterwards",
        "{done} and stays so, and its paper is in {html}; only the PDF {pdf} is missing",
        "don't repeat it; print {html} from a browser",
    ),
    "exempt-without-words": kind(
        "Free of tax without words",
        "{name} is marked as free of tax, but exempt_because is blank",
        "write in the job file what the customer's certificate says, or take tax_exempt out",
        at_counter="write what the customer's certificate says, or take out the tick that the customer pays no tax",
        what_at_counter="the customer is marked as free of tax, and what the certificate says is blank",
    ),
    "pinned-offer-gone": kind(
        "Decided offer gone",
        "line {label} of job {job} is to come from {supplier} under {found}, as decided, but can't be had now: {why}",
        "take another decision with 'sourcing decide {job} {label}'",
    ),
}
