"""How a home reads amounts, heat and names: metric and British words, or ounces, cups, degrees F and American ones.

Grams stay beside ounces wherever something is weighed: limits and figures are in grams.
"""

import math
import re
from collections.abc import Callable, Iterable
from functools import cached_property
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.plan.planned import Planned, SittingPlanned
    from calmlarder.tables.book import Tables

Measures = Literal["metric", "american"]
Naming = Literal["british", "american"]
MEASURES: tuple[Measures, ...] = ("metric", "american")
NAMINGS: tuple[Naming, ...] = ("british", "american")

_OUNCE_G = 28.349523125  # NIST Special Publication 811, appendix B.8
_POUND_OZ = 16
_INCH_CM = 2.54  # NIST Special Publication 811, appendix B.8
_CUP_ML, _SPOON_ML = 240, 15  # 21 CFR 101.9(b)(5)(viii): a cup, a tablespoon
_OVEN_F = 25  # what the dial of an oven has: common practice, no source
_COOLEST_OVEN_C = 100
_QUARTERS = MappingProxyType({0: "", 1: "¼", 2: "½", 3: "¾"})
_WEIGHT = re.compile(r"\b(\d+(?:\.\d+)?) g (?=[a-zA-Z])")
_OF_GROUPS = r"(?:fructans|GOS|lactose(?!-free)|(?:excess )?fructose|polyols|sorbitol|mannitol|total|without|a day)"
# Of food, not of what is in it: figures of groups have decimals, protein and its like their word, limits their "of".
_AMOUNT = re.compile(
    r"(?<![\d.])\b(?:([1-9]\d*) to )?([1-9]\d+(?:\.\d)?) g\b(?! \(|\)|, [\d.]+ (?:oz|lb))(?! ?/)"
    rf"(?! (?:protein|fibre|carb|fat|sugar|of its limit|a kg))(?! (?:of )?{_OF_GROUPS})"
)
_KILOS = re.compile(r"(?<![\d.(])\b(\d+(?:\.\d+)?) kg\b(?! \()(?! ?/)")
_HEAT = re.compile(r"(?<!\()\b(\d{2,3}) ?°?C\b")
_VOLUME = re.compile(r"\b(\d+) ml\b")
_POURED = re.compile(r"(?<![\d.(])\b(\d+(?:\.\d+)?) (ml|l|litres?)\b(?! \()(?! ?/)")
_PARTS = MappingProxyType({"a quarter": "¼", "a third": "⅓", "half": "½", "two thirds": "⅔", "three quarters": "¾"})
_BY_SPOON = re.compile(rf"about (?:([\d¼½¾]+) |({'|'.join(_PARTS)}) of a )(tsp|tbsp|cups?)")
_LENGTH = re.compile(r"\b(\d+(?:\.\d+)?) cm\b")
_SIZED = re.compile(r"(?<![\d.(])\b(\d+(?:\.\d+)?) cm\b(?! \()")


class Manner:
    """Turns what is shown in metric and British words into what this home reads."""

    def __init__(self, measures: Measures = "metric", names: Iterable[tuple[str, str]] = ()) -> None:
        """`names` are pairs of a British name and the American one; none leaves names as they are."""
        self.measures = measures
        self._names = dict(names)

    @property
    def is_plain(self) -> bool:
        """Whether everything is read as it stands."""
        return self.measures == "metric" and not self._names

    def as_a_page_names_them(self, written: str) -> "Manner":
        """The same for words of a page. One that has American names keeps its own: biscuits are no cookies there."""

        def has(name: str) -> bool:
            return re.search(rf"\b{re.escape(name)}\b", written, re.IGNORECASE) is not None

        if not any(has(here) for name, here in self._names.items() if name not in here):
            return self
        return Manner(self.measures, [(name, here) for name, here in self._names.items() if not has(name)])

    @cached_property
    def _named(self) -> re.Pattern[str]:
        longest_first = sorted(map(re.escape, self._names), key=len, reverse=True)
        return re.compile(rf"\b(?:{'|'.join(longest_first)})\b", re.IGNORECASE)

    def name(self, text: str) -> str:
        """A text with its foods and tools named as here."""
        return self._named.sub(self._one_name, text) if self._names else text

    def _one_name(self, found: re.Match[str]) -> str:
        new = self._names[found[0].lower()]
        return new[:1].upper() + new[1:] if found[0][:1].isupper() else new

    def work(self, text: str) -> str:
        """A step, or a line of the timeline: weights, heat, volumes and sizes too."""
        if self.measures == "american":
            text = _WEIGHT.sub(lambda found: f"{ounces(float(found[1]))} ", text)
            text = _HEAT.sub(lambda found: f"{fahrenheit(int(found[1]))} °F ({found[0]})", text)
            text = _VOLUME.sub(lambda found: f"{cups(int(found[1]))} ({found[0]})", text)
            text = _LENGTH.sub(lambda found: f"{inches(float(found[1]))} in", text)
        return self.name(text)

    def beside(self, grams: float) -> str:
        """What stands beside grams in a list: ounces, or nothing."""
        return ounces(grams) if self.measures == "american" else ""

    def weight(self, grams: float) -> str:
        """An amount in the one measure that is read here, for pictures that nobody weighs by."""
        return self.beside(grams) if grams and self.measures == "american" else f"{grams:.0f} {self.small_unit}"

    @property
    def small_unit(self) -> str:
        """The unit of an axis of weights."""
        return "oz" if self.measures == "american" else "g"

    def in_small_units(self, grams: float) -> float:
        """On that axis; ounces in tenths, as in words."""
        return _tenths(grams) / 10 if self.measures == "american" else grams

    def amount(self, grams: float) -> str:
        """`60 g`, or `60 g (2.1 oz)`."""
        return f"{grams:g} g ({ounces(grams)})" if self.measures == "american" else f"{grams:g} g"

    def told(self, text: str) -> str:
        """Any words: foods named as here, and their measures; told twice they are as told once."""
        return self.name(self.measured(text))

    def measured(self, text: str) -> str:
        """Ounces beside what is weighed, cups beside what is poured, inches beside cm, °F before °C.

        Grams stay, since a limit is in grams; what a food brings (`0.27 g`, `24 g protein`) is told in grams alone.
        """
        if self.measures == "american":
            text = _AMOUNT.sub(_with_ounces, text)
            text = _KILOS.sub(lambda found: f"{found[0]} ({ounces(1000 * float(found[1]))})", text)
            text = _POURED.sub(
                lambda found: f"{found[0]} ({poured(float(found[1]) * (1 if found[2] == 'ml' else 1000))})", text
            )
            text = _SIZED.sub(lambda found: f"{found[0]} ({inches(float(found[1]))} in)", text)
            text = _HEAT.sub(lambda found: f"{fahrenheit(int(found[1]))} °F ({found[0]})", text)
        return text

    def title(self, dinner: "Dinner") -> str:
        """What a dinner is called here."""
        return self._knowing(dinner).name(dinner.title)

    def dinner(self, dinner: "Dinner") -> "Dinner":
        """A dinner in the words of this home. It is to be read only: what is kept and checked is the one it came of."""
        if self.is_plain:
            return dinner
        home = self._knowing(dinner)
        name = home.name
        spoons = self._spoons(dinner)

        def work(text: str) -> str:
            for weight, spoon in spoons:
                text = weight.sub(spoon, text)
            return home.work(text)

        moments = tuple(one.model_copy(update={"what": work(one.what)}) for one in dinner.timeline.moments)
        uses = tuple(
            one.model_copy(update={"name": name(one.name), "household": _if_said(one.household, name)})
            for one in dinner.uses
        )
        apart = tuple(
            one.model_copy(
                update={
                    "name": name(one.name),
                    "household": _if_said(one.household, name),
                    "said": work(one.said),
                    "moment": one.moment.model_copy(update={"what": work(one.moment.what)}),
                }
            )
            for one in dinner.apart
        )
        return dinner.model_copy(
            update={
                "title": name(dinner.title),
                "steps": tuple(map(work, dinner.steps)),
                "timeline": dinner.timeline.model_copy(update={"moments": moments}),
                "uses": uses,
                "apart": apart,
                "weigh_first": tuple(map(home.weighed, dinner.weigh_first)),
                "taken_for_granted": tuple(map(name, dinner.taken_for_granted)),
                "contributions": tuple(one.model_copy(update={"name": name(one.name)}) for one in dinner.contributions),
                "cautions": tuple(map(work, dinner.cautions)),
            }
        )

    def _knowing(self, dinner: "Dinner") -> "Manner":
        """The same with short names: what is fresh is called by its bare name in a title or a step (`coriander`)."""
        foods = [use.name for use in dinner.uses]
        fresh = {food.removeprefix("fresh "): self._names.get(food) for food in foods if food.startswith("fresh ")}
        bare = {
            short: new
            for short, new in fresh.items()
            if new is not None and not any(short in food.split() for food in foods if food != f"fresh {short}")
        }
        return Manner(self.measures, (self._names | bare).items()) if bare else self

    def _spoons(self, dinner: "Dinner") -> list[tuple[re.Pattern[str], str]]:
        """For what goes in by eye and has a spoon or a cup: its grams in a step, and the spoons to take in their place.

        Nobody measures a tenth of an ounce of cumin.
        """
        told = [(use, _BY_SPOON.fullmatch(use.household or "")) for use in dinner.uses if use.how != "weigh"]
        if self.measures != "american":
            return []
        return [
            (
                re.compile(rf"\b{use.grams:g} g (?={re.escape(use.name)}\b)"),
                f"{spoon[1] or _PARTS[spoon[2]]} {spoon[3]} ",
            )
            for use, spoon in told
            if spoon is not None
        ]

    def planned(self, planned: "Planned") -> "Planned":
        """The same of a plan."""
        if self.is_plain:
            return planned
        return planned.model_copy(update={"sittings": self.sittings(planned.sittings)})

    def sittings(self, sittings: "tuple[SittingPlanned, ...]") -> "tuple[SittingPlanned, ...]":
        """The same of its meals."""
        return tuple(
            one if one.dinner is None else one.model_copy(update={"dinner": self.dinner(one.dinner)})
            for one in sittings
        )

    def weighed(self, line: str) -> str:
        """`2.1 oz kale (60 g)`, as in the list of amounts; scales show either."""
        found = _WEIGHT.match(line)
        if found is None or self.measures != "american":
            return self.name(line)
        return f"{ounces(float(found[1]))} {self.name(line[found.end() :])} ({found[0].strip()})"


PLAIN = Manner()


def manner_of(measures: Measures, naming: Naming, tables: "Tables") -> Manner:
    """What a home has settled, with the names of its tables."""
    return Manner(
        measures, ((one.british, one.american) for one in tables.american_names) if naming != "british" else ()
    )


def ounces(grams: float) -> str:
    """Ounces of 28.35 g in tenths, never more than the grams; halves from a pound on, grams below a tenth."""
    tenths = _tenths(grams)
    if tenths >= _POUND_OZ * 10:
        halves = math.floor(grams / _OUNCE_G * 2 + 1e-9)
        pounds, rest = divmod(halves, 2 * _POUND_OZ)
        return f"{pounds} lb {rest / 2:g} oz" if rest else f"{pounds} lb"
    return f"{tenths / 10:g} oz" if tenths else f"{grams:g} g"


def _tenths(grams: float) -> int:
    """Whole tenths of an ounce, never more than the grams."""
    return math.floor(grams / _OUNCE_G * 10 + 1e-9)


def _with_ounces(found: re.Match[str]) -> str:
    """`100 g (3.5 oz)`, of a range `130 to 290 g (4.5 to 10.2 oz)`; in a bracket behind a comma."""
    told = ounces(float(found[2]))
    if found[1] is not None:
        least = ounces(float(found[1]))
        is_alike = told.count(" ") == least.count(" ") == 1
        told = f"{least.removesuffix(' oz') if is_alike else least} to {told}"
    return f"{found[0]}, {told}" if found.string[: found.start()].endswith("(") else f"{found[0]} ({told})"


def fahrenheit(celsius: int) -> int:
    """Degrees F: of an oven as its dial has them, else the next whole one above, since it is heat that makes safe."""
    exact = celsius * 9 / 5 + 32
    return round(exact / _OVEN_F) * _OVEN_F if celsius >= _COOLEST_OVEN_C else math.ceil(exact)


def cups(ml: int) -> str:
    """Cups in quarters, or tablespoons below a quarter of one."""
    if ml * 4 < _CUP_ML:
        return f"{_quarters(ml / _SPOON_ML)} tbsp"
    return f"{_quarters(ml / _CUP_ML)} cup{'s' if ml > _CUP_ML else ''}"


def poured(ml: float) -> str:
    """Cups in quarters and tablespoons in halves, or teaspoons; never more than the ml: a limit may hold for them."""
    spoons = math.floor(ml / _SPOON_ML * 2 + 1e-9)
    if not spoons:
        return f"{_quarters(max(0.25, ml / _SPOON_ML * 3))} tsp"
    quarters, halves = divmod(spoons, round(_CUP_ML / _SPOON_ML / 4 * 2))
    said = [f"{_quarters(quarters / 4)} cup{'s' if quarters > 4 else ''}"] if quarters else []
    said += [f"{_quarters(halves / 2)} tbsp"] if halves else []
    return " + ".join(said)


def inches(cm: float) -> str:
    """Inches in quarters."""
    return _quarters(cm / _INCH_CM)


def _quarters(count: float) -> str:
    whole, part = divmod(max(1, round(count * 4)), 4)
    return f"{whole or ''}{_QUARTERS[part]}"


def _if_said(words: str | None, say: Callable[[str], str]) -> str | None:
    return None if words is None else say(words)
