"""Lines as people text them, by classes of phrasing. Foods, grams and days are what a cook would say of each line.

The lines are ours, written before the reader was tried on them; common practice, no source.
"""

from datetime import date
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.matching.lacks import NotThere, refuse_lacks
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)  # a Wednesday


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("left over rice", ["rice-white-cooked"]),
        ("left-over rice", ["rice-white-cooked"]),
        ("plantain, not ripe", ["plantain-green"]),
        ("2 bananas not yet ripe", ["banana-firm"]),
        ("lettuce tomato cuke", ["lettuce", "tomato", "cucumber"]),
        ("1 carrot 2 onions 3 spuds", ["carrot", "onion-brown", "potato"]),
        ("potatoes 2kg carrots 1kg parsnips 500g", ["potato", "carrot", "parsnip"]),
        ("tomatoes (4) cucumber (1)", ["tomato", "cucumber"]),
        ("salt pepper olive oil", ["salt", "pepper-black", "oil-olive"]),
        ("cumin, coriander & turmeric (ground)", ["cumin", "coriander-seed", "turmeric"]),
        ("half red onion, half white onion", ["onion-red", "onion-white"]),
        ("2 peppers (1 red, 1 green)", ["pepper-red", "pepper-green"]),
        ("2 red 1 yellow pepper", ["pepper-red", "pepper-yellow"]),
        ("caps r/g 1 ea", ["pepper-red", "pepper-green"]),
        ("bananas 3 v brown 1 green", ["banana-ripe", "banana-firm"]),
        ("seeds - pumpkin, sunflower", ["pumpkin-seeds", "sunflower-seeds"]),
        ("top shelf - butter, milk and eggs", ["butter", "milk", "egg"]),
        ("cinnamon, cloves", ["cinnamon", "cloves"]),
        ("tomatoes and basil", ["tomato", "basil"]),
        ("tofu (and kale)", ["tofu-firm", "kale"]),
        ("1 zucchini 1 yellow squash", ["courgette", "squash-yellow"]),
        ("turmeric, chilli powder, pepper", ["turmeric", "chilli-flakes", "pepper-black"]),
        ("ginger, gr chilli", ["ginger", "chilli-green"]),
        ("carrots, caps (red x1)", ["carrot", "pepper-red"]),
        ("onions 2, tofu (smoked x2)", ["onion-brown", "tofu-smoked"]),
        ("fish, prawns", ["fish-white", "prawns"]),
        ("onion, spring onion 2", ["onion-brown", "spring-onion-green", "spring-onion-white"]),
        # one food, whatever else is said of it
        ("haricots verts / green beans 1 sac frozen", ["green-beans-frozen"]),
        ("cheese, grated, cheddar", ["cheddar"]),
        ("stock cubes, veg", ["stock-cube-onion"]),
        ("noodles, egg", ["egg-noodles-dry"]),
        ("creme fraiche half tub", ["creme-fraiche"]),  # half of the tub, and not half the fat
        ("lettuce, romaine, 2 hearts", ["lettuce-cos"]),
        ("rice, long grain", ["rice-white-dry"]),
        ("fish (salmon)", ["salmon"]),
        ("haddock fish 2", ["fish-white"]),
        ("half a turnip (the big orange one)", ["swede"]),
        ("carrots 3 (the big orange ones)", ["carrot"]),
        ("collards, de-stemmed", ["spring-greens"]),
        ("chook breast cooked 300g (sun meal prep)", ["chicken-cooked"]),
        ("melk laktosefri", ["milk-lactose-free"]),
        ("moong dal thodi si", ["moong-dal-dry"]),
        ("labu siam (chayote)", ["chayote"]),
        ("kale (couve)", ["kale"]),
        ("leeks still in the ground", ["leek-green", "leek-white"]),
        ("peanuts for the sambal", ["peanuts"]),
        ("tofu (the firm kind)", ["tofu-firm"]),
        ("i think 3 carrots", ["carrot"]),
        ("half a courgette knocking about", ["courgette"]),
        ("split peas yellow", ["split-peas-dry"]),
        ("chickpeas soaking since last night", ["chickpeas-dry"]),
        ("tomate 4 maduros", ["tomato"]),
        ("smør 200g", ["butter"]),
        ("brunost (brown cheese)", ["brown-cheese"]),  # boiled whey, and no cheddar
        ("calamansi 1 pack", ["calamansi"]),  # no calamari
        ("bombay duck", ["fish-white"]),
        ("turkey legs 2", ["turkey-leg"]),
        ("garden eggs 5", ["aubergine-african"]),
        ("oak leaf lettuce", ["lettuce"]),
        ("crisp apples 4", ["apple"]),
        ("tom yum soup", ["ready-meal"]),  # with onion and garlic, and no tomatoes
        ("lemon chicken", ["ready-meal"]),  # a dish, and no lemons
        ("lettuce, still crisp", ["lettuce"]),
        ("salmon w dill", ["salmon"]),
        ("lemon bit dry", ["lemon"]),
        ("6 pots", ["potato"]),
        ("6 pots of yoghurt", ["yoghurt-plain"]),
        ("egusi, one milk tin", ["egusi-seeds"]),
        ("toms 6 + 3 cherry", ["tomato", "tomato-cherry"]),
        ("bell peppers red green yellow", ["pepper-red", "pepper-green", "pepper-yellow"]),
        ("peppers 1 red 1/2 green", ["pepper-red", "pepper-green"]),
        ("tin of beans", ["baked-beans"]),
        ("tin of beans (kidney)", ["kidney-beans-canned"]),
        ("leftover spag bol (onion in)", ["spaghetti-bolognese"]),
        ("chicken thawing in fridge since last night", ["chicken-breast"]),
    ],
)
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods


@pytest.mark.parametrize(
    "line",
    [
        "gungo beans",  # a kind of bean that the tables lack
        "kocho 6 rolls",  # no bread roll
        "kasar dolma",  # two strange words, of which one is nearly a spice
        "dark choc w almonds",  # neither of them by itself
        "pheasant breasts",  # no chicken
        "mountain",  # a word of some bread's name
        "dal 1kg",  # of which sort
        "vegetable oil or grill spray",  # one of two, and nobody knows which
        "2 fresh truffles",  # no trifle
        "leftover rice and dal",  # dal that was made, with who knows what
        "jerk turkey",  # in onion and garlic
        "gefilte fish",
        "apple oat biscuits",
        "pot in the fridge (has garlic)",  # what is in it is not what it is
    ],
)
def test_no_other_food_is_taken(line: str, reader: LarderReader) -> None:
    assert lots(reader, line) == ()


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("tom's noodles 150g", 150, 150),
        ("5 baby cucumbers", 300, 2000),
        ("mini courgettes 4", 150, 700),
        ("2 spoons of tahini", 20, 50),
        ("x2 trays mushrooms", 350, 700),
        ("bunch of asparagus, maybe 8 spears", 90, 200),
        ("6 rashers streaky bacon", 100, 240),
        ("eggs 1 dozen", 528, 840),
        ("a dozen eggs", 528, 840),
        ("carton of oat milk 3/4 full", 600, 850),
        ("bag and a half of lettuce", 180, 270),
        ("peas frozen 1/2 bag", 200, 600),
        ("6 small cucumbers", 500, 1300),
        ("1 and 1/2 onions", 140, 200),
        ("kilo of potatoes", 990, 1010),
        ("tofu 14oz ×2", 780, 810),
        ("toms 6, 2 gone mouldy", 330, 480),
        ("cheddar lump 150g", 140, 160),
        ("pasta twirls, enough for 1", 60, 160),
        ("baguette from yesterday", 200, 300),
        ("oat milk, inch left", 40, 220),
        ("1/2 x 500g mince", 200, 300),
        ("500g mince (half used)", 200, 300),
        ("chicken thighs x8 (2 packs)", 500, 1400),
        ("string cheese 4", 75, 125),
        ("onions, string of", 500, 3000),
        ("eggs 3 wks old", 150, 700),
        ("strawberries few mouldy", 200, 700),
    ],
)
def test_how_much(line: str, low: float, high: float, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert low <= lot.grams <= high


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("plain yoghurt 3 days over", -3),
        ("sour cream dated 10th", -1),
        ("soy milk 1L exp besok (tmrw)", 1),
        ("pak choi eat in the next 2 days", 2),
        ("tofu smoked val. 18/03", 7),
        ("crème fraîche, DLC 12 mars", 1),
        ("use it up tonight: spinach", 0),
        ("milk ub tmro", 1),
        ("milk off sat", 3),
        ("ham day left", 1),
        ("cream use by end of week", 2),
        ("cheese 2 wks left", 14),
    ],
)
def test_how_long(line: str, days: int, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left == days


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("oat milk, roomies", "roomies"),
        ("hummus (bros)", "bros"),
        ("lentil soup (husband only)", "husband"),
        ("cheddar (my sisters)", "sisters"),
        ("new potatoes, baby", None),
        ("peas kirsty", "kirsty"),
        ("dave - bacon", "dave"),
        ("pesto: jo", "jo"),
        ("yoghurt for the baby", "baby"),
        ("nut bar (Kev)", "kev"),
        ("yotam says the olives are his", "somebody else"),
        ("josh milk", "josh"),
        ("aoife (eggs)", "aoife"),
        ("her oat milk", "somebody else"),
        ("dog mince 500g", "dog"),
        ("rohit ka dudh", "rohit"),
        ("mats' skyr dont touch", "mats"),
        ("hands off cheese", "somebody else"),
        ("not my milk", "somebody else"),
        ("eggs my sisters", "sister"),
        ("strawberries for the kids", "kids"),
        ("raisins boxes kids lunch", "kids"),
        ("eggs -> priya", "priya"),
        ("mince frozen jan", None),
        ("kiev (Jo made)", None),
        ("sausages 500g (thabo)", "thabo"),
        ("anna + ellen's milk", "anna and ellen"),
        ("roommate ka rice", "roommate"),
        ("nani ka achaar", None),
        ("ruby chard", None),
        ("green beans ub thu", None),
        ("kale (couve)", None),
        ("8 eggs from nonna's hens", None),
        ("tomatoes going soft", None),
        ("potatoes charlotte", None),
        ("basil", None),
    ],
)
def test_whose(line: str, owner: str | None, reader: LarderReader) -> None:
    assert {lot.owner for lot in lots(reader, line)} == {owner}


@pytest.mark.parametrize(("line", "there"), [("liam ate the ham", False), ("ham, liam ate half", True)])
def test_what_somebody_ate_is_not_there(line: str, there: bool) -> None:
    if there:
        refuse_lacks(line)
    else:
        with pytest.raises(NotThere):
            refuse_lacks(line)


def test_a_condition_stays_with_the_food_it_is_said_of(reader: LarderReader) -> None:
    soft, sound = lots(reader, "tomatoes going soft, 2 limes")
    assert (soft.condition, sound.condition) == ("soft", None)
    both = lots(reader, "tomatoes, limes, all going soft")
    assert [lot.condition for lot in both] == ["soft", "soft"]


def test_what_has_gone_is_not_added(reader: LarderReader) -> None:
    for line in ("spinach bag gone to soup", "yoghurt - green fur", "lettuce, liquid in a bag"):
        assert is_gone_or_off(reader, line), line


def test_what_is_no_longer_always_there(tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path, tables, TODAY) as kitchen:
        taken_back(kitchen)


def taken_back(kitchen: Household) -> None:
    keep_lines(kitchen, kitchen.read_all(["always have: oil, rice"], "TEXT"))
    assert len([one for one in kitchen.lots() if one.lot.always]) == 2
    done = keep_lines(kitchen, kitchen.read_all(["always have no rice"], "TEXT"))
    assert done.problems == []
    assert [one.lot.food for one in kitchen.lots() if one.lot.always] == ["oil-rapeseed"]
    again = keep_lines(kitchen, kitchen.read_all(["always have no rice"], "TEXT"))
    assert ["not among what is always there" in str(problem) for problem in again.problems] == [True]


def test_a_line_that_waits_is_exported_and_waits_again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    first, second, file = str(tmp_path / "first"), str(tmp_path / "second"), tmp_path / "list.txt"
    assert main(["larder", "add", "--home", first, "beans handful"]) == 0
    capsys.readouterr()
    assert main(["larder", "export", "--home", first]) == 0
    exported = capsys.readouterr().out
    assert exported.startswith("beans handful  # to answer: ")
    file.write_text(exported, encoding="utf-8")
    assert main(["larder", "import", "--home", second, str(file)]) == 0
    capsys.readouterr()
    assert main(["larder", "export", "--home", second]) == 0
    assert capsys.readouterr().out == exported


@pytest.mark.parametrize(
    ("line", "foods", "low", "high"),
    [
        ("8 garden eggs", ["aubergine-african"], 400, 900),
        ("6 eggs 8 garden eggs", ["egg", "aubergine-african"], 250, 400),
        ("cold pasta, half tub", ["pasta-cooked"], 80, 300),
        ("leftover rice n chicken", ["rice-white-cooked", "chicken-cooked"], 150, 400),
        ("2 sausages left in pack", ["sausages"], 90, 200),
        ("half an onion in clingfilm", ["onion-brown"], 40, 90),
        ("asparagus, £1 sticker", ["asparagus"], 150, 400),
        ("cherry toms few left, ~10", ["tomato-cherry"], 90, 220),
        ("4ish carrots", ["carrot"], 200, 480),
        ("red cabbage wedge", ["cabbage-red"], 100, 400),
        ("mushrooms 1 pint", ["mushroom-button"], 200, 360),
        ("a few chives", ["chives"], 3, 40),
        ("onion plenty", ["onion-brown"], 400, 3000),
        ("flour tortillas 10ct", ["tortilla-wheat"], 300, 600),
        ("half a thing of sour cream", ["sour-cream"], 80, 300),
        ("half a rotisserie chook", ["chicken-cooked"], 250, 500),
        ("chinese leaf half", ["cabbage-chinese"], 300, 800),
        ("housemate says i can have the spinach", ["spinach"], 100, 300),
    ],
)
def test_as_people_text_it(line: str, foods: list[str], low: float, high: float, reader: LarderReader) -> None:
    found = lots(reader, line)
    assert [lot.food for lot in found] == foods
    assert low <= found[0].grams <= high


@pytest.mark.parametrize("line", ["blorp and yoghurt", "milk n snorf", "zorb style mince", "chicken 14 left"])
def test_what_nobody_knows_is_said(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.to_answer is not None


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("salmon ub tue gone", -1), ("sausages use by gone", -1), ("beans opened tin sunday", -1),
        ("opened passata, 3 days", 0), ("hummus, opened, 4 days", -2),
    ],
)  # fmt: skip
def test_days_gone_by(line: str, days: int, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left is not None
    assert lot.days_left <= days


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("chicken 2 breasts 3 thighs", ["chicken-breast", "chicken-thigh"]),
        ("2 tins lentil soup", ["soup-lentil"]),
        ("hing gf", ["asafoetida"]),
        ("cooked sausages 3", ["sausages"]),
        ("black and green olives", ["olives"]),
        ("paprika n thyme", ["paprika", "thyme-dried"]),
    ],
)
def test_what_stands_beside_makes_no_other_food(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods


@pytest.mark.parametrize(("line", "days"), [("paneer exp 15", 4), ("opened feta sat", 10)])
def test_days_in_few_words(line: str, days: int, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left is not None
    assert lot.days_left <= days
    assert lot.dates


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [("paneer-400gm fresh", "paneer", 400), ("rice -300 g", "rice-white-dry", 300), ("aloo-8", "potato", 1360)],
)
def test_a_dash_before_an_amount_is_no_minus(line: str, food: str, grams: float, reader: LarderReader) -> None:
    lot = reader.read(line, "a test").lot
    assert lot is not None
    assert (lot.food, lot.grams) == (food, grams)


@pytest.mark.parametrize("line", ["milk exp-14", "firm tofu use by-14/3", "kale ub-14/3"])
def test_a_dash_behind_a_label_of_days_loses_no_day(line: str, reader: LarderReader) -> None:
    lot = reader.read(line, "a test").lot
    assert lot is not None
    assert [one.on for one in lot.dates if not one.assumed] == [date(2026, 3, 14)]
