"""Steps written for what is gone: dried mushrooms, wheat wrappers, the liquid of tins, onions wrung out, whole caps.

Words as recipes have them; rice paper is dipped, sticks to itself and melts in water: common practice, no source. What
limits tinned pulses goes over into their liquid: Tuck et al. 2018, J Hum Nutr Diet 31:436.
"""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.model import Change
from calmlarder.adapt.own_notes import _holds
from calmlarder.adapt.step_clove_oil import oil_only_later
from calmlarder.adapt.step_filled import caps_are_halves
from calmlarder.adapt.step_gone import studs_of, without_what_is_out
from calmlarder.adapt.step_green_parts import half_and_rest
from calmlarder.adapt.step_left_over import greens_by_one_word, without_what_is_left_over
from calmlarder.adapt.step_minutes import raw_there
from calmlarder.adapt.step_named_once import named_once, out_of_lists
from calmlarder.adapt.step_pulse_liquid import _with_water
from calmlarder.adapt.step_put_in_late import late_where_it_simmers
from calmlarder.adapt.step_put_in_late import put_in_late as _put_in_late
from calmlarder.adapt.step_read_over import read_over
from calmlarder.adapt.step_ready_pulses import _not_drained
from calmlarder.adapt.step_rice_paper import _dipped, _fried, _pressed, _without_cloth
from calmlarder.adapt.step_smoothed import smoothed
from calmlarder.adapt.step_soured import soured_from_then_on
from calmlarder.adapt.step_vegetable_parts import _without_spears
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


def _method(found: dict[str, Any]) -> str:
    return str(found["recipe"]).partition("Method")[2]


def _smoothed(step: str) -> str:
    return smoothed(step, lambda between: False)


def test_fresh_mushrooms_are_not_soaked_or_wrung_and_their_liquor_is_stock(adapt: Adapt) -> None:
    method = _method(adapt(
        "Mushroom risotto", "50 g dried porcini mushrooms", "1 vegetable stock cube",
        "250 g chestnut mushrooms, sliced", "300 g risotto rice", "1 tbsp olive oil", "50 g parmesan, grated",
        steps="1. Put the dried mushrooms into a bowl and pour over 1 litre boiling water. Soak for 20 minutes, "
        "then drain into a bowl, discarding the last of the liquid. Crumble the stock cube into the mushroom liquid, "
        "then squeeze the mushrooms gently to remove any liquid.\n2. Heat the oil in a pan. Stir in "
        "the fresh and dried mushrooms and "
        "continue to cook for 8 minutes until the fresh mushrooms have softened. Add the rice.\n"
        "3. Pour in a quarter of the mushroom stock and simmer. Repeat with the rest of the stock.\n4. Add the cheese.",
    ))  # fmt: skip
    method = method.partition("Notes")[0]
    for gone in ("Soak", "squeeze", "dried", "[", "a quarter of 1 litre"):
        assert gone not in method
    assert "Crumble the stock cube into 1 litre water" in method
    assert "a quarter of the stock" in method
    assert "Stir in the oyster mushrooms" in method


def test_wrappers_of_rice_paper_are_dipped_and_fried(adapt: Adapt) -> None:
    method = _method(adapt(
        "Vegetable dumplings", "24 dumpling wrappers", "300 g firm tofu", "200 g carrots, grated", "2 tbsp oil",
        steps="1. Mix the tofu and carrots.\n2. Lay a wrapper on your palm, keeping the rest covered with a damp cloth."
        " Put a teaspoon of the mixture in the centre, wet the edge with water, fold over and pleat to seal.\n"
        "3. Fry for 2 minutes. Pour in 80 ml water, cover and steam for 5 minutes. Cook until the water has gone and "
        "the bottoms are crisp.",
    ))  # fmt: skip
    assert method.index("Dip one sheet of rice paper") < method.index("Lay a wrapper on your palm.")
    assert "fold over and press to seal" in method
    assert "damp cloth" not in method
    assert "fry gently for 5 minutes, turning once, until the filling is cooked through" in method
    assert "until the bottoms are crisp" in method


@pytest.mark.parametrize(
    ("done", "step", "told"),
    [
        (_without_cloth, "Take a wrapper. Cover the rest with a damp cloth. Fold.", "Take a wrapper. Fold."),
        (_pressed, "Lay a wrapper with one corner towards you and fold the corner over.",
         "Lay a wrapper and fold the edge over."),
        (_pressed, "Press tightly to seal, pleating if you wish.", "Press tightly to seal."),
        (_fried, "Drop the dumplings into boiling water for 6 minutes.", "Drop the dumplings into boiling water for 6 "
         "minutes [rice paper melts in water: fry them in oil instead, turning, until the filling is cooked through]."),
        (_dipped, "2. Mix. Take one wrapper and fill it.", "2. Mix. Dip one sheet of rice paper at a time in warm "
         "water until it just bends, and lay it on a damp board. Take one wrapper and fill it."),
        (_with_water, "Pour in the beans with their liquid.", "Pour in the beans with a little water."),
        (_with_water, "Tip the beans and half of their liquid into a pan.",
         "Tip the beans and a little water into a pan."),
        (_with_water, "Drain the chickpeas, reserving the liquid. Add a splash of the chickpea liquid.",
         "Drain the chickpeas. Add a splash of water."),
        # Parts that only spears have, what was never soaked, signs of what is fried no more (recalled cookery).
        (_without_spears, "Snap the woody ends off the green beans and drop them into the stock for flavour. Slice the "
         "stalks into rounds, keeping the tips whole.", "Trim the green beans. Slice them into short pieces."),
        (_without_spears, "After 12 minutes add the green beans and the peas; after 15 the tips.",
         "After 12 minutes add the green beans and the peas."),
        (_not_drained, "1) Drain the quinoa, put it in a pot.", "1) Rinse the quinoa, put it in a pot."),
        (_not_drained, "Drain the pumpkin and put it in a pot.", "Put the pumpkin in a pot."),
        (_not_drained, "Drain the canned lentils and put them in a pot.",
         "Drain the canned lentils and put them in a pot."),
        (_smoothed, "Roast until the pineapple and leek greens [only until soft, not golden] are soft and caramelised.",
         "Roast until the pineapple and leek greens are soft."),
        (_smoothed, "Drizzle some of the garlic-infused oil [no piece to cut or roast, skip this] with a little oil, "
         "wrap in foil and tuck in the corner. Roast for 35 minutes.", "Roast for 35 minutes."),
        (_smoothed, "Squeeze the garlic-infused oil [just stir it in] out of its skins and mash into the pan juices.",
         "Stir the garlic-infused oil into the pan juices."),
        (_smoothed, "Cover the greens with the juice of a lemon. Scrunch and set aside till pink.",
         "Cover the greens with the juice of a lemon. Scrunch and set aside."),
        (_with_water, "Tip in the beans, the liquid from one of the tins and the tomatoes.",
         "Tip in the beans, a little water and the tomatoes."),
        (_with_water, "Let it down with 2 tbsp of the chickpea water.", "Let it down with 2 tbsp of water."),
        (_put_in_late, "Roast the beans and cooked quinoa [cooked quinoa only at the end] for 30 minutes until the "
         "beans and cooked quinoa are crisp.",
         "Roast the beans for 30 minutes until the beans are crisp. At the end stir in the cooked quinoa."),
        (_put_in_late, "Stir in the risotto rice [add only for the last 30 minutes], carrots and swede. Bake for half "
         "an hour more.", "Stir in the carrots and swede. Bake for half an hour more. Put in the risotto rice for the "
         "last 30 minutes of it."),
        (_with_water, "Cook the sausages with their juices.", "Cook the sausages with their juices."),
        (without_what_is_left_over, "Squeeze 70 g of the leek greens [just stir it in] in a clean cloth to dry. Put it "
         "in a bowl.", "Put 70 g of the leek greens in a bowl."),
        # A clause, or a sentence's beginning, that only puts in what is left out (recalled cookery).
        (without_what_is_left_over, "Tip in the tomatoes, break them up, and add the chickpeas [left out]. Simmer.",
         "Tip in the tomatoes and break them up. Simmer."),
        (without_what_is_left_over, "Season and stir in the mango [left out].", "Season."),
        (without_what_is_left_over, "Add the peas [left out] and cook for 12 minutes.", "Cook for 12 minutes."),
        (without_what_is_left_over, "Add the carrots and the peas [left out] to the pan.",
         "Add the carrots and the peas [left out] to the pan."),
        (without_what_is_left_over, "Simmer until it is thick and clings to the lentils [left out].",
         "Simmer until it is thick."),
        # What is said of a thing that is not there, and an onion's cloves (recalled cookery).
        (without_what_is_out, "Cook for 15 minutes. The apple [left out] will have gone to fluff, which is good. Stir.",
         "Cook for 15 minutes. Stir."),
        (without_what_is_out, "The pear [left out] should be soft; the syrup thick.", "The syrup thick."),
        (without_what_is_out, "Put the apple [left out] in and cook for 40 minutes.", "Cook for 40 minutes."),
        (without_what_is_out, "Simmer until the peas [left out] are tender, stirring.", "Simmer, stirring."),
        (without_what_is_out, "Heat the milk with the clove-studded onion [left out] and bay leaf.",
         "Heat the milk with the cloves and bay leaf."),
        (without_what_is_out, "Stick the onion [left out] with the cloves and put it in the milk.",
         "Put the cloves in the milk."),
        (without_what_is_left_over, "Make swirls with the back of a spoon, and spoon over the chives.",
         "Make swirls with the back of a spoon, and spoon over the chives."),
        (without_what_is_left_over, "Stir in the cumin, paprika, 1/4 tsp of the ground cumin and chilli flakes for a "
         "minute.", "Stir in the cumin, paprika and chilli flakes for a minute."),
        # Garlic fried crisp and lifted out, a bulb tucked in, an onion that turns pink: oil and greens do neither.
        (_smoothed, "Warm the butter with the garlic-infused oil [nothing to brown, lift out or pound; stir it in at "
         "the end of this step] over a low heat; scoop it out with a slotted spoon and keep it.",
         "Warm the butter with the garlic-infused oil over a low heat."),
        (_smoothed, "Scatter over the crisp garlic [garlic-infused oil] and mop up with bread.", "mop up with bread."),
        (_smoothed, "Squeeze the garlic-infused oil [just stir it in] from its papery skin into a jar, add the lemon.",
         "Put the garlic-infused oil into a jar, add the lemon."),
        (_smoothed, "Rub the greens with the vinegar until it turns pink, then leave.",
         "Rub the greens with the vinegar, then leave."),
        (without_what_is_left_over, "Add the garlic-infused oil and warm it until it just starts to colour, then stir.",
         "Add the garlic-infused oil and warm for a minute, then stir."),
        (without_what_is_left_over, "Heat the garlic-infused oil and the oil until golden and crisp.",
         "Heat the garlic-infused oil and the oil for a minute."),
        (without_what_is_left_over, "Warm the corn tortillas, then split and stuff with the vegetables.",
         "Warm the corn tortillas, then stuff with the vegetables."),
        (greens_by_one_word, "Add the leek greens to the fat and let it go soft.",
         "Add the leek greens to the fat and let them go soft."),
        (_put_in_late, "Add the tomatoes and lentils [only for the last 10 minutes]. Simmer for 20 minutes, until the "
         "lentils [these keep their shape, so go by the time] are soft into the sauce.",
         "Add the tomatoes. Simmer for 20 minutes. Put in the lentils for the last 10 minutes of it."),
        (out_of_lists, "Melt the \x1fhoney [left out]\x1f and butter together, brush.", "Melt the butter, brush."),
        (_smoothed, "Make swirls with the back of a spoon, and spoon over the chives.",
         "Make swirls with the back of a spoon, and spoon over the chives."),
        (_smoothed, "Add the broccoli, tossing it in the juices, and roast.",
         "Add the broccoli, tossing it in the juices, and roast."),
        (_put_in_late, "Stir in the rice, pine nuts and orange [only for the last 5 minutes], then the stock. Simmer "
         "for 20 minutes; the rice should be hard.", "Stir in the rice and pine nuts, then the stock. Simmer for 20 "
         "minutes; the rice should be hard. Put in the orange for the last 5 minutes of it."),
        (_put_in_late, "Stir in the rice and orange [only for the last 5 minutes]. Simmer for 5 minutes.",
         "Stir in the rice and orange. Simmer for 5 minutes."),
        (_put_in_late, "Stir in the chickpeas and potatoes [potatoes about 18 minutes].", "Stir in the chickpeas and "
         "potatoes and simmer until the potatoes are soft, about 18 minutes."),
        (_with_water, "Add all the beans, including the liquid from the black beans, plus the salt.",
         "Add all the beans with a little water, plus the salt."),
    ],
)  # fmt: skip
def test_a_step_says_what_is_done_now(done: Callable[[str], str], step: str, told: str) -> None:
    assert done(step) == told


def test_cloves_of_an_onion_that_is_out_stay_in_the_list() -> None:
    assert studs_of("1 small onion, peeled and stuck with 3 cloves") == "3 cloves"
    assert studs_of("1 onion, peeled, with 3 cloves of garlic") == ""


def test_stock_in_which_dried_mushrooms_drew_is_heated_alone(adapt: Adapt) -> None:
    method = _method(adapt(
        "Ragu", "30 g dried porcini", "800 ml beef stock without onion", "600 g beef", "2 tbsp oil",
        steps="1. Put the porcini in a pan with the stock and bring to a simmer. After 15 minutes, lift out the "
        "porcini and chop them.\n2. Brown the beef in the oil. Add the stock and the chopped porcini. Simmer long.",
    ))  # fmt: skip
    assert "1. Put the stock in a pan and bring to a simmer. Tear the oyster mushrooms and brown them" in method
    assert "Add the stock and the oyster mushrooms" in method


def test_beans_of_several_tins_are_all_named_where_one_word_meant_them(adapt: Adapt) -> None:
    method = _method(adapt(
        "Chilli", "400 g tin black beans, drained", "400 g tin kidney beans, drained", "400 g tin tomatoes",
        "150 g green beans", "300 g beef mince",
        steps="1. Brown the mince. Cook the green beans.\n2. Add the tomatoes and all the tinned beans and cook for 30 "
        "minutes.",
    ))  # fmt: skip
    assert "green beans" in method.partition("2.")[0]
    assert "Add the tomatoes and the black beans and lentils and cook" in method


def test_green_beans_in_a_batter_are_boiled_before(adapt: Adapt) -> None:
    method = _method(adapt(
        "Fritters", "300 g frozen peas, defrosted", "100 g rice flour", "2 eggs", "100 g feta",
        steps="1. Roughly mash half the peas. Whisk the flour and eggs to a batter and fold in all the peas and the "
        "feta.\n2. Fry spoonfuls for 3 minutes each side.", serves=2,
    ))  # fmt: skip
    assert "1. First boil the green beans for 7 minutes and drain them. Roughly mash" in method


def test_whites_and_greens_of_a_list_are_half_and_the_rest() -> None:
    steps = ["Add the white parts of the spring onions, the pepper and peas.", "Pile on the spring onion greens."]
    marked = ["Add the spring onion greens [only a minute], the pepper and peas.", "Pile on the spring onion greens."]
    first, second = half_and_rest(steps, marked)
    assert first.startswith("Add half of the spring onion greens [only a minute]")
    assert second == "Pile on the rest of the spring onion greens."


def test_some_of_a_tin_is_not_taken_for_dry_beans(adapt: Adapt) -> None:
    """Raw dry kidney beans make ill: phytohaemagglutinin (FDA Bad Bug Book)."""
    found = adapt(
        "Chilli", "400 g tin kidney beans, drained", "400 g tin tomatoes", "300 g beef mince",
        steps="1. Brown the mince. Add the tomatoes and beans and cook for 30 minutes.",
    )  # fmt: skip
    listed = str(found["recipe"]).partition("Method")[0]
    assert " canned kidney beans, drained" in listed or "kidney" not in listed


def test_caps_that_were_wiped_and_twisted_are_halves() -> None:
    steps = [
        "Wipe the mushrooms [aubergine, in halves, one a serving: about 15 minutes] clean, twist out the stalks and "
        "finely chop them. Set the caps gill side up on a tray.",
    ]
    assert caps_are_halves(steps) == [
        "Halve the aubergines lengthways, scoop out the middle and finely chop it. Set the halves cut side up on a "
        "tray."
    ]


def test_a_mixture_without_what_is_out_is_a_mixture_and_whites_left_out_leave_the_greens(adapt: Adapt) -> None:
    method = _method(adapt(
        "Noodles", "300 g rice noodles", "3 spring onions, sliced", "2 tbsp soy sauce", "4 tbsp peanut butter",
        "2 red peppers, sliced", "1 head broccoli, in florets",
        steps="1. Fry the peppers and broccoli for 4 minutes. Add the noodles, soy sauce and peanut butter.\n"
        "2. Top with the spring onions.", serves=2,
    ))  # fmt: skip
    assert "Top with the spring onion greens" in method


def test_what_goes_in_last_waits_for_the_step_that_simmers() -> None:
    steps = [
        "Put the pumpkin in the water and bring to the boil. Put in the lentils for the last 10 minutes of it.",
        "Add the ginger and simmer for 25-30 minutes. Beat with a whisk.",
    ]
    assert late_where_it_simmers(steps) == [
        "Put the pumpkin in the water and bring to the boil.",
        "Add the ginger and simmer for 25-30 minutes. Put in the lentils for the last 10 minutes of it. "
        "Beat with a whisk.",
    ]


def test_a_page_says_nothing_below_its_steps_of_what_is_gone_and_marks_what_passes(adapt: Adapt) -> None:
    """Apples and honey bring excess fructose (USDA FoodData Central, sugars of foods)."""
    method = _method(adapt(
        "Beef bowls", "500 g beef mince", "3 cloves garlic, crushed", "2 tbsp soy sauce", "300 g jasmine rice",
        steps="1. Fry the garlic and beef mince for 8 minutes. If you like, stir in a spoonful of honey.\n"
        "2. Cook the rice for 12 minutes and serve.\n\nNotes\n\nAdd half an apple for sweetness. Extra garlic is never "
        "wrong. Leftovers keep for 2 days in the fridge.",
    ))  # fmt: skip
    page = method.partition("Notes")[2].partition("Garlic-infused oil for garlic")[0]
    assert "honey [not counted: a usual portion passes a limit]" in method
    assert "half an apple [not counted: a usual portion passes a limit] for sweetness." in page
    assert "garlic" not in page
    assert "Leftovers keep for 2 days in the fridge." in page


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Toss the greens with lemon and leave to pickle for 15 minutes until bright pink. Serve.",
         "Toss the greens with lemon and leave to pickle for 15 minutes. Serve."),
        ("Put the leek greens [just stir it in] in a sieve, press out the liquid with a spoon and tip into a bowl.",
         "Put the leek greens into a bowl."),
        ("Toast the bread, rubbed with the rest of the garlic-infused oil.",
         "Toast the bread, brushed with the rest of the garlic-infused oil."),
        ("Stir the rest of the garlic-infused oil in and add with the carrots.",
         "Add the rest of the garlic-infused oil with the carrots."),
        ("Fry the leek greens [only until soft, not golden] gently until soft and just starting to caramelise.",
         "Fry the leek greens gently until soft."),
    ],
)  # fmt: skip
def test_green_tops_and_oil_are_not_handled_as_bulbs(step: str, told: str) -> None:
    assert smoothed(step, lambda _: False) == told


def test_an_oil_does_not_go_into_the_bird_and_the_tin_and_the_gravy() -> None:
    """The oil of a bulb that is roasted and squeezed out later goes in where it is squeezed."""
    steps = [
        "Put the lemon halves and half of the garlic bulb [2 tsp of the garlic-infused oil: no piece to cut or roast, "
        "so skip this and stir it in when the rest comes together] inside the cavity.",
        "Toss the carrots, potatoes and the rest of the garlic-infused oil with the oil in a tin and roast.",
        "Squeeze the garlic-infused oil from its skins into the tin, and stir in the flour.",
    ]
    told = oil_only_later(steps)
    assert told[0] == "Put the lemon halves inside the cavity."
    assert told[1] == "Toss the carrots and potatoes with the oil in a tin and roast."
    assert "garlic-infused oil" in told[2]


def test_what_went_in_before_is_not_put_in_the_oven_once_more(adapt: Adapt) -> None:
    method = _method(adapt(
        "Goulash", "1 kg braising steak, cut in chunks", "3 tbsp sunflower oil", "3 onions, thinly sliced",
        "400 g tin chopped tomatoes",
        steps="1. Add the oil and the onions to the casserole. Cook over a low heat for 20-25 minutes, stirring often, "
        "until meltingly soft and a deep golden brown.\n2. Add the steak and tomatoes, cover and "
        "cook in the oven for 2 hours "
        "until the steak is tender and the onions have melted into the sauce.",
    )).partition("Notes")[0]  # fmt: skip
    assert "for 5 minutes, stirring often, until soft and bright green" in method
    assert "the leek greens have melted into the sauce" in method
    assert "for the last 15 minutes" not in method


def test_the_onion_is_the_one_that_is_not_called_red(adapt: Adapt) -> None:
    method = _method(adapt(
        "Koftas", "500 g lamb mince", "1 onion, grated", "1 red onion, thinly sliced", "1 lemon, juiced",
        "4 gluten-free flatbreads",
        steps="1. Mix the onion with the lamb.\n2. Toss the red onion with the lemon juice.\n3. Fry the koftas for 8 "
        "minutes and serve on the flatbreads.",
    ))  # fmt: skip
    assert "Mix 110 g of the leek greens with the lamb" in method
    assert "Toss 110 g of the leek greens with the lemon juice" in method


def test_wontons_of_rice_paper_are_not_lowered_into_broth() -> None:
    told = _fried("Heat the broth. Lower in the wontons and cook for 4 minutes until they float. Add pak choi.")
    assert "until they float [rice paper melts in water: fry them" in told


def test_two_amounts_of_one_thing_at_the_end_of_a_list_are_one() -> None:
    step = "Mix the oil, paprika, cumin, 1/4 tsp of the asafoetida and 0.5 g of the asafoetida. Stir."
    assert named_once([step]) == ["Mix the oil, paprika, cumin and the asafoetida. Stir."]


def test_soured_milk_is_called_so_from_then_on() -> None:
    steps = ["Whisk the honey into the soured milk.", "Tip in most of the lactose-free milk and lemon juice."]
    assert soured_from_then_on(steps)[1] == "Tip in most of the soured milk."


def test_what_is_never_eaten_raw_is_boiled_before_a_cold_dish() -> None:
    """Green beans hold phytohaemagglutinin, which boiling takes away: FDA, Bad Bug Book, 2nd ed., 2012."""
    beans = Change(
        place=0, ingredient="200 g sugar snap peas", change="swap", to=(), lines=(), why="", heat="about 7 minutes",
        how="never raw: boiled until just tender first",
    )  # fmt: skip
    assert raw_there("Toss the noodles with the sugar snap peas.", "Eat cold.", beans) == 7
    assert raw_there("Toss the noodles with the sugar snap peas.", "Stir-fry it all.", beans) == 0


@pytest.mark.parametrize(
    ("step", "told"),
    [
        # What goes in late is told in the order in which it is done.
        ("Simmer, covered, for 20 minutes until the canned lentils and pumpkin fall apart. Put in the lentils for the "
         "last 10 minutes of it.",
         "Simmer, covered, for 10 minutes, put in the lentils and simmer for 10 minutes more until the pumpkin falls "
         "apart."),
        ("Add the stock. Cover and simmer gently for 25–30 minutes, stirring now and then, until thick. Put in the "
         "lentils for the last 10 minutes of it. Season.",
         "Add the stock. Cover and simmer gently for 15–20 minutes, put in the lentils and simmer for 10 minutes more, "
         "stirring now and then, until thick. Season."),
        ("Roast for 1 hour. Put in the leek greens for the last 15 minutes of it.",
         "Roast for 1 hour. Put in the leek greens for the last 15 minutes of it."),
        # An oil takes no colour, has no sting, and is not fished out.
        ("Add the garlic-infused oil and fry until the garlic-infused oil is the color of toast.",
         "Add the garlic-infused oil and fry for a minute until fragrant."),
        ("Heat until the garlic-infused oil is hot, then add the rice.",
         "Heat until the garlic-infused oil is hot, then add the rice."),
        ("Stir the garlic-infused oil into the lemon juice and leave for 5 minutes to take the sting out.",
         "Stir the garlic-infused oil into the lemon juice."),
        ("Stir the garlic-infused oil and radishes into the juice and leave for 5 minutes to take the sting out.",
         "Stir the garlic-infused oil and radishes into the juice and leave for 5 minutes to take the sting out."),
        ("Warm the garlic-infused oil until it smells sweet, then fish it out.",
         "Warm the garlic-infused oil until it smells sweet."),
        ("Fry the leek greens for 5 minutes, then add the paste and cook until it stops smelling raw.",
         "Fry the leek greens for 5 minutes, then add the paste and cook until it stops smelling raw."),
        # Green tops, fruit and roots are done once they are soft.
        ("Cook the leek greens until it has lost its moisture and begins to catch.",
         "Cook the leek greens until soft and bright green."),
        ("Toss the spring onion greens with the lime juice and scrunch until it wilts.",
         "Toss the spring onion greens with the lime juice and scrunch until they wilt."),
        ("Bake until the pineapple is collapsing at the edges.", "Bake until the pineapple is soft."),
        ("Add the pineapple. Work fast so the pineapple does not brown.", "Add the pineapple."),
        ("Boil the carrots, drain well and let it steam dry.", "Boil the carrots, drain well and let them steam dry."),
        ("Put the carrots in the pan, heat the oil and let it smoke.",
         "Put the carrots in the pan, heat the oil and let it smoke."),
        # What is left of a pair that goes in, of a sauce by its old name, of a liquid that is none.
        ("Add the okra [left out], and the greens.", "Add the greens."),
        ("Serve with the garlic [garlic-infused oil] yoghurt.", "Serve with the garlic yoghurt."),
        ("Serve with the apple [rhubarb] compote.", "Serve with the rhubarb compote."),
        ("Tip in the potatoes with a splash of their liquid.", "Tip in the potatoes with a splash of water."),
        ("Stir in the 1/2 tsp of the chilli flakes and cumin.", "Stir in 1/2 tsp of the chilli flakes and cumin."),
        ("Now the fishy milk [lactose-free milk], bit by bit.", "Now the fishy milk, bit by bit."),
        ("Drop the asparagus [green beans] ends into the stock and keep it hot. Slice them into short pieces.",
         "Keep the stock hot. Slice the green beans into short pieces."),
        ("Garlic [garlic-infused oil] ginger paste, 2 mins.", "Garlic-infused oil, ginger, 2 mins."),
        ("Cook the leek greens, lid on, 5 minutes. They should be nearly melted. Add salt.",
         "Cook the leek greens, lid on, 5 minutes. Add salt."),
        ("Halve the green peppers lengthways and take out the seeds, keep them as lids, and scrape out the seeds. Lay "
         "the green pepper halves in a dish. Put the lids on.",
         "Halve the green peppers lengthways and take out the seeds. Lay the green pepper halves in a dish."),
        ("Heat the oil with the garlic-infused oil until the slivers just begin to colour. Watch it; burnt garlic "
         "[garlic-infused oil] is bitter. Add the chilli.",
         "Heat the oil with the garlic-infused oil for a minute until fragrant. Add the chilli."),
        ("Add the pineapple and cook for 30 minutes, until they have burst into the sauce and the pork falls apart.",
         "Add the pineapple and cook for 30 minutes, until it is soft and the pork falls apart."),
        ("Peel the oyster mushrooms, aubergine, snap out the stalks and slice the caps thickly.",
         "Tear the oyster mushrooms and slice the aubergine."),
        ("Leave it so the rye [100 g of the gluten-free flour blend] softens.",
         "Leave it so the gluten-free flour blend softens."),
        ("Sweat the leek greens for 5 minutes without letting it colour.",
         "Sweat the leek greens for 5 minutes without letting them colour."),
        ("Scatter the leek greens over. Turn the sausages, add the sage and roast for 15 minutes.",
         "Turn the sausages. Scatter the leek greens over. Add the sage and roast for 15 minutes."),
    ],
)  # fmt: skip
def test_a_changed_step_reads_as_a_cook_does_it(step: str, told: str) -> None:
    """Order, signs and pronouns: recalled cookery."""
    assert read_over([step]) == [told]


def test_a_grain_that_wants_twenty_minutes_is_not_boiled_for_three() -> None:
    """And what is cooked apart only to be added is gone with what is left out: recalled cookery."""
    steps = late_where_it_simmers([
        "Boil hard for 3 minutes. Put in the risotto rice for the last 20 minutes of it. Add the stock.",
        "Cover and cook for 45 minutes.",
    ])  # fmt: skip
    assert steps[0] == "Boil hard for 3 minutes. Add the stock."
    assert steps[1] == "Cover and cook for 45 minutes. Put in the risotto rice for the last 20 minutes of it."
    fried = "Fry the apple [left out] in butter until golden and add it to the pot with half of the tarragon. Cook on."
    assert without_what_is_out(fried) == "Add half of the tarragon to the pot. Cook on."


def test_what_was_begun_is_the_rest_and_what_was_blanched_is_boiled_once() -> None:
    assert read_over(["Add 50 g of the spring onion greens and ginger.", "Fold in the spring onion greens."])[1] == (
        "Fold in the rest of the spring onion greens."
    )
    assert read_over([
        "Blanch the green beans for 30 seconds.",
        "First boil the green beans for 7 minutes and drain them. Toss with the herbs.",
    ]) == ["Boil the green beans for 7 minutes.", "Toss with the herbs."]  # fmt: skip
    assert read_over([
        "Fry the bread with some of the garlic-infused oil [nothing to brown, lift out] until both are deep gold.",
        "Pound the bread with the rest of the garlic-infused oil.",
    ]) == ["Fry the bread until it is deep gold.", "Pound the bread with the garlic-infused oil."]  # fmt: skip


def test_parts_of_a_dish_are_called_by_what_is_in_them_and_the_plain_onion_is_the_plain_line(adapt: Adapt) -> None:
    found = adapt(
        "Bean burgers with mango slaw", "Burgers:", "500 g beef mince", "1 onion, finely chopped", "1 tbsp oil",
        "Mango slaw:", "1 ripe mango, cut into matchsticks", "1 red onion, in rings", "1/4 white cabbage, shredded",
        steps="1. Fry the onion in the oil for 8 minutes. Mix with the beef, shape and fry.\n"
        "2. Toss all of the slaw together.",
    )["recipe"]  # fmt: skip
    assert "Mango" not in found.partition("Ingredients")[2]
    assert "1. Fry the leek greens in the oil for 5 minutes." in found


def test_milk_is_soured_once_and_the_rest_of_it_is_soured_too() -> None:
    steps = [
        "Stir the lemon juice into 350ml of the lactose-free milk and leave it ten minutes. Stir into the soured milk.",
        "Use the remaining buttermilk if it looks dry.",
    ]
    assert soured_from_then_on(steps) == [
        "Stir the lemon juice into the lactose-free milk and leave it ten minutes. Stir into 350ml of the soured milk.",
        "Use the remaining soured milk if it looks dry.",
    ]


@pytest.mark.parametrize(
    ("sentence", "holds"),
    [
        ("To cut the heat, leave the chillies whole.", True),
        ("Leftovers keep well for two days.", True),
        ("Keeps for a week in the fridge.", False),  # said of another dish
        ("A small head of cauliflower can go in too.", False),  # nobody counted it
        ("Fry the garlic slowly.", False),
        ("Slow cooker: do steps 1 to 3 on the stove.", False),
    ],
)
def test_a_page_s_own_notes_hold_where_they_name_what_stays(sentence: str, holds: bool, tables: Tables) -> None:
    assert _holds(sentence, {"chilli-green", "chilli-red", "pumpkin"}, tables) is holds
