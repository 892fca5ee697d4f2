"""`calmlarder tonight` and `calmlarder demo`: from the larder to dinner."""

import json
import sys
from collections.abc import Callable, Sequence
from importlib import resources
from textwrap import wrap
from typing import TYPE_CHECKING

from calmlarder.commands.given.evening import Evening
from calmlarder.commands.inputs import at_fault, choices_of, household_of
from calmlarder.household.household import Household
from calmlarder.household.larder import clear, lots_to_cook
from calmlarder.intake.eaten import ME
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.problems import CannotGoOn
from calmlarder.render.manner import PLAIN, Manner

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.helpful_answers import Answer
    from calmlarder.household.own_recipes import Ready
    from calmlarder.household.tonight import Tonight
    from calmlarder.larder.reading import Reading

_Larder = tuple[list[Lot], "tuple[Reading, ...]"]


def tonight(options: Evening) -> int:
    """Read the larder, compose, check, show."""
    with household_of(options) as household:
        choices = choices_of(options, household.tables)
        lots, readings = larder_of(options, household)

        from calmlarder.household.cooking import cookable_dinners, propose
        from calmlarder.household.own_recipes import ready_recipes
        from calmlarder.household.reminders import clock_words
        from calmlarder.household.request import evening
        from calmlarder.household.tonight import tonight as dinners

        answer = dinners(evening(household, choices, lots), _say_better(watched(options)))
        if options.larder is None and not answer.faults:
            propose(household, cookable_dinners(answer.composed))
        answers = _answers(household, answer, readings)
        ready = ready_recipes(household, answer.evening)
        reminder = clock_words(household, ME) if options.larder is None and not options.json else ""
        manner = household.manner
    status = _show(answer, readings, options.json, answers, ready, manner)
    if reminder:
        from calmlarder.render.style import style_of_output

        print("\n".join(wrap(reminder, style_of_output().width)))
    return status


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
    answers: "tuple[Answer, ...]" = (),
    ready: "tuple[Ready, ...]" = (),
    manner: Manner = PLAIN,
) -> int:
    if answer.faults:
        return at_fault("a dinner", answer.faults)
    composed, request, from_home = answer.composed, answer.evening.request, answer.evening.from_home
    if as_json:
        from calmlarder.render.answer_text import answer_objects
        from calmlarder.render.json import tonight_object

        shown = tonight_object(composed, request, readings) | {"from_settings": list(from_home)}
        shown |= {"answers": answer_objects(answers)} if answers else {}
        if ready:
            from calmlarder.render.own_text import own_objects

            shown |= {"own_recipes": own_objects(ready)}
        print(json.dumps(shown, ensure_ascii=False, indent=2))
    else:
        from calmlarder.household.request import NOTHING_WITH
        from calmlarder.render.style import style_of_output
        from calmlarder.render.text import tonight_text

        if from_home:
            words = f"From what holds at home: {'; '.join(from_home)}."
            # What holds for allergens holds with that option, too: it is not to read as if it kept them out.
            if not any(one.startswith(NOTHING_WITH) for one in from_home):
                words += " With --no-settings the usual holds instead."
            print("\n".join(wrap(words, style_of_output().width)) + "\n")
        if answers:
            from calmlarder.render.answer_text import answer_text

            print(answer_text(answers, style_of_output()) + "\n")
        if ready:
            from calmlarder.render.own_text import own_text

            print(own_text(ready, style_of_output()))
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
