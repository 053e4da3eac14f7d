"""A job: whose machine, what is wrong, which parts and hours it calls for, what tear-down found beside it."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .asked import Asked
from .evidence import AcceptedAnyway, Evidence
from .problem import refused
from .value import Value


class Customer(Value, frozen=True, kw_only=True):
    """Who pays and how to reach them. `may_also_approve`: others entitled to say yes, named in advance.

    `text_number` is where messages go, where it is not the telephone. `exempt_because`: the words of the certificate
    that frees the customer from tax; they stand on the papers, and the shop keeps the certificate.
    """

    name: str
    telephone: str = ""
    email: str = ""
    may_also_approve: tuple[str, ...] = ()
    text_number: str = ""
    address: tuple[str, ...] = ()
    tax_exempt: bool = False
    exempt_because: str = ""


class Machine(Value, frozen=True, kw_only=True):
    """What lies on the bench; `component` is a part of it with a maker, a model and a serial number of its own.

    `component` is in words; the three fields beside it are what its tag says.
    """

    description: str
    maker: str = ""
    model: str = ""
    serial: str = ""
    component: str = ""
    component_maker: str = ""
    component_model: str = ""
    component_serial: str = ""


class Finding(Value, frozen=True, kw_only=True):
    """Something seen at tear-down, with the names of the photos that show it. It asks for nothing by itself."""

    what: str
    photos: tuple[str, ...] = ()
    found_on: date | None = None
    found_by: str = ""


class JobFee(Value, frozen=True, kw_only=True):
    """A fee of this job alone (a pick-up of the machine, say), in the shop's currency, before tax. Its own line."""

    name: str
    amount: Decimal
    why: str = ""


class JobLine(Value, frozen=True, kw_only=True):
    """One thing to do: a part and quantity (or none), hours of labour, and for the customer what and why.

    `found`, `why` and `if_declined` are asked of an add-on, so that the customer can decide. `evidence` is what speaks
    for the part, `asked` what this need asks of it beside what our part asks anyway, `overrides` are rejected offers
    that a person took for this line all the same.

    `hours` are what the work takes; they are priced at `labour_rate` (the shop's where None), or at `labour_flat` in
    all where that is given, before tax. `category` picks the markup bands (blank: our part's, else the general ones).
    `special_order` None: not stated. `photos` are file names.
    """

    title: str
    part: str = ""
    quantity: int = 0
    hours: Decimal = Decimal(0)
    found: str = ""
    why: str = ""
    if_declined: str = ""
    evidence: tuple[Evidence, ...] = ()
    asked: Asked = Asked()
    overrides: tuple[AcceptedAnyway, ...] = ()
    category: str = ""
    labour_rate: Decimal | None = None
    labour_flat: Decimal | None = None
    special_order: bool | None = None
    photos: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        wrong = ""
        if bool(self.part) != (self.quantity > 0):
            wrong = f"'{self.title}' needs both a part and a quantity of at least 1, or neither"
        if self.hours < 0:
            wrong = f"'{self.title}' has hours below zero"
        if self.labour_rate is not None and self.labour_flat is not None:
            wrong = f"'{self.title}' has both a labour rate and a flat price of labour"
        if min(self.labour_rate or 0, self.labour_flat or 0) < 0:
            wrong = f"'{self.title}' has labour priced below zero"
        if wrong:
            raise refused("job-contradicts", found=wrong)


class Job(Value, frozen=True, kw_only=True):
    """What a job file holds. `number` is given when the job is taken in ('2026-0001'), blank in the file.

    `agreed` is the work the customer brought the machine in for, `add_ons` what was found afterwards.
    `need_by`: the day the parts must be in the shop; `ready_by`: the day the customer wants the machine back.
    `freight_to_customer` blank: as the shop's settings say.
    """

    customer: Customer
    machine: Machine
    complaint: str
    agreed: tuple[JobLine, ...]
    add_ons: tuple[JobLine, ...] = ()
    received_on: date
    need_by: date | None = None
    number: str = ""
    findings: tuple[Finding, ...] = ()
    fees: tuple[JobFee, ...] = ()
    freight_to_customer: Literal["", "billed", "carried"] = ""
    ready_by: date | None = None

    def __post_init__(self) -> None:
        if not self.agreed:
            raise refused("job-contradicts", found="the job has no agreed line")
        if len(self.add_ons) > 26:
            raise refused("job-contradicts", found="a job holds at most 26 add-ons, A to Z")

    def labelled(self) -> tuple[tuple[str, JobLine], ...]:
        """Every line with its label: agreed lines '1', '2'..., add-ons 'A', 'B'..."""
        agreed = [(str(at), line) for at, line in enumerate(self.agreed, 1)]
        return (*agreed, *((chr(ord("A") + at), line) for at, line in enumerate(self.add_ons)))
