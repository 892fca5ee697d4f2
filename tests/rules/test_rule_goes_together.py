"""What no cook leaves out or puts together. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.goes_together import (
    FewProteins,
    FishByItself,
    NoSaltOnSalt,
    NotBeside,
    OnlyBeside,
    SourWithNuts,
)
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot


def test_nuts_want_something_sour(pan: Callable[..., Tiny]) -> None:
    """Tahini alone, and with lime.

    firm tofu 280g
    tahini
    lime
    """
    assert not pan().holds(SourWithNuts(), {"tofu-firm": 80, "tahini": 15})
    assert pan().holds(SourWithNuts(), {"tofu-firm": 80, "tahini": 15, "lime": 10})


def test_two_protein_things_at_most(pan: Callable[..., Tiny]) -> None:
    """Three are there.

    firm tofu 280g
    tempeh 200g
    eggs x6
    """
    assert pan().holds(FewProteins(), {"tofu-firm": 80, "tempeh": 50})
    assert not pan().holds(FewProteins(), {"tofu-firm": 80, "tempeh": 50, "egg": 55})


def test_fish_shares_no_plate_with_tofu(pan: Callable[..., Tiny]) -> None:
    """Either the salmon or the tofu; eggs may go with fish.

    firm tofu 280g
    salmon fillets 300g
    eggs x6
    """
    assert pan().holds(FishByItself(), {"salmon": 150})
    assert pan().holds(FishByItself(), {"salmon": 150, "egg": 55})
    assert pan().holds(FishByItself(), {"tofu-firm": 80, "egg": 55})
    assert not pan().holds(FishByItself(), {"salmon": 150, "tofu-firm": 80})


def test_tinned_fish_shares_no_plate_with_prawns_nor_anchovies_with_smoked_fish(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Recalled cookery: one fish a plate, and what is smoked is salt enough; on fresh hake anchovies are at home.

    raw prawns 180g
    tinned tuna x2
    smoked haddock 300g
    hake 300g
    kippers 2
    anchovies
    """
    dish = PAN.model_dump()
    fish = slot("protein", ["shellfish", "fish"], "stir-fry", [1, 2], [0.2, 1.0, 2.0])
    anchovies = slot("topping", ["condiment", "fish"], "raw", [0, 1], [0.0, 1.0, 2.0])
    dish |= {
        "slots": dish["slots"] | {"protein": fish, "salty": anchovies},
        "steps": [*dish["steps"], "plate: Lay {salty} on top."],
    }
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    pan = Tiny(problem)
    assert not pan.holds(FishByItself(), {"prawns": 90, "tuna-canned": 90})
    assert pan.holds(FishByItself(), {"prawns": 90, "fish-white": 150})
    assert not pan.holds(NoSaltOnSalt(), {"haddock-smoked": 150, "anchovies": 10})
    assert not pan.holds(NoSaltOnSalt(), {"fish-herring": 90, "anchovies": 10})
    assert pan.holds(NoSaltOnSalt(), {"fish-white": 150, "anchovies": 10})


def test_no_cheese_is_strewn_over_another(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Cheddar over fried halloumi; parmesan goes over any, and cheddar over tofu. Recalled cookery.

    halloumi 225g
    firm tofu 280g
    cheddar 200g
    parmesan 100g
    """
    dish = PAN.model_dump()
    main = slot("protein", ["cheese", "tofu"], "stir-fry", [1, 1], [0.2, 1.0, 2.0]) | {"not_foods": ["cheddar"]}
    dish |= {
        "slots": dish["slots"] | {"protein": main, "over": slot("topping", ["cheese"], "raw", [0, 1], [0.0, 1.0, 2.0])},
        "steps": [*dish["steps"], "plate: Strew {over} over."],
    }
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    pan = Tiny(problem)
    assert not pan.holds(NotBeside(), {"halloumi": 80, "cheddar": 20})
    assert pan.holds(NotBeside(), {"halloumi": 80, "parmesan": 10})
    assert pan.holds(NotBeside(), {"tofu-firm": 130, "cheddar": 20})


def test_smoked_mackerel_and_fish_fingers_are_a_main_thing_by_themselves(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """No second fish beside what is smoked through or salted, no bacon beside crumbs; recalled cookery.

    smoked haddock 300g
    smoked mackerel 160g
    hake 300g
    fish fingers 300g
    bacon 100g
    """
    dish = PAN.model_dump()
    dish["slots"] |= {"protein": slot("protein", ["fish", "meat"], "roast", [1, 2], [0.2, 1.0, 2.0])}
    dish |= {
        "oven_c": 200,
        "steps": ["apart: {base}.", "oven: Roast {protein,vegetable}.", "oven: Add {spice}.", *dish["steps"][4:]],
    }
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    pan = Tiny(problem)
    assert not pan.holds(NoSaltOnSalt(), {"fish-white": 150, "mackerel-smoked": 80})
    assert not pan.holds(NoSaltOnSalt(), {"fish-fingers": 90, "bacon": 50})
    assert not pan.holds(NoSaltOnSalt(), {"fish-fingers": 90, "fish-white": 150})
    assert pan.holds(NoSaltOnSalt(), {"fish-white": 150, "haddock-smoked": 150})  # of a pie
    assert pan.holds(NoSaltOnSalt(), {"fish-white": 150, "bacon": 50})


def test_red_or_minced_meat_shares_no_pot_with_prawns(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Chicken in strips may, and ham; dinner or a packed lunch alike.

    raw prawns 180g
    beef mince 500g
    turkey mince 500g
    chicken breast 300g
    ham 100g
    """
    kinds = ["shellfish", "meat", "poultry"]
    dish = PAN.model_dump() | {"sittings": ["dinner", "packed"]}
    dish["slots"] |= {"protein": slot("protein", kinds, "stir-fry", [1, 3], [0.2, 1.0, 2.0])}
    for sitting in ("dinner", "packed"):
        wanted = wanting(people=1, sitting=sitting)
        (problem,) = pattern_problems(fridge, wanted, [Pattern.model_validate(dish)], tables)
        pan = Tiny(problem)
        assert pan.holds(FishByItself(), {"prawns": 90, "chicken-breast": 150})
        assert pan.holds(FishByItself(), {"prawns": 90, "ham": 30})
        assert not pan.holds(FishByItself(), {"prawns": 90, "beef-mince": 70})
        assert not pan.holds(FishByItself(), {"prawns": 90, "turkey-mince": 70})


def test_fresh_fish_is_cooked_without_tinned(pan: Callable[..., Tiny]) -> None:
    """Sardines of a tin for themselves, and salmon.

    salmon fillets 300g
    cod fillets 300g
    tin of sardines
    """
    assert pan().holds(FishByItself(), {"salmon": 150, "cod": 150})
    assert pan().holds(FishByItself(), {"sardines-canned": 90})
    assert not pan().holds(FishByItself(), {"salmon": 150, "sardines-canned": 90})


def test_no_handful_of_cheese_over_fish(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Over tofu it is welcome.

    firm tofu 280g
    salmon fillets 300g
    feta 200g
    """
    cheese = slot("topping", ["cheese"], "raw", [0, 1], [0.0, 1.0, 2.0]) | {"not_with": ["fish"]}
    dish = PAN.model_dump()
    dish |= {"slots": dish["slots"] | {"cheese": cheese}, "steps": [*dish["steps"], "plate: Scatter {cheese}."]}
    (problem,) = pattern_problems(fridge, wanting(), [Pattern.model_validate(dish)], tables)
    assert Tiny(problem).holds(NotBeside(), {"tofu-firm": 80, "feta": 40})
    assert Tiny(problem).holds(NotBeside(), {"salmon": 150})
    assert not Tiny(problem).holds(NotBeside(), {"salmon": 150, "feta": 40})


def test_butter_is_for_potatoes(fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]) -> None:
    """Rice is not turned in it.

    firm tofu 280g
    potatoes 500g
    rice 500g
    butter 200g
    """
    butter = slot("fat", ["butter"], "raw", [0, 1], [0.0, 1.0, 2.0]) | {"only_with": ["potato"]}
    base = slot("base", ["rice", "potato"], "boil", [0, 1], [0.2, 1.0, 2.0])
    dish = PAN.model_dump()
    steps = [*dish["steps"], "bowl: Melt {butter}{if:butter}."]
    dish |= {"slots": dish["slots"] | {"butter": butter, "base": base}, "steps": steps}
    (problem,) = pattern_problems(fridge, wanting(diet="vegetarian"), [Pattern.model_validate(dish)], tables)
    assert Tiny(problem).holds(OnlyBeside(), {"tofu-firm": 80, "potato": 150, "butter": 10})
    assert Tiny(problem).holds(OnlyBeside(), {"tofu-firm": 80, "rice-white-dry": 75})
    assert not Tiny(problem).holds(OnlyBeside(), {"tofu-firm": 80, "rice-white-dry": 75, "butter": 10})
