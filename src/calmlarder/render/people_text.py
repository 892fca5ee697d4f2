"""People of a home, in words and as plain values."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.reintroduction.entry_questions import ADULT_YEARS
from calmlarder.render.challenge_names import limit_line
from calmlarder.tables.vocabulary import allergen_words

_WHOSE = {"me": "Your limits"}
_HOW = (
    "The first figure is for what a meal likely brings, the one at most for what it may bring where "
    "guesses are off. What was eaten in the hours before leaves less of them."
)
_NONE = "None: a dinner keeps to those of the others who eat, and to diet and allergens."
_CHILD = "Under 18: limits like these only with a dietitian, who sees to it that growing goes on well."

if TYPE_CHECKING:
    from calmlarder.household.person import Person
    from calmlarder.tables.book import Tables


def person_object(one: "Person") -> dict[str, Any]:
    """Plain values."""
    return one.model_dump(mode="json")


def people_text(people: "Sequence[Person]") -> str:
    """Everybody, a paragraph each."""
    return "\n".join(line for one in people for line in _lines(one))


def _lines(one: "Person") -> list[str]:
    is_child = one.age is not None and one.age < ADULT_YEARS and one.profile != "none"
    care = [f"  {_CHILD}"] if is_child else []
    return [f"{one.name}: {'; '.join(what_holds(one))}", *care, *(f"  {limit_line(own)}" for own in one.own_limits)]


def about_limits(one: "Person", tables: "Tables") -> str:
    """The limits that dinners for somebody keep to, each with its figures."""
    from calmlarder.render.limit_text import limits_held

    title = _WHOSE.get(one.name, f"The limits of {one.name}")
    held = limits_held(one.limits(tables))
    return "\n".join([f"{title}: {one.profile}" if held else title, "", *([held, "", _HOW] if held else [_NONE])])


def what_holds(one: "Person") -> list[str]:
    """What holds for somebody, a few words each; a phase with the limits of its own name is said once."""
    since = f" since {one.since}" if one.since else ""
    is_in_phase = one.phase == one.profile
    limits = "no limits" if one.profile == "none" else f"limits: {one.profile}{since if is_in_phase else ''}"
    said = [one.diet, *([f"no {', '.join(map(allergen_words, one.avoid))}"] if one.avoid else []), limits]
    said += [f"phase: {one.phase}{since}"] if one.phase and not is_in_phase else []
    said += [f"protein aimed at: {one.protein_g:g} g a dinner"]
    said += [f"appetite {round(100 * one.appetite)} % of a usual share"] if one.appetite != 1 else []
    said += [f"{one.weight_kg:g} kg"] if one.weight_kg is not None else []
    return said + ([f"{one.age} years"] if one.age is not None else [])
