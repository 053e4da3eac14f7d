"""Sections that look alike and are not, in words. A pair listed here is held back for a person, never taken as one.

Source: two belt glossaries (ARPM/RMA IP-20, IP-22) and published section tables: A and SPA are 12.7 to 13 mm wide,
but 8 and 10 mm deep; 3V and SPZ are 'approximate' equivalents, 9.5 against 9.7 to 10 mm. The other pairs by the same
tables: same width, other depth. One way, light duty to classical, is in compare_belts.py.
"""

_DEEPER = "about the same width but deeper"
LOOK_ALIKES: dict[frozenset[str], str] = {
    frozenset(("A", "SPA")): f"SPA is {_DEEPER} (10 mm against 8): not interchangeable",
    frozenset(("Z", "SPZ")): f"SPZ is {_DEEPER} (8 mm against 6): not interchangeable",
    frozenset(("B", "SPB")): f"SPB is {_DEEPER} (13 mm against 10.3 to 11): not interchangeable",
    frozenset(("C", "SPC")): f"SPC is {_DEEPER} (18 mm against 13.5 to 14): not interchangeable",
    frozenset(("3V", "SPZ")): "3V and SPZ are alike only approximately (9.5 against 9.7 to 10 mm wide)",
    frozenset(("5V", "SPB")): "5V and SPB are alike only approximately (15.9 against 16 to 16.3 mm wide)",
    frozenset(("A", "AA")): "AA is a double V-belt, for drives that bend both ways",
    frozenset(("B", "BB")): "BB is a double V-belt, for drives that bend both ways",
    frozenset(("C", "CC")): "CC is a double V-belt, for drives that bend both ways",
    frozenset(("D", "DD")): "DD is a double V-belt, for drives that bend both ways",
    frozenset(("E inch", "E")): "E by the inch is 38.1 mm wide, by the millimetre 40",
}
"""By the grooves the sections are made for. 'A' also stands for AX, 4L and 13, 'B' for BX, 5L and 17, and so on."""


def look_alike_words(one: str, other: str) -> str:
    """What keeps two grooves apart though their belts look alike; blank where nothing is listed."""
    return LOOK_ALIKES.get(frozenset((one, other)), "")
