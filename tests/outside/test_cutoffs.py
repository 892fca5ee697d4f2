"""Caps against Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:53-61) and Halmos et al. 2014."""

from decimal import Decimal

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


def test_food_caps_are_the_published_cutoffs(tables: Tables) -> None:
    caps = profile_named("elimination", tables).food_caps
    assert {(cap.group, cap.applies_to): str(cap.grams) for cap in caps} == VARNEY
    assert all(cap.holds == "worst" for cap in caps)


def test_sitting_caps_are_the_same_and_the_trial_diets_total(tables: Tables) -> None:
    caps = profile_named("elimination", tables).sitting_caps
    total = [cap for cap in caps if cap.group == "total"]
    assert {(cap.group, cap.applies_to): str(cap.grams) for cap in caps if cap.group != "total"} == VARNEY
    # Halmos et al. 2014 (Gastroenterology 146:67-75): 0.5 g a sitting, lactose apart (recalled).
    assert [(cap.grams, cap.holds) for cap in total] == [(Decimal("0.50"), "plan")]
    assert all("ours" in cap.source for cap in caps)


def test_wide_doubles_the_sitting_and_drops_the_food_caps(tables: Tables) -> None:
    narrow, wide = profile_named("elimination", tables), profile_named("wide", tables)
    assert not wide.food_caps
    assert {cap.key: cap.grams for cap in wide.sitting_caps} == {cap.key: 2 * cap.grams for cap in narrow.sitting_caps}
