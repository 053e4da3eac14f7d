"""What the size of a part of ours means to the program: by it an offer of another size is held back."""

from ..basics.equivalence import OurPart
from ..basics.our_part import SizeRead
from ..matching.dimensions.reading import read_names
from ..matching.dimensions.text import plain, spoken_of


def size_read(part: OurPart) -> SizeRead:
    """How the part's size reads, or its name where it has none, as the comparison of sizes takes it.

    The doubt says that nothing can be compared with it, or that the category speaks of another kind of thing.
    """
    names = read_names(part.size or part.name, certain=bool(part.size))
    if not names:
        return SizeRead(doubt=_unread(part))
    reads, spoken = tuple(one.words() for one in names), spoken_of(plain(part.category))
    if spoken and not spoken & {one.family for one in names}:
        doubt = f"the size reads as a {names[0].family}, and the category is '{part.category}'"
        return SizeRead(reads_as=reads, doubt=doubt)
    return SizeRead(reads_as=reads)


def _unread(part: OurPart) -> str:
    if part.size:
        return (
            f"'{part.size}' is no size of a belt, a bearing or a chain that the program can read, so no offer is held "
            "back for its size"
        )
    if spoken_of(plain(f"{part.name} {part.category}")):
        return "it has no size, so no offer is held back for its size"
    return ""
