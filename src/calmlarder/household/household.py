"""A home on one day: its store, its settings, and the tables with the dishes that are boxed in its larder."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from calmlarder.history.ended import Ended
from calmlarder.household.kept_lots import KeptLot, lots_on_day, to_answer
from calmlarder.household.person import NO_LIMITS
from calmlarder.household.settings import Settled, people_of, settled
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.eaten import ME, Eaten
from calmlarder.intake.own_profile import BASE
from calmlarder.intake.profile import OWN, Profile, profile_named
from calmlarder.intake.zone import EVENING, this_minute
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot, lot_line
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.manner import MEASURES, NAMINGS, Manner, Measures, Naming, manner_of
from calmlarder.store import unread
from calmlarder.store.copies import nothing_kept
from calmlarder.store.logs import eaten_on, ended, entries, may_count
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import home_folder
from calmlarder.tables.vocabulary import Allergen, Diet

if TYPE_CHECKING:
    from calmlarder.cookbook.lines import LineReader
    from calmlarder.larder.lines_to_lots import LarderReader
    from calmlarder.larder.meaning import Reading
    from calmlarder.matching.names.lexicon import Lexicon
    from calmlarder.plan.sittings import Key
    from calmlarder.tables.rows import Food


_Word = TypeVar("_Word", bound=str)


class Eating(NamedTuple):
    """What holds for who eats: the limits, the diet, the allergens to avoid."""

    profile: Profile
    diet: Diet
    avoid: tuple[Allergen, ...]


class Household:
    """What commands and screens work on, in a folder or where it is kept as a rule. Use it as a context, or `close` it.

    The store is opened, and made where there is none, when it is first asked for; without that nothing is made.
    """

    def __init__(self, home: Path | None, tables: Tables, today: date, folders: Sequence[Path] = ()) -> None:
        self.home = home_folder(home)
        self.plain_tables = tables
        self.tables = tables  # with the dishes that are boxed in the larder
        self.folders = folders  # where the tables were read from: the checks read them again
        self.today = today
        self._store: Store | None = None
        self._manner: tuple[tuple[Measures, Naming], Manner] | None = None

    @cached_property
    def _reader(self) -> "LarderReader":
        """Made when the first line is read: taking every name of every food apart is a good part of a start."""
        from calmlarder.larder.lines_to_lots import LarderReader

        return LarderReader(self.plain_tables, self.today, self._lexicon)

    @cached_property
    def recipe_reader(self) -> "LineReader":
        """Made with the first recipe, and the same for all of them."""
        from calmlarder.cookbook.lines import LineReader

        return LineReader(self.plain_tables, self._lexicon)

    @cached_property
    def _lexicon(self) -> "Lexicon":
        from calmlarder.matching.names.kept_names import lexicon_of

        return lexicon_of(self.plain_tables, self.folders)

    def get_ready_to_read(self) -> None:
        """Long before the first line is typed, so that nobody waits for it then."""
        _ = self._reader

    @property
    def store(self) -> Store:
        """The store. Raises CannotGoOn where it cannot be used."""
        if self._store is None:
            self._store = Store.at(self.home)
        return self._store

    @property
    def is_kept(self) -> bool:
        """Whether anything was ever kept here."""
        return self._store is not None or not nothing_kept(self.home)

    def close(self) -> None:
        """Close the store, if it was opened."""
        if self._store is not None:
            self._store.close()
            self._store = None

    def __enter__(self) -> "Household":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def turn_to(self, day: date) -> None:
        """Another day has begun: lines are read, and days left are counted, from it."""
        self.today = day
        if "_reader" in self.__dict__:
            self._reader = self._reader.on_day(day)

    def reader_of(self, day: date) -> "LarderReader":
        """What reads lines that were typed on a day, with what words mean in this house now."""
        self._reader.remember(self.words())
        self._reader.leave_out(self._is_not_eaten)
        kept = self.store.lots() if self.is_kept else []
        lines = (str(row.content.get("line", "")) for row in kept)
        self._reader.as_written_at_home(self.settled().measures == "american", lines)
        return self._reader.on_day(day)

    def read(self, text: str) -> "Reading | None":
        """What a typed line means; a warning sign in it is answered, and is no food."""
        from calmlarder.household.signs_in_lines import heard
        from calmlarder.larder.meaning import clearer

        reader = self.reader_of(self.today)
        reading = reader.read(text, "this line")
        if reading is not None and reading.to_answer is not None and (other := reader.in_its_tongue([text])):
            reading = clearer(reading, other.read(text, "this line"))
        return None if reading is None else heard(reading)

    def read_all(self, lines: Iterable[str], source: str) -> "tuple[Reading, ...]":
        """What many lines of a source mean, but for comments."""
        from calmlarder.household.signs_in_lines import heard

        return tuple(map(heard, self.reader_of(self.today).read_all(lines, source)))

    def _is_not_eaten(self, food: "Food") -> bool:
        """Whether I eat none of a food, whatever the amount."""
        home = self.settled()
        return food.id in home.never or not suits_diet(food, home.diet) or bool(allergens_met(food, home.avoid))

    def words(self) -> dict[str, tuple[str, ...]]:
        """What words mean in this house: ids of foods by the words."""
        found = self.setting("words", {}) if self.is_kept else {}
        return {str(said): tuple(map(str, foods)) for said, foods in found.items() if isinstance(foods, list)}

    def remember_words(self, words: Mapping[str, tuple[str, ...]]) -> None:
        """Keep what words mean in this house."""
        self.store.set({"words": {said: list(foods) for said, foods in words.items()}}, "remember words")

    def lots(self) -> list[KeptLot]:
        """What is there, what goes first before what keeps; nothing where nothing was ever kept."""
        if not self.is_kept:
            return []
        kept_lots = lots_on_day(self.store, self.today, self.plain_tables)
        self.tables = with_boxes(self.plain_tables, boxes_of(one.lot for one in kept_lots))
        return kept_lots

    def to_answer(self) -> list[ToAnswer]:
        """What is kept and cannot be read as it is: the cook is asked."""
        return to_answer(self.store, self.today, self.plain_tables) if self.is_kept else []

    def unread(self) -> tuple[str, ...]:
        """What could not be read since this was last asked, in words."""
        return tuple(unread.take())

    def look_at_place(self) -> None:
        """Raises CannotGoOn where the store was deleted or replaced under this program."""
        self.store.look_at_place()

    @property
    def is_untouched(self) -> bool:
        """Whether nothing was set and nothing is there."""
        return not self.store.settings() and not self.store.lots()

    def version(self) -> int:
        """Another number after another program has written."""
        return self.store.version()

    def setting(self, name: str, default: Any = None) -> Any:
        """What was set, as it is kept."""
        return self.store.settings().get(name, default)

    def noted(self, name: str) -> Any:
        """A note of the program to itself; None where there is none."""
        return self.store.noted(name) if self.is_kept else None

    def note(self, name: str, value: object) -> bool:
        """Keep a note of the program to itself; whether it could be. An answer is shown all the same."""
        try:
            self.store.remember(name, value)
        except CannotGoOn:
            return False
        return True

    def undo(self) -> str | None:
        """Take the last change back; its words, or None when there is none."""
        return self.store.undo()

    def redo(self) -> str | None:
        """Do the last change taken back again; its words, or None when there is none."""
        return self.store.redo()

    def has_words(self, one: KeptLot, words: str) -> bool:
        """Whether the line, the food's name, its place or its owner holds every word that is sought."""
        text = f"{one.lot.line} {self.name_of(one.lot.food)} {one.lot.place} {one.lot.owner or ''}".casefold()
        return all(word in text for word in words.casefold().split())

    def line_of(self, lot: Lot) -> str:
        """The lot as a line to write anew: its own words while they still say what is there, else what is left of it.

        A line that says `yesterday` says another day tomorrow, and one of a lot cooked from says too much.
        """
        again = self.read(lot.line)
        same = again is not None and again.lot is not None and _as_it_stands(again.lot) == _as_it_stands(lot)
        return lot.line if same else lot_line(lot, self.tables)

    def eating(self, profile: str | None, diet: Diet | None, avoid: Sequence[Allergen]) -> Eating:
        """What holds for who eats: as asked, else as settled here; allergens join those that are settled."""
        home = self.settled()
        return Eating(
            self.profile_named(profile) if profile else self.profile(),
            diet or home.diet,
            tuple(dict.fromkeys((*home.avoid, *avoid))),
        )

    def profile(self) -> Profile:
        """The limits that hold for me: while a challenge of mine goes on, those of elimination."""
        from calmlarder.household.going_on import is_challenged  # it knows the household, too

        return self.profile_named(BASE if self.is_kept and is_challenged(self, ME) else self.settled().profile)

    @property
    def profiles(self) -> tuple[str, ...]:
        """Names of the sets of limits that I may choose: of the tables, my own where any are known, and none."""
        me = people_of(self.settled())[0]
        return (*self.tables.profiles, *((OWN,) if me.own_limits else ()), NO_LIMITS)

    def profile_named(self, name: str) -> Profile:
        """The profile of that name, limits of my own among them. Raises CannotGoOn where there is none."""
        me = people_of(self.settled())[0]
        if name not in {OWN, NO_LIMITS}:
            return profile_named(name, self.tables)
        if name == OWN and not me.own_limits:
            remedy = "`calmlarder challenge` finds them, `calmlarder people set me --limit` takes them from a dietitian"
            raise CannotGoOn([Problem(where="--profile", what="no limits of your own are known", remedy=remedy)])
        return me.model_copy(update={"profile": name}).limits(self.tables)

    def to_freeze(self, lot: Lot) -> bool:
        """Whether it should go into the freezer today if it is not eaten."""
        return bool(freeze_today([lot], self.tables))

    def now(self) -> datetime:
        """The moment of the sitting, to the minute: now, or 18:00 of another day that was asked for."""
        moment = this_minute()
        return moment if moment.date() == self.today else datetime.combine(self.today, EVENING)

    def sittings_done(self) -> "frozenset[Key]":
        """What was eaten today already."""
        from calmlarder.plan.sittings import sittings_done

        return sittings_done(eaten_on(self.store, self.today), self.today) if self.is_kept else frozenset()

    def eaten(self, at: datetime, hours: float) -> tuple[Eaten, ...]:
        """What was eaten in the hours before a moment, and may still count then."""
        return may_count(self.store, at, hours) if self.is_kept else ()

    def eaten_since(self, since: datetime) -> tuple[Eaten, ...]:
        """What was eaten since a moment, whoever ate it."""
        return tuple(entry for _, entry in entries(self.store, since.isoformat())) if self.is_kept else ()

    def ended(self) -> list[Ended]:
        """The ledger up to today."""
        return [entry for entry in ended(self.store) if entry.on <= self.today]

    def renamed(self, text: str, name: str) -> str:
        """A typed line with the chosen name for its food."""
        return self._reader.renamed(text, name)

    def settled(self) -> Settled:
        """Everything that was set, as it holds; the usual where nothing was ever kept."""
        return settled(self.store.settings() if self.is_kept else {}, self.tables)

    def foods_meant(self, text: str) -> tuple[str, ...]:
        """Ids of the foods that a typed name may mean: one where it is clear."""
        reading = self.read(text)
        if reading is None:
            return ()
        match = reading.match
        found = [match.food.id] if match.food is not None else [one.food for one in match.candidates]
        return tuple(dict.fromkeys(found))

    def number(self, name: str, default: int) -> int:
        """A whole number that was set, or the default."""
        value = self.setting(name, default)
        return value if isinstance(value, int) else default

    def word(self, name: str, choices: Sequence[_Word], default: _Word) -> _Word:
        """A word that was set and is still one of the choices, or the default."""
        value = self.setting(name, default)
        return value if value in choices else default

    def set(self, name: str, value: int | str) -> None:
        """Remember a number or a word."""
        self.store.set({name: value}, f"set {name} to {value}")

    def name_of(self, food: str) -> str:
        """A food's name, as it is called here."""
        return self.manner.name(self.tables.food_by_id[food].name)

    @property
    def manner(self) -> Manner:
        """How amounts, heat and names are read here."""
        measures: Measures = self.word("measures", MEASURES, "metric") if self.is_kept else "metric"
        naming: Naming = self.word("names", NAMINGS, "british") if self.is_kept else "british"
        if self._manner is None or self._manner[0] != (measures, naming):
            self._manner = ((measures, naming), manner_of(measures, naming, self.tables))
        return self._manner[1]


def _as_it_stands(lot: Lot) -> tuple[object, ...]:
    return lot.food, lot.grams, lot.place, lot.dates, lot.condition, lot.owner, lot.owner_agrees
