"""Whether a challenge may go on for somebody as they are now: what they avoid and how old they are may be said late."""

from calmlarder.household.person import Person
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.reintroduction.entry_questions import ADULT_YEARS, AVOIDED, UNDER_AGE
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import order
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def may_eat(person: Person, food: Food) -> bool:
    """Whether a food fits their diet, their allergens and what they never eat."""
    return suits_diet(food, person.diet) and not allergens_met(food, person.avoid) and food.id not in person.never


def why_no_more(person: Person, course: Course, tables: Tables) -> str:
    """Why a challenge that was begun goes on no longer; empty where it may."""
    if person.age is not None and person.age < ADULT_YEARS:
        return UNDER_AGE
    food = tables.food_by_id.get(course.food)
    if course.challenge not in order(False, person.avoid) or (food is not None and not may_eat(person, food)):
        return AVOIDED
    return ""
