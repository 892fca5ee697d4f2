"""The words of a step: a pattern's sentences, and each food's own where it is cooked by itself."""

import re
from collections.abc import Callable, Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.kitchen.finer import has_two_sides
from calmlarder.kitchen.minutes import INSTANT_RICE_MINUTES
from calmlarder.patterns.pattern import CLAUSE, REFERENCE, Pattern, Place, Step, slot_names
from calmlarder.tables.vocabulary import Method

_COOLED = re.compile(r"; (?:rinse|spread|it may still)\b[^.;]*")
_RINSED = re.compile(r"\brinse\b|\bshare out\b")
_SOAKED_MINUTES = 12  # grain that is done so soon is covered with boiling water (couscous, bulgur): common practice
_WRAPS_G_A_MINUTE = 50  # two small tortillas or a large one: common practice, no source
# Fresh masa for tortillas, pressed while others bake: common practice, no source.
_DOUGH, _DOUGH_G_A_MINUTE = "masa-fresh", 25
_FEW_WRAPS = 3  # minutes: what takes longer is warmed two at a time; ours

_BY_ABSORPTION = frozenset({"rice-sushi-dry"})  # it sticks together, and is never drained
_CHEWY = "rice-cakes-korean"  # steamed when they are made, hard once cold: common practice, no source
_INSTANT_MASH = "potato-instant-mash"
_ML_FOR_A_GRAM_OF_FLAKES = 4.5  # as packets say: recalled

_FRAGRANT = " until it smells good"  # said where more than fat and salt is in the pan
_FATS = frozenset({"oil", "butter"})

_AN_EGG = r"(?:\d+ g |all \d+ g |\d+ |the )?(?:(?:duck|goose|quail) )?eggs?(?: \(\d+ g\))?"
_EGGS = rf"{_AN_EGG}(?: and {_AN_EGG})?"  # as a sentence mentions them

_WHOLE_SIGNS = ("steaming hot", "pink is left")  # their last word says other things, too: little liquid left
_STIRRED_IN = frozenset({"herb", "spice", "paste"})
_NOT_TURNED = frozenset({"cheese", "fish", "egg", "bread", "grain"})

Mention = Callable[[Filling], str]


def filled(step: Step, there: Sequence[Filling], granted: Sequence[str], mention: Mention, oil: str) -> str | None:
    """The words with every brace filled from `there`, or None where one stays empty without other words for it."""

    def said_of(clause: re.Match[str]) -> str:
        named = {name for found in REFERENCE.finditer(clause[1]) for name in slot_names(found)}
        return clause[1] if any(one.slot in named for one in there) else ""

    words = CLAUSE.sub(said_of, step.words)
    parts: list[str] = []
    end, fragrant = 0, False
    for found in REFERENCE.finditer(words):
        parts.append(words[end : found.start()])
        end = found.end()
        if found[1]:
            continue
        names = slot_names(found)
        things = [one for name in names for one in there if one.slot == name]
        if things:
            parts.append(and_list([mention(one) for one in things]))
            fragrant = fragrant or any(one.food.kind not in _FATS for one in things)
        elif found[3] is not None:
            parts.append(found[3])
        elif set(names) & set(granted):
            parts.append("the oil" if parts and parts[-1].endswith("the rest of ") else oil)
        else:
            return None
    said = sentence("".join(parts) + words[end:])
    return said if fragrant else said.replace(_FRAGRANT, "")


def sentence(text: str) -> str:
    """Begins with a capital."""
    return text[:1].upper() + text[1:]


def own_words(filling: Filling, method: Method, thing: str) -> str:
    """How a food is cooked by itself, with its minutes, without a full stop."""
    minutes = f"{filling.minutes} minutes"
    if filling.food.id in _BY_ABSORPTION and method == "boil":
        return (
            f"put {thing} into a small pot with 1¼ times its volume of water, bring to the boil, cover, and cook on "
            f"low heat; after about {minutes} in all, the last five off the heat, the water is gone"
        )
    if filling.food.id == _INSTANT_MASH:
        water = _to_nearest(filling.grams * _ML_FOR_A_GRAM_OF_FLAKES)
        return f"stir {thing} into {water} ml boiling water; let it stand for {minutes}, and stir smooth"
    if filling.food.id == _CHEWY and method == "boil":
        thawed = " straight from the freezer" if filling.frozen else ""
        return f"simmer {thing}{thawed} for about {minutes} until soft all through, and drain"
    if filling.food.state in ALREADY_COOKED and filling.frozen:
        place = "in the microwave" if method == "microwave" else "in a covered pot with a few spoons of water"
        return f"warm {thing} from frozen {place} for about {minutes}, breaking it up, until steaming hot"
    if filling.food.state in ALREADY_COOKED and filling.food.kind == "noodle" and method == "boil":
        return f"pour boiling water over {thing}, part the strands, and drain"
    if filling.food.state in ALREADY_COOKED:
        place = "in the microwave" if method == "microwave" else "in a covered pot with a splash of water"
        return f"warm {thing} {place} for about {minutes} until steaming hot"
    if not filling.minutes:
        return f"set out {thing}"
    kind = filling.food.kind
    if method == "stir-fry":
        return f"toast {thing} for about {minutes}" if kind == "bread" else _warmed_wraps(thing, filling)
    if method == "microwave":
        return f"microwave {thing} for about {minutes}, turning once, until a knife slides in"
    if method == "roast":
        return f"roast {thing} for about {minutes}"
    if kind == "egg":
        return f"boil {thing} for {minutes}, until white and yolk are set, then cool in cold water"
    if kind == "rice" and filling.minutes <= INSTANT_RICE_MINUTES:
        return f"pour its own volume of boiling salted water over {thing}; cover for {minutes}, and fork it up"
    if kind == "grain" and filling.minutes <= _SOAKED_MINUTES:
        return f"pour boiling salted water over {thing} to a finger above; cover for {minutes}, and fork it up"
    if _is_thin(filling):
        return f"cover {thing} with boiling water for {minutes} until soft, and drain"
    if kind == "potato":
        return f"boil {thing} for about {minutes}, until a knife slides in, and drain"
    return f"boil {thing} for about {minutes}, and drain"


def wrap_minutes(filling: Filling) -> int:
    """How long wraps take in a dry pan, two at a time where they are many; 0 of what is none."""
    a_minute = _DOUGH_G_A_MINUTE if filling.food.id == _DOUGH else _WRAPS_G_A_MINUTE
    return -(-filling.grams // a_minute) if filling.food.kind == "wrap" else 0


def _warmed_wraps(thing: str, filling: Filling) -> str:
    if filling.food.id == _DOUGH:
        return (
            f"knead {thing} with a few drops of warm water, press balls as large as a walnut flat between two sheets "
            "of plastic, and bake in a hot dry pan, two at a time, a minute a side"
        )
    one_by_one = "two at a time, " if wrap_minutes(filling) > _FEW_WRAPS else ""
    return f"warm {thing} in a dry pan, {one_by_one}half a minute a side"


def rinsed(filling: Filling, tail: str) -> str:
    """What is said behind noodles that wait for the rest: they are rinsed, unless they go into a broth.

    What was cooked before is warmed to be hot: nobody cools it again.
    """
    if filling.food.state in ALREADY_COOKED:
        return _COOLED.sub("", tail)
    waits = filling.food.kind == "noodle"
    return f"; rinse under the hot tap, so that they do not stick{tail}" if waits and not _RINSED.search(tail) else tail


def wants_water(filling: Filling, method: Method) -> bool:
    """Whether a pot of water must boil first."""
    own_water = filling.food.id in _BY_ABSORPTION or filling.food.id == _INSTANT_MASH
    raw = filling.food.state not in ALREADY_COOKED or filling.food.id == _CHEWY
    own_water |= filling.food.kind == "rice" and filling.minutes <= INSTANT_RICE_MINUTES
    cooks = raw and filling.minutes > 0 and not _is_thin(filling) and not own_water
    return method in {"boil", "steam"} and cooks


def _to_nearest(ml: float) -> int:
    """To the nearest 50 ml, at least that."""
    return max(50, round(ml / 50) * 50)


def _is_thin(filling: Filling) -> bool:
    """Thin rice noodles are done in water that has boiled."""
    return filling.food.kind == "noodle" and "vermicelli" in filling.food.name


def egg_words(place: str, thing: str, whole: bool = False) -> str:
    """An egg among other proteins goes in by itself; `whole` says that it is laid on the dish as it is."""
    if whole:
        return f"push aside, crack in {thing}, cover, and fry until white and yolk are set"
    if place == "stew":
        return f"make hollows, crack in {thing}, cover, and leave until white and yolk are set"
    if place == "pot":
        return f"crack in {thing} one by one, and leave them until white and yolk are set"
    return f"crack in {thing}, and stir until white and yolk are set"


def fried_eggs(said: str) -> str:
    """A sentence for tofu, fish or meat that is laid on top, where eggs stand in: they are fried whole."""
    said = re.sub(rf"\b(?:[Ff]ry|[Bb]rown)(?= {_EGGS}(?!\w))", "crack in", said)
    said = re.sub(rf"(crack in {_EGGS}) in (?:it|the (?:same )?pan)\b", r"\1", said)
    said = re.sub(r"(?:,? and fry)? until (?:golden|browned|done)\b", "", said)
    return sentence(re.sub(r",? and (?=lift out)", ", fry until white and yolk are set, and ", said))


def warmed(names: Sequence[str], said: str) -> str:
    """A sentence for tofu, fish or meat, where what stands in was cooked before: it is warmed, not browned."""
    said = re.sub(r"\b(?:Brown|Fry)(?= )", "Warm", said)
    named = rf"(?:{'|'.join(map(re.escape, names))})\b"
    said = re.sub(rf"\b(?:brown|fry)(?= (?:(?:\d+ g|all|the) |{named}))", "warm", said)
    return re.sub(
        r"until (tender and )?(?:lightly )?(?:golden|browned(?: and crumbly)?)\b", r"until \1steaming hot", said
    )


def hot_through(said: str) -> str:
    """A sentence for raw vegetables, where all that comes in was cooked before."""
    return re.sub(
        r"until (?:just )?(?:tender|soft)(?: and (?:golden|saucy|hot all through))?", "until hot through", said
    )


def egg_instead(said: str) -> str:
    """A sentence for tofu, fish or meat, where eggs stand in: they are stirred until set, not browned.

    Where there is made room for them they stay whole, under a lid: a full pan has no heat left for the yolks.
    """
    said = re.sub(rf"\b(?:[Ff]ry|[Bb]rown)(?= {_EGGS}(?!\w))", "scramble", said)
    room = re.sub(rf"\b([Mm]ake room) for ({_EGGS})(?!\w)", r"\1, crack in \2, cover", said)
    room = re.sub(rf"\b([Pp]ush aside), add ({_EGGS})(?!\w)", r"\1, crack in \2, cover", room)
    if room == said:
        room = re.sub(r"and fry until \w+|brown it(?=,)", "and stir until white and yolk are set", said)
    return sentence(re.sub(r"until (?:golden|browned|done)\b", "until white and yolk are set", room))


def says_done(said: str, sign: str) -> bool:
    """Whether a sentence has the sign already: its last word, or the beginning of it (`flakes` for `flaking`)."""
    last = sign.split()[-1]
    for whole in _WHOLE_SIGNS:
        if sign.endswith(whole):
            return whole in said
    return re.search(rf"\b{last[:4]}" if len(last) > len("left") else rf"\b{last}\b", said) is not None


def joins(one: Filling, place: Place, fat: bool, called: str, on: str) -> str:
    """How something joins what is on the heat: stirred in, or turned in the fat of a tray."""
    if place == "pan" and one.food.kind in _STIRRED_IN:
        return f"stir {called} into the pan"
    if place == "oven" and fat and one.food.kind not in _NOT_TURNED and one.food.state != "frozen":
        laid = has_two_sides(one)
        return f"lay {called} {on.replace('to the', 'on the', 1)}" if laid else f"add {called} {on}, and toss"
    if place == "oven" and one.food.kind == "cheese":
        return f"scatter {called} over the tray"
    return f"add {called} {on}"


def with_rest(rest: str, melts: bool, said: str) -> str:
    """A sentence of a pan from which something was lifted out, with the fat that was kept back for what fries now."""
    pour = "Melt" if melts else "Pour"
    return f"{pour} in the rest of the {rest}; {said[:1].lower()}{said[1:]}"


def with_sign(said: str, one: Filling) -> str:
    """A sentence with the sign by which a cook sees that a thing is cooked through, unless it says so already."""
    told = not one.done or says_done(said, one.done)
    return said if told else f"{said.rstrip('.')}. Cook the {one.short} until {one.done}."


def crisps(one: Filling) -> bool:
    """Whether it is done when it is crisp, which it is where it is browned and never in what is wet."""
    return one.done.endswith("crisp")


def laid_on_top(pattern: Pattern, slot: str) -> bool:
    """Whether what is in a slot is lifted out of the pan whole and laid on the dish at the end."""
    steps = [step for step in pattern.steps if slot in step.slots]
    lifted = any("lift out" in step.words for step in steps)
    return lifted and any(step.place == "plate" and re.search(r"\b[Ll]ay\b", step.words) for step in steps)
