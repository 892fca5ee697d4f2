"""Where two dishes of a name are equally likely, the one that holds more; lists of basics; riddles."""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables

FOODS = (
    ("chilli con carne mum froze, one portion", ["chilli-con-carne"]),
    ("bolognese dad made, one portion", ["bolognese"]),
    ("4 brats uncooked", ["sausages"]),
    ("2 smoked pork chops", ["pork-chops"]),
    ("salt pepper oil", ["salt", "pepper-black", "oil-rapeseed"]),
    ("salt pepper mustard", ["salt", "pepper-black", "mustard"]),
    ("garlic 2 heads, I know you can't", ["garlic"]),
    ("frozen peas & sweetcorn mix", ["peas-frozen", "sweetcorn"]),
    ("rice vermicelli cooked, from lunch", ["rice-noodles-cooked"]),
    ("polenta from monday, a loaf pan of it", ["polenta-cooked"]),
    ("polenta, a roasting tin of it", ["polenta-cooked"]),
    ("rice pudding, a casserole dish", ["rice-pudding"]),
    ("thin sliced ribeye 1.2 lb for bulgogi, not marinated yet", ["beef-steak"]),
    ("pork belly 400g, not cooked yet", ["pork-belly"]),
    ("toms quiche", ["quiche"]),
    ("toms cucumber", ["tomato", "cucumber"]),
    ("toms soup", ["soup-tomato"]),
    ("cold brew", ["coffee"]),
    ("bread butter eggs milk", ["bread-wholemeal", "butter", "egg", "milk"]),
)


@pytest.mark.parametrize(("line", "foods"), FOODS)
def test_plain_lines_are_no_question(line: str, foods: list[str], reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == foods


@pytest.mark.parametrize("line", ["bolognese", "chilli con carne"])
def test_the_dish_with_more_of_each_group_is_taken_and_told(line: str, reader: LarderReader, tables: Tables) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    (lot,) = reading.lots
    assert reading.assumed
    plain = tables.fermentables_of(f"{lot.food}-plain")
    ours = tables.fermentables_of(lot.food)
    assert plain
    assert all(row.g_per_100g <= ours[group].g_per_100g for group, row in plain.items() if group != "glucose")


@pytest.mark.parametrize(
    "line",
    [
        "ice cream tub, could be stew could be beans",
        "margarine tub, maybe soup maybe chilli",
        "takeaway box, either rice or couscous",
        "leftover curry",
        "soup",
        "stew from patrick",
        "cream, use by the bank holiday",
        "black bean or beef burgers, could be either could be both",
    ],
)
def test_what_nobody_knows_is_asked(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert not reading.lots


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("onions (for Rob, he eats them, I don't)", "rob"),
        ("onions (for Rob)", "rob"),
        ("leeks (for mum, she eats them)", "mum"),
        ("2 peppers (teenagers)", "teenagers"),
        ("yoghurt (littlest one's)", "littlest one"),
        ("toms bacon", "tom"),
        ("toms 4", None),
        ("onions (for soup)", None),
        ("onions (small ones)", None),
        ("2 leeks (the older ones)", None),
    ],
)
def test_whose_it_is_in_a_bracket(line: str, owner: str | None, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert {lot.owner for lot in reading.lots} == {owner}


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("sour cream, use by paddys day", date(2026, 3, 17)),
        ("ham, best before st george's day", date(2026, 4, 23)),
    ],
)
def test_a_feast_on_a_fixed_day_is_a_day(line: str, day: date, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [dated.on for lot in reading.lots for dated in lot.dates] == [day]


@pytest.mark.parametrize("line", ["milk, i think its off", "chicken, she says smells a bit"])
def test_no_remark_hides_that_a_thing_is_bad(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert not [lot for lot in reading.lots if not lot.to_bin]
