"""The groups that are challenged, in which doses, how often and in which order.

Order, wash-out and days: Tuck & Barrett 2017, Whelan et al. 2018, Lomer 2023 (recalled). Doses are ours, no source.
Shares of people who react: Van den Houte et al. 2024, Gastroenterology 167:333 (abstract read). Cut-offs of
elimination for one food: Varney et al. 2017.
"""

from collections.abc import Collection, Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple, get_args

ChallengeGroup = Literal["sorbitol", "excess_fructose", "lactose", "gos", "mannitol", "fructans"]
GROUPS: tuple[ChallengeGroup, ...] = get_args(ChallengeGroup)  # the group least likely to trigger first


class Ladder(NamedTuple):
    """Three doses in g of the group, days from one dose to the next, and what is known before the first."""

    doses_g: tuple[float, float, float]
    every_days: int
    triggers: float  # share of people, 0 to 1, who reacted to a challenge with the group
    cutoff_g: float  # of elimination, for one food at one sitting: what holds while nothing is known


LADDERS: Mapping[ChallengeGroup, Ladder] = MappingProxyType({
    "sorbitol": Ladder((0.5, 1.0, 2.0), 1, 0.23, 0.20),
    "excess_fructose": Ladder((1.0, 2.0, 4.0), 1, 0.27, 0.40),  # the cut-off of fresh fruit and vegetables
    "lactose": Ladder((3.0, 6.0, 12.0), 2, 0.28, 1.00),
    "gos": Ladder((0.5, 1.0, 2.0), 2, 0.35, 0.30),  # the cut-off of pulses, nuts and grains
    "mannitol": Ladder((0.5, 1.0, 2.0), 1, 0.54, 0.20),
    "fructans": Ladder((0.25, 0.5, 1.0), 2, 0.56, 0.20),  # the lower of two cut-offs, that of onion and garlic
})  # fmt: skip

# What is challenged one after the other: a group, and of fructans one source of them at a time.
Challenge = Literal["sorbitol", "excess_fructose", "lactose", "gos", "mannitol", "wheat", "onion", "garlic"]
CHALLENGES: tuple[Challenge, ...] = get_args(Challenge)
_GARLIC_SHARE = 0.5  # of the doses of other fructans: a clove is small, and it is eaten in small amounts; ours


def group_of(challenge: Challenge) -> ChallengeGroup:
    """The group that a challenge is of."""
    return next((group for group in GROUPS if group == challenge), "fructans")


def ladder_of(challenge: Challenge) -> Ladder:
    """Its doses; those of garlic are half of the other fructans'."""
    ladder = LADDERS[group_of(challenge)]
    if challenge != "garlic":
        return ladder
    low, middle, high = ladder.doses_g
    return ladder._replace(doses_g=(low * _GARLIC_SHARE, middle * _GARLIC_SHARE, high * _GARLIC_SHARE))


def is_dose(challenge: Challenge, limit_g: float) -> bool:
    """Whether a limit is a dose that was found, not what elimination holds."""
    return any(abs(dose - limit_g) < 1e-9 for dose in ladder_of(challenge).doses_g)


def order(eats_plants: bool, avoid: Collection[str] = (), is_coeliac: bool = False) -> tuple[Challenge, ...]:
    """What to challenge, first to last: plant eaters GOS first; never an allergen, nor wheat in coeliac disease."""
    barred = {"lactose"} if "milk" in avoid else set[str]()
    barred |= {"wheat"} if is_coeliac or "gluten" in avoid else set()
    first: tuple[Challenge, ...] = ("gos",) if eats_plants else ()
    ordered = dict.fromkeys((*first, *CHALLENGES))
    return tuple(challenge for challenge in ordered if challenge not in barred)
