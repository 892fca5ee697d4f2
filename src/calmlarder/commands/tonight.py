"""`calmlarder tonight` and `calmlarder demo`: from the larder to dinner."""

import json
import sys
from collections.abc import Callable, Sequence
from importlib import resources
from textwrap import wrap
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.commands.given.evening import Evening
from calmlarder.commands.inputs import at_fault, choices_of, household_of
from calmlarder.household.household import Household
from calmlarder.household.larder import clear, lots_to_cook
from calmlarder.intake.eaten import ME
from calmlarder.kitchen.equipment import THINGS
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.matching.kitchen_told import kitchen_lacks
from calmlarder.matching.names.words import plain
from calmlarder.problems import CannotGoOn
from calmlarder.render.manner import PLAIN, Manner

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.choices import Choices
    from calmlarder.household.helpful_answers import Answer
    from calmlarder.household.own_recipes import Ready
    from calmlarder.household.tonight import Tonight
    from calmlarder.intake.eaten import Portion
    from calmlarder.larder.meaning import Reading


class _Beside(NamedTuple):
    """What is told beside the dinners: lines to answer, own recipes, and what fits by itself where there is none."""

    answers: "tuple[Answer, ...]" = ()
    ready: "tuple[Ready, ...]" = ()
    plain: "tuple[Portion, ...]" = ()


_NOTHING_BESIDE = _Beside()
_Larder = tuple[list[Lot], "tuple[Reading, ...]"]


def tonight(options: Evening) -> int:
    """Read the larder, compose, check, show."""
    with household_of(options) as household:
        choices = choices_of(options, household.tables)
        lots, readings = larder_of(options, household)
        choices = _in_the_kitchen_told(choices, readings)

        from calmlarder.household.own_recipes import ready_recipes
        from calmlarder.household.request import evening
        from calmlarder.household.tonight import tonight as dinners

        answer = dinners(evening(household, choices, lots), _say_better(watched(options)))
        if options.larder is None and not answer.faults:
            from calmlarder.household.cooking import cookable_dinners, propose

            propose(household, cookable_dinners(answer.composed))
        beside = _Beside(
            _answers(household, answer, readings),
            ready_recipes(household, answer.evening),
            _all_the_same(household, answer),
        )
        reminder = _reminder(household, options)
        elsewhere = _asked_on_screens(household, options, choices)
        manner = household.manner
    if elsewhere:
        from calmlarder.render.style import style_of_output

        print("\n".join(wrap(elsewhere, style_of_output().width)) + "\n")
    status = _show(answer, readings, options.json, beside, manner)
    if reminder:
        from calmlarder.render.style import style_of_output

        print("\n".join(wrap(reminder, style_of_output().width)))
    return status


def _in_the_kitchen_told(choices: "Choices", readings: "tuple[Reading, ...]") -> "Choices":
    """With what the list says that the kitchen lacks."""
    told = {thing for one in readings if not one.lots for thing in kitchen_lacks(plain(one.text))}
    missing = tuple(thing for thing in THINGS if thing in {*choices.missing, *told})
    return choices.model_copy(update={"missing": missing})


def _reminder(household: Household, options: Evening) -> str:
    """What a kept home is reminded of beside its dinner; where it is read by no person, nothing."""
    if options.larder is not None or options.json:
        return ""
    from calmlarder.household.reminders import clock_words

    return clock_words(household, ME)


def _asked_on_screens(household: Household, options: Evening, choices: "Choices") -> str:
    """Who is to eat tonight was said on the screens, and not here: nobody is to cook without them unawares."""
    from calmlarder.tui.asked_for_tonight import words_of_tonight

    is_said = choices.eaters or choices.guests or choices.people or choices.avoid or choices.diet
    if options.larder is not None or options.json or is_said:
        return ""
    words = words_of_tonight(household)
    return f"Asked for on the screens, and not in this answer: {words}. F3 there cooks for it." if words else ""


def demo(options: Evening) -> int:
    """The same on the larder of an example household, whose dates follow the day of the run."""
    text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
    household = household_of(options)
    choices = choices_of(options, household.tables)  # what is wrong in the options is said before the larder is
    if not options.json:
        print("The larder of an example household:\n")
        print("\n".join(f"  {line}" for line in text.splitlines() if line and not line.startswith("#")) + "\n")

    from calmlarder.household.request import evening
    from calmlarder.household.tonight import tonight as dinners

    lots, readings = _read(household, text.splitlines(), "demo larder")
    answer = dinners(evening(household, choices, lots), _say_better(watched(options)))
    return _show(answer, readings, options.json, manner=household.manner)


def _all_the_same(household: Household, answer: "Tonight") -> "tuple[Portion, ...]":
    """Where there is no dinner, nor one near of what is there: what of the larder fits by itself."""
    near = answer.composed.nearest
    if answer.composed.dinners or answer.composed.instead or (near is not None and near.is_there) or answer.faults:
        return ()
    from calmlarder.household.all_the_same import all_the_same

    return all_the_same(household, answer.evening)


def _answers(household: Household, answer: "Tonight", readings: "tuple[Reading, ...]") -> "tuple[Answer, ...]":
    """Where there is no dinner: lines whose answer would make one."""
    if answer.composed.dinners or answer.faults:
        return ()
    from calmlarder.household.helpful_answers import helpful_answers, open_lines

    return helpful_answers(open_lines(household, readings), answer.evening)


def larder_of(options: Evening, household: Household) -> _Larder:
    """The lots of --larder with what each line was read as, or the kept ones."""
    if options.larder is not None:
        return _read(household, read_lines(options.larder), options.larder)
    return lots_to_cook(household), ()


def watched(options: Evening) -> bool:
    """Whether somebody at a terminal sees how long work goes on; Ctrl-C then keeps the best so far."""
    return not options.json and sys.stderr.isatty()


def _read(household: Household, lines: Sequence[str], source: str) -> _Larder:
    readings = household.read_all(lines, source)
    lots, problems = clear(readings, source)
    if not lots:
        raise CannotGoOn(problems)
    return lots, readings


def _show(
    answer: "Tonight",
    readings: "tuple[Reading, ...]",
    as_json: bool,
    beside: _Beside = _NOTHING_BESIDE,
    manner: Manner = PLAIN,
) -> int:
    if answer.faults:
        return at_fault("a dinner", answer.faults)
    composed, request, from_home = answer.composed, answer.evening.request, answer.evening.from_home
    if as_json:
        from calmlarder.render.answer_text import answer_objects
        from calmlarder.render.dinner_json import tonight_object

        shown = tonight_object(composed, request, readings) | {"from_settings": list(from_home)}
        shown |= {"answers": answer_objects(beside.answers)} if beside.answers else {}
        if beside.plain:
            told = [{"food": one.food.id, "name": one.food.name, "grams": int(one.grams)} for one in beside.plain]
            shown |= {"all_the_same": told}
        if beside.ready:
            from calmlarder.render.own_text import own_objects

            shown |= {"own_recipes": own_objects(beside.ready)}
        print(json.dumps(shown, ensure_ascii=False, indent=2))
    else:
        from calmlarder.household.request import NOTHING_WITH
        from calmlarder.render.style import style_of_output
        from calmlarder.render.tonight_text import tonight_text

        if from_home:
            words = f"From what holds at home: {'; '.join(from_home)}."
            # What holds for allergens holds with that option, too: it is not to read as if it kept them out.
            if not any(one.startswith(NOTHING_WITH) for one in from_home):
                words += " With --no-settings the usual holds instead."
            print("\n".join(wrap(words, style_of_output().width)) + "\n")
        if beside.answers:
            from calmlarder.render.answer_text import answer_text

            print(answer_text(beside.answers, style_of_output()) + "\n")
        if beside.ready:
            from calmlarder.render.own_text import own_text

            print(own_text(beside.ready, style_of_output()))
        if beside.plain:
            named = ", ".join(f"{one.grams:g} g {one.food.name}" for one in beside.plain)
            words = (
                f"No whole dinner tonight, but of your larder this fits by itself, for one person, weighed: {named}."
            )
            print("\n".join(wrap(words, style_of_output().width)) + "\n")
        print(tonight_text(composed, request, readings, style_of_output(manner)), end="")
    return 0 if composed.dinners else 3


def _say_better(is_watched: bool) -> "Callable[[Dinner], None] | None":
    if not is_watched:
        return None
    import time

    start = time.monotonic()

    def say(dinner: "Dinner") -> None:
        if time.monotonic() - start > 1:
            print(f"best so far: {dinner.pattern} (Ctrl-C keeps it)", file=sys.stderr)

    return say
