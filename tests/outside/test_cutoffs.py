"""Limits against Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:53-61) and Halmos et al. 2014."""

from decimal import Decimal
from itertools import pairwise

import pytest

from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables

# Varney et al. 2017: g for one food at one sitting; the first was read, the others are recalled.
VARNEY = {
    ("oligosaccharides", ("core",)): "0.30",
    ("oligosaccharides", ("fresh", "other")): "0.20",
    ("lactose", ()): "1.00",
    ("excess_fructose", ("fresh",)): "0.40",
    ("excess_fructose", ("core", "other")): "0.15",
    ("sorbitol", ()): "0.20",
    ("mannitol", ()): "0.20",
    ("polyols", ()): "0.40",
}


@pytest.mark.parametrize(("profile", "factor"), [("elimination", "1.6"), ("careful", "1.6"), ("very-careful", "1.25")])
def test_food_limits_are_the_published_cutoffs(profile: str, factor: str, tables: Tables) -> None:
    caps = profile_named(profile, tables).food_caps
    assert {(cap.group, cap.applies_to): str(cap.typical_g) for cap in caps} == VARNEY
    assert all(cap.at_most_g == cap.typical_g * Decimal(factor) for cap in caps)


def test_the_sitting_holds_one_food_of_each_class(tables: Tables) -> None:
    limits = {cap.key: cap for cap in profile_named("elimination", tables).at("dinner").sitting_caps}
    assert limits["oligosaccharides"].typical_g == Decimal("0.30") + Decimal("0.20")
    assert all("ours" in cap.source and cap.at_most_g == cap.typical_g * Decimal("1.6") for cap in limits.values())


def test_the_days_sittings_make_the_trial_diets_day(tables: Tables) -> None:
    """Halmos et al. 2014 (Gastroenterology 146:67-75): about 3 g a day on the trial diet, lactose apart (recalled)."""
    profile = profile_named("elimination", tables)
    whole = Decimal(0)
    for sitting in ("dinner", "packed", "breakfast", "shake", "snack"):
        whole += next(cap.typical_g for cap in profile.at(sitting).sitting_caps if cap.key == "total")
    (day,) = profile.day_caps
    assert whole == day.typical_g == Decimal("3.00")


def test_profiles_get_stricter(tables: Tables) -> None:
    order = [profile_named(name, tables).at("dinner") for name in ("roomy", "elimination", "careful", "very-careful")]
    assert not order[0].food_caps
    for wider, narrower in pairwise(order):
        looser = {cap.key: cap for cap in wider.sitting_caps}
        for cap in narrower.sitting_caps:
            assert cap.typical_g <= looser[cap.key].typical_g
            assert (cap.at_most_g or 0) <= (looser[cap.key].at_most_g or 0)
