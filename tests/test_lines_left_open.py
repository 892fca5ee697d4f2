"""Lines that were not read for sure: where they leave the verdict open, and where they do not."""

import json
from pathlib import Path
from typing import Any

import pytest

from calmlarder.adapt.model import Eaters
from calmlarder.adapt.settled import Settler
from calmlarder.adapt.worst import is_harmless, matters, worst_of
from calmlarder.cli import main
from calmlarder.cookbook.lines import LineReader
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables

# On every published list of what elimination limits, or may hide it (Varney et al. 2017; Halmos & Gibson 2019).
TRIGGERS = (
    "onion", "garlic", "shallots", "leek", "wheat flour", "honey", "kidney beans", "lentils", "chickpeas", "milk",
    "apple", "mango", "mushrooms", "cauliflower", "stock", "stock cube", "soup mix", "spice mix", "curry paste",
    "gravy granules", "garlic powder", "onion powder", "sausages", "couscous", "ice cream", "custard", "cashews",
)  # fmt: skip


@pytest.fixture(scope="module")
def eaters(tables: Tables) -> Eaters:
    return Eaters(profile=profile_named("elimination", tables))


@pytest.fixture(scope="module")
def settler(tables: Tables, eaters: Eaters) -> Settler:
    return Settler(LineReader(tables), eaters, tables)


def answer(folder: Path, capsys: pytest.CaptureFixture[str], *lines: str, steps: str = "1. Cook.") -> dict[str, Any]:
    path = folder / "recipe.txt"
    path.write_text("\n".join(["A dish", "", "Serves 4", "", "Ingredients", "", *lines, "", "Method", "", steps, ""]))
    main(["adapt", str(path), "--json"])
    told: dict[str, Any] = json.loads(capsys.readouterr().out)
    return told


@pytest.mark.parametrize("trigger", TRIGGERS)
@pytest.mark.parametrize("line", ["a zorbulous of {}", "{} zorbulously zorbed with zorb", "zorb and {}", "zorb ({})"])
def test_what_is_limited_is_never_harmless_unread(trigger: str, line: str, tables: Tables, eaters: Eaters) -> None:
    assert not is_harmless(line.format(trigger), (), eaters, tables)
    assert not is_harmless(line.format("rice"), (trigger,), eaters, tables)


@pytest.mark.parametrize("trigger", TRIGGERS)
@pytest.mark.parametrize(
    "line", ["{}", "some {}", "{} to serve", "rice with {}", "rice or {}", "carrots; {} if you have it"]
)
def test_what_is_limited_is_never_lost(
    trigger: str, line: str, settler: Settler, tables: Tables, eaters: Eaters
) -> None:
    """However its line is settled, it stays open, or a food that may bring something is counted or allowed in it."""
    text = line.format(trigger)
    read = settler.settle(LineReader(tables).read(text))
    foods = [food for one in (read, *read.also) for food in (one.food, *one.alternatives) if food]
    open_still = read.outcome in {"ask", "unknown"} and not is_harmless(text, read.choices, eaters, tables)
    assert open_still or read.said or any(matters(food, eaters, tables) for food in foods), read


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("jasmine rice for four, and Thai basil if you can get it", ["rice-white-dry", "basil"]),
        ("150g cooked prawns if flush", ["prawns-cooked"]),
        ("2 lemons: 1 juiced, 1 cut into slices", ["lemon"]),
        ("Black pepper. Salt only if it wants it.", ["pepper-black", "salt"]),
        ("A dash or two of hot sauce", ["hot-sauce"]),
        ("enough oil to cover the bottom of the pan", ["oil-rapeseed"]),
        ("lemon wedges + extra dill sprigs, to serve", ["lemon", "dill"]),
        ("1 lemon stuffed with garlic", ["lemon", "garlic"]),
        ("1/2 a bag of spinach that needs using", ["spinach"]),
        ("half a jar of whatever curry paste you have", ["curry-paste"]),
        ("half a cucumber, seeds scooped out", ["cucumber"]),
        ("1 jalapeño, minced (leave the seeds in if you like it hot)", ["chilli-jalapeno"]),
        ("1 chicken, stuffed with an onion and half a lemon", ["chicken-breast", "onion-brown", "lemon"]),
    ],
)
def test_a_line_is_settled_piece_by_piece(line: str, foods: list[str], settler: Settler, tables: Tables) -> None:
    """What each line names is read off by hand."""
    read = settler.settle(LineReader(tables).read(line))
    assert [one.food for one in (read, *read.also)] == foods


@pytest.mark.parametrize(
    "line",
    [
        "carrots and zorbulous",
        "a knob of zorbulous butter",
        "Salt. Zorbulous.",
        "lemon, garlicky",
        "200 g zorb and onion",
    ],
)
def test_a_strange_word_leaves_its_line_open(line: str, settler: Settler, tables: Tables, eaters: Eaters) -> None:
    """Butter may be garlic butter; carrots that are mixed with something are not carrots."""
    read = settler.settle(LineReader(tables).read(line))
    assert read.outcome in {"ask", "unknown"}
    assert not is_harmless(line, read.choices, eaters, tables)


def test_water_hides_no_stock(settler: Settler, tables: Tables) -> None:
    """A stock pot holds onion, in whatever water it is told."""
    read = settler.settle(LineReader(tables).read("500ml water mixed with 1 stock pot"))
    assert [one.food for one in (read, *read.also)] == ["stock-cube-onion"]


def test_the_worst_of_several(tables: Tables, eaters: Eaters) -> None:
    """Dry chickpeas hold more than tinned ones in water; beef brings nothing beside them."""
    assert worst_of(["chickpeas-canned", "chickpeas-dry"], eaters, tables) == "chickpeas-dry"
    assert worst_of(["beef-mince", "onion-brown"], eaters, tables) == "onion-brown"
    assert worst_of(["apple", "onion-brown"], eaters, tables) is None  # the one by fructose, the other by fructans


def test_no_amount_of_a_trigger_is_swapped(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = answer(tmp_path, capsys, "600 g chicken thighs", "onions", "garlic powder", steps="1. Fry the onions.")
    assert told["status"] == "adapted"
    changes = {one["ingredient"]: one for one in told["changes"]}
    assert {changes[one]["change"] for one in ("onions", "garlic powder")} <= {"swap", "out"}
    assert "does not say how much" in changes["onions"]["why"]


def test_an_amount_that_counts_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Cherry tomatoes bring fructose by the bowl, so the list says how many were reckoned with."""
    told = answer(tmp_path, capsys, "600 g chicken thighs", "cherry tomatoes", "thyme")
    assert told["status"] == "adapted"
    (change,) = told["changes"]
    assert (change["change"], change["written"]) == ("weigh", ["280 g cherry tomatoes"])
    assert "280 g cherry tomatoes" in told["recipe"]
    assert "\nthyme\n" in told["recipe"]


def test_what_nobody_knows_goes_where_it_is_but_served(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = ("600 g chicken thighs", "zorbulous, to serve")
    told = answer(tmp_path, capsys, *lines, steps="1. Fry. Serve with zorbulous.")
    assert told["status"] == "adapted"
    assert [one["change"] for one in told["changes"]] == ["out"]
    assert "zorbulous [left out]" in told["recipe"]
    assert answer(tmp_path, capsys, "600 g chicken thighs", "zorbulous")["status"] == "not_known"


def test_what_is_harmless_however_it_is_read_turns_no_verdict(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """No herb passes a limit in ten usual amounts: nobody limits herbs."""
    told = answer(tmp_path, capsys, "600 g chicken thighs", "300 g brown onions", "some kind of herb")
    assert told["status"] == "adapted"
    assert told["harmless"] == ["some kind of herb"]
    assert "\nsome kind of herb\n" in told["recipe"]


def test_a_spoon_of_what_has_no_figures_goes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Unknown is not zero: what is not known is not called fine, and a spoonful of it can go."""
    told = answer(tmp_path, capsys, "600 g chicken thighs", "1 tbsp redcurrant jelly", steps="1. Stir in the jelly.")
    assert told["status"] == "adapted"
    assert [(one["change"], one["line"]) for one in told["changes"]] == [("out", 1)]
    assert "no figure is known" in told["changes"][0]["why"].casefold()


def test_the_changes_say_what_the_list_says(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Two onions become one line of greens: each change names the whole of it, as one line of the list does."""
    path = tmp_path / "recipe.txt"
    lines = ("600 g chicken thighs", "1 onion, chopped", "1 red onion, chopped", "2 tbsp olive oil")
    path.write_text("\n".join(["Stew", "", "Serves 4", "", "Ingredients", *lines, "", "Method", "Fry all in the oil."]))
    main(["adapt", str(path)])
    told = capsys.readouterr().out
    amounts = {line.split(" leek greens")[0].split()[-2] for line in told.splitlines() if " g leek greens, " in line}
    assert len(amounts) == 1
    assert told.count("(in all)") == 2


def test_words_that_hold_stay_with_what_takes_the_place(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = (
        "600 g potatoes",
        "75 ml milk, warm",
        "1 fish stock cube in 3/4 pt (425 ml) hot water",
        "200 g sour cream, at room temperature",
    )
    told = answer(tmp_path, capsys, *lines, steps="1. Mash.")["recipe"]
    assert "lactose-free milk, warm" in told
    assert "in 3/4 pt (425 ml) hot water" in told
    assert "at room temperature" in told


def test_no_minutes_stand_where_cooked_pasta_is_tossed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    steps = "1. Cook the tagliatelle as the packet says.\n2. Fry the ham for 8 minutes.\n3. Toss in the tagliatelle."
    told = answer(tmp_path, capsys, "400 g tagliatelle", "200 g ham", "2 tbsp soy sauce", steps=steps)["recipe"]
    assert "minutes]" not in told
    assert "gluten-free tagliatelle" in told or "gluten-free pasta" in told


def test_no_raw_mince_goes_into_a_pot_that_has_its_meat(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It would go in raw for the last minutes, where mince wants browning and cooking through (common practice)."""
    lines = ("900 g beef mince", "2 tins kidney beans, drained", "2 tins chopped tomatoes")
    told = answer(
        tmp_path, capsys, *lines, steps="1. Brown the beef.\n2. Add the tomatoes, 45 minutes.\n3. Add the beans."
    )
    assert all(to["food"] not in {"turkey-mince", "chicken-mince"} for one in told["changes"] for to in one["to"])


def test_bread_at_the_end_of_a_step_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A slice of wheat bread passes the fructans of a meal (Biesiekierski et al. 2011), wherever it is named."""
    lines = ("600 g haddock", "300 g brown onions")
    told = answer(tmp_path, capsys, *lines, steps="1. Fry. Herbs on top. Brown bread and butter to serve.")
    assert "Brown bread [not counted: a usual portion passes a limit]" in told["recipe"]
    assert any("brown bread (wheat or the like)" in one for one in told["remarks"])


def test_a_step_that_takes_all_of_it_tells_no_amount(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = ("600 g haddock", "1 onion, chopped", "1 leek, sliced")
    told = answer(tmp_path, capsys, *lines, steps="1. Add the onion and leek, lid on, 10 minutes.")
    assert " of the leek greens" not in told["recipe"]


def test_herbs_without_an_amount_stay_as_they_are_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = answer(tmp_path, capsys, "600 g haddock", "Chives or parsley, chopped")
    assert (told["status"], told["changes"]) == ("fits", [])


def test_a_strange_sort_of_a_trigger_is_swapped(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whatever sort of beans or crackers they are, pulses and wheat pass, so that they do not stay."""
    lines = ("600 g chicken thighs", "2 cans zorbulous beans", "1 sleeve zorbulous crackers")
    told = answer(tmp_path, capsys, *lines, steps="1. Fry.")
    assert told["status"] == "adapted"
    changed = {one["line"]: one["change"] for one in told["changes"]}
    assert {changed[1], changed[2]} <= {"swap", "out"}


def test_a_sleeve_is_no_count(settler: Settler, tables: Tables) -> None:
    """A sleeve of crackers is not one cracker, and not the whole packet."""
    read = settler.settle(LineReader(tables).read("1 sleeve buttery crackers, crushed"))
    assert (read.food, read.grams) == ("crackers-butter", 105)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("a walnut of butter", {"butter"}),
        ("a walnut-sized knob of butter", {"butter"}),
        ("1 red chilli, finely chopped (seeds in if you dare)", {"chilli-red"}),
        ("200 g plain flour with salt and pepper in it", {"flour-wheat-white", "salt", "pepper-black"}),
    ],
)
def test_a_measure_and_a_seasoning_are_no_other_food(
    line: str, foods: set[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told = answer(
        tmp_path, capsys, line, "400 g potatoes", steps="1. Cover with a tea towel. 2. See our cookie policy."
    )
    named = {one["food"] for one in told["ingredients"] if one["text"] == line}
    named |= {also["food"] for one in told["ingredients"] if one["text"] == line for also in one.get("also", ())}
    assert named == foods
    assert not any("tea" in one or "cook" in one for one in told["warnings"])
