"""Fridges typed in the words of kitchens of Europe, Africa and the Near East, in English letters.

What a cook there would say of each line; the lines are ours, common usage, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)  # a Wednesday


ALLIUMS = {"garlic", "garlic-powder", "onion-brown", "onion-red", "onion-fried", "shallot", "onion-powder"}


def parts_of(food: str, tables: Tables) -> set[str]:
    """What goes into a food, and into its parts."""
    parts = {row.part for row in tables.parts if row.food == food}
    return parts.union(*(parts_of(part, tables) for part in parts))


@pytest.fixture(scope="module")
def reader(tables: Tables) -> LarderReader:
    return LarderReader(tables, TODAY)


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


def lot_of(reader: LarderReader, line: str) -> Lot:
    (lot,) = read(reader, line).lots
    return lot


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("ba9al 200g", "onion-brown"), ("7aleeb 1l", "milk"), ("nos kilo 5iyar", "cucumber"), ("na3na3", "mint"),
        ("2 agvaniyot", "tomato"), ("hatzi kilo kishuim", "courgette"), ("pul kila mrkve", "carrot"),
        ("pari sipulia", "onion-brown"), ("vitunguu saumu", "garlic"), ("nusu kilo mishiri", "green-beans"),
        ("öl, kartoffeln 2kg", "potato"), ("timatim gimash kilo", "tomato"),
    ],
)  # fmt: skip
def test_names_are_read(line: str, food: str, reader: LarderReader) -> None:
    assert food in [lot.food for lot in read(reader, line).lots]


@pytest.mark.parametrize(
    "line",
    [
        "jitomates podridos", "lechuga ya no sirve", "frango estragou", "khiyar m3affan", "djej kharban",
        "morgh fased shode", "domates curumus", "agvaniyot mekulkalot", "halav hamutz, mekulkal", "rajcata plesniva",
        "mleko skwasnialo", "milch ist schlecht", "kaas beschimmeld", "jambon avarié", "pomodori marci",
        "ntomates mouxliasmenes", "kyckling har blivit dålig", "kylling rådden", "kana pilaantunut", "nyanya zimeoza",
        "ntoos aporo", "tomati ti baje", "timatim tebelashtual", "cebolla a la basura", "cipolle buttate",
        "zwiebeln weggeworfen", "sipulit roskiin", "kitunguu nimetupa", "oignons a la poubelle",
    ],
)  # fmt: skip
def test_what_is_gone_off_or_thrown_away_is_no_lot(line: str, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line)


@pytest.mark.parametrize(
    "line",
    [
        "huevos se acabaron", "no hay leche", "leite acabou", "7aleeb khalas", "mafi banadoura", "shir tamoom shod",
        "sut bitti", "ein halav", "mleko doslo", "mleko sie skonczylo, nie ma", "kein brot", "kaas is op",
        "lait y en a plus", "latte finito", "gala teliose", "ingen kyckling", "maito loppu", "maziwa imeisha",
        "hakuna nyanya", "wotet alkual",
    ],
)  # fmt: skip
def test_what_is_all_gone_is_no_lot(line: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert not reading.lots
    assert reading.to_answer is None


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("queso de la vecina", "neighbour"), ("leite da vizinha", "neighbour"),
        ("joghurt für die enkel", "grandchildren"),
        ("kaas van de buren", "neighbour"), ("yaourts pour les enfants", "kids"),
        ("prosciutto del coinquilino", "flatmate"),
        ("kotopoulo gia ton skylo", "dog"), ("jogurt pro deti", "kids"), ("mleko wspollokatorki", "flatmate"),
        ("grannens ost", "neighbour"), ("naapurin kananmunat", "neighbour"), ("maziwa ya watoto", "kids"),
        ("halav shel hashutaf", "flatmate"), ("jebneh taba3 el jaran", "neighbour"), ("komsunun peynir", "neighbour"),
        ("petit pois de maman", "mum"), ("queso manchego del perro", "dog"),
    ],
)  # fmt: skip
def test_an_owner_in_another_tongue_is_an_owner(line: str, owner: str, reader: LarderReader) -> None:
    assert lot_of(reader, line).owner == owner


@pytest.mark.parametrize(
    ("line", "on"),
    [
        ("petto di pollo da lunedì", date(2026, 3, 9)), ("pollo del domingo", date(2026, 3, 8)),
        ("petit pois de lundi", date(2026, 3, 9)), ("kurczak z niedzieli", date(2026, 3, 8)),
        ("kyckling från söndag", date(2026, 3, 8)), ("kuku ya jana", date(2026, 3, 10)),
    ],
)  # fmt: skip
def test_a_day_that_it_is_from_is_no_day_to_use_it_by(line: str, on: date, reader: LarderReader) -> None:
    dates = lot_of(reader, line).dates
    assert [one.on for one in dates] == [on]
    assert {one.kind for one in dates} <= {"made", "bought"}


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("ingen ost", []), ("ingen 200g", ["green-beans"]),
    ],
)  # fmt: skip
def test_a_word_of_two_tongues_means_what_stands_beside_it(line: str, food: list[str], reader: LarderReader) -> None:
    assert sorted(lot.food for lot in read(reader, line).lots) == sorted(food)


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("crni luk 3", "onion-brown"), ("beli luk 1 glavica", "garlic"), ("voroshagyma 3", "onion-brown"),
        ("usturoi 1 capatana", "garlic"), ("krasnyi luk 1", "onion-red"), ("ahos 1 ka ulo", "garlic"),
        ("besla 4", "onion-brown"), ("loku lunu 4", "onion-brown"), ("albasa 3", "onion-brown"),
        ("lunu kola", "spring-onion-white"), ("basal akhdar", "spring-onion-white"),
        ("grah kuhani", "kidney-beans-boiled"),
        ("hommos hab 500g", "chickpeas-dry"), ("ris otvarnoy", "rice-white-cooked"), ("gatas half litre", "milk"),
        ("sushki", "pretzels"), ("water leaf 2 bunch", "callaloo"), ("masara 5", "sweetcorn-cob"),
        ("naman shanu", "beef-roast"), ("kaliforniai paprika", "pepper-red"), ("varza murata 1", "sauerkraut"),
        ("thuna paha", "curry-powder"), ("marcha lila", "chilli-green"), ("lobia sabz", "green-beans"),
        ("prik pon", "chilli-flakes"), ("prik chee fa 5", "chilli-red"), ("gan bei", "scallops"),
        ("hamsi 1 kilo", "fish-herring"), ("tursu mixed jar", "cabbage-pickled-garlic"),
        ("roz bel laban", "rice-pudding"),
        ("bap leftover 2 bowls", "rice-white-cooked"), ("tteokguk tteok 500g", "rice-cakes-korean"),
        ("gebna 2areesh", "cottage-cheese"), ("boontjies blik", "baked-beans"), ("patats 3", "sweet-potato"),
        ("aji panca pasta", "chilli-red"), ("tao hu khai", "tofu-egg"), ("jiao zi pi", "wonton-wrappers"),
    ],
)  # fmt: skip
def test_a_word_of_a_kitchen_is_no_other_food(line: str, food: str, reader: LarderReader) -> None:
    """What each word names there is recalled cookery."""
    assert food in [lot.food for lot in read(reader, line).lots]


@pytest.mark.parametrize(
    "line",
    [
        "zeytinyagli pirasa monday", "arroz chaufa leftover", "gutti vankaya kura leftover", "kodi guddu pulusu",
        "batata bhaji leftover", "ringan no olo", "mutta roast", "dim er jhol leftover", "enkulal firfir",
        "gomen leftover", "sukuma leftover", "maharagwe leftover", "kerrie en rys leftover", "carne de panela leftover",
        "feijao pronto congelado", "sudado de pollo", "saltfish buljol", "pad kaprao leftover", "khao pad leftover",
        "ca kho leftover", "tempe orek leftover", "bubur ayam leftover", "ardei umpluti 4", "toltott kaposzta 3",
        "punjene paprike 4", "golubtsy 4", "salata de icre", "salad olivieh half", "loobia polo",
        "chana chaat leftover",
        "mahshi kromb leftover", "molokhia leftover", "imam bayildi leftover", "cochinita pibil leftover",
        "zacusca 1 borcan", "kapusta zasmazana leftover", "fan qie chao dan leftover", "potato sarada",
    ],
)  # fmt: skip
def test_a_dish_of_a_kitchen_counts_the_onion_or_garlic_in_it(line: str, reader: LarderReader, tables: Tables) -> None:
    """Or it is asked about; that each is made with one of them is recalled cookery."""
    for lot in read(reader, line).lots:
        assert ALLIUMS & parts_of(lot.food, tables), lot.food
