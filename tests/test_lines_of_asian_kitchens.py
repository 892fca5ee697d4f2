"""Lines of kitchens from Delhi to Tokyo, typed as people chat: each is read as the English line beside it.

What the words mean is common usage, no source; the lines are ours.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.retold.accents import told_by_accents
from calmlarder.matching.retold.other_tongues import in_english
from calmlarder.tables.book import Tables


@pytest.fixture(scope="module")
def lexicon(tables: Tables) -> Lexicon:
    return Lexicon(tables)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("2 ikat kangkung udah agak layu", ["water-spinach"]),
        ("susu uht dah dibuka 2 hari lalu", ["milk"]),
        ("tirang kanin kagabi", ["rice-white-cooked"]),
        ("ban ke baicai", ["cabbage-chinese"]),
        ("hong lajiao ji ge", ["chilli-red"]),
        ("gai dan 6 jek", ["egg"]),
        ("ca rot 3 cu", ["carrot"]),
        ("hanh la 1 nam", ["spring-onion-green", "spring-onion-white"]),  # a bunch, and no mushroom
        ("bắp cải nửa cái", ["cabbage-white"]),  # `bắp` alone is maize
        ("moo sap 300g", ["pork-mince"]),
        ("torimomo 300g reito", ["chicken-thigh"]),
        ("dubu ban mo", ["tofu-firm"]),
        ("aadhi patta gobi", ["cabbage-white"]),
        ("chinna vengayam kaal kilo", ["shallot"]),
        ("peyaj 6ta", ["onion-brown"]),
        ("kandi pappu kilo", ["toor-dal-dry"]),
        ("kothimbir ek judi sukli", ["coriander"]),
    ],
)
def test_foods_beside_words_of_their_tongue_are_read(line: str, foods: list[str], reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is None
    assert [lot.food for lot in reading.lots] == foods


@pytest.mark.parametrize(
    "line",
    [
        "tahu kuning basi, buang", "roti jamuran", "gatas panis na", "talong bulok", "niunai guo qi le, reng le",
        "doufu sou le", "dau fu sung jo", "banh mi bị mốc", "dau phu chua roi bo", "tao hu boot laew", "enoki kusatta",
        "moyashi suteta", "uyu sanghan geo", "paneer pe phaphundi", "doodh phat gaya", "thakkali 5 azhugi pochu",
        "paal thirinju pochu", "dherosh poche geche",
        "doi tok hoye geche", "vankaya kullipoyindi", "bataka sadi gayu", "dahi ambat zala",
    ],
)  # fmt: skip
def test_what_is_gone_off_or_thrown_away_is_no_lot(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.lots == ()
    assert "Not added" in str(reading.problem)


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("tempe punya tetangga", "neighbour"), ("nanas buat anak2", "kids"), ("keso para sa mga bata", "kids"),
        ("pingguo mama de", "mum"), ("gio heo cua hang xom", "neighbour"), ("kabocha okaasan no", "mum"),
        ("kimchi halmeoni kkeo", "gran"), ("muttai pakkathu veetu", "neighbour"),
        ("peyaj bachchader jonno", "kids"), ("perugu pillalaki", "kids"), ("batate aaichi", "mum"),
        ("natto inu no", "dog"),
    ],
)  # fmt: skip
def test_whose_it_is(line: str, owner: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [lot.owner for lot in reading.lots] == [owner]


@pytest.mark.parametrize(
    ("line", "on"),
    [
        ("tahu exp besok", 12), ("keso hanggang biyernes", 13), ("doufu mingtian guoqi", 12),
        ("dau hu han ngay mai", 12),
        ("tofu kinyoubi made", 13), ("dubu naeil kkaji", 12), ("paneer shukravar tak", 13), ("thayir naalai varai", 12),
        ("chhana shukrobar porjonto", 13), ("perugu repu varaku", 12), ("paneer ravivar sudhi", 15),
    ],
)  # fmt: skip
def test_until_when_before_or_behind_the_day(line: str, on: int, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    days = [dated.on for lot in reading.lots for dated in lot.dates if dated.kind == "use-by"]
    assert days == [date(2026, 3, on)]


@pytest.mark.parametrize(
    ("line", "plain"),
    [
        ("carrots nao", "carrots nao"),  # rotten in Thai, beside Thai foods alone
        ("mummy made jam", "mummy made jam"),
        ("the bun to go", "the bun to go"),
        ("pakcoy habis", "pak choi all gone"),
        ("pakcoy habis jumat", "pak choi use by friday"),
        ("bo 2, cam 3", "bo 2, cam 3"),
    ],
)
def test_a_word_counts_by_what_stands_beside_it(line: str, plain: str, lexicon: Lexicon) -> None:
    assert in_english(line, lexicon) == plain


def test_an_accented_word_stays_in_a_longer_name(lexicon: Lexicon) -> None:
    assert told_by_accents("bắp cải", lexicon) == "bắp cải"
    assert told_by_accents("bắp 2", lexicon) != "bắp 2"
