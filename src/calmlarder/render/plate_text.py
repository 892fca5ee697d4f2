"""What a plate brings and whether it fits, as text and as JSON."""

import textwrap
from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Any, NamedTuple

from calmlarder.and_list import and_list
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.intake.load import at_most_of
from calmlarder.intake.meal import Judged, Table
from calmlarder.intake.plate import Item, Row, in_grams
from calmlarder.intake.stacking import held_ug
from calmlarder.render.caution import CAUTION
from calmlarder.render.of_limit import of_limits
from calmlarder.render.style import BESIDE_LIMITS, Style, bar, blocks

_BAR_WIDTH = 16
_MOST_TOLD = 2  # limits that are passed, where there is room for a line only
_MOST_SHARE = 2.0  # beyond it no percentage: it says no more, and frightens
_EATEN = "No harm is done, and the next meal needs no making up."
_NO_HARM = f"If you have eaten it already: {_EATEN[0].lower()}{_EATEN[1:]}"
_CHALLENGED = "While a challenge goes on, the limits of elimination hold, for other groups, too."


class OnPlate(NamedTuple):
    """A line that was understood."""

    text: str
    name: str
    item: Item


class Unread(NamedTuple):
    """A line that cannot be counted, and why."""

    text: str
    why: str


class PlateAnswer(NamedTuple):
    """Everything that is to be told of a plate; `names` are those of all foods in it, by their ids."""

    foods: tuple[OnPlate, ...]
    judged: Judged
    table: Table
    unread: tuple[Unread, ...]
    names: Mapping[str, str] = MappingProxyType({})
    avoided: Mapping[str, tuple[str, ...]] = MappingProxyType({})  # foods by id that hold what is to be left out
    is_challenged: bool = False  # the limits of elimination hold then, whatever one's own are

    @property
    def fits(self) -> bool | None:
        """None where something could not be counted and the rest fits: nobody can say."""
        if not self.judged.fits or self.avoided:
            return False
        return None if self.unread or not self.foods else True


def plate_object(answer: PlateAnswer) -> dict[str, Any]:
    """The answer of `plate --json`. Grams are of the whole dish, loads of one person."""
    people, rows = answer.table.people, answer.judged.rows
    sitting = [row for row in rows if row.food is None]
    weigh = {answer.foods[number].item.food for number in answer.judged.weigh}
    return {
        "fits": answer.fits,
        "foods": [
            {"text": one.text, "food": one.item.food, "grams": float(one.item.grams),
             "how": "weigh" if one.item.weighed else "box" if one.item.profile.settled else "eye"}
            for one in answer.foods
        ],
        "loads_g": {row.cap.key: in_grams(row.sum.likely, people) for row in sitting},
        "at_most_g": {row.cap.key: in_grams(row.sum.at_most, people) for row in sitting},
        "limits_g": {row.cap.key: _limit(row) for row in sitting},
        "over": [_over(row, answer.table) for row in rows if not row.fits(people)],
        "weigh": sorted(weigh),
        "less": [
            {"food": answer.foods[one.number].item.food, "grams": float(one.grams)} for one in answer.judged.less
        ],
        **_avoided_object(answer),
        "unread": [one._asdict() for one in answer.unread],
    }  # fmt: skip


def _avoided_object(answer: PlateAnswer) -> dict[str, Any]:
    """What is left out here and on the plate; no key where there is nothing of the kind."""
    told = [{"food": food, "allergens": list(held)} for food, held in answer.avoided.items()]
    return {"avoided": told} if told else {}


def _limit(row: Row) -> list[float | None]:
    return [float(row.cap.typical_g), None if row.cap.at_most_g is None else float(row.cap.at_most_g)]


def _over(row: Row, table: Table) -> dict[str, Any]:
    """Before and plate together, for whoever has the least room."""
    people, room = table.people, min(row.rooms, key=lambda one: one.likely)
    likely = row.sum.likely + Fraction(held_ug(table.counted, row.cap, row.food) * PER_MG, 1000) * people
    off = [*row.sum.off.values(), *(one * people for one in room.before)]
    return {
        "scope": "sitting" if row.food is None else "food",
        "food": row.food,
        "group": row.cap.group,
        "g": in_grams(likely, people),
        "at_most_g": in_grams(at_most_of(likely, off), people),
        "limit_g": _limit(row),
    }


def plate_text(answer: PlateAnswer, style: Style) -> str:
    """The verdict first, then each limit, then what to do."""
    return "\n".join(_lines(answer, style)) + "\n"


def plate_glance(answer: PlateAnswer) -> str:
    """The verdict in a line or two: the fullest limit, what to weigh, what could not be counted."""
    words = [f"{_verdict(answer)}.", *_left_out(answer)]
    sitting = [row for row in answer.judged.rows if row.food is None]
    over = _passed(answer)
    for row in over[:_MOST_TOLD] or [max(sitting, key=lambda row: _full(row, answer))]:
        what = "Over: " if over else "Fullest: "
        words.append(f"{what}{_alone(row, answer) * bool(over)}{_how_full(row, answer)}.")
    words += [f"{_weigh(answer)}."] if answer.judged.weigh else []
    words += [f"Not counted: {', '.join(one.text for one in answer.unread)}."] if answer.unread else []
    return " ".join(words)


def plate_over(answer: PlateAnswer) -> str:
    """Of what was eaten: which limits it passes and what of it is left out here; empty where there is nothing."""
    passed = _passed(answer)
    groups = {row.cap.group for row in passed if row.food is None}
    told = [row for row in passed if row.food is None or row.cap.group not in groups][:_MOST_TOLD]
    words = [f"Over the limit: {_alone(row, answer)}{_how_full(row, answer)}." for row in told]
    return " ".join([*words, *([_EATEN] if words else []), *_left_out(answer)])


def _passed(answer: PlateAnswer) -> list[Row]:
    return [row for row in answer.judged.rows if not row.fits(answer.table.people)]


def _how_full(row: Row, answer: PlateAnswer) -> str:
    told, name = _over(row, answer.table), CAP_WORDS.get(row.cap.key, row.cap.key)
    end = "" if row.cap.at_most_g is None else f" of {row.cap.at_most_g:.2f}"
    likely = f"likely {told['g']:.2f} of {row.cap.typical_g:.2f} g"
    return f"{name}, {likely}, at most {told['at_most_g']:.2f}{end} g"


def _left_out(answer: PlateAnswer) -> list[str]:
    names = {one.item.food: one.name for one in answer.foods}
    return [
        f"{names[food].capitalize()} holds or may hold {and_list([*held])}, which is left out here."
        for food, held in answer.avoided.items()
    ]


def _verdict(answer: PlateAnswer) -> str:
    if answer.fits is False:
        return "This plate does not fit"
    return "Nobody can say whether it fits" if answer.fits is None else "This plate fits"


def _alone(row: Row, answer: PlateAnswer) -> str:
    return "" if row.food is None else f"{answer.names.get(row.food, row.food)} alone: "


def _weigh(answer: PlateAnswer) -> str:
    return f"Weigh: {', '.join(dict.fromkeys(answer.foods[number].name for number in answer.judged.weigh))}"


def _full(row: Row, answer: PlateAnswer) -> float:
    """How full a limit is, likely or at most, with what was eaten before."""
    told = _over(row, answer.table)
    typical, most = _limit(row)
    return max(float(told["g"]) / float(typical or 1), 0.0 if most is None else float(told["at_most_g"]) / most)


def _lines(answer: PlateAnswer, style: Style) -> Iterator[str]:
    judged, people = answer.judged, answer.table.people
    yield style.strong(_verdict(answer))
    for line in [*_left_out(answer), *_first_words(answer)]:
        yield from style.hanging(line)
    for row in judged.rows:
        if not row.fits(people):
            told = _over(row, answer.table)
            yield from style.hanging(
                f"{_alone(row, answer)}{CAP_WORDS.get(row.cap.key, row.cap.key)} likely {told['g']:.2f} g, at most "
                f"{told['at_most_g']:.2f} g; the limit is {row.cap.typical_g:.2f} g"
                f"{'' if row.cap.at_most_g is None else f', at most {row.cap.at_most_g:.2f} g'}."
            )
    if judged.weigh:
        yield from style.hanging(f"{_weigh(answer)}. By eye will do for the rest.")
    for one in answer.unread:
        yield from style.hanging(f"Not counted: {one.text}: {one.why}.")
    yield ""
    if answer.foods:
        yield from _figures(answer, style)
        yield ""
    yield from textwrap.wrap(CAUTION, style.width)


def _first_words(answer: PlateAnswer) -> Iterator[str]:
    """In plain words what is too much, what stays on a plate that fits, and that nothing is to be made up for."""
    if not answer.foods:
        yield "Nothing could be counted: write another name, or look at the label (`calmlarder label`)."
    if answer.is_challenged:
        yield _CHALLENGED
    if answer.judged.fits:
        return
    much = [answer.foods[one.number].name for one in answer.judged.less]
    yield f"More than the limits aim at{f', mostly from {and_list(much)}' if much else ''}."
    if answer.judged.less:
        stays = [_stays(answer.foods[one.number], float(one.grams)) for one in answer.judged.less]
        yield f"Smallest change that makes it fit: {and_list(stays)}."
    yield _NO_HARM


def _stays(one: OnPlate, less: float) -> str:
    left, had = float(one.item.grams) - less, float(one.item.grams)
    return f"{left:g} g of {one.name} instead of {had:g} g" if left > 0 else f"no {one.name}"


def _figures(answer: PlateAnswer, style: Style) -> Iterator[str]:
    """Each limit, with a bar."""
    judged, people = answer.judged, answer.table.people
    yield style.strong(BESIDE_LIMITS)
    sitting = [row for row in judged.rows if row.food is None]
    width = max((len(CAP_WORDS.get(row.cap.key, row.cap.key)) for row in sitting), default=0)
    for row in sitting:
        likely, most = in_grams(row.sum.likely, people), in_grams(row.sum.at_most, people)
        limit, end = float(row.cap.typical_g), None if row.cap.at_most_g is None else float(row.cap.at_most_g)
        full = max(round(likely, 2) / limit, 0.0 if end is None else round(most, 2) / end)
        line = f"  {CAP_WORDS.get(row.cap.key, row.cap.key):<{width}} {of_limits(likely, most, limit, end)}"
        far = f"{blocks(1, _BAR_WIDTH, style)} more than twice"
        yield f"{line} {bar(full, _BAR_WIDTH, style) if full <= _MOST_SHARE else far}"
