"""Several people at one table: who eats which share of one dish, and the limits of all of them together."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any

from pydantic import BaseModel, ConfigDict, PrivateAttr

from calmlarder.intake.profile import Profile
from calmlarder.intake.shared_cap import PersonCap, table_cap
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.vocabulary import Allergen, Diet, Sitting


class Eater(BaseModel):
    """One person at the table: their limits, what they may eat, g of protein at least and aimed at; foods are ids.

    `appetite` is their share of the dish where a usual one is 1; a guest has no log.
    """

    model_config = ConfigDict(frozen=True)

    who: str
    profile: Profile
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    never: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    protein_g: float = 20.0
    protein_floor_g: float = 12.0
    appetite: float = 1.0
    is_guest: bool = False

    @property
    def plain(self) -> dict[str, Any]:
        """What the checks need of them."""
        told = self.model_dump(mode="json", exclude={"profile"})
        return {**told, **self.profile.plain, "appetite": str(self.appetite)}


def equal_shares_of(one: Eater, table: Sequence[Eater]) -> Fraction:
    """How many equal shares of the dish are one of theirs: 1 where all eat alike, above it where they eat less."""
    whole = sum((Fraction(str(eater.appetite)) for eater in table), Fraction(0))
    return whole / (Fraction(str(one.appetite)) * len(table))


class TableProfile(Profile):
    """The limits of everybody at the table. Those of a sitting are made as they are asked for."""

    eaters: tuple[Eater, ...]
    _made: dict[tuple[Sitting, ...], Profile] = PrivateAttr(default_factory=dict)  # asked for by every dish

    @property
    def plain(self) -> dict[str, Any]:
        """What the checks need to make the limits again, of each person."""
        return {**super().plain, "table": [one.plain for one in self.eaters]}

    @property
    def limits_foods(self) -> bool:
        """Whether single foods are limited for anybody."""
        return any(one.profile.limits_foods for one in self.eaters)

    @property
    def bars_hidden(self) -> bool:
        """Whether anybody must do without onion and garlic in amounts that only a maker knows."""
        return any(one.profile.bars_hidden for one in self.eaters)

    def at(self, *sittings: Sitting) -> Profile:
        """What holds for an equal share, each limit with each person's own."""
        if sittings not in self._made:
            self._made[sittings] = self._together(*sittings)
        return self._made[sittings]

    def _together(self, *sittings: Sitting) -> Profile:
        each = [(eater, eater.profile.at(*sittings)) for eater in self.eaters]

        def together(caps_of: Iterable[tuple[Eater, Sequence[Cap]]]) -> tuple[Cap, ...]:
            found: dict[str, list[tuple[PersonCap, Cap]]] = {}
            for eater, caps in caps_of:
                shares = equal_shares_of(eater, self.eaters)
                for cap in caps:
                    one = PersonCap(eater.who, cap.typical_g, cap.at_most_g, shares, not eater.is_guest)
                    found.setdefault(cap.key, []).append((one, cap))
            return tuple(table_cap(caps) for caps in found.values())

        return Profile(
            name=self.name,
            food_caps=together((eater, profile.food_caps) for eater, profile in each),
            sitting_caps=together((eater, profile.sitting_caps) for eater, profile in each),
            day_caps=_days(profile.day_caps for _, profile in each),
        )


def table_profile(eaters: Sequence[Eater]) -> TableProfile:
    """The limits of these people together."""
    name = ", ".join(f"{eater.who} {eater.profile.name}" for eater in eaters)
    return TableProfile(name=name, food_caps=(), sitting_caps=(), eaters=tuple(eaters))


def _days(each: Iterable[Sequence[Cap]]) -> tuple[Cap, ...]:
    """Of a day the strictest; it is a wish."""
    found: dict[str, Cap] = {}
    for caps in each:
        for cap in caps:
            other = found.get(cap.key)
            found[cap.key] = cap if other is None or Decimal(cap.typical_g) < other.typical_g else other
    return tuple(found.values())
