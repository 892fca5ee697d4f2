"""Steps of a recipe that name a food which was swapped, left out or made less.

Each name that means one changed food alone (not `onion`, where a spring onion stays) makes room for what it is now;
where the sentence would not bear that (`onion rings`), it stands in brackets behind the name. Brackets also say how
much of it, how long, and what is not done to it; notes say how to treat it. A word for several foods (`the nuts`) has
in brackets what takes the place of those that no step names otherwise.
"""

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.adapt.called import called_by_lines, is_another_one, single_words
from calmlarder.adapt.changed_lines import Part, joined_lines
from calmlarder.adapt.collective import ALL_OF_THEM, SAID_BY_THE_LIST, animals_in, collective_names
from calmlarder.adapt.dropped import steps_without_others
from calmlarder.adapt.in_words import A_MIXTURE, A_PASTE, A_SAUCE, MADE_WITH_IT, Around, short_name, written_in
from calmlarder.adapt.model import Adapted, Amount, Change
from calmlarder.adapt.names import names_as_cut, spans_in, with_last_words
from calmlarder.adapt.step_blended import greens_out_of_a_red_base
from calmlarder.adapt.step_garlic import oil_with_the_fat
from calmlarder.adapt.step_heat import (
    boils_long,
    is_only_soaked,
    on_time,
    time_told,
    treated,
    without_soaking,
)
from calmlarder.adapt.step_liquor import without_soaked_mushrooms
from calmlarder.adapt.step_named_once import LIST_ITEM, named_once, oil_shared_out, out_of_lists
from calmlarder.adapt.step_names import (
    alone_in,
    boiled_in,
    introduced_parts,
    is_longer_name,
    late_among,
    of_the_other_line,
    turns_golden,
    whole_names,
)
from calmlarder.adapt.step_notes import (
    filling_notes,
    liquid_notes,
    note,
    of_the_oil,
    oil_left,
    parts_of_how,
    told_where_used,
)
from calmlarder.adapt.step_numbers import numbered, within
from calmlarder.adapt.step_oil_once import oil_once
from calmlarder.adapt.step_shares import all_in_one_step, in_one_line, own_amounts, twice
from calmlarder.adapt.step_smoothed import not_charred, oil_only_later, smoothed
from calmlarder.adapt.step_times import in_their_own_time
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
from calmlarder.tables.book import Tables

# A sentence that does nothing but put in what is left out: `Add the snow peas.`
_OWN_STEP = re.compile(
    r"(?:(?<=[.!?] )|(?<=^)|(?<=^\d\. ))(?:Then |Now |Finally,? )?(?:Add|Stir in|Fold in|Mix in|Toss in|Throw in|Tip in"
    r"|Scatter over|Sprinkle over|Top with)(?: in)? (?:the |all the |your )?([\w -]{2,40}?) \[left out\]"
    r"(?:(?: to| into) the \w+)?"
    r"(?:,? (?:and|then) (?:toss|cook|stir|fry|stir-fry|soften)\w*[^.!,\d]{0,20}\b[1-5] minutes?)?"
    r"[.!](?=\s|$)"
)
_OIL = re.compile(r"\boils?\b", re.IGNORECASE)
_COOKED_ALREADY = "cooked already"
_BOILED_ALONG = frozenset({"herb", "spice", "oil", "allium"})
_COOKING_WATER = re.compile(r"\b(?:cooking|reserved|soaking|bean) (?:water|liquid)\b", re.IGNORECASE)
_HEADS = "brassica"
_FLORET = re.compile(r"\bfloret(s)?\b")
_FRUIT, _STOCKS = words_of("fruit"), (words_of("stock"), words_of("broth"))
_WHOSE_STOCK = re.compile(r"^(?:vegetable|chicken|beef|lamb|veal|turkey|fish|bone|meat) ")
# The first letter of a sentence, behind its number where it has one.
_BEGUN_SMALL = re.compile(r"(?:(?<=^)|(?<=^\d[.)] )|(?<=[a-z\])\d][.!?] ))[a-z]")
_DRUNK_UP = re.compile(
    r"\b(?:drinks?|drunk|soaks?|soaked|takes?|taken|sucks?|sucked) up (?:some |most |all )?(?:of )?(?:the )?$", re.I
)
_JUICE = words_of("juice")
_OF_A_FRUIT = re.compile(r"\s+(?:of|from|runs?|and zest)\b", re.IGNORECASE)
_EACH = re.compile(r"\b(?:each|every|one|another|a|an|per) $", re.IGNORECASE)
_ELSE = re.compile(r" else\b")
_ALL_BUT = re.compile(r"\s+(?:but|except|apart from|bar|save)\b", re.IGNORECASE)
_NUMBER = re.compile(r"\s*\d{1,2}[.)] ")
_BOILED_FOR = re.compile(
    r"cook .* for about \d+ minutes, in as much|.*, about \d+ minutes: begin earlier$", re.IGNORECASE
)
_IN_ITS_PLACE = re.compile(r"about \d+ minutes, not \d+$")  # the step's own time makes room for it


class Steps(NamedTuple):
    """The steps with what changed in brackets, and the notes behind them."""

    steps: tuple[str, ...]
    notes: tuple[str, ...]


def steps_after(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Steps:
    """The steps as the changed recipe is cooked, with a note for each food that changed."""
    steps = steps_without_others(steps, [part.read for part in parts], adapted, tables)
    adapted = adapted.model_copy(update={"changes": tuple(one for one in adapted.changes if one.change != "only")})
    changed = {
        parts[change.place].read.food or "": change for change in adapted.changes if change.place is not None
    }  # fmt: skip
    if not changed:
        return Steps(steps, ())
    known = {part.read.food for part in parts if part.read.food}
    names = {
        **animals_in(parts, tables),
        **names_as_cut(
            [(one.read.food, one.read.text) for one in parts if one.read.food in known and one.read.food], tables
        ),
        **single_words(parts),
        **with_last_words(known, tables),
        **called_by_lines(parts),
    }
    changed = {food: on_time(change, steps, food, names) for food, change in changed.items()}
    shared = in_one_line(parts, adapted, tables)
    if any(part.read.outcome == "heading" for part in parts):
        shared &= {adapted.amounts[place].food for place in joined_lines(parts, adapted, tables)}
    each: dict[str, list[Change]] = {}
    for change in adapted.changes:
        if change.place is not None:
            each.setdefault(parts[change.place].read.food or "", []).append(change)
    places = {change.place for change in adapted.changes}
    staying: dict[str, list[str]] = {}
    for place, part in enumerate(parts):
        if place not in places and part.read.food in changed:
            staying.setdefault(part.read.food, []).append(part.read.text)
    several = collective_names(parts, names, tables)
    alone = {words: meant for words, meant in names.items() if words not in several}
    told = Told(
        names, several, changed, shared, own_amounts(adapted, shared, tables), tables,
        {food for step in within(steps) for _, _, meant in spans_in(step, alone) for food in meant},
        each, staying, _headings(parts), introduced=introduced_parts(steps),
    )  # fmt: skip
    named: dict[str, list[int]] = {}
    texts: dict[str, list[str]] = {}
    marked: list[str] = []
    for place, ((number, step), _) in enumerate(zip(numbered(steps), within(steps), strict=False)):
        text, foods = _marked(step, "\n".join(steps[place + 1 :]), told)
        marked.append(text)
        for food in foods:
            named.setdefault(food, []).append(number)
            texts.setdefault(food, []).append(step)
    marked = without_soaked_mushrooms(steps, marked, parts, adapted, tables)
    marked = greens_out_of_a_red_base(oil_with_the_fat(marked, _left_of_the_oil(adapted, told)))
    marked = [in_their_own_time(all_in_one_step(text), told) for text in marked]
    marked = [smoothed(text, lambda between: turns_golden(between, told)) for text in oil_only_later(marked)]
    marked = oil_shared_out(named_once([oil_once(not_charred(text)) for text in marked]))
    marked = [_begun_large(text, old) for text, old in zip(marked, steps, strict=False)]
    if _no_florets_are_left(parts, told):
        marked = [_FLORET.sub(lambda one: "pieces" if one[1] else "piece", text) for text in marked]
    notes = _notes(steps, parts, adapted, told, (named, texts))
    if len(marked) < len(steps):
        notes.append(f"Steps from {len(marked) + 1} on were not looked at.")
    return Steps((*marked, *steps[len(marked) :]), tuple(notes))


def _begun_large(text: str, old: str) -> str:
    """A changed step whose sentences begin with a capital, where all of the old one did."""
    if _BEGUN_SMALL.search(old):
        return text
    return _BEGUN_SMALL.sub(lambda one: one[0].upper(), text)


def _headings(parts: Sequence[Part]) -> dict[str, str]:
    """The heading above each line, where there is one."""
    last, found = "", {}
    for part in parts:
        last = part.read.text if part.read.outcome == "heading" else last
        found[part.read.text] = last
    return found


def _no_florets_are_left(parts: Sequence[Part], told: Told) -> bool:
    """Whether all that came in florets is something else now."""
    heads = {
        part.read.food for part in parts if part.read.food and told.tables.food_by_id[part.read.food].kind == _HEADS
    }
    to = {one.food for food in heads & set(told.changed) for one in told.changed[food].to}
    gone = all(food in told.changed and told.changed[food].change == "swap" for food in heads)
    return bool(heads) and gone and not any(told.tables.food_by_id[food].kind == _HEADS for food in to)


def _notes(
    steps: Sequence[str],
    parts: Sequence[Part],
    adapted: Adapted,
    told: Told,
    named: tuple[Mapping[str, list[int]], Mapping[str, list[str]]],
) -> list[str]:
    numbers, texts = named
    tables = told.tables
    listed = {part.read.food or "" for part in parts} | twice(adapted)
    oil_there = _own_oils(adapted, told)
    everywhere = " ".join(within(steps))
    notes: list[str] = []
    for food in sorted(told.changed, key=lambda one: numbers.get(one, [len(steps) + 1])[0]):
        row = tables.food_by_id[food]
        change = told_where_used(
            _without_boiling(told.changed[food], food in told.soaked), " ".join(texts.get(food, ())), everywhere, row
        )
        # Only where the same step takes oil, and some of it is left: what is fried elsewhere needs its own.
        there = any(_OIL.search(text) for text in texts.get(food, ()))
        oil = of_the_oil(change, oil_there, tables) if there and row.kind != "oil" else ""
        if oil:
            change = change.model_copy(update={"how": f"{change.how}; {oil}" if change.how else oil})
        said = note(row.name, numbers.get(food, []), change, listed)
        notes += [said] if said is not None else []
    notes += filling_notes(parts, adapted, tables)
    return [*notes, *liquid_notes(parts, everywhere, adapted, tables)]


def _own_oils(adapted: Adapted, told: Told) -> list[Amount]:
    """The oils of a dish that stay as they were."""
    amounts = [one for one in adapted.amounts.values() if one.food not in told.changed]
    return [one for one in amounts if told.tables.food_by_id[one.food].kind == "oil"]


def _left_of_the_oil(adapted: Adapted, told: Told) -> str:
    """How much of the dish's own oil is left beside the one that came for garlic."""
    change = told.changed.get("garlic")
    return oil_left(change, _own_oils(adapted, told), told.tables) if change is not None else ""


def _without_boiling(change: Change, told_in_step: bool) -> Change:
    """The change without how long its grain boils, where the step says that."""
    kept = [part for part in parts_of_how(change.how) if not (told_in_step and _BOILED_FOR.match(part))]
    return change.model_copy(update={"how": "; ".join(kept)})


def _marked(step: str, behind: str, told: Told) -> tuple[str, list[str]]:
    """A step with its brackets, and the changed foods that it names; `behind` are the steps that follow.

    A plural is no spice: `peppers` beside black pepper are the vegetable.
    """
    ready = _boiled_for_nothing(step, behind, told)
    if ready is not None:
        return ready
    found: dict[str, None] = {}
    text, done = "", 0
    soaked: tuple[str, bool] | None = None
    for start, end, meant in whole_names(step, spans_in(step, {**told.names, **told.several})):
        if is_another_one(words_of(step[start:end]), step[:start]) or of_the_other_line(step[:start], meant, told):
            continue
        if words_of(step[start:end]) == _JUICE and (step[start:end].endswith("s") or _OF_A_FRUIT.match(step, end)):
            continue  # what runs out of the meat, or of the lemon
        if is_longer_name(step, (start, end), meant, told.tables):
            continue
        several = words_of(step[start:end]) in told.several and len(meant) > 1
        if several and (others := _ELSE.match(step, end)) is not None:
            end = others.end()  # `everything else`
        if several and _ALL_BUT.match(step, end):
            continue  # `everything but the paprika`, whatever is in the list now
        if several:
            now, foods = of_several(meant - told.direct, meant, told)
            last = words_of(_ELSE.sub("", step[start:end]))[-1]
            if last in ALL_OF_THEM or (last in SAID_BY_THE_LIST and _is_swapped(foods, told)):
                now = late_among(foods, told)
        else:
            if step[:end].endswith("s"):
                meant = frozenset(one for one in meant if told.tables.food_by_id[one].kind != "spice")
            foods = [food for food in sorted(meant) if food in told.changed][:1]
            if all_replaced(meant, told):  # `the mushrooms`, of which two kinds stood in one line
                now, foods = of_several(meant, meant, told)
            else:
                now = of_one(foods[0], meant, step[done:end], told) if foods else own_of(meant, told)
            if words_of(step[start:end]) == _FRUIT and foods and _is_swapped(foods, told):
                now = ""  # rhubarb and sugar are the fruit
            if words_of(step[start:end]) in _STOCKS:
                now = _WHOSE_STOCK.sub("", now)  # the step's own word holds
        found |= dict.fromkeys(foods)
        if not now or (foods and MADE_WITH_IT.match(step, end) and set(foods) <= told.marked):
            if foods and now and A_MIXTURE.match(step, end) and " and " not in now and not now[:1].isdigit():
                text += f"{step[done:start]}{short_name(now).removesuffix('s')}"
                done = end
            elif foods and (sauce := A_SAUCE.match(step, end)) and not is_oil(foods[0], told):
                single = re.sub(r"^leek greens$", "leek", short_name(now)).removesuffix("s")
                called = "" if " and " in now or now[:1].isdigit() else f"{single} "
                text += f"{step[done:start]}{called}"  # `the honey sauce`
                done = sauce.end()
            elif foods and A_PASTE.match(step, end) and " and " not in now and not is_oil(foods[0], told):
                text += f"{step[done:start]}{short_name(now).removesuffix('s')}"  # `the leek green paste`
                done = end
            continue
        how = ""
        all_told = several and words_of(_ELSE.sub("", step[start:end]))[-1] in ALL_OF_THEM
        if foods and not all_told and not (several and words_of(step[start:end])[-1] in SAID_BY_THE_LIST):
            how, alone = _how(step, (start, end), foods[0], (text, behind, step[done:end]), told)
            soaked = alone or soaked
        told.marked.update(foods)
        if not how and short_name(now).casefold() == step[start:end].casefold():
            continue  # `the stock`, which is called so still
        around = Around(step[done:start], step[start:end], step[end:])
        new = None
        if foods and now != LEFT_OUT and not all_told and not (several and (" for " in now or LEFT_OUT in now)):
            new = written_in(around, now, how, is_oil(foods[0], told))
        same = words_of(step[start:end])[-1:] == words_of(short_name(now))[-1:]
        if not how and same and _DRUNK_UP.search(step[done:start]):
            continue  # `so the oats drink up some milk`, of whatever kind
        if new is None and not how and same and _EACH.search(step[done:start]):
            continue  # `each wrapper` is one of the new ones
        gone = f"{step[done:start]}{LIST_ITEM}{step[start:end]} [{now}]{LIST_ITEM}"
        text += new.text if new else gone if now == LEFT_OUT and not how else f"{step[done:end]} [{now}{how}]"
        done = end + (new.taken if new else 0)
    whole = out_of_lists(text + step[done:])
    if soaked is not None:
        whole = without_soaking(whole, *soaked)
    return _OWN_STEP.sub(r"[No \1: left out.]", whole), list(found)


def _is_swapped(foods: Sequence[str], told: Told) -> bool:
    """Whether each of them has something in its place, so that the word still means what the list has."""
    return all(told.changed[food].change == "swap" for food in foods)


def _boiled_for_nothing(step: str, behind: str, told: Told) -> tuple[str, list[str]] | None:
    """What takes the place of a step that only boils a dry pulse for long, where tins take its place."""
    named = {food for _, _, meant in spans_in(step, told.names) for food in meant}
    ready = [food for food in named & set(told.changed) if told.changed[food].heat.startswith(_COOKED_ALREADY)]
    others = {told.tables.food_by_id[food].kind for food in named if food not in ready}
    if len(ready) != 1 or not others <= _BOILED_ALONG or not boils_long(step):
        return None
    food = ready[0]
    told.timed.add(food)
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
    soaked = None
    if is_only_soaked(step, end, change) and not timed:
        soaked = (boiled_in(step, change.not_soaked, told), not others)
        how, late = "", change.not_soaked
        told.soaked.add(food)
    else:
        how = late or treated(step, end, change, (so_far, behind), told.tables)
    if change.first and food not in told.marked:
        how = f"{how}; {change.first}" if how else f", {change.first}"
    if late:
        told.timed.add(food)
        if _IN_ITS_PLACE.search(late):
            told.soaked.add(food)
    return how, soaked
