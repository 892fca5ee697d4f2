"""A limit that several people at one table hold, each with their own figure and share of the dish."""

from decimal import ROUND_DOWN, Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.tables.cap_rows import Cap

_PLACES = Decimal("0.0001")


class PersonCap(NamedTuple):
    """One person's limit (g), and how many equal shares of the dish are one of theirs: 1 for a usual appetite.

    With `shares` above 1 they eat less than an equal share. `counts_past` says whether a log of theirs counts.
    """

    who: str
    typical_g: Decimal
    at_most_g: Decimal | None
    shares: Fraction
    counts_past: bool


class TableCap(Cap):
    """The strictest of several people's limits for an equal share, and each of them."""

    persons: tuple[PersonCap, ...]


def table_cap(caps: list[tuple[PersonCap, Cap]]) -> TableCap:
    """One limit of what several people hold under one key."""
    first = caps[0][1]
    typical = min(_scaled(one.typical_g, one.shares) for one, _ in caps)
    bounds = [_scaled(one.at_most_g, one.shares) for one, _ in caps if one.at_most_g is not None]
    return TableCap.model_construct(
        profile=first.profile, scope=first.scope, group=first.group, sittings=(), applies_to=first.applies_to,
        source=first.source, typical_g=typical, at_most_g=max(typical, min(bounds)) if bounds else None,
        persons=tuple(one for one, _ in caps),
    )  # fmt: skip


def with_more(cap: Cap, more_g: Decimal) -> Cap:
    """The same limit with a little more room, and the same factor between what is likely and what may come at most."""
    typical = cap.typical_g + more_g
    most = None if cap.at_most_g is None else cap.at_most_g * typical / cap.typical_g
    wider = cap.model_copy(update={"typical_g": typical, "at_most_g": most})
    if isinstance(cap, TableCap):
        persons = tuple(_with_more(one, more_g) for one in cap.persons)
        return wider.model_copy(update={"persons": persons})
    return wider


def _with_more(one: PersonCap, more_g: Decimal) -> PersonCap:
    typical = one.typical_g + more_g
    most = None if one.at_most_g is None else one.at_most_g * typical / one.typical_g
    return one._replace(typical_g=typical, at_most_g=most)


def _scaled(grams: Decimal, shares: Fraction) -> Decimal:
    exact = grams * shares.numerator / shares.denominator
    return exact.quantize(_PLACES, ROUND_DOWN)
