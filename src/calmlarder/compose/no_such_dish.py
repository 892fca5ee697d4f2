"""A dish was asked for, and what is there makes none of it: what each of its patterns wants and does not find."""

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.and_list import and_list
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.patterns.pattern import Pattern, Slot
from calmlarder.tables.vocabulary import Diet, Kind, Role

_MOST_NAMED = 3  # dishes that are named, those that lack least first: ours
_MOST_KINDS = 3  # of food that are named for a place: ours
_NO_PLURAL = frozenset({
    "rice", "pasta", "bread", "flour", "tofu", "tempeh", "soya", "seitan", "cheese", "yoghurt", "fish", "shellfish",
    "poultry", "meat", "milk", "stock", "cream", "oil", "butter",
})  # fmt: skip
_MAIN: frozenset[Role] = frozenset({"base", "protein", "vegetable", "liquid"})  # told by kinds of food
_FOR: Mapping[Role, str] = MappingProxyType(
    {"protein": "a protein food", "vegetable": "a vegetable that fits", "acid": "something sour"}
)
_FLESH: frozenset[Kind] = frozenset({"meat", "poultry"})
_FISH: frozenset[Kind] = frozenset({"fish", "shellfish"})
_NOT_NAMED: Mapping[Diet, frozenset[Kind]] = MappingProxyType(
    {
        "vegan": _FLESH | _FISH | {"egg", "cheese", "milk", "butter"},
        "vegetarian": _FLESH | _FISH,
        "pescatarian": _FLESH,
    }
)


class _Lacks(NamedTuple):
    pattern: Pattern
    what: tuple[str, ...]

    @property
    def words(self) -> str:
        return f"{self.pattern.id.replace('-', ' ')} wants {and_list(self.what)}"


def other_sittings(patterns: Sequence[Pattern], wanted: DinnerRequest) -> tuple[str, ...]:
    """A sentence where the dish that is asked for is made at other sittings only; nothing where it is none."""
    if wanted.dish is None:
        return ()
    made = [pattern for pattern in patterns if pattern.id in wanted.dish.patterns]
    sittings = tuple(dict.fromkeys(sitting for pattern in made for sitting in pattern.sittings))
    if not sittings or wanted.sitting in sittings:
        return ()
    meals = " or ".join("packed lunch" if sitting == "packed" else sitting for sitting in sittings)
    return (f"{wanted.dish.said}: made here for another meal, {meals}",)


def lacks_for_dish(problems: Sequence[PatternProblem], wanted: DinnerRequest) -> tuple[str, ...]:
    """A sentence on what dishes want that is not there, where none of them can be filled, else nothing."""
    if wanted.dish is None or not problems or any(problem.fillable for problem in problems):
        return ()
    lacking = sorted(
        (_Lacks(problem.pattern, tuple(_lacking(problem))) for problem in problems),
        key=lambda one: (len(one.what), one.pattern.id),
    )
    each = [what for what in lacking[0].what if all(what in one.what for one in lacking)]
    if each:
        return (f"{wanted.dish.none_of_it} without {and_list(each)}",)
    told = "; ".join(one.words for one in lacking[:_MOST_NAMED])
    return (f"{wanted.dish.none_of_it}: {told}",)


def _lacking(problem: PatternProblem) -> Iterator[str]:
    """What stands in no lot: slots that must be filled, and groups of which one must."""
    slots = problem.pattern.slots
    for name, slot in slots.items():
        if len({option.key for _, option in problem.in_slot(name)}) < slot.items[0]:
            yield _told(slot, problem.wanted.diet)
    for names in problem.pattern.one_of:
        if not any(map(problem.in_slot, names)) and not any(slots[name].items[0] for name in names):
            yield _either(list(dict.fromkeys(_told(slots[name], problem.wanted.diet) for name in names)))


def _told(slot: Slot, diet: Diet) -> str:
    """`potatoes`, `rice or noodles`, `tofu, pulses, eggs or the like`, `something sour`, `a spice`."""
    kinds = [_several(kind.replace("-", " ")) for kind in slot.kinds if kind not in _NOT_NAMED.get(diet, ())]
    if slot.role not in _MAIN or not kinds or (slot.role == "vegetable" and len(kinds) > 1):
        return _FOR.get(slot.role, f"a {slot.role}")
    return _either(kinds if len(kinds) <= _MOST_KINDS else [*kinds[:_MOST_KINDS], "the like"])


def _either(words: Sequence[str]) -> str:
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else words[0]


def _several(kind: str) -> str:
    if kind.split()[-1] in _NO_PLURAL:
        return kind
    if kind == "boxed":
        return "a box of a cooked dish"
    if kind.endswith("leaf"):
        return f"{kind[:-1]}ves"
    return f"{kind}es" if kind.endswith(("o", "ch", "sh")) else f"{kind}s"
