"""What the wishes are worth against each other, in points. Ours; common practice, no source."""

from types import MappingProxyType

# The model counts in ten-thousandths of a point, so that points per gram are whole numbers.
POINT = 10_000

# Points for one portion of a food with so many days left.
_RESCUE = MappingProxyType({0: 100, 1: 70, 2: 50, 3: 35, 4: 20, 5: 20, 6: 10, 7: 10})
PERISHABLE_UNDATED = 5
HERB_RESCUE = 0.3  # of that, for a portion of a herb: a few grams
OVERDUE_QUALITY = 100
URGENT_DAYS = 7

FINISH_SHARE = 0.2  # for using a lot up, as a share of what one portion of it is worth
LAST_PACK_FINISH = 1.5  # the same for fish, meat or tofu that goes off tomorrow: no raw rest is left behind
WEIGHING = 6
OPENING = 4
# For a tin that is opened and not emptied, or a pack with less than a portion left in it, where the dish could take all
# of it: about a quarter of a portion away from the usual amount.
REST_IN_A_PACK = 10
THAWING = 6  # for raw fish or meat out of the freezer, beside its minutes: a fresh thing is had first, where both suit
MINUTE = 0.6
LATE_MINUTE = 2.0  # on top, for each minute over the usual: a tray that takes an hour has to be worth it
SECOND_CHOICE = 120  # for a dish of haste where no minutes are asked for
# For each group of a pattern's `flavour` that has nothing in it: dearer than two weighings and a tin to open.
FLAVOUR_MISSING = 32
# For each thing that seasons a dish which is missing to three: the third, the second, the first.
SEASONINGS_MISSING = (5, 18, 60)
# For what rounds a dish off and is there, with a place in the dish, but stays out: something sour, something savoury,
# something to moisten it, a finishing thing, nuts or seeds, a cheese where the dish has a place for it, something that
# is fried first for its taste (ginger, chilli, a spice), butter to turn boiled potatoes in. The first three are above a
# tin to open and a weighing together, the others above what one thing more than usual costs.
ROUND = MappingProxyType({
    "sour": 14, "savoury": 14, "moist": 14, "finish": 8, "crunch": 7, "ripe": 7, "fried": 10, "buttered": 10,
})  # fmt: skip
# For each of the first three things that a cook has at hand to finish a dish with (fresh herbs, ginger, chilli, lemon,
# olives, capers, sesame) which has a place and stays out: above what one small thing more than usual costs.
IDLE_FLAVOUR, FLAVOURS_AT_HAND = 9, 3
# For each of the first two spices of the chosen kitchen (of a South Asian one three) that have a place and stay out:
# the same.
IDLE_SPICE, SPICES_AT_HAND = 9, MappingProxyType({"south-asian": 3})
SPICES_AT_HAND_ELSEWHERE = 2
PLAIN = 45  # tofu, tempeh, pulses, poultry or eggs with nothing that gives them a taste
DRY = 28  # roast or fried meat, fish or tofu with nothing that moistens it: just above what makes it taste once
UNSALTED_NUTS = 45  # a dressing of nut butter with nothing salty in it
UNSWEETENED_NUTS = 12  # such a dressing with nothing sweet, where there is something: above one small thing more
BARE = 24  # raw vegetables without a dressing
PLAIN_OIL = 12  # plain oil where garlic or onion oil is there: above what the chosen kitchen prefers by
BUTTER_ABROAD = 3  # butter where the kitchen fries in oil and oil is there: below a small thing that is missing
IN_WATER = 24  # a stew in plain water where tomatoes or stock are there: above a tin to open and two weighings
FOREIGN_BASE = 45  # potatoes under a curry where there is rice: about a main thing that is missing and its amount
RICE_FOR_TORTILLAS = 200  # rice in a Mexican dish where there are tortillas: as none at all where there is some
# Rice in a dish of another kitchen where there are tortillas of maize: they are a Mexican kitchen's own. Ours.
RICE_BESIDE_TORTILLAS = 110
NO_BASE = 200  # roots or eggs alone where rice, potatoes or noodles are there: above what a last pack is worth
BREAD_FOR_A_BASE = 45  # bread or crumpets under a cooked main where potatoes, rice or noodles are there: the same
GARLIC_BY_NAME = 40  # for each sauce, paste or stock with garlic or onion in its name: above weighings
# For each thing a slot lacks to its usual number: a main thing; or a spice, a herb, a sauce, whose taste the wishes
# above price already, so that a dish with many such places is not worse than one with few.
ITEM_MISSING = 14
SMALL_ITEM_MISSING = 6
# For each thing above the usual number: a main thing, or what only rounds off.
ITEM_EXTRA = 10
SMALL_ITEM_EXTRA = 3
SAME_KIND_AGAIN = 15
# For each portion a slot is away from its usual amount, per person: cheap while near, dear beyond.
NEAR_PORTIONS = 0.3
OFF_NEAR_MAIN = 40
OFF_FAR_MAIN = 140
OFF_NEAR_SMALL = 2
OFF_FAR_SMALL = 8
DISLIKED = 400  # for each lot of a food that is disliked: more than the last day of a main protein is worth
# Short of what is aimed at, of everybody's together: for a gram of protein, ten kcal, a gram of fibre, and ten grams
# of vegetables. Of protein other things than protein foods bring this much at most: starch does not buy it.
PROTEIN_UNDER_TARGET = 8
ENERGY_UNDER_TARGET = 5
FIBRE_UNDER_TARGET = 2
VEGETABLES_UNDER_TARGET = 20
VEGETABLES_UNDER_PLENTY = 4
ENERGY_OVER = 5  # for ten kcal above what fills a plate
PROTEIN_OVER = 2  # for a gram above what one eats at once
PROTEIN_OF_THE_REST_G = 6
TOLERATED = 15  # for a food that came back after elimination, once a dish: about a usual thing that is missing
DAY_OVER = 100  # for each g over what a whole day should bring, as far as it was logged
# What was had of late, on the day itself (fading: history/variety.py): the same dish, each lot of the same protein or
# base. Below what the last day of a portion is worth, so that nothing is thrown away for a change. A declined dish
# comes again at once only where nothing else can be had.
EATEN_DISH = 40
EATEN_PROTEIN = 16
EATEN_BASE = 6
DECLINED_DISH = 400
# More like it: for the same flavour family, the same dish, and each main food that is there again.
LIKE_FAMILY = 20
LIKE_DISH = 20
LIKE_MAIN = 30
# A further dinner of the same protein and base with other vegetables alone: above what a main thing on its last day is
# worth, so that it comes where there is nothing else.
SAME_PLATE = 250
# The same protein and vegetables with another base alone; and the same dish of the same protein: dear beside
# most that a dish lacks.
SAME_TOP, SAME_DISH = 120, 120
# What has to give where no dinner meets the limits. Dear beside any wish, so that a dinner gives little.
# Common practice, no source.
PROTEIN_SHORT = 60  # for each gram under the floor, of everybody's together
MINUTE_LATE = 10  # on top of MINUTE
GIVES_AT_ALL = 50  # for protein, minutes or a slot that gives, however little
PERSON_FEWER = 500
PORTION_SHORT = 300  # for each portion a slot is under the pattern's least
BUY_ONE = 400
ASK_OWNER = 200
MOST_PROTEIN_SHORT = 0.5  # of the floor
MOST_PORTION_SHORT = 0.5  # of the pattern's least
FIT = MappingProxyType({1: 0, 2: 3, 3: 5})


# A main thing (fish, meat, tofu, eggs) in its last days costs more to lose than leaves do.
MAIN_RESCUE = 2
MAIN_RESCUE_DAYS = 2
LAST_RAW, RAW_SOON = 2, 1.4  # once more for raw fish and meat whose label ends today; and in a day or two


def main_rescue_points(days_left: int | None, points: int) -> int:
    """Points for one portion of a protein food; days are counted from today. What is past its best waits for none."""
    return points * MAIN_RESCUE if days_left is not None and 0 <= days_left <= MAIN_RESCUE_DAYS else points


def rescue_points(days_left: int | None, perishable: bool) -> int:
    """Points for one portion; days are counted from today."""
    if days_left is None:
        return PERISHABLE_UNDATED if perishable else 0
    if days_left < 0:
        return OVERDUE_QUALITY
    return _RESCUE.get(days_left, 0)
