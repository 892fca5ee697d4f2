"""`calmlarder feel` and `calmlarder days`: how the gut felt, beside what was eaten."""

import json
from pathlib import Path
from textwrap import wrap

from calmlarder.commands.given.log import Days, Feel
from calmlarder.commands.inputs import household_of, person
from calmlarder.commands.moment import past_moment_of
from calmlarder.history.correlation import related
from calmlarder.history.felt import CALM, LONGEST_NOTE, WORST, Felt, Scores
from calmlarder.history.when_said import when_said
from calmlarder.household.challenge_stopped_by_sign import felt_red_flag
from calmlarder.household.diary import days as last_days
from calmlarder.household.diary import feel as keep
from calmlarder.household.found_limits import reconsider
from calmlarder.household.going_on import scores
from calmlarder.household.write_out import write_out
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.red_flags_in_notes import red_flags
from calmlarder.render.challenge_day import lowered_words
from calmlarder.render.challenge_text import felt_line
from calmlarder.render.days_text import days_object, days_text
from calmlarder.render.signs_text import felt_answer
from calmlarder.render.style import style_of_output

_MOST_DAYS = 3660
_SYMPTOMS = 4
_CLOCKS_MIN = 5  # how far two clocks of one home may be apart: ours, no source


def feel(options: Feel) -> int:
    """Keep one feeling. Raises CannotGoOn for what is no number of the scale, or no note."""
    felt = felt_of(options)
    flags = red_flags(felt.note)
    with household_of(options) as household, household.store.as_one(f"gut {felt.score}"):
        kept = keep(household, felt)
        stopped = felt_red_flag(household, felt, flags)
        lowered = reconsider(household, felt.who, scores(household, felt.who))
    if options.json:
        entry = {"id": kept.id, **kept.felt.model_dump(mode="json")}
        shown = {"felt": [entry], "red_flags": [flag.flag for flag in flags], "challenge_stopped": stopped}
        print(json.dumps(shown, ensure_ascii=False))
    else:
        print(f"{kept.id:>4}  {felt_line(felt)}")
        for answer in filter(None, [felt_answer(felt), "" if flags else lowered_words(lowered)]):
            print("\n".join(wrap(answer, style_of_output().width)))
    return 0


def felt_of(options: Feel) -> Felt:
    """What one or four numbers and a note say. Raises CannotGoOn for what is off the scale, or no note."""
    note = " ".join(options.note.split())
    wrong = [number for number in options.score if not CALM <= number <= WORST]
    if wrong:
        remedy = f"give a whole number from {CALM}, calm, to {WORST}, the worst you know"
        raise CannotGoOn([Problem(where="feel", what=f"{wrong[0]} is not on the scale", remedy=remedy)])
    if len(options.score) not in {1, _SYMPTOMS}:
        remedy = "give one number, or four: pain, bloating, wind, urgency"
        raise CannotGoOn([Problem(where="feel", what=f"{len(options.score)} numbers were given", remedy=remedy)])
    if not note.isprintable() or len(note) > LONGEST_NOTE:
        remedy = f"write at most {LONGEST_NOTE} signs of text"
        raise CannotGoOn([Problem(where="--note", what="cannot be kept", remedy=remedy)])
    scores = None
    if len(options.score) == _SYMPTOMS:
        pain, bloating, wind, urgency = options.score
        scores = Scores(pain=pain, bloating=bloating, wind=wind, urgency=urgency)
    at, who = past_moment_of(options, ahead_min=_CLOCKS_MIN), person(options.who, "--who")
    said = when_said(note, at)
    if options.when is None and said.at is not None and said.is_apart:
        at, note = said.at, said.text
    return Felt(at=at, who=who, score=max(options.score), note=note, scores=scores)


def days(options: Days) -> int:
    """Show the last days, and write the picture that was asked for."""
    if not 1 <= options.days <= _MOST_DAYS:
        remedy = f"give a number of days from 1 to {_MOST_DAYS}"
        raise CannotGoOn([Problem(where="--days", what="is out of range", remedy=remedy)])
    who = person(options.who, "--who")
    with household_of(options) as household:
        shown = last_days(household, options.days, who)
    if options.svg is not None:
        from calmlarder.render.days_svg import BEGINS, days_svg

        write_out(Path(options.svg), days_svg(shown, who), BEGINS, "--svg")
    if options.json:
        print(json.dumps(days_object(shown, related(shown)), ensure_ascii=False, indent=2))
    else:
        print("\n".join(days_text(shown, related(shown), style_of_output())))
    return 0
