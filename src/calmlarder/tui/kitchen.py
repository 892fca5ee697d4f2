"""What the screens work on: the tables, the store and the request of one run."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.history.days import Day, days_of
from calmlarder.history.eaten_up import Eaters
from calmlarder.history.ended import Ended
from calmlarder.history.felt import Felt
from calmlarder.history.told import box_eaten, eaten_of
from calmlarder.intake.eaten import ME, Eaten
from calmlarder.intake.profile import Profile, profile_named
from calmlarder.intake.stacking import Stacking
from calmlarder.intake.zone import EVENING, offsets_at, this_minute
from calmlarder.larder.box import box_named, boxes_of, with_boxes
from calmlarder.larder.freezer import frozen, thawed, why_not_frozen, why_not_thawed
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot
from calmlarder.larder.lot_line import lot_line
from calmlarder.larder.reading import LarderReader, Reading
from calmlarder.store.cooked import Boxing, all_there, cook, eat_box
from calmlarder.store.eaten import eaten_before, eaten_on, log, may_count
from calmlarder.store.larder import KeptLot, add, kept, lots_on_day, move
from calmlarder.store.ledger import eat_up, end, ended, feel, felt_since
from calmlarder.store.settled import Settled, settled
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import How, Why

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.plan.sittings import Key


class Kitchen:
    """The larder of one home on one day, and what is asked of tonight."""

    def __init__(self, store: Store, tables: Tables, today: date, folders: Sequence[Path] = ()) -> None:
        self.store = store
        self._plain_tables = tables
        self.tables = tables  # with the dishes that stand boxed in the larder
        self.folders = folders  # where the tables were read from: the checks read them again
        self.today = today
        self._reader = LarderReader(tables, today)

    def turn_to(self, day: date) -> None:
        """Another day has begun: lines are read, and days left are counted, from it."""
        self.today = day
        self._reader = LarderReader(self._plain_tables, day)

    def read(self, text: str) -> Reading | None:
        """What a typed line means."""
        return self._reader.read(text, "this line")

    def lots(self) -> list[KeptLot]:
        """What is there, what goes first before what keeps."""
        kept_lots = lots_on_day(self.store, self.today, self._plain_tables)
        self.tables = with_boxes(self._plain_tables, boxes_of(one.lot for one in kept_lots))
        return kept_lots

    def has_words(self, one: KeptLot, words: str) -> bool:
        """Whether the line, the food's name, its place or its owner holds every word that is sought."""
        text = f"{one.lot.line} {self.name_of(one.lot.food)} {one.lot.place} {one.lot.owner or ''}".casefold()
        return all(word in text for word in words.casefold().split())

    def figures_of(self, food: str) -> str:
        """One food whole, with the sources of its figures in words."""
        from calmlarder.render.food_text import food_text

        return food_text(self.tables.food_by_id[food], self.tables)

    def keep(self, lots: list[Lot]) -> None:
        """New lots as one action."""
        add(self.store, lots, f"add {lots[0].line}" if len(lots) == 1 else f"add {len(lots)} lots")

    def change(self, lot_id: int, lot: Lot) -> None:
        """A lot written anew."""
        self.store.change_lots({lot_id: kept(lot)}, f"edit {lot.line}")

    def line_of(self, lot: Lot) -> str:
        """The lot as a line to write anew: its own words while they still say what is there, else what is left of it.

        A line that says `yesterday` says another day tomorrow, and one of a lot cooked from says too much.
        """
        again = self.read(lot.line)
        same = again is not None and again.lot is not None and _as_it_stands(again.lot) == _as_it_stands(lot)
        return lot.line if same else lot_line(lot, self.tables)

    def freeze(self, one: KeptLot, grams: float | None = None) -> str | None:
        """A lot or grams of it put into the freezer, or out of it; why not, where it must stay as it is."""
        out = one.lot.place == "freezer"
        why = why_not_thawed(one.lot) if out else why_not_frozen(one.lot)
        if why is None:
            turned, words = (thawed, "thaw") if out else (frozen, "freeze")
            move(self.store, one, lambda lot: turned(lot, self.today), words, self.tables, grams)
        return why

    def profile(self) -> Profile:
        """The caps that hold."""
        return profile_named(self.settled().profile, self.tables)

    def to_freeze(self, lot: Lot) -> bool:
        """Whether it should go into the freezer today if it is not eaten."""
        return bool(freeze_today([lot], self.tables))

    def now(self) -> datetime:
        """The moment of the sitting, to the minute: now, or 18:00 of another day that was asked for."""
        moment = this_minute()
        return moment if moment.date() == self.today else datetime.combine(self.today, EVENING)

    def stacking(self, people: int) -> Stacking:
        """How what was eaten counts now: mine, or of several people whoever had the most."""
        now, held = self.now(), self.settled()
        who = (ME,) if people == 1 else ()
        return Stacking(
            at=now, window_hours=held.window_hours, fade=held.fade, own=held.own, who=who, offsets_min=offsets_at(now)
        )

    def sittings_done(self) -> "frozenset[Key]":
        """What was eaten today already."""
        from calmlarder.plan.done import sittings_done

        return sittings_done(eaten_on(self.store, self.today), self.today)

    def eaten(self) -> tuple[Eaten, ...]:
        """What was eaten in the hours that still count."""
        return may_count(self.store, self.now(), self.stacking(2).longest_hours)

    def cooked(self, dinner: "Dinner", uses: dict[str, int], entry: Eaten | None, boxing: Boxing) -> None:
        """Take what was cooked out of the larder, log each share and box the rest, as one action.

        Raises CannotGoOn where a lot is gone, or is another food by now.
        """
        with self.store.transaction():
            lots = self.lots()
            all_there(((use.lot, use.food, use.line) for use in dinner.uses), lots)
            cook(self.store, lots, dinner.title, uses, entry, boxing, self.today, self.tables)

    def remove(self, one: KeptLot) -> None:
        """A lot that was typed by mistake: nothing was eaten or thrown."""
        self.store.change_lots({one.id: None}, f"remove {one.lot.line}, typed by mistake")

    def entry_of(self, lot: Lot) -> Eaten:
        """What somebody says they ate, as an entry of my log."""
        return eaten_of(lot, self.now(), ME, self.today, self.tables, self.settled().tolerance)

    def ate(self, entry: Eaten) -> None:
        """What was eaten outside a planned sitting goes into my log."""
        log(self.store, entry)

    def box_entry(self, text: str) -> Eaten | None:
        """One box of the larder, where `boxed rice bowl` means the boxes of one dish."""
        if "box" not in text.casefold():  # most lines: the store need not be read while they are typed
            return None
        lots = [one.lot for one in self.lots()]
        food = box_named(text, lots, self.tables)
        return box_eaten(food, self.now(), ME, self.tables) if food is not None else None

    def eat_box(self, entry: Eaten) -> None:
        """One box less, and into my log. Raises CannotGoOn for a box that is not safe to eat."""
        eat_box(self.store, entry, self.lots(), self.today, self.tables)

    def feel(self, score: int, note: str) -> None:
        """How my gut feels now."""
        feel(self.store, Felt(at=self.now(), who=ME, score=score, note=note))

    def days(self, count: int) -> tuple[Day, ...]:
        """My last days, oldest first."""
        end_of_today = datetime.combine(self.today, time.max)
        eaten = [one.eaten for one in eaten_before(self.store, end_of_today, count * 24.0)]
        felt = [one.felt for one in felt_since(self.store, end_of_today - timedelta(days=count))]
        return days_of(eaten, felt, ME, self.today, count)

    def ended(self) -> list[Ended]:
        """The ledger up to today."""
        return [entry for entry in ended(self.store) if entry.on <= self.today]

    def take_out(self, one: KeptLot, how: How, why: Why | None = None, grams: float | None = None) -> None:
        """A lot, or grams of it, eaten, given or thrown away."""
        end(self.store, [one], self.tables, self.today, how, why, grams)

    def eat_up(self, one: KeptLot, eaters: Eaters, grams: float | None = None) -> list[Eaten]:
        """A lot, or so much of it, eaten outside a dinner, and into the log of those who ate; what is new there."""
        return [one.eaten for one in eat_up(self.store, [one], self.tables, self.today, eaters, grams)]

    def renamed(self, text: str, name: str) -> str:
        """A typed line with the chosen name for its food."""
        return self._reader.renamed(text, name)

    def settled(self) -> Settled:
        """Everything that was set, as it holds."""
        return settled(self.store.settings(), self.tables)

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
        value = self.store.settings().get(name, default)
        return value if isinstance(value, int) else default

    def word(self, name: str, choices: Sequence[str], default: str) -> str:
        """A word that was set and is still one of the choices, or the default."""
        value = self.store.settings().get(name, default)
        return value if value in choices else default

    def set(self, name: str, value: int | str) -> None:
        """Remember a number or a word."""
        self.store.set({name: value}, f"set {name} to {value}")

    def name_of(self, food: str) -> str:
        """A food's name."""
        return self.tables.food_by_id[food].name


def _as_it_stands(lot: Lot) -> tuple[object, ...]:
    return lot.food, lot.grams, lot.place, lot.dates, lot.condition, lot.owner, lot.owner_agrees
