"""What stays and fills nearly all of a limit by itself, and what stands in and is more than anybody takes."""

from decimal import Decimal

from calmlarder.adapt import prices
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import Dish
from calmlarder.adapt.loads import LineLoad, share_filled
from calmlarder.adapt.model import Amount
from calmlarder.intake.plate import Serving
from calmlarder.tables.rows import Food

_FILLS = Decimal("0.3")  # of a limit, of a stand-in that is no longer free to take: ours
_MILK = frozenset({"milk", "cream", "yoghurt"})


def is_wheat_or_milk(food: Food) -> bool:
    """What is had without gluten or lactose for the asking."""
    return (food.gluten == "yes" and food.cutoff_class == "core") or food.kind in _MILK


def near_share(food: Food) -> Decimal:
    """The share of a limit beyond which a slip of the hand passes it; lactose is borne somewhat better."""
    return prices.OF_LACTOSE if food.kind in _MILK else prices.OF_ITS_LIMIT


def is_near(line: Counted, dish: Dish) -> bool:
    """Whether a line of wheat or milk fills nearly all of a limit by itself, or more."""
    if not is_wheat_or_milk(line.food) or line.amount is None or line.profile is None:
        return False
    own = LineLoad(line.food, line.amount, line.profile)
    return share_filled(own, dish.serves, dish.eaters.limits) > near_share(line.food)


def too_much(part: Serving, dish: Dish) -> float:
    """Points for more of a vegetable than anybody takes, of one that fills a limit: two kinds of it go together."""
    portions = float(part.grams / dish.serves / part.food.portion_g)
    if part.food.roles[0] != "vegetable" or portions <= prices.BIG:
        return 0
    amount = Amount(food=part.food.id, grams=part.grams, high=part.grams, weighed=True)
    filled = share_filled(LineLoad(part.food, amount, dish.profile_of(part.food)), dish.serves, dish.eaters.limits)
    return prices.TOO_BIG if filled >= _FILLS else 0
