"""Which nodes hang together, one way or both ways: linear in the number of links, for tables of any size."""

from collections.abc import Sequence

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components


def components(count: int, starts: Sequence[int], ends: Sequence[int], *, both_ways: bool = False) -> list[int]:
    """A label for each of `count` nodes: equal where links join them, whatever their direction.

    `both_ways`: equal only where each can be reached from the other, following the links' direction; so two nodes with
    one label lie on a loop. Labels are any whole numbers from 0. scipy's search is iterative: depth is no matter.
    """
    if not count:
        return []
    links = coo_array((np.ones(len(starts), dtype=np.int8), (starts, ends)), shape=(count, count))
    found = connected_components(links.tocsr(), connection="strong" if both_ways else "weak")
    labels: list[int] = found[1].tolist()
    return labels
