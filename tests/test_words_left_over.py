"""Changed steps say nothing any more of what was swapped: no knife for an oil, nothing twice, no time of the old pulse.

The recipes are invented; what is right is what a cook who reads the changed step would do.
"""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main


def changed(folder: Path, capsys: pytest.CaptureFixture[str], foods: str, *steps: str, title: str = "A dish") -> str:
    path = folder / "recipe.txt"
    numbered = "\n".join(f"{place}. {step}" for place, step in enumerate(steps, start=1))
    path.write_text(f"{title}\n\nServes 4\n\nIngredients\n\n{foods}\n\nMethod\n\n{numbered}\n")
    main(["adapt", str(path), "--json"])
    return str(json.loads(capsys.readouterr().out)["recipe"])


def test_no_knife_is_taken_to_an_oil(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "2 anchovies\n4 garlic cloves\n5 tbsp mayonnaise\n1 lettuce"
    step = (
        "Bash the garlic with the flat of a knife and crush. Mash the anchovies and mix with the garlic and mayonnaise."
    )
    told = changed(tmp_path, capsys, foods, step)
    assert "knife" not in told
    assert "1. Mash the anchovies and mix with the garlic-infused oil and mayonnaise." in told


def test_greens_are_fried_in_their_own_time_beside_a_line_of_greens(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "2 tbsp oil\n3 onions, sliced\n400 g pork\nsteamed greens, to serve"
    step = "Heat the oil, add the onions and cook over a low heat for 20 minutes, stirring, until soft and golden."
    told = changed(tmp_path, capsys, foods, step, "Fry the pork. Serve with the greens.")
    assert "add the leek greens and cook over a low heat for 5 minutes" in told


def test_two_powders_become_one_line_and_one_word(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = (
        "For the rub:\n2 tsp cumin\n1 tsp garlic powder\n1 tsp onion powder\n1 tsp salt\nFor the rest:\n600 g chicken"
    )
    told = changed(
        tmp_path, capsys, foods, "Mix the cumin, garlic powder, onion powder and salt.", "Roast the chicken."
    )
    listed, _, steps = told.partition("Method")
    assert listed.count("asafoetida") == 1
    assert "the cumin, the asafoetida and salt" in steps


def test_a_clove_in_its_skin_is_stirred_in_as_oil(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "600 g potatoes\n6 garlic cloves, left whole\n3 tbsp oil\n4 sprigs of rosemary"
    told = changed(
        tmp_path, capsys, foods,
        "Tip the potatoes, some of the garlic and rosemary into a tin and roast for 40 minutes.",
        "Squeeze the soft garlic from its skins over the potatoes and serve.",
    )  # fmt: skip
    assert "skins" not in told
    assert "rizzle the garlic-infused oil over the potatoes" in told


def test_a_clove_that_flavoured_the_fat_is_not_taken_out_as_oil(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "400g gluten-free spaghetti\n100g pancetta\n4 garlic cloves, bashed\n4 eggs"
    told = changed(
        tmp_path, capsys, foods, "Fry the pancetta with the garlic, then take the garlic out.", "Add the eggs."
    )
    assert "Fry the pancetta with the garlic-infused oil." in told


def test_flour_for_a_coat_is_not_that_of_the_dumplings(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "1 kg stewing beef\n3 tbsp plain flour\n2 tbsp oil\nFor the dumplings:\n300 g self-raising flour\n75 g suet"
    told = changed(
        tmp_path, capsys, foods,
        "Toss the beef in the flour and brown it in the oil.",
        "For the dumplings, mix the flour and suet with water and shape into balls.",
    )  # fmt: skip
    assert "Toss the beef in the flour" in told
    assert "mix the gluten-free flour blend" in told


def test_what_takes_the_place_of_lentils_boils_in_its_own_time(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "250 g red lentils\n1 litre water\n1 tsp turmeric\n2 tbsp ghee\n2 tomatoes, chopped"
    told = changed(
        tmp_path, capsys, foods,
        "Put the lentils in a pan with the water and turmeric. Simmer about 25 minutes till soft.",
        "Fry the tomatoes in the ghee and stir them in.",
        title="Dal",
    )  # fmt: skip
    assert "canned lentils, drained and rinsed" in told
    assert "25 minutes" not in told or "for the last 10 minutes" in told
    assert "[canned lentils only" not in told


def test_a_dip_is_never_fed_with_potatoes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "2 x 400g tins chickpeas, drained\n2 tbsp tahini\njuice of 1 lemon\npinch of paprika"
    told = changed(
        tmp_path,
        capsys,
        foods,
        "Whizz everything but the paprika until smooth, and dust with paprika.",
        title="Houmous",
    )
    assert "potato" not in told
    assert "everything but the paprika" in told


def test_a_glaze_is_called_by_what_sweetens_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "4 salmon fillets\n4 tbsp honey\n1 tbsp mustard"
    told = changed(
        tmp_path, capsys, foods, "Whisk the mustard and honey.", "Pour the honey mustard glaze on the salmon."
    )
    assert "maple syrup mustard glaze" in told


def test_a_ham_has_its_label_to_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "recipe.txt"
    path.write_text("Omelette\n\nServes 2\n\nIngredients\n\n4 eggs\n100 g ham\n\nMethod\n\nFry the ham and the eggs.\n")
    main(["adapt", str(path), "--json"])
    assert "ham (some hold honey, onion or garlic)" in " ".join(json.loads(capsys.readouterr().out)["remarks"])


def test_onion_that_is_strained_out_is_left_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "400g cod\n500ml lactose-free milk\n1 small onion, quartered\n1 bay leaf\n50g butter\n50g cornflour"
    told = changed(
        tmp_path, capsys, foods,
        "Simmer the cod in the milk with the onion and bay leaf. Strain the milk and throw away the onion and bay.",
        "Melt the butter, stir in the cornflour and the milk.",
    )  # fmt: skip
    assert "leek greens" not in told
    assert "throw away the bay" in told


def test_dried_mushrooms_that_are_fresh_now_still_go_in(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "30g dried porcini\n300g risotto rice\n50g butter\n1 litre water"
    told = changed(
        tmp_path, capsys, foods,
        "Soak the porcini in 300ml boiling water for 20 minutes. Drain, keeping the liquid.",
        "Melt the butter and stir in the rice.",
        "Add the porcini with their soaking liquid, leaving any grit behind. Add the water by the ladle.",
    )  # fmt: skip
    assert "Add the oyster mushrooms with" in told
    assert "soaking" not in told.partition("Notes")[0]
