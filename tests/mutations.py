"""Answers spoilt in one place each, every one so that a cook would do something wrong or be told a lie."""

import copy
import random
import re
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from typing import Any, NamedTuple


class Answer(NamedTuple):
    """A dinner as it is shown, with what was asked for and the larder, as plain values."""

    dinner: dict[str, Any]
    request: dict[str, Any]
    lots: list[dict[str, Any]]


Spoil = Callable[[Answer, random.Random], bool]  # False where there is nothing of the kind to spoil


def _use(answer: Answer, rng: random.Random) -> dict[str, Any]:
    found: dict[str, Any] = rng.choice(answer.dinner["uses"])
    return found


def _lot(answer: Answer, use: dict[str, Any]) -> dict[str, Any]:
    return next(lot for lot in answer.lots if lot["id"] == use["lot"])


def more_grams(answer: Answer, rng: random.Random) -> bool:
    use = _use(answer, rng)
    use["grams"] += rng.randint(1, 90)
    return True


def fewer_grams(answer: Answer, rng: random.Random) -> bool:
    use = _use(answer, rng)
    use["grams"] -= rng.randint(1, use["grams"])
    return True


def another_lot(answer: Answer, rng: random.Random) -> bool:
    use = _use(answer, rng)
    use["lot"] = rng.choice([lot["id"] for lot in answer.lots if lot["id"] != use["lot"]] + ["999.1"])
    return True


def other_words(answer: Answer, rng: random.Random) -> bool:
    _use(answer, rng)["line"] += ", fresh"
    return True


def past_its_use_by(answer: Answer, rng: random.Random) -> bool:
    on = date.fromisoformat(answer.request["today"]) - timedelta(days=rng.randint(1, 9))
    _lot(answer, _use(answer, rng))["dates"].append({"kind": "use-by", "on": on.isoformat()})
    return True


def use_by_behind_an_older_best_before(answer: Answer, rng: random.Random) -> bool:
    today = date.fromisoformat(answer.request["today"])
    days = [{"kind": kind, "on": (today - timedelta(days=ago)).isoformat()}
            for kind, ago in (("best-before", 9), ("use-by", 1))]  # fmt: skip
    lot = _lot(answer, _use(answer, rng))
    lot["dates"] = [*days, *lot["dates"]]
    return True


def for_the_bin(answer: Answer, rng: random.Random) -> bool:
    _lot(answer, _use(answer, rng))["to_bin"] = True
    return True


def somebody_elses(answer: Answer, rng: random.Random) -> bool:
    _lot(answer, _use(answer, rng)).update(owner="robin", owner_agrees=False)
    return True


def days_left(answer: Answer, rng: random.Random) -> bool:
    use = _use(answer, rng)
    use["days_left"] = 1 if use["days_left"] is None else use["days_left"] + rng.choice((-3, -1, 1, 5))
    return True


def protein_shown(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["per_person"]["protein_g"] += rng.choice((-4, -0.3, 0.3, 2, 10))
    return True


def energy_shown(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["per_person"]["energy_kcal"] += rng.choice((-200, -40, -2, 2, 40, 200))
    return True


def nothing_unknown(answer: Answer, rng: random.Random) -> bool:
    said = answer.dinner["at_least"]
    if said:
        said.pop(rng.randrange(len(said)))
    else:
        said.append("energy_kcal")
    return True


def oil_taken_for_granted(answer: Answer, rng: random.Random) -> bool:
    granted = answer.dinner["taken_for_granted"]
    if not granted:
        return False
    granted[0] = re.sub(r"\d+", lambda found: str(int(found[0]) + rng.randint(1, 4)), granted[0])
    return True


def fibre_shown(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["per_person"]["fibre_g"] += rng.choice((-1, 0.2, 3))
    return True


def weigh_list_shorter(answer: Answer, rng: random.Random) -> bool:
    lines = answer.dinner["weigh_first"]
    if not lines:
        return False
    lines.pop(rng.randrange(len(lines)))
    return True


def weigh_list_other(answer: Answer, rng: random.Random) -> bool:
    lines = answer.dinner["weigh_first"]
    if not lines:
        lines.append("60 g salt")
        return True
    number = rng.randrange(len(lines))
    lines[number] = re.sub(r"\d+", lambda found: str(int(found[0]) + rng.randint(1, 40)), lines[number], count=1)
    return True


def _steps_with_grams(answer: Answer) -> list[int]:
    return [number for number, step in enumerate(answer.dinner["steps"]) if re.search(r"\d g ", step)]


def step_grams(answer: Answer, rng: random.Random) -> bool:
    steps, number = answer.dinner["steps"], rng.choice(_steps_with_grams(answer))
    steps[number] = re.sub(r"(\d+)(?= g )", lambda found: str(int(found[0]) + 7), steps[number], count=1)
    return True


def step_of_something_else(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["steps"].insert(rng.randrange(len(answer.dinner["steps"])), "Add 20 g brown onion, and stir.")
    return True


_SIGNS = re.compile(
    r"steaming hot|no pink[^,.;]*|pink and firm[^,.;]*|run clear|left|flak\w+|opaque[^,.;]*|set\b|browned|open\b|firm\b"
)
_A_MOMENT = 3  # minutes; of what sizzles so long nobody is told how many
_COOKED_THROUGH = ("chicken-breast", "salmon", "cod", "prawns", "egg", "rice-white-cooked")


def sign_of_being_done(answer: Answer, rng: random.Random) -> bool:
    if not any(use["food"] in _COOKED_THROUGH for use in answer.dinner["uses"]):
        return False
    steps = [_SIGNS.sub("fine", step) for step in answer.dinner["steps"]]
    changed = steps != answer.dinner["steps"]
    answer.dinner["steps"] = steps
    return changed


def household_words(answer: Answer, rng: random.Random) -> bool:
    uses = [use for use in answer.dinner["uses"] if use["household"]]
    if not uses:
        return False
    use = rng.choice(uses)
    if re.search(r"\d", use["household"]):
        use["household"] = re.sub(r"\d+", lambda found: str(int(found[0]) + 1), use["household"], count=1)
    else:
        use["household"] = "about 3 cups"
    return True


def caution_left_out(answer: Answer, rng: random.Random) -> bool:
    lines = answer.dinner["cautions"]
    if lines:
        lines.pop(rng.randrange(len(lines)))
        return True
    return False


def lot_turned_soft(answer: Answer, rng: random.Random) -> bool:
    use = _use(answer, rng)
    lot = _lot(answer, use)
    if lot["condition"] or (use["days_left"] or 0) < 0:  # of what is past its best more is said already
        return False
    lot["condition"] = "slimy at one end"
    return True


def load_shown(answer: Answer, rng: random.Random) -> bool:
    loads = answer.dinner["per_person"]["loads_g"]
    loads[rng.choice(sorted(loads))] += rng.choice((0.05, 0.2))
    return True


def people_served(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["people"] += 1
    return True


def quicker(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["minutes"] -= rng.randint(1, 5)
    return True


_MINUTES = re.compile(r"\b\d+(?= minutes?\b)")


def minutes_in_a_step(answer: Answer, rng: random.Random) -> bool:
    steps = answer.dinner["steps"]
    numbers = [number for number, step in enumerate(steps) if _MINUTES.search(step)]
    if not numbers:
        return False
    by, number = rng.choice((-3, -1, 1, 4)), rng.choice(numbers)
    steps[number] = _MINUTES.sub(lambda found: str(int(found[0]) + by), steps[number], count=1)
    return True


def shorter_on_the_heat(answer: Answer, rng: random.Random) -> bool:
    """A moment that a step gives minutes, or that what comes in needs."""
    said = [moment for moment in answer.dinner["timeline"]
            if moment["equipment"] and moment["adds"] and moment["minutes"] > _A_MOMENT]  # fmt: skip
    if not said:
        return False
    rng.choice(said)["minutes"] -= rng.randint(1, 3)
    return True


def joins_at_another_time(answer: Answer, rng: random.Random) -> bool:
    joining = [moment for moment in answer.dinner["timeline"]
               if moment["adds"] and not moment["minutes"] and moment["what"].startswith("add ")]  # fmt: skip
    if not joining:
        return False
    rng.choice(joining)["start_min"] += rng.choice((-2, -1, 1, 2))
    return True


def other_work_in_the_timeline(answer: Answer, rng: random.Random) -> bool:
    timeline = answer.dinner["timeline"]
    timeline[rng.randrange(len(timeline))]["what"] += ", in the oven"
    return True


def work_left_out_of_the_steps(answer: Answer, rng: random.Random) -> bool:
    steps = answer.dinner["steps"]
    steps.pop(rng.randrange(len(steps)))
    return True


def left_out_food(answer: Answer, rng: random.Random) -> bool:
    answer.request["without"] = [*answer.request["without"], _use(answer, rng)["food"]]
    return True


def used_up(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["rescued"]["lots_finished"] = [*answer.dinner["rescued"]["lots_finished"], "soy sauce 1 l"]
    answer.dinner["rescued"]["finished_ids"] = [*answer.dinner["rescued"]["finished_ids"], "998.1"]
    return True


def rescued_grams(answer: Answer, rng: random.Random) -> bool:
    answer.dinner["rescued"]["grams"] += rng.randint(1, 300)
    return True


def twice_the_same_id(answer: Answer, rng: random.Random) -> bool:
    first, second = rng.sample(range(len(answer.lots)), 2)
    answer.lots[first]["id"] = answer.lots[second]["id"]
    return True


SPOILS: tuple[Spoil, ...] = (
    more_grams, fewer_grams, another_lot, other_words, past_its_use_by, use_by_behind_an_older_best_before,
    for_the_bin, somebody_elses, days_left, protein_shown, energy_shown,
    nothing_unknown, oil_taken_for_granted, fibre_shown, weigh_list_shorter, weigh_list_other,
    step_grams, step_of_something_else, sign_of_being_done, household_words, caution_left_out,
    lot_turned_soft, load_shown, people_served, quicker, minutes_in_a_step, shorter_on_the_heat,
    joins_at_another_time, other_work_in_the_timeline, work_left_out_of_the_steps,
    left_out_food, used_up, rescued_grams, twice_the_same_id,
)  # fmt: skip


def spoilt(answer: Answer, seed: int) -> Iterator[tuple[str, Answer]]:
    """The answer spoilt in each way that has something to spoil."""
    rng = random.Random(seed)
    for spoil in SPOILS:
        other = copy.deepcopy(answer)
        if spoil(other, rng):
            yield spoil.__name__, other
