"""What a cook asks of the dinner on the screen: this in it, that not, a swap, where a figure comes from, why."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from calmlarder.history.variety import Declined, kept_declined
from calmlarder.household.household import Household
from calmlarder.household.request import Evening, evening
from calmlarder.larder.usable import why_unfit
from calmlarder.tables.vocabulary import Diet, Sitting
from calmlarder.tui.choice import Choice
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.sources import ask_sources

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.request import DinnerRequest, Liked
    from calmlarder.tui.swap_screen import Swapped

_THIS_DISH = "this dish, for a fortnight"
ALSO = 3  # dinners that are named together
MOST_DINNERS = 9  # of one evening, one after the other


class AsksOfDinner(TurnsWithDay[None]):
    """What is asked of an evening; `again` looks for a dinner anew after each change."""

    def __init__(self, kitchen: Household, again: Callable[[], None]) -> None:
        super().__init__()
        self._kitchen, self._again = kitchen, again
        self.ask_as_settled()
        self._place = 0
        self._failed = 0  # dinners that did not hold: as many more are asked for
        self._composed: Composed | None = None
        self._wanted: DinnerRequest | None = None

    def ask_as_settled(self) -> None:
        """Nothing is asked for tonight only."""
        held = self._kitchen.settled()
        self._people, self._minutes, self._profile = held.people, held.minutes, held.profile
        self._diet: Diet = held.diet
        self._sitting: Sitting = "dinner"
        self._use: tuple[str, ...] = ()
        self._without: tuple[str, ...] = ()
        self._like: Liked | None = None

    def _evening(self) -> Evening:
        """What is asked now. Reads the store."""
        from calmlarder.household.choices import Choices

        choices = Choices(
            sitting=self._sitting,
            people=self._people,
            diet=self._diet,
            profile=self._profile,
            minutes=self._minutes,
            any_time=self._minutes is None,
            use=self._use,
            without=self._without,
            like=self._like,
            count=min(MOST_DINNERS, self._place + 1 + self._failed),
        )
        return evening(self._kitchen, choices)

    def action_more_like(self) -> None:
        """Dinners near this one; once more, and all dinners are looked at again."""
        if self._like is not None:
            self._like = None
        elif self._composed and self._composed.dinners:
            from calmlarder.compose.dinner import liked
            from calmlarder.patterns.load import shipped_patterns

            dinner = self._composed.dinners[self._place]
            slots = {pattern.id: pattern.slots for pattern in shipped_patterns()}
            self._like = liked(dinner, slots[dinner.pattern])
        else:
            return
        self._again()

    def action_use(self) -> None:
        """Choose a food that must be in it."""
        foods = list(dict.fromkeys(one.lot.food for one in self._kitchen.lots() if why_unfit(one.lot) is None))

        def picked(name: str | None) -> None:
            if name is not None:
                food = next(food for food in foods if self._kitchen.name_of(food) == name)
                self._use = (*self._use, food)
                self._without = tuple(other for other in self._without if other != food)
                self._again()

        self.app.push_screen(Choice("What must be in it?", [self._kitchen.name_of(food) for food in foods]), picked)

    def action_without(self) -> None:
        """Choose a food of this dinner to leave out tonight, or the dish, which then comes not again soon."""

        def picked(food: str) -> None:
            self._without = (*self._without, food)
            self._use = tuple(other for other in self._use if other != food)
            self._again()

        self._ask_of_dinner("Leave out which food?", picked, self._decline)

    def _decline(self) -> None:
        """Not this dish: kept, and faded in a fortnight; people and limits show it and forget it."""
        if self._composed and self._composed.dinners:
            today = self._kitchen.today
            one = Declined(pattern=self._composed.dinners[self._place].pattern, on=today)
            others = [other for other in self._kitchen.settled().declined_on(today) if other.pattern != one.pattern]
            self._kitchen.set("declined", kept_declined([*others, one]))
            self._again()

    def action_never(self) -> None:
        """Choose a food of this dinner to leave out from now on."""

        def picked(food: str) -> None:
            self._kitchen.set("never", ",".join(dict.fromkeys((*self._kitchen.settled().never, food))))
            self._use = tuple(other for other in self._use if other != food)
            self._again()

        self._ask_of_dinner("Never again which food?", picked)

    def action_figures(self) -> None:
        """Where the figures of a food of this dinner come from, or those of the limits."""
        uses = self._composed.dinners[self._place].uses if self._composed and self._composed.dinners else ()
        ask_sources(self, self._kitchen, {use.name: use.food for use in uses})

    def action_change(self) -> None:
        """Choose a food of this dinner, and what stands in for it here: solved again with the one for the other."""

        def picked(food: str) -> None:
            from calmlarder.household.swapping import swaps_at_home
            from calmlarder.tui.swap_screen import SwapScreen

            if self._composed is None or self._wanted is None:
                return
            dinner, wanted = self._composed.dinners[self._place], self._wanted
            self.app.push_screen(
                SwapScreen(swaps_at_home(self._kitchen, food, wanted, dinner), in_dinner=True), swapped
            )

        def swapped(answer: "Swapped | None") -> None:
            if answer is None:
                return
            self._use = tuple(dict.fromkeys((*(one for one in self._use if one != answer.food), *answer.parts)))
            self._without = tuple(dict.fromkeys((*(o for o in self._without if o not in answer.parts), answer.food)))
            self._again()

        self._ask_of_dinner("Swap which food?", picked)

    def action_why(self) -> None:
        """Choose a lot, in this dinner or not, and read why."""
        from calmlarder.tui.why_screen import WhyScreen

        foods = {self._kitchen.name_of(one.lot.food): one.lot.food for one in self._kitchen.lots()}

        def picked(name: str | None) -> None:
            if name is not None:
                self.app.push_screen(WhyScreen(self._evening(), foods[name]))

        self.app.push_screen(Choice("Why, or why not?", list(foods)), picked)

    def _ask_of_dinner(
        self, question: str, then: Callable[[str], object], dish: Callable[[], None] | None = None
    ) -> None:
        if not self._composed or not self._composed.dinners:
            return
        uses = self._composed.dinners[self._place].uses

        def picked(name: str | None) -> None:
            if name == _THIS_DISH and dish is not None:
                dish()
            elif name is not None:
                then(next(use.food for use in uses if use.name == name))

        self.app.push_screen(Choice(question, [*([_THIS_DISH] if dish else []), *(use.name for use in uses)]), picked)
