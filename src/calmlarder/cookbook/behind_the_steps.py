"""Lines behind the numbered steps of a text that are none: who eats it, what else there is, how the job went.

`5) Bring the tin to the table.`, an empty line, and `Remember that two of us eat no shellfish.`
"""

import re
from collections.abc import Sequence

from calmlarder.cookbook.bounds import LONGEST_STEP
from calmlarder.cookbook.text_lines import Line

_NUMBER = re.compile(r"\s*(?:step\s*)?(\d{1,2})\s?[.):](?=\s)", re.IGNORECASE)
_LEAST_NUMBERED, _MOST_BEHIND = 3, 8  # steps, and lines behind them: ours
_WORKS = re.compile(
    r"\b(?:add|bake|beat|blend|boil|bring|brown|chill|chop|cook|cool|cover|cut|dice|divide|drain|drizzle|fold|freeze|fry"
    r"|garnish|grate|grill|heat|knead|ladle|mash|mix|peel|pour|press|put|reheat|rinse|roast|roll|scatter|season|serve"
    r"|simmer|slice|soak|spoon|spread|sprinkle|squeeze|steam|stir|strain|swirl|toast|top|toss|turn|warm|whisk|wrap)\b",
    re.IGNORECASE,
)


def without_what_is_behind(lines: Sequence[Line], rest: Sequence[int]) -> list[int]:
    """The numbers of the lines that tell the method, without a few below it that bear no number and tell no work."""
    numbers = [(index, int(found[1])) for index in rest if (found := _NUMBER.match(lines[index].text[:LONGEST_STEP]))]
    in_a_row = [number for _, number in numbers] == list(range(1, len(numbers) + 1))
    if len(numbers) < _LEAST_NUMBERED or not in_a_row:
        return list(rest)
    last = numbers[-1][0]
    empty = next((at for at in range(last + 1, len(lines)) if not lines[at].text.strip()), len(lines))
    behind = [index for index in rest if index > empty and lines[index].text.strip()]
    if len(behind) > _MOST_BEHIND or any(_WORKS.search(lines[index].text[:LONGEST_STEP]) for index in behind):
        return list(rest)
    return [index for index in rest if index <= empty]
