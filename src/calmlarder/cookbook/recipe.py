"""A recipe as it was read, and what each ingredient line of it means."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

Form = Literal["text", "markdown", "jsonld"]
# `read`: the food is known; `ask`: it may be several; `unknown`: none is known; `heading` and `nothing` bring nothing.
Outcome = Literal["read", "ask", "unknown", "heading", "nothing"]


class Recipe(BaseModel):
    """A recipe as written: `ingredients` are its lines in order, headings among them; `form` is how it came in.

    All text is cleaned of control signs. `source` keeps what a rewriting in the same form needs: the text itself,
    or the JSON-LD object. `minutes` is the whole time it says it takes,
    `pieces` its yield where that counts pieces, jars or cups and no people, of which bowls and plates are taken for
    people; `serves_up_to` the upper end of a range of people; `guessed` says that the page marks no
    recipe, and its headings and lists were read; `page` that it came as a page, which a changed one does not go back
    into: a cook gets it in words; `first_title` is what the original was called, where this one has been changed;
    `notes` are what a page says under a heading of that kind.
    """

    model_config = ConfigDict(frozen=True)

    title: str
    serves: int | None
    ingredients: tuple[str, ...]
    steps: tuple[str, ...]
    form: Form
    source: str
    minutes: int | None = None
    pieces: str = ""
    serves_up_to: int | None = None
    guessed: bool = False
    page: bool = False
    first_title: str = ""
    notes: tuple[str, ...] = ()


class IngredientRead(BaseModel):
    """What one line means. Grams are of the edible food for the whole recipe, None where the line does not tell.

    `weighed` says the line gives a weight or volume, `assumed` what was taken for granted (`ripe`).
    `choices` names what it may mean where it must be asked;
    `alternatives` are foods the line itself allows in its place ("butter or oil"), `said` the words of the line
    without them, where these have words of their own ("(or 1 potato)"), which `instead` has read.
    `unsure` says what is not known of it, so that it does not stay as it is where a usual amount passes a limit.
    `also` are the further foods of a line that names several ("salt and pepper"), each read; a line of which one part
    is not read is not `read`.
    """

    model_config = ConfigDict(frozen=True)

    text: str
    outcome: Outcome
    food: str | None = None
    grams_low: float | None = None
    grams: float | None = None
    grams_high: float | None = None
    weighed: bool = False
    optional: bool = False
    assumed: str = ""
    choices: tuple[str, ...] = ()
    alternatives: tuple[str, ...] = ()
    said: str = ""
    unsure: str = ""
    instead: tuple["IngredientRead", ...] = ()
    also: tuple["IngredientRead", ...] = ()


def together(reads: list[IngredientRead]) -> IngredientRead:
    """The foods of a line as one reading; each may itself stand for parts of a whole."""
    flat = [one for read in reads for one in (read.model_copy(update={"also": ()}), *read.also)]
    return flat[0].model_copy(update={"also": tuple(flat[1:])})


def shared_out(read: IngredientRead, count: int) -> IngredientRead:
    """One amount for several foods together: any of them may be nearly all of it."""
    if read.grams is None or read.grams_low is None:
        return read
    return read.model_copy(update={"grams_low": 0.0, "grams": round(read.grams / count, 2)})
