"""One step of a recipe with the foods that changed in it by what they are now, in brackets where need be."""

import re
from collections.abc import Sequence

from calmlarder.adapt.called import is_another_one
from calmlarder.adapt.collective import ALL_OF_THEM, SAID_BY_THE_LIST
from calmlarder.adapt.in_words import A_MIXTURE, A_PASTE, A_SAUCE, MADE_WITH_IT, Around, short_name, written_in
from calmlarder.adapt.model import Change
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.near_lines import meant_lines
from calmlarder.adapt.step_ahead import AHEAD_OF_THE_REST
from calmlarder.adapt.step_heat import (
    baked_later,
    boils_long,
    has_its_time,
    is_by_the_packet,
    raw_there,
    raw_when_mashed,
    sentence_at,
    time_told,
    treated,
)
from calmlarder.adapt.step_named_once import LIST_ITEM, out_of_lists
from calmlarder.adapt.step_names import (
    alone_in,
    begins_a_bread,
    beside_what_soaks,
    boiled_in,
    is_a_part,
    is_longer_name,
    late_among,
    of_the_other_line,
    whole_names,
)
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.step_soaked import is_only_soaked, without_soaking
from calmlarder.adapt.step_verbs import is_a_verb, may_be_a_verb
from calmlarder.adapt.things_now import (
    LEFT_OUT,
    Told,
    all_replaced,
    is_oil,
    of_its_line,
    of_one,
    of_several,
    own_of,
    things_now,
)
from calmlarder.and_list import and_list
from calmlarder.matching.names.words import words_of

# A sentence that does nothing but put in what is left out: `Add the snow peas.`
_OWN_STEP = re.compile(
    r"(?:(?<=[.!?] )|(?<=^)|(?<=^\d\. ))(?:Then |Now |Finally,? )?(?:Add|Tuck in|Stir in|Fold in|Mix in|Toss in"
    r"|Throw in|Tip in|Scatter over|Sprinkle over|Top with)(?: in)?"
    r" (?:the |all the |your )?([\w -]{2,40}?) \[left out\]"
    r"(?:(?: to| into) the \w+)?"
    r"(?:,? (?:and|then) (?:toss|cook|stir|fry|stir-fry|soften)\w*[^.!,\d]{0,20}\b[1-5] minutes?)?"
    r"[.!](?=\s|$)"
)
_COOKED_ALREADY = "cooked already"
_BOILED_ALONG = frozenset({"herb", "spice", "oil", "allium"})
_COOKING_WATER = re.compile(r"\b(?:cooking|reserved|soaking|bean) (?:water|liquid)\b", re.IGNORECASE)
_FRUIT, _STOCKS = words_of("fruit"), (words_of("stock"), words_of("broth"))
_WHOSE_STOCK = re.compile(r"^(?:vegetable|chicken|beef|lamb|veal|turkey|fish|bone|meat) ")
_DRUNK_UP = re.compile(
    r"\b(?:drinks?|drunk|soaks?|soaked|takes?|taken|sucks?|sucked) up (?:some |most |all )?(?:of )?(?:the )?$", re.I
)
_AS_IT_IS_NOW = re.compile(
    r"\b(?:hot|warm|cold|[a-z]{3,}(?<!remain)(?:ing|ed)) (?:and \w+ )?$", re.IGNORECASE
)  # how it is by then, which its own word bears
_THE_REST = re.compile(r"\b(?:rest of(?: the)?|remaining) $", re.IGNORECASE)
_WHICH_OF_THEM = re.compile(r"([a-z][a-z ]{3,30}?) about \d+ minutes")
_FROM_TINS = re.compile(r"\b(?:tinned|canned|drained|rinsed)(?:,? (?:and )?(?:drained|rinsed))* $", re.IGNORECASE)
_ALL_OF = re.compile(r"\b(?:all|both|two|three|tins|cans)\b(?: (?:of|the|tins|cans))* $", re.IGNORECASE)
_JUICE = words_of("juice")
_OF_A_FRUIT = re.compile(r"\s+(?:of|from|runs?|and zest)\b", re.IGNORECASE)
_IF_USED = re.compile(r",? \(?if (?:you are |you're )?us(?:ed|ing)(?: (?:it|them|any))?\)?(?=[.,;]|$)", re.IGNORECASE)
# `the chipotle and its sauce`: what came in the tin with it is gone too.
_AND_ITS = re.compile(
    r",?\s+(?:and|with|in|plus|along with) (?:(?:a little|some|all|a splash|a spoonful)(?: of)? )?"
    r"(?:its|their) (?:own )?(?:sauce|juices?|oil|brine|syrup|marinade|vinegar|liquid|liquor)\b",
    re.IGNORECASE,
)
# `salt and pepper`: the spice, whatever peppers are in the list.
_PEPPER = words_of("pepper")
_WITH_SALT = re.compile(
    r"\b(?:salt(?: and|,|, and| &) (?:some |plenty of |a little |freshly |ground |black |lots of )*|ground |black )$",
    re.I,
)
_THEN_SALT = re.compile(r"\s+and salt\b", re.IGNORECASE)
_TOAST = words_of("toast")
_A_DAL = re.compile(r"d[ah]+a?ls?", re.IGNORECASE)
_ONTO_IT = re.compile(
    r"\b(?:over|into|onto|on|through|to|serve|thin|taste|ladle) (?:the |your )?(?:\w+ )?$", re.IGNORECASE
)
_A_POT = re.compile(r" (?:pot|crock|kettle)\b(?! of)", re.IGNORECASE)
_SHORTER = re.compile(r"^leek greens$")
_EACH = re.compile(r"\b(?:each|every|one|another|a|an|per) $", re.IGNORECASE)
_ELSE = re.compile(r" else\b")
_ALL_BUT = re.compile(r"\s+(?:but|except|apart from|bar|save)\b", re.IGNORECASE)
_LABELS = re.compile(r"\s*(?:\d{1,2}[.)] )?(?:for )?(?:the )?$", re.IGNORECASE)
_NUMBER = re.compile(r"\s*\d{1,2}[.)] ")
_GRAINS = frozenset({"grain", "rice"})
_IN_ITS_PLACE = re.compile(r"about \d+ minutes, not \d+$")  # the step's own time makes room for it


def marked_step(step: str, behind: str, told: Told) -> tuple[str, list[str]]:
    """A step with its brackets, and the changed foods that it names; `behind` are the steps that follow."""
    ready = _boiled_for_nothing(step, behind, told)
    if ready is not None:
        return ready
    found: dict[str, None] = {}
    text, done = "", 0
    soaked: tuple[str, bool] | None = None
    for start, end, meant in whole_names(step, spans_in(step, {**told.names, **told.several})):
        if start < done or _is_none_of_them(step, (start, end), meant, told):
            continue
        told.here.clear()
        told.here.update(meant_lines((sentence_at(step, end), step), told.near, told.names) if told.near else {})
        several = words_of(step[start:end]) in told.several and len(meant) > 1
        if several and (others := _ELSE.match(step, end)) is not None:
            end = others.end()  # `everything else`
        if several and _ALL_BUT.match(step, end):
            continue  # `everything but the paprika`, whatever is in the list now
        if several:
            now, foods = _several_now(step[start:end], meant, told)
        else:
            now, foods = _one_now(step, (start, end), meant, step[done:end], told)
        found |= dict.fromkeys(foods)
        if not now or (foods and MADE_WITH_IT.match(step, end) and set(foods) <= told.marked):
            made = _made_with_it(step, end, now, foods, told)
            if made is not None:
                text, done = f"{text}{step[done:start]}{made[0]}", made[1]
            continue
        how = ""
        all_told = several and words_of(_ELSE.sub("", step[start:end]))[-1] in ALL_OF_THEM
        if foods and not all_told and not (several and words_of(step[start:end])[-1] in SAID_BY_THE_LIST):
            how, alone = _how(step, (start, end), foods[0], (text, behind, step[done:end]), told)
            soaked = alone or soaked
        known = bool(foods) and set(foods) <= told.marked
        told.marked.update(foods)
        if not how and short_name(now).casefold() == step[start:end].casefold():
            continue  # `the stock`, which is called so still
        its = _AND_ITS.match(step, end) if not several and _is_another_kind(foods, told) else None
        behind_it = its.end() if its else end
        around = Around(step[done:start], step[start:end], step[behind_it:])
        new = None
        if foods and now != LEFT_OUT and not all_told and not (several and (" for " in now or LEFT_OUT in now)):
            new = written_in(around, now, how, is_oil(foods[0], told))
        same = words_of(step[start:end])[-1:] == words_of(short_name(now))[-1:]
        if not how and known and same and _AS_IT_IS_NOW.search(step[done:start]):
            continue  # `the poaching milk`, of whatever kind
        if same and _LABELS.match(step[done:start]) and step.startswith(":", end):
            continue  # `Yoghurt: mix all of it`, of whatever kind
        if not how and same and _DRUNK_UP.search(step[done:start]):
            continue  # `so the oats drink up some milk`, of whatever kind
        if new is None and now.startswith("the rest of ") and _THE_REST.search(step[done:start]):
            continue  # of what was mixed by then
        if new is None and not how and same and _EACH.search(step[done:start]):
            continue  # `each wrapper` is one of the new ones
        gone = f"{step[done:start]}{LIST_ITEM}{step[start:end]} [{now}]{LIST_ITEM}"
        if now == LEFT_OUT and (used := _IF_USED.match(step, end)) is not None:
            end = behind_it = used.end()
        text += new.text if new else gone if now == LEFT_OUT and not how else f"{step[done:end]} [{now}{how}]"
        done = behind_it + (new.taken if new else 0)
    whole = out_of_lists(text + step[done:])
    if soaked is not None:
        whole = without_soaking(whole, *soaked, lambda sentence: beside_what_soaks(sentence, soaked[0], told))
    return _OWN_STEP.sub(r"[No \1: left out.]", whole), list(found)


def _is_none_of_them(step: str, span: tuple[int, int], meant: frozenset[str], told: Told) -> bool:
    """Whether a name in a step means another thing than what the list has."""
    start, end = span
    words = words_of(step[start:end])
    if is_another_one(words, step[:start]) or of_the_other_line(step[:start], meant, told):
        return True
    if may_be_a_verb(step, span):
        return is_a_verb(step[start:end]) or is_longer_name(step, span, meant, told.tables)
    if begins_a_bread(step, span, meant, told.tables) or is_a_part(step, span, told.headings):
        return True
    if words == _PEPPER and not step[:end].endswith("s"):
        salted = _WITH_SALT.search(step[max(0, start - 40) : start]) or _THEN_SALT.match(step, end)
        if salted and not any(told.tables.food_by_id[food].kind == "spice" for food in meant & set(told.changed)):
            return True
    if _A_DAL.fullmatch(step[start:end]) and meant & told.marked and _ONTO_IT.search(step[:start]):
        return True  # the dish, once it is in its pot
    if words == _TOAST and any(_is_toasted(told.changed[food]) for food in meant & set(told.changed)):
        return True  # of whatever bread
    if _A_POT.match(step, end):
        return True  # the bean pot is one whatever is in it
    if words == _JUICE and (step[start:end].endswith("s") or _OF_A_FRUIT.match(step, end)):
        return True  # what runs out of the meat, or of the lemon
    return is_longer_name(step, span, meant, told.tables)


def _is_toasted(change: Change) -> bool:
    return bool(change.lines) and all("toasted" in line for line in change.lines)


def _several_now(name: str, meant: frozenset[str], told: Told) -> tuple[str, list[str]]:
    """What a word for several foods (`the nuts`, `everything else`) stands for now, and which of them changed."""
    for which in (meant, meant - told.direct):
        if (pulses := _all_the_pulses(which, told, which < meant)) is not None:
            return pulses
    now, foods = of_several(meant - told.direct, meant, told)
    last = words_of(_ELSE.sub("", name))[-1]
    if last in ALL_OF_THEM or (last in SAID_BY_THE_LIST and _is_swapped(foods, told)):
        now = late_among(foods, told)
    elif _are_of_one_line(foods, told) and all(_is_called_so(food, last, told) for food in foods):
        now = late_among(foods, told)  # `all of the mushrooms` are those of the list, whatever their sort
    return now, foods


def _all_the_pulses(meant: frozenset[str], told: Told, some: bool = False) -> tuple[str, list[str]] | None:
    """All that `the beans` of several lines are now, those that stay and what takes the others' place; or None.

    `some` says that others of them are named elsewhere: of these all may be something else.
    """
    rows = told.tables.food_by_id
    if len(meant) < 2 or any(rows[food].kind != "pulse" or rows[food].state == "dry" for food in meant):
        return None
    swapped = [food for food in sorted(meant) if food in told.changed and told.changed[food].change == "swap"]
    several_lines = any(len(told.each.get(food, ())) > 1 for food in meant)
    if not swapped or (len(swapped) == len(meant) and not some) or several_lines:
        return None
    whole = {one.food for food in swapped for one in told.changed[food].to}
    names = [_own_name(food, told) for food in sorted(meant - set(swapped))]
    names += [short_name(now) for food in swapped for now in things_now(told.changed[food], "", told, whole)]
    return and_list([*dict.fromkeys(names)]), swapped


def _own_name(food: str, told: Told) -> str:
    """What the list calls a pulse that stays: `borlotti beans`."""
    change = told.changed.get(food)
    line = bare(change.lines[0]) if change is not None and change.lines else told.tables.food_by_id[food].name
    return short_name(line)


def _are_of_one_line(foods: Sequence[str], told: Told) -> bool:
    return len(foods) > 1 and len({told.changed[food].ingredient for food in foods}) == 1


def _is_called_so(food: str, word: str, told: Told) -> bool:
    """Whether all that takes a food's place is called by a word that several foods share, as it was."""
    change = told.changed[food]
    names = [told.tables.food_by_id[one.food].name for one in change.to]
    return change.change == "swap" and bool(names) and all(words_of(name)[-1:] == (word,) for name in names)


def _one_now(step: str, span: tuple[int, int], meant: frozenset[str], before: str, told: Told) -> tuple[str, list[str]]:
    """What the name of one food stands for now, and which changed; `before` is the step since the last change.

    A plural is no spice: `peppers` beside black pepper are the vegetable.
    """
    start, end = span
    if step[:end].endswith("s") and len(words_of(step[start:end])) == 1:
        meant = frozenset(one for one in meant if told.tables.food_by_id[one].kind != "spice")
    if len(meant) > 1 and _FROM_TINS.search(step[max(0, start - 20) : start]):  # `the tinned beans` are no green ones
        meant = frozenset(one for one in meant if "canned" in told.tables.food_by_id[one].state) or meant
    others = meant - told.by_itself
    kinds = {told.tables.food_by_id[one].kind for one in meant - others}
    unlike = kinds.isdisjoint(told.tables.food_by_id[one].kind for one in others)
    one_left = len(others) == 1 < len(meant)
    if one_left and (unlike or (not step[:end].endswith("s") and all_replaced(meant, told))):
        meant = others  # `the onion`, where the red one is named so; `the apples` beside their sauce
    foods = [food for food in sorted(meant) if food in told.changed][:1]
    if all_replaced(meant, told):  # `the mushrooms`, of which two kinds stood in one line
        now, foods = of_several(meant, meant, told)
    else:
        now = of_one(foods[0], meant, before, told) if foods else own_of(meant, told)
    which = meant if _ALL_OF.search(step[max(0, start - 30) : start]) else meant - told.by_itself
    if not now and foods and (pulses := _all_the_pulses(which, told)) is not None:
        return pulses
    if words_of(step[start:end]) == _FRUIT and foods and _is_swapped(foods, told):
        now = ""  # rhubarb and sugar are the fruit
    if words_of(step[start:end]) in _STOCKS:
        now = _WHOSE_STOCK.sub("", now)  # the step's own word holds
        if foods and foods[0] in told.marked and short_name(now) in {"stock", "broth"}:
            now = step[start:end]  # `the hot broth`, once it is in the pot
    return now, foods


def _made_with_it(step: str, end: int, now: str, foods: Sequence[str], told: Told) -> tuple[str, int] | None:
    """What a mixture, a sauce or a paste is called after now, and where the step goes on; None where it is none."""
    if not foods:
        return None
    if now == LEFT_OUT and A_MIXTURE.match(step, end):
        return "", end + 1  # `the mixture`
    if now and A_MIXTURE.match(step, end) and now.endswith(" and sugar"):
        return now.removesuffix(" and sugar"), end  # `the rhubarb filling`
    if now and A_MIXTURE.match(step, end) and " and " not in now and not now[:1].isdigit():
        return _SHORTER.sub("leek", short_name(now)).removesuffix("s"), end  # `the leek mixture`
    if (sauce := A_SAUCE.match(step, end)) and not is_oil(foods[0], told) and told.changed[foods[0]].change == "swap":
        single = re.sub(r"^leek greens$", "leek", short_name(now)).removesuffix("s")
        return "" if " and " in now or now[:1].isdigit() else f"{single} ", sauce.end()  # `the honey sauce`
    if now and A_PASTE.match(step, end) and " and " not in now and not is_oil(foods[0], told):
        return short_name(now).removesuffix("s"), end  # `the leek green paste`
    return None


def _is_swapped(foods: Sequence[str], told: Told) -> bool:
    """Whether each of them has something in its place, so that the word still means what the list has."""
    return all(told.changed[food].change == "swap" for food in foods)


def _is_another_kind(foods: Sequence[str], told: Told) -> bool:
    """Whether what takes a food's place is nothing of its kind, or several things; no pulse, told of elsewhere."""
    kinds = {told.tables.food_by_id[food].kind for food in foods}
    to = [told.tables.food_by_id[one.food].kind for food in foods for one in told.changed[food].to]
    another = len(to) > 1 or kinds.isdisjoint(to)
    return bool(foods) and _is_swapped(foods, told) and another and "pulse" not in kinds


def _boiled_for_nothing(step: str, behind: str, told: Told) -> tuple[str, list[str]] | None:
    """What takes the place of a step that only boils a dry pulse for long, where tins take its place."""
    named = {food for _, _, meant in spans_in(step, told.names) for food in meant}
    ready = [food for food in named & set(told.changed) if told.changed[food].heat.startswith(_COOKED_ALREADY)]
    others = {told.tables.food_by_id[food].kind for food in named if food not in ready}
    if not others <= _BOILED_ALONG:
        told.joined.update(ready)
        return None
    if len(ready) != 1 or ready[0] in told.joined or not boils_long(step):
        return None
    food = ready[0]
    told.marked.add(food)
    now = short_name(and_list(things_now(told.changed[food], "", told, (food,))))
    water = " Where a later step takes cooking water, take fresh." if _COOKING_WATER.search(f"{step} {behind}") else ""
    number = _NUMBER.match(step)
    head = number[0] if number else ""
    return f"{head}Drain and rinse the {now}: cooked already, so nothing is soaked or boiled here.{water}", [food]


def _how(
    step: str, span: tuple[int, int], food: str, texts: tuple[str, str, str], told: Told
) -> tuple[str, tuple[str, bool] | None]:
    """How a step treats what a food is now, and where it only soaks it what to do instead, and whether that is all.

    `texts` are the step so far, the steps behind it, and what stands before the name since the last change.
    """
    so_far, behind, before = texts
    end = span[1]
    change = of_its_line(food, before, told)
    timed = food in told.timed
    others = not alone_in(step, end, food, told)
    late = "" if timed else time_told(step, end, change, others)
    grain = all(told.tables.food_by_id[one.food].kind in _GRAINS for one in change.to)
    if grain and not timed and (baked := baked_later(step, end, change, behind.partition("\n")[0])):
        late = baked
        told.soaked.add(food)  # the step says how long
    if not timed and not late and (minutes := raw_there(step, behind, change)):
        which = _WHICH_OF_THEM.match(change.heat)
        named = f"{which[1]} " if which else ""
        late = f": {named}about {minutes} minutes, so {minutes} minutes {AHEAD_OF_THE_REST}"
    soaked = None
    if is_only_soaked(step, end, change, behind.partition("\n")[0]) and not timed:
        soaked = (boiled_in(step, change.not_soaked, told), not others)
        how, late = "", change.not_soaked
        told.soaked.add(food)
    else:
        how = late or treated(step, end, change, (so_far, behind), told.tables)
    ahead = AHEAD_OF_THE_REST in late
    if food not in told.marked and not ahead and (raw := raw_when_mashed(step, end, change, told.tables)):
        how, late = raw, ""  # its time is told where it goes in
    if is_by_the_packet(step, end):
        told.timed.add(food)
    if has_its_time(step, end, change):
        told.timed.add(food)
        told.soaked.add(food)
    if AHEAD_OF_THE_REST in late:
        told.soaked.add(food)
        if len(change.to) == 1 and how == late:
            how = late = f": {short_name(told.tables.food_by_id[change.to[0].food].name)} {late.lstrip(': ')}"
    if change.first and food not in told.marked:
        how = f"{how}; {change.first}" if how else f", {change.first}"
    if late:
        told.timed.add(food)
        if _IN_ITS_PLACE.search(late):
            told.soaked.add(food)
    return how, soaked
