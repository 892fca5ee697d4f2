"""What no cook leaves out, and what no cook puts together."""

import re
from collections.abc import Collection, Sequence

from calmlarder.compose.eats import protein_thing
from calmlarder.compose.presses import CURED
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.taste import SEASONED_SITTINGS, SESAME, SOUR_KINDS, SYRUP, is_sweet_spice, is_unsalted_nuts
from calmlarder.compose.variables import DishVariables
from calmlarder.patterns.pattern import Slot
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

MOST_PROTEINS = 2  # on one plate: common practice, no source
_NOT_WITH_FISH = frozenset({"meat", "poultry", "tofu", "tempeh", "seitan", "soya"})
_WITHOUT_CHEESE = frozenset({"fish", "shellfish"})  # what is hot takes none that is cold
_OFFAL = frozenset({"liver"})  # of which kidneys are: the same of cheese
_SALTS_FISH = CURED - {"ham", "salami"}  # a slice of cold ham is a second main thing
_GRATED = frozenset({"parmesan", "grana-padano", "pecorino", "vegan-parmesan"})  # over mozzarella or ricotta, too
# What was salted or smoked, and what would salt it once more: common practice, no source.
_SALTED_FISH = frozenset({
    "haddock-smoked", "salmon-smoked", "mackerel-smoked", "salt-cod", "salt-cod-soaked", "fish-dried",
    "herring-pickled",
})  # fmt: skip
_SALTY_FISH = frozenset({"anchovies"})
_SMOKED_BY_NAME = re.compile(r"\b(kippers?|bloaters?|smoked|cured)\b")  # herring's row holds the fresh and the smoked
# In a pot or a pie smoked haddock lies beside other fish; what is smoked or salted through, and what comes in crumbs,
# is a main thing by itself. The same.
_BY_ITSELF = frozenset({
    "salmon-smoked", "mackerel-smoked", "mackerel-salted", "salt-cod", "salt-cod-soaked", "fish-dried",
})  # fmt: skip
_IN_CRUMBS = frozenset({"fish-fingers", "fish-cakes"})
_MINCED = frozenset({"chicken-mince", "turkey-mince"})


class SourWithNuts:
    """With a dressing of nut butter or tahini comes something sour, where the dish has a place for it."""

    def post(self, draft: DishVariables) -> None:
        """No nut butter without an acid; beside tahini tomatoes are sour enough."""
        problem = draft.problem
        slots = problem.pattern.slots
        if problem.wanted.sitting not in SEASONED_SITTINGS or all(slot.role != "acid" for slot in slots.values()):
            return
        options = list(enumerate(problem.options))
        sour = sum(draft.used[number] for number, option in options if option.offered.food.kind in SOUR_KINDS)
        tomatoes = sum(draft.used[number] for number, option in options if option.offered.food.kind == "tomato")
        for number, option in options:
            slot = slots[option.slot]
            if option.offered.food.kind == "nut-butter" and slot.role == "sauce" and slot.method == "raw":
                enough = sour + tomatoes if option.offered.food.id == SESAME else sour
                draft.model.add(draft.used[number] <= enough)


class SweetBesideNuts:
    """Syrup or sugar goes into a dressing of peanut butter and the like; tahini wants none."""

    def post(self, draft: DishVariables) -> None:
        """Nothing in the shared place `syrup` without such a nut butter."""
        problem = draft.problem
        options = list(enumerate(problem.options))
        nuts = sum(draft.used[n] for n, one in options if is_unsalted_nuts(problem, one))
        for number, option in options:
            if option.slot == SYRUP:
                draft.model.add(draft.used[number] <= nuts)


class SweetSpiceBesideAnother:
    """Cinnamon or nutmeg alone makes no savoury dish taste, where its kitchen does not season with it alone."""

    def post(self, draft: DishVariables) -> None:
        """No sweet spice without another spice."""
        problem = draft.problem
        if problem.wanted.sitting not in SEASONED_SITTINGS:
            return
        options = list(enumerate(problem.options))
        sweet = [number for number, option in options if is_sweet_spice(problem, option)]
        others = sum(
            draft.used[number]
            for number, option in options
            if option.offered.food.kind == "spice" and number not in sweet
        )
        for number in sweet:
            draft.model.add(draft.used[number] <= others)


class FishByItself:
    """Fish shares no plate with meat, poultry or tofu, shellfish none with red or minced meat.

    Tinned fish shares none with fresh fish or seafood.

    Bacon and the like season fish, and ham prawns as well; dried shrimps season anything.
    """

    def post(self, draft: DishVariables) -> None:
        """Either fish or those."""
        problem = draft.problem
        if problem.wanted.sitting not in SEASONED_SITTINGS:
            return
        slots = problem.pattern.slots
        there = [(n, o.offered.food) for n, o in enumerate(problem.options) if slots[o.slot].role == "protein"]
        fish = [number for number, food in there if food.kind == "fish"]
        others = [number for number, food in there if food.kind in _NOT_WITH_FISH and food.id not in _SALTS_FISH]
        _apart(draft, fish, others)
        tinned = [number for number, food in there if food.kind == "fish" and food.state in CANNED_STATES]
        _apart(draft, tinned, [number for number in fish if number not in tinned])
        shellfish = [number for number, food in there if food.kind == "shellfish" and food.state != "dried"]
        _apart(draft, tinned, [n for n in shellfish if problem.options[n].offered.food.state not in CANNED_STATES])
        _apart(draft, shellfish, [number for number, food in there if _is_red_or_minced(food)])


class NoSaltOnSalt:
    """Fish that is smoked or salted takes no anchovies on top, and shares no plate with fresh fish; nor do crumbs.

    Beside fish in crumbs nothing cured is fried either.
    """

    def post(self, draft: DishVariables) -> None:
        """Either the one or the other."""
        options = list(enumerate(draft.problem.options))
        foods = [(number, option.offered.food) for number, option in options]
        salted = [number for number, option in options if _is_salted(option)]
        _apart(draft, salted, [number for number, food in foods if food.id in _SALTY_FISH])
        if draft.problem.wanted.sitting not in SEASONED_SITTINGS:
            return
        alone = [number for number, food in foods if food.id in _BY_ITSELF | _IN_CRUMBS]
        fresh = [number for number, food in foods if food.kind == "fish" and food.state == "raw"]
        _apart(draft, alone, [number for number in fresh if number not in alone])
        crumbs = [number for number, food in foods if food.id in _IN_CRUMBS]
        _apart(draft, crumbs, [number for number, food in foods if food.id in CURED])


class NotBeside:
    """What a slot does not go with, none over cheese; and in no dish does cheese lie on hot fish or offal, or is one
    main thing with it. Nor is cheese strewn over another, but for what is grated hard.
    """

    def post(self, draft: DishVariables) -> None:
        """Either what fills the slot or a protein of such a kind."""
        problem = draft.problem
        slots = problem.pattern.slots
        for name, slot in slots.items():
            inside = [number for number, _ in problem.in_slot(name)] if slot.not_with else []
            _apart(draft, inside, self._main_of(problem, slot.not_with))
        strewn = [
            number
            for number, option in enumerate(problem.options)
            if option.offered.food.kind == "cheese"
            if slots[option.slot].role == "protein"
            or (slots[option.slot].role == "topping" and slots[option.slot].method == "raw")
        ]
        _apart(draft, strewn, self._main_of(problem, _WITHOUT_CHEESE))
        cheeses = [n for n in range(len(problem.options)) if problem.options[n].offered.food.kind == "cheese"]
        soft = [n for n in cheeses if problem.options[n].offered.food.id not in _GRATED]
        for number in (n for n in strewn if n in soft):
            over = slots[problem.options[number].slot]
            key = problem.options[number].key
            others = [n for n in soft if problem.options[n].key != key]
            if over.role == "protein":  # a plate of cold cheeses has several
                others = [n for n in others if slots[problem.options[n].slot].method != "raw"]
                others = others if over.method == "raw" else []
            _apart(draft, [number], others)

    def _main_of(self, problem: PatternProblem, kinds: Collection[str]) -> list[int]:
        """Proteins of these kinds; fish that is cold, or from a tin, takes cheese."""
        slots = problem.pattern.slots
        return [
            number
            for number, option in enumerate(problem.options)
            if slots[option.slot].role == "protein"
            if option.offered.food.kind in kinds or (kinds is _WITHOUT_CHEESE and option.offered.food.id in _OFFAL)
            if kinds is not _WITHOUT_CHEESE or self._is_fresh(option, slots[option.slot])
        ]

    @staticmethod
    def _is_fresh(option: Option, slot: Slot) -> bool:
        return slot.method != "raw" and not option.offered.food.state.startswith("canned")


class OnlyBeside:
    """A slot that suits some bases alone, as butter suits potatoes, is filled beside one of these."""

    def post(self, draft: DishVariables) -> None:
        """Nothing in the slot without such a base."""
        slots = draft.problem.pattern.slots
        options = list(enumerate(draft.problem.options))
        for name, slot in slots.items():
            if not slot.only_with:
                continue
            there = sum(
                draft.used[number]
                for number, option in options
                if slots[option.slot].role == "base" and option.offered.food.kind in slot.only_with
            )
            for number, _ in draft.problem.in_slot(name):
                draft.model.add(draft.used[number] <= there)


class EggsByThemselves:
    """Eggs among other proteins of one pan would cook with the meat or the tofu: they fill such a place alone.

    Bacon and the like fry beside them.
    """

    def post(self, draft: DishVariables) -> None:
        """No egg beside another protein in the same slot, but for what is cured."""
        problem = draft.problem
        for name, slot in problem.pattern.slots.items():
            if slot.role != "protein" or slot.items[1] < MOST_PROTEINS or slot.method == "raw":
                continue
            options = list(problem.in_slot(name))
            eggs = [number for number, option in options if option.offered.food.kind == "egg"]
            others = [n for n, o in options if o.offered.food.kind != "egg" and o.offered.food.id not in CURED]
            for egg in eggs:
                for other in others:
                    draft.model.add_bool_or(~draft.used[egg], ~draft.used[other])


class FewProteins:
    """At most two protein things on a plate at dinner, or as many as the dish is made of.

    Bacon and the like season beside eggs and cheese.
    """

    def post(self, draft: DishVariables) -> None:
        """Count the things, not the packs."""
        problem = draft.problem
        if problem.wanted.sitting != "dinner":
            return
        slots = [(name, slot) for name, slot in problem.pattern.slots.items() if slot.role == "protein"]
        names = {name for name, _ in slots}
        things: dict[str, list[int]] = {}
        for number, option in enumerate(problem.options):
            if option.slot in names and option.offered.food.id not in CURED:
                things.setdefault(protein_thing(option.offered.food), []).append(number)
        most = max(MOST_PROTEINS, sum(slot.items[0] for _, slot in slots))
        if len(things) <= most:
            return
        there = []
        for numbers in things.values():
            eaten = draft.model.new_bool_var("")
            for number in numbers:
                draft.model.add(draft.used[number] <= eaten)
            there.append(eaten)
        draft.model.add(sum(there) <= most)


def _is_salted(option: Option) -> bool:
    food, line = option.offered.food, option.offered.lot.line.lower()
    return food.id in _SALTED_FISH or (food.kind == "fish" and bool(_SMOKED_BY_NAME.search(line)))


def _is_red_or_minced(food: Food) -> bool:
    return (food.kind == "meat" and food.id not in CURED) or food.id in _MINCED


def _apart(draft: DishVariables, inside: Sequence[int], beside: Sequence[int]) -> None:
    """Never any of the one beside any of the other."""
    if not beside or not inside:
        return
    filled = draft.model.new_bool_var("")
    for number in inside:
        draft.model.add(draft.used[number] <= filled)
    for number in beside:
        draft.model.add_bool_or(~draft.used[number], ~filled)
