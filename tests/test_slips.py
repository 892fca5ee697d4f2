"""Slips of spelling in the names of common foods, made at random from a seed: read, or asked about with the right food.

The slips are those of Damerau (1964): a letter wrong, missing, added, or two changed places; four in five words that
are misspelt are one such slip off. Letters go wrong beside each other on a keyboard, and vowels for vowels.
"""

import itertools
import random
from collections import Counter
from collections.abc import Iterator

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import singular
from calmlarder.tables.book import Tables

FOODS = (
    "almonds", "aubergine", "avocado", "bacon", "bagels", "banana", "basil", "beef_mince", "beetroot", "black_beans",
    "black_pepper", "blueberries", "bread", "broccoli", "brown_rice", "butter", "butternut_squash", "cabbage",
    "carrots", "cashews", "cauliflower", "celery", "cheddar", "cherries", "chicken_breast", "chicken_thighs",
    "chickpeas", "chopped_tomatoes", "chorizo", "coconut_milk", "coriander", "cottage_cheese", "courgette",
    "couscous", "cream_cheese", "cucumber", "cumin", "curry_powder", "double_cream", "eggplant", "feta", "flour",
    "garlic", "ginger", "grapes", "green_beans", "halloumi", "honey", "hummus", "kale", "ketchup", "kidney_beans",
    "kiwi", "lamb_chops", "lemons", "lentils", "lettuce", "macaroni", "mackerel", "mango", "milk", "mozzarella",
    "mushrooms", "mustard", "noodles", "oat_milk", "olive_oil", "olives", "onions", "orange_juice", "oregano",
    "paprika", "parmesan", "parsley", "parsnips", "pasta", "peanut_butter", "pears", "peas", "pesto", "pineapple",
    "pork_chops", "potatoes", "prawns", "pumpkin", "quinoa", "radishes", "raisins", "raspberries", "red_lentils",
    "rice", "rice_noodles", "ricotta", "rosemary", "salmon", "sausages", "sour_cream", "soya_milk", "spaghetti",
    "spinach", "spring_onions", "strawberries", "sugar", "sweetcorn", "sweet_potato", "tahini", "tofu",
    "tomato_paste", "tomatoes", "tortillas", "trout", "tuna", "turkey_mince", "turmeric", "turnips", "vinegar",
    "walnuts", "yoghurt", "zucchini",
)  # fmt: skip
NEXT_KEYS = {one: other for row in ("qwertyuiop", "asdfghjkl", "zxcvbnm") for one, other in itertools.pairwise(row)}
VOWELS = "aeiou"
SLIPS = 800
LEAST_READ, MOST_WRONG = 0.92, 0.004  # measured when this was written: 754 and 0 of 800, from 578 and 0 before


def slipped(word: str, chance: random.Random) -> str:
    """The word with one slip behind its first letter."""
    at = chance.randrange(1, len(word))
    how = chance.choice(("gone", "twice", "swapped", "beside", "vowel"))
    if how == "gone":
        return word[:at] + word[at + 1 :]
    if how == "twice":
        return word[:at] + word[at] + word[at:]
    if how == "swapped":
        return word[: at - 1] + word[at] + word[at - 1] + word[at + 1 :]
    if how == "vowel" and word[at] in VOWELS:
        return word[:at] + chance.choice(VOWELS.replace(word[at], "")) + word[at + 1 :]
    return word[:at] + NEXT_KEYS.get(word[at], "s") + word[at + 1 :]


def slips(lexicon: Lexicon, number: int) -> Iterator[tuple[str, str]]:
    """Names of common foods and the same with a slip that makes no other known word of it."""
    chance = random.Random(1964)
    while number:
        name = chance.choice(FOODS).replace("_", " ")
        words = name.split()
        at = chance.randrange(len(words))
        wrong = slipped(words[at], chance)
        if len(words[at]) < 4 or wrong == words[at] or singular(wrong) in lexicon.words:
            continue
        number -= 1
        yield name, " ".join((*words[:at], wrong, *words[at + 1 :]))


@pytest.fixture(scope="module")
def lexicon(tables: Tables) -> Lexicon:
    return Lexicon(tables)


@pytest.mark.long
def test_most_slips_are_read_and_hardly_any_as_another_food(reader: LarderReader, lexicon: Lexicon) -> None:
    count = Counter[str]()
    for name, wrong in slips(lexicon, SLIPS):
        meant, found = reader.read(name, "line"), reader.read(wrong, "line")
        assert meant is not None
        assert found is not None
        foods = {lot.food for lot in meant.lots} | set(
            meant.match.candidates and [one.food for one in meant.candidates]
        )
        foods |= {kin for food in foods for kin in lexicon.kin(food)}
        if not found.lots:
            count["asked" if foods & {one.food for one in found.candidates} else "lost"] += 1
        else:
            count["read" if {lot.food for lot in found.lots} <= foods else "wrong"] += 1
    assert count["read"] >= LEAST_READ * SLIPS, count
    assert count["wrong"] <= MOST_WRONG * SLIPS, count


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("appls x4", "apple"),
        ("2 lemos", "lemon"),
        ("tmatoes 500g", "tomatoes"),
        ("psinach bag", "spinach"),
        ("yogert 500g", "plain yoghurt"),
        ("rce noodles", "dry rice noodles"),
        ("pork chols 2", "pork chops"),
        ("sugr", "sugar"),
    ],
)
def test_a_slip_near_one_common_food_is_read_and_shown(line: str, meant: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert reading.names == (meant,)
    assert reading.assumed == (meant,) or "dry" in reading.assumed


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("green beens 200g use by tmrw", "green-beans"),
        ("sour creme", "sour-cream"),
        ("butter beens tin", "butter-beans-canned"),
        ("hotdog buns 3", "bread-roll"),
        ("burger bins x4", "bread-roll"),
        ("tomato past tube", "tomato-puree"),
        ("butter been open since monday", "butter"),  # and no beans
        ("brocoli", "broccoli"),
        ("romain lettuce", "lettuce-cos"),
        ("cauliflour 1", "cauliflower"),
        ("lasanga leftovers", "lasagne"),
        ("stake 1", "beef-steak"),
        ("tumeric fresh", "turmeric"),
    ],
)
def test_a_word_that_sounds_like_the_food_is_read(line: str, food: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == [food]


def test_nothing_is_offered_that_only_a_letter_of_a_short_word_makes(reader: LarderReader) -> None:
    reading = reader.read("philt 200g", "line")  # no filo pastry, which sounds otherwise and few have
    assert reading is not None
    assert not reading.candidates


def test_a_slip_near_two_common_foods_is_asked_with_both(reader: LarderReader) -> None:
    reading = reader.read("peans 200g", "line")
    assert reading is not None
    assert not reading.lots
    assert {"pear", "pecans"} <= {one.food for one in reading.candidates[:3]}


def test_other_words_in_names_are_seldom_near_enough(lexicon: Lexicon) -> None:
    """Foods of other kitchens are written like common ones: what the tables know of them stands for what they lack."""
    from calmlarder.matching.names.common_foods import FORMS
    from calmlarder.matching.names.spelling import Spelling

    spelling = Spelling(lexicon.words, lexicon.at_home, lexicon.spelt, lambda words: len(set(words)) == 1)
    others = sorted(word for word in lexicon.words if len(word) > 3 and word.isalpha() and word not in FORMS)
    taken = [word for word in others if (slip := spelling.of_common(word)) and slip.sure]
    taken = [word for word in taken if lexicon.called(word).isdisjoint(lexicon.called(spelling.of_common(word).word))]
    assert len(taken) * 120 < len(others), taken
