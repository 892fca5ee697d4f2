"""A pattern's sentences after what fills them: no salt on salted things, no water to okra, none in a soy dressing."""

import re
from collections.abc import Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import ALREADY_COOKED, OWN_FAT, Filling
from calmlarder.kitchen.made_ready import IN_DICE, LEFT_WHOLE
from calmlarder.kitchen.two_pans import IN_ONE_PIECE
from calmlarder.patterns.pattern import Place

_SALTED = frozenset({
    "anchovies", "bacon", "capers", "chorizo", "feta", "haddock-smoked", "halloumi", "ham", "mackerel-smoked",
    "mussels", "olives", "prosciutto", "mackerel-salted", "fish-dried", "salami", "salt-cod", "salt-cod-soaked",
    "tofu-marinated", "tofu-smoked",
})  # fmt: skip
_COATED = re.compile(r"fish-fingers|nuggets|breaded|scampi|fish-cakes")  # seasoned where they are made
_SALTY_TOO = frozenset({"corned-beef", "salmon-smoked", "parmesan", "anchovies"})
_SALTY_SAUCES = frozenset({"fish-sauce", "fish-sauce-vegan", "shrimp-paste"})  # in by halves, as soy sauce
_SLOW_GRAIN = 25  # minutes: what takes longer drinks more. Common practice, no source
_LESS_WATER = ("four times its volume", "twice its volume")  # ugali and the like: common practice, no source
_STEWS, _LONG_SIMMERED, _STEP_ML = frozenset({"meat", "poultry"}), 45, 50  # minutes, ml: common practice, no source
_BRAISED, _BRAISE_ML = 90, 300  # minutes; ml that are gone by then, lid or not: common practice, no source
_ML_OF_WATER = re.compile(r"\b(\d+) ml of water\b")
_STIFF_PASTES, _LUMPS_G = frozenset({"miso", "gochujang"}), 15  # g: ours
_HARD_PASTE = "shrimp-paste"  # a block of it, raw: crumbled, and never stirred in as it comes
_LET_DOWN = "stirred smooth in a cup with a few spoons of hot water"
_SEASONED_WITH = re.compile(r"(\bseason with [^;,.]+)(?=\.$|$)")
_WATER_TO_NUT_BUTTER = 1.5  # ml for a gram, until it pours: common practice, no source
_DRUNK = re.compile(r"\b(twice|three times) the volume of the grain in boiling water\b")  # tomatoes are drunk, too
_STIRRED_HARD = (
    "on low heat, stirring now and then, until thick",
    "on medium heat, stirring hard, until it is stiff and leaves the pot",
)
_BROWNS = frozenset({"fish", "meat", "poultry", "tempeh", "tofu"})
_BROWN_IT = re.compile(r"\b[Bb]rown(?= )")
_BROWNED = re.compile(r"\buntil (?:crumbly and )?(?:golden|browned)(?: at the edges| and crumbly| all round)?\b")
_CHOPS = frozenset({"lamb-chops", "pork-chops"})
_IN_ONE_PIECE = re.compile(r"\b(?:patted dry|in portions)\b")  # fillets, steaks and chops have two sides
# What is lean sticks in a dry pan; bacon and the like need nothing. Common practice, no source.
_DRY_PAN = re.compile(r"\b(Fry (?:(?!\bwith a (?:little|few)\b)[^;.])+? in a (?:wide |hot )?pan)(?! with)(?=[ ,.])")
_GREASES = frozenset({"butter", "oil"})
_TURNED = re.compile(
    r"\b((?:[Ff]ry|[Bb]rown)\b(?:(?!turning)[^;.])*?)(?= until (?:golden|browned)\b(?! [^;.]*sides?\b))"
)
_RUBBED = re.compile(r"\b[Tt]oss ([^;.]+?) (?:in|with) ([^;.]+?)(?:, salt and| and salt, with) ([^;.]+?), and roast")
_SOFTENED = frozenset({"leek-green"})  # tough where it only sizzles
_MIRIN = "mirin"
_LIFTED_OUT = ("lemongrass", "galangal", "bay-leaf", "star-anise", "lime-leaves", "pandan-leaves")  # nobody chews them
# What holds a dressing together, and is loosened with water; soy sauce and its like run by themselves.
_THICK = frozenset({"nut-butter", "paste", "yoghurt", "condiment", "cheese", "cream"})
_RUNS = frozenset({
    "fish-sauce", "fish-sauce-vegan", "hot-sauce", "mirin", "ponzu", "sweet-chilli-sauce", "worcestershire-sauce",
})  # fmt: skip


# What `Stir the soy sauce to a dressing` stirs: one thing with nothing.
_DRESSING_OF_ONE = re.compile(r"\b([Ss]tir (?:(?! with | and )[^;.])*?) to a dressing\b")

_POP = frozenset({"mustard-seeds", "panch-phoron"})  # done when they pop, when ground spices would be burnt
_SHARP = frozenset({"mustard", "mustard-powder"})  # no dressing with water alone
_SOFTENS = frozenset({"cheese", "cream", "nut-butter", "oil", "yoghurt"})
_WARMED_WITH = re.compile(r" with ([^;.]+?)(?: until it smells good|, stirring)?(?=\.$)")
_LEAVES, _SOON_WILTED = frozenset({"leaf", "salad-leaf"}), 4  # minutes: ours
_SEASONS = frozenset({"spice", "paste"})
_SOFTENED_IN_FAT = re.compile(r"\bsoften ([^;.]+?) in it\b")
_LID_FIRST = ", with the lid on at first"  # of a pattern; soft vegetables swim under it
_TOUGH, _TOUGH_FROM = frozenset({"brassica", "leaf", "pod", "root", "squash", "stem"}), 5  # minutes: ours
_ROASTED = re.compile(r"\b(roast until (?:browned(?: at the edges)?|golden))\b")
_COVERED_FROM = 60  # minutes: dice that roast for so long dry out in the open. Common practice, no source
FATTY = frozenset({"duck", "goose", "lamb-chops", "pork-belly"})  # it swims in its fat: common practice, no source
_FATTY_G = 200  # ours
_FRIED = re.compile(r"\b(?:[Ff]ry|[Bb]rown)\b")
_POUR_OFF = "pour off all but a spoon of the fat"
_WINE_BY_THE_LADLE = re.compile(
    r"then ([^;,]* wine) (?=a ladle at a time)(a ladle at a time, stirring), with more hot water(?= as it is drunk up)"
)
_LIFTED_AT_END = re.compile(r",? and (?=lift out\b)")
_SIZZLE = re.compile(r"\b(?:([Ss]izzle) ([^;.]+?)|([Ll]et) ([^;.]+?) sizzle)( in [^;.,]+?)? for half a minute")


def finer(said: str, place: Place, things: Sequence[Filling]) -> str:
    """A sentence of a step at a place, after the things that come in with it."""
    if any(salted_before(one) for one in things):
        said = _unsalted(said)
    if any(one.food.kind == "butter" for one in things):
        said = said.replace("until it shimmers", "until it foams")
    if place in {"pan", "pot"}:
        said = _until_pink(said, things)
        said = _fat_poured(said, things)
        said = _until_wilted(said, things)
    if place == "pan" and any(has_two_sides(one) for one in things):
        turned = (
            "skin side down first, turning once" if any(one.food.id == "duck" for one in things) else "turning once"
        )
        said = _TURNED.sub(rf"\1, {turned},", said, count=1)
    if place == "pan" and not any(one.food.kind in _GREASES for one in things) and "oil" not in said:
        lean = any(one.food.id not in OWN_FAT and one.food.state not in ALREADY_COOKED for one in things)
        said = _DRY_PAN.sub(r"\1 with a little oil", said, count=1) if lean else said
    if place == "pan":
        said = _loosened(said, things)
    if place == "pan" and any(one.food.id == "okra" for one in things):
        said = _fried_dry(said)
    if not any(one.food.kind in _TOUGH and one.minutes >= _TOUGH_FROM for one in things):
        said = said.replace(_LID_FIRST, "")
    if any(one.food.kind == "pulse" and one.food.state == "dry" for one in things):
        said = re.sub(r"boiling water to cover\b", "boiling water to three fingers above, more as it is drunk up", said)
    if any(one.food.kind in {"rice", "grain"} and one.minutes >= _SLOW_GRAIN for one in things):
        said = said.replace("twice the volume", "three times the volume").replace(
            "twice as much", "three times as much"
        )
    for one in things:
        if one.food.kind == "tomato":
            said = _DRUNK.sub(rf"boiling water, with the {one.short} \1 the volume of the grain", said)
    if any(one.stiff for one in things):
        said = said.replace(*_LESS_WATER).replace(*_STIRRED_HARD)
    if place == "oven" and any(roasts_long_in_dice(one) for one in things):
        said = _ROASTED.sub(r"\1, at first under foil with a splash of water", said, count=1)
    elif place == "oven" and any(one.food.id in IN_ONE_PIECE for one in things):
        said = _RUBBED.sub(r"Rub \1 with \2, salt and \3, and roast", said).replace("browned at the edges", "browned")
    if place == "pot":
        said = _WINE_BY_THE_LADLE.sub(r"let \1 bubble away, then add hot water \2,", said)
        said = _long_simmered(said, things)
    if place in {"pan", "pot"} and any(one.food.id in _SOFTENED for one in things):
        said = said.replace(" for half a minute", " until soft")
        if not any(one.food.kind in _SEASONS for one in things):  # ground spices burn for as long
            said = said.replace(" until it smells good", " until soft")
    if place == "bowl":
        said = _boiled_up(said, things)
    if place in {"pan", "pot"} and any(one.food.id in _POP for one in things):
        said = _popped_first(said, [one.food.name for one in things if one.food.id in _POP])
    if place == "plate":
        for one in things:
            if one.food.id in IN_ONE_PIECE and not one.prep.endswith(IN_DICE):
                said = said.replace(f"Serve the {one.short} with", f"Carve the {one.short}, and serve with")
    if place == "bowl" and any(one.food.id in _SHARP for one in things):
        said = _with_oil(said, things)
    if place == "bowl" and not any(_is_thick(one) for one in things):
        said = _not_thinned(said, things)
    return said


def half_first(said: str, things: Sequence[Filling], fillings: Sequence[Filling]) -> str:
    """A sentence in which soy or fish sauce comes in, for a dish in which something is salty already."""
    soy = [one for one in things if one.food.kind == "soy-sauce" or one.food.id in _SALTY_SAUCES]
    if not soy or not any(salted_before(one) or one.food.id in _SALTY_TOO for one in fillings):
        return said
    name = re.escape(soy[0].food.name)
    return re.sub(rf"\b(?<!the )({name})(?! \()", r"\1 (half of it first, the rest to taste)", said, count=1)


def salted_before(one: Filling) -> bool:
    """Whether a thing brings its own salt, by its kind or by its line; a spoon of salted butter salts no dish."""
    salted = one.food.id in _SALTED or _COATED.search(one.food.id) is not None
    return (one.salted and one.food.kind != "butter") or salted


def has_two_sides(one: Filling) -> bool:
    """Whether it is a chop, a steak or a fillet, turned once as it fries."""
    return one.food.id in _CHOPS or (one.food.kind in _BROWNS and _IN_ONE_PIECE.search(one.prep) is not None)


def lifted_out(fillings: Sequence[Filling]) -> list[str]:
    """What gave its taste and is taken out before the dish is served."""
    return [one.short for one in fillings if one.food.id in _LIFTED_OUT or one.prep == LEFT_WHOLE]


def _is_thick(one: Filling) -> bool:
    return one.food.kind in _THICK or (one.food.kind == "sauce" and one.food.id not in _RUNS)


def _boiled_up(said: str, things: Sequence[Filling]) -> str:
    """Mirin that meets no heat else is boiled once: it holds alcohol."""
    for one in things:
        if one.food.id == _MIRIN:
            said = re.sub(
                rf"({re.escape(one.food.name)})(?! \()", r"\1 (boiled up once, in the pan or the microwave)", said
            )
    return said


def _unsalted(said: str) -> str:
    said = re.sub(r"\b(with|and) (?:a pinch of )?salt and (?=[\w{])", r"\1 ", said)
    said = re.sub(r" and salt, with (?=[a-z])", ", with ", said)
    said = re.sub(r"(?<=\boil), salt and (?=pepper\b)", " and ", said)
    said = re.sub(r" (?:with|and) a pinch of salt(?=[,.;:]|$| until| in )", "", said)
    return re.sub(r", a pinch of salt(?= and)", "", said)


def _until_pink(said: str, things: Sequence[Filling]) -> str:
    """Prawns are done long before they are brown."""
    sea = next((one for one in things if one.food.kind == "shellfish" and one.done), None)
    if sea is None or any(one.food.kind in _BROWNS for one in things):
        return said
    return _BROWN_IT.sub(lambda found: "Fry" if found[0] == "Brown" else "fry", _BROWNED.sub(f"until {sea.done}", said))


def roasts_long_in_dice(one: Filling) -> bool:
    """Whether a joint was cut in dice that want an hour or more in the oven."""
    return one.prep.endswith(IN_DICE) and one.minutes >= _COVERED_FROM


def _fat_poured(said: str, things: Sequence[Filling]) -> str:
    """Duck, belly and chops leave more fat than the rest of a dish can take up."""
    fat = sum(one.grams for one in things if one.food.id in FATTY and one.food.state == "raw")
    if fat < _FATTY_G or not _FRIED.search(said):
        return said
    if _LIFTED_AT_END.search(said):
        return _LIFTED_AT_END.sub(f"; {_POUR_OFF}, and ", said, count=1)
    return f"{said.removesuffix('.')}, then {_POUR_OFF}{'.' * said.endswith('.')}"


def _loosened(said: str, things: Sequence[Filling]) -> str:
    """Nut butter in a pan clots with a splash: it takes half as much again of water to run."""
    butter = sum(one.grams for one in things if one.food.kind == "nut-butter")
    water = max(1, round(butter * _WATER_TO_NUT_BUTTER / _STEP_ML)) * _STEP_ML
    if butter:
        return said.replace(" with a splash of water", f", loosened with {water} ml of hot water")
    hard = any(one.food.id == _HARD_PASTE for one in things)
    if not hard and not any(one.food.id in _STIFF_PASTES and one.grams >= _LUMPS_G for one in things):
        return said
    how = f"crumbled, and {_LET_DOWN}" if hard else _LET_DOWN
    let_down = said.replace(" with a splash of water", f" ({how})")
    return _SEASONED_WITH.sub(rf"\1 ({how})", said) if let_down == said else let_down


def _until_wilted(said: str, things: Sequence[Filling]) -> str:
    """Leaves alone turn no colour, and a spice alone has nothing that softens."""
    cooked = [one for one in things if one.food.kind not in {"oil", "butter"}]
    if cooked and all(one.food.kind in _LEAVES for one in cooked):
        soon = all(one.minutes <= _SOON_WILTED for one in cooked)
        said = said.replace("until tender and golden", "until wilted" if soon else "until tender")
    if cooked and all(one.food.kind in _SEASONS for one in cooked):
        said = _SOFTENED_IN_FAT.sub(r"stir \1 in it for half a minute", said)
    return said


def _long_simmered(said: str, things: Sequence[Filling]) -> str:
    """Meat that stews for an hour boils a splash of water away: it gets half its weight, and a lid."""
    meat = sum(one.grams for one in things if one.food.kind in _STEWS and one.minutes >= _LONG_SIMMERED)
    if not meat:
        return said
    least = _BRAISE_ML if any(one.minutes >= _BRAISED for one in things) else _STEP_ML
    wanted = max(least, round(meat / 2 / _STEP_ML) * _STEP_ML)
    said = said.replace("a splash of water", "0 ml of water")
    said = _ML_OF_WATER.sub(lambda found: f"{max(int(found[1]), wanted)} ml of water", said, count=1)
    return re.sub(r"; simmer\b", "; cover, and simmer", said)


def _fried_dry(said: str) -> str:
    said = said.replace(", with a splash of water where it catches", "").replace("to the pan, cover, ", "to the pan, ")
    said = re.sub(r" with a splash of water and ", " with ", said.replace(_LID_FIRST, ""))
    return re.sub(r" with a splash of water(?:, cover)?(?=,)", "", said)


def _popped_first(said: str, seeds: Sequence[str]) -> str:
    """Seeds that pop sizzle by themselves first."""
    warm = _WARMED_WITH.search(said)
    if warm is not None:
        said = f"{said[: warm.start()]}; sizzle {warm[1]} in it for half a minute{said[warm.end() :]}"
    found = _SIZZLE.search(said)
    things = re.split(r", | and ", found[2] or found[4]) if found else []
    first = [thing for thing in things if thing.endswith(tuple(seeds))]
    then = [thing for thing in things if thing not in first]
    if found is None or not first:
        return said
    start = f"{found[1]} {and_list(first)}" if found[1] else f"{found[3]} {and_list(first)} sizzle"
    words = f"{start}{found[5] or ''} until the seeds pop"
    words += f", then {and_list(then)} for half a minute" if then else ""
    return said[: found.start()] + words + said[found.end() :]


def _with_oil(said: str, things: Sequence[Filling]) -> str:
    if "oil" in said or any(one.food.kind in _SOFTENS for one in things):
        return said
    return said.replace(" and a spoon of hot water", ", a little oil and a spoon of hot water")


def _not_thinned(said: str, things: Sequence[Filling]) -> str:
    """Without the water; a sauce alone gets pepper, and water where nothing else makes a dressing of it."""
    alone = r" with (?:a (?:little|spoon of) )?hot water(?:, spoon by spoon,)?(?: until it pours,?)?"
    said = re.sub(r",? and (?:a spoon of )?hot water(?:, spoon by spoon,)?(?: until it pours,?)?", "", said)
    neat = bool(things) and all(one.food.kind in {"acid", "citrus"} for one in things)  # it dresses nothing
    seasons = "a few drops of oil, a pinch of salt and a grind of pepper" if neat else "a grind of pepper"
    said = re.sub(r"\s+", " ", re.sub(alone, f" with {seasons}", said)).replace(" ,", ",")
    return _DRESSING_OF_ONE.sub(r"\1 with a spoon of hot water and a grind of pepper to a dressing", said)
