"""Two clocks: the shop's local moment on the supplier's clock and back, through the nights on which clocks change.

A moment is local time without a zone, as everywhere here. An hour that comes twice in one night is told apart by
the moment's `fold` (0: the first), an hour that is left out in spring is read as a clock not yet put forward.
"""

from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo, available_timezones

from rapidfuzz import fuzz, process

from ..basics.problem import Problem, problem

WITHOUT_AREA = ("UTC",)
"""Names without an area that are taken. EST and the like are not: they keep no summer time, and few who write them
mean that."""


def on_clock(moment: datetime, zone: str, other: str) -> datetime:
    """The shop's local moment in `zone` as local time in `other`, with its fold; unchanged where either is blank."""
    if not zone or not other or zone == other:
        return moment
    return moment.replace(tzinfo=ZoneInfo(zone)).astimezone(ZoneInfo(other)).replace(tzinfo=None)


def before_cut_off(moment: datetime, cut_off: time, zone: str) -> bool:
    """Whether a moment on the supplier's clock is not later than his cut-off of that day.

    A cut-off in the hour that comes twice is over when it has come once. A blank zone: plain clock time.
    """
    by_the_hand = moment.time() <= cut_off
    if not by_the_hand or not zone:
        return by_the_hand
    return _instant(moment, zone) <= _instant(datetime.combine(moment.date(), cut_off), zone)


def last_moment(day: date, cut_off: time, zone: str) -> datetime:
    """The last moment of that day, on the supplier's clock, that is before its cut-off.

    A cut-off inside the hour that is left out in spring is over a microsecond before the clock jumps.
    """
    at = datetime.combine(day, cut_off)
    if not zone or exists(at, zone):
        return at
    # The clock stood before the cut-off just before the jump and after it from then on: halve until the two meet.
    low, high = _instant(at.replace(fold=1), zone), _instant(at, zone)
    while high - low > timedelta(microseconds=1):
        middle = low + (high - low) / 2
        before = middle.astimezone(ZoneInfo(zone)).replace(tzinfo=None) <= at
        low, high = (middle, high) if before else (low, middle)
    return low.astimezone(ZoneInfo(zone)).replace(tzinfo=None)


def exists(moment: datetime, zone: str) -> bool:
    """Whether clocks in the zone ever show that moment: not in the hour that is left out in spring."""
    there = _instant(moment, zone).astimezone(ZoneInfo(zone))
    return there.replace(tzinfo=None, fold=0) == moment.replace(fold=0)


def is_doubled(moment: datetime, zone: str) -> bool:
    """Whether clocks in the zone show that moment twice."""
    return exists(moment, zone) and _instant(moment.replace(fold=0), zone) != _instant(moment.replace(fold=1), zone)


def zone_problems(name: str, whose: str) -> tuple[Problem, ...]:
    """What is wrong with the name of a time zone, with names near it; nothing for a good or a blank one.

    `whose` is for the sentence: 'the shop', "'stonegarth'".
    """
    if not name:
        return ()
    known = _zones()
    if name in known and ("/" in name or name in WITHOUT_AREA):
        return ()
    if not known:
        return (problem("no-time-zones", found=name, whose=whose),)
    return (problem("unknown-time-zone", found=name, whose=whose, suggestions=near_zones(name)),)


def near_zones(name: str) -> tuple[str, ...]:
    """Up to three names of zones like what was written: the city first ('berlin', 'New York'), then the spelling."""
    plain = {_plain(zone): zone for zone in sorted(_zones()) if "/" in zone and not zone.startswith("Etc/")}
    word = _plain(name)
    city = word.rsplit("/", 1)[-1]
    same = [zone for key, zone in plain.items() if city in (key, key.rsplit("/", 1)[-1])]
    near = [plain[key] for key, _, _ in process.extract(word, list(plain), scorer=fuzz.ratio, score_cutoff=70)]
    return tuple(dict.fromkeys([*same, *near]))[:3]


def _plain(name: str) -> str:
    return name.strip().lower().replace(" ", "_").replace("-", "_")


def _instant(moment: datetime, zone: str) -> datetime:
    return moment.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


@lru_cache(maxsize=1)
def _zones() -> frozenset[str]:
    return frozenset(available_timezones())
