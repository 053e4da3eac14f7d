"""Whether a list is for this machine: its model, and its range of serial numbers with both ends inclusive.

What can't be compared is not known; nobody's machine is guessed into a range.
"""

import re
from typing import Literal

from ...basics.evidence import Evidence
from ...basics.job import Machine
from ...basics.part_number import number_key
from ...basics.value import Value
from ..serials import serial_standing

_TOKEN = re.compile(r"[^\W_]+")


class Coverage(Value, frozen=True, kw_only=True):
    """'covers', 'other' (not about this machine) or 'unknown' (something must be read first), and why in words."""

    verdict: Literal["covers", "other", "unknown"]
    words: str = ""


COVERS = Coverage(verdict="covers")


def coverage(evidence: Evidence, machine: Machine) -> Coverage:
    """Whether the evidence is about this machine. A component's list is compared with the component's own tag."""
    component = evidence.kind == "component list"
    whose = "component" if component else "machine"
    model = machine.component_model if component else machine.model
    serial = machine.component_serial if component else machine.serial
    if evidence.model:
        if not (model or (component and machine.component)):
            return Coverage(
                verdict="unknown", words=f"the list is for {evidence.model}; the {whose}'s model is not noted"
            )
        if not _same_model(evidence.model, model, machine.component if component else ""):
            shown = model or machine.component
            return Coverage(verdict="other", words=f"the list is for {evidence.model}, the {whose} is {shown}")
    return _serial(evidence, serial, whose)


def _same_model(listed: str, model: str, in_words: str) -> bool:
    """The same key; where the component is noted in words only, its model must be a run of whole words among them."""
    key = number_key(listed)
    if model:
        return number_key(model) == key
    words = [word.upper() for word in _TOKEN.findall(in_words)]
    runs = {"".join(words[start:end]) for start in range(len(words)) for end in range(start + 1, len(words) + 1)}
    return key in runs


def _serial(evidence: Evidence, serial: str, whose: str) -> Coverage:
    low, high = evidence.serial_from, evidence.serial_to
    if not (low or high):
        return COVERS
    span = serial_span(low, high)
    standing = serial_standing(serial, low, high)
    if standing == "backwards":
        return Coverage(verdict="unknown", words=f"its range of serial numbers runs backwards ({span})")
    if not serial:
        return Coverage(verdict="unknown", words=f"the list is for {span}; the {whose}'s serial number is not noted")
    if standing in ("below", "above"):
        return Coverage(verdict="other", words=f"the list is for {span}; {serial} is {standing} it")
    if standing == "open":
        return Coverage(verdict="unknown", words=f"the list is for {span}; {serial} is numbered in another way")
    return COVERS


def serial_span(low: str, high: str) -> str:
    """'serial 1000 to 1999', 'serial 2000 and up', 'serial up to 1999'."""
    if low and high:
        return f"serial {low} to {high}"
    return f"serial {low} and up" if low else f"serial up to {high}"
