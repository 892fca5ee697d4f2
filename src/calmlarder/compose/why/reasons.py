"""In which wishes one dinner is better or worse than another: the points of each, taken apart wish by wish."""

from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.solve import Plan, constant, solver_of
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import POINT
from calmlarder.compose.why.model import Reason
from calmlarder.compose.wishes.all_wishes import WISHES
from calmlarder.cp_sat import cp_model

_SECONDS = 5.0  # all amounts are given: it takes a few hundredths
_LEAST_POINTS = 3.0  # of a reason that is told; ours
_MOST_REASONS = 3  # more is a list that nobody reads: ours

_DISH = "the dish itself"
# What a dinner has too little, or too much, of where a wish costs it more: the class of the wish, in a cook's words.
_WORDS: Mapping[str, str] = MappingProxyType(
    {
        _DISH: "a longer or less usual dish for an evening",
        "Rescue": "less of what goes off first, or of protein food that does, is used up",
        "FewWeighings": "more to weigh",
        "FewOpenings": "another tin to open",
        "FewThawed": "something to thaw first",
        "WholePacks": "a small rest left of a pack or a tin",
        "LittleTime": "more time to cook",
        "UsualItems": "fewer or more things in it than make such a dish",
        "UsualPortions": "amounts farther from those that make such a dish",
        "AtHome": "foods that suit its flavour less",
        "Tastes": "less that gives it a taste, such as a sauce, something sour, or herbs",
        "Seasoned": "less that seasons it",
        "Rounded": "nothing sour, savoury or moist to round it off, though there is some",
        "FlavoursAtHand": "fewer of the herbs, lemon, ginger, olives and the like that are there",
        "SpicesAtHand": "fewer of its kitchen's spices that are there",
        "NotPlain": "nothing savoury beside its protein",
        "Dressed": "raw vegetables without a dressing",
        "LittleGarlic": "a sauce or stock with garlic or onion in its name",
        "TwoKinds": "two proteins of one kind",
        "NotDisliked": "something that is disliked",
        "Near": "less like the dinner that was liked",
        "Nourishing": "less of the vegetables, protein, energy or fibre that a plate should have",
        "WithinDay": "more than what is still free of this day's limits",
        "NotAgainSoon": "had not long ago, or declined",
        "Tolerated": "nothing of what is tolerated again",
        "InfusedOil": "plain oil where there is oil with a flavour",
        "OilBeforeButter": "butter where its kitchen fries in oil",
        "NotInWater": "plain water where there are tomatoes or stock",
        "FittingBase": "potatoes where rice or noodles fit",
        "CookedBase": "bread under a cooked main thing where there is rice or potatoes",
        "TortillasFirst": "rice where there are tortillas",
        "FilledBase": "nothing that fills where there is rice or potatoes",
        "NotTooMuch": "more energy or protein than fills a plate",
        "NotDry": "nothing moist beside what is fried or roast",
        "SaltedNuts": "a nut dressing with nothing salty",
    }
)


def points_by_wish(plan: Plan) -> dict[str, float]:
    """Points that each wish gives or takes, by its class; they add up to the score but for what gives.

    Nothing where the dinner cannot be worked out again in time.
    """
    draft = DishVariables(plan.problem)
    for rule in RULES:
        rule.post(draft)
    terms = {type(wish).__name__: wish.terms(draft) for wish in WISHES}
    draft.model.maximize(sum(factor * variable for each in terms.values() for factor, variable in each))
    for number, option in enumerate(draft.problem.options):
        use = next((one for one in plan.uses if one.option.key == option.key and one.option.slot == option.slot), None)
        draft.model.add(draft.used[number] == (use is not None))
        draft.model.add(draft.units[number] == (use.grams // option.unit if use is not None else 0))
        weighed = draft.weighed[number]
        if weighed is not None:
            draft.model.add(weighed == (use is not None and use.weighed))
    draft.model.add(draft.family[plan.family] == 1)
    solver = solver_of(_SECONDS, None)
    if solver.solve(draft.model) != cp_model.OPTIMAL:
        return {}
    found = {
        name: sum(factor * solver.value(variable) for factor, variable in each) / POINT for name, each in terms.items()
    }
    return {_DISH: constant(plan.problem) / POINT, **found}


def reasons(better: Plan, worse: Plan) -> tuple[Reason, ...]:
    """In what the one is worse, what costs it most first; nothing where it is not worse in anything that counts."""
    one, other = points_by_wish(better), points_by_wish(worse)
    lost = [(points, name) for name, had in one.items() if (points := had - other.get(name, had)) >= _LEAST_POINTS]
    told = sorted(lost, key=lambda each: (-each[0], each[1]))[:_MOST_REASONS]
    return tuple(Reason(points=round(points, 1), words=_WORDS[name]) for points, name in told if name in _WORDS)
