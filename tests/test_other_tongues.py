"""Lines in which people mix names of their own tongue with English. The lines are ours; the names are common usage."""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.retold.other_tongues import in_english
from calmlarder.tables.book import Tables


@pytest.fixture(scope="module")
def lexicon(tables: Tables) -> Lexicon:
    return Lexicon(tables)


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("zwiebeln 3, möhren 1 bund", ["onion-brown", "carrot"]),
        ("kartoffeln festkochend 1 kg", ["potato"]),
        ("Käse 150g und Schinken", ["cheddar", "ham"]),
        ("boter, mosterd, azijn", ["butter", "mustard", "vinegar-wine"]),
        ("prei 2 en wortels 4", ["leek-whole", "carrot"]),
        ("hakket gris 400 g", ["pork-mince"]),
        ("løg 4 og hvidløg", ["onion-brown", "garlic"]),
        ("rejer 200g frosne", ["prawns"]),
        ("røde linser 300g", ["lentils-red-dry"]),
        ("poireaux 2, carottes 500g", ["leek-whole", "carrot"]),
        ("pâtes 500g", ["pasta-dry"]),
        ("cebollas 3 y zanahorias 4", ["onion-brown", "carrot"]),
        ("abacaxi metade, limao, coentro", ["pineapple", "lime", "coriander"]),
        ("tomate 4 e pepino 1", ["tomato", "cucumber"]),
        ("zucchine 3 e melanzane 2", ["courgette", "aubergine"]),
        ("pere 2 mature", ["pear"]),
        ("ziemniaki 2 kg, marchewka 4", ["potato", "carrot"]),
        ("soğan 2, sarımsak", ["onion-brown", "garlic"]),
        ("mısır 2", ["sweetcorn-canned"]),
        ("ntomates 4, aggouria 2", ["tomato", "cucumber"]),
        ("khiar 5 goje 4", ["cucumber", "tomato"]),
        ("banadoura 4, khyar 3", ["tomato", "cucumber"]),
        ("kicap manis, kicap cair", ["soy-sauce-sweet", "soy-sauce"]),
        ("santan kotak 200ml", ["coconut-milk"]),
        ("bigas half sack", ["rice-white-dry"]),
        ("cà chua 4, dưa leo 2", ["tomato", "cucumber"]),
        ("kyuri 3, nasu 2", ["cucumber", "aubergine"]),
        ("gamja 3", ["potato"]),
        ("xihongshi 3, huanggua 1", ["tomato", "cucumber"]),
        ("nyanya 5, vitunguu 3", ["tomato", "onion-brown"]),
        ("alubosa 3, tomati 6", ["onion-brown", "tomato"]),
        ("shinkurt 3, timatim 4", ["onion-brown", "tomato"]),
        ("kartofeln 1 kg", ["potato"]),  # a letter is missing
        ("svogūnai 3, česnakas", ["onion-brown", "garlic"]),
        ("pienas be laktozės 1 l, varškė", ["milk-lactose-free", "quark"]),
        ("virti burokeliai 4", ["beetroot-boiled"]),
        ("saldyti koldunai, pakelis", ["dumplings"]),
        ("kartupeļi 2 kg, burkāni 5", ["potato", "carrot"]),
        ("rupjmaize puse, biezpiens", ["bread-rye", "quark"]),
        ("sibulad 3, küüslauk", ["onion-brown", "garlic"]),
        ("pool leiba", ["bread-wholemeal"]),
        ("zemiaky 1 kg, cibuľa 2", ["potato", "onion-brown"]),
        ("mlieko bez laktózy 1 l", ["milk-lactose-free"]),
        ("čebula 3, kislo zelje pol kile", ["onion-brown", "sauerkraut"]),
        ("golaž od včeraj", ["stew-meat"]),
        ("kiselo mlyako 400 g, chushki 3", ["yoghurt-plain", "pepper-yellow"]),
        ("bob chorba ot vchera", ["chilli-bean"]),
        ("niori, khakhvi 4", ["garlic", "onion-brown"]),
        ("badrijani 2, puri", ["aubergine", "bread-wholemeal"]),
        ("skhtor, hats, panir", ["garlic", "bread-wholemeal", "cheddar"]),  # Armenian; Indian elsewhere
        ("hndkadzavar 500 g", ["buckwheat-dry"]),
        ("bandagobi 1, aduwa", ["cabbage-white", "ginger"]),
        ("kukhura ko masu aadha kilo", ["chicken-breast"]),
        ("kuryache file 400 g zamorozhene", ["chicken-breast"]),
        ("hrechka varena", ["buckwheat-cooked"]),
        ("munad 6 ja piim", ["egg", "milk"]),  # more than one tongue says `ja`
        ("olas 8 un piens", ["egg", "milk"]),
        ("kartofi i morkovi", ["potato", "carrot"]),
        ("ale (ginger)", ["ginger"]),  # Marathi, and the bracket says so
    ],
)
def test_names_of_other_tongues_are_read(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("look at these carrots, 3", ["carrot"]),  # garlic in Dutch
        ("roman tomatoes 4", ["tomato"]),  # pomegranate in Arabic
        ("cavolo nero 200g", ["kale"]),  # cabbage, were it Italian alone
        ("beef mince til sunday", ["beef-mince"]),  # sesame in Hindi
        ("gala apples 3", ["apple"]),  # milk in Greek
        ("big peer pressure carrots 3", ["carrot"]),  # a pear in Dutch
    ],
)
def test_english_words_stay_english(line: str, foods: list[str], reader: LarderReader) -> None:
    found = [lot.food for lot in lots(reader, line)]
    assert found in (foods, [])  # nothing at all is a question: never another food


@pytest.mark.parametrize("line", ["pimiento 1", "pates", "plátano 2", "frijoles 400g"])
def test_a_name_of_several_foods_is_asked(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.match.outcome == "ask"
    assert not reading.lots


@pytest.mark.parametrize(
    "line",
    [
        "sūris supelijęs",
        "juust hallitanud",
        "kashkaval muhlyasal",
        "khacho daobebuli",
        "panir borbosnats",
        "dahi bigreko",
        "splesnivený syr",
        "smetana prokysla",
        "pienas surūgęs",
        "zgnilo korenje",
        "kohupiim pahaks läinud",
    ],
)
def test_what_is_gone_or_off_in_another_tongue_is_not_added(line: str, reader: LarderReader) -> None:
    assert lots(reader, line) == ()


def test_limes_of_one_land_are_the_lemons_of_another_and_said_to_be_assumed(reader: LarderReader) -> None:
    """Lemons hold no less than limes of any group in these tables, so they are the cautious ones."""
    reading = reader.read("limones 8", "line 1")
    assert reading is not None
    assert ([lot.food for lot in reading.lots], reading.assumed) == (["lemon"], ("lemon",))


@pytest.mark.parametrize(
    ("line", "plain"),
    [
        ("ui 2, wortels 3", "onion 2, wortels 3"),  # a Dutch word tells the tongue of a short one
        ("ui 2, carrots 3", "ui 2, carrots 3"),
        ("leche 1 lt dom", "leche 1 lt sunday"),
        ("stilton dom", "stilton dom"),
        ("carrots e 2", "carrots e 2"),
        ("saging na saba 6", "saging na saba 6"),
    ],
)
def test_what_may_mean_something_else_counts_beside_its_tongue(line: str, plain: str, lexicon: Lexicon) -> None:
    assert in_english(line, lexicon) == plain


@pytest.mark.parametrize(
    ("line", "food", "on"),
    [
        ("gorgonzola 120g scade il 13", "blue-cheese", date(2026, 3, 13)),
        ("queso fresco 200g vence el sábado", "queso-fresco", date(2026, 3, 14)),
        ("köttfärs 500g bäst före 13 mars", "mince", date(2026, 3, 13)),
        ("kipfilet 300 gr tht 13-3", "chicken-breast", date(2026, 3, 13)),
        ("tavuk göğsü 400 g skt 14.03", "chicken-breast", date(2026, 3, 14)),
        ("petto di pollo 300g scade domani", "chicken-breast", date(2026, 3, 12)),
        ("spinazie zak 200g houdbaar tot vrijdag", "spinach", date(2026, 3, 13)),
        ("frango peito 500g validade 13/3", "chicken-breast", date(2026, 3, 13)),
        ("kohupiim kuni reedeni", "quark", date(2026, 3, 13)),
        ("mlieko spotrebovať do piatka", "milk", date(2026, 3, 13)),
        ("krējums līdz piektdienai", "sour-cream", date(2026, 3, 13)),
    ],
)
def test_days_are_told_in_other_tongues(line: str, food: str, on: date, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert food in lot.food
    assert [dated.on for dated in lot.dates if dated.kind in {"use-by", "best-before"}] == [on]


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("yoghurt min kones", "wife"), ("queijo do meu irmao 300g", "brother"), ("jambon de ma soeur", "sister"),
        ("ham (abuela)", "gran"), ("salmon 200g, my ex left it", "ex"), ("cheddar (mums, she's visiting)", "mums"),
        ("somebodys ham", "somebody"), ("yoghurts for the grandchildren", "grandchildren"),
        ("mamos balandėliai, vakarykštė", "mum"),
    ],
)  # fmt: skip
def test_whose_a_thing_is(line: str, owner: str, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.owner == owner


def test_every_name_in_english_stays_as_it_is(tables: Tables, lexicon: Lexicon) -> None:
    changed = [food.name for food in tables.foods if in_english(food.name.casefold(), lexicon) != food.name.casefold()]
    assert changed == []


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("2 tazas arroz", "rice-white-dry", 370),
        ("2 tassen reis", "rice-white-dry", 370),
        ("2 kopjes rijst", "rice-white-dry", 370),
        ("2 esslöffel erdnussbutter", "peanut-butter", 32),
        ("2 matskedar jordnötssmör", "peanut-butter", 32),
        ("2 sendok makan selai kacang", "peanut-butter", 32),
        ("2 teelöffel kreuzkümmel", "cumin", 4),
        ("2 copos leite", "milk", 400),
        ("2 gelas susu", "milk", 400),
        ("1 pfund kartoffeln", "potato", 453.6),
        ("1 dussin ägg", "egg", 660),
        ("dahi adha kilo", "yoghurt-plain", 500),
    ],
)
def test_cups_and_spoons_of_other_tongues_weigh_what_english_ones_do(
    line: str, food: str, grams: float, tables: Tables
) -> None:
    """A cup of rice 185 g, a spoon of peanut butter 16 g, as in measures.csv."""
    reading = LarderReader(tables, date(2026, 3, 11)).read(line, "line 1")
    assert reading is not None
    assert [(lot.food, lot.grams) for lot in reading.lots] == [(food, grams)]


@pytest.mark.parametrize(
    "line", ["quark angebrochen", "yogur abierto", "latte aperto", "quark geöffnet", "skuta odprta", "hapukoor avatud"]
)
def test_open_in_another_tongue_is_open(line: str, tables: Tables) -> None:
    reading = LarderReader(tables, date(2026, 3, 11)).read(line, "line 1")
    assert reading is not None
    assert [lot.opened for lot in reading.lots] == [True]


@pytest.mark.parametrize(
    ("lines", "line", "food"),
    [
        (
            ("gotukola 1 bunch", "umbalakada", "parippu half kg", "pol kiri 1 tin"),
            "pol half, in the fridge",
            "coconut-fresh",
        ),
        (("key shinkurt 2 kilo", "kik ater 1 kg", "gomen 2 bunch", "berbere jar"), "key sir 2", "beetroot"),
    ],
)
def test_what_one_line_leaves_in_doubt_the_others_of_the_home_tell(
    lines: tuple[str, ...], line: str, food: str, reader: LarderReader
) -> None:
    """Sinhala and Amharic names of foods: recalled. By itself, or in an English list, such a line stays a question."""
    assert reader.read_all([*lines, line], "list")[-1].lots[0].food == food
    assert not reader.read_all([line], "list")[0].lots
    english = ["2 carrots", "milk 1 l", "oats 500 g", "salt", "half a cabbage", "eggs 6", "rice 1 kg"] * 3
    assert not reader.read_all([*english, *lines[:2], line], "list")[-1].lots
