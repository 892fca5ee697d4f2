"""One step of a recipe with the foods that changed in it by what they are now, in brackets where need be."""

import re
from collections.abc import Sequence

from calmlarder.adapt.called import is_another_one
from calmlarder.adapt.collective import ALL_OF_THEM, SAID_BY_THE_LIST
from calmlarder.adapt.in_words import MADE_WITH_IT, Around, short_name, written_in
from calmlarder.adapt.model import Change
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.near_lines import meant_lines
from calmlarder.adapt.sentences import sentence_at
from calmlarder.adapt.step_ahead import AHEAD_OF_THE_REST
from calmlarder.adapt.step_heat import raw_when_mashed, treated
from calmlarder.adapt.step_minutes import baked_later, boils_long, has_its_time, is_by_the_packet, raw_there, time_told
from calmlarder.adapt.step_named_now import ELSE, is_swapped, made_with_it, one_now, several_now
from calmlarder.adapt.step_named_once import LIST_ITEM, out_of_lists
from calmlarder.adapt.step_names import (
    alone_in,
    begins_a_bread,
    beside_what_soaks,
    boiled_in,
    is_a_part,
    is_longer_name,
    of_the_other_line,
    whole_names,
)
from calmlarder.adapt.step_soaked import is_only_soaked, without_soaking
from calmlarder.adapt.step_verbs import is_a_verb, may_be_a_verb
from calmlarder.adapt.things_now import LEFT_OUT, Told, is_oil, of_its_line, things_now
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
_DRUNK_UP = re.compile(
    r"\b(?:drinks?|drunk|soaks?|soaked|takes?|taken|sucks?|sucked) up (?:some |most |all )?(?:of )?(?:the )?$", re.I
)
_AS_IT_IS_NOW = re.compile(
    r"\b(?:hot|warm|cold|[a-z]{3,}(?<!remain)(?:ing|ed)) (?:and \w+ )?$", re.IGNORECASE
)  # how it is by then, which its own word bears
_THE_REST = re.compile(r"\b(?:rest of(?: the)?|remaining) $", re.IGNORECASE)
_WHICH_OF_THEM = re.compile(r"([a-z][a-z ]{3,30}?) about \d+ minutes")
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
_EACH = re.compile(r"\b(?:each|every|one|another|a|an|per) $", re.IGNORECASE)
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
        if several and (others := ELSE.match(step, end)) is not None:
            end = others.end()  # `everything else`
        if several and _ALL_BUT.match(step, end):
            continue  # `everything but the paprika`, whatever is in the list now
        if several:
            now, foods = several_now(step[start:end], meant, told)
        else:
            now, foods = one_now(step, (start, end), meant, step[done:end], told)
        found |= dict.fromkeys(foods)
        if not now or (foods and MADE_WITH_IT.match(step, end) and set(foods) <= told.marked):
            made = made_with_it(step, end, now, foods, told)
            if made is not None:
                text, done = f"{text}{step[done:start]}{made[0]}", made[1]
            continue
        how = ""
        all_told = several and words_of(ELSE.sub("", step[start:end]))[-1] in ALL_OF_THEM
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


def _is_another_kind(foods: Sequence[str], told: Told) -> bool:
    """Whether what takes a food's place is nothing of its kind, or several things; no pulse, told of elsewhere."""
    kinds = {told.tables.food_by_id[food].kind for food in foods}
    to = [told.tables.food_by_id[one.food].kind for food in foods for one in told.changed[food].to]
    another = len(to) > 1 or kinds.isdisjoint(to)
    return bool(foods) and is_swapped(foods, told) and another and "pulse" not in kinds


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
