"""Steps of a recipe that name a food which was swapped, left out or made less.

Each name that means one changed food alone (not `onion`, where a spring onion stays) makes room for what it is now;
where the sentence would not bear that (`onion rings`), it stands in brackets behind the name. Brackets also say how
much of it, how long, and what is not done to it; notes say how to treat it. A word for several foods (`the nuts`) has
in brackets what takes the place of those that no step names otherwise.
"""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.adapt.changed_by_the_list import (
    by_the_names_of_the_list,
    headings,
    no_florets_are_left,
    old_name,
    staying,
)
from calmlarder.adapt.changed_lines import Part, joined_lines, lines_apart
from calmlarder.adapt.collective import collective_names
from calmlarder.adapt.dropped import steps_without_others
from calmlarder.adapt.known_names import names_in_steps
from calmlarder.adapt.left_open import without_unread
from calmlarder.adapt.liquid_notes import filling_notes, liquid_notes
from calmlarder.adapt.model import Adapted, Amount, Change
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.near_lines import lines_with_neighbours
from calmlarder.adapt.oil_lowered import BESIDE_IT
from calmlarder.adapt.step_ahead import boiled_ahead
from calmlarder.adapt.step_all_named import all_named
from calmlarder.adapt.step_blended import greens_out_of_a_red_base
from calmlarder.adapt.step_bloomed import bloomed
from calmlarder.adapt.step_canned_late import canned_late
from calmlarder.adapt.step_clove_oil import oil_only_later
from calmlarder.adapt.step_clove_work import without_work_on_cloves
from calmlarder.adapt.step_cooked_to_serve import cooked_to_be_served
from calmlarder.adapt.step_figures import in_figures, in_its_words
from calmlarder.adapt.step_filled import caps_are_halves
from calmlarder.adapt.step_fresh_fruit import fresh_fruit_last
from calmlarder.adapt.step_garlic import oil_with_the_fat
from calmlarder.adapt.step_gone import without_what_is_out
from calmlarder.adapt.step_green_parts import green_parts_named, half_and_rest
from calmlarder.adapt.step_left_over import greens_by_one_word, remaining_if_begun, water_for_what_is_out
from calmlarder.adapt.step_less_liquid import kept_back_in_its_step
from calmlarder.adapt.step_liquor import without_soaked_mushrooms
from calmlarder.adapt.step_marked import marked_step
from calmlarder.adapt.step_minutes import on_time
from calmlarder.adapt.step_named_once import named_once, oil_shared_out
from calmlarder.adapt.step_names import introduced_parts, turns_golden
from calmlarder.adapt.step_notes import (
    amount_of,
    bare,
    note,
    notes_once,
    notes_where_used,
    oil_left,
    parts_of_how,
    told_where_used,
)
from calmlarder.adapt.step_numbers import numbered, within
from calmlarder.adapt.step_of_tins import in_the_time_of_tins
from calmlarder.adapt.step_oil_once import oil_once
from calmlarder.adapt.step_old_words import without_old_words
from calmlarder.adapt.step_oven_later import put_in_the_oven_later
from calmlarder.adapt.step_pulse_liquid import water_for_their_liquid
from calmlarder.adapt.step_put_in_late import late_where_it_simmers
from calmlarder.adapt.step_read_over import read_over
from calmlarder.adapt.step_ready_pulses import without_soaked_pulses
from calmlarder.adapt.step_rice_paper import wrapped_in_rice_paper
from calmlarder.adapt.step_same_name import by_their_longer_names
from calmlarder.adapt.step_several_pulses import all_from_tins, several_from_tins
from calmlarder.adapt.step_shares import all_in_one_step, in_one_line, own_amounts, spoonfuls_alone, twice
from calmlarder.adapt.step_smoothed import not_charred, smoothed
from calmlarder.adapt.step_soured import soured_from_then_on
from calmlarder.adapt.step_till_tender import boiled_till_tender
from calmlarder.adapt.step_times import in_their_own_time
from calmlarder.adapt.step_vegetable_parts import without_old_parts
from calmlarder.adapt.step_washed import only_dry_is_washed
from calmlarder.adapt.step_water import water_in_its_step
from calmlarder.adapt.things_now import Told
from calmlarder.tables.book import Tables

_AND, _W_SLASH = re.compile(r" [&+] (?=[^\W\d])"), re.compile(r"\bw/ ?(?=[^\W\d])")
_FLORET = re.compile(r"\bfloret(s)?\b")
# The first letter of a sentence, behind its number where it has one.
_BEGUN_SMALL = re.compile(r"(?:(?<=^)|(?<=^\d[.)] )|(?<=[a-z\])\d][.!?] ))[a-z]")
_BOILED_FOR = re.compile(
    r"add .* only for the last \d+ minutes|cook .* for about \d+ minutes, in as much"
    r"|.*, about \d+ minutes: begin earlier$"
    r"|it needs no soaking and no long boiling: leave those steps out and add it for the last 10 minutes",
    re.IGNORECASE,
)


class Steps(NamedTuple):
    """The steps with what changed in brackets, and the notes behind them."""

    steps: tuple[str, ...]
    notes: tuple[str, ...]


def steps_after(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Steps:
    """The steps as the changed recipe is cooked, with a note for each food that changed."""
    steps = steps_without_others(steps, [part.read for part in parts], adapted, tables)
    steps = without_unread(steps, adapted, [part.read for part in parts])
    kept = tuple(
        one for one in adapted.changes if one.change != "only" and one.why != BESIDE_IT and _is_of_a_food(one, parts)
    )
    adapted = by_the_names_of_the_list(adapted.model_copy(update={"changes": kept}), parts, tables)
    changed = {
        parts[change.place].read.food or "": change for change in adapted.changes if change.place is not None
    }  # fmt: skip
    if not changed:
        return Steps(steps, ())
    written = steps
    figures = [in_figures(_AND.sub(" and ", _W_SLASH.sub("with ", step))) for step in steps]
    steps = tuple(one.step for one in figures)
    names = names_in_steps(parts, tables)
    told_so, told_of_tins = in_the_time_of_tins(by_their_longer_names(steps, names), changed, tables)
    written = tuple(old if now == step else now for now, step, old in zip(told_so, steps, written, strict=True))
    steps = told_so
    changed = {food: on_time(change, steps, food, names) for food, change in changed.items()}
    shared = in_one_line(parts, adapted, tables)
    if any(part.read.outcome == "heading" for part in parts):
        joined = {adapted.amounts[place].food for place in joined_lines(parts, adapted, tables)}
        shared = (shared & joined) | twice(adapted)
    each: dict[str, list[Change]] = {}
    for change in adapted.changes:
        if change.place is not None:
            each.setdefault(parts[change.place].read.food or "", []).append(change)
    several = collective_names(parts, names, tables)
    alone = {words: meant for words, meant in names.items() if words not in several}
    told = Told(
        names, several, changed, shared, own_amounts(adapted, shared, tables), tables,
        {food for step in within(steps) for _, _, meant in spans_in(step, alone) for food in meant},
        each, staying(adapted, parts, changed), headings(parts), lines_with_neighbours(parts, each),
        introduced=introduced_parts(steps),
        by_itself=frozenset(
            food for step in within(steps) for _, _, meant in spans_in(step, alone) if len(meant) == 1 for food in meant
        ),
        timed=told_of_tins, soaked=set(told_of_tins),
    )  # fmt: skip
    together = all_from_tins(steps, told)  # their time is told where they are boiled
    told.timed.update(together)
    told.soaked.update(together)
    named: dict[str, list[int]] = {}
    texts: dict[str, list[str]] = {}
    marked: list[str] = []
    for place, ((number, step), _) in enumerate(zip(numbered(steps), within(steps), strict=False)):
        text, foods = marked_step(step, "\n".join(steps[place + 1 :]), told)
        marked.append(text)
        for food in foods:
            named.setdefault(food, []).append(number)
            texts.setdefault(food, []).append(step)
    marked = without_soaked_mushrooms(steps, marked, parts, adapted, tables)
    marked = greens_out_of_a_red_base(oil_with_the_fat(marked, _left_of_the_oil(adapted, told)))
    marked = without_old_parts(without_work_on_cloves(marked), told)
    marked = only_dry_is_washed([in_their_own_time(all_in_one_step(text), told) for text in marked], told)
    marked = fresh_fruit_last(boiled_till_tender(marked, told), told)
    marked = [smoothed(text, lambda between: turns_golden(between, told)) for text in oil_only_later(marked)]
    marked = without_soaked_pulses(steps, _one_beside_the_other(canned_late(marked, told)), told)
    marked = several_from_tins(steps, marked, told)
    marked = bloomed(wrapped_in_rice_paper(marked, adapted), adapted)
    marked = [old if text == plain else text for text, plain, old in zip(marked, steps, written, strict=False)]
    marked = [_begun_large(text, old) for text, old in zip(marked, steps, strict=False)]
    if no_florets_are_left(parts, told):
        marked = [_FLORET.sub(lambda one: "pieces" if one[1] else "piece", text) for text in marked]
    marked = [_all_of_them(text, adapted, parts, tables) for text in marked]
    marked, of_liquid = water_for_their_liquid(marked, parts, adapted, tables)
    notes = [*_notes(steps, parts, adapted, told, (named, texts)), *of_liquid]
    marked, notes = water_for_what_is_out(marked, notes)
    marked = [without_what_is_out(text) or old for text, old in zip(marked, marked, strict=True)]
    changed_by_name = {tables.food_by_id[food].name: food for food in changed}
    marked, notes = water_in_its_step(steps, marked, notes, changed_by_name, alone)
    marked, notes = kept_back_in_its_step(steps, marked, notes, told)
    marked, notes = cooked_to_be_served(half_and_rest(steps, marked), notes)
    notes = notes_where_used(notes, marked)
    marked = [text if text == old else over for text, over, old in zip(marked, read_over(marked), steps, strict=False)]
    marked = all_named(marked, adapted.changes, tables)
    marked = [in_its_words(text, one.words) for text, one in zip(marked, figures, strict=False)]
    if len(marked) < len(steps):
        notes.append(f"Steps from {len(marked) + 1} on were not looked at.")
    return Steps((*marked, *written[len(marked) :]), tuple(notes))


def _one_beside_the_other(marked: Sequence[str]) -> list[str]:
    """The changed steps once more, where what one says hangs on the others: shares, the oven, what is opened how."""
    told = late_where_it_simmers([boiled_ahead(oil_once(not_charred(text))) for text in spoonfuls_alone(marked)])
    told = put_in_the_oven_later(caps_are_halves(green_parts_named(told)))
    told = oil_shared_out(named_once([greens_by_one_word(text) for text in soured_from_then_on(told)]))
    return without_old_words(remaining_if_begun(told))


def _is_of_a_food(change: Change, parts: Sequence[Part]) -> bool:
    return change.place is None or parts[change.place].read.food is not None


def _all_of_them(text: str, adapted: Adapted, parts: Sequence[Part], tables: Tables) -> str:
    """A step without the amount of what it takes all of: `260 g of the leek greens`, where the list has 260 g."""
    lines = [*joined_lines(parts, adapted, tables).values()]
    staying = {(part.line, part.read.food) for part in parts}
    for change in lines_apart(adapted, parts, tables).changes:
        own = parts[change.place].line if change.place is not None else -1
        if not any((own, one.food) in staying for one in change.to):  # there it is put to another food of its line
            lines += change.lines
    often = Counter(bare(line) for line in lines)
    for line in lines:
        if amount_of(line) and often[bare(line)] == 1:
            text = text.replace(f"{amount_of(line)} of the {bare(line)}", f"the {bare(line)}")
    return text


def _begun_large(text: str, old: str) -> str:
    """A changed step whose sentences begin with a capital, where all of the old one did."""
    if _BEGUN_SMALL.search(old):
        return text
    return _BEGUN_SMALL.sub(lambda one: one[0].upper(), text)


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
    everywhere = " ".join(within(steps))
    notes: list[str] = []
    for food in sorted(told.changed, key=lambda one: numbers.get(one, [len(steps) + 1])[0]):
        row = tables.food_by_id[food]
        change = told_where_used(
            _without_boiling(told.changed[food], food in told.soaked), " ".join(texts.get(food, ())), everywhere, row
        )
        at = numbers.get(food, [])
        if change.change == "out" and not any(row.name.casefold() in one.casefold() for one in texts.get(food, ())):
            at = []  # `the onion` of a step is not the pickled ones
        said = note(old_name(row, change), at, change, listed)
        notes += [said] if said is not None else []
    notes = notes_once(notes)
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
