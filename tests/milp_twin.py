"""The dinner problem once more, as a mixed-integer linear programme a pattern for SciPy's HiGHS.

Written from the rules in DEVELOPERS.md and not from the CP-SAT model: rows of a matrix. It reads
the same whole numbers (options, slots, caps) as the model.
"""

import math
import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import NamedTuple

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

from calmlarder.compose import taste, weights
from calmlarder.compose.at_hand import fills
from calmlarder.compose.problem import PORTION, Option, PatternProblem
from calmlarder.compose.solve import Plan
from calmlarder.intake.load import load_of_group
from calmlarder.intake.stacking import Room, day_so_far_ug, rooms
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.rows import Food

_MAIN = {"base", "protein", "vegetable"}
_POINT = weights.POINT


class Answer(NamedTuple):
    """The best score in ten-thousandths of a point, or None where nothing is feasible."""

    score: float | None


class _Programme:
    def __init__(self) -> None:
        self.cost: list[float] = []
        self.upper: list[float] = []
        self.whole: list[int] = []
        self.rows: list[dict[int, float]] = []
        self.row_upper: list[float] = []

    def variable(self, upper: float, gain: float = 0.0, whole: bool = True) -> int:
        self.cost.append(-gain)
        self.upper.append(upper)
        self.whole.append(int(whole))
        return len(self.cost) - 1

    def at_most(self, row: dict[int, float], upper: float) -> None:
        scale = max((abs(value) for value in row.values()), default=1.0) or 1.0
        self.rows.append({column: value / scale for column, value in row.items()})
        self.row_upper.append(upper / scale)

    def solve(self, whole: bool = True) -> Answer:
        """The best there is; of fractions, too, where it need not be whole."""
        at = [(r, c, v) for r, row in enumerate(self.rows) for c, v in row.items()]
        matrix = csr_matrix(
            ([v for _, _, v in at], ([r for r, _, _ in at], [c for _, c, _ in at])),
            shape=(len(self.rows), len(self.cost)),
        )
        result = milp(
            np.array(self.cost) / _POINT,
            integrality=np.array(self.whole) * whole,
            bounds=Bounds(0, np.array(self.upper)),
            constraints=LinearConstraint(matrix, -np.inf, np.array(self.row_upper)),
            options={"mip_rel_gap": 0.0},
        )
        if result.status == 2:
            return Answer(None)
        assert result.status == 0, result.message
        return Answer(-result.fun * _POINT)


class Giving(NamedTuple):
    """The nearest dinner is looked for: limits give at their price; `minutes` is the time asked for, if any.

    Where more than one thing may be bought, protein and amounts do not give, and the plate is whole.
    """

    minutes: int | None
    buys: int = 1


def best_score(
    problems: Sequence[PatternProblem], giving: Giving | None = None, earlier: Sequence[Plan] = ()
) -> Answer:
    """The best score over all patterns, of dinners that are other ones than those before.

    What fractions may reach is an upper bound: a pattern whose bound is no better than a dinner found is not solved.
    """
    bounds: list[tuple[float, int, _Programme]] = []
    for number, problem in enumerate(problems):
        programme = _Programme()
        programme.at_most({_block(programme, problem, giving, earlier): -1.0}, -1)
        bound = programme.solve(whole=False).score
        if bound is not None:
            bounds.append((-bound, number, programme))
    best: float | None = None
    for bound, _, programme in sorted(bounds):
        if best is not None and -bound <= best:
            break
        found = programme.solve().score
        best = found if best is None or found is None else max(best, found)
    return Answer(best)


def best_score_in_one_model(problems: Sequence[PatternProblem]) -> Answer:
    """The best score over all patterns from one model of all of them, one of which is chosen."""
    programme = _Programme()
    chosen = [_block(programme, problem, None) for problem in problems]
    programme.at_most(dict.fromkeys(chosen, -1.0), -1)
    programme.at_most(dict.fromkeys(chosen, 1.0), 1)
    return programme.solve()


def _block(p: _Programme, problem: PatternProblem, giving: Giving | None, earlier: Sequence[Plan] = ()) -> int:
    """Variables and rows of one pattern; everything is 0 unless it is chosen."""
    pattern, people, options = problem.pattern, problem.wanted.people, problem.options
    minute = weights.MINUTE * _POINT
    second = weights.SECOND_CHOICE * _POINT * (pattern.second_choice and problem.wanted.minutes is None)
    z = p.variable(1, -minute * pattern.minutes - problem.tie - problem.given - second)
    used, units, weighed, weighed_units = [], [], [], []
    for o in options:
        used.append(p.variable(1, -o.tie))
        units.append(p.variable(o.most, o.points * o.portion_units * (_POINT // PORTION) - o.tie % 7))
        weighed.append(p.variable(1 if o.weighable else 0, -weights.WEIGHING * _POINT - o.tie % 89))
        weighed_units.append(p.variable(o.most if o.weighable else 0))
    for o, u, n, w, wn in zip(options, used, units, weighed, weighed_units, strict=True):
        p.at_most({u: 1, z: -1}, 0)
        p.at_most({u: o.least, n: -1}, 0)
        p.at_most({n: 1, u: -o.most}, 0)
        p.at_most({w: 1, u: -1}, 0)
        p.at_most({wn: 1, n: -1}, 0)
        p.at_most({wn: 1, w: -o.most}, 0)
        if o.offered.food.id in {dose.food for dose in problem.wanted.doses}:  # a dose is weighed
            p.at_most({u: 1, w: -1}, 0)
        if o.whole and o.points:
            f = p.variable(1, o.finish * _POINT)
            p.at_most({f: o.most, n: -1}, 0)
        if o.thaws:
            p.cost[u] += weights.THAWING * _POINT
        stays = _least_rest(o, problem)
        if 0 < stays <= o.most:
            emptied, rest = p.variable(1), p.variable(1, -weights.REST_IN_A_PACK * _POINT)
            p.at_most({emptied: o.most, n: -1}, 0)
            p.at_most({n: 1, emptied: -stays, rest: -stays}, o.most - stays)
        if o.sealed:
            p.cost[u] += weights.OPENING * _POINT
    _bread(p, problem, used)
    _filled(p, problem, z, used)
    _reached_for(p, problem, z, used)
    _own(p, problem, used, weighed)
    lacking: dict[int, float] = {z: problem.wanted.lysine_mg * 100 * people}
    p.at_most(lacking | {n: -o.lysine for o, n in zip(options, units, strict=True)}, 0)
    _likes(p, problem, z, used)
    _had(p, problem, z, used)
    for plan in earlier:
        _another(p, problem, z, (used, units), plan)
    time = p.variable(600, -round(minute), whole=False)
    for o, u in zip(options, used, strict=True):
        p.at_most({u: o.before + o.minutes, time: -1}, 0)
    _turns(p, problem, time, used)
    overtime = p.variable(600, -weights.LATE_MINUTE * _POINT, whole=False)  # beyond a usual day's
    usual = {"dinner": 35, "packed": 30, "breakfast": 15, "shake": 10, "snack": 10}[problem.wanted.sitting]
    p.at_most({time: 1, z: pattern.minutes - usual, overtime: -1}, 0)
    lots: dict[tuple[int, int], list[int]] = {}
    for o, u in zip(options, used, strict=True):
        lots.setdefault(o.key, []).append(u)
    for uses in lots.values():
        p.at_most(dict.fromkeys(uses, 1.0), 1)
    for names in pattern.one_of:
        group = [u for o, u in zip(options, used, strict=True) if o.slot in names]
        p.at_most({z: 1, **dict.fromkeys(group, -1)}, 0)
        if all(pattern.slots[name].role == "base" for name in names):  # one starch
            p.at_most(dict.fromkeys(group, 1), 1)
    for names in pattern.flavour:
        dull = p.variable(1, -weights.FLAVOUR_MISSING * _POINT)
        tasty = [u for o, u in zip(options, used, strict=True) if o.slot in names or o.offered.food.id in names]
        p.at_most({z: 1, dull: -1, **dict.fromkeys(tasty, -1.0)}, 0)
    _seasoning(p, problem, z, used, units)
    kinds: dict[str, list[int]] = {}
    for o, u in zip(options, used, strict=True):
        if pattern.slots[o.slot].role == "protein":
            kinds.setdefault(o.offered.food.kind, []).append(u)
    for uses in kinds.values():
        if len(uses) > 1:
            again = p.variable(9, -weights.SAME_KIND_AGAIN * _POINT)
            p.at_most({**dict.fromkeys(uses, 1.0), again: -1, z: -1}, 0)
    family = _families(p, problem, z, used)
    _spices_at_hand(p, problem, family, used)
    _rice_under_curry(p, problem, family, used)
    _tortillas(p, problem, family, used)
    _butter_abroad(p, problem, family, used)
    _slots(p, problem, z, used, units, giving if giving is not None and giving.buys == 1 else None)
    _held(p, problem, used, units)
    _own_fat(p, problem, used, units)
    _limits(p, problem, z, (units, weighed, weighed_units))
    _targets(p, problem, z, units)
    floor = round(problem.wanted.protein_floor_g * 1000) * people
    enough: dict[int, float] = {z: floor, **{n: -o.protein_mg for o, n in zip(options, units, strict=True)}}
    if giving is not None:
        if giving.buys == 1:
            enough[_short(p, int(0.5 * floor), weights.PROTEIN_SHORT * _POINT / 1000)] = -1
        else:
            _whole_plate(p, problem, z, used, units)
        _things(p, problem, z, used, giving.buys)
        if giving.minutes is not None:  # two minutes of serving, as for any dinner
            late = _short(p, 600, weights.MINUTE_LATE * _POINT)
            p.at_most({time: 1, z: 2 - giving.minutes, late: -1}, 0)
    p.at_most(enough, 0)
    for food in problem.wanted.use:
        p.at_most({z: 1, **{u: -1 for o, u in zip(options, used, strict=True) if o.offered.food.id == food}}, 0)
    return z


def _bread(p: _Programme, problem: PatternProblem, used: list[int]) -> None:
    """Bread that keeps costs under fish or meat from the pan, where the larder has another base."""
    if problem.wanted.sitting != "dinner" or not problem.has_base:
        return
    slots = problem.pattern.slots
    cured = {"bacon", "chorizo", "ham", "prosciutto", "salami"}
    on_toast = p.variable(1, -weights.BREAD_FOR_A_BASE * _POINT)
    for bread, u in zip(problem.options, used, strict=True):
        slot, keeps = slots[bread.slot], bread.points < weights.rescue_points(3, True)
        if slot.role != "base" or not slot.items[0] or slot.foods or bread.offered.food.kind != "bread" or not keeps:
            continue
        for main, v in zip(problem.options, used, strict=True):
            food, place = main.offered.food, slots[main.slot]
            kind = food.kind in {"fish", "shellfish", "poultry", "meat"} and food.id not in cured
            hot = place.method == "stir-fry" if food.kind == "cheese" else kind and place.method != "raw"
            if hot and place.role == "protein":
                p.at_most({u: 1, v: 1, on_toast: -1}, 1)


def _tortillas(p: _Programme, problem: PatternProblem, family: dict[str, int], used: list[int]) -> None:
    """Rice that keeps costs in a Mexican dish where tortillas for everybody are there, less in others."""
    if problem.wanted.sitting != "dinner" or not problem.has_wraps:
        return
    elsewhere = {column: 1.0 for name, column in family.items() if name != "latin"}
    mexican = {column: 1.0 for name, column in family.items() if name == "latin"}
    for o, u in zip(problem.options, used, strict=True):
        rice = problem.pattern.slots[o.slot].role == "base" and o.offered.food.kind == "rice"
        if rice and o.points < weights.rescue_points(3, True):
            p.at_most({u: 1, **mexican, p.variable(1, -weights.RICE_FOR_TORTILLAS * _POINT): -1}, 1)
            if problem.has_maize_wraps:
                p.at_most({u: 1, **elsewhere, p.variable(1, -weights.RICE_BESIDE_TORTILLAS * _POINT): -1}, 1)


def _filled(p: _Programme, problem: PatternProblem, z: int, used: list[int]) -> None:
    """Nothing that fills costs, where the larder has a base."""
    slots = problem.pattern.slots
    if problem.wanted.sitting != "dinner" or not problem.has_base:
        return
    bare = p.variable(1, -weights.NO_BASE * _POINT)
    nibbled = {"crackers", "crackers-gluten-free", "rice-cakes", "yorkshire-pudding"}
    waits = problem.pattern.second_choice  # such a dish is not whole with toast
    there = {
        u: -1
        for o, u in zip(problem.options, used, strict=True)
        if slots[o.slot].role == "base" and o.offered.food.id not in nibbled
        if not (waits and o.offered.food.kind == "bread")
        if o.offered.food.kind != "potato" or fills(o.offered, problem.wanted)  # no cubes of sweet potato
    }
    p.at_most({z: 1, bare: -1, **there}, 0)


def _reached_for(p: _Programme, problem: PatternProblem, z: int, used: list[int]) -> None:
    """Plain oil beside garlic or onion oil costs, and so does water in a hot step where something else fits there."""
    pattern, sitting = problem.pattern, problem.wanted.sitting
    if sitting not in {"dinner", "packed"}:
        return
    pairs = list(zip(problem.options, used, strict=True))
    infused = {"oil-garlic", "oil-garlic-made", "oil-onion", "oil-onion-made"}
    for name, slot in pattern.slots.items():
        inside = {u: o.offered.food.id for o, u in pairs if o.slot == name}
        if slot.role == "fat" and pattern.flavour and infused.intersection(inside.values()):
            for u, food in inside.items():
                if food in {"oil-groundnut", "oil-olive", "oil-rapeseed", "oil-spray"}:
                    p.cost[u] += weights.PLAIN_OIL * _POINT
    for step in pattern.steps:
        if step.place not in {"apart", "pan", "pot", "oven", "dish", "microwave"}:
            continue
        for braces, words in re.findall(r"\{([^{}|]+)\|([^{}]*)\}", re.sub(r"\[[^]]*\]", "", step.words)):
            names = {name.strip() for name in braces.split(",")}
            inside = {u: -1.0 for o, u in pairs if o.slot in names}
            if "water" in words and inside:
                p.at_most({z: 1, **inside, p.variable(1, -weights.IN_WATER * _POINT): -1}, 0)


def _least_rest(o: Option, problem: PatternProblem) -> int:
    """Units of a pack that are a meal still, for two at most; of a tin all of it. 0 where it is none."""
    food, sitting = o.offered.food, problem.wanted.sitting
    cured = {"bacon", "chorizo", "ham", "prosciutto", "salami"}
    if problem.pattern.slots[o.slot].role != "protein" or not o.whole or food.id in cured:
        return 0
    if o.sealed:
        return o.most
    kinds = {"fish", "shellfish", "poultry", "meat", "tofu", "tempeh"}
    if food.kind not in kinds or o.offered.unit_grams >= 60 or o.thaws or sitting != "dinner":
        return 0
    return math.ceil(0.75 * float(food.portion_g) * min(problem.wanted.people, 2) / o.unit)


def _spices_at_hand(p: _Programme, problem: PatternProblem, family: dict[str, int], used: list[int]) -> None:
    """The first two everyday spices of the chosen kitchen that stay out cost; of a South Asian one the first three."""
    if problem.wanted.sitting not in {"dinner", "packed"} or not problem.pattern.flavour:
        return
    wanted = {name: weights.SPICES_AT_HAND.get(name, weights.SPICES_AT_HAND_ELSEWHERE) for name in family}
    idle = {p.variable(1, -weights.IDLE_SPICE * _POINT): -1.0 for _ in range(max(wanted.values(), default=0))}
    for name, chosen in family.items():
        there = {u: o for o, u in zip(problem.options, used, strict=True) if taste.is_spice_at_hand(o, name)}
        most = min(wanted[name], len({o.offered.food.id for o in there.values()}))
        p.at_most({chosen: most, **idle, **dict.fromkeys(there, -1.0)}, 0)


def _rice_under_curry(p: _Programme, problem: PatternProblem, family: dict[str, int], used: list[int]) -> None:
    """Potatoes that keep cost in an Asian dish whose slot rice or noodles could fill."""
    asian = {name for name in family if name in {"east-asian", "southeast-asian", "south-asian"}}
    chosen = {*family} if asian and {*family} - asian == {"any"} else asian
    pairs = list(zip(problem.options, used, strict=True))
    bases = [name for name, slot in problem.pattern.slots.items() if slot.role == "base"]
    for name in bases if chosen else []:
        inside = {u: o for o, u in pairs if o.slot == name}
        if not any(o.offered.food.kind in {"rice", "noodle"} for o in inside.values()):
            continue
        for u, o in inside.items():
            if o.offered.food.kind == "potato" and o.points < weights.rescue_points(3, True):
                foreign = p.variable(1, -weights.FOREIGN_BASE * _POINT)
                p.at_most({u: 1, **{family[name]: 1.0 for name in chosen}, foreign: -1}, 1)


def _butter_abroad(p: _Programme, problem: PatternProblem, family: dict[str, int], used: list[int]) -> None:
    """Butter or lard beside oil costs in the kitchens that its row does not name."""
    pairs = list(zip(problem.options, used, strict=True))
    fats = {name for name, slot in problem.pattern.slots.items() if slot.role == "fat"}
    oily = {o.slot for o, _ in pairs if o.slot in fats and o.offered.food.kind == "oil"}
    for o, u in pairs:
        food = o.offered.food
        away = {family[name]: 1.0 for name in family if name not in food.flavours}
        if o.slot in oily and food.kind == "butter" and away:
            p.at_most({u: 1, **away, p.variable(1, -weights.BUTTER_ABROAD * _POINT): -1}, 1)


def _held(p: _Programme, problem: PatternProblem, used: list[int], units: list[int]) -> None:
    """So many grams for each gram of what binds them, and no bound where that is not there."""
    numbered = list(enumerate(problem.options))
    for held in problem.pattern.holds:
        holds = [(n, o) for n, o in numbered if o.slot == held.by]
        inside = [(n, o) for n, o in numbered if o.slot in held.slots]
        if holds and inside:
            row = {units[n]: float(o.unit) for n, o in inside}
            row |= {units[n]: -round(held.most * 100) / 100 * o.unit for n, o in holds}
            upper = 0.0
            if not problem.pattern.slots[held.by].items[0]:
                upper = float(sum(o.unit * o.most for _, o in inside))
                there = p.variable(1)
                for n, _ in holds:
                    p.at_most({used[n]: 1, there: -1}, 0)
                row[there] = upper
            p.at_most(row, upper)


def _own_fat(p: _Programme, problem: PatternProblem, used: list[int], units: list[int]) -> None:
    """Three grams of fat a person, or the least of its place, beside mince, bacon, sausages and the like."""
    slots, people = problem.pattern.slots, problem.wanted.people
    own = {"bacon", "black-pudding", "chorizo", "duck", "lap-cheong", "pork-belly", "sausages",
           "sausages-gluten-free", "sausages-plain"}  # fmt: skip
    starts = [
        used[n]
        for n, o in enumerate(problem.options)
        if (slots[o.slot].role, slots[o.slot].method) == ("protein", "stir-fry")
        and (o.offered.food.id in own or o.offered.food.id.endswith("-mince"))
    ]
    for name, slot in slots.items():
        fats = [(n, o) for n, o in enumerate(problem.options) if o.slot == name]
        if (slot.role, slot.method) != ("fat", "stir-fry") or not fats:
            continue
        most = float(sum(o.unit * o.most for _, o in fats))
        place = math.ceil(slot.portions[0] * max(float(o.offered.food.portion_g) for _, o in fats) * people)
        little = max([3 * people, place, *(o.unit * o.least for _, o in fats)])
        for start in starts:
            if little < most:
                p.at_most({**{units[n]: float(o.unit) for n, o in fats}, start: most - little}, most)


def _own(p: _Programme, problem: PatternProblem, used: list[int], weighed: list[int]) -> None:
    """A dose is weighed; a food that brings more than elimination held of what somebody tolerates is worth points.

    Cut-offs of elimination for one food: Varney et al. 2017, of two that differ the larger.
    """
    cut_off = {"fructans": 0.3, "gos": 0.3, "lactose": 1, "excess_fructose": 0.4, "sorbitol": 0.2, "mannitol": 0.2}
    dosed = {dose.food for dose in problem.wanted.doses}
    wide: list[int] = []
    for o, u, w in zip(problem.options, used, weighed, strict=True):
        if o.offered.food.id in dosed:
            p.at_most({u: 1, w: -1}, 0)
        for own in problem.wanted.profile.own_limits:
            use = load_of_group(o.offered.brings, own.component, problem.wanted.tolerance)
            if float(use.likely) * float(o.offered.food.portion_g) / 100_000 > cut_off[own.component]:
                wide.append(u)
    if wide:
        gained = p.variable(1, weights.TOLERATED * _POINT)
        p.at_most({gained: 1, **dict.fromkeys(wide, -1.0)}, 0)


def _from_the_sea(p: _Programme, problem: PatternProblem, pairs: list[tuple[Option, int]]) -> None:
    """Fish beside no other main thing, shellfish beside no red or minced meat, tinned fish beside none that is fresh,
    no anchovies over smoked or salted fish, nothing smoked through, salted or in crumbs beside fresh fish, and no bacon
    beside crumbs."""
    crumbs = {"fish-fingers", "fish-cakes"}
    alone = {
        "salmon-smoked",
        "mackerel-smoked",
        "mackerel-salted",
        "salt-cod",
        "salt-cod-soaked",
        "fish-dried",
    } | crumbs
    for o, u in pairs:
        for other, v in pairs if o.offered.food.id in alone else []:
            food = other.offered.food
            fresh = food.kind == "fish" and food.state == "raw" and food.id not in alone
            cured = food.id in {"bacon", "chorizo", "ham", "prosciutto", "salami"}
            if fresh or (cured and o.offered.food.id in crumbs):
                p.at_most({u: 1, v: 1}, 1)
    smoked = {"haddock-smoked", "salmon-smoked", "mackerel-smoked", "herring-pickled"}
    salted = {
        u
        for o, u in pairs
        if o.offered.food.id in smoked | {"salt-cod", "salt-cod-soaked", "fish-dried"}
        or (o.offered.food.kind == "fish" and re.search(r"kipper|bloater|smoked|cured", o.offered.lot.line.lower()))
    }
    for u in salted:
        for v in (v for o, v in pairs if o.offered.food.id == "anchovies"):
            p.at_most({u: 1, v: 1}, 1)
    fishy, shelly, tinned = p.variable(1), p.variable(1), p.variable(1)
    for o, u in pairs:
        food = o.offered.food
        cured = food.id in {"bacon", "chorizo", "prosciutto"}
        if problem.pattern.slots[o.slot].role != "protein" or cured:
            continue
        if food.kind == "fish":
            p.at_most({u: 1, fishy: -1}, 0)
            p.at_most(*(({u: 1, tinned: -1}, 0) if food.state.startswith("canned") else ({u: 1, tinned: 1}, 1)))
        if food.kind in {"meat", "poultry", "tofu", "tempeh", "seitan", "soya"}:
            p.at_most({u: 1, fishy: 1}, 1)
        if food.kind == "shellfish" and food.state != "dried":
            p.at_most({u: 1, shelly: -1}, 0)
            if not food.state.startswith("canned"):
                p.at_most({u: 1, tinned: 1}, 1)
        minced = food.id.endswith("-mince") and food.kind in {"meat", "poultry"}
        if minced or (food.kind == "meat" and food.id not in {"ham", "salami"}):
            p.at_most({u: 1, shelly: 1}, 1)


def _seasoning(p: _Programme, problem: PatternProblem, z: int, used: list[int], units: list[int]) -> None:
    """Nut butter wants an acid, a plate has two proteins at most, three things season, what is raw is dressed,
    nothing fried is dry, nut butter is salted, plain things have something savoury, a sweet spice another spice,
    eggs a place of their own, and so has fish."""
    pattern, sitting = problem.pattern, problem.wanted.sitting
    pairs = list(zip(problem.options, used, strict=True))
    for o, u in pairs:
        if taste.says_garlic(o.offered.food):
            p.cost[u] += weights.GARLIC_BY_NAME * _POINT
    if sitting in {"dinner", "packed"} and pattern.flavour:
        missing = {p.variable(1, -price * _POINT): -1.0 for price in weights.SEASONINGS_MISSING}
        p.at_most({z: 3, **missing, **{u: -1.0 for o, u in pairs if taste.seasons(problem, o)}}, 0)
        plain = p.variable(1, -weights.PLAIN * _POINT)
        savoury = {u: -1.0 for o, u in pairs if taste.is_savoury(problem, o)}
        for o, u in pairs:
            if taste.is_plain(problem, o):
                p.at_most({**savoury, plain: -1, u: 1 + savoury.get(u, 0)}, 0)
        dry = p.variable(1, -weights.DRY * _POINT)
        wet = {u: -1.0 for o, u in pairs if taste.moistens(problem, o)}
        for o, u in pairs:
            if taste.is_dry(problem, o):
                p.at_most({**wet, dry: -1, u: 1 + wet.get(u, 0)}, 0)
        for how, price in weights.ROUND.items():
            rounding = {u: -1.0 for o, u in pairs if how in taste.rounds(problem, o)}
            if rounding:
                left_out = p.variable(1, -price * _POINT)
                p.at_most({z: 1, left_out: -1, **rounding}, 0)
        at_hand = {u: o.key for o, u in pairs if taste.is_at_hand(problem, o)}
        most = min(weights.FLAVOURS_AT_HAND, len(set(at_hand.values())))
        if most:
            idle = {p.variable(1, -weights.IDLE_FLAVOUR * _POINT): -1.0 for _ in range(most)}
            p.at_most({z: most, **idle, **dict.fromkeys(at_hand, -1.0)}, 0)
    if sitting in {"dinner", "packed"} and any(slot.role == "acid" for slot in pattern.slots.values()):
        sour = {u: -1.0 for o, u in pairs if o.offered.food.kind in {"acid", "citrus"}}
        tomatoes = {u: -1.0 for o, u in pairs if o.offered.food.kind == "tomato"}
        for o, u in pairs:
            slot = pattern.slots[o.slot]
            if o.offered.food.kind == "nut-butter" and slot.role == "sauce" and slot.method == "raw":
                p.at_most({u: 1, **sour, **(tomatoes if o.offered.food.id == "tahini" else {})}, 0)
    if sitting in {"dinner", "packed"}:
        unsalted = p.variable(1, -weights.UNSALTED_NUTS * _POINT)
        salty = {u: -1.0 for o, u in pairs if taste.is_salty(o)}
        for o, u in pairs:
            if taste.is_unsalted_nuts(problem, o):
                p.at_most({**salty, unsalted: -1, u: 1 + salty.get(u, 0)}, 0)
        sweet = {u: -1.0 for o, u in pairs if o.slot == "syrup"}
        if sweet:
            unsweetened = p.variable(1, -weights.UNSWEETENED_NUTS * _POINT)
            for o, u in pairs:
                if taste.is_unsalted_nuts(problem, o):
                    p.at_most({**sweet, unsweetened: -1, u: 1}, 0)
        spices = {u: -1.0 for o, u in pairs if o.offered.food.kind == "spice" and not taste.is_sweet_spice(problem, o)}
        for o, u in pairs:
            if taste.is_sweet_spice(problem, o):
                p.at_most({u: 1, **spices}, 0)
    nuts = {u: -1.0 for o, u in pairs if taste.is_unsalted_nuts(problem, o)}
    for one, u in pairs:
        slot = pattern.slots[one.slot]
        if one.slot == "syrup":
            p.at_most({u: 1, **nuts}, 0)
        if slot.only_with:  # butter beside potatoes alone
            bases = {
                v for o, v in pairs if pattern.slots[o.slot].role == "base" and o.offered.food.kind in slot.only_with
            }
            p.at_most({u: 1} | dict.fromkeys(bases, -1.0), 0)
        laid_on = slot.role == "protein" or (slot.role == "topping" and slot.method == "raw")
        strewn = one.offered.food.kind == "cheese" and laid_on
        hard = {"parmesan", "grana-padano", "pecorino", "vegan-parmesan"}
        over = strewn and slot.method == "raw" and one.offered.food.id not in hard
        for other, v in pairs:
            main, food = pattern.slots[other.slot], other.offered.food
            another = food.kind == "cheese" and food.id not in hard and other.key != one.key
            if over and another and (slot.role == "topping" or main.method != "raw"):
                p.at_most({u: 1, v: 1}, 1)
            hot = main.role == "protein" and main.method != "raw" and not food.state.startswith("canned")
            if strewn and hot and (food.kind in {"fish", "shellfish"} or food.id == "liver"):  # nor with it
                p.at_most({u: 1, v: 1}, 1)
            if pattern.slots[other.slot].role == "protein" and other.offered.food.kind in slot.not_with:
                p.at_most({u: 1, v: 1}, 1)
        if one.offered.food.kind == "egg" and slot.role == "protein" and slot.items[1] > 1 and slot.method != "raw":
            for other, v in pairs:
                cured = other.offered.food.id in {"bacon", "chorizo", "ham", "prosciutto", "salami"}
                if other.slot == one.slot and other.offered.food.kind != "egg" and not cured:
                    p.at_most({u: 1, v: 1}, 1)
    if sitting in {"dinner", "packed"}:
        _from_the_sea(p, problem, pairs)
    if sitting != "dinner":
        return
    dressing = {u: -1.0 for o, u in pairs if taste.dresses(o)}
    bare = p.variable(1, -weights.BARE * _POINT)
    for o, u in pairs:
        if taste.wants_dressing(problem, o):
            p.at_most({u: 1, bare: -1, **dressing}, 0)
    things: dict[str, int] = {}
    for o, u in pairs:
        cured = o.offered.food.id in {"bacon", "chorizo", "ham", "prosciutto", "salami"}
        if pattern.slots[o.slot].role == "protein" and not cured:
            food = o.offered.food
            name = food.kind if food.kind in {"tofu", "tempeh", "egg"} else food.id
            p.at_most({u: 1, things.setdefault(name, p.variable(1)): -1}, 0)
    packs = {"fish", "shellfish", "poultry", "meat", "tofu", "tempeh"}
    several = {
        n: o for o, n in zip(problem.options, units, strict=True)
        if pattern.slots[o.slot].role == "protein" and o.offered.food.kind in packs
        if o.offered.food.id not in {"bacon", "chorizo", "ham", "prosciutto", "salami"}
    }  # fmt: skip
    places = {o.slot for o in several.values()}
    if len(places) > 1:  # two mains share a plate
        heap = max(round(1.8 * PORTION) * problem.wanted.people, *map(problem.most_in, places))
        p.at_most({n: float(o.portion_units) for n, o in several.items()}, heap)
    least = sum(slot.items[0] for slot in pattern.slots.values() if slot.role == "protein")
    p.at_most(dict.fromkeys(things.values(), 1.0), max(2, least))


def _had(p: _Programme, problem: PatternProblem, z: int, used: list[int]) -> None:
    """A dish had or declined of late, and its protein and base, by the share of a week or a fortnight that is left."""
    wanted, roles = problem.wanted, {"protein": weights.EATEN_PROTEIN, "base": weights.EATEN_BASE}

    def left(day: date, days: int, points: float) -> float:
        return float(max(0, points * (days - (wanted.today - day).days) // days))

    same = [one.on for one in wanted.had if one.pattern == problem.pattern.id]
    refused = [one.on for one in wanted.declined if one.pattern == problem.pattern.id]
    p.cost[z] += max((left(day, 7, weights.EATEN_DISH * _POINT) for day in same), default=0.0)
    p.cost[z] += max((left(day, 14, weights.DECLINED_DISH * _POINT) for day in refused), default=0.0)
    for o, u in zip(problem.options, used, strict=True):
        share = max((left(one.on, 7, _POINT) for one in wanted.had if o.offered.food.id in one.foods), default=0.0)
        p.cost[u] += roles.get(problem.pattern.slots[o.slot].role, 0) * share


def _is_beside(problem: PatternProblem, slot: str) -> bool:
    """Toast and crisps beside a dish that is whole without."""
    return slot in {"bread", "crisp"} and not any(slot in group for group in problem.pattern.one_of)


def _another(
    p: _Programme, problem: PatternProblem, z: int, amounts: tuple[list[int], list[int]], before: Plan
) -> None:
    """Something else to eat than before: main protein, base, or half of the vegetables. As DEVELOPERS.md tells it."""
    used, units = amounts

    def thing(food: Food, role: str) -> str:
        if role == "base":
            return food.id if food.kind in {"boxed", "grain"} else food.kind
        return food.kind if food.kind in {"tofu", "tempeh", "egg"} else food.id

    def there(role: str) -> dict[int, Food]:
        return {n: o.offered.food for n, o in enumerate(problem.options) if problem.pattern.slots[o.slot].role == role}

    ways = [p.variable(1), p.variable(1), p.variable(1)]
    for way, role, weight in ((ways[0], "protein", "protein_mg"), (ways[1], "base", "portion_units")):
        sums: dict[str, int] = {}
        bases = [use for use in before.uses if before.problem.pattern.slots[use.option.slot].role == "base"]
        aside = [use for use in bases if _is_beside(before.problem, use.option.slot)]
        aside = aside if len(aside) < len(bases) else []  # toast is the base where there is no other
        for use in before.uses:
            if before.problem.pattern.slots[use.option.slot].role == role and use not in aside:
                name = thing(use.option.offered.food, role)
                sums[name] = sums.get(name, 0) + getattr(use.option, weight) * use.grams // use.option.unit
        main = next((name for name in sorted(sums) if sums[name] == max(sums.values())), None)
        numbers = there(role)
        whole = [
            n for n, food in numbers.items()
            if not _is_beside(problem, problem.options[n].slot)
            if role != "base" or food.kind != "potato" or fills(problem.options[n].offered, problem.wanted)
        ]  # fmt: skip
        p.at_most({way: 1, **{used[n]: -1 for n in whole}}, 0)
        for n, food in numbers.items():
            if thing(food, role) == main:
                p.at_most({used[n]: 1, way: 1}, 1)
    eaten = {use.option.offered.food.id for use in before.uses
             if before.problem.pattern.slots[use.option.slot].role == "vegetable"}  # fmt: skip
    numbers = there("vegetable")
    options = problem.options
    grams = {units[n]: float(options[n].unit if food.id in eaten else -options[n].unit) for n, food in numbers.items()}
    most = sum(options[n].unit * options[n].most for n, food in numbers.items() if food.id in eaten)
    p.at_most({**grams, ways[2]: float(most)}, most)
    p.at_most({ways[2]: 1, **{used[n]: -1 for n, food in numbers.items() if food.id not in eaten}}, 0)
    lots = before.main_lots if before.problem.pattern.id == problem.pattern.id else None
    if lots is not None:  # of one pattern two lots are missing
        same = {used[n]: 1.0 for n, o in enumerate(options) if o.key in lots}
        p.at_most({**same, z: 0.0}, max(0, len(lots) - 2))
    p.at_most({z: 1, **dict.fromkeys(ways, -1.0)}, 0)
    same_plate = p.variable(1, -weights.SAME_PLATE * _POINT)  # other vegetables alone are no other plate
    p.at_most({z: 1, same_plate: -1, ways[0]: -1, ways[1]: -1}, 0)
    same_top = p.variable(1, -weights.SAME_TOP * _POINT)  # nor is another base alone, nor the same dish once more
    p.at_most({z: 1, same_top: -1, ways[0]: -1, ways[2]: -1}, 0)
    if before.problem.pattern.id == problem.pattern.id:
        same_dish = p.variable(1, -weights.SAME_DISH * _POINT)
        p.at_most({z: 1, same_dish: -1, ways[0]: -1}, 0)


def _turns(p: _Programme, problem: PatternProblem, time: int, used: list[int]) -> None:
    """Steps at one hot place come one after the other, each as long as the slowest thing it puts on."""
    pattern, seen = problem.pattern, set[str]()
    places: dict[str, list[int]] = {}
    for step in pattern.steps:
        place = {"dish": "oven"}.get(step.place, step.place)
        if place not in {"pan", "pot", "oven", "microwave", "apart"}:
            continue
        here = {name for name in step.slots if pattern.slots[name].method != "raw" and name not in seen}
        seen |= here
        if place == "apart":
            continue
        lasts = p.variable(600, whole=False)
        for o, u in zip(problem.options, used, strict=True):
            if o.slot in here and pattern.slots[o.slot].role not in {"aromatic", "spice", "topping"}:
                p.at_most({u: o.minutes, lasts: -1}, 0)
        places.setdefault(place, []).append(lasts)
    for lasting in places.values():
        p.at_most({**dict.fromkeys(lasting, 1.0), time: -1}, 0)
    if problem.wanted.minutes is not None:  # two of them are for serving
        p.at_most({time: 1}, problem.wanted.minutes - 2)


def _likes(p: _Programme, problem: PatternProblem, z: int, used: list[int]) -> None:
    """What is disliked costs; of a dinner that was liked the dish and each main food again are worth something."""
    pattern, like = problem.pattern, problem.wanted.like
    for o, u in zip(problem.options, used, strict=True):
        if o.offered.food.id in problem.wanted.disliked:
            p.cost[u] += weights.DISLIKED * _POINT
    if like is None:
        return
    main = {u: o.offered.food.id for o, u in zip(problem.options, used, strict=True)
            if pattern.slots[o.slot].role in _MAIN and o.offered.food.id in like.mains}  # fmt: skip
    for food in like.mains:
        again = p.variable(1, weights.LIKE_MAIN * _POINT)
        p.at_most({again: 1, **{u: -1 for u, held in main.items() if held == food}}, 0)
    if like.pattern == pattern.id:
        p.cost[z] -= weights.LIKE_DISH * _POINT
        p.at_most({**dict.fromkeys(main, 1.0), z: 1 - max(1, len(like.mains))}, 0)


def _short(p: _Programme, most: float, price: float) -> int:
    """How far a limit gives: a price for each unit, and one for giving at all."""
    gives = p.variable(1, -weights.GIVES_AT_ALL * _POINT)
    short = p.variable(most, -price)
    p.at_most({short: 1, gives: -most}, 0)
    return short


def _whole_plate(p: _Programme, problem: PatternProblem, z: int, used: list[int], units: list[int]) -> None:
    """A base, 60 g of vegetables or tomato each, and 70 per cent of the energy that a dinner aims at (600 kcal)."""
    people, pairs = problem.wanted.people, list(enumerate(problem.options))
    role = {n: problem.pattern.slots[o.slot].role for n, o in pairs}
    p.at_most({z: 1, **{used[n]: -1 for n, _ in pairs if role[n] == "base"}}, 0)
    green = {units[n]: -o.unit for n, o in pairs if role[n] == "vegetable" or o.offered.food.kind == "tomato"}
    p.at_most({z: 60 * people, **green}, 0)
    p.at_most({z: 0.7 * 600 * 100 * people, **{units[n]: -o.energy for n, o in pairs}}, 0)


def _things(p: _Programme, problem: PatternProblem, z: int, used: list[int], buys: int) -> None:
    """So many foods bought at most; each lot asked for has its price."""
    bought = [u for o, u in zip(problem.options, used, strict=True) if o.offered.gives == "buy"]
    asked = [u for o, u in zip(problem.options, used, strict=True) if o.offered.gives == "ask"]
    p.at_most({**dict.fromkeys(bought, 1.0), z: -buys}, 0)
    for column in bought:
        p.cost[column] += weights.BUY_ONE * _POINT
    for column in asked:
        p.cost[column] += weights.ASK_OWNER * _POINT


def _families(p: _Programme, problem: PatternProblem, z: int, used: list[int]) -> dict[str, int]:
    like = problem.wanted.like
    same = weights.LIKE_FAMILY * _POINT
    family = {name: p.variable(1, same if like and like.family == name else 0) for name in problem.pattern.flavours}
    p.at_most({**dict.fromkeys(family.values(), 1.0), z: -1}, 0)
    p.at_most({**dict.fromkeys(family.values(), -1.0), z: 1}, 0)
    for o, u in zip(problem.options, used, strict=True):
        fits = {name: o.offered.food.fit(name) for name in family}
        p.at_most({u: 1, **{family[name]: -1 for name, fit in fits.items() if fit}}, 0)
        points = {name: {2: 3, 3: 5}.get(fit, 0) * _POINT for name, fit in fits.items()}
        most = max(points.values())
        if most:
            gained = p.variable(most, 1.0, whole=False)
            p.at_most({gained: 1, u: -most}, 0)
            p.at_most({gained: 1, **{family[name]: -worth for name, worth in points.items()}}, 0)
    return family


def _slots(
    p: _Programme, problem: PatternProblem, z: int, used: list[int], units: list[int], giving: Giving | None
) -> None:
    people = problem.wanted.people
    for name, slot in problem.pattern.slots.items():
        inside = [n for n, o in enumerate(problem.options) if o.slot == name]
        low, usual, high = (round(share * PORTION) * people for share in slot.portions)
        if slot.role == "base" and problem.wanted.sitting == "dinner":
            low = min(low, round(0.5 * PORTION) * people)
        held = {units[n]: float(problem.options[n].portion_units) for n in inside}
        if slot.role == "protein":  # a pack in its last days may go whole, where it is in
            whole = {n: problem.options[n].most * problem.options[n].portion_units for n in inside}
            p.at_most({**held, **{used[n]: -float(most - high) for n, most in whole.items() if most > high}}, high)
            high = max([high, *whole.values()])
        filled = {used[n]: 1.0 for n in inside}
        p.at_most(filled, slot.items[1])
        p.at_most({z: slot.items[0], **dict.fromkeys(filled, -1.0)}, 0)
        p.at_most(held, high)
        dear = weights.ITEM_EXTRA if slot.role in _MAIN else weights.SMALL_ITEM_EXTRA
        extra = p.variable(9, -dear * _POINT)
        p.at_most({**filled, extra: -1, z: -slot.usual_items}, 0)
        price = weights.ITEM_MISSING if slot.role in _MAIN else weights.SMALL_ITEM_MISSING
        missing = p.variable(9, -price * _POINT)
        p.at_most({z: slot.usual_items, missing: -1, **dict.fromkeys(filled, -1.0)}, 0)
        if not inside:
            continue
        if slot.items[0]:
            enough: dict[int, float] = {z: low, **{column: -value for column, value in held.items()}}
            if giving is not None:
                enough[_short(p, int(0.5 * low), weights.PORTION_SHORT * _POINT / PORTION)] = -1
            p.at_most(enough, 0)
            there = z
        elif slot.usual_items and slot.role == "vegetable":
            there = z
        else:
            there = p.variable(1)
            for column in filled:
                p.at_most({column: 1, there: -1}, 0)
        main = slot.role in _MAIN and not (problem.wanted.sitting == "dinner" and slot.role == "vegetable")
        near = p.variable(
            weights.NEAR_PORTIONS * PORTION * people, -(weights.OFF_NEAR_MAIN if main else weights.OFF_NEAR_SMALL)
        )
        far = p.variable(10 * high + 10 * usual, -(weights.OFF_FAR_MAIN if main else weights.OFF_FAR_SMALL))
        if slot.role == "vegetable":
            near_or_far = {p.variable(10 * high + 10 * usual, -weights.OFF_FAR_SMALL): -1.0}
        else:
            near_or_far = {near: -1.0, far: -1.0}
        p.at_most({**held, **near_or_far, z: -usual}, 0)
        if slot.role not in _MAIN and slot.usual_items > 1:  # a share of the usual amount for each thing that is in
            each = usual // slot.usual_items
            share = {used[n]: float(each) for n in inside}
            p.at_most({**share, near: -1, far: -1, **{column: -value for column, value in held.items()}}, 0)
            continue
        p.at_most({there: usual, near: -1, far: -1, **{column: -value for column, value in held.items()}}, 0)


def _limits(p: _Programme, problem: PatternProblem, z: int, amounts: tuple[list[int], list[int], list[int]]) -> None:
    """Each limit of the sitting, and each of one food for every food that is in something."""
    for cap in problem.limits.sitting_caps:
        for room in rooms(problem.wanted.counted, cap):
            _limit(p, problem, z, (cap, None, room), amounts)
    foods = {part.food for o in problem.options for part in o.offered.brings.parts}
    for cap in problem.limits.food_caps:
        for food in sorted(foods):
            for room in rooms(problem.wanted.counted, cap, food):
                _limit(p, problem, z, (cap, food, room), amounts)


def _limit(
    p: _Programme,
    problem: PatternProblem,
    z: int,
    row: tuple[Cap, str | None, Room],
    amounts: tuple[list[int], list[int], list[int]],
) -> None:
    """What is likely; with every pair of items that may be off; and each thing by eye by itself. In mg.

    Pairs are written out one by one, where the model has the dual of their choice.
    """
    cap, food, room = row
    units, weighed, weighed_units = amounts
    sure, people = problem.wanted.tolerance, problem.wanted.people
    likely: dict[int, float] = {}
    off: dict[str, dict[int, float]] = {}
    by_eye: dict[str, dict[int, float]] = {}
    for n, o in enumerate(problem.options):
        brings = o.offered.brings
        parts = [part for part in brings.parts if cap.covers(part.cutoff_class) and food in {None, part.food}]
        use = load_of_group(replace(brings, parts=tuple(parts)), cap.group, sure)
        mg, eye, error = (float(figure) / 100 * o.unit for figure in (use.likely, use.by_eye, use.error))
        item, mine = o.offered.food.id, off.setdefault(o.offered.food.id, {})
        likely[units[n]] = mg
        mine[units[n]] = eye
        if o.weighable:
            mine[weighed_units[n]] = error - eye
            mine[weighed[n]] = float(use.likely) / 100 * sure.scale_grams
        if not use.settled:
            wrong = by_eye.setdefault(item, {})
            wrong[units[n]] = mg * sure.eye_percent / 100
            if o.weighable:
                wrong[weighed_units[n]] = -mg * sure.eye_percent / 100
    if not any(likely.values()) and not any(value for one in off.values() for value in one.values()):
        return
    allowed = room.likely / 100 * people
    p.at_most({**likely, z: -allowed}, 0)
    if not room.used_up:
        for wrong in by_eye.values():
            p.at_most({**_added(likely, wrong), z: -allowed}, 0)
    if room.at_most is not None:
        most = room.at_most / 100 * people
        terms = [one for one in off.values() if any(one.values())]
        terms += [{z: before / 100 * people} for before in room.before]
        pairs = [(one, two) for k, one in enumerate(terms) for two in terms[:k]] or [(one, {}) for one in terms]
        for one, two in pairs:
            p.at_most(_added(_added(_added(likely, one), two), {z: -most}), 0)


def _added(one: dict[int, float], two: dict[int, float]) -> dict[int, float]:
    return {column: one.get(column, 0.0) + two.get(column, 0.0) for column in {*one, *two}}


def _targets(p: _Programme, problem: PatternProblem, z: int, units: list[int]) -> None:
    """What is short of protein, energy, fibre and vegetables costs; what comes over the day's limit too."""
    wanted, people = problem.wanted, problem.wanted.people
    protein: dict[int, float] = {}
    others: dict[int, float] = {}
    energy, fibre, vegetables = ({}, {}, {})  # type: tuple[dict[int, float], dict[int, float], dict[int, float]]
    for o, n in zip(problem.options, units, strict=True):
        (protein if "protein" in o.offered.food.roles or o.boxed else others)[n] = float(o.protein_mg)
        energy[n], fibre[n] = float(o.energy), float(o.fibre_mg)
        if problem.pattern.slots[o.slot].role == "vegetable":
            vegetables[n] = float(o.unit)
    sauce = {n: float(o.unit) for o, n in zip(problem.options, units, strict=True)
             if problem.pattern.slots[o.slot].role == "sauce" and o.offered.food.kind == "tomato"}  # fmt: skip
    tomatoes = p.variable(80 * people)
    p.at_most({tomatoes: 1, **{n: -each for n, each in sauce.items()}}, 0)
    vegetables[tomatoes] = 1.0
    counted = p.variable(min(6000 * people, round(wanted.protein_g * 1000) * people))
    p.at_most({counted: 1, **{n: -each for n, each in others.items()}}, 0)
    dinner = wanted.sitting == "dinner"
    main = wanted.sitting in {"dinner", "packed"}
    kcal = {"dinner": 600, "packed": 350, "breakfast": 300, "shake": 250}.get(wanted.sitting, 0)
    for target, brings, price in (
        (wanted.protein_g * 1000, {**protein, counted: 1.0}, weights.PROTEIN_UNDER_TARGET * _POINT // 1000),
        (
            kcal * 100,
            energy,
            weights.ENERGY_UNDER_TARGET * _POINT // 1000,
        ),
        (8000 if main else 0, fibre, weights.FIBRE_UNDER_TARGET * _POINT // 1000),
        (
            120 if dinner else 0,
            vegetables,
            (weights.VEGETABLES_UNDER_TARGET - weights.VEGETABLES_UNDER_PLENTY) * _POINT // 10,
        ),
        (180 if dinner else 0, vegetables, weights.VEGETABLES_UNDER_PLENTY * _POINT // 10),
    ):
        if target:
            short = p.variable(target * people, -price)
            p.at_most({z: target * people, short: -1, **{n: -each for n, each in brings.items()}}, 0)
    for enough, brings, price in (
        ({"dinner": 800, "packed": 650}.get(wanted.sitting, 0) * 100, energy, weights.ENERGY_OVER),
        (45_000 if main else 0, {**protein, **others}, weights.PROTEIN_OVER),
    ):
        if enough:
            over = p.variable(1e9, -price * _POINT // 1000)
            p.at_most({**brings, over: -1}, enough * people)
    for cap in wanted.limits.day_caps:
        before = -(-day_so_far_ug(wanted.eaten, wanted.stacking, cap) // 10) if wanted.stacking else 0
        room = max(0, int(cap.typical_g * 100_000) - before) * people
        over = p.variable(1e8, -weights.DAY_OVER * _POINT / 100_000)
        load = {
            n: float(load_of_group(o.offered.brings, cap.group, wanted.tolerance).likely) * o.unit
            for o, n in zip(problem.options, units, strict=True)
        }
        p.at_most({**load, over: -1, z: -room}, 0)
