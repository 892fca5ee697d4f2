"""One sort of a thing in one kitchen: a dish with two lines of flour is not cooked with two flours."""

from collections.abc import Sequence

from calmlarder.adapt.choice import Choice, Open

_FREE = "-free "
_STAYS = frozenset({None, "less", "weigh"})


def of_one_sort(lines: Sequence[Open], chosen: Sequence[int]) -> tuple[int, ...]:
    """The choices, where a food that one line has without its gluten or lactose comes so in its other lines too."""
    free: dict[str, str] = {}
    for line, number in zip(lines, chosen, strict=True):
        choice = line.choices[number]
        if _is_free(choice):
            free[line.line.food.id] = choice.brings[0].food.id
    return tuple(_same(line, number, free.get(line.line.food.id)) for line, number in zip(lines, chosen, strict=True))


def _is_free(choice: Choice) -> bool:
    return choice.kind == "swap" and len(choice.brings) == 1 and _FREE in choice.brings[0].food.name


def _same(line: Open, number: int, food: str | None) -> int:
    if food is None or line.choices[number].kind not in _STAYS:
        return number
    alike = [
        place
        for place, one in enumerate(line.choices)
        if _is_free(one) and {part.food.id for part in one.brings} == {food}
    ]
    return alike[0] if alike else number
