"""Names, limits and ends of challenges in a cook's words: what every answer on them shares."""

from calmlarder.intake.own_limit import OwnLimit
from calmlarder.reintroduction.course import Standing
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import group_of, ladder_of

CARE = "Go through this with a dietitian: they know what these days cannot tell. A day or a dose may always wait."
SETTLE = (
    "If you feel unwell, eat as in elimination until it settles; see a doctor if it is severe or does not settle in a "
    "few days."
)
_NAMES = {
    "excess_fructose": "excess fructose", "gos": "GOS", "wheat": "fructans from wheat", "onion": "fructans from onion",
    "garlic": "fructans from garlic",
}  # fmt: skip
_IN_FOODS = {("core",): " in grains, pulses and nuts", ("fresh", "other"): " in other foods"}  # the cut-off classes


def name_of(challenge: str) -> str:
    """A challenge or a component in a cook's words."""
    return _NAMES.get(challenge, challenge)


def upper(words: str) -> str:
    """The words as the start of a sentence."""
    return words[:1].upper() + words[1:]


def stopped_words(course: Course) -> str:
    """That a challenge was stopped, and why."""
    why = f": {course.why_stopped}" if course.why_stopped else ""
    return f"The challenge of {name_of(course.challenge)} was stopped{why}"


def kept_words(course: Course, limit_g: float, food: str = "") -> str:
    """That what elimination holds stays; `food` is the name of what was eaten for the challenge."""
    grams = max((one.grams / one.dose_g for one in course.eaten if one.dose_g), default=0.0) * limit_g
    as_food = f", such as about {int(grams)} g of {food}" if food and grams >= 1 else ""
    return (
        f"The limit of elimination stays for now: {limit_g:g} g of {name_of(group_of(course.challenge))} at one meal"
        f"{as_food}. That is no failure, and it need not stay so: it is worth another try in 3 to 6 months."
    )


def concluded_words(course: Course, stands: Standing, food: str = "") -> str:
    """What was found, with its meaning; `food` is the name of what was eaten for it."""
    limit = stands.reckoning.own_limit_g
    risk = dict(zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)).get(limit)
    if risk is None:
        below = any(one.result == "reaction" and 0 < one.eaten.dose_g < limit for one in stands.tried)
        less = f" You reacted to less than that, so leave {course.challenge} out until then." if below else ""
        return f"{kept_words(course, limit, food)}{less}"
    grams = max((one.grams for one in course.eaten if one.dose_g == limit), default=0.0)
    as_food = f", such as {grams:g} g of {food}" if food and grams else ""
    of_it = f"{limit:g} g of {name_of(group_of(course.challenge))} in one meal{as_food}"
    talk = "It is no diagnosis: talk it over with a dietitian before you eat by it."
    if limit == ladder_of(course.challenge).doses_g[-1]:
        return f"You can likely eat at least {of_it} (more was not tried); {calm_words(risk)} with that much. {talk}"
    more = max((one.eaten.dose_g for one in stands.tried if one.result == "calm"), default=limit)
    careful = f" You were calm with {more:g} g, too; the lower one is the careful choice." if more > limit else ""
    return f"Your estimated limit: {of_it}; {calm_words(risk)} with that much.{careful} {talk}"


def calm_words(risk: float) -> str:
    """A risk as days that stay calm: `likely about 11 days of 12 calm`."""
    of = 12 if risk > 1 / 24 else 50
    return f"likely about {min(of - 1, round((1 - risk) * of))} days of {of} calm"


def limit_line(own: OwnLimit) -> str:
    """An own limit with who says so, and how sure it is."""
    where = _IN_FOODS.get(own.classes, f" (foods: {', '.join(own.classes)})") if own.classes else ""
    said = "found by a challenge" if own.said_by == "challenge" else f"set by {own.said_by}"
    sure = "" if own.risk is None else f"; {calm_words(own.risk)} with that much"
    return f"{name_of(own.component)}: {own.grams:g} g at one meal{where}, {said}, {own.on.isoformat()}{sure}"
