"""The changed steps read over once more as sentences: small passes, each with one idea, in the order of this list."""

import re
from collections.abc import Callable, Sequence

from calmlarder.adapt.in_words import VERBS_NEXT
from calmlarder.adapt.step_boiled_once import boiled_once
from calmlarder.adapt.step_filled import without_lids
from calmlarder.adapt.step_fruit_cues import seen_to_be_done
from calmlarder.adapt.step_greens_cues import without_signs_of_an_onion
from calmlarder.adapt.step_in_order import told_in_order
from calmlarder.adapt.step_oil_cues import browned_without_it, without_signs_of_a_clove
from calmlarder.adapt.step_plain_names import with_plain_names
from calmlarder.adapt.step_rest_of_it import rest_of_it
from calmlarder.adapt.step_threaded import fried_beside_skewers

# `Add the okra [left out], and the greens.`: the other thing of the pair still goes in.
_FIRST_OF_TWO = re.compile(
    r"\b(?P<verb>(?:add|stir in|tip in|fold in|mix in|toss in|throw in|put in|scatter|sprinkle|top with|with))"
    r" (?:the |your |all the )?[a-z][a-z -]{2,30} \[left out\](?:,? (?:and|with|along with|plus) |, )"
    rf"(?!{VERBS_NEXT})(?=(?:the |your |half |all |some |a |\d|[a-z-]+(?: [a-z-]+)?(?:[.,;]|$| to\b| and\b)))",
    re.IGNORECASE,
)
# `Scatter the leek greens over. Turn the sausages`: what lies there is turned before anything is strewn over it.
_TURNED_FIRST = re.compile(
    r"(?P<scatter>(?:(?<=[.!] )|(?<=^))Scatter (?:the |\d+ g of the )[a-z -]{3,40} over\.) "
    r"(?P<first>(?:Turn|Toss|Flip|Shake|Stir|Give)\b[^.;,]*?)"
    r"(?:, (?:then )?|,? and (?:then )?|\.(?: |$))(?P<next>[a-z])?"
)
# `drain the carrots well and let it steam dry`
_MANY = (
    r"(?:carrots|parsnips|potatoes|greens|green beans|courgettes|strawberries|oranges|tomatoes|walnuts|peanuts|turnips"
    r"|radishes|mushrooms|lentils|chickpeas)"
)
_VESSEL = r"(?:pan|pot|bowl|dish|tin|tray|lid|sauce|mixture|dough|oven|colander|milk|stock|cream)"
_IT_OF_SEVERAL = re.compile(
    rf"(?P<many>\b{_MANY}\b(?:(?! {_VESSEL}\b)[^.;\[\]])*?\b(?:let|drain|toss|leave|mash|rinse|drop|lift)) it\b"
    r"(?! (?:all|boil|come|bubble|simmer|reduce))",
    re.IGNORECASE,
)
_THE_ONE = re.compile(rf"\bthe (?!{_MANY}|leek|spring|green)[a-z]+", re.IGNORECASE)
# `the garlic [garlic-infused oil] yoghurt` tastes of it still; `the onion [leek greens] gravy` is named anew.
_MADE_OF_IT = (
    r"(?:yogh?urts?|mayo(?:nnaise)?|butter|breads?|toasts?|cream|crumbs|aioli|rice|potatoes|sauce|dressing|dip|gravy|jam"
    r"|relish|topping|filling|base|broth|masala|tarka|tadka|bhuna|soup|stew|curry|mash|salad|slaw|salsa|crema|glaze|marinade|crumble|pie|layer|compote|puree|pur[eé]e"
    r"|ragu|cake|muffins?|chips|crisps|rings|fritters|burgers?|patties|vinegar|water|skewers)"
)
_TASTES_OF_IT = re.compile(
    rf"\b(?:garlic \[(?:[\d/ ]+ (?:tsp|tbsp) of the )?garlic-infused oil(?::[^\]]*)?\]|garlic-infused oil)"
    rf"(?= {_MADE_OF_IT}\b)",
    re.I,
)
_NO_NAME = r"(?!left|only|about|stir|just|not\b|boil|no\b)"
_NAMED_ANEW = re.compile(
    rf"\b(?:(?:red|white|brown|spring) )?[a-z]+ \[{_NO_NAME}(?P<now>[a-z][a-z -]{{2,30}})\](?= {_MADE_OF_IT}\b)"
)


# `the potatoes with a splash of their liquid`, in the place of tinned beans; `oyster mushrooms, their liquid, stock`
_DRY = r"(?:potatoes|carrots|pumpkin|squash|quinoa|rice|mushrooms|aubergine|tofu|courgettes?|parsnips)"
_SPLASH = re.compile(
    rf"(?P<dry>\b{_DRY}\b[^.;\[\]]*?\b(?:splash|ladle(?:ful)?|little|bit|cup(?:ful)?|spoon\w*|\d+ ?ml) of )"
    r"(?:their|its|the) (?:own |soaking |reserved )?(?:liquid|liquor|juices?|brine)\b",
    re.IGNORECASE,
)
_LIQUID = re.compile(
    rf"(?P<dry>\b{_DRY}),? (?:(?:and|with) )?(?:all )?(?:of )?(?:their|its) (?:strained |soaking |own )*"
    r"(?:liquid|liquor|brine)(?=,| and\b|[.;]| to\b| into\b)",
    re.IGNORECASE,
)
_WARM_YOGHURT = re.compile(
    r"(?P<yoghurt>\byoghurt), (?:warmed|hot|warm|heated)(?: (?:up|through|gently))?(?=[.;,]|$)", re.I
)


def read_over(steps: Sequence[str]) -> list[str]:
    """The changed steps, each in the words of a cook."""
    told = without_lids(boiled_once(browned_without_it(_whole_grain_once(steps))))
    for one in _PASSES:
        told = [one(step) for step in told]
    everywhere = "\n".join(told)
    return rest_of_it([without_signs_of_an_onion(step, everywhere) for step in told])


_WHOLE = re.compile(
    r"(?: and|,) (?:the )?(?P<name>[a-z][a-z -]{2,30}?) \[stir (?:dry )?(?P=name) in whole, mash the rest\]"
)


def _whole_grain_once(steps: Sequence[str]) -> list[str]:
    """The steps, of which none mashes what an earlier one stirs in at the end."""
    told = list(steps)
    for place, step in enumerate(told):
        found = _WHOLE.search(step)
        if found is not None and any(f"stir in the {found['name']}" in one for one in told[:place]):
            told[place] = f"{step[: found.start()]}{step[found.end() :]}"
    return told


def _the_other_alone(step: str) -> str:
    return _FIRST_OF_TWO.sub(r"\g<verb> ", step)


def _made_of_it(step: str) -> str:
    """A thing that is called by what is in it, by what is in it now."""
    step = _TASTES_OF_IT.sub("garlic", step)
    return _NAMED_ANEW.sub(lambda one: re.sub(r"^leek greens$", "leek", one["now"]).removesuffix("s"), step)


def _without_its_liquid(step: str) -> str:
    """What has no liquid of its own goes in with water, or alone; yoghurt curdles when it is heated."""
    step = _LIQUID.sub(r"\g<dry>", _SPLASH.sub(r"\g<dry>water", step))
    return _WARM_YOGHURT.sub(r"\g<yoghurt>", step)


def _turned_first(step: str) -> str:
    found = _TURNED_FIRST.search(step)
    if found is None:
        return step
    rest = f"{(found['next'] or '').upper()}{step[found.end() :]}"
    return f"{step[: found.start()]}{found['first']}. {found['scatter']} {rest}".rstrip()


def _them(step: str) -> str:
    """Pronouns of one thing that is several now, where the sentence names nothing else that `it` could be."""

    def several(found: re.Match[str]) -> str:
        return found[0] if _THE_ONE.search(found["many"]) else f"{found['many']} them"

    return _IT_OF_SEVERAL.sub(several, step)


# `Repeat with the rice, spring onion greens [only a minute] and herbs`: nothing is fried there.
_A_MINUTE = re.compile(r" \[only a minute(?:, off the heat)?\]")
_FRIED = re.compile(
    r"\b(?:fry|fried|frying|saut\w+|soften\w*|cook\w*|brown\w*|sweat\w*|sizzl\w*|heat\w*|grill\w*|roast\w*|bake\w*"
    r"|simmer\w*|boil\w*|toast\w*|minutes?|until|golden)\b",
    re.IGNORECASE,
)


def _no_minute_where_nothing_fries(step: str) -> str:
    """A step without how long green tops are fried, where none of its sentences cooks."""
    if _A_MINUTE.search(step) is None or _FRIED.search(_A_MINUTE.sub("", step)):
        return step
    return _A_MINUTE.sub("", step)


_PASSES: tuple[Callable[[str], str], ...] = (
    _the_other_alone,
    _no_minute_where_nothing_fries,
    fried_beside_skewers,
    with_plain_names,
    _made_of_it,
    _without_its_liquid,
    _turned_first,
    told_in_order,
    without_signs_of_a_clove,
    seen_to_be_done,
    _them,
)
