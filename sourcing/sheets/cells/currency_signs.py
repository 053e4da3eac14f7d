"""Signs of currencies on price sheets, and the ISO 4217 codes each may stand for (common practice, no source)."""

DOLLARS = frozenset({"USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"})
CROWNS = frozenset({"SEK", "NOK", "DKK", "ISK"})
SIGNS = {
    "€": frozenset({"EUR"}), "£": frozenset({"GBP"}), "$": DOLLARS, "us$": frozenset({"USD"}),
    "c$": frozenset({"CAD"}), "ca$": frozenset({"CAD"}), "a$": frozenset({"AUD"}), "au$": frozenset({"AUD"}),
    "nz$": frozenset({"NZD"}), "kr": CROWNS, "kr.": CROWNS, "fr.": frozenset({"CHF"}), "sfr.": frozenset({"CHF"}),
    "sfr": frozenset({"CHF"}), "zł": frozenset({"PLN"}), "kč": frozenset({"CZK"}), "¥": frozenset({"JPY", "CNY"}),
    "euro": frozenset({"EUR"}), "euros": frozenset({"EUR"}), "₹": frozenset({"INR"}),
}  # fmt: skip
"""What a sign may stand for. A sign that is not here (R$) makes the price unreadable."""
