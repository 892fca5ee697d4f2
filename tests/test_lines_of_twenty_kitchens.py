"""Kinds of phrasing that fridges of twenty kitchens brought up: whole lines asked for a word that says nothing of food.

What a cook would say of each line; the lines are ours, common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)  # a Wednesday


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = read(reader, line)
    assert reading.problem is None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        # what a stall made on a day was not cooked at home; what is left over was
        ("400g tofu (made monday, still ok)", ["tofu-firm"]),
        ("leftover tofu made monday", ["tofu-scrambled"]),
        # fresh noodles are sold boiled
        ("thick bee hoon, fresh one, 400g", ["rice-noodles-cooked"]),
        ("bee hoon 400g", ["rice-noodles-dry"]),
        # what goes without saying of a food decides nothing
        ("soda bread, wheat", ["bread-soda"]),
        ("paneer 200g (dairy)", ["paneer"]),
        ("gravy granules (wheat, onion, the lot)", ["gravy-granules"]),
        ("black eyed beans 1 tin", ["black-eyed-beans-boiled"]),
        # what is said to be in a made food, where its figures hold it
        ("sausages (garlic in them)", ["sausages"]),
        ("refried beans can (has onion pwdr)", ["refried-beans"]),
        ("pesto (has garlic)", ["pesto"]),
        ("jar of tahini w/ oil on top", ["tahini"]),
        # some of them boiled; several sizes
        ("6 eggs (2 boiled)", ["egg", "egg-boiled"]),
        ("eggs 6, 2 hard boiled", ["egg", "egg-boiled"]),
        ("eggs 12 (boiled)", ["egg-boiled"]),
        ("sweet potatoes: 1 massive, 2 titchy", ["sweet-potato"]),
        # so many of a hand of them, and no fish
        ("green banana 5 finger", ["banana-firm"]),
        ("okro 10 fingers", ["okra"]),
        ("fish fingers 10", ["fish-fingers"]),
        ("fake bacon 1 pack", ["plant-pieces"]),
        ("pap 2kg", ["polenta-dry"]),
        # what is to be eaten up is there; the bush of the dasheen is its leaves
        ("kang kong 1 pkt, finish today", ["water-spinach"]),
        ("spinach finish today", ["spinach"]),
        ("dasheen bush 1 bundle", ["taro-leaves"]),
        ("bhagi dasheen bush", ["taro-leaves"]),
        ("pap, cold, a slab", ["polenta-cooked"]),
        # a filling of two things is one dish
        ("mince & onion pie ub mon", ["pie-savoury"]),
        ("peas and fish pie", ["peas-frozen", "fish-pie"]),
        # what lay in the water of pulses counts as they do
        ("black eyed beans, boiled with chard", ["black-eyed-beans-boiled"]),
        # a bracket that says less than the word before it, and one that says more
        ("feta (the salad cheese one)", ["feta"]),
        ("spinach (swiss chard)", ["chard"]),
        ("snoek, smoked", ["haddock-smoked"]),
        ("snoek", ["fish-white"]),
        ("idli batter (day 3, sour)", ["idli-batter"]),
        ("sweet pepper 1 green", ["pepper-green"]),
        ("carrot, 1, whiskery", ["carrot"]),
        ("lentil dahl portion (I made it w/ onion)", ["dal-cooked"]),
        ("mashed potatoes leftover (has milk)", ["potato-mashed"]),
        ("hummus (normal, garlicky)", ["hummus"]),
        ("ground turkey 1lb 93/7 sell by 3/12", ["turkey-mince"]),
        ("green bell pepper half, other half used", ["pepper-green"]),
        ("radishes bunch tops gone", ["radish"]),
        ("gf pasta box rotini", ["pasta-gluten-free-dry"]),
        ("sambal (got shallot)", ["sambal-onion"]),
        # a flavour or a filling is no food of its own
        ("2 min wheat noodles, chicken flavour", ["noodles-instant-seasoned"]),
        ("ramen bricks 3 (no flavor packet)", ["noodles-instant"]),
        ("noodle pots x2 (chicken & mushroom)", ["noodles-instant-seasoned"]),
        ("crisps (cheese & onion)", ["potato-crisps-flavoured"]),
        ("crisps (ready salted)", ["potato-crisps"]),
        ("hummous, roasted garlic", ["hummus-flavoured"]),
        ("frozen pierogies 1 bag (potato+onion)", []),  # no three foods
        ("gyoza 12 (veg)", ["dumplings"]),
        ("spring rolls, peas", ["spring-rolls", "peas-frozen"]),
        ("cream cheese w/ chive", ["cream-cheese"]),
        ("caramelized onions in a tub", ["onion-fried"]),
        ("toor dal 1/2kg", ["toor-dal-dry"]),
        ("chikn pieces frozen", []),  # of plants as a rule, and a slip of the pen for the bird
        ("1 can kidney beans w/ onion + chili seasoning", []),
        ("pinto beans pot, cooked w/ onion", ["chilli-bean"]),
        ("garlic & herb snags x4", ["sausages"]),
        ("5 carrots, 1 of them green at the top", ["carrot"]),  # no green-topped milk
        ("milk green top 1L", ["milk-semi"]),
        ("turkey steaks 2, date's tomorrow", ["turkey-breast"]),
        ("dates 200g", ["dates"]),
        ("choc 85%", ["chocolate-dark"]),
        ("2 jacket potatoes cooked last night, skins on", ["potato-boiled"]),
        ("fennel bulb w fronds", ["fennel"]),
        ("kombucha, opened, fizz gone", ["kombucha"]),
        ("sambar from yesterday 2 ladles, it is having onion", ["sambar"]),
        ("plantain 3, one still green, two don black finish", ["plantain-green", "plantain-ripe"]),
        ("banana bunch, still greenish", ["banana-firm"]),
        ("curry leaf, mustard, red chilli dry, hing", ["curry-leaves", "mustard-seeds", "chilli-dried", "asafoetida"]),
        ("thyme, curry, white pepper", ["thyme-dried", "curry-powder", "pepper-white"]),
        ("cumin, paprika, chili powder", ["cumin", "paprika", "chilli-powder-mix"]),
        ("chilli powder", ["chilli-flakes"]),
        ("poosanikai (white pumpkin) 300 g", ["winter-melon"]),
        ("rashers 6 smoked", ["bacon"]),
        ("oyster mushrooms, wild", ["mushroom-oyster"]),
        ("gazpacho carton (with garlic)", ["soup-tomato"]),
        # what is in a thing does not name it
        ("feijão (has garlic)", []),
        ("pie with cabbage and mushroom", []),
    ],
)
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("smoked haddock - reduced, today's date", 0),
        ("pawpaw half - must finish by tomorrow 12th", 1),
        ("tindora 250g pls use fast", 1),
        ("prawns bought ytd", 1),
        ("ham, date is 14/3", 3),
        ("garlic oil homemade?? mum did it at xmas", -75),  # a day behind: what lies in oil must not keep till next one
        ("tofu (firm) 400g made monday", 1),  # open since then, as what comes loose is
    ],
)
def test_how_long(line: str, days: int, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left == days


@pytest.mark.parametrize(
    "line",
    [
        "mate its grim",
        "good evening my dear, this is what is in the house:",
        "well now, here's the state of it",
        "howzit, fridge is kak but let me see",
        "home late. this is it",
        "back at 6 starving so nothing fancy pls x",
        "shopping comes friday",
        "righto so arvo fridge audit",
        "hiya! here's what we've got, sorry it's long, priya did a shop on sunday and then we ate out both nights",
        "if the power's off again at 6 it must be something on the gas",
        "girl the fridge full but nothing cook yet",
        "ok fridge roll call",
        "alright team, wednesday stock take",
        "how far, see wetin dey",
        "we have people coming so be quick please",
        "i'm home by 7, starving",
        "fridge a gwan funny so nutten fresh nah last past tmrw",
    ],
)
def test_a_remark_is_no_food_and_is_told_so(line: str, reader: LarderReader) -> None:
    """None of them may become a food, as `mate` once became tea and `gas` a yoghurt for the bin."""
    reading = read(reader, line)
    assert reading.lots == reading.standing == ()
    assert reading.problem is not None
    assert "names no food" in reading.problem.what


@pytest.mark.parametrize("line", ["if you see this eat the rice", "back bacon 6", "home made pesto", "no power bars"])
def test_what_begins_like_a_remark_and_names_a_food(line: str, reader: LarderReader) -> None:
    problem = read(reader, line).problem
    assert problem is None or "names no food" not in problem.what


@pytest.mark.parametrize(
    "line",
    [
        "kashk (jar)",
        "something orange in the freezer, soup?",
        "that green stuff my mum makes, callaloo i think",
        "gotukola one bunch",
        "we have some sevai left",
        "it's just rice",
    ],
)
def test_what_may_be_a_food_is_no_remark(line: str, reader: LarderReader) -> None:
    assert read(reader, line).problem is None


@pytest.mark.parametrize("word", ["claim", "hearing", "coal", "miller", "walter", "beast", "salon", "preach"])
def test_common_english_is_no_slip_of_a_food(word: str, reader: LarderReader) -> None:
    """Words of the most used ten thousand of English (wordfreq 3.1) that once became mussels, herring and cola."""
    assert lots(reader, word) == ()


def test_no_power_is_told_what_to_do(tables: Tables) -> None:
    """Four hours: what the US FDA tells the public of a fridge without power, from memory, not verified."""
    reading = read(LarderReader(tables, TODAY), "no light since morning so the freezer things are soft")
    assert reading.problem is not None
    assert "four hours" in reading.problem.remedy


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("marmalade end of jar", 10, 100),
        ("mature cheddar 350 block", 350, 350),
        ("3 eggs, free range, from the honesty box", 150, 210),
        ("lemon", 58, 108),  # USDA SR28 09150: 58 g and 84 g without peel, by its size
        ("frozen spinach, 4 lumps", 100, 240),
        ("spinach frozen blocks 8", 200, 480),
        ("bananas 3, going brown", 250, 400),
        ("rice cakes 1 pack", 90, 150),
        ("snow peas bag (few slimy ones chucked)", 100, 250),
        ("2 limes", 100, 160),  # USDA SR28 09159: 67 g
    ],
)
def test_how_much(line: str, low: float, high: float, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert low <= lot.grams <= high


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("my roommate has rice and eggs but we're not speaking", "roommate"),
        ("leftover mac n chees, thats kaylees lunch dont", "kaylee"),
        ("uncle fred's stockfish he is coming back for it sunday", "uncle fred"),
        ("garlic, shallot - mum's sambal need", "mum"),
        ("cow leg - mummy's, for sunday", "mummy"),
        ("stew, one cooler, full of onion and tatashe, aunty bisi's for her office people", "aunty bisi"),
        ("6 eggs from auntie jean's hens", None),
        ("tomatoes from uncle bob's garden", None),
        ("chicken for sunday", None),
    ],
)
def test_whose(line: str, owner: str | None, reader: LarderReader) -> None:
    found = lots(reader, line)
    assert found
    assert {lot.owner for lot in found} == {owner}


@pytest.mark.parametrize("line", ["had fish yesterday", "who ate the cheese", "rice finish", "milk finished today"])
def test_what_is_gone_is_not_there(line: str, reader: LarderReader) -> None:
    problem = read(reader, line).problem
    assert problem is not None
    assert "none" in problem.what


def test_what_was_cooked_with_onion_is_not_the_onion(reader: LarderReader) -> None:
    """It is too old to ask about; in the list it stands as the bird."""
    (lot,) = lots(reader, "chicken laps, 4, already boiled with onion and seasoning on sunday")
    assert lot.food == "chicken-cooked"


def test_pumpkin_that_was_cut_up_keeps_as_what_is_cut(reader: LarderReader) -> None:
    (whole,) = lots(reader, "pumpkin 1lb from sunday market")
    (cut,) = lots(reader, "pumpkin 1lb cut up from sunday market")
    assert whole.days_left is not None
    assert cut.days_left is not None
    assert cut.days_left < 7 < whole.days_left


def test_sizes_are_counted_together(reader: LarderReader) -> None:
    """Three sweet potatoes of 130 g and more (SR28: 130 g the piece of 5 inches)."""
    (lot,) = lots(reader, "sweet potatoes: 1 massive, 2 titchy")
    assert lot.grams >= 390
