"""The points a pair gets before anything is learnt: what each level of each respect is worth, in natural log-odds.

2.3 points more make a pair ten times likelier to be the same thing (the sum of weights of evidence of I. P. Fellegi
and A. B. Sunter, A Theory for Record Linkage, Journal of the American Statistical Association 64, 1969). The values
began as common practice, no source, and were fitted to made-up catalogues (`python -m tests.match_corpus.fit_points`
prints them); what a shop's own tables and its people's answers say moves them. No real catalogue was used.
"""

FIRST_POINTS: dict[str, tuple[float, ...]] = {
    "number": (2.8, 3.0, 1.9, 0.1, -0.7, -0.5, -2.6),
    "shared code": (1.5, 0.7, -0.2, -2.4, -0.1),
    "other codes": (1.1, -0.1, -1.2, -1.4),
    "maker": (0.2, 0.2, 0.2, -1.5),
    "shorter words": (0.8, 0.4, 0.0, -0.1, -0.5, -1.2),
    "longer words": (0.9, 0.5, 0.2, 0.1, -0.1, -0.3),
    "spelling": (0.1, 0.3, 0.4, 0.2, 0.0, -0.6),
    "measures": (0.7, 0.0, -1.8),
    "short numbers": (0.0, -0.1, -0.7),
    "colour": (0.6, -0.1, -0.6, -1.6),
    "side": (0.7, 0.0, -0.4, -1.9),
    "generation": (0.1, -0.4, -0.7, -1.6),
    "used": (0.7, -3.6),
    "made for another": (-0.2, -1.1),
    "kit": (0.0, -0.9),
    "number and words": (-0.3, -0.1, 0.1, -0.4, 0.0, -0.1, -0.1, 0.0, 0.6),
    "price": (2.2, 0.7, 0.8, 0.8, 0.3, 0.1, -2.0, -2.5),
}

START = -2.6
"""Before any evidence."""

LEADS_BESIDE: dict[str, tuple[float, ...]] = {
    "number": (1.8, 2.0, 1.3, 0.2, -0.6, -0.5, -1.5),
    "shared code": (0.6, 0.2, 0.1, -1.3, 0.2),
    "other codes": (0.6, 0.0, -0.7, -1.0),
    "maker": (0.1, 0.1, 0.1, -1.0),
    "shorter words": (0.5, 0.3, 0.0, -0.1, -0.4, -0.8),
    "longer words": (0.6, 0.3, 0.1, 0.1, 0.0, -0.1),
    "spelling": (0.0, 0.1, 0.2, 0.2, 0.1, -0.4),
    "measures": (0.4, 0.0, -1.3),
    "short numbers": (-0.1, 0.0, -0.5),
    "colour": (0.4, 0.0, -0.4, -1.2),
    "side": (0.5, 0.0, -0.3, -1.4),
    "generation": (0.0, -0.3, -0.4, -1.1),
    "used": (0.6, -2.6),
    "made for another": (-0.1, -0.9),
    "kit": (0.0, -0.6),
    "number and words": (-0.2, -0.2, -0.1, -0.3, 0.0, 0.1, 0.0, 0.0, 0.4),
    "price": (1.5, 0.4, 0.5, 0.5, 0.3, 0.2, -1.4, -1.8),
}

START_WITH_LEADS = -2.5

LEAD_POINTS = ((1.6, 1.2, 0.6, 0.2, -0.3, -0.6, -1.2, -2.1), (1.1, 0.7, 0.6, 0.4, 0.1, -0.4, -0.8, -2.3))
"""For the lead before the best other part of the row, and before the best other row of the part."""
