"""Amounts, heat and names as a home reads them.

An ounce is 28.349523125 g and an inch 2.54 cm (NIST Special Publication 811, appendix B.8); degrees F are 1.8 times
degrees C and 32 (the same, B.8); a cup is 240 ml and a tablespoon 15 ml (21 CFR 101.9(b)(5)(viii)).
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.cli import main
from calmlarder.render.manner import PLAIN, Manner, cups, fahrenheit, inches, manner_of, ounces, poured
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.limits_screen import LimitsScreen
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.pick import Pick
from test_screens import solved, type_line

LINES = ["courgettes 3", "firm tofu 400g, use by tomorrow", "rice", "soy sauce", "red pepper 2", "potatoes 1kg"]


@pytest.mark.parametrize(
    ("grams", "said"), [(28.35, "1 oz"), (60, "2.1 oz"), (1, "1 g"), (453.6, "1 lb"), (680.4, "1 lb 8 oz")]
)
def test_ounces(grams: float, said: str) -> None:
    assert ounces(grams) == said


def test_ounces_are_never_more_than_the_grams() -> None:
    """What is weighed by ounces may not pass a limit that holds for the grams; a tenth of one is the least there is."""
    for grams in range(3, 450):
        assert float(ounces(grams).removesuffix(" oz")) * 28.349523125 <= grams


@pytest.mark.parametrize(("celsius", "dial"), [(200, 400), (220, 425), (180, 350), (70, 158), (75, 167), (63, 146)])
def test_heat(celsius: int, dial: int) -> None:
    """Ovens have steps of 25; a core temperature is never told lower than it is (63 C are 145.4 F)."""
    assert fahrenheit(celsius) == dial


def test_volumes_and_lengths() -> None:
    assert [cups(ml) for ml in (15, 30, 60, 120, 240, 300, 480)] == [
        "1 tbsp", "2 tbsp", "¼ cup", "½ cup", "1 cup", "1¼ cups", "2 cups",
    ]  # fmt: skip
    assert [inches(cm) for cm in (1, 2, 4)] == ["½", "¾", "1½"]


def test_a_step_in_american(tables: Tables) -> None:
    step = "Bake 250 g courgettes in 2 cm slices at 200 C; add 120 ml passata and spring onion greens."
    assert manner_of("american", "american", tables).work(step) == (
        "Bake 8.8 oz zucchini in ¾ in slices at 400 °F (200 C); add ½ cup (120 ml) passata and scallion greens."
    )
    assert manner_of("metric", "american", tables).work("Courgette, 60 g") == "Zucchini, 60 g"
    assert PLAIN.work(step) == step


def test_a_longer_name_wins_and_parts_of_words_stay() -> None:
    manner = Manner("metric", [("red pepper", "red bell pepper"), ("pepper", "spice"), ("tin", "can")])
    assert manner.name("red pepper, pepper, tinsel") == "red bell pepper, spice, tinsel"


def test_american_names_are_understood_too(tables: Tables, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whoever types what the program shows is read as meaning it."""
    manner = manner_of("american", "american", tables)
    for food in ("courgette", "aubergine", "prawns", "pepper-red", "rocket", "swede", "mangetout", "beetroot"):
        name = manner.name(tables.food_by_id[food].name)
        assert main(["match", "--json", name]) == 0
        assert f'"food": "{food}"' in capsys.readouterr().out


def test_tonight_is_told_in_the_measures_of_the_home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]
    assert main(["people", "set", "me", "--measures", "american", "--names", "american", *home]) == 0
    assert main(["larder", "add", *LINES, *home]) == 0
    capsys.readouterr()
    assert main(["tonight", *home]) == 0
    told = capsys.readouterr().out
    assert "zucchini" in told
    assert "courgette" not in told
    assert " oz" in told
    assert main(["share", "dinner", *home]) == 0
    shared = capsys.readouterr().out
    assert "zucchini" in shared
    assert " oz) " in shared
    assert main(["larder", "list", *home]) == 0
    assert "zucchini" in capsys.readouterr().out


def test_what_goes_in_by_the_spoon_is_told_in_spoons_in_the_steps(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home = ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]
    assert main(["people", "set", "me", "--measures", "american", *home]) == 0
    lines = ["dry quinoa 500g", "firm tofu 400g", "carrots 4", "ground cumin", "oil", "kale 200g"]
    assert main(["larder", "add", *lines, *home]) == 0
    capsys.readouterr()
    assert main(["tonight", "--use", "cumin", *home]) == 0
    steps = " ".join(capsys.readouterr().out.split("Steps")[1].split())
    assert "½ tsp ground cumin" in steps
    assert "½ cup dry quinoa" in steps  # 75 g; a cup of 170 g: USDA SR28, 20035
    assert "oz firm tofu" in steps


@pytest.mark.long
def test_the_screen_follows(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in LINES:
            await type_line(pilot, line)
        await pilot.press("f2")
        await pilot.pause()
        assert isinstance(app.screen, LimitsScreen)
        app.screen.query_one("#measures", Pick).choose("american")
        app.screen.query_one("#names", Pick).choose("american")
        await pilot.pause()
        await pilot.press("escape")
        await pilot.press("f3")
        await solved(app, pilot)
        shown = app.screen.query_one(DinnerView).content
        assert "zucchini" in shown
        amounts = [line for line in shown.splitlines() if " oz  " in line]
        assert any("firm tofu" in line for line in amounts)
        assert any("tofu" in line and "1 day" in line for line in amounts), (
            amounts
        )  # days left give no way to a measure
        await pilot.press("escape")
        await pilot.pause()
        tofu = next(one for one in app.screen.query_one(ItemList).items if "tofu" in one.name)
        assert tofu.measure == "14.1 oz"  # 400 g
        for line, note in (("quinoa 340 g", "about 2 cups"), ("7 eggs", "about 7")):  # a cup of quinoa: USDA, 170 g
            await type_line(pilot, line)
            assert any(note in f"{one.measure} {one.beside}" for one in app.screen.query_one(ItemList).items), line

    play(act)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("used up: 200 g courgette (Ctrl+Z undoes it)", "used up: 200 g (7 oz) zucchini (Ctrl+Z undoes it)"),
        ("instead of 15 g garlic", "instead of 15 g (0.5 oz) garlic"),
        ("24 g protein, 0.27 g fructans + GOS, at most 0.41 of 0.50 g", None),
        ("10 g lactose would fit", None),
        ("out of the larder: 500 g (1 lb 1.5 oz) potatoes", None),
        ("12.5 g lactose, 1.5 g sugar", None),
    ],
)
def test_any_words_get_ounces_beside_what_is_weighed(text: str, told: str | None, tables: Tables) -> None:
    """Grams stay; what is in a food (protein, fermentables) is told in grams alone."""
    assert manner_of("american", "american", tables).told(text) == (told or text)
    assert PLAIN.told(text) == text


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("about 130 to 290 g, fridge", "about 130 to 290 g (4.5 to 10.2 oz), fridge"),
        ("about 300 to 600 g", "about 300 to 600 g (10.5 oz to 1 lb 5 oz)"),
        (
            "the rest of the tofu (110 g, tomorrow is its day)",
            "the rest of the tofu (110 g, 3.8 oz, tomorrow is its day)",
        ),
        ("in 2 cm slices", "in 2 cm (¾ in) slices"),
        ("up to 140 ml water", "up to 140 ml (½ cup + 1 tbsp) water"),
        ("1.5 kg potatoes", "1.5 kg (3 lb 4.5 oz) potatoes"),
        ("100 g lactose-free yogurt", "100 g (3.5 oz) lactose-free yogurt"),
        ("1 litre stock", "1 liter (4 cups + 2½ tbsp) stock"),
        ("likely 12.30 g of lactose, 12 g of sorbitol, 0.40 of 1.60 g", None),
        ("2 g salt, per 100 g", "2 g salt, per 100 g (3.5 oz)"),
    ],
)
def test_any_words_get_what_a_cook_measures_by(text: str, told: str | None, tables: Tables) -> None:
    """Ranges, volumes and sizes too; told twice they are as told once."""
    manner = manner_of("american", "american", tables)
    assert manner.told(text) == (told or text)
    assert manner.told(manner.told(text)) == (told or text)
    assert PLAIN.told(text) == text


def test_what_is_poured_is_never_more_than_the_ml() -> None:
    """A limit may hold for them: a cup is 240 ml, a tablespoon 15."""
    assert [poured(ml) for ml in (5, 15, 60, 100, 240, 250, 480)] == [
        "1 tsp", "1 tbsp", "¼ cup", "¼ cup + 2½ tbsp", "1 cup", "1 cup + ½ tbsp", "2 cups",
    ]  # fmt: skip
    parts = {"¼": 0.25, "½": 0.5, "¾": 0.75}
    for ml in range(8, 1000):
        said = 0.0
        for piece in poured(ml).split(" + "):
            number, unit = piece.split(" ")
            count = int(number.rstrip("¼½¾") or 0) + parts.get(number[-1], 0)
            said += count * (240 if unit.startswith("cup") else 15)
        assert ml - 7.5 < said <= ml


def test_fresh_coriander_is_cilantro_in_titles_and_steps_and_the_spice_keeps_its_name(
    tables: Tables, cook: Callable[..., Any]
) -> None:
    manner = manner_of("american", "american", tables)
    dinner = cook(
        ["cooked rice 400g", "firm tofu 300g", "carrots 3", "fresh coriander 30g", "soy sauce", "oil"], "fried-rice"
    )
    assert "fresh coriander" in {use.name for use in dinner.uses}
    told = manner.dinner(dinner)
    assert "coriander" not in " ".join([told.title, *told.steps, *(one.what for one in told.timeline.moments)])
    assert manner.title(dinner) == told.title
    assert manner.told("1 tsp ground coriander, 1 tsp coriander") == "1 tsp ground coriander, 1 tsp coriander"
