"""What the screens work on: the tables, the store and the request of one run."""

from collections.abc import Sequence
from datetime import date, datetime, time
from pathlib import Path

from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader, Reading
from calmlarder.sitting.eaten import ME, Eaten
from calmlarder.sitting.portion import nearest_cap
from calmlarder.sitting.profile import Profile, profile_named
from calmlarder.sitting.stacking import WINDOW_HOURS, Stacking
from calmlarder.store.eaten import content_of, eaten_before
from calmlarder.store.larder import KeptLot, add, kept, lots_on_day, used_up
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables

_EVENING = time(18)  # the hour of a day that is not today: common practice, no source


class Kitchen:
    """The larder of one home on one day, and what is asked of tonight."""

    def __init__(self, store: Store, tables: Tables, today: date, folders: Sequence[Path] = ()) -> None:
        self.store = store
        self.tables = tables
        self.folders = folders  # where the tables were read from: the checks read them again
        self.today = today
        self._reader = LarderReader(tables, today)

    def read(self, text: str) -> Reading | None:
        """What a typed line means."""
        return self._reader.read(text, "this line")

    def lots(self) -> list[KeptLot]:
        """What is there, what goes first before what keeps."""
        return lots_on_day(self.store, self.today, self.tables)

    def has_words(self, one: KeptLot, words: str) -> bool:
        """Whether the line, the food's name, its place or its owner holds every word that is sought."""
        text = f"{one.lot.line} {self.name_of(one.lot.food)} {one.lot.place} {one.lot.owner or ''}".casefold()
        return all(word in text for word in words.casefold().split())

    def figures_of(self, food: str) -> str:
        """One food whole, with the sources of its figures in words."""
        from calmlarder.export.food_text import food_text

        return food_text(self.tables.food_by_id[food], self.tables)

    def keep(self, lots: list[Lot]) -> None:
        """New lots as one action."""
        add(self.store, lots, f"add {lots[0].line}" if len(lots) == 1 else f"add {len(lots)} lots")

    def change(self, lot_id: int, lot: Lot) -> None:
        """A lot written anew."""
        self.store.change_lots({lot_id: kept(lot)}, f"edit {lot.line}")

    def freeze(self, one: KeptLot) -> None:
        """A lot put into the freezer."""
        self.store.change_lots(
            {one.id: kept(one.lot.model_copy(update={"place": "freezer"}))}, f"freeze {one.lot.line}"
        )

    def profile(self) -> Profile:
        """The caps that hold."""
        return profile_named(self.word("profile", self.tables.profiles, "elimination"), self.tables)

    def portion_adds(self, food: str) -> str:
        """What one portion adds to the group it comes nearest to the cap of."""
        load = nearest_cap(self.tables.food_by_id[food], self.profile(), self.tables)
        return f"{load.grams:.2f} g {load.cap.group.replace('_', ' ')}" if load else ""

    def to_freeze(self, lot: Lot) -> bool:
        """Whether it should go into the freezer today if it is not eaten."""
        return bool(freeze_today([lot], self.tables))

    def now(self) -> datetime:
        """The moment of the sitting, to the minute: now, or 18:00 of another day that was asked for."""
        moment = datetime.now().replace(second=0, microsecond=0)
        return moment if moment.date() == self.today else datetime.combine(self.today, _EVENING)

    def stacking(self, people: int) -> Stacking:
        """How what was eaten counts now: mine, or of several people whoever had the most."""
        return Stacking(at=self.now(), who=(ME,) if people == 1 else ())

    def eaten(self) -> tuple[Eaten, ...]:
        """What was eaten in the hours that still count."""
        return tuple(one.eaten for one in eaten_before(self.store, self.now(), WINDOW_HOURS))

    def cooked(self, uses: list[tuple[str, str, int]], entry: Eaten) -> None:
        """Take what was cooked out of the larder and log each person's share, as one action."""
        left = used_up(self.lots(), uses)
        self.store.change_lots(left, f"cook {entry.title}", [content_of(entry)])

    def take_out(self, one: KeptLot, how: str) -> None:
        """A lot used up or thrown away."""
        self.store.change_lots({one.id: None}, f"{how} {one.lot.line}")

    def renamed(self, text: str, name: str) -> str:
        """A typed line with the chosen name for its food."""
        return self._reader.renamed(text, name)

    def number(self, name: str, default: int) -> int:
        """A whole number that was set, or the default."""
        value = self.store.settings().get(name, default)
        return value if isinstance(value, int) else default

    def word(self, name: str, choices: Sequence[str], default: str) -> str:
        """A word that was set and is still one of the choices, or the default."""
        value = self.store.settings().get(name, default)
        return value if value in choices else default

    def words(self, name: str) -> tuple[str, ...]:
        """A list of words that was set."""
        value = self.store.settings().get(name, "")
        return tuple(word for word in str(value).split(",") if word)

    def never(self) -> tuple[str, ...]:
        """Foods that are never wanted."""
        return tuple(food for food in self.words("never") if food in self.tables.food_by_id)

    def set(self, name: str, value: int | str) -> None:
        """Remember a number or a word."""
        self.store.set({name: value}, f"set {name} to {value}")

    def name_of(self, food: str) -> str:
        """A food's name."""
        return self.tables.food_by_id[food].name
