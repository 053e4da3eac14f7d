"""A job: whose machine, what is wrong, which parts and hours it calls for, what tear-down found beside it."""

from datetime import date
from decimal import Decimal

from .asked import Asked
from .evidence import AcceptedAnyway, Evidence
from .problem import refused
from .value import Value


class Customer(Value, frozen=True, kw_only=True):
    """Who pays and how to reach them. `may_also_approve`: others entitled to say yes, named in advance."""

    name: str
    telephone: str = ""
    email: str = ""
    may_also_approve: tuple[str, ...] = ()


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


class JobLine(Value, frozen=True, kw_only=True):
    """One thing to do: a part and quantity (or none), hours of labour, and for the customer what and why.

    `found`, `why` and `if_declined` are asked of an add-on, so that the customer can decide. `evidence` is what speaks
    for the part, `asked` what this need asks of it beside what our part asks anyway, `overrides` are rejected offers
    that a person took for this line all the same.
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

    def __post_init__(self) -> None:
        wrong = ""
        if bool(self.part) != (self.quantity > 0):
            wrong = f"'{self.title}' needs both a part and a quantity of at least 1, or neither"
        if self.hours < 0:
            wrong = f"'{self.title}' has hours below zero"
        if wrong:
            raise refused("job-contradicts", found=wrong)


class Job(Value, frozen=True, kw_only=True):
    """What a job file holds. `number` is given when the job is taken in ('2026-0001'), blank in the file.

    `agreed` is the work the customer brought the machine in for, `add_ons` what was found afterwards.
    `need_by`: the day the parts must be in the shop.
    """

    customer: Customer
    machine: Machine
    complaint: str
    agreed: tuple[JobLine, ...]
    add_ons: tuple[JobLine, ...] = ()
    received_on: date
    need_by: date | None = None
    number: str = ""

    def __post_init__(self) -> None:
        if not self.agreed:
            raise refused("job-contradicts", found="the job has no agreed line")
        if len(self.add_ons) > 26:
            raise refused("job-contradicts", found="a job holds at most 26 add-ons, A to Z")

    def labelled(self) -> tuple[tuple[str, JobLine], ...]:
        """Every line with its label: agreed lines '1', '2'..., add-ons 'A', 'B'..."""
        agreed = [(str(at), line) for at, line in enumerate(self.agreed, 1)]
        return (*agreed, *((chr(ord("A") + at), line) for at, line in enumerate(self.add_ons)))
