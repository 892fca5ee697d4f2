"""What a cook asks of the dinner on the screen: this in it, that not, a swap, where a figure comes from, why."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, TypeVar

from textual import events

from calmlarder.household.household import Household
from calmlarder.household.people import MOST_PEOPLE
from calmlarder.household.request import Evening, evening
from calmlarder.larder.lot import why_unfit
from calmlarder.tables.vocabulary import DIETS, SITTINGS
from calmlarder.tui.asked_for_tonight import MEALS, Asked, TonightOnly, as_settled
from calmlarder.tui.choice import Choice, Told
from calmlarder.tui.cooking_time import LEAST_MINUTES, MOST_MINUTES, likeliest, minutes_of, minutes_offered
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.food_names import name_in, names_in
from calmlarder.tui.sources import ask_sources

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.tui.swap_screen import Swapped

_LIMITS = "Which limits, tonight only? With looser ones there may be more on the plate than you can take."
_NO_DINNER = {  # keys that then have nothing to ask about: what they do else, and what is said
    "x": ("without", "No dinner was found, so there is no food to leave out of it."),
    "c": ("change", "No dinner was found, so there is no food in it to swap."),
}
_ON_THE_PAGE = "The page says what would change that."
NOT_HERE = "no food of that name here"
_One = TypeVar("_One")
ALSO = 3  # dinners that are named together
MOST_DINNERS = 9  # of one evening, one after the other


class AsksOfDinner(TurnsWithDay[None]):
    """What is asked of an evening; `again` looks for a dinner anew after each change."""

    def __init__(self, kitchen: Household, again: Callable[[], None], only: TonightOnly) -> None:
        super().__init__()
        self._kitchen, self._again, self._only = kitchen, again, only
        self._asked = only.again(kitchen)
        # What was asked for before each change of mind, and what was taken back of those.
        self._before, self._undone = only.ways(kitchen)
        self._place = 0
        self._is_found = False  # whether dinners of what is asked now are known
        self._failed = 0  # dinners that did not hold: as many more are asked for
        self._composed: Composed | None = None
        self._wanted: DinnerRequest | None = None

    @property
    def _dinner(self) -> "Dinner | None":
        """The dinner on the screen: while another is looked for, still the last one."""
        dinners = self._composed.dinners if self._composed is not None else ()
        return dinners[min(self._place, len(dinners) - 1)] if dinners else None

    def ask(self, asked: Asked) -> None:
        """Look again with this; Ctrl+Z goes back to what was asked for before."""
        if asked != self._asked:
            self._before.append(self._asked)
            self._undone.clear()
            self._asked = asked
            self._only.keep(self._kitchen, asked)
            self.refresh_bindings()
        self._again()

    def action_undo(self) -> None:
        """One change of mind back."""
        if self._before:
            self._undone.append(self._asked)
            self._come_back(self._before.pop())

    def action_redo(self) -> None:
        """The change of mind that was taken back, after all."""
        if self._undone:
            self._before.append(self._asked)
            self._come_back(self._undone.pop())

    def _come_back(self, asked: Asked) -> None:
        self._asked = asked
        self._only.keep(self._kitchen, asked)
        self.refresh_bindings()
        self._again()

    def action_forget(self) -> None:
        """Forget all that was asked for tonight: foods, people, minutes, diet, limits, kind of meal, dish."""
        self.ask(as_settled(self._kitchen))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """There is a way back where something was changed; people who are named have diets and limits of their own."""
        if action in {"diet", "profile"}:
            return not self._asked.is_seated
        return bool({"undo": self._before, "redo": self._undone}.get(action, True))

    def on_key(self, event: events.Key) -> None:
        """Without a dinner a name typed behind such a key must not run as keys."""
        action, words = _NO_DINNER.get(event.character or "", ("", ""))
        if action and not self.check_action(action, ()):
            event.stop()
            self.app.push_screen(Told(f"{words} {_ON_THE_PAGE}"))

    def _evening(self) -> Evening:
        """What is asked now. Reads the store."""
        return evening(self._kitchen, self._asked.choices(min(MOST_DINNERS, self._place + 1 + self._failed)))

    def action_seats(self) -> None:
        """Who of the home eats tonight, and how many guests."""
        from calmlarder.household.people import people
        from calmlarder.tui.who_eats import Seated, WhoEats

        asked = self._asked
        at_home = tuple(one.name for one in people(self._kitchen))
        # Where nobody was named so many of the home eat, and whoever is more than those is a guest.
        named = asked.names if asked.is_seated else at_home[: asked.people]
        guests = asked.guests if asked.is_seated else asked.people - len(named)
        unnamed = max(0, self._kitchen.settled().people - len(at_home))
        seated = Seated(named, guests, asked.avoid, asked.shared, unnamed)

        def said(who: Seated | None) -> None:
            if who is not None:
                was = (seated.names, seated.guests)
                self.ask(asked._replace(shared=who.diet).seated(who.names, who.guests, who.avoid, was=was))

        self.app.push_screen(WhoEats(at_home, seated), said)

    def action_more_like(self) -> None:
        """Dinners near this one; once more, and all dinners are looked at again."""
        if self._asked.like is not None:
            self.ask(self._asked._replace(like=None))
        elif (dinner := self._dinner) is not None:
            from calmlarder.compose.dinner import liked
            from calmlarder.patterns.load import shipped_patterns

            slots = {pattern.id: pattern.slots for pattern in shipped_patterns()}
            self.ask(self._asked._replace(like=liked(dinner, slots[dinner.pattern])))

    def action_use(self) -> None:
        """Choose a food that must be in it."""
        fit = (one.lot.food for one in self._kitchen.lots() if why_unfit(one.lot) is None)
        foods = {self._called(food): food for food in fit}

        def picked(name: str | None) -> None:
            if name is not None:
                self.ask(self._asked.with_food(foods[name]))

        self.app.push_screen(Choice("What must be in it?", list(foods)), picked)

    def action_never(self) -> None:
        """Choose a food of this dinner to leave out from now on."""

        def picked(food: str) -> None:
            self._kitchen.set("never", ",".join(dict.fromkeys((*self._kitchen.settled().never, food))))
            self.notify(f"never {self._kitchen.name_of(food)}: F2 in the larder changes that", markup=False)
            self.ask(self._asked._replace(use=tuple(other for other in self._asked.use if other != food)))

        self._ask_of_dinner("From now on, never which food?", picked)

    def action_figures(self) -> None:
        """Where the figures of a food of this dinner come from, or those of the limits."""
        ask_sources(self, self._kitchen, names_in(self._kitchen, self._dinner))

    def action_change(self) -> None:
        """Choose a food of this dinner, and what stands in for it here: solved again with the one for the other."""

        def picked(food: str) -> None:
            from calmlarder.household.swapping import swaps_at_home
            from calmlarder.tui.swap_screen import SwapScreen

            dinner, wanted = self._dinner, self._wanted
            if dinner is not None and food not in {use.food for use in dinner.uses}:
                dinner = None  # it is another dinner's, or none is found yet
            self.app.push_screen(
                SwapScreen(swaps_at_home(self._kitchen, food, wanted, dinner), True, self._kitchen.manner), swapped
            )

        def swapped(answer: "Swapped | None") -> None:
            if answer is None:
                return
            self.ask(self._asked.with_food(*answer.parts, instead_of=answer.food))

        self._ask_of_dinner("Swap which food?", picked)

    def action_why(self) -> None:
        """Choose a food of the larder, those of this dinner first, and read why it is in it or not."""
        from calmlarder.tui.why_screen import WhyScreen

        foods = self._of_the_larder()

        def picked(name: str | None) -> None:
            if name is not None:
                self.app.push_screen(WhyScreen(self._evening(), foods[name], self._kitchen.manner))

        self.app.push_screen(Choice("Why, or why not?", list(foods)), picked)

    def _ask_of_dinner(self, question: str, then: Callable[[str], object]) -> None:
        """Asked at once, whatever is still looked for: the letters that come next belong to the answer."""
        foods = self._to_choose_from()

        def picked(name: str | None) -> None:
            if name is not None:
                then(foods[name])

        self.app.push_screen(Choice(question, list(foods), none_such=NOT_HERE), picked)

    def _to_choose_from(self) -> dict[str, str]:
        """Ids by the name that stands on the screen: foods of the dinner, while there is none yet of all the larder."""
        if not self._is_found or self._dinner is None:
            return self._of_the_larder()
        return names_in(self._kitchen, self._dinner)

    def _of_the_larder(self) -> dict[str, str]:
        """The same of all that is there, what is in the dinner first."""
        there = {one.lot.food for one in self._kitchen.lots()}
        foods = {name: food for name, food in names_in(self._kitchen, self._dinner).items() if food in there}
        for one in self._kitchen.lots():
            if one.lot.food not in foods.values():
                foods.setdefault(self._called(one.lot.food), one.lot.food)
        return foods

    def _called(self, food: str) -> str:
        return name_in(self._kitchen, food, self._dinner)

    def action_people(self, more: int) -> None:
        """More or fewer eat, tonight only: what holds for good is settled in people and limits."""
        asked = self._asked
        if asked.is_seated:
            guests = max(0 if asked.names else 1, min(MOST_PEOPLE - len(asked.names), asked.guests + more))
            self.ask(asked._replace(guests=guests))
        else:
            self.ask(asked._replace(people=max(1, min(MOST_PEOPLE, asked.people + more))))

    def action_minutes(self) -> None:
        """How long it may take: marked is less than the dinner that is shown takes, and any where none is found."""
        self._ask_minutes("How many minutes may it take, tonight only?")

    def _ask_minutes(self, question: str) -> None:
        takes = self._dinner.minutes if self._is_found and self._dinner else None
        named = minutes_offered(self._asked.minutes)
        first = likeliest(self._asked.minutes, takes, is_none=self._is_found and self._dinner is None)

        def picked(answer: str | None) -> None:
            if answer is None:
                return
            minutes = named[answer] if answer in named else minutes_of(answer)
            if minutes == 0:
                self._ask_minutes(f"`{answer}` cannot be: a number of minutes from {LEAST_MINUTES} to {MOST_MINUTES}.")
            elif minutes != self._asked.minutes:
                self.ask(self._asked._replace(minutes=minutes))

        self.app.push_screen(Choice(question, list(named), "or type a number, such as 25", marked=first), picked)

    def action_dish(self) -> None:
        """A kind of dish, or any again."""
        from calmlarder.tui.dish_asked import ask_dish

        ask_dish(self, self._asked.sitting, self._asked.dish, lambda dish: self.ask(self._asked._replace(dish=dish)))

    def action_sitting(self) -> None:
        """Another kind of meal."""
        meals = {MEALS.get(one, one): one for one in SITTINGS}
        self._choose("Which meal?", meals, self._asked.sitting, lambda one: self._asked._replace(sitting=one))

    def action_diet(self) -> None:
        """Another diet."""
        question = "Which diet, tonight only?"
        self._choose(
            question, {one: one for one in DIETS}, self._asked.diet, lambda one: self._asked._replace(diet=one)
        )

    def action_profile(self) -> None:
        """Other limits: what each set means is said before it is chosen."""
        from calmlarder.tui.first_start import SETS

        sets = {SETS.get(one, one): one for one in self._kitchen.profiles}
        self._choose(_LIMITS, sets, self._asked.profile, lambda one: self._asked._replace(profile=one))

    def _choose(self, question: str, named: Mapping[str, _One], now: _One, asked: Callable[[_One], Asked]) -> None:
        """One of a few, by its name; what holds now says so, and Enter alone changes nothing."""
        names = {f"{name} (now)" if one == now else name: one for name, one in named.items()}

        def picked(name: str | None) -> None:
            if name is not None and names[name] != now:
                self.ask(asked(names[name]))

        self.app.push_screen(Choice(question, list(names), unmarked=True), picked)
