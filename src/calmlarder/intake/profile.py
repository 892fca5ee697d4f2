"""A profile of limits: which groups are limited, for one food, for a sitting and for a day of one person."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Any

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.shared_cap import PersonCap
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.vocabulary import Sitting

# Limits hold to so many grams, since figures carry no more; so much may still come where one is used up. Ours.
TO_GRAMS = Decimal("0.005")
OWN = "own"  # the profile of limits of one's own
USUAL_SITTING: Sitting = "dinner"
_OLD_NAMES = {"wide": "roomy"}  # as the settings of a home kept them before


class Profile(BaseModel):
    """Limits of one profile in grams for one person: of one food, of a sitting, and of a day."""

    model_config = ConfigDict(frozen=True)

    name: str
    food_caps: tuple[Cap, ...]
    sitting_caps: tuple[Cap, ...]
    day_caps: tuple[Cap, ...] = ()
    own_limits: tuple[OwnLimit, ...] = ()  # that they were made from, and whether those add up
    own_add: bool = False

    @property
    def limits_foods(self) -> bool:
        """Whether single foods are limited, not only the sitting."""
        return bool(self.food_caps)

    @property
    def bars_hidden(self) -> bool:
        """Whether onion or garlic in a made food, in an amount that only its maker knows, is left out.

        In elimination it is, as dietitians advise (common practice, no source), until fructans have a limit of the
        person's own.
        """
        return self.limits_foods and all(own.component != "fructans" for own in self.own_limits)

    @property
    def plain(self) -> dict[str, Any]:
        """What the checks need to make the limits again."""
        owns = [{"component": own.component, "grams": own.grams, "classes": own.classes} for own in self.own_limits]
        return {"profile": self.name, "own_limits": owns, "own_add": self.own_add}

    def at(self, *sittings: Sitting) -> "Profile":
        """The limits that hold at every one of these kinds of sitting (default: dinner), the strictest by each key."""
        kinds = sittings or (USUAL_SITTING,)
        kept = {
            name: _strictest(cap for cap in getattr(self, name) if any(cap.holds_at(kind) for kind in kinds))
            for name in ("food_caps", "sitting_caps", "day_caps")
        }
        return self.model_copy(update=kept)


def _strictest(caps: Iterable[Cap]) -> tuple[Cap, ...]:
    found: dict[str, list[Cap]] = {}
    for cap in caps:
        found.setdefault(cap.key, []).append(cap)
    return tuple(_least(same) for same in found.values())


def _least(same: Sequence[Cap]) -> Cap:
    """The strictest of limits with one key, for all sittings."""
    first = same[0]
    if len(same) == 1 and not first.sittings:
        return first
    most = min((cap.at_most_g for cap in same if cap.at_most_g is not None), default=None)
    least = {"typical_g": min(cap.typical_g for cap in same), "at_most_g": most}
    return first.model_copy(update={"sittings": (), **least})


def name_of_today(name: str) -> str:
    """A profile's name, as it is called now."""
    return _OLD_NAMES.get(name, name)


def profile_named(name: str, tables: Tables) -> Profile:
    """The profile of that name. Raises CannotGoOn when caps.csv has none."""
    caps = [cap for cap in tables.caps if cap.profile == name]
    if not caps:
        caps = [cap for cap in tables.caps if cap.profile == name_of_today(name)]
    if not caps:
        known = ", ".join(tables.profiles)
        raise CannotGoOn(
            [Problem(where="--profile", what=f"there is no profile `{name}`", remedy=f"choose one of {known}")]
        )
    return Profile(
        name=caps[0].profile,
        food_caps=tuple(cap for cap in caps if cap.scope == "food"),
        sitting_caps=tuple(cap for cap in caps if cap.scope == "sitting"),
        day_caps=tuple(cap for cap in caps if cap.scope == "day"),
    )


def typical_room(cap: Cap | PersonCap) -> int:
    """What is likely may come to so much, in hundredths of a mg, rounded down."""
    return int((cap.typical_g + TO_GRAMS) * 1000 * PER_MG)


def at_most_room(cap: Cap | PersonCap) -> int | None:
    """What may come at most may come to so much, in hundredths of a mg, rounded down; None where nothing says."""
    return None if cap.at_most_g is None else int((cap.at_most_g + TO_GRAMS) * 1000 * PER_MG)


USED_UP_ROOM = int(TO_GRAMS * 1000 * PER_MG)
