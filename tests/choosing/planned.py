"""A trial planned by the product: the same join of steps that a job's needs or a basket go through."""

from sourcing.actions.plan_offers import Place, Wanted, planned
from sourcing.basics.plan import Plan
from tests.choosing.trial import Trial


def plan_of(trial: Trial) -> Plan:
    """The plan; every offer is taken to be the right part."""
    offers = {
        need.label: [Wanted(offer, need.quantity) for offer in trial.offers.get(need.label, ())] for need in trial.needs
    }
    return planned(trial.needs, offers, Place(trial.doors, trial.at, "USD"), trial.wishes)
