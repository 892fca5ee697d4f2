"""People of a home, in words and as plain values."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.reintroduction.entry_questions import ADULT_YEARS
from calmlarder.render.challenge_names import limit_line
from calmlarder.tables.vocabulary import allergen_words

_CHILD = "Under 18: limits like these only with a dietitian, who sees to it that growing goes on well."

if TYPE_CHECKING:
    from calmlarder.household.person import Person


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
