"""What the fields of a job are called where a person fills them in, for what is told of them.

The words are those of the counter's forms; a test holds them together.
"""

from .form_words import in_form_words

LABELS = {
    "customer.name": "Customer",
    "customer.email": "E-mail",
    "customer.tax_exempt": "The customer pays no tax",
    "customer.exempt_because": "What the certificate says",
    "received_on": "Came in on",
    "need_by": "Parts wanted in the shop by",
    "ready_by": "Customer wants it back by",
    "title": "What is to be done",
    "hours": "Hours of work",
    "quantity": "Pieces",
    "labour_rate": "Labour per hour",
    "labour_flat": "or labour in all",
    "special_order": "Ordered specially",
    "category": "Category",
    "pieces": "Pieces in a set or kit",
    "what": "What was found",
}
FEES = {"name": "Fee {at}, before tax", "amount": "Amount of fee {at}"}


def job_label(field: str) -> str:
    """'E-mail' for 'customer.email', 'Line A: Hours of work' for 'add_ons.1.hours'. Others keep a file's name."""
    table, _dot, rest = field.partition(".")
    at, _dot, name = rest.partition(".")
    if table == "fees" and name in FEES:
        return FEES[name].format(at=at)
    label = LABELS.get(field) or LABELS.get(field.rpartition(".")[2])
    if label is None or table not in ("agreed", "add_ons"):
        return label or field
    return f"Line {at if table == 'agreed' else chr(ord('A') + int(at) - 1)}: {label}"


def as_filled_in(text: str) -> str:
    """What is wrong with a field, with others it names as the form calls them."""
    return in_form_words(text, LABELS)
