"""`calmlarder tonight` and `calmlarder demo`: from the larder to dinner."""

import argparse
import json
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from importlib import resources
from textwrap import wrap
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from calmlarder.commands.inputs import at_fault, choices_of, household_of
from calmlarder.household.household import Household
from calmlarder.household.larder import clear, lots_to_cook
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading
from calmlarder.problems import CannotGoOn

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.answering import First
    from calmlarder.household.tonight import Tonight
    from calmlarder.larder.to_answer import ToAnswer

_Larder = tuple[list[Lot], tuple[Reading, ...]]


def tonight(options: argparse.Namespace) -> int:
    """Read the larder, compose, check, show."""
    with household_of(options) as household:
        choices = choices_of(options, household.tables)
        lots, readings = larder_of(options, household)

        from calmlarder.household.answering import answer_first
        from calmlarder.household.cooking import propose
        from calmlarder.household.request import evening
        from calmlarder.household.tonight import tonight as dinners

        answer = dinners(evening(household, choices, lots), _say_better(watched(options)))
        waiting: list[ToAnswer] = []
        first: First | None = None
        if options.larder is None and not answer.faults:
            propose(household, answer.composed.dinners)
            waiting = household.to_answer()
            first = answer_first(household, answer.evening) if waiting and not answer.composed.dinners else None
    if options.json:
        return _show(answer, readings, True, _waiting_object(waiting, first))
    for line in _waiting_lines(waiting, first):
        print(line + "\n")
    return _show(answer, readings, False)


def _waiting_object(waiting: Sequence["ToAnswer"], first: "First | None") -> dict[str, Any]:
    """What waits to be answered and was taken as not there, and what to answer first, as plain values."""
    found: dict[str, Any] = {"to_answer": [{"id": one.id, "text": one.text} for one in waiting]} if waiting else {}
    if first is not None:
        found["answer_first"] = {"id": first.asked.id, "text": first.asked.text, "choice": first.choice}
    return found


def _waiting_lines(waiting: Sequence["ToAnswer"], first: "First | None") -> Iterator[str]:
    """The same in words."""
    if first is not None:
        number = first.asked.choices.index(first.choice) + 1
        yield (
            f"Answer first: `{first.asked.text}`: {first.asked.question} "
            f"With the answer `{first.choice}` there is a dinner: `calmlarder larder answer {first.asked.id} {number}`."
        )
    elif waiting:
        several = "1 line waits to be answered and is" if len(waiting) == 1 else f"{len(waiting)} lines wait and are"
        yield f"{several} taken as not there; `calmlarder larder list` shows what is asked."


def demo(options: argparse.Namespace) -> int:
    """The same on the larder of an invented household, whose dates follow the day of the run."""
    text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
    household = household_of(options)
    choices = choices_of(options, household.tables)  # what is wrong in the options is said before the larder is
    if not options.json:
        print("The larder of an invented household:\n")
        print("\n".join(f"  {line}" for line in text.splitlines() if line and not line.startswith("#")) + "\n")

    from calmlarder.household.request import evening
    from calmlarder.household.tonight import tonight as dinners

    lots, readings = _read(household, text.splitlines(), "demo larder")
    answer = dinners(evening(household, choices, lots), _say_better(watched(options)))
    return _show(answer, readings, options.json)


def larder_of(options: argparse.Namespace, household: Household) -> _Larder:
    """The lots of --larder with what each line was read as, or the kept ones."""
    if options.larder is not None:
        return _read(household, read_lines(options.larder), options.larder)
    return lots_to_cook(household), ()


def watched(options: argparse.Namespace) -> bool:
    """Whether somebody at a terminal sees how long work goes on; Ctrl-C then keeps the best so far."""
    return not options.json and sys.stderr.isatty()


def _read(household: Household, lines: Sequence[str], source: str) -> _Larder:
    readings = household.read_all(lines, source)
    impossible = [reading.problem for reading in readings if reading.problem is not None]
    if impossible:
        raise CannotGoOn(impossible)
    lots, problems = clear(readings, source)
    if not lots:
        raise CannotGoOn(problems)
    return lots, readings


def _show(
    answer: "Tonight", readings: tuple[Reading, ...], as_json: bool, also: Mapping[str, Any] = MappingProxyType({})
) -> int:
    if answer.faults:
        return at_fault("a dinner", answer.faults)
    composed, request, from_home = answer.composed, answer.evening.request, answer.evening.from_home
    if as_json:
        from calmlarder.render.json import tonight_object

        shown = tonight_object(composed, request, readings) | {"from_settings": list(from_home)} | dict(also)
        print(json.dumps(shown, ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output
        from calmlarder.render.text import tonight_text

        if from_home:
            words = f"From people and limits at home: {'; '.join(from_home)}. --no-settings leaves them out."
            print("\n".join(wrap(words, style_of_output().width)) + "\n")
        print(tonight_text(composed, request, readings, style_of_output()), end="")
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
