"""The points a pair gets before anything is learnt: what each level of each respect is worth, in natural log-odds.

2.3 points more make a pair ten times likelier to be the same thing (the sum of weights of evidence of I. P. Fellegi
and A. B. Sunter, A Theory for Record Linkage, Journal of the American Statistical Association 64, 1969). The values
began as common practice, no source, and were fitted to made-up catalogues (`python -m tests.match_corpus.fit_points`
prints them); what a shop's own tables and its people's answers say moves them. No real catalogue was used.
"""

FIRST_POINTS: dict[str, tuple[float, ...]] = {
    "number": (3.3, 2.6, 1.7, 0.0, -0.8, -0.1, -2.4, -2.3),
    "shared code": (2.2, 1.0, -0.2, -3.3, -0.6),
    "other codes": (1.5, 0.0, -1.4, -2.1),
    "maker": (0.1, 0.2, 0.0, -1.6),
    "shorter words": (0.6, 0.4, 0.0, -0.2, -0.7, -1.1),
    "longer words": (0.3, 0.4, 0.2, 0.2, 0.0, -0.3),
    "spelling": (-0.1, 0.3, 0.3, -0.1, -0.3, -0.3),
    "measures": (0.4, 0.0, -2.1),
    "short numbers": (-0.5, -0.1, -0.7),
    "colour": (0.8, 0.0, -1.0, -2.0),
    "side": (0.4, 0.1, -0.4, -2.2),
    "generation": (0.0, -0.5, -0.9, -1.5),
    "used": (1.9, -5.3),
    "made for another": (-0.3, -1.5),
    "kit": (-0.2, -1.2),
    "number and words": (-0.3, -0.2, 0.2, -0.5, -0.1, -0.2, -0.3, -0.1, 0.5),
    "price": (2.9, 0.5, 1.2, 1.1, 0.7, 0.3, -3.2, -3.7),
}

START = -3.1
"""Before any evidence."""

LEADS_BESIDE: dict[str, tuple[float, ...]] = {
    "number": (2.4, 1.7, 1.1, 0.1, -0.7, -0.1, -1.4, -1.7),
    "shared code": (1.2, 0.3, 0.2, -2.1, -0.3),
    "other codes": (1.1, 0.0, -1.2, -1.4),
    "maker": (0.0, 0.2, 0.0, -1.2),
    "shorter words": (0.4, 0.3, 0.0, -0.2, -0.4, -0.8),
    "longer words": (0.2, 0.3, 0.1, 0.1, 0.0, -0.2),
    "spelling": (-0.2, 0.1, 0.2, 0.0, -0.1, -0.1),
    "measures": (0.2, 0.0, -1.5),
    "short numbers": (-0.4, 0.0, -0.5),
    "colour": (0.6, 0.0, -0.7, -1.5),
    "side": (0.4, 0.0, -0.3, -1.7),
    "generation": (0.0, -0.5, -0.7, -1.0),
    "used": (1.8, -4.2),
    "made for another": (-0.2, -1.1),
    "kit": (-0.1, -0.9),
    "number and words": (-0.1, -0.2, -0.1, -0.4, -0.1, 0.0, -0.2, 0.0, 0.4),
    "price": (2.2, 0.5, 0.8, 0.9, 0.7, 0.3, -2.6, -3.0),
}

START_WITH_LEADS = -2.8

LEAD_POINTS = ((1.4, 0.8, 0.4, 0.2, -0.1, -0.4, -1.0, -2.3), (0.5, 0.4, 0.3, 0.2, 0.0, 0.0, -0.6, -1.8))
"""For the lead before the best other part of the row, and before the best other row of the part."""

WORDS_ALONE: dict[str, tuple[float, ...]] = {
    "shorter words": (0.8, 0.4, 0.0, -0.1, -0.5, -1.2),
    "longer words": (0.9, 0.5, 0.2, 0.1, -0.1, -0.3),
    "spelling": (0.1, 0.3, 0.4, 0.2, 0.0, -0.6),
    "measures": (0.7, 0.0, -1.8),
    "short numbers": (0.0, -0.1, -0.7),
    "colour": (0.6, -0.1, -0.6, -1.6),
    "side": (0.7, 0.0, -0.4, -1.9),
    "used": (0.7, -3.6),
    "price": (2.2, 0.7, 0.8, 0.8, 0.3, 0.1, -2.0, -2.5),
}
"""What is left of a pair without its number, to see whether another part is nearer by its words. Held apart from the
points above, so that fitting them anew can't loosen what keeps a wrong part from matching by itself."""
