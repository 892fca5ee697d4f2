"""What a cook asks of one evening: it holds for tonight and is forgotten with it."""

from typing import TYPE_CHECKING, Any, NamedTuple

from calmlarder.and_list import and_list
from calmlarder.household import asked_note
from calmlarder.household.household import Household
from calmlarder.household.person import NO_LIMITS
from calmlarder.household.settings import people_of
from calmlarder.intake.eaten import ME
from calmlarder.tables.vocabulary import ALLERGENS, DIETS, SITTINGS, Allergen, Diet, Sitting, allergen_words

if TYPE_CHECKING:
    from calmlarder.compose.request import Liked
    from calmlarder.household.choices import Choices
    from calmlarder.patterns.asked_dish import Dish

_WISHES = ("people", "minutes", "sitting", "use", "without", "like", "dish")  # none says what somebody may eat
MEALS: dict[Sitting, str] = {"packed": "packed lunch"}


class Asked(NamedTuple):
    """`names` and `guests` are who eats, where that was said; else so many `people` by the rules of the home.

    `shared` is a diet that the whole dinner keeps to, besides what each of them eats anyway, and `avoid` is in nobody's
    dinner tonight, besides what each of them avoids anyway.
    """

    people: int
    minutes: int | None
    diet: Diet
    profile: str
    sitting: Sitting = "dinner"
    use: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    like: "Liked | None" = None
    names: tuple[str, ...] = ()
    guests: int = 0
    avoid: tuple[Allergen, ...] = ()
    shared: Diet | None = None
    dish: "Dish | None" = None

    @property
    def _diet(self) -> Diet:
        """The stricter of the home's and that of the whole dinner."""
        return self.diet if self.shared is None else min(self.diet, self.shared, key=DIETS.index)

    @property
    def is_seated(self) -> bool:
        """Whether it was said who eats."""
        return bool(self.names or self.guests)

    def is_for_the_same(self, other: "Asked") -> bool:
        """Whether diets, allergens, guests and limits are the same: what is found for the one may be eaten by all."""
        return self._replace(**{name: getattr(other, name) for name in _WISHES}) == other

    def seated(
        self, names: tuple[str, ...], guests: int, avoid: tuple[Allergen, ...], *, was: tuple[tuple[str, ...], int]
    ) -> "Asked":
        """These eat. Nobody is named where I alone am of the home, and as many eat as before, `was`, or nobody else."""
        asked = self._replace(avoid=avoid)
        if (names, guests) == ((ME,), 0):
            return asked._replace(people=1, names=(), guests=0)
        if (names, guests) == was and names == (ME,):
            return asked
        return asked._replace(names=names, guests=guests)

    def with_food(self, *foods: str, instead_of: str | None = None) -> "Asked":
        """These foods must be in it, and one not, where that is said."""
        use = tuple(dict.fromkeys((*(one for one in self.use if one != instead_of), *foods)))
        without = tuple(one for one in self.without if one not in foods)
        return self._replace(use=use, without=(*without, instead_of) if instead_of else without)

    def but(self, food: str) -> "Asked":
        """The food is left out."""
        return self._replace(without=(*self.without, food), use=tuple(one for one in self.use if one != food))

    def choices(self, count: int) -> "Choices":
        """The same as the household takes it; limits and diet of people who are named are their own."""
        from calmlarder.household.choices import Choices

        own = {} if self.is_seated else {"people": self.people, "profile": self.profile}
        diet = self.shared if self.is_seated else self._diet
        return Choices(
            **own, diet=diet, sitting=self.sitting, minutes=self.minutes, any_time=self.minutes is None, use=self.use,
            without=self.without, like=self.like, dish=self.dish, eaters=self.names, guests=self.guests,
            avoid=self.avoid, count=count,
        )  # fmt: skip

    def words(self, kitchen: Household) -> list[str]:
        """Each thing that is asked for, in a few words."""
        meal = MEALS.get(self.sitting, self.sitting)
        minutes = f"up to {self.minutes} minutes" if self.minutes else "no hurry"
        if self.is_seated:
            eaters = ["you" if one == ME else one for one in self.names]
            whose = and_list([*eaters, *_guests(self.guests)])
            parts = [f"{meal} for {whose}", minutes, *self._holds_at(kitchen)]
        else:
            avoid = _no((*kitchen.settled().avoid, *self.avoid))
            whose = ", all as you eat" if self.people > 1 and len(people_of(kitchen.settled())) > 1 else ""
            parts = [f"{meal} for {self.people}{whose}", minutes, self._diet, *avoid, f"limits: {self.profile}"]
        parts += [f"with {', '.join(map(kitchen.name_of, self.use))}"] if self.use else []
        parts += [f"without {', '.join(map(kitchen.name_of, self.without))}"] if self.without else []
        parts += [f"more like {self.like.pattern.replace('-', ' ')}, m goes back"] if self.like else []
        parts += ["tonight only" + (f": {self.dish.said}" if self.dish else "")] if self.differs(kitchen) else []
        return parts

    def _holds_at(self, kitchen: Household) -> list[str]:
        """What holds for the dish of those who are named: diet, allergens left out, each set of limits once."""
        from calmlarder.household.table import Seats, eaters_at

        eaters = eaters_at(kitchen, Seats(self.names, self.guests), self.sitting)
        shared = (self.shared,) if self.shared else ()
        diet = min((*shared, *(one.diet for one in eaters)), key=DIETS.index)
        limits = list(dict.fromkeys(one.profile.name for one in eaters if one.profile.name != NO_LIMITS))
        avoid = _no((*(allergen for one in eaters for allergen in one.avoid), *self.avoid))
        return [diet, *avoid, f"limits: {', '.join(limits)}" if limits else "no limits"]

    def differs(self, kitchen: Household) -> bool:
        """Whether people, allergens, minutes, diet or limits are not those that are settled, or a dish is asked for."""
        home = kitchen.settled()
        settled = (home.people, home.minutes, home.diet, home.profile)
        return (
            self.is_seated
            or bool(self.avoid or self.shared or self.dish)
            or (self.people, self.minutes, self.diet, self.profile) != settled
        )


def as_settled(kitchen: Household) -> Asked:
    """Nothing is asked for tonight only."""
    home = kitchen.settled()
    return Asked(people=home.people, minutes=home.minutes, diet=home.diet, profile=home.profile)


def ways_out(asked: Asked, kitchen: Household, has_before: bool) -> str:
    """The keys that change what is in the way, where no dinner meets what is asked."""
    keys = [f"t more time than {asked.minutes} minutes"] if asked.minutes is not None else []
    keys += [f"k another dish than {asked.dish.said}, or any"] if asked.dish is not None else []
    keys += ["f who eats, and the diet of all"]
    keys += ["Ctrl+Z the last change back"] if has_before else []
    keys += ["r forget what was asked for tonight"] if asked != as_settled(kitchen) else []
    return f"Keys that change it: {'; '.join([*keys, 'Esc to the larder, for more food in it'])}."


class TonightOnly:
    """What is asked of this evening: kept in the home until the dinner is cooked or the day is over.

    Where the cooking is undone it is asked for again. The ways back live with the program.
    """

    def __init__(self) -> None:
        self._unkept: dict[str, Any] = {}  # where the home cannot be written
        self._before: list[Asked] = []
        self._undone: list[Asked] = []

    def keep(self, kitchen: Household, asked: Asked) -> None:
        """Until the day is over, or something else is asked for."""
        note = {"asked": _plain(asked), "settled": _plain(as_settled(kitchen))}
        self._unkept = {} if asked_note.keep(kitchen, note) else {"day": kitchen.today, **note}

    def end(self) -> None:
        """The dinner it was asked for is cooked."""
        self._unkept = {}
        self._before, self._undone = [], []

    def ways(self, kitchen: Household) -> "tuple[list[Asked], list[Asked]]":
        """What was asked for before each change of mind, and what was taken back: they are there as long as it is."""
        if self._kept(kitchen) is None:
            self._before, self._undone = [], []
        return self._before, self._undone

    def again(self, kitchen: Household) -> Asked:
        """What was asked for today, else what is settled. What was settled since then holds, where it was not asked for
        otherwise; who is no longer of the home does not eat, and a food that is gone need not be in it.
        """
        from calmlarder.household.people import people

        home, kept = as_settled(kitchen), self._kept(kitchen)
        if kept is None:
            return home
        asked, before = kept
        at_home = {one.name for one in people(kitchen)} if asked.names else set()
        there = {one.lot.food for one in kitchen.lots()}

        def holds_now(one: Asked) -> Asked:
            settled = {
                name: getattr(home, name)
                for name in ("people", "minutes", "diet", "profile")
                if getattr(one, name) == getattr(before, name)
            }
            names = tuple(name for name in one.names if name in at_home)
            return one._replace(**settled, names=names, use=tuple(food for food in one.use if food in there))

        self._before[:] = map(holds_now, self._before)
        self._undone[:] = map(holds_now, self._undone)
        self.keep(kitchen, holds_now(asked))
        return holds_now(asked)

    def _kept(self, kitchen: Household) -> tuple[Asked, Asked] | None:
        """What was asked for today, and what was settled then."""
        unkept = self._unkept if self._unkept.get("day") == kitchen.today else {}
        return _read(asked_note.found(kitchen) or unkept)


def words_of_tonight(kitchen: Household) -> str:
    """What is asked for of this evening beside what is settled, in words; empty where nothing is."""
    kept = _read(asked_note.found(kitchen))
    asked = None if kept is None else kept[0]
    return " · ".join(asked.words(kitchen)) if asked is not None and asked.differs(kitchen) else ""


def _plain(asked: Asked) -> dict[str, object]:
    """As a note keeps it."""
    plain = {name: list(value) if isinstance(value, tuple) else value for name, value in asked._asdict().items()}
    chosen = {"like": asked.like, "dish": asked.dish}
    return {**plain, **{name: None if one is None else one.model_dump(mode="json") for name, one in chosen.items()}}


def _read(note: dict[str, Any]) -> tuple[Asked, Asked] | None:
    """What a note says; nothing where there is none, or another program's form."""
    try:
        return _asked_of(note["asked"]), _asked_of(note["settled"])
    except (KeyError, TypeError, ValueError):
        return None


def _asked_of(plain: dict[str, Any]) -> Asked:
    """Raises KeyError, TypeError or ValueError for what no note of ours says."""
    like = dish = None
    if plain["like"] is not None:
        from calmlarder.compose.request import Liked

        like = Liked.model_validate(plain["like"])
    if plain.get("dish") is not None:  # a note of an earlier program has none
        from calmlarder.patterns.asked_dish import Dish

        dish = Dish.model_validate(plain["dish"])
    minutes, shared = plain["minutes"], plain["shared"]
    return Asked(
        people=int(plain["people"]), minutes=None if minutes is None else int(minutes), profile=str(plain["profile"]),
        diet=DIETS[DIETS.index(plain["diet"])], sitting=SITTINGS[SITTINGS.index(plain["sitting"])],
        use=tuple(map(str, plain["use"])), without=tuple(map(str, plain["without"])), like=like,
        names=tuple(map(str, plain["names"])), guests=int(plain["guests"]),
        avoid=tuple(ALLERGENS[ALLERGENS.index(one)] for one in plain["avoid"]),
        shared=None if shared is None else DIETS[DIETS.index(shared)], dish=dish,
    )  # fmt: skip


def _no(avoid: tuple[Allergen, ...]) -> list[str]:
    return [f"no {', '.join(map(allergen_words, dict.fromkeys(avoid)))}"] if avoid else []


def _guests(count: int) -> list[str]:
    return [f"{count} guest{'s' * (count > 1)}"] if count else []
