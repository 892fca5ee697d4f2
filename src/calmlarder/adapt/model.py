"""What a recipe is to be brought under, and what comes back."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.profile import Profile
from calmlarder.tables.vocabulary import Allergen, Diet, Sitting

# `weigh`: less by a tenth at most: the amount is the same, the scale is what changes. `more`: an egg, to bind.
# `only`: of what a line allows its own food alone.
Kind = Literal["swap", "less", "weigh", "out", "serving", "more", "only"]
# `fits`: nothing has to change. `adapted`: no smaller change exists; `adapted_best_found`: perhaps one does.
# `cannot`: proven that nothing within what the dish bears brings it under; `open`: none was found in time.
# `nothing_read`: no line could be counted, so nothing is said.
Status = Literal["fits", "adapted", "adapted_best_found", "cannot", "open", "nothing_read"]
NOT_COUNTED = "[not counted]"  # behind a line of a changed recipe


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True)


class Eaters(_Kept):
    """Who eats: the limits of one sitting of one person, diet and allergens; grams by food of what is at home."""

    profile: Profile
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    sure: Tolerance = USUAL
    sitting: Sitting = "dinner"
    at_home: Mapping[str, float] = {}

    @property
    def limits(self) -> Profile:
        """What holds at such a sitting."""
        return self.profile.at(self.sitting)


class Amount(_Kept):
    """Grams of a food in the whole recipe; `high` is the end of the range its line gives."""

    food: str
    grams: Decimal
    high: Decimal
    weighed: bool
    sure: Tolerance = USUAL

    @property
    def most(self) -> Decimal:
        """Grams that it may be at the most."""
        if self.weighed:
            return max(self.high, self.grams + self.sure.scale_grams)
        return max(self.high, self.grams * (100 + self.sure.eye_percent) / 100)


class Change(_Kept):
    """One change. `place` is the number of the ingredient line, None for a smaller serving; `lines` take its place.

    `unmeasured` are foods that take its place where the line says no amount; `how` says in parts divided by
    semicolons how what takes its place is treated, where that differs; `heat` says in a few words how long it is
    cooked, where the time that the steps give is of another food; `not_soaked` overrules a step that only pours hot
    water over, `not_browned` one that fries onion until golden;
    `first` says what is done with it before it goes in.
    """

    place: int | None
    ingredient: str
    change: Kind
    to: tuple[Amount, ...]
    unmeasured: tuple[str, ...] = ()
    lines: tuple[str, ...]
    why: str
    how: str = ""
    heat: str = ""
    not_soaked: str = ""
    not_browned: str = ""
    first: str = ""


class Unread(_Kept):
    """A line that was not counted, and why; `trigger` is what it names that passes a limit as a rule.

    `harmless` says that it brings nothing that counts, however it is read.
    """

    place: int
    text: str
    why: str
    trigger: str = ""
    harmless: bool = False

    @property
    def mark(self) -> str:
        """What stands behind the line in a changed recipe."""
        return f"[not counted: {self.trigger}, a likely trigger]" if self.trigger else NOT_COUNTED


class Loads(_Kept):
    """Grams under each limit of the sitting in one serving: likely, and at most."""

    serves: int
    loads_g: Mapping[str, Decimal]
    at_most_g: Mapping[str, Decimal]


class Brought(_Kept):
    """What one counted line brings a serving: the limit it takes most of, g, and grams of it that are likely."""

    place: int
    cap: str | None
    grams: Decimal
    limit_g: Decimal = Decimal(0)


class AtHome(_Kept):
    """Grams of a food in the larder that may be eaten, and days left of what goes first; None where nothing presses."""

    grams: Decimal
    days_left: int | None


class Adapted(_Kept):
    """The answer. `after` and `changes` are of the smallest change; `passed` names the limits passed as written.

    `status` is of the lines that were counted; where some were not, or `warnings` doubt that the list is whole,
    nothing is known of the recipe. `remarks` are to be told and doubt nothing;
    `at_home` is what the larder holds of its foods and of those that take their place.
    """

    status: Status
    before: Loads
    after: Loads | None
    limits_g: Mapping[str, tuple[Decimal, Decimal | None]]
    passed: tuple[str, ...]
    brought: tuple[Brought, ...]
    amounts: Mapping[int, Amount]
    changes: tuple[Change, ...]
    unread: tuple[Unread, ...]
    warnings: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    at_home: Mapping[str, "AtHome"] = {}

    @property
    def known(self) -> bool:
        """Whether every line was counted that may count, so that the status is of the whole recipe."""
        return not self.in_doubt and not self.warnings

    @property
    def in_doubt(self) -> tuple[Unread, ...]:
        """The lines that were not counted and may bring something."""
        return tuple(one for one in self.unread if not one.harmless)

    @property
    def holds(self) -> bool:
        """Whether the recipe, changed or as it is, keeps under every limit as far as it was counted."""
        return self.status in {"fits", "adapted", "adapted_best_found"}
