"""Where salt goes: on the plain main thing as it cooks, and at the end to taste."""

import re
from collections.abc import Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.finer import lifted_out, salted_before
from calmlarder.kitchen.piece import COOK, Dish, Progress, Told, Work
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.wording import sentence
from calmlarder.patterns.pattern import SERVED_FROM, Place, Step
from calmlarder.tables.vocabulary import CANNED_STATES

_TASTING = 1  # minute: common practice, no source
_SALTY = frozenset({"soy-sauce", "paste", "pickle", "olive"})
_SALTY_FOODS = frozenset(
    {"fish-sauce", "fish-sauce-vegan", "oyster-sauce", "feta", "halloumi", "bacon", "anchovies", "capers"}
)
# Where none of these is in the dish, pepper is what it has.
_GIVE_TASTE = frozenset({"acid", "citrus", "condiment", "herb", "sauce", "spice", "stock"})
_PEPPERED = re.compile(r"\b(?:and|with|of) pepper\b")
_PLAIN = "taste for salt, and grind pepper over"
_SALTS_ALL = frozenset({"soy-sauce", "paste", "stock"})  # what salts all that cooks with it
_WANTS_SALT = frozenset({"tofu", "tempeh", "seitan", "soya", "poultry", "meat", "fish", "shellfish"})
_SOLD_SEASONED = re.compile(
    r"sausage|burger|smoked|salami|nugget|finger|cakes|pudding|frankfurter|prosciutto|crab|corned"
)
_HOT = re.compile(
    r"chilli|pepper-(?:black|white)|(?:lemon|long|sichuan)-pepper|harissa|curry-p|garam|hot-sauce|gochu|tandoori"
)
_BEHIND = re.compile(r"(?= in (?!it\b.*\bwith)| to the p[ao]| on top\b|,|;|\.$| until)")
_TASTED_IN: frozenset[Place] = frozenset(
    {"pan", "pot", "microwave", "bowl", "oven", "dish"}
)  # tasted there before it is dished up


def salted(dish: Dish, progress: Progress, told: Told, things: Sequence[Filling]) -> Told:
    """A plain main thing is salted where it cooks, unless something salty is in the dish: in sentence and line."""
    plain = [one for one in things if _is_plain(dish, one)]
    if not plain or re.search(r"\bsalt\b", told.said):
        return told
    last = plain[-1]
    with_what = " and ".join(_seasoning(dish, last, told.said))
    if not with_what:
        return told
    name = progress.mention(plain)(last)
    seasoned = Told(_behind(told.said, name, with_what), _behind(told.line, last.food.name, with_what))
    if all(seasoned):
        return seasoned
    return told._replace(said=f"{told.said.rstrip('.')}. Season the {last.short} with {with_what}.")


def taste(dish: Dish, progress: Progress, behind: str) -> Iterator[Work]:
    """Nobody salts a box at the stove, a bowl of fruit, or a plate on which all is laid out as it is."""
    laid_out = all(step.place in SERVED_FROM - {"apart"} for step in dish.pattern.steps)
    if dish.pattern.eaten_cold or laid_out or not any(slot.role == "vegetable" for slot in dish.pattern.slots.values()):
        return
    salty = any(one.food.kind in _SALTY or one.food.id in _SALTY_FOODS or salted_before(one) for one in dish.fillings)
    baked = any(step.place == "dish" for step in dish.pattern.steps)  # lifted out before it went into its dish
    out = [] if baked else lifted_out(dish.fillings)
    lifts = f"lift out the {and_list(out)}; " if out else ""
    seasoned = any(one.food.kind in _GIVE_TASTE for one in dish.fillings)
    seasoned = seasoned or any(_PEPPERED.search(work.said) for work in progress.done)
    said = f"{lifts}{'taste before you salt' if salty else 'taste for salt' if seasoned else _PLAIN}{behind}"
    after = tuple(work.task.name for work in progress.done)
    yield Work(Task("taste", _TASTING, {COOK: 1}, after=after), "taste", f"{sentence(said)}.", said)


def tasted_before(dish: Dish) -> int:
    """The number of the step before which the dish is tasted; -1 where that is when all is done."""
    steps = dish.pattern.steps
    made = [number for number, step in enumerate(steps) if step.place not in SERVED_FROM]
    at = made[-1] + 1 if made and steps[made[-1]].place in _TASTED_IN else -1
    while 0 < at < len(steps) and (
        steps[at].words.startswith(("Stir", "Lift")) or is_folded(steps[at]) or steps[at].place == "toaster"
    ):
        at += 1
    return at


def is_folded(step: Step) -> bool:
    """Whether an omelette is folded in its pan, which comes the moment its eggs are set."""
    return step.place == "plate" and "fold, and take the pan off the heat" in step.words


def _is_plain(dish: Dish, one: Filling) -> bool:
    """Whether a main thing has no seasoning of its own."""
    if dish.pattern.eaten_cold or dish.role(one) != "protein" or one.food.kind not in _WANTS_SALT:
        return False
    if salted_before(one):
        return False
    return one.food.state not in CANNED_STATES and not _SOLD_SEASONED.search(one.food.name)


def _seasoning(dish: Dish, one: Filling, said: str) -> Iterator[str]:
    """Salt, unless something salty is in the dish, and pepper, unless something hot is."""
    salts = any(other.food.kind in _SALTS_ALL or other.food.id == "fish-sauce" for other in dish.fillings)
    if not salts:
        yield "a pinch of salt"
    peppered = any(re.search(r"\bpepper\b(?!s)", step.words) for step in dish.pattern.steps)
    hot = any(_HOT.search(other.food.id) for other in dish.fillings)
    if not peppered and not hot and one.food.kind != "tofu":
        yield "pepper"


def _behind(said: str, name: str, with_what: str) -> str:
    """The sentence with the seasoning behind that name; empty where there is no room for it."""
    place = said.find(name) + len(name)
    if name not in said or not _BEHIND.match(said, place):
        return ""
    return f"{said[:place]} with {with_what}{said[place:]}"
