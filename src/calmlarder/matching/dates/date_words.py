"""A day that a line tells, what is written before it, and what it then says."""

from datetime import date, timedelta
from typing import Literal, NamedTuple

# `noted`: the day a line was typed, from which the days of fresh food without a date are estimated.
DateKind = Literal["use-by", "best-before", "opened", "made", "bought", "frozen", "noted"]
_OPEN_SINCE_DAYS = 1  # common practice, no source
# Years that a larder can mean: days are counted from there in both directions.
YEARS = range(1900, 2200)

# What is written before a day, and what the day then says. `defrosted` counts as opened: it keeps as long.
KINDS: dict[str, DateKind] = {
    "use by": "use-by", "use-by": "use-by", "useby": "use-by", "used by": "use-by", "use before": "use-by",
    "eat by": "use-by", "eat before": "use-by", "ub": "use-by", "u/b": "use-by", "ubd": "use-by", "use": "use-by",
    "eat": "use-by", "needs using": "use-by", "need using": "use-by", "needs eating": "use-by", "use it": "use-by",
    "use up": "use-by", "needs using up": "use-by", "need using up": "use-by", "must use": "use-by",
    "expires": "use-by", "expiring": "use-by", "expired": "use-by", "ran out on": "use-by",
    "went out of date": "use-by", "expiry": "use-by", "expire": "use-by", "exp": "use-by",
    "sell by": "use-by", "sell-by": "use-by", "display until": "use-by", "goes off": "use-by", "off on": "use-by",
    "val": "use-by", "dlc": "use-by", "scad": "use-by", "scade": "use-by", "cad": "use-by", "mhd": "best-before",
    "good thru": "use-by", "best used by": "use-by", "eat within": "use-by", "consume by": "use-by", "thru": "use-by",
    "good until": "use-by", "good till": "use-by", "good til": "use-by", "until": "use-by", "till": "use-by",
    "ok until": "use-by", "ok till": "use-by", "out of date": "use-by", "date": "use-by", "dated": "use-by",
    "best before": "best-before", "best-before": "best-before", "best by": "best-before", "best b4": "best-before",
    "bb": "best-before", "bbe": "best-before", "bbd": "best-before", "b/b": "best-before", "b4": "best-before",
    "best before end": "best-before", "bb end": "best-before", "best": "best-before", "by": "use-by",
    "use b4": "use-by",
    "opened": "opened", "open since": "opened", "cut": "opened", "opend": "opened", "open": "opened",
    "started": "opened", "defrosted": "opened", "thawed": "opened", "defrosting since": "opened",
    "out of the freezer": "opened", "out of freezer": "opened",
    "made": "made", "cooked": "made", "boiled": "made", "roasted": "made", "baked": "made", "leftover from": "made",
    "leftovers from": "made", "left over from": "made", "left from": "made", "leftover": "made", "leftovers": "made",
    "from": "made", "since": "made", "steamed": "made", "set": "made",
    "bought": "bought", "picked": "bought", "caught": "bought", "got": "bought", "delivered": "bought",
    "bought on": "bought", "picked up": "bought", "landed": "bought", "dug": "bought", "harvested": "bought",
    "noted": "noted", "frozen": "frozen",
    "in freezer since": "frozen", "in the freezer since": "frozen",
    "freezer since": "frozen", "frozen since": "frozen", "in freezer from": "frozen",
    "froze": "frozen", "into the freezer": "frozen",
}  # fmt: skip
# What needs a day behind it and cannot be anything else: a word that is none is asked about.
SURE = frozenset({
    "use by", "use-by", "useby", "ub", "u/b", "ubd", "use before", "eat by", "expires", "expiry", "sell by", "sell-by",
    "dlc", "mhd", "best before", "best-before", "best by", "bbe", "bbd", "bb", "b/b", "best b4", "use b4",
})  # fmt: skip


class Dated(NamedTuple):
    """A day and what it says. `on` is None where a line says that a pack is open and not since when."""

    kind: DateKind
    on: date | None
    assumed: bool = False
    bare: bool = False  # a day without a word for what it says

    def since(self, today: date) -> "Dated":
        """With a day: what is open since nobody says when is taken as opened the day before the line was typed."""
        return self if self.on is not None else Dated(self.kind, today - timedelta(days=_OPEN_SINCE_DAYS), True)
