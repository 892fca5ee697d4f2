"""`calmlarder plan`: the next sittings together."""

import json
import sys
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor, wait
from dataclasses import replace
from datetime import datetime
from textwrap import wrap
from time import monotonic
from typing import TYPE_CHECKING

from calmlarder.commands.given.evening import Plan
from calmlarder.commands.inputs import at_fault, choices_of, household_of
from calmlarder.commands.tonight import watched
from calmlarder.household.household import Household
from calmlarder.household.larder import clear, lots_to_cook
from calmlarder.intake.dose import CHALLENGE
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.compose.stop import Stop
    from calmlarder.household.planning import Outcome
    from calmlarder.render.manner import Manner

_MOST_TO_BUY = 9
_KEY_S = 0.2  # between two looks for Ctrl-C: ours
_MOST_WORK = 1000
_LEAST_SHARE = 0.5  # of the seconds asked for, that are left to plan in however long the larder took to read: ours
_USUAL_S, _WITH_WORK_S = 20.0, 600.0  # to think; with --work the rounds end it, and the clock only what hangs


def plan(options: Plan) -> int:
    """Read the larder and the sittings, plan, check by replay, show."""
    if not 0 <= options.buy <= _MOST_TO_BUY:
        raise CannotGoOn([Problem(where="--buy", what="is out of range", remedy=f"give 0 to {_MOST_TO_BUY}")])
    if options.work is not None and not 0 <= options.work <= _MOST_WORK:
        raise CannotGoOn([Problem(where="--work", what="is out of range", remedy=f"give 0 to {_MOST_WORK} rounds")])
    began = monotonic()
    usual = _USUAL_S if options.work is None else _WITH_WORK_S
    seconds = usual if options.seconds is None else options.seconds
    options = replace(options, seconds=seconds)

    from calmlarder.household.planning import USUAL_DAYS, Which, plan_asked
    from calmlarder.household.planning import plan as plan_sittings
    from calmlarder.household.sharing import keep_plan

    with household_of(options) as household:
        choices = choices_of(options, household.tables)
        which = Which(USUAL_DAYS if options.days is None else options.days, options.sittings)
        asked = plan_asked(household, choices, which, _lots(options.larder, household))
    # What is kept and shown in the end takes no longer than what was read.
    left = max(_LEAST_SHARE * seconds, seconds - 2 * (monotonic() - began))
    asked = asked._replace(seconds=left, most_to_buy=options.buy, work=options.work)
    better = _say_better() if watched(options) else None
    outcome = _until_interrupted(lambda: plan_sittings(asked, better), asked.stop)
    if outcome.faults:
        return at_fault("the plan", outcome.faults)
    if options.larder is None:
        with household:  # its store is opened anew: it was nobody's while the plan was made
            keep_plan(household, outcome)
    return _show(outcome, options.json, household.manner)


def _show(outcome: "Outcome", as_json: bool, manner: "Manner") -> int:
    from calmlarder.household.reminders import TOLERATED
    from calmlarder.plan.planned import Planned

    planned = outcome.plan
    assert isinstance(planned, Planned)  # what `plan` gives back is done
    from_home = outcome.asked.evening.from_home
    if as_json:
        from calmlarder.render.dinner_json import plan_object

        told = {**plan_object(planned, outcome.asked.sittings), "from_settings": list(from_home)}
        print(json.dumps(told, ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.plan_text import plan_text
        from calmlarder.render.style import style_of_output

        print(plan_text(planned, outcome.asked.evening.tables, style_of_output(manner)), end="")
        for words in from_home:
            if CHALLENGE in words or words.startswith(TOLERATED):
                print("\n".join(wrap(f"{words[:1].upper()}{words[1:]}.", style_of_output().width)))
    return 3 if planned.status == "none" else 0


def _until_interrupted(work: "Callable[[], Outcome]", stop: "Stop") -> "Outcome":
    """Ctrl-C ends the search and keeps the best plan so far; the solver would not hear of it in this thread."""
    with ThreadPoolExecutor(1) as pool:
        future = pool.submit(work)
        while not future.done():
            # A wait without an end does not hear a key on Windows, nor one that reaches another thread first.
            try:
                wait([future], _KEY_S)
            except KeyboardInterrupt:
                stop.ask()
        return future.result()


def _lots(file: str | None, household: Household) -> Sequence[Lot]:
    """The lots of a file, or the kept ones. Raises CannotGoOn where a line is not clear."""
    if file is None:
        return lots_to_cook(household)
    lots, problems = clear(household.read_all(read_lines(file), file), file)
    for problem in problems if lots else ():
        print(f"calmlarder: left out: {problem}", file=sys.stderr)
    if not lots:
        raise CannotGoOn(problems)
    return lots


def _say_better() -> "Callable[[Outcome], None]":
    """Say how the plan gets better."""
    start = datetime.now()

    def say(outcome: "Outcome") -> None:
        if outcome.faults:
            return
        seconds, plan = (datetime.now() - start).total_seconds(), outcome.plan
        filled = sum(one.dinner is not None for one in plan.sittings)
        all_of = f"{filled} of {len(plan.sittings)} meals"
        print(f"{seconds:5.1f} s: {all_of}, cost {plan.cost_points:.0f} (Ctrl-C keeps it)", file=sys.stderr)

    return say
