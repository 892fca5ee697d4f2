"""Fat in a pan or pot: what fries first gets half of it, what fries after that was lifted out gets the rest."""

import re
from collections.abc import Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.finer import FATTY
from calmlarder.kitchen.granted_oil import fries_in_its_own
from calmlarder.kitchen.heat import HIGH
from calmlarder.kitchen.late import LATE_MINUTES, SLIMY, dry_minutes, falls_away, is_wet
from calmlarder.kitchen.piece import HOLDS, Dish, Progress, Told, Work
from calmlarder.kitchen.preparing import made_ready_before
from calmlarder.kitchen.salting import salted
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.two_pans import in_batches, in_pans, minutes_of_batches
from calmlarder.kitchen.wording import Mention, crisps, sentence, with_rest, with_sign
from calmlarder.patterns.pattern import Step

# What simmers with all else of a stew, so that nothing returns to the pot by itself.
_JOINS_THE_REST = re.compile(
    r"^Add \{[a-z,]*\bprotein\b[a-z,]*\} to the pot, then|, then (?:add )?\{[a-z,]*\bprotein\b[a-z,]*\};"
)
A_POT = re.compile(r"\bin (?:an?|the) (?:[a-z-]+ )?p(?:ot|an)\b")
# Minutes until meat has colour, it cooks through as it simmers, and until tofu has: common practice, no source
_BROWNING, _BROWNING_TOFU = 5, 8


def keeps_fat(dish: Dish, progress: Progress, number: int) -> bool:
    """Whether half of the fat of a step waits for what fries in the same pan after this is lifted out."""
    step = dish.pattern.steps[number]
    if step.place not in {"pan", "pot"} or not dish.has_fat(step):
        return False
    slots = {one.slot for one in dish.fillings}
    after = [one for one in dish.pattern.steps[number + 1 :] if one.place == step.place and one.happens(slots)]
    told = [one for one in after if not falls_away(one, slots, dish.pattern)]
    if "lift out" not in step.words and not (told and "lift out" in told[0].words):
        return False
    if fries_in_its_own(dish.pattern, dish.fillings) or any(one.food.id in FATTY for one in dish.named_by(step)):
        return False
    first = next((one for one in told if "lift out" not in one.words and _fries(dish, progress, one)), None)
    return first is not None and not is_wet(first, ()) and not dish.has_fat(first)


def fat_left(dish: Dish, progress: Progress, number: int, first: Sequence[Filling], told: Told) -> Told:
    """With the fat that was kept back for what fries now; what this step keeps back is remembered."""
    step = dish.pattern.steps[number]
    fries = step.place in {"pan", "pot"} and any(one in first for one in progress.cooked_at(dish, step))
    if progress.rest_of and fries and "lift out" not in step.words:
        told = Told(*(with_rest(progress.rest_of, progress.rest_melts, words) for words in told))
        progress.rest_of = ""
    if keeps_fat(dish, progress, number):
        fat = next((one for one in dish.named_by(step) if dish.role(one) == "fat"), None)
        progress.rest_of = "oil" if fat is None else fat.short
        progress.rest_melts = fat is not None and fat.food.kind != "oil"
    return told


def in_spoons(one: Filling, mentioned: str) -> str:
    """`4 tsp olive oil (16 g)` in place of `16 g olive oil`: a part of it is poured by the spoon, not on a scale."""
    grams = f"{one.grams} g {one.food.name}"
    return mentioned.replace(grams, f"{one.spoons} {one.food.name} ({one.grams} g)", 1) if one.spoons else mentioned


def brown(dish: Dish, progress: Progress, step: Step) -> Work:
    """Raw meat or tofu that simmers later is browned first, in half of the fat that the pot is warmed with.

    Mince that is left in its pot has all of it. Okra takes longer than what browns with it.
    """
    meat = [one for one in dish.fillings if one.key in dish.browned]
    fats = [one for one in dish.named_by(step) if dish.role(one) == "fat"]
    vessel = A_POT.search(step.words)
    where = vessel[0] if vessel else f"in a {step.place}"
    mention = progress.mention([*meat, *fats])

    slimy, quick = [one for one in meat if one.food.id in SLIMY], [one for one in meat if one.food.id not in SLIMY]

    def put(fat: str, called: Mention) -> str:
        first, then = [and_list([called(one) for one in ones]) for ones in (slimy or quick, quick if slimy else ())]
        with_it = f", {then} with it for the last {_browning(quick)} minutes" if then else ""
        part, out = ("", "") if stays_browned(dish) else ("half of ", ", and lift out")
        return f"heat {part}{fat} {where} on {HIGH} heat; brown {first} in it{with_it}{out}"

    fat = and_list([in_spoons(one, mention(one)) for one in fats]) or dish.oil
    said = f"{put(fat, mention)}."
    line = put(f"the {and_list([one.food.name for one in fats]) or 'oil'}", lambda one: one.food.name)
    if step.place == "pan":
        said, line = (in_pans(words, dish.pattern, dish.fillings) for words in (said, line))
    else:
        said, line = (in_batches(words, meat) for words in (said, line))
    told = salted(dish, progress, Told(sentence(said), line), meat)
    for one in fats:
        progress.came_in[one.key] = ["brown"]
    progress.coloured |= dish.browned
    progress.last_at[step.place] = "brown"
    # Okra is done when it comes out: among what is wet it is only made hot.
    done = [one.minutes for one in meat if one.food.id in SLIMY]
    done += [one.food.minutes["stir-fry"] for one in meat if crisps(one)]
    minutes = max([_browning(meat), *done])
    minutes = minutes_of_batches(minutes, meat) if step.place == "pot" else minutes
    task = Task("brown", minutes, HOLDS[step.place], after=made_ready_before([*meat, *fats]))
    adds = tuple(one.food.id for one in (*meat, *fats))
    said = f"{told.said} About {minutes} minutes."
    for one in meat:
        if crisps(one):
            said = with_sign(said, one)
    return Work(task, "brown", said, told.line, adds, step.place)


def _browning(things: Sequence[Filling]) -> int:
    """Minutes until they have colour."""
    return max(_BROWNING if one.food.kind in {"meat", "poultry"} else _BROWNING_TOFU for one in things)


def stays_browned(dish: Dish) -> bool:
    """Whether mince that was browned is left in its pot: nothing but fat would be warmed there before it returns."""
    if dish.browned_at is None:
        return False
    meat = [one for one in dish.fillings if one.key in dish.browned]
    warms = dish.pattern.steps[dish.browned_at]
    alone = all(dish.role(one) == "fat" for one in dish.named_by(warms)) and warms.place == "pot"
    joins = next((one for one in dish.pattern.steps[dish.browned_at + 1 :] if meat[0].slot in one.slots), None)
    told = joins is not None and _JOINS_THE_REST.search(joins.words) is not None
    return alone and told and all(one.food.id.endswith("-mince") for one in meat)


def left_in_its_pot(dish: Dish, said: str) -> str:
    """A sentence that would put browned mince back into the pot in which it was left."""
    for one in (one for one in dish.fillings if one.key in dish.browned):
        the = rf"(?:the )?\b(?:{re.escape(one.short)}|{re.escape(one.food.name)})"
        there = f"the {one.short} in the pot"
        alone = re.sub(rf"\b([Aa]dd) {the} to the pot, then (.+?)(?=;)", rf"\1 \2 to {there}", said, count=1)
        if alone != said:
            return alone
        said = re.sub(rf", then (?:add )?{the}(?=;)", "", said, count=1)
        said = re.sub(rf"{the}(?: and |, )|(?:,| and) {the}\b", "", said, count=1)
        over = re.sub(r"\binto the pot\b", f"over {there}", said, count=1)
        said = re.sub(r"\bto the pot\b", f"to {there}", over, count=1)
    return said


def _fries(dish: Dish, progress: Progress, step: Step) -> bool:
    sizzles = [one for one in dish.named_by(step) if one.key not in progress.waiting]
    roles = {dish.role(one) for one in sizzles if one.key not in progress.came_in}
    return bool(roles & {"aromatic", "spice"}) or dry_minutes(step, dish.pattern, dish.fillings) > LATE_MINUTES
