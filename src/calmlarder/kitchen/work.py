"""What one cook has to do for a dinner, piece by piece: weigh, chop, put on, add, serve.

A piece of work is told twice, as a sentence with its amounts and as a line of the timeline, and both come from here:
steps and timeline cannot differ. Minutes are common practice, no source.
"""

import re
from collections.abc import Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.by_itself import boiling_water, cooked_by_itself
from calmlarder.kitchen.fats import A_POT, brown, fat_left, in_spoons, keeps_fat, left_in_its_pot, stays_browned
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.finer import finer, half_first, lifted_out
from calmlarder.kitchen.joining import (
    groups_of,
    instead,
    joining,
    left_of,
    reheats,
    signed,
    taken_off,
)
from calmlarder.kitchen.lidded import foil_off, lid_off, splash, splashed, under_a_lid
from calmlarder.kitchen.piece import (
    COOK,
    HOLDS,
    OVEN,
    TOASTER,
    Dish,
    Progress,
    Told,
    Work,
    dish_of,
)
from calmlarder.kitchen.preparing import made_ready_before, preparing, weighing
from calmlarder.kitchen.salting import is_folded, salted, taste, tasted_before
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.step_minutes import as_long_as_it_takes, minutes_of_step
from calmlarder.kitchen.two_pans import in_a_large_pot, in_batches, in_pans, on_trays, tossed_in_a_pot
from calmlarder.kitchen.wording import (
    filled,
    hot_through,
    sentence,
)
from calmlarder.patterns.pattern import HEATED, Pattern, Step

_BY_HAND = 1  # minutes of a step in bowl, blender or on the plate that says no others
_HEATING_OVEN = 12
_LONGEST_WATCH = 4  # what fries longer is stirred now and then
_FRIED = 5  # as many times more than what was boiled and drained in its pot it matters that it is fried last. Ours
_WARMED = 2  # fat and what sizzles in it for no longer: then what fries in it goes in at once
_NOTHING_TO_DO = frozenset({"Serve.", "Ladle into bowls."})  # which tasting it before it is served says, too
_EMPTIED = re.compile(r"\b(?:lift(?: all)? out|drain|[Bb]ring|keep warm|off the heat|Slide)\b", re.IGNORECASE)
_INTO_BOILING_WATER = re.compile(r"\binto (\w+(?: times)? its volume) of boiling salted water\b")
_AS_IT_SAYS = re.compile(r"\b(?:crack in|the patties)\b")  # eggs in words of their own, and what is fried in shape
_TAKEN_OFF = re.compile(
    r"(?:,? and|;) (drain|lift out(?: onto a warm plate under foil)?|"
    r"keep warm|leave to cool|let the water boil off|(?:mash|crush) (?:half|some|a few)[^;.]*)"
    r"\b(?=[.,;]?$|\.)"
)


def work_of(pattern: Pattern, fillings: Sequence[Filling], people: int = 1) -> list[Work]:
    """Every piece of work of a dinner, in the order of its pattern."""
    return _Kitchen(dish_of(pattern, fillings, people)).work()


class _Kitchen:
    """Writes the work of one dinner in the order of its pattern."""

    def __init__(self, dish: Dish) -> None:
        self.dish = dish
        self.progress = Progress(waiting={one.key for ones in dish.held.values() for one in ones})

    def work(self) -> list[Work]:
        """All of it."""
        dish, done = self.dish, self.progress.done
        done += weighing(dish)
        weighed = bool(done)
        done += preparing(dish)
        done += self._oven()
        slots = {one.slot for one in dish.fillings}
        tasted_at = tasted_before(dish)
        for number, step in enumerate(dish.pattern.steps):
            if number == tasted_at:
                done += taste(dish, self.progress, "")
            if step.happens(slots):
                done += self._apart(step, number) if step.place == "apart" else self._stage(step, number)
        done += self._left_over()
        if done[-1].stage == "taste":
            del done[-1]
        if not any(one.stage == "taste" for one in done):
            done += taste(dish, self.progress, ", and serve")
        if not weighed:
            return done
        first, *others = done
        return [first, *(one._replace(task=one.task._replace(after=(*one.task.after, "weigh"))) for one in others)]

    def _oven(self) -> Iterator[Work]:
        if any(step.place in {"oven", "dish"} for step in self.dish.pattern.steps):
            said = f"heat the oven to {self.dish.pattern.oven_c} °C"
            self.progress.last_at["oven"] = "heat oven"
            task = Task("heat oven", _HEATING_OVEN, {OVEN: 1})
            yield Work(task, "heat oven", sentence(said), said, vessel="oven")

    def _waits(self, step: Step, things: Sequence[Filling]) -> tuple[str, ...]:
        earlier = [name for one in self.dish.named_by(step) for name in self.progress.came_in.get(one.key, ())]
        if step.place in {"plate", "dish"} and not is_folded(step):  # served, or baked, when all before it is there
            earlier = [work.task.name for work in self.progress.done if work.stage not in {"ready", "heat oven"}]
        return tuple(dict.fromkeys((*made_ready_before(things), *earlier)))

    def _apart(self, step: Step, number: int) -> Iterator[Work]:
        return cooked_by_itself(self.dish, self.progress, step, number, self._waits)

    def _stage(self, step: Step, number: int) -> Iterator[Work]:
        dish, progress = self.dish, self.progress
        if number == dish.browned_at:
            yield brown(dish, progress, step)
            if stays_browned(dish):
                return
        new, cooked = progress.new(dish, step), progress.cooked_at(dish, step)
        groups = groups_of(dish, step, new, cooked)
        told = self._sentence(number, groups[0], new)
        if told is None or told.said in _NOTHING_TO_DO:
            return
        late = dish.held.get(number, ())
        for left in sorted({left_of(dish, one) for one in late}, reverse=True):
            groups.append([one for one in late if left_of(dish, one) == left])
        minutes = minutes_of_step(dish, step, cooked)
        wet_at, wet = splash(dish, step, cooked, minutes, told.said) if step.place != "oven" else foil_off(cooked)
        told, off = _without_end(told) if groups[1:] or wet_at else (told, "")
        told = fat_left(dish, progress, number, groups[0], self._ended(told, minutes, step, groups))
        task, stage = self._task(step, number, minutes, groups[0])
        measured = _INTO_BOILING_WATER.search(told.said)
        if measured:
            water = boiling_water(groups[0][0], measured[1])
            task = task._replace(after=(*task.after, water.task.name))
            yield water
        adds = tuple(one.food.id for one in groups[0] if one.key not in dish.browned)
        vessel = _vessel(step) if step.place in HEATED or step.place == TOASTER else ""
        work = Work(task, stage, told.said, _as_line(told.line), adds, vessel)
        later = list(joining(dish, progress, step, work, groups))
        if wet_at:
            with_it = any((one.task.before_end_of or ("", 0))[1] == wet_at for one in later)
            later = [*lid_off(later, wet_at, wet), splashed(work, wet_at, wet, with_it)]
        if off:
            later.append(taken_off(work, off, [one for group in groups for one in group if dish.is_timed(one)]))
        progress.waiting -= {one.key for one in late}
        for one in (*new, *late, *dish.named_by(step)):
            if one.key not in progress.waiting:
                progress.came_in[one.key] = [task.name]
        progress.heated.update(one.key for one in (*cooked, *late))
        yield work
        yield from later

    def _task(self, step: Step, number: int, minutes: int, first: Sequence[Filling]) -> tuple[Task, str]:
        """The task of a step, and the stage it is told in; its place is taken from then on."""
        name, place = f"step {number}", "pan" if is_folded(step) else _vessel(step)
        waits = self._waits(step, first)
        before = self.progress.last_at.get(place)
        holds = HOLDS[step.place]
        stirred = step.place == "pot" and any(one.stiff for one in first)
        if stirred or (step.place == "pan" and minutes <= _LONGEST_WATCH):
            holds = {**holds, COOK: 1}
        after = (*waits, *((before,) if before and before not in waits else ()))
        task = Task(name, minutes, holds, after=after, at_end_of=before if self._goes_on(step, before) else None)
        if step.place == "pan":
            task = task._replace(weight=_FRIED)
        warmed = self._warmed(step, before)
        self.progress.last_at[place] = name
        return task, warmed.stage if warmed else name

    def _sentence(self, number: int, first: Sequence[Filling], new: Sequence[Filling]) -> Told | None:
        """What is said of a step and of what goes in at once; None where nothing is to be done."""
        dish, progress, step = self.dish, self.progress, self.dish.pattern.steps[number]
        there = [
            one for one in dish.named_by(step) if one.key not in progress.waiting and (one in first or one not in new)
        ]
        browned = number == dish.browned_at
        part = "half of " if keeps_fat(dish, progress, number) else "the rest of " if browned else ""
        part = "half of the rest of " if browned and part == "half of " else part
        mention = progress.mention(first)
        oil = f"{part}the oil" if browned else f"{part}{dish.oil_in(step)}"

        def tell(one: Filling) -> str:
            return f"{part}{in_spoons(one, mention(one))}" if part and dish.role(one) == "fat" else mention(one)

        def name(one: Filling) -> str:
            if part and dish.role(one) == "fat":
                return f"{part}the {one.food.name if one in new else one.short}"
            return one.food.name if one in new else f"the {one.short}"

        said = filled(step, there, dish.granted, tell, oil)
        line = filled(step, there, dish.granted, name, re.sub(r"\d+ tsp ", "the " if part else "", oil))
        if said is None or line is None:
            return None
        if browned:
            said, line = (A_POT.sub(f"in the {step.place}", words) for words in (said, line))
        here = [one for one in first if one in progress.cooked_at(dish, step)]
        if step.place in {"pan", "pot"} and here and not _AS_IT_SAYS.search(step.words):
            put = instead(dish, [one for one in here if dish.role(one) == "protein"])
            if put is not None:
                said, line = put(said), put(line)
        if stays_browned(dish) and any(one.key in dish.browned for one in here):
            said, line = (left_in_its_pot(dish, words) for words in (said, line))
        if reheats(dish, here):
            said, line = hot_through(said), hot_through(line)
        said, line = (finer(words, step.place, there) for words in (said, line))
        said, line = (half_first(words, there, dish.fillings) for words in (said, line))
        if step.place in {"pan", "plate"}:
            said, line = (in_pans(words, dish.pattern, dish.fillings) for words in (said, line))
            said, line = (tossed_in_a_pot(words, dish.pattern, dish.fillings) for words in (said, line))
        if step.place == "pot":
            said, line = (in_batches(words, here) for words in (said, line))
            said, line = (in_a_large_pot(words, dish.pattern, dish.fillings) for words in (said, line))
        if step.place in {"pan", "pot"}:
            said, line = (under_a_lid(words, here) for words in (said, line))
        if step.place == "dish":
            said, line = (self._lifted_before(words) for words in (said, line))
        if step.place == "oven":
            said, line = (on_trays(words, dish.pattern, dish.fillings) for words in (said, line))
        return salted(dish, progress, Told(said, line), [one for one in here if one.key not in dish.browned])

    def _lifted_before(self, said: str) -> str:
        """A sentence of a dish that is baked: bay leaves and the like come out of the pot first."""
        out = lifted_out([one for one in self.dish.fillings if one.key in self.progress.came_in])
        if not out:
            return said
        first = f"lift out the {and_list(out)}; {said[:1].lower()}{said[1:]}"
        return sentence(first) if said[:1].isupper() else first

    def _warmed(self, step: Step, before: str | None) -> Work | None:
        """The work before it in its pan or pot, where fat warms: nothing else is done between the two."""
        if before is None or step.place not in {"pan", "pot"}:
            return None
        work = next(one for one in self.progress.done if one.task.name == before)
        return work if work.task.minutes <= _WARMED and "lift" not in work.said else None

    def _goes_on(self, step: Step, before: str | None) -> bool:
        """Whether what was in its pan or pot before is still there, and would cook on if the cook left it."""
        if before is None or not (step.place in {"pan", "pot"} or is_folded(step)):
            return False
        done = self.progress.done
        there = [one for one in done if one.task.name == before or (one.task.before_end_of or "?")[0] == before]
        told = " ".join(one.said for one in there)
        return not _EMPTIED.search(told) and not step.words.startswith("Bring")

    def _ended(self, told: Told, minutes: int, step: Step, groups: Sequence[Sequence[Filling]]) -> Told:
        """With its minutes behind it, and how a cook sees that what goes in at once is done."""
        told = Told(*(as_long_as_it_takes(words, minutes) for words in told))
        said, cooked = told.said, self.progress.cooked_at(self.dish, step)
        if (cooked or step.place == "dish") and minutes > 1 and "minute" not in said:
            said = f"{said} About {minutes} minutes."
        joins_later = [one for group in groups[1:] for one in group]
        for one in cooked:
            if one not in joins_later:
                said = signed(self.dish, said, one)
        return told._replace(said=said)

    def _left_over(self) -> Iterator[Work]:
        """What no step asked for, since its step has nothing to happen for (oil, where nothing is fried)."""
        left = [one for one in self.dish.fillings if one.key not in self.progress.came_in]
        if left:
            said = f"finish with {and_list([self.progress.mention(left)(one) for one in left])}"
            line = f"finish with {and_list([one.food.name for one in left])}"
            after = tuple(work.task.name for work in self.progress.done)
            adds = tuple(one.food.id for one in left)
            yield Work(Task("finish", _BY_HAND, {COOK: 1}, after=after), "finish", f"{sentence(said)}.", line, adds)


def _vessel(step: Step) -> str:
    return "oven" if step.place == "dish" else step.place


def _without_end(told: Told) -> tuple[Told, str]:
    """Sentence and line without draining or lifting out, and which of them it was: that comes when all is in."""
    found = _TAKEN_OFF.search(told.said)
    if found is None or _TAKEN_OFF.search(told.line) is None:
        return told, ""
    without = Told(*(_TAKEN_OFF.sub("", words) for words in told))
    return without, found[1]


def _as_line(said: str) -> str:
    return (said[:1].lower() + said[1:]).rstrip(".")
