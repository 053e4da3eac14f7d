"""Whatever the text: nothing is raised, the quick look misses nothing, and comparing does not hang on who asks."""

from hypothesis import given, settings
from hypothesis import strategies as some

from sourcing.matching.dimensions.compare import compare_sizes
from sourcing.matching.dimensions.reading import may_hold_size, read_names, read_size
from sourcing.matching.dimensions.size_check import check_size
from sourcing.matching.dimensions.text import plain, spoken_of

_PIECES = (
    "A36 B36 BX36 AA51 CC75 E144 4L390 5L390 3V600 9N1500 SPA1250 13x1000 Li La Lw 17x1473 13 x 40 6PK2120 845K8 "
    "540L 300L075 900-5M-15 1422V480 5/8 91-1/2 1/0 6203 6203-2RS 608ZZ C3 NR -10 /22 #40 41 08B-1 420 H -2 links "
    "44 10ft 5m 2/B36 3/5V850 joined banded 2-strand duplex 17x40x12 1/2x5/16 R8 T5-500-16 AT10/1250 "
    "snap-ring BRNG belt chain bearing Lager Riemen keeper housing × – ½ \" ' . , - / ² ٣ ß"
)
PIECES = some.sampled_from(_PIECES.split())
TEXTS = some.one_of(
    some.text(max_size=40),
    some.lists(PIECES, max_size=6).map(" ".join),
    some.lists(PIECES, max_size=6).map("".join),
)
_DESIGNATIONS = (
    "A36 A37 AX36 B36 B37 4L380 4L384 5L390 5L394 5L396 3L380 C240 D220 E144 3V600 3V603 3VX600 9N1524 SPA1250 "
    "SPA1262 XPA1250 SPZ1524 13x914Li 13x920Li 13x926Li 13x944Lw 13x964La 13x1000 13x950 17x914Li 17x990La "
    "40x3658Li AA51 CC75 CC76 6PK2120 6PK2123 8PK2146 845K8 540L10 540L 300L075 300L100 900-5M-15 900-5M 1422V480 "
    "1422V482 5/8x36 5/8x39 1/2x38 9.5x914La 6203 6203-2RS 6203ZZ 6203-2RSC3 6203-5/8 6203-10 6203NR 6204 608 #40 "
    "#41 #40H 40-2 08B-1 08A #420 #40x44links #40x10ft #40x44 #40x240 1/2x5/16 1/2x1/8 2/B36 3/B36 2/5V850 5V850 "
    "15J2160 3/15J2160 T5-500-16 AT5-500-16 T5/500 500-5M-16 R8 R8-2RS R10ZZ 17x40x12 17x42x12 61803 6803"
)
DESIGNATIONS = some.sampled_from(_DESIGNATIONS.split())


@given(TEXTS, TEXTS, some.booleans())
@settings(max_examples=400, deadline=None)
def test_nothing_is_raised_and_the_quick_look_misses_nothing(one: str, other: str, certain: bool) -> None:
    """Any text, read as text and as designation."""
    read_size(one, certain)
    check_size(one, other, one + other)
    assert may_hold_size(one) or (read_size(one) is None and not spoken_of(plain(one)))


@given(DESIGNATIONS, DESIGNATIONS)
@settings(max_examples=1500, deadline=None)
def test_the_verdict_does_not_hang_on_who_asks(one: str, other: str) -> None:
    """Same verdict and same caution either way; only the words differ."""
    (mine,), (theirs,) = read_names(one, certain=True), read_names(other, certain=True)
    there, back = compare_sizes(mine, theirs), compare_sizes(theirs, mine)
    assert (there.verdict, there.doubtful) == (back.verdict, back.doubtful)


@given(DESIGNATIONS)
def test_a_designation_agrees_with_itself_or_does_not_say_enough(text: str) -> None:
    """Never different from itself, never other duty, and nothing to be held back but what was in doubt."""
    (size,) = read_names(text, certain=True)
    check = compare_sizes(size, size)
    assert check.verdict in ("same size", "cannot be compared") and not check.vetoes
