"""The checks of figures against each other: each is seen to fail, and where it begins to fail is worked out by hand."""

import csv
import shutil
from decimal import Decimal
from pathlib import Path

import pytest

from calmlarder.tables.check import check_tables
from calmlarder.tables.places import shipped

TABLES = shipped("ingredient_tables")


def told(folder: Path) -> list[str]:
    return [str(problem) for problem in check_tables([folder])[1]]


def rows(name: str, folder: Path = TABLES) -> list[dict[str, str]]:
    with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def changed(tmp_path: Path, name: str, where: dict[str, str], **cells: str) -> Path:
    """A copy of the shipped tables with some cells of one row changed."""
    return changed_rows(tmp_path, name, [(where, cells)])


def changed_rows(tmp_path: Path, name: str, changes: list[tuple[dict[str, str], dict[str, str]]]) -> Path:
    """The same with cells of several rows: a check of all tables takes its time."""
    folder = Path(shutil.copytree(TABLES, tmp_path / "tables", dirs_exist_ok=True))
    found = rows(name, folder)
    for where, cells in changes:
        meant = [row for row in found if all(row[key] == value for key, value in where.items())]
        assert len(meant) == 1, (where, len(meant))
        meant[0].update(cells)
    with (folder / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(found[0]))
        writer.writeheader()
        writer.writerows(found)
    return folder


def figure(food: str, component: str) -> dict[str, str]:
    return {"food": food, "component": component}


def test_the_shipped_figures_agree() -> None:
    assert told(TABLES) == []


CONTRADICTING = (
    # IFCT 2017 B002 has 0.81 in dry chickpeas; the boiled 1.2 by the yield 2.31 (USDA SR28) would be 2.77 of them.
    ("chickpeas-dry", "gos", "0.81", "chickpeas-boiled has 1.2 g"),
    # CoFID 13-452 has 0.4 in boiled leek, raw 3.0: so little is left by no boiling.
    ("leek-boiled", "fructans", "0.4", "leek-boiled has 0.4 g"),
    # A public table has 4.5 in onion powder; fresh 2.1 by dry matter 10.89 of 94.61 % (USDA SR28) makes 18.2.
    ("onion-powder", "fructans", "4.5", "onion-powder has 4.5 g"),
    # A public table has 1.5 in apples, and 3 in dried ones; by dry matter the dried would hold 7 (USDA SR28).
    ("apple", "sorbitol", "1.5", "apple-dried has 3 g of sorbitol"),
    # AFCD F000379 has 2.3 in pearl barley; a public table 1.5 in barley.
    ("barley-whole-dry", "fructans", "1.5", "the whole grain, barley-whole-dry, has 1.57"),
    # CoFID 13-499, 13-501: frying takes the water, raw 2.1 becomes 2.9.
    ("onion-fried", "fructans", "5", "onion-fried has 5 g"),
    # CoFID 13-556 has 0.6 in houmous; 2 g would be more than its chickpeas and sesame make.
    ("hummus", "gos", "2", "its parts make"),
)


def test_each_figure_that_contradicts_another_is_told(tmp_path: Path) -> None:
    changes = [
        (figure(food, component), {"g_per_100g": value, "high": ""}) for food, component, value, _ in CONTRADICTING
    ]
    faults = told(changed_rows(tmp_path, "fermentables", changes))
    for *_, words in CONTRADICTING:
        assert any(words in fault for fault in faults), (words, faults)


@pytest.mark.parametrize(
    ("boiled", "powder", "told_of"),
    # Dry kidney beans 3.6 (CoFID 13-109), yield 2.60 (USDA SR28 16032/16033). At most a quarter over and 0.05 for what
    # figures carry: (1.25 * 3.6 + 0.05) / 2.60 = 1.75. At least three tenths: (0.3 * 3.6 - 0.05) / 2.60 = 0.396.
    # Fresh garlic 12.7 g (read in a paper), 41.42 % dry matter, its powder 93.55 % (USDA SR28 11215, 02020): a gram
    # becomes 0.443 g. Six tenths: (0.6 * 12.7 - 0.05) / 0.443 = 17.09.
    [("1.75", "17.1", False), ("1.76", "17.0", True), ("0.40", "17.1", False), ("0.39", "17.0", True)],
)
def test_where_boiled_begins_to_contradict_dry_and_dried_fresh(
    boiled: str, powder: str, told_of: bool, tmp_path: Path
) -> None:
    changes = [
        (figure("kidney-beans-boiled", "gos"), {"g_per_100g": boiled, "high": "2"}),
        (figure("garlic-powder", "fructans"), {"g_per_100g": powder, "high": "39"}),
    ]
    faults = told(changed_rows(tmp_path, "fermentables", changes))
    for food in ("kidney-beans-boiled", "garlic-powder"):
        assert any(food in fault for fault in faults) == told_of, faults


@pytest.mark.parametrize("cells", [{"g_per_100g": "0.1"}, {"high": "0.1"}])
def test_infused_oil_holds_nothing(cells: dict[str, str], tmp_path: Path) -> None:
    """Fructans dissolve in water, not in oil (Tuck et al. 2018, J Hum Nutr Diet 31:422-435)."""
    folder = changed(tmp_path, "fermentables", figure("oil-garlic", "fructans"), **cells)
    assert [fault for fault in told(folder) if "oil-garlic is an oil and holds fructans" in fault]


def test_a_dinner_food_has_energy_or_says_that_it_is_not_known(tmp_path: Path) -> None:
    folder = changed(tmp_path, "foods", {"id": "broccoli"}, energy_kcal="")
    assert [fault for fault in told(folder) if "broccoli can be in a dinner and has no energy" in fault]
    folder = changed(tmp_path, "foods", {"id": "broccoli"}, energy_kcal="", note="energy not known")
    assert told(folder) == []


def test_a_sum_of_nutrients_is_that_of_its_parts(tmp_path: Path) -> None:
    summed = next(
        row for row in rows("foods") if row["nutrient_source"] == "sum_of_parts" and float(row["energy_kcal"] or 0) > 50
    )
    twice = str(2 * Decimal(summed["energy_kcal"]))
    folder = changed(tmp_path, "foods", {"id": summed["id"]}, energy_kcal=twice)
    assert [fault for fault in told(folder) if f"{summed['id']} has {twice} of energy_kcal" in fault]


@pytest.mark.parametrize("basis", ["recalled", "borrowed"])
def test_a_zero_from_memory_or_of_another_food_needs_its_upper_end(basis: str, tmp_path: Path) -> None:
    where = figure("kale", "fructans")
    folder = changed(tmp_path, "fermentables", where, g_per_100g="0", high="", basis=basis)
    assert [fault for fault in told(folder) if f"the zero of kale fructans is {basis} and has no high" in fault]
    folder = changed(tmp_path, "fermentables", where, high="0.1")
    assert told(folder) == []


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        ({"food": "nothing"}, "`nothing` is no food"),
        ({"from": "nothing"}, "`nothing` is no food"),
        ({"source": "hearsay"}, "`hearsay` is no source"),
        ({"weight": ""}, "how many grams"),
        ({"how": "wished"}, "how: `wished`"),
    ],
)
def test_a_fault_in_the_list_itself_is_told(cells: dict[str, str], words: str, tmp_path: Path) -> None:
    folder = changed(tmp_path, "made_from", {"food": "garlic-powder"}, **cells)
    assert [fault for fault in told(folder) if "made_from.csv" in fault and words in fault], told(folder)


# Grams of dry matter in 100 g by USDA SR28 (100 less water), fresh and dried, by their NDB numbers.
DRY_MATTER = {
    "onion-powder": (10.89, 94.61),  # 11282, 02026
    "onion-dried": (10.89, 96.07),  # 11282, 11284
    "garlic-powder": (41.42, 93.55),  # 11215, 02020
    "apple-dried": (14.44, 68.24),  # 09003, 09011
    "apricot-dried": (13.65, 69.11),  # 09021, 09032
    "pear-dried": (16.04, 73.31),  # 09252, 09259
}


@pytest.mark.parametrize("food", DRY_MATTER)
def test_weight_after_drying_is_that_of_the_dry_matter(food: str) -> None:
    fresh, dried = DRY_MATTER[food]
    weight = next(float(row["weight"]) for row in rows("made_from") if row["food"] == food)
    assert weight == pytest.approx(fresh / dried, abs=0.0006)


def test_weight_after_cooking_is_protein_before_over_protein_after() -> None:
    """USDA SR28, by the two NDB numbers of the row, where the shipped list of protein has both."""
    published = {(row["source"], row["code"]): float(row["protein_g"]) for row in rows("published_protein")}
    compared = 0
    for row in rows("made_from"):
        before, _, after = row["code"].partition("/")
        pair = [published.get((row["source"], code)) for code in (before, after)]
        if row["how"] != "dried" and row["source"] == "usda_sr28" and all(pair):
            assert float(row["weight"]) == pytest.approx(pair[0] / pair[1], abs=0.0051), row  # type: ignore[operator]
            compared += 1
    assert compared >= 5


def test_british_onion_rows_are_not_used() -> None:
    """CoFID 2015 shows as much oligosaccharide as fructose in each onion row (13-499 to 13-501, 13-589, 13-590 ...)."""
    onions = [row for row in rows("fermentables") if row["food"].startswith(("onion-", "shallot", "leek-"))]
    assert len(onions) >= 60
    assert not [row for row in onions if row["component"] in {"fructans", "gos"} and row["source"] == "cofid2015"]
