"""`calmlarder challenge`: one group tried again, a day at a time; `reckon` is the arithmetic of any days."""

import json
import re
import sys
from pathlib import Path
from typing import get_args

from calmlarder.commands.days import felt_of
from calmlarder.commands.given import challenge as given
from calmlarder.commands.given.common import Shown
from calmlarder.commands.inputs import food_named, household_of, person
from calmlarder.commands.moment import past_moment_of
from calmlarder.household import challenge_status, challenges, going_on
from calmlarder.household.challenge_start import Start, begin, compare_first
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.entry_questions import KEYS, QUESTIONS, SEEN, Question, said_yes
from calmlarder.reintroduction.events import LeftOut
from calmlarder.reintroduction.ladders import CHALLENGES, GROUPS, Challenge, ChallengeGroup
from calmlarder.reintroduction.posterior import ChallengeDay, DayResult, reckon
from calmlarder.reintroduction.red_flags_in_notes import red_flags
from calmlarder.render import course_history, course_text
from calmlarder.render.challenge_day import lowered_words, passed_words, today_text
from calmlarder.render.challenge_names import CARE, name_of
from calmlarder.render.challenge_text import felt_line, reckoning_object, reckoning_text
from calmlarder.render.entry_questions_text import (
    ABOUT,
    BEFORE_SCOFF,
    IF_UNSURE,
    IF_UNSURE_SEEN,
    bars_object,
    begun_text,
)
from calmlarder.render.signs_text import felt_answer, see_a_doctor

_COUNTED = (
    "You scored a dose day, so the dose is noted as eaten. Not eaten? `calmlarder larder undo`, then score again with "
    "--not-eaten."
)
_MOST_DOSE_G = 100.0  # beyond it is a slip of the pen: ours
_MOST_DAYS = 200
_LONGEST_WHY = 200
_RESULTS = get_args(DayResult)


def reckoned(options: given.Reckon) -> int:
    """Show risks and the limit that such days would give. Raises CannotGoOn for days that cannot be read."""
    days = days_of(options.days)
    reckoning = reckon(_group(options.group), days)
    if options.json:
        print(json.dumps(reckoning_object(reckoning), ensure_ascii=False))
    else:
        print(reckoning_text(reckoning, days))
    return 0


def _group(given: str) -> ChallengeGroup:
    name = given.strip().lower().replace(" ", "_").replace("-", "_")
    for group in GROUPS:
        if group == name:
            return group
    remedy = f"choose from: {', '.join(GROUPS)}"
    raise CannotGoOn([Problem(where="GROUP", what=f"`{given}` is no group that is challenged", remedy=remedy)])


def days_of(given: str) -> tuple[ChallengeDay, ...]:
    """Days such as "0.5:calm 1:calm 2:reaction". Raises CannotGoOn with each word that is none."""
    found, problems = [], []
    for word in given.replace(",", " ").split():
        dose, _, result = word.partition(":")
        grams = float(dose) if re.fullmatch(r"\d{1,4}(?:\.\d{1,6})?|\.\d{1,6}", dose) else 0.0
        named = next((one for one in _RESULTS if one == result.lower()), None)
        if named is None or not 0 < grams <= _MOST_DOSE_G:
            remedy = 'write a dose in grams and how the day went, like "0.5:calm 1:calm 2:reaction"'
            problems.append(Problem(where="--days", what=f"`{word[:40]}` is no challenge day", remedy=remedy))
        else:
            found.append(ChallengeDay(grams, named))
    if len(found) > _MOST_DAYS:
        problems.append(Problem(where="--days", what="are too many", remedy=f"give at most {_MOST_DAYS}"))
    if problems:
        raise CannotGoOn(problems)
    return tuple(found)


def start(options: given.Start) -> int:
    """Begin a challenge; status 3 where an answer to the questions bars it. Raises CannotGoOn."""
    challenge, who = _challenge(options.group), person(options.who, "--who")
    yes = _answers(options.yes)
    with household_of(options) as household:
        food = food_named(options.food, "--food", household.tables) if options.food else None
        how = Start(past_moment_of(options), food, options.control)
        begun = begin(household, who, challenge, yes, how)
    bars, words = begun.bars, begun_text(begun)
    shown = {"started": not bars, "bars": bars_object(bars), "today": course_text.today_object(begun.today)}
    _show(options, shown, words if bars else "\n".join(filter(None, [words, today_text(begun.today)])))
    return 3 if bars else 0


def control(options: given.Challenge) -> int:
    """First a day to compare, in a challenge that has no dose yet. Raises CannotGoOn where it has."""
    with household_of(options) as household:
        found = compare_first(household, person(options.who, "--who"), past_moment_of(options))
    words = f"A comparison day comes before the first dose; what was scored so far counts.\n{today_text(found)}"
    _show(options, course_text.today_object(found), words)
    return 0


def today(options: given.Challenge) -> int:
    """What to eat today, and why."""
    with household_of(options) as household:
        found = challenges.today(household, person(options.who, "--who"))
    _show(options, course_text.today_object(found), today_text(found))
    return 0


def score(options: given.Score) -> int:
    """Keep the day's score. Raises CannotGoOn for what is off the scale, and for an --also that is none."""
    felt, known = felt_of(options), get_args(LeftOut)
    also = [next((one for one in known if one == word.strip().lower()), None) for word in options.also]
    left_out: list[LeftOut] = [one for one in also if one is not None]
    if len(left_out) < len(also):
        raise CannotGoOn([Problem(where="--also", what="is not known", remedy=f"choose from: {', '.join(known)}")])
    with household_of(options) as household:
        scored = challenges.score(household, felt, left_out, not options.not_eaten)
    words = [felt_line(scored.felt)]
    answer = felt_answer(scored.felt)
    if scored.flags:  # nothing after it that could soften it
        _show(options, course_text.scored_object(scored), "\n".join([*words, answer]))
        return 0
    words += [answer] if answer else []
    words += [_COUNTED] if scored.dose_counted else []
    words += [lowered_words(scored.lowered)] if scored.lowered else []
    words += [passed_words(scored.passed)] if scored.passed else []
    _show(options, course_text.scored_object(scored), "\n".join([*words, today_text(scored.today)]))
    return 0


def skip(options: given.Because) -> int:
    """Not today."""
    why, who = _words(options.why), person(options.who, "--who")
    with household_of(options) as household:
        if _answers_first(options, why, going_on.is_challenged(household, who), "nothing to skip"):
            return 2
        done = challenges.skip(household, who, past_moment_of(options), why)
    shown = course_text.today_object(done.today) | {"red_flags": [flag.flag for flag in done.flags]}
    _show(options, shown, see_a_doctor(done.flags) if done.flags else today_text(done.today))
    return 0


def stop(options: given.Because) -> int:
    """End it before its end."""
    why, who = _words(options.why), person(options.who, "--who")
    with household_of(options) as household:
        if _answers_first(options, why, going_on.is_challenged(household, who), "nothing to stop"):
            return 2
        course = challenges.stop(household, who, why)
    name, flags = name_of(course.challenge), red_flags(course.why_stopped)
    words = f"The challenge of {name} is stopped. Nothing is concluded from it"
    words = f"{words}.\n{see_a_doctor(flags)}" if flags else f"{words}, and you may begin again.\n{CARE}"
    shown = {"stopped": course.challenge, "why": course.why_stopped, "red_flags": [flag.flag for flag in flags]}
    _show(options, shown, words)
    return 0


def _answers_first(options: given.Because, why: str, is_challenged: bool, words: str) -> bool:
    """Whether no challenge goes on and the reason tells of a warning sign, which is answered all the same."""
    flags = red_flags(why)
    if is_challenged or not flags:
        return False
    shown = {"red_flags": [flag.flag for flag in flags]}
    _show(options, shown, f"{see_a_doctor(flags)}\nNo challenge is going on: {words}. Nothing is concluded.")
    return True


def status(options: given.Challenge) -> int:
    """Where one is, what was found, what comes next."""
    with household_of(options) as household:
        found = challenge_status.status(household, person(options.who, "--who"))
    _show(options, course_text.status_object(found), course_text.status_text(found))
    return 0


def history(options: given.Challenge) -> int:
    """Every challenge, day by day."""
    with household_of(options) as household:
        who = person(options.who, "--who")
        by_day = going_on.scores(household, who)
        found = [(one, standing(one, by_day, household.today)) for one in going_on.courses(household, who)]
    _show(options, {"challenges": course_history.history_object(found)}, course_history.history_text(found))
    return 0


def page(options: given.ForDietitian) -> int:
    """The page for the dietitian. Raises CannotGoOn where the file cannot be written."""
    from calmlarder.household.sharing import page_of, write_page
    from calmlarder.render.dietitian_page import markdown

    with household_of(options) as household:
        who = person(options.who, "--who")
        if options.out is None:
            plain = markdown(page_of(household, who))
        else:
            write_page(household, who, Path(options.out))
            plain = f"Written to {options.out}. Nothing is sent anywhere."
    print(json.dumps({"page": plain} if options.out is None else {"out": options.out}) if options.json else plain)
    return 0


def _show(options: Shown, plain: object, words: str) -> None:
    if options.json:
        print(json.dumps(plain, ensure_ascii=False, indent=2))
    else:
        _say(words)


def _say(words: str) -> None:
    from textwrap import wrap

    from calmlarder.render.style import style_of_output

    width = style_of_output().width
    for line in words.splitlines():
        indent = " " * (len(line) - len(line.lstrip()))
        print("\n".join(wrap(line, width, subsequent_indent=indent)) or line)


def _words(given: str) -> str:
    """A few words. Raises CannotGoOn for what cannot be kept."""
    words = " ".join(given.split())
    if not words.isprintable() or len(words) > _LONGEST_WHY:
        remedy = f"write at most {_LONGEST_WHY} signs of text"
        raise CannotGoOn([Problem(where="--why", what="cannot be kept", remedy=remedy)])
    return words


def _challenge(given: str) -> Challenge:
    name = given.strip().lower().replace(" ", "_").replace("-", "_")
    name = "wheat" if name == "fructans" else name
    for challenge in CHALLENGES:
        if challenge == name:
            return challenge
    remedy = f"choose from: {', '.join(CHALLENGES)}"
    raise CannotGoOn([Problem(where="GROUP", what=f"`{given}` is no group that is tried here", remedy=remedy)])


def _answers(given: str | None) -> tuple[str, ...]:
    """What is answered with yes; asked at a terminal. Raises CannotGoOn where nobody can be asked, or for no key."""
    if given is None:
        return _asked()
    words = [word.strip().lower() for word in given.split(",") if word.strip()]
    words = [] if words == ["none"] else words
    unknown = [word for word in words if word not in KEYS]
    if unknown:
        remedy = f"choose from: {', '.join(KEYS)}, or none"
        raise CannotGoOn([Problem(where="--yes", what=f"`{unknown[0]}` is none of the questions", remedy=remedy)])
    return tuple(words)


def _asked() -> tuple[str, ...]:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        remedy = (
            "run it in a terminal to be asked, or read them in `calmlarder challenge start --help` and give --yes with "
            f"those of {', '.join(KEYS)} that you answer yes to, or --yes none"
        )
        raise CannotGoOn([Problem(where="--yes", what="questions come before a challenge", remedy=remedy)])
    _say(f"{ABOUT} Type y for yes or n for no. {IF_UNSURE}")
    found = []
    for number, question in enumerate(QUESTIONS):
        if question.is_scoff and not QUESTIONS[number - 1].is_scoff:
            _say(f"{BEFORE_SCOFF} (Ctrl-C stops.)")
        if _is_yes(question):
            found.append(question.key)
    return tuple(found)


def _is_yes(question: Question) -> bool:
    """A clear answer, which is asked for until it comes: nothing else is read as no."""
    while (answer := said_yes(input(f"{question.words} "))) is None:
        _say(f"Please answer y for yes or n for no. {IF_UNSURE_SEEN if question.key == SEEN else IF_UNSURE}")
    return answer
