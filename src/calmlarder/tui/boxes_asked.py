"""What may go into boxes of a dinner, in words to choose from."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.cooking import Boxable

MINE = "my own portion: the others eat now"


def ways_to_box(dinner: "Dinner", may: "Boxable", planned: float) -> dict[str, float]:
    """Portions by what is said of them; what a plan wants stands first, so that its box is not forgotten."""
    from calmlarder.household.cooking import HALF

    people = dinner.people
    all_of_it = f"all {people} portions are" if people > 1 else "all of it is"
    words: dict[str, float] = {f"nothing: {all_of_it} eaten now": 0}
    words |= {_boxes_words(n, may.most, dinner): n for n in range(1, may.most + 1)}
    words |= {"half of it: the other half is eaten now": HALF} if may.halves else {}
    words |= {MINE: 1} if may.mine else {}
    first = {f"as planned, {said}": n for said, n in words.items() if n and n == planned and said != MINE}
    return {**first, **{said: n for said, n in words.items() if n not in first.values() or said == MINE}}


def _boxes_words(boxes: int, most: int, dinner: "Dinner") -> str:
    """So many portions, as they are offered for boxes, and what is eaten then."""
    if dinner.portions:
        which = "the guest's portion" if most == 1 else f"{boxes} of the {most} guests' portions"
        return f"{which}: the rest is eaten now"
    left = dinner.people - boxes
    if not left:
        which = "all of it" if boxes == 1 else f"all {boxes} portions"
        return f"{which}: nothing is eaten now, and nothing logged"
    return f"{boxes} of {dinner.people} portions: {left} {'are' if left > 1 else 'is'} eaten now"
