"""Mixtures are the sum of their parts, and derived figures follow from published ones.

Outside figures, copied from where they are published: USDA SR28 (coriander none, cardamom none; cinnamon 02010,
cloves 02011, black pepper 02030), Indian Food Composition Tables 2017 (coriander G024, cumin G025, cardamom G020,
nutmeg G028, white sesame H011), garlic 12.7 g of fructans (beta-fructan by HPLC).
"""

import csv
import math
import re
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.checks.tables import figures_of, mixtures, taken_apart
from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.groups import food_figures
from calmlarder.intake.load import load_of_group, load_profile_of
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.problems import CannotGoOn
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.check import check_tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.mine import Called, Part, made_food, write_made
from calmlarder.tables.places import shipped
from calmlarder.tables.vocabulary import COMPONENTS

TABLES = shipped("ingredient_tables")
HEADER = "food,part,grams,source,note\n"
SHARES = {"analysed": 0.3, "published": 0.3, "summed": 0.3, "borrowed": 0.5, "recalled": 0.5, "assumed": 0.5}


def rows(name: str) -> list[dict[str, str]]:
    with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def own(folder: Path, name: str, text: str) -> Tables:
    (folder / f"{name}.csv").write_text(text, encoding="utf-8")
    return load_tables([TABLES, folder])


def mixed(tables: Tables, grams: dict[str, int], folder: Path, weighs: int | None = None) -> Tables:
    """The tables with `house dip`, made of these foods."""
    parts = [Part(tables.food_by_id[food], Decimal(g)) for food, g in grams.items()]
    made = made_food(Called("house dip", "paste", "sauce"), parts, Decimal(weighs) if weighs else None, tables)
    write_made(made, folder, tables)
    return load_tables([TABLES, folder])


@pytest.mark.parametrize(
    ("food", "component", "parts"),
    [
        # grams of the part, and what 100 g of it hold by the table named above
        ("gomasio", "gos", [(90, 0.96), (10, 0)]),
        ("gomasio", "fructose", [(90, 0.09), (10, 0)]),
        (
            "garam-masala",
            "fructose",
            [(20, 1.61), (20, 0.63), (10, 1.84), (10, 0.23), (10, 1.11), (5, 1.07), (3, 0.29)],
        ),
        ("garam-masala", "gos", [(20, 0.37), (20, 0.44), (38, 0)]),
        ("harissa", "fructans", [(15, 12.7), (132, 0)]),
    ],
)
def test_a_sum_is_that_of_published_figures(
    food: str, component: str, parts: list[tuple[float, float]], tables: Tables
) -> None:
    row = tables.fermentables_of(food)[component]  # type: ignore[index]
    expected = sum(grams * figure for grams, figure in parts) / sum(grams for grams, _ in parts)
    assert float(row.g_per_100g) == pytest.approx(expected, abs=0.001)
    assert (row.basis, row.source) == ("summed", "sum_of_parts")


def test_every_shipped_sum_is_that_of_its_parts(tables: Tables) -> None:
    found: dict[tuple[str, str], tuple[float, float, str]] = {}
    for row in rows("fermentables"):
        value = float(row["g_per_100g"])
        high = float(row["high"] or 0)
        more = max(high - value, value * SHARES[row["basis"]]) if value else high / 2
        found[row["food"], row["component"]] = (value, value + more, row["basis"])
    recipes: dict[str, dict[str, float]] = {}
    for row in rows("mixtures"):
        recipes.setdefault(row["food"], {})[row["part"]] = float(row["grams"])
    summed = 0
    for food, parts in recipes.items():
        foods = {part: grams for part, grams in parts.items() if part != "water"}
        if any(part in recipes for part in foods):
            continue  # the rest are sums of plain foods
        for component in COMPONENTS:
            ours = tables.fermentables_of(food).get(component)
            if (food, component) in found:
                assert ours is not None
                assert float(ours.g_per_100g) == found[food, component][0], food
                continue
            if any((part, component) not in found for part in foods):
                assert ours is None, (food, component)
                continue
            assert ours is not None, (food, component)
            whole = sum(parts.values())
            value = sum(found[part, component][0] * grams for part, grams in foods.items()) / whole
            worst = sum(found[part, component][1] * grams for part, grams in foods.items()) / whole
            assert float(ours.g_per_100g) == pytest.approx(value, abs=0.0011), (food, component)
            more = float(ours.g_per_100g + ours.error_g)
            assert more >= worst - 0.002 or ours.high is None, (food, component)
            weak = {found[part, component][2] for part in foods if found[part, component][0] > 0}
            assert (ours.basis == "summed") == (weak <= {"analysed", "published"}), (food, component)
            summed += 1
    assert summed > 200


def test_nutrients_of_shipped_mixtures_are_those_of_their_parts(tables: Tables) -> None:
    told = [food for food in tables.foods if food.nutrient_source == "sum_of_parts"]
    assert len(told) >= 30
    for food in told:
        parts = [(row.part, row.grams) for row in tables.parts if row.food == food.id]
        whole = sum(grams for _, grams in parts)
        for field in ("energy_kcal", "protein_g", "fibre_g"):
            ours = getattr(food, field)
            if ours is None:
                continue
            values = [(getattr(tables.food_by_id[part], field), grams) for part, grams in parts if part != "water"]
            expected = sum(value * grams for value, grams in values) / whole
            assert abs(ours - expected) <= Decimal("0.02"), (food.id, field)


def test_each_part_counts_under_its_own_class(tables: Tables, tmp_path: Path) -> None:
    again = mixed(tables, {"chickpeas-canned": 150, "garlic": 10, "oil-olive": 40}, tmp_path)
    brings = load_profile_of(again.food_by_id["house-dip"], again)
    chickpeas, garlic = (food_figures(tables.fermentables_of(food)) for food in ("chickpeas-canned", "garlic"))
    for food, cutoff, figures, share in (
        ("chickpeas-canned", "core", chickpeas, 150 / 200),
        ("garlic", "fresh", garlic, 10 / 200),
    ):
        (part,) = brings.only(food).parts
        assert part.cutoff_class == cutoff
        use = load_of_group(brings.only(food), "oligosaccharides", Tolerance())
        assert use.likely == math.ceil(figures.typical["oligosaccharides"] * share)
        assert use.by_eye == math.ceil(figures.by_eye("oligosaccharides", 30) * share)


def test_the_check_takes_it_apart_the_same_way(tables: Tables, tmp_path: Path) -> None:
    mixed(tables, {"chickpeas-canned": 150, "garlic": 10, "oil-olive": 40}, tmp_path)
    folders = [TABLES, tmp_path]
    whole = mixtures(folders)
    figures = figures_of(folders, whole, {"house-dip", "hummus"})
    parts = dict(taken_apart("house-dip", whole, figures))
    assert (parts["garlic"], parts["chickpeas-canned"]) == (Decimal("0.05"), Decimal("0.75"))
    # Hummus has analysed figures of its own: it counts as itself, and only its fructans are the sum.
    assert taken_apart("hummus", whole, figures) == [("hummus", Decimal(1))]
    ours = tables.fermentables_of("hummus")["fructans"]
    cells = figures["hummus", "fructans"]
    assert (Decimal(cells["g_per_100g"]), Decimal(cells["high"]), cells["basis"]) == (
        ours.g_per_100g,
        ours.high,
        ours.basis,
    )


def test_both_readings_agree_on_every_figure(tables: Tables) -> None:
    figures = figures_of([TABLES], mixtures([TABLES]))
    assert {food.id for food in tables.foods if not tables.unknown_of(food.id)} == {
        food.id for food in tables.foods if all((food.id, name) in figures for name in COMPONENTS)
    }
    for food in tables.foods:
        for component, row in tables.fermentables_of(food.id).items():
            cells = figures[food.id, component]
            assert Decimal(cells["g_per_100g"]) == row.g_per_100g, (food.id, component)
            assert (Decimal(cells["high"]) if cells["high"] else None) == row.high, (food.id, component)
            assert cells["basis"] == row.basis


def test_a_dinner_with_a_mixture_holds(tables, patterns, wanting, tmp_path) -> None:  # type: ignore[no-untyped-def]
    """Of a dip of chickpeas (core) and garlic (fresh) a dinner holds what both caps allow, and the check agrees."""
    again = mixed(tables, {"chickpeas-canned": 40, "carrot": 140, "garlic": 1, "oil-olive": 20}, tmp_path)
    lines = [
        "500 g house dip",
        "firm tofu 300g",
        "dry rice noodles 200g",
        "pak choi 200g",
        "carrots x2",
        "lime",
        "rapeseed oil",
    ]
    readings = LarderReader(again, date(2026, 3, 11)).read_all(lines, "test")
    lots = [reading.lot for reading in readings if reading.lot is not None]
    assert "house-dip" in {lot.food for lot in lots}
    wanted = wanting(use=("house-dip",), diet="vegan", protein_g=15)
    composed = compose(lots, wanted, patterns, again)
    assert composed.dinners
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots]
    folders = [TABLES, tmp_path]
    for dinner in composed.dinners:
        shown = dinner_object(dinner)
        grams = next(one["grams"] for one in shown["uses"] if one["food"] == "house-dip")
        assert verify(shown, request, plain, folders, shipped("recipes")) == ()
        # By hand: garlic 12.7 g in 100 g of which 1/201 is garlic, under the cut-off of 0.20 g for what is fresh.
        assert grams * 12.7 / 100 / 201 <= 0.20
        next(one for one in shown["uses"] if one["food"] == "house-dip")["grams"] = 500
        assert any("oligosaccharides" in fault for fault in verify(shown, request, plain, folders, shipped("recipes")))


def test_a_later_folder_tells_a_mixture_whole(tmp_path: Path) -> None:
    tables = own(tmp_path, "mixtures", f"{HEADER}gomasio,sesame-seeds,50,own_recipe,\ngomasio,salt,50,own_recipe,\n")
    assert tables.fermentables_of("gomasio")["gos"].g_per_100g == Decimal("0.480")
    assert len([row for row in tables.parts if row.food == "gomasio"]) == 2


def test_a_row_of_its_own_goes_before_the_sum(tmp_path: Path) -> None:
    text = "food,component,g_per_100g,basis,source,code,note\ngomasio,gos,0.2,assumed,by_nature,,a test\n"
    tables = own(tmp_path, "fermentables", text)
    assert tables.fermentables_of("gomasio")["gos"].g_per_100g == Decimal("0.2")
    assert tables.fermentables_of("gomasio")["fructose"].basis == "summed"
    assert tables.composite_of("gomasio") is None


def test_what_is_unknown_in_a_part_is_unknown_in_the_whole(tables: Tables, tmp_path: Path) -> None:
    again = mixed(tables, {"lychee": 100, "sugar": 50}, tmp_path)
    assert "fructans" in again.unknown_of("house-dip")
    assert again.composite_of("house-dip") is None


def test_what_a_home_makes_is_written_as_its_parts(tables: Tables, tmp_path: Path) -> None:
    again = mixed(tables, {"millet-dry": 100}, tmp_path, weighs=250)
    assert not (tmp_path / "fermentables.csv").exists()
    assert {row.part: row.grams for row in again.parts if row.food == "house-dip"} == {"millet-dry": 100, "water": 150}
    # AFCD F005692: 0.3 g of fructans in 100 g of millet, here in 250 g.
    assert again.fermentables_of("house-dip")["fructans"].g_per_100g == Decimal("0.120")
    boiled = mixed(tables, {"tomato": 300, "onion-brown": 50}, tmp_path / "reduced", weighs=175)
    fructans = boiled.fermentables_of("house-dip")["fructans"].g_per_100g
    assert fructans == Decimal("0.600")  # 2.1 g in 100 g of brown onion, of which 50 g are in 175 g
    with pytest.raises(CannotGoOn):
        made_food(
            Called("dust", "paste", "sauce"), [Part(tables.food_by_id["honey"], Decimal(100))], Decimal(10), tables
        )


@pytest.mark.parametrize(
    ("lines", "where", "what"),
    [
        ("gomasio,plutonium,50,own_recipe,\n", "mixtures.csv:2:2", "is no food"),
        ("gomasio,salt,50,hearsay,\n", "mixtures.csv:2:4", "is no source"),
        ("gomasio,salt,-5,own_recipe,\n", "mixtures.csv:2", "only water"),
        ("gomasio,salt,5,own_recipe,\ngomasio,water,-5,own_recipe,\n", "mixtures.csv:2:3", "nothing is left"),
        ("gomasio,dukkah,5,own_recipe,\ndukkah,gomasio,5,own_recipe,\n", "mixtures.csv:2:2", "in itself"),
    ],
)
def test_a_fault_in_a_mixture_is_told(lines: str, where: str, what: str, tmp_path: Path) -> None:
    (tmp_path / "mixtures.csv").write_text(HEADER + lines, encoding="utf-8")
    told = [str(fault) for fault in check_tables([TABLES, tmp_path])[1]]
    assert [fault for fault in told if fault.startswith(where) and what in fault], told


def test_show_tells_the_parts(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tables", "show", "sesame", "salt"]) == 0
    out = capsys.readouterr().out
    assert "made of 90 % sesame seeds, 10 % salt" in out
    assert "the sum of its parts" in out


def test_derived_figures_follow_from_the_published_ones() -> None:
    """A note `derived: dry A by yield B (usda_sr28 X/Y)` is that division; yields are protein over protein."""
    published = {(row["source"], row["code"]): float(row["protein_g"]) for row in rows("published_protein")}
    found = 0
    for row in rows("fermentables"):
        told = re.search(r"derived: (?:dry|raw) ([0-9.]+) by yield ([0-9.]+) \(usda_sr28 (\d+)/(\d+)\)", row["note"])
        if told:
            assert float(row["g_per_100g"]) == pytest.approx(float(told[1]) / float(told[2]), abs=0.0051), row
            before, after = (published.get(("usda_sr28", told[n])) for n in (3, 4))
            if before and after:
                assert float(told[2]) == pytest.approx(before / after, abs=0.011), row
            found += 1
    assert found >= 12
    by_matter = re.compile(
        r"derived: (?:raw|the baked one, )?.*?([0-9.]+),? by dry matter \(\w+: ([0-9.]+) % .*? over ([0-9.]+) %"
    )
    matters = [(row, by_matter.search(row["note"])) for row in rows("fermentables") if "by dry matter" in row["note"]]
    assert len(matters) >= 4
    for row, told in matters:
        if told:
            expected = float(told[1]) * float(told[2]) / float(told[3])
            assert float(row["g_per_100g"]) == pytest.approx(expected, rel=0.001, abs=0.0051), row
