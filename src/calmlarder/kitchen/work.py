"""What one cook has to do for a dinner, piece by piece: weigh, chop, put on, add, serve.

A piece of work is told twice, as a sentence with its amounts and as a line of the timeline, and both come from here:
steps and timeline cannot differ. Minutes are common practice, no source.
"""

import math
import re
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import NamedTuple

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling, listed, one_of_each, was_cooked
from calmlarder.kitchen.finer import eggs_last, finer, left_in, lifted_out, salted_before
from calmlarder.kitchen.late import LATE_MINUTES, browned_first, dry_minutes, falls_away, held_back, is_wet
from calmlarder.kitchen.schedule import Task
from calmlarder.kitchen.wording import (
    OIL_TEASPOONS,
    Mention,
    egg_instead,
    egg_words,
    filled,
    fried_eggs,
    granted_fats,
    hot_through,
    in_pans,
    joins,
    own_words,
    says_done,
    sentence,
    wants_water,
    warmed_pulses,
    with_rest,
)
from calmlarder.patterns.pattern import HEATED, JOINED, TIMED_ROLES, Pattern, Place, Step
from calmlarder.tables.household import PINCH
from calmlarder.tables.vocabulary import CANNED_STATES, Method

COOK, RING, OVEN, MICROWAVE, PAN = "cook", "ring", "oven", "microwave", "pan"
WATER = "water "  # begins the name of the stage of a pot of water that comes to the boil
# Minutes of work in a kitchen: common practice, no source.
_WEIGHING = 1
_BY_HAND = 1  # minutes of a step in bowl, blender or on the plate that says no others
_BOILING_WATER = 5
_HEATING_OVEN = 12
_PREP_PER_100_G = (("peel", 1.5), ("cub", 1.0), ("slice", 0.8), ("chop", 0.8), ("strip", 0.8), ("shred", 0.8),
                   ("grate", 2.0), ("quarter", 0.5))  # fmt: skip
_LONGEST_PREP = 8
_THAWING = 4  # frozen leaves, under hot water or in the microwave, before they are squeezed
_LONGEST_WATCH = 4  # what fries longer is stirred now and then
_FRIED = 5  # as many times more than what was boiled and drained in its pot it matters that it is fried last. Ours
_BROWNING = 5  # minutes until meat has colour; it cooks through as it simmers
_A_POT = re.compile(r"\bin (?:an?|the) (?:[a-z-]+ )?p(?:ot|an)\b")
_WARMED = 2  # fat and what sizzles in it for no longer: then what fries in it goes in at once
_TOGETHER = 1  # things whose minutes differ by no more go in together
_SALTY = frozenset({"soy-sauce", "paste", "pickle", "olive"})
_SALTY_FOODS = frozenset(
    {"fish-sauce", "fish-sauce-vegan", "oyster-sauce", "feta", "halloumi", "bacon", "anchovies", "capers"}
)
_SALTS_ALL = frozenset({"soy-sauce", "paste", "stock"})  # what salts all that cooks with it
_WANTS_SALT = frozenset({"tofu", "tempeh", "seitan", "soya", "poultry", "meat", "fish"})
_SOLD_SEASONED = re.compile(
    r"sausage|burger|smoked|salami|nugget|finger|cakes|pudding|frankfurter|prosciutto|crab|corned"
)
_BEHIND = re.compile(r"(?= in (?!it\b.*\bwith)| to the p[ao]|,|;|\.$| until)")
_EMPTIED = re.compile(r"\b(?:lift(?: all)? out|drain|[Bb]ring|keep warm|off the heat|Slide)\b", re.IGNORECASE)
_TAKEN_OFF = re.compile(r"(?:,? and|;) (drain|lift out|keep warm|leave to cool)\b(?=[.,;]?$|\.)")
_HOLDS: dict[Place, dict[str, int]] = {
    "apart": {RING: 1}, "pan": {RING: 1, PAN: 1}, "pot": {RING: 1}, "oven": {OVEN: 1}, "dish": {OVEN: 1},
    "microwave": {MICROWAVE: 1}, "blender": {COOK: 1}, "bowl": {COOK: 1}, "plate": {COOK: 1},
}  # fmt: skip
_TASTED_IN = frozenset({"pan", "pot", "microwave", "bowl"})  # what is made there is tasted before it is dished up
_ON: dict[Place, str] = {"pan": "to the pan", "pot": "to the pot", "oven": "to the tray", "microwave": "to the rest"}


class Work(NamedTuple):
    """A piece of work: its task, the stage of the dish it belongs to, how it is told, and what comes in with it.

    `vessel` is what it happens in on the heat, empty for work by hand.
    """

    task: Task
    stage: str
    said: str
    line: str
    adds: tuple[str, ...] = ()  # ids of foods
    vessel: str = ""


class _Told(NamedTuple):
    """The same as a sentence and as a line of the timeline."""

    said: str
    line: str


class _Kitchen:
    """Writes the work of one dinner in the order of its pattern."""

    def __init__(self, pattern: Pattern, fillings: Sequence[Filling], people: int) -> None:
        self.fillings = one_of_each(fillings)
        main = [one for one in self.fillings if pattern.slots[one.slot].role == "protein"]
        eggs = bool(main) and all(one.slot == "protein" and one.food.id == "egg" for one in main)
        self.pattern = pattern = left_in(eggs_last(pattern, eggs), self.fillings)
        self.granted = granted_fats(pattern, self.fillings)
        self.oil = f"{OIL_TEASPOONS * people} tsp oil"
        self.done: list[Work] = []
        self.came_in: dict[str, list[str]] = {}  # the tasks after which a food is where the next step wants it
        self.heated: set[str] = set()
        self.last_at: dict[str, str] = {}
        self.held = held_back(pattern, self.fillings)
        self.waiting = {one.key for ones in self.held.values() for one in ones}
        self.browned_at, self.browned = browned_first(pattern, self.fillings)
        self.coloured: set[str] = set()  # what was browned and comes in a second time
        self.rest_melts = False
        self.rest_of = ""  # the fat that is left for what fries after what was lifted out

    def work(self) -> list[Work]:
        """All of it."""
        weighed = [f"{one.grams} g {one.food.name}" for one in self.fillings if one.weighed]
        if weighed:
            said = f"weigh {listed(weighed)}"
            self.done.append(Work(Task("weigh", _WEIGHING, {COOK: 1}, early=True), "weigh", sentence(said), said))
        for one in sorted(self.fillings, key=self._comes_in):
            minutes = prep_minutes(one)
            if minutes:
                after = ("weigh",) if weighed else ()
                task = Task(_prep(one), minutes, {COOK: 1}, after=after, early=True)
                said = f"{one.food.name} {one.prep}"
                self.done.append(Work(task, "ready", said, f"{one.food.name}: {one.prep}"))
        if any(step.place in {"oven", "dish"} for step in self.pattern.steps):
            said = f"heat the oven to {self.pattern.oven_c} °C"
            task = Task("heat oven", _HEATING_OVEN, {OVEN: 1})
            self.done.append(Work(task, "heat oven", sentence(said), said, vessel="oven"))
            self.last_at["oven"] = "heat oven"
        slots = {one.slot for one in self.fillings}
        made = [n for n, step in enumerate(self.pattern.steps) if step.place not in {"apart", "plate"}]
        tasted_at = made[-1] + 1 if made and self.pattern.steps[made[-1]].place in _TASTED_IN else -1
        while 0 < tasted_at < len(self.pattern.steps) and self.pattern.steps[tasted_at].words.startswith("Stir"):
            tasted_at += 1
        for number, step in enumerate(self.pattern.steps):
            if number == tasted_at:
                self.done += self._taste("")
            if step.happens(slots):
                self.done += self._apart(step, number) if step.place == "apart" else self._stage(step, number)
        self.done += self._left_over()
        if self.done[-1].stage == "taste":
            del self.done[-1]
        if not any(one.stage == "taste" for one in self.done):
            self.done += self._taste(", and serve")
        if not weighed:
            return self.done
        weighing, *others = self.done
        return [weighing, *(one._replace(task=one.task._replace(after=(*one.task.after, "weigh"))) for one in others)]

    def _comes_in(self, one: Filling) -> int:
        return next(number for number, step in enumerate(self.pattern.steps) if one.slot in step.slots)

    def _new(self, step: Step) -> list[Filling]:
        """What comes in with a step, the slowest first within a slot."""
        new = [one for one in self.fillings if one.slot in step.slots and one.key not in {*self.came_in, *self.waiting}]
        return sorted(new, key=lambda one: (step.slots.index(one.slot), -one.minutes))

    def _cooked_here(self, step: Step) -> list[Filling]:
        """What is put on the heat for the first time at a step."""
        if step.place not in HEATED:
            return []
        here = [one for one in self.fillings if one.slot in step.slots and one.key not in self.heated | self.waiting]
        return [one for one in here if self.pattern.slots[one.slot].method != "raw"]

    def _mention(self, new: Sequence[Filling]) -> Mention:
        new = [one for one in new if one.key not in self.coloured]

        def tell(one: Filling) -> str:
            if one in new and one.household == PINCH:
                return f"{PINCH} of {one.food.name}"
            if one in new and not one.weighed and one.counted:
                return one.counted
            if one in new and not one.weighed:
                return f"all {one.grams} g {one.food.name}" if one.whole else f"{one.grams} g {one.food.name}"
            return f"the {one.short}"

        return tell

    def _waits(self, step: Step, things: Sequence[Filling]) -> tuple[str, ...]:
        ready = [_prep(one) for one in things if prep_minutes(one)]
        weighed = ["weigh"] if any(one.weighed for one in things) else []
        earlier = [name for one in self.fillings if one.slot in step.slots for name in self.came_in.get(one.key, ())]
        if step.place in {"plate", "dish"}:  # served, or baked, when all before it is there
            earlier = [work.task.name for work in self.done if work.stage not in {"ready", "heat oven"}]
        return tuple(dict.fromkeys((*weighed, *ready, *earlier)))

    def _apart(self, step: Step, number: int) -> Iterator[Work]:
        """Each thing cooks by itself, unattended once it is on; what the step says besides comes behind it."""
        tail = step.words[step.references[0].end() :]
        for one in self._new(step):
            method = self.pattern.slots[one.slot].method
            stage = f"step {number} {one.key}"
            waits = self._waits(step, [one])
            if self.pattern.eaten_cold and one.food.state in ALREADY_COOKED:
                yield from self._cold(one, stage, waits)
                continue
            if wants_water(one, method):
                water = f"{WATER}{one.key}"
                said = f"bring a pot of salted water to the boil for the {one.short}"
                yield Work(Task(water, _BOILING_WATER, {RING: 1}), water, f"{sentence(said)}.", said, vessel=one.key)
                waits = (*waits, water)
            holds = _place_apart(method)
            self.came_in[one.key] = [stage]
            self.heated.add(one.key)
            said = own_words(one, method, self._mention([one])(one)) + tail
            line = own_words(one, method, f"the {one.food.name}") + tail
            said = self._with_sign(sentence(said), one)
            task = Task(stage, max(one.minutes, step.minutes or 0), holds, after=waits)
            yield Work(task, stage, said, line.rstrip("."), (one.food.id,), one.key)

    def _cold(self, one: Filling, stage: str, waits: tuple[str, ...]) -> Iterator[Work]:
        """What was cooked before is not warmed for a box that is eaten cold."""
        self.came_in[one.key] = [stage]
        self.heated.add(one.key)
        said = f"take {self._mention([one])(one)} cold from the fridge"
        line = f"take the {one.food.name} cold from the fridge"
        yield Work(Task(stage, 0, {}, after=waits), stage, f"{sentence(said)}.", line, (one.food.id,))

    def _with_sign(self, said: str, one: Filling) -> str:
        told = not one.done or says_done(said, one.done)
        return said if told else f"{said.rstrip('.')}. Cook the {one.short} until {one.done}."

    def _stage(self, step: Step, number: int) -> Iterator[Work]:
        stage = f"step {number}"
        if number == self.browned_at:
            yield self._brown(step)
        new, cooked = self._new(step), self._cooked_here(step)
        groups = self._groups(step, new, cooked)
        told = self._sentence(step, number, groups[0], new)
        if told is None:
            return
        late = self.held.get(number, ())
        groups += [list(late)] if late else []
        told, off = _without_end(told) if groups[1:] else (told, "")
        minutes = self._minutes(step, cooked)
        told = self._fat_left(step, number, groups[0], self._ended(told, minutes, cooked, groups))
        place = "oven" if step.place == "dish" else step.place
        waits = self._waits(step, groups[0])
        before = self.last_at.get(place)
        holds = _HOLDS[step.place]
        if step.place == "pan" and minutes <= _LONGEST_WATCH:
            holds = {**holds, COOK: 1}
        warmed = self._warmed(step, before)
        after = (*waits, *((before,) if before and before not in waits else ()))
        task = Task(stage, minutes, holds, after=after, at_end_of=before if self._goes_on(step, before) else None)
        if step.place == "pan":
            task = task._replace(weight=_FRIED)
        self.last_at[place] = stage
        vessel = place if step.place in HEATED else ""
        adds = tuple(one.food.id for one in groups[0] if one.key not in self.browned)
        work = Work(task, warmed.stage if warmed else stage, told.said, _as_line(told.line), adds, vessel)
        later = list(self._later(step, work, groups))
        if off:
            last = later[-1]
            # Where salt or a sign has a sentence of its own in between, the timeline tells only what is put in.
            line_off = f"{last.line}; then {off}" if ". " not in last.said else last.line
            later[-1] = last._replace(said=f"{last.said} Then {off}.", line=line_off)
        self.waiting -= {one.key for one in late}
        for one in (*new, *late, *(one for one in self.fillings if one.slot in step.slots)):
            if one.key not in self.waiting:
                self.came_in[one.key] = [stage]
        self.heated.update(one.key for one in (*cooked, *late))
        yield work
        yield from later

    def _sentence(self, step: Step, number: int, first: Sequence[Filling], new: Sequence[Filling]) -> _Told | None:
        """What is said of a step and of what goes in at once; None where nothing is to be done."""
        there = [
            one
            for one in self.fillings
            if one.slot in step.slots and one.key not in self.waiting and (one in first or one not in new)
        ]
        part = "half of " if self._keeps_fat(step, number) else "the rest of " if number == self.browned_at else ""
        mention = self._mention(first)
        oil = "the rest of the oil" if number == self.browned_at else f"{part}{self.oil}"

        def tell(one: Filling) -> str:
            return f"{part * self._is_fat(one)}{mention(one)}"

        def name(one: Filling) -> str:
            called = one.food.name if one in new else f"the {one.short}"
            return f"{part * self._is_fat(one)}{called}"

        said = filled(step, there, self.granted, tell, oil)
        line = filled(step, there, self.granted, name, re.sub(r"\d+ tsp ", "", oil))
        if said is None or line is None:
            return None
        if number == self.browned_at:
            said, line = (_A_POT.sub("in the pot", words) for words in (said, line))
        here = [one for one in first if one in self._cooked_here(step)]
        if step.place in {"pan", "pot"} and here and "crack in" not in step.words:
            instead = self._instead([one for one in here if self.pattern.slots[one.slot].role == "protein"])
            if instead is not None:
                said, line = instead(said), instead(line)
        if self._reheats(here):
            said, line = hot_through(said), hot_through(line)
        said, line = (finer(words, step.place, there) for words in (said, line))
        if step.place == "pan":
            said, line = (in_pans(words, self.pattern, self.fillings) for words in (said, line))
        return _Told(*self._salted(said, line, [one for one in here if one.key not in self.browned]))

    def _ended(
        self, told: _Told, minutes: int, cooked: Sequence[Filling], groups: Sequence[Sequence[Filling]]
    ) -> _Told:
        """With its minutes behind it, and how a cook sees that what goes in at once is done."""
        said = told.said
        if cooked and minutes > 1 and "minute" not in said:
            said = f"{said} About {minutes} minutes."
        joins_later = [one for group in groups[1:] for one in group]
        for one in cooked:
            if one not in joins_later:
                said = self._with_sign(said, one)
        return _Told(said, told.line)

    def _fat_left(self, step: Step, number: int, first: Sequence[Filling], told: _Told) -> _Told:
        """With the fat that was kept back for what fries now."""
        fries = step.place in {"pan", "pot"} and any(one in first for one in self._cooked_here(step))
        if self.rest_of and fries and "lift out" not in step.words:
            told = _Told(*(with_rest(self.rest_of, self.rest_melts, words) for words in told))
            self.rest_of = ""
        if self._keeps_fat(step, number):
            fat = next((one for one in first if self._is_fat(one)), None)
            self.rest_of = "oil" if fat is None else fat.short
            self.rest_melts = fat is not None and fat.food.kind != "oil"
        return told

    def _brown(self, step: Step) -> Work:
        """Raw meat that simmers later is browned first, in half of the fat that the pot is warmed with."""
        meat = [one for one in self.fillings if one.key in self.browned]
        fats = [one for one in self.fillings if one.slot in step.slots and self._is_fat(one)]
        vessel = _A_POT.search(step.words)
        where = vessel[0] if vessel else "in a pot"
        mention = self._mention([*meat, *fats])
        fat = listed([mention(one) for one in fats]) or self.oil
        said = f"heat half of {fat} {where}; brown {listed([mention(one) for one in meat])} in it, and lift out."
        fat = listed([one.food.name for one in fats]) or "oil"
        line = f"heat half of {fat} {where}; brown {listed([one.food.name for one in meat])} in it, and lift out"
        said, line = self._salted(sentence(said), line, meat)
        for one in fats:
            self.came_in[one.key] = ["brown"]
        self.coloured |= self.browned
        self.last_at["pot"] = "brown"
        task = Task("brown", _BROWNING, _HOLDS["pot"], after=self._waits_alone([*meat, *fats]))
        adds = tuple(one.food.id for one in (*meat, *fats))
        return Work(task, "brown", f"{said} About {_BROWNING} minutes.", line, adds, "pot")

    def _warmed(self, step: Step, before: str | None) -> Work | None:
        """The work before it in its pan or pot, where fat warms: nothing else is done between the two."""
        if before is None or step.place not in {"pan", "pot"}:
            return None
        work = next(one for one in self.done if one.task.name == before)
        return work if work.task.minutes <= _WARMED and "lift" not in work.said else None

    def _goes_on(self, step: Step, before: str | None) -> bool:
        """Whether what was in its pan or pot before is still there, and would cook on if the cook left it."""
        if before is None or step.place not in {"pan", "pot"}:
            return False
        there = [one for one in self.done if one.task.name == before or (one.task.before_end_of or "?")[0] == before]
        told = " ".join(one.said for one in there)
        return not _EMPTIED.search(told) and not step.words.startswith("Bring")

    def _is_fat(self, one: Filling) -> bool:
        return self.pattern.slots[one.slot].role == "fat"

    def _has_fat(self, step: Step) -> bool:
        names = [name for name in step.slots if self.pattern.slots[name].role == "fat"]
        return any(name in self.granted or any(one.slot == name for one in self.fillings) for name in names)

    def _keeps_fat(self, step: Step, number: int) -> bool:
        """Whether half of the fat waits for what fries in the same pan after this is lifted out."""
        if step.place not in {"pan", "pot"} or not self._has_fat(step):
            return False
        slots = {one.slot for one in self.fillings}
        after = [one for one in self.pattern.steps[number + 1 :] if one.place == step.place and one.happens(slots)]
        told = [one for one in after if not falls_away(one, slots, self.pattern)]
        if "lift out" not in step.words and not (told and "lift out" in told[0].words):
            return False
        first = next((one for one in told if "lift out" not in one.words and self._fries(one)), None)
        return first is not None and not is_wet(first, ()) and not self._has_fat(first)

    def _fries(self, step: Step) -> bool:
        sizzles = [one for one in self.fillings if one.slot in step.slots and one.key not in self.waiting]
        roles = {self.pattern.slots[one.slot].role for one in sizzles if one.key not in self.came_in}
        return bool(roles & {"aromatic", "spice"}) or dry_minutes(step, self.pattern, self.fillings) > LATE_MINUTES

    def _groups(self, step: Step, new: Sequence[Filling], cooked: Sequence[Filling]) -> list[list[Filling]]:
        """What goes in at once, and what joins it later so that all is done together."""
        if step.place not in JOINED:
            return [list(new)]
        slots = self.pattern.slots
        timed = [one for one in new if one in cooked and one.minutes and slots[one.slot].role in TIMED_ROLES]
        eggs = [one for one in timed if self._loose_egg(one)]
        timed = sorted((one for one in timed if one not in eggs), key=lambda one: -one.minutes)
        groups: list[list[Filling]] = []
        for one in timed:
            if groups and groups[-1][0].minutes - one.minutes <= _TOGETHER:
                groups[-1].append(one)
            else:
                groups.append([one])
        first = groups[0] if groups else eggs[:1]
        rest = [one for one in new if one not in timed and one not in eggs]
        at_once = [one for one in new if one in first or one in rest]
        return [at_once, *groups[1:], *([one] for one in eggs if one not in first)]

    def _loose_egg(self, one: Filling) -> bool:
        """An egg where the pattern's words are for tofu, fish or meat."""
        return one.food.id == "egg" and set(self.pattern.slots[one.slot].kinds) != {"egg"}

    def _instead(self, main: Sequence[Filling]) -> Callable[[str], str] | None:
        """How a sentence for tofu, fish or meat is put, where all that it is said of is eggs, or cooked pulses."""
        if main and all(self._loose_egg(one) for one in main):
            return fried_eggs if self._laid_on_top(main[0].slot) else egg_instead
        if main and all(one.food.kind == "pulse" for one in main):
            return partial(warmed_pulses, main[0].food.name)
        return None

    def _reheats(self, things: Sequence[Filling]) -> bool:
        """Whether all that comes to the heat was cooked before, and is but made hot."""
        timed = [one for one in things if self.pattern.slots[one.slot].role in TIMED_ROLES]
        return bool(timed) and all(was_cooked(one.food) for one in timed)

    def _laid_on_top(self, slot: str) -> bool:
        """Whether it is lifted out of the pan whole and laid on the dish at the end."""
        steps = [step for step in self.pattern.steps if slot in step.slots]
        lifted = any("lift out" in step.words for step in steps)
        return lifted and any(step.place == "plate" and re.search(r"\b[Ll]ay\b", step.words) for step in steps)

    def _salted(self, said: str, line: str, things: Sequence[Filling]) -> tuple[str, str]:
        """A plain main thing is salted where it cooks, unless something salty is in the dish: in sentence and line."""
        plain = [one for one in things if self._wants_salt(one)]
        if not plain or re.search(r"\bsalt\b", said):
            return said, line
        with_salt = _behind(said, self._mention(plain)(plain[-1])), _behind(line, plain[-1].food.name)
        if all(with_salt):
            return with_salt
        return f"{said.rstrip('.')}. Season the {plain[-1].short} with a pinch of salt.", line

    def _wants_salt(self, one: Filling) -> bool:
        slot = self.pattern.slots[one.slot]
        if self.pattern.eaten_cold or slot.role != "protein" or one.food.kind not in _WANTS_SALT:
            return False
        if salted_before(one) or one.food.state in CANNED_STATES or _SOLD_SEASONED.search(one.food.name):
            return False
        return not any(other.food.kind in _SALTS_ALL or other.food.id == "fish-sauce" for other in self.fillings)

    def _on(self, step: Step, first: Filling | None) -> str:
        """Where what comes later joins; with several pots on, the pot is named by what is in it."""
        pots = [one for one in self.pattern.steps if one.place in {"apart", "pot"}]
        if first is not None and step.place == "pot" and any(one.place == "apart" for one in pots):
            return f"to the pot with the {first.short}"
        return _ON[step.place]

    def _later(self, step: Step, joined: Work, groups: Sequence[Sequence[Filling]]) -> Iterator[Work]:
        if len(groups) < 2:
            return
        timed = [one for one in groups[0] if one.minutes and self.pattern.slots[one.slot].role in TIMED_ROLES]
        on = self._on(step, timed[0] if timed else None)
        for group in groups[1:]:
            left = LATE_MINUTES if group[0].key in self.waiting else group[0].minutes
            names = [self._mention(group)(one) for one in group]
            shorts = [one.food.name for one in group]
            if group[0].food.kind == "egg":
                whole = self._laid_on_top(group[0].slot)
                said, line = (egg_words(step.place, name, whole) for name in (names[0], shorts[0]))
            else:
                lead = f"for the last {left} minute{'s' * (left != 1)}"
                fat = self._has_fat(step)
                said, line = (joins(group[0], step.place, fat, listed(called), on) for called in (names, shorts))
                said = f"{lead} {said}"
            said = f"{sentence(said)}."
            if step.place == "pan":
                said, line = (in_pans(words, self.pattern, self.fillings) for words in (said, line))
            said, line = self._salted(said, line, group)
            for one in group:
                said = self._with_sign(said, one)
            name = f"{joined.task.name} {group[0].key}"
            task = Task(name, 0, {}, after=self._waits_alone(group), before_end_of=(joined.task.name, left))
            adds = tuple(one.food.id for one in group if one.key not in self.browned)
            yield Work(task, joined.stage, said, line, adds, joined.vessel)

    def _waits_alone(self, group: Sequence[Filling]) -> tuple[str, ...]:
        weighed = ("weigh",) if any(one.weighed for one in group) else ()
        return (*weighed, *(_prep(one) for one in group if prep_minutes(one)))

    def _minutes(self, step: Step, cooked: Sequence[Filling]) -> int:
        quick = {"aromatic", "spice", "topping"}  # they cook on with what follows
        slow = [one.minutes for one in cooked if self.pattern.slots[one.slot].role not in quick]
        longest = max(slow, default=0)
        return max(longest, step.minutes if step.minutes is not None else _BY_HAND)

    def _left_over(self) -> Iterator[Work]:
        """What no step asked for, since its step has nothing to happen for (oil, where nothing is fried)."""
        left = [one for one in self.fillings if one.key not in self.came_in]
        if left:
            said = f"finish with {listed([self._mention(left)(one) for one in left])}"
            line = f"finish with {listed([one.food.name for one in left])}"
            after = tuple(work.task.name for work in self.done)
            adds = tuple(one.food.id for one in left)
            yield Work(Task("finish", _BY_HAND, {COOK: 1}, after=after), "finish", f"{sentence(said)}.", line, adds)

    def _taste(self, behind: str) -> Iterator[Work]:
        """Nobody salts a box at the stove, or a bowl of fruit."""
        if self.pattern.eaten_cold or not any(slot.role == "vegetable" for slot in self.pattern.slots.values()):
            return
        salty = any(
            one.food.kind in _SALTY or one.food.id in _SALTY_FOODS or salted_before(one) for one in self.fillings
        )
        out = lifted_out(self.fillings)
        lifts = f"lift out the {listed(out)}; " if out else ""
        said = f"{lifts}{'taste before you salt' if salty else 'taste for salt'}{behind}"
        after = tuple(work.task.name for work in self.done)
        yield Work(Task("taste", _BY_HAND, {COOK: 1}, after=after), "taste", f"{sentence(said)}.", said)


def work_of(pattern: Pattern, fillings: Sequence[Filling], people: int = 1) -> list[Work]:
    """Every piece of work of a dinner, in the order of its pattern."""
    return _Kitchen(pattern, fillings, people).work()


def prep_minutes(filling: Filling) -> int:
    """Whole minutes at the board for one food; nothing for what is poured or spooned."""
    prep = filling.prep
    if not prep or filling.how == "staple":
        return 0
    rate = next((rate for word, rate in _PREP_PER_100_G if word in prep), 0.4)
    first = _THAWING if "thawed" in prep and "squeezed" in prep else 0
    return min(_LONGEST_PREP, first + max(1, math.ceil(rate * filling.grams / 100)))


def _prep(filling: Filling) -> str:
    return f"prep {filling.key}"


def _place_apart(method: Method) -> dict[str, int]:
    return {"microwave": {MICROWAVE: 1}, "roast": {OVEN: 1}, "stir-fry": {RING: 1}}.get(method, {RING: 1})


def _behind(said: str, name: str) -> str:
    """The sentence with a pinch of salt behind that name; empty where there is no room for it."""
    place = said.find(name) + len(name)
    if name not in said or not _BEHIND.match(said, place):
        return ""
    return f"{said[:place]} with a pinch of salt{said[place:]}"


def _without_end(told: _Told) -> tuple[_Told, str]:
    """Sentence and line without draining or lifting out, and which of them it was: that comes when all is in."""
    found = _TAKEN_OFF.search(told.said)
    if found is None or _TAKEN_OFF.search(told.line) is None:
        return told, ""
    without = _Told(*(_TAKEN_OFF.sub("", words) for words in told))
    return without, "lift all out" if found[1] == "lift out" else found[1]


def _as_line(said: str) -> str:
    return (said[:1].lower() + said[1:]).rstrip(".")
